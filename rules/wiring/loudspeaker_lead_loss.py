"""Loss in the loudspeaker lead.

The lead is in series with the loudspeaker, as a round trip.  A resistance of 5 % of the
load costs 0.42 dB and 4.8 % of the power, and lets the level follow the impedance of the
loudspeaker; damping of the bass suffers much earlier but matters less than is said.

Judged is the rated load of the channel with copper at 20 degC; stranded lead loses 2 to
5 % more.  Inside a box this is rarely an issue, with 20 m to a stage it is.  First fixes:
more copper, a shorter lead, a load of more ohms.  Ahead of the filter of a class-D stage
a lead carries pulses of the full rail: that is another check.
"""

from ...linter.check import (
    AtMost,
    Case,
    Check,
    Input,
    Lever,
    Source,
    derivation,
)
from ..formulas.conductors import two_way_resistance
from ..formulas.constants import COPPER_RESISTIVITY


def figure(length: float, area: float, resistivity: float, z_load: float) -> float:
    """Lead over load."""
    return two_way_resistance(resistivity, length, area) / z_load


_BASE = """
channels:
  main:
    rated_load: 4 ohm
    lead: {length: 10 m, area: AREA}
"""

CHECK = Check(
    title="Loudspeaker lead resistance vs. load",
    figure=figure,
    unit="%",
    each="channel",
    stake="performance",
    formula="2 resistivity length / area / z_load",
    sentence="Loudspeaker lead has {z_load:*figure} ({length} of {area}, round trip), {figure} of"
    " the {z_load} load.",
    inputs={
        "length": Input("lead.length"),
        "area": Input("lead.area"),
        "resistivity": COPPER_RESISTIVITY,
        "z_load": Input("z_load"),
    },
    limits=AtMost(
        major="41 %",
        minor="5 %",
        basis={
            "major": derivation("1/1.41 squared: half of the power without a lead is left"),
            "minor": Source("3starinc, cable page",
                            "less than 5 % of the loudspeaker's impedance suffices at home"),
        },
    ),
    levers=(
        Lever("lead.area", ("0.75 mm2", "1 mm2", "1.5 mm2", "2.5 mm2", "4 mm2", "6 mm2")),
        Lever("lead.length", "0.5 m"),
    ),
    sources=(Source("gxslo.avasdm.it amplifier wiring page", "100 ft: AWG 16, 4 ohm, 1.65 dB"),),
    cases=(
        Case({
                "length": "30.48 m",
                "area": "1.309 mm2",
                "resistivity": "1.724e-8 ohm m",
                "z_load": "4 ohm",
            }, gives="20.92 %", tolerance=0.06,
             origin="published: gxslo.avasdm.it wiring page, 100 ft of AWG 16 into 4 ohm lose "
             "1.65 dB, which is 20.92 %"),
        Case({
                "length": "7.591 m",
                "area": "1.309 mm2",
                "resistivity": "1.724e-8 ohm m",
                "z_load": "4 ohm",
            }, gives="5 %",
             origin="computed: 7.591 m of AWG 16 by hand from 13.17 mohm/m"),
    ),
    fails=_BASE.replace("AREA", "0.5 mm2"),
    passes=_BASE.replace("AREA", "2.5 mm2"),
    topic=("lead",),
)  # fmt: skip
