"""The port of a vented box: its area, its length and its tuning belong together."""

from ...linter.check import Arguments, Derived, Input, Way, derivation
from ..formulas.acoustics import PORT_ENDS, SOUND_SPEED, port_length, port_tuning
from .ways import no

VENTED = {"loudspeaker.enclosure.type": "vented"}
HELMHOLTZ = derivation("air in the port as a mass, air in the box as a spring: Helmholtz resonance")
PORT: Arguments = {
    "v_b": Input("loudspeaker.enclosure.v_b"),
    "port_area": Input("loudspeaker.enclosure.port_area"),
    "sound_speed": SOUND_SPEED,
    "end": PORT_ENDS,
}
LENGTH_NEEDED: Arguments = {"f_b": Input("loudspeaker.enclosure.f_b"), **PORT}
LENGTH_TEXT = "(sound_speed / (2 pi f_b))^2 port_area / v_b - end sqrt(4 port_area / pi)"


def told(length: float) -> str:
    """A length is stated, whatever it is."""
    return "yes"


def tuning_of_hole(v_b: float, port_area: float, sound_speed: float, end: float) -> float:
    """Tuning of a hole in a wall of no thickness."""
    return port_tuning(0.0 * v_b, v_b, port_area, sound_speed, end)


DERIVED: tuple[Derived, ...] = (
    Derived(
        "port_length",
        "mm",
        "channel",
        "length of a port that has this tuning",
        (Way(port_length, LENGTH_NEEDED, LENGTH_TEXT, when=VENTED),),
        sources=(HELMHOLTZ, PORT_ENDS.basis),
    ),
    Derived(
        "port_length_stated",
        "word",
        "channel",
        "whether a length of the port is stated; without one the tuning is believed",
        (
            Way(told, {"length": Input("loudspeaker.enclosure.port_length")}, "yes with a length"),
            Way(no, {}, "no"),
        ),
    ),
    Derived(
        "tuning_of_hole",
        "Hz",
        "channel",
        "the tuning of a hole of that area, without any length",
        (
            Way(
                tuning_of_hole,
                PORT,
                "sound_speed / (2 pi) sqrt(port_area / (v_b end sqrt(4 port_area / pi)))",
                when=VENTED,
            ),
        ),
        bounds_from_above=("loudspeaker.enclosure.f_b",),
        bounds_by="practice",
        sources=(HELMHOLTZ, PORT_ENDS.basis),
    ),
)
