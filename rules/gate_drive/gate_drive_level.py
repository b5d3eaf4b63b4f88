"""Gate voltage against the one behind the on-resistance.

The printed on-resistance holds for one gate voltage.  Driven with less, the channel is not
fully open: the resistance is higher than in every loss and power calculation made with it,
most of all hot.  The upper switch gets less than the lower one, by the drop of the
bootstrap diode.

A tenth below the printed gate voltage costs a few per cent and is common, for instance
10 V less a diode; below three quarters the data sheet's number says nothing any more.
Logic-level devices are printed for 4.5 or 5 V: state that voltage, not the rating.  First
fixes: a higher gate supply within gate-voltage-margin, a diode with less drop, a device
specified at the voltage at hand.
"""

from ...linter.check import (
    COMMON_PRACTICE,
    Assumption,
    AtLeast,
    Case,
    Check,
    Input,
    Lever,
    derivation,
)

USUAL_SUPPLY = Assumption("12 V", "favourable", COMMON_PRACTICE)


def figure(v_drv: float, v_f: float, v_gs_on: float) -> float:
    """Gate voltage of the upper switch over the one behind the on-resistance."""
    return (v_drv - v_f) / v_gs_on


CHECK = Check(
    title="Gate voltage vs. voltage of the rated on-resistance",
    figure=figure,
    unit="%",
    each="channel",
    stake="performance",
    formula="(v_drv - v_f) / v_gs_on",
    sentence="Gate voltage {v_gs_on:*figure} ({v_drv} less {v_f}); on-resistance is rated at"
    " {v_gs_on} ({figure:%}).",
    inputs={
        "v_drv": Input("gate_drive.v_drv", default=USUAL_SUPPLY),
        "v_f": Input(
            "gate_drive.bootstrap.v_f", default=Assumption("1 V", "neutral", COMMON_PRACTICE)
        ),
        "v_gs_on": Input("output_stage.device.v_gs_on"),
    },
    applies={"output_stage.devices": "discrete"},
    limits=AtLeast(
        major="75 %", minor="90 %", basis={"major": COMMON_PRACTICE, "minor": COMMON_PRACTICE}
    ),
    levers=(Lever("gate_drive.v_drv", "0.5 V"),),
    sources=(derivation("the bootstrap diode is in series with the upper gate supply"),),
    cases=(
        Case(
            {"v_drv": "12 V", "v_f": "1 V", "v_gs_on": "10 V"},
            "110 %",
            "computed: IRAUDAMP7D, 12 V gate supply; diode of 1 V assumed, 10 V from memory",
        ),
        Case(
            {"v_drv": "5 V", "v_f": "0.7 V", "v_gs_on": "10 V"},
            "43 %",
            "derived: a standard gate on a 5 V supply",
        ),
    ),
    topic=("output_stage.device.v_gs_on",),
    asked_from="production",
    fails="""
channels:
  main:
    output_stage: {devices: discrete, device: {v_gs_on: 10 V}}
    gate_drive: {v_drv: 5 V, bootstrap: {v_f: 0.7 V}}
""",
    passes="""
channels:
  main:
    output_stage: {devices: discrete, device: {v_gs_on: 10 V}}
    gate_drive: {v_drv: 12 V, bootstrap: {v_f: 0.7 V}}
""",
)
