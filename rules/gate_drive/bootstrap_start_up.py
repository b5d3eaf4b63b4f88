"""First charge of the bootstrap capacitor.

A bootstrap capacitor charges only while the switch node lies low.  Before the first pulse nobody
has pulled it there: on a split supply the filter and the loudspeaker hold the node at ground, a
whole rail above the driver's reference, and the diode blocks; behind an output capacitor the node
lies where the capacitor rests.  Then the upper switch cannot be turned on: a self-oscillating
loop does not start, one with a carrier starts with half waves and a bang.  Cures are known: the
lower switch is turned on first, for some time constants of the refill path, or a resistor from
the rail charges the capacitor while the node rests.

Asked for at production; that nothing is provided is major, since the channel may not start.  A
driver that begins every start with its lower switch does it: state low-side-first.
"""

from ...linter.check import AtLeast, Case, Check, Input, Lever, Source, derivation

BLOCKED = derivation("the diode conducts only while the node lies below the gate supply")
RESISTOR = Source(
    "IRS2092 data sheet, International Rectifier",
    "a resistor from the positive rail charges the floating supply before the start; no page given",
    kind="from memory",
)


def figure(start: str) -> float:
    """1 where something charges the capacitor before the first pulse."""
    return 0.0 if start == "none" else 1.0


_BASE = """
channels:
  main:
    output_stage: {devices: discrete}
    gate_drive: {bootstrap: {c: 1 uF, start: WHAT}}
"""

CHECK = Check(
    title="First charge of the bootstrap capacitor",
    figure=figure,
    unit="1",
    each="channel",
    stake="performance",
    formula="0 where start is none, else 1",
    sentence="{start:?Nothing charges the bootstrap capacitor before the first pulse|Bootstrap"
    " capacitor first charged by: #}.",
    inputs={"start": Input("gate_drive.bootstrap.start")},
    applies={"output_stage.devices": "discrete", "gate_drive.bootstrap": "fitted"},
    limits=AtLeast(major="1", basis={"major": BLOCKED}),
    levers=(Lever("gate_drive.bootstrap.start", ("low-side-first", "charge-resistor")),),
    sources=(BLOCKED, RESISTOR),
    cases=(
        Case(
            {"start": "charge-resistor"},
            "1",
            "from memory: IRS2092 data sheet, resistor that charges the floating supply",
        ),
        Case({"start": "none"}, "0", "derived: the diode blocks while the node rests high"),
    ),
    topic=("gate_drive.bootstrap",),
    asked_from="production",
    fails=_BASE.replace("WHAT", "none"),
    passes=_BASE.replace("WHAT", "low-side-first"),
)
