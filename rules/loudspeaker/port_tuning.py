"""Tuning that area and length of the port give against the stated one.

All that is reckoned of a vented box, the excursion, the air in the port, the high-pass below it,
hangs on its tuning.  Area, length and volume fix it, and the three are often changed one by one:
a port of three times the area and the old length tunes a box more than half an octave higher, the
cone is held where there is no bass and is free where there is.

The figure is how far the tuning of a round port of that area and length, one end in the wall,
lies from the stated one.  Ends near a wall, flares and slots move it by some percent: from 10 %
on minor, from 25 % on, four semitones, major; both are common practice without a source.  First
fix: the length that belongs to the area.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever
from ..derived.port import HELMHOLTZ, PORT, VENTED
from ..formulas.acoustics import PORT_ENDS
from ..formulas.acoustics import port_tuning as tuning
from ..formulas.maths import larger


def figure(
    port_length: float,
    v_b: float,
    port_area: float,
    sound_speed: float,
    end: float,
    f_b: float,
) -> float:
    """Distance of the two tunings, over the stated one."""
    ratio = tuning(port_length, v_b, port_area, sound_speed, end) / f_b
    return larger(ratio - 1, 1 - ratio)


BOX = """
channels:
  sub:
    loudspeaker: {z_rated: 4 ohm, enclosure: {type: vented, v_b: 90 L, f_b: 32 Hz,
      port_area: 273 cm2, port_length: LENGTH}}
"""
_AIR: dict[str, str | float] = {"sound_speed": "345 m/s", "end": 0.732}

CHECK = Check(
    title="Port tuning by area and length vs. stated tuning",
    figure=figure,
    unit="%",
    each="channel",
    stake="performance",
    formula="abs(sound_speed / (2 pi) sqrt(port_area / (v_b (port_length"
    " + end sqrt(4 port_area / pi)))) / f_b - 1)",
    sentence="Port of {port_area} and {port_length} in {v_b} tunes {figure} away from the stated"
    " {f_b}.",
    inputs={
        "port_length": Input("loudspeaker.enclosure.port_length"),
        **PORT,
        "f_b": Input("loudspeaker.enclosure.f_b"),
    },
    applies={**VENTED, "port_length_stated": "yes"},
    limits=AtMost(
        major="25 %", minor="10 %", basis={"major": COMMON_PRACTICE, "minor": COMMON_PRACTICE}
    ),
    levers=(Lever("loudspeaker.enclosure.port_length", "1 mm"),),
    sources=(HELMHOLTZ, PORT_ENDS.basis),
    cases=(
        Case(
            {
                "port_length": "756.62 mm",
                "v_b": "90 L",
                "port_area": "273 cm2",
                "f_b": "40 Hz",
                **_AIR,
            },
            gives="20 %",
            origin="computed: 2 pi sqrt(mass over stiffness) of 0.893 m of air is 31.25 ms, 32 Hz",
            tolerance=1e-3,
        ),
        Case(
            {
                "port_length": "125 mm",
                "v_b": "90 L",
                "port_area": "273 cm2",
                "f_b": "32 Hz",
                **_AIR,
            },
            gives="84.81 %",
            origin="derived: air of 0.893 m falls to 0.2615 m, root of the ratio 1.8481",
        ),
    ),
    topic=("loudspeaker.enclosure.port_length",),
    fails=BOX.replace("LENGTH", "200 mm"),
    passes=BOX.replace("LENGTH", "750 mm"),
)
