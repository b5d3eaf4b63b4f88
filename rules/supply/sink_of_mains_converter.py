"""A mains converter that is said to take current back.

Current that a half-bridge or a reactive load returns lifts the rail unless the source takes it.
Behind the mains nothing can: the rectifier at its input conducts one way, so that what a
converter lets back ends in its own capacitors and lifts them. Synchronous rectification at the
output moves the trouble to the other side of the transformer. The checks of pumping therefore
count such a source as one that does not sink, whatever is stated.

The figure is 1 where a converter from the mains is stated to sink, else 0: above 0 is major,
because a designer who believes it leaves out what the rail needs. A supply that does burn or
give back what returns is a rarity; its maker's word goes into a deviation. First fix:
``sinks_current: no``, and the capacitance or full bridges that pumping asks for.
"""

from ...linter.check import Assumption, AtMost, Case, Check, Input, derivation

ONE_WAY = derivation("the rectifier ahead of the converter conducts one way only")
NOT_SAID = Assumption("no", "favourable", derivation("bound: what does not sink is not blocked"))


def figure(sinks: str) -> float:
    return 1.0 if sinks == "yes" else 0.0


MAINS = """
supply: {source: mains-converter, rails: split, v_rail: 40 V, sinks_current: yes}
channels: {main: {rated_power: 100 W}}
"""

CHECK = Check(
    title="Mains converter said to sink current",
    figure=figure,
    unit="1",
    each="product",
    stake="rating",
    formula="1 if sinks is yes, else 0",
    sentence="Mains converter stated to sink current: {sinks}.",
    inputs={"sinks": Input("supply.sinks_current", default=NOT_SAID)},
    applies={"supply.source": "mains-converter"},
    limits=AtMost(major="0", basis={"major": ONE_WAY}),
    sources=(ONE_WAY,),
    cases=(
        Case({"sinks": "yes"}, gives="1", origin="derived: nothing flows back through a rectifier"),
        Case({"sinks": "no"}, gives="0", origin="common practice: a supply for one direction"),
    ),
    topic=("supply.sinks_current",),
    fails=MAINS,
    passes=MAINS.replace("sinks_current: yes", "sinks_current: no"),
)
