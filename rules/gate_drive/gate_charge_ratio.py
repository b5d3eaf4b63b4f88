"""Gate-drain charge against the charge up to the threshold.

Whatever the slope and the gate resistor, a rising drain can push no more than the
gate-drain charge into the gate.  If the gate holds more charge than that before it reaches
its threshold, the switch cannot be turned on by the slope: it is safe by construction.

Above one the device depends on the gate loop, which miller-turn-on looks at; many older
devices are there and work, hence a minor limit only.  Source inductance is left out, and
the threshold charge falls a little with temperature.  First fix: a device of a newer
generation, which makers select for this ratio in half-bridges.
"""

from ...linter.check import AtMost, Case, Check, Input, derivation


def figure(q_gd: float, q_g_th: float) -> float:
    """Gate-drain charge over the charge up to the threshold."""
    return q_gd / q_g_th


CHARGE = derivation("charge balance of an open gate: q_gd is all that the drain can push")

CHECK = Check(
    title="Gate-drain charge vs. charge to threshold",
    figure=figure,
    unit="1",
    each="channel",
    stake="performance",
    formula="q_gd / q_g_th",
    sentence="Gate-drain charge {q_gd}; charge to threshold {q_g_th} ({figure:%}).",
    inputs={
        "q_gd": Input("output_stage.device.q_gd"),
        "q_g_th": Input("output_stage.device.q_g_th"),
    },
    applies={"output_stage.devices": "discrete"},
    limits=AtMost(minor="1", basis={"minor": CHARGE}),
    sources=(CHARGE,),
    cases=(
        Case(
            {"q_gd": "5.8 nC", "q_g_th": "7.5 nC"},
            "0.7733",
            "from memory: CSD19501KCS data sheet, gate charges; ratio by hand",
        ),
        Case(
            {"q_gd": "31 nC", "q_g_th": "20 nC"},
            "1.55",
            "derived: an older device of large gate-drain charge",
        ),
    ),
    topic=("output_stage.device.q_g_th",),
    fails="""
channels:
  main: {output_stage: {devices: discrete, device: {q_gd: 31 nC, q_g_th: 20 nC}}}
""",
    passes="""
channels:
  main: {output_stage: {devices: discrete, device: {q_gd: 5.8 nC, q_g_th: 7.5 nC}}}
""",
)
