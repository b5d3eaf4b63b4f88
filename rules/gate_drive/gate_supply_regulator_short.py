"""Gates when the regulator that feeds them fails short.

A linear regulator, a transistor with its zener or a three-terminal part, fails mostly as a short,
and then the whole rail lies on every gate: 48 V on gates that are rated for 20 V.  One part of a
few cents takes all switches along, they fail as shorts, and what is left between the rail and the
loudspeaker is the detector of direct voltage.  A clamp behind the regulator (a zener diode of a
watt behind a resistor or fuse that opens) ends it there.

The figure is the highest rail, or the clamp if it is lower, over the gate rating.  It is minor: a
regulator that is not overloaded (gate-supply-regulator) seldom fails, and the hazard behind it is
judged by the checks of direct voltage.  Switching regulators and supplies of their own are not
judged.  First fix: a zener diode across the gate supply, above its highest voltage.
"""

from ...linter.check import AtMost, Case, Check, Input, Lever, derivation
from ..formulas.maths import smaller

RATING = derivation("absolute maximum rating of the gate")


def figure(v_rail: float, v_clamp: float, v_gss: float) -> float:
    """Gate voltage behind a shorted regulator over the gate rating."""
    return smaller(v_rail, v_clamp) / v_gss


SHORTED = """
supply: {source: dc-source, rails: single, v_rail: 48 V}
channels:
  main:
    output_stage: {topology: full-bridge, devices: discrete, device: {v_gss: 20 V}}
    gate_drive: {v_drv: 12 V, regulator: {type: linear, v_clamp: CLAMP}}
"""

CHECK = Check(
    title="Gate voltage with the gate regulator shorted vs. rating",
    figure=figure,
    unit="1",
    each="channel",
    stake="rating",
    formula="smaller of v_rail and v_clamp, over v_gss",
    sentence="Gates get {v_gss:*figure} if their regulator fails short; rated {v_gss}"
    " ({v_rail} rail).",
    inputs={
        "v_rail": Input("v_rail_high"),
        "v_clamp": Input("gate_drive.regulator.v_clamp"),
        "v_gss": Input("output_stage.device.v_gss"),
    },
    applies={"output_stage.devices": "discrete", "gate_drive.regulator.type": "linear"},
    limits=AtMost(minor="1", basis={"minor": RATING}),
    levers=(Lever("gate_drive.regulator.v_clamp", "1 V"),),
    sources=(RATING,),
    cases=(
        Case(
            {"v_rail": "48 V", "v_clamp": "1000 V", "v_gss": "20 V"},
            gives="2.4",
            origin="derived: the whole rail lies on the gates",
        ),
        Case(
            {"v_rail": "48 V", "v_clamp": "16 V", "v_gss": "20 V"},
            gives="0.8",
            origin="common practice: zener of 15 V and its tolerance across the gate supply",
        ),
    ),
    topic=("gate_drive.regulator",),
    fails=SHORTED.replace("CLAMP", "24 V"),
    passes=SHORTED.replace("CLAMP", "16 V"),
)
