"""A DC detector that disconnects the loudspeaker, and works while the stage is dead.

A shorted switch puts the rail on the voice coil; muting the stage does not help.  The detector
senses the output behind a low-pass, has a supply and a switch of its own, and its relay is rated
to break that direct voltage and current.  The numbers are a guess until parts are chosen.
"""

from ...linter.check import COMMON_PRACTICE, Constant, Input, derivation
from ...linter.design_change import DesignChange, Follow
from ..formulas.maths import smaller

VOLTS = ("32 V", "60 V", "80 V", "100 V", "125 V", "200 V", "400 V")
AMPERES = ("5 A", "10 A", "16 A", "20 A", "30 A", "40 A", "60 A", "100 A")
THRESHOLD: dict[str, Input | Constant] = {
    "usual": Constant("3 V", "threshold above the bass behind its low-pass", COMMON_PRACTICE),
    "share": Constant(
        "0.15", "part of a low rail, below the fifth that trips late", COMMON_PRACTICE
    ),
    "v_rail_low": Input("v_rail_low"),
}
DELAY = {"t": Constant("250 ms", "time to act", COMMON_PRACTICE)}


def highest(v: tuple[float, ...]) -> float:
    """The highest of all channels."""
    return max(v)


def lowest_coil(v: tuple[float, ...], r: tuple[float, ...]) -> float:
    """The largest direct current that a rail drives through the loudspeakers of a channel."""
    return max(volts / ohms for volts, ohms in zip(v, r, strict=True))


def threshold(usual: float, share: float, v_rail_low: float) -> float:
    """A usual threshold, on low rails a part of the rail."""
    return smaller(usual, share * v_rail_low)


def delay(t: float) -> float:
    """A usual time."""
    return t


def relay(chosen: bool) -> tuple[Follow, ...]:
    """Voltage and current that the relay breaks: of one that is chosen, or yet to be found."""
    return (
        Follow(
            "protection.dc_detector.v_break",
            highest,
            {"v": Input("all v_ideal")},
            VOLTS,
            "up",
            guess=not chosen,
            new=not chosen,
        ),
        Follow(
            "protection.dc_detector.i_break",
            lowest_coil,
            {"v": Input("all v_ideal"), "r": Input("all r_load_dc")},
            AMPERES,
            "up",
            guess=not chosen,
            new=not chosen,
        ),
    )


CHANGE = DesignChange(
    title="a DC detector with a relay of its own that disconnects the loudspeaker",
    helps=(
        "dc-fault-power",
        "independent-disconnect",
        "dc-fault-one-safeguard",
        "one-rail-lost",
    ),
    follows=(
        Follow("protection.dc_detector.action", word="disconnect-load", new=True),
        Follow("protection.dc_detector.independent", word="yes", new=True),
        Follow("protection.dc_detector.senses", word="filtered-output", new=True),
        Follow(
            "protection.dc_detector.v_trip",
            threshold,
            THRESHOLD,
            "0.1 V",
            "down",
            guess=True,
            new=True,
        ),
        Follow(
            "protection.dc_detector.t_trip",
            delay,
            DELAY,
            "10 ms",
            "down",
            guess=True,
            new=True,
        ),
        *relay(chosen=False),
    ),
    sources=(derivation("Ohm's law at the voice coils"), COMMON_PRACTICE),
)
