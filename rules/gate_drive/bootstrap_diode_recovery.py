"""Recovery of the bootstrap diode against the switching period.

When the switch node rises, the bootstrap diode has just refilled the capacitor and still
conducts backwards for its recovery time: charge flows from the capacitor into the gate
supply, heats the diode and shakes the supply, in every period.  A rectifier for mains
frequency (two microseconds) never blocks at all at a carrier of hundreds of kilohertz.

The figure is the recovery time over the period.  Fast diodes have 10 to 75 ns.  First fix: a
fast or Schottky diode, or one of silicon carbide, of the same voltage.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever, derivation


def figure(t_rr: float, carrier: float) -> float:
    """Recovery time over the period."""
    return t_rr * carrier


_BASE = """
channels:
  main:
    output_stage: {devices: discrete}
    gate_drive: {bootstrap: {t_rr: TIME}}
    modulator: {carrier: 400 kHz}
"""

CHECK = Check(
    title="Bootstrap diode recovery time vs. period",
    figure=figure,
    unit="%",
    each="channel",
    stake="rating",
    formula="t_rr carrier",
    sentence="Bootstrap diode recovery {t_rr}, {figure} of a period at {carrier}.",
    inputs={
        "t_rr": Input("gate_drive.bootstrap.t_rr"),
        "carrier": Input("modulator.carrier"),
    },
    applies={"output_stage.devices": "discrete"},
    limits=AtMost(
        major="20 %", minor="5 %", basis={"major": COMMON_PRACTICE, "minor": COMMON_PRACTICE}
    ),
    levers=(Lever("gate_drive.bootstrap.t_rr", ("10 ns", "25 ns", "35 ns", "50 ns")),),
    sources=(derivation("the diode conducts both ways until it has recovered"), COMMON_PRACTICE),
    cases=(
        Case({"t_rr": "50 ns", "carrier": "400 kHz"}, "2 %", "derived: 50 ns of 2500 ns"),
        Case(
            {"t_rr": "2 us", "carrier": "400 kHz"},
            "80 %",
            "common practice: mains rectifiers recover in about two microseconds",
        ),
    ),
    topic=("gate_drive.bootstrap.t_rr",),
    fails=_BASE.replace("TIME", "2 us"),
    passes=_BASE.replace("TIME", "35 ns"),
)
