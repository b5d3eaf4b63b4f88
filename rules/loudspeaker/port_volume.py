"""Volume of the port against the volume of the box that it tunes.

A larger port for slower air has to be longer for the same tuning, and its volume grows with more
than the square of its area: 273 cm2 tuned to 32 Hz in 90 L is 0.76 m long and takes 21 L.  The
net volume does not hold it; the box must be larger by that much, and a pipe of that length must
be folded, rings in the band, and no longer is the lump of air that the tuning takes it for.

Above two fifths of the net volume nobody builds it: major, common practice without a source.  The
length is what the tuning takes of a round port with one end in the wall; port-tuning compares a
stated one with it.  First fixes: a passive radiator, a smaller port with less level in the
bass, a flared one, a larger box.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever
from ..derived.port import HELMHOLTZ, VENTED
from ..formulas.acoustics import PORT_ENDS


def figure(port_area: float, port_length: float, v_b: float) -> float:
    return port_area * port_length / v_b


TUNED = """
channels:
  sub:
    loudspeaker: {z_rated: 4 ohm, enclosure: {type: vented, v_b: 90 L, f_b: 32 Hz,
      port_area: AREA}}
"""

CHECK = Check(
    title="Port volume vs. box volume",
    figure=figure,
    unit="%",
    each="channel",
    stake="performance",
    formula="port_area port_length / v_b",
    sentence="Port of {port_area} is {port_length} long for its tuning and takes {figure} of the"
    " {v_b} box.",
    inputs={
        "port_area": Input("loudspeaker.enclosure.port_area"),
        "port_length": Input("port_length"),
        "v_b": Input("loudspeaker.enclosure.v_b"),
    },
    applies=VENTED,
    limits=AtMost(major="40 %", basis={"major": COMMON_PRACTICE}),
    levers=(Lever("loudspeaker.enclosure.v_b", "1 L"),),
    sources=(HELMHOLTZ, PORT_ENDS.basis),
    cases=(
        Case(
            {"port_area": "273 cm2", "port_length": "756.6 mm", "v_b": "90 L"},
            gives="22.95 %",
            origin="derived: 0.0273 m2 times 0.7566 m is 20.66 L of 90 L",
        ),
        Case(
            {"port_area": "81.1 cm2", "port_length": "269 mm", "v_b": "56.6 L"},
            gives="3.854 %",
            origin="computed: 102 mm bore for 35 Hz in 56.6 L, 2.18 L of air in it",
        ),
    ),
    topic=("loudspeaker.enclosure.port_area",),
    fails=TUNED.replace("AREA", "600 cm2"),
    passes=TUNED.replace("AREA", "150 cm2"),
)
