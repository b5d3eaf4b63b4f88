"""Bootstrap capacitor against the capacitor that refills it.

When the lower switch turns on, the bootstrap capacitor is refilled from the reservoir on
the gate supply.  If the reservoir is smaller, the gate supply itself dips at start-up and
after clipping, and the driver may lock out just when it starts.

Application notes ask for ten times the bootstrap capacitor; a much-copied board has 22 uF
of bootstrap beside a reservoir of the same size and starts well, so only a reservoir that
is smaller than the bootstrap capacitor is called out, as a minor point.  All capacitors on
the gate supply next to the driver count.  First fix: more capacitance there, ceramic and
electrolytic in parallel.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever, Source, derivation


def figure(c: float, c_reservoir: float) -> float:
    """Bootstrap capacitor over the reservoir."""
    return c / c_reservoir


CHECK = Check(
    title="Bootstrap capacitor vs. its reservoir",
    figure=figure,
    unit="%",
    each="channel",
    stake="performance",
    formula="c / c_reservoir",
    sentence="Bootstrap capacitor {c}; reservoir {c_reservoir} ({figure:%}).",
    inputs={
        "c": Input("gate_drive.bootstrap.c"),
        "c_reservoir": Input("gate_drive.c_reservoir"),
    },
    applies={"output_stage.devices": "discrete"},
    limits=AtMost(minor="100 %", basis={"minor": COMMON_PRACTICE}),
    levers=(Lever("gate_drive.c_reservoir", "E6"),),
    sources=(
        derivation("charge shared between two capacitors"),
        Source(
            "MCF8329A-Q1 data sheet SLLSFV1, Texas Instruments",
            "after equation 14: regulator capacitor ten times the bootstrap capacitor",
        ),
    ),
    cases=(
        Case(
            {"c": "100 nF", "c_reservoir": "1 uF"},
            "10 %",
            "published: MCF8329A-Q1 data sheet, 100 nF and 1 uF",
        ),
        Case(
            {"c": "10 uF", "c_reservoir": "4.7 uF"},
            "212.8 %",
            "derived: the larger capacitor is on the wrong side",
        ),
    ),
    topic=("gate_drive.c_reservoir",),
    fails="""
channels:
  main:
    output_stage: {devices: discrete}
    gate_drive: {c_reservoir: 1 uF, bootstrap: {c: 10 uF}}
""",
    passes="""
channels:
  main:
    output_stage: {devices: discrete}
    gate_drive: {c_reservoir: 4.7 uF, bootstrap: {c: 220 nF}}
""",
)
