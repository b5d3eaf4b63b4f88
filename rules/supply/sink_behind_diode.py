"""A source that is said to take current back, behind a diode that blocks it.

Current that a half-bridge or a reactive load returns lifts the rail unless the source takes
it. A pack does, some supplies do; but a series diode against reversed polarity lets nothing
back, whatever the source could take. Then the statement is true of the source and false of
the rail, and everything that pumping could lift is judged too well.

The figure is 1 where a sinking source is stated behind a series diode, else 0: above 0 is
major. The checks of pumping take the diode at its word. First fix: a transistor in place of
the diode, or ``sinks_current: no`` and enough capacitance.
"""

from ...linter.check import Assumption, AtMost, Case, Check, Input, Lever, derivation

BLOCKED = derivation("a diode in series conducts one way only")
NOT_SAID = Assumption("no", "favourable", derivation("bound: what does not sink is not blocked"))


def figure(sinks: str, method: str) -> float:
    return 1.0 if sinks == "yes" and method == "schottky" else 0.0


DIODE = """
supply: {source: dc-source, rails: single, v_rail: 24 V, sinks_current: yes}
channels: {main: {rated_power: 20 W}}
protection: {reverse_polarity: {method: schottky, v_f: 0.45 V}}
"""

CHECK = Check(
    title="Sinking source behind a series diode",
    figure=figure,
    unit="1",
    each="product",
    stake="rating",
    formula="1 if sinks is yes and method is schottky, else 0",
    sentence="Source sinks current: {sinks}; part in series: {method:words}.",
    inputs={
        "sinks": Input("supply.sinks_current", default=NOT_SAID),
        "method": Input("protection.reverse_polarity.method"),
    },
    limits=AtMost(major="0", basis={"major": BLOCKED}),
    levers=(Lever("protection.reverse_polarity.method", ("p-channel",)),),
    sources=(BLOCKED,),
    cases=(
        Case(
            {"sinks": "yes", "method": "schottky"},
            gives="1",
            origin="derived: nothing flows back through a diode",
        ),
        Case(
            {"sinks": "yes", "method": "p-channel"},
            gives="0",
            origin="common practice: a transistor that is on conducts both ways",
        ),
    ),
    topic=("protection.reverse_polarity.method",),
    fails=DIODE,
    passes=DIODE.replace("schottky, v_f: 0.45 V", "p-channel, r_on: 6 mohm"),
)
