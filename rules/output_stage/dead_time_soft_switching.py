"""Whether the idle ripple turns the switch node over within the dead time.

At idle the ripple of the inductor reverses twice a period.  If half of it, flowing during
the dead time, moves the output charge of both switches of the leg, the node swings by
itself and the next switch closes at no voltage: cool and quiet.  If not, the rest of the
swing is switched hard in every period, which costs idle heat and makes noise and
emission.

It matters for idle loss and for the noise floor, not for survival: minor at most.  A
three-level bridge with the capacitor only across the load has no ripple at idle, and with
capacitors to ground it switches as a two-level one; the former is left out here and
counted as hard in the idle loss.  First fixes: a smaller inductor (more ripple), a smaller
device, a few nanoseconds more of dead time, weighed against dead-time-distortion.
"""

from ...linter.check import AtLeast, Case, Check, Input, Lever, derivation


def figure(ripple: float, dead_time: float, parallel: float, q_oss: float) -> float:
    """Charge that half the ripple moves in the dead time over the charge of both switches."""
    return (ripple / 2 * dead_time) / (2 * parallel * q_oss)


BALANCE = derivation("charge balance of the switch node, both output charges in parallel")

CHECK = Check(
    title="Soft switching at idle: charge moved vs. output charge",
    figure=figure,
    unit="%",
    each="channel",
    stake="performance",
    formula="(ripple / 2 dead_time) / (2 parallel q_oss)",
    sentence="Half the {ripple} idle ripple moves {figure:% of} the leg's output charge in the"
    " {dead_time} dead time.",
    inputs={
        "ripple": Input("ripple_idle"),
        "dead_time": Input("gate_drive.dead_time"),
        "parallel": Input("output_stage.parallel"),
        "q_oss": Input("q_oss_swing"),
    },
    applies={"output_stage.devices": "discrete", "levels": "two-level"},
    limits=AtLeast(minor="100 %", basis={"minor": BALANCE}),
    levers=(Lever("gate_drive.dead_time", "5 ns"), Lever("filter.inductor.l", "E12")),
    sources=(BALANCE,),
    cases=(
        Case(
            {"ripple": "2.841 A", "dead_time": "42.24 ns", "parallel": 1.0, "q_oss": "30 nC"},
            "100 %",
            "computed: node charged by a constant current, solved for the dead time",
        ),
        Case(
            {"ripple": "2.841 A", "dead_time": "25 ns", "parallel": 1.0, "q_oss": "10 nC"},
            "177.6 %",
            "derived: 10 nC need 14.08 ns of half the ripple",
            tolerance=2e-3,
        ),
        Case(
            {"ripple": "2.841 A", "dead_time": "42.24 ns", "parallel": 2.0, "q_oss": "30 nC"},
            gives="50 %",
            origin="derived: the charge of the first case on twice the devices",
        ),
    ),
    topic=("output_stage.device.q_oss", "output_stage.device.c_oss"),
    asked_from="production",
    fails="""
supply: {source: dc-source, rails: split, v_rail: 50 V}
channels:
  main:
    output_stage:
      topology: half-bridge
      devices: discrete
      device: {q_oss: 30 nC, v_c_oss: 100 V}
    gate_drive: {dead_time: 25 ns}
    modulator: {type: natural-sampling, carrier: 400 kHz}
    filter: {type: lc, inductor: {l: 22 uH}, c_across: {c: 0.47 uF}}
""",
    passes="""
supply: {source: dc-source, rails: split, v_rail: 50 V}
channels:
  main:
    output_stage:
      topology: half-bridge
      devices: discrete
      device: {q_oss: 10 nC, v_c_oss: 100 V}
    gate_drive: {dead_time: 25 ns}
    modulator: {type: natural-sampling, carrier: 400 kHz}
    filter: {type: lc, inductor: {l: 22 uH}, c_across: {c: 0.47 uF}}
""",
)
