"""How long the bootstrap supply lasts while the output is clipped.

A clipped low note holds the upper switch on for up to half its period, and nothing refills
the bootstrap capacitor meanwhile: its floating driver half eats the charge.  At 20 Hz this
is 25 ms; 220 nF at 0.2 mA last for 2.3 ms, after which the driver locks out, or the switch
starts to conduct badly.

The check concerns designs in which nothing forces a short low pulse and no charge pump
feeds the upper half (``gate_drive.bootstrap.refresh: none``).  The figure is hold time over
half the period of the lowest audio frequency.  First fixes: a minimum off-time in the
modulator, which costs a few per cent of output; a charge pump; or a capacitor of
i_q / (2 f dV), of the order of microfarads.
"""

from ...linter.check import COMMON_PRACTICE, AtLeast, Case, Check, Input, Lever, Source, derivation


def figure(c: float, v_drv: float, v_f: float, v_uvlo: float, i_q: float, f_low: float) -> float:
    """Hold time of the bootstrap supply over half a period of the lowest note."""
    return c * (v_drv - v_f - v_uvlo) / i_q * 2 * f_low


HOLD = derivation("constant current discharges the capacitor to the lockout threshold")

CHECK = Check(
    title="Bootstrap hold time at clipping vs. half a period",
    figure=figure,
    unit="%",
    each="channel",
    stake="performance",
    formula="c (v_drv - v_f - v_uvlo) / i_q / (1 / (2 f_low))",
    sentence="Bootstrap capacitor {c} lasts {figure} of half a period at {f_low} until it falls to"
    " {v_uvlo} ({i_q}).",
    inputs={
        "c": Input("gate_drive.bootstrap.c"),
        "v_drv": Input("gate_drive.v_drv"),
        "v_f": Input("gate_drive.bootstrap.v_f"),
        "v_uvlo": Input("gate_drive.bootstrap.v_uvlo"),
        "i_q": Input("gate_drive.bootstrap.i_q"),
        "f_low": Input("band_low"),
    },
    applies={"output_stage.devices": "discrete", "gate_drive.bootstrap.refresh": "none"},
    limits=AtLeast(major="100 %", minor="150 %", basis={"major": HOLD, "minor": COMMON_PRACTICE}),
    levers=(
        Lever("gate_drive.bootstrap.c", "E6"),
        Lever("gate_drive.bootstrap.refresh", ("forced-off-time", "charge-pump")),
    ),
    sources=(
        HOLD,
        Source("NBitWonder notebook, entry 022: remedy is a limit of the duty cycle"),
    ),
    cases=(
        Case(
            {
                "c": "220 nF",
                "v_drv": "12 V",
                "v_f": "1 V",
                "v_uvlo": "8.9 V",
                "i_q": "0.2 mA",
                "f_low": "20 Hz",
            },
            "9.24 %",
            "computed: discharge integrated to the lockout, 2.310 ms of 25 ms",
        ),
        Case(
            {
                "c": "2.381 uF",
                "v_drv": "12 V",
                "v_f": "1 V",
                "v_uvlo": "8.9 V",
                "i_q": "0.2 mA",
                "f_low": "20 Hz",
            },
            "100 %",
            "derived: capacitor solved for half a period of 20 Hz",
        ),
    ),
    topic=("gate_drive.bootstrap",),
    asked_from="production",
    fails="""
channels:
  main:
    band: 20 Hz .. 20 kHz
    output_stage: {devices: discrete}
    gate_drive: {v_drv: 12 V, bootstrap: {c: 220 nF, v_f: 1 V, v_uvlo: 8.9 V, i_q: 0.2 mA,
      refresh: none}}
""",
    passes="""
channels:
  main:
    band: 20 Hz .. 20 kHz
    output_stage: {devices: discrete}
    gate_drive: {v_drv: 12 V, bootstrap: {c: 4.7 uF, v_f: 1 V, v_uvlo: 8.9 V, i_q: 0.2 mA,
      refresh: none}}
""",
)
