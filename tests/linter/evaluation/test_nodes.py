"""What is planned twice is one node; what is planned apart leaves nothing behind.

The expectation is what the words say: the same function of the same arguments has the same value,
so it is computed once.  That answers stay what a fresh run gives is tested beside ``Affected``.
"""

from ampreview.linter.evaluation.nodes import Nodes
from ampreview.linter.quantities.quantity import parse


def half(x: float) -> float:
    return x / 2


def test_the_same_function_of_the_same_arguments_is_one_node() -> None:
    nodes = Nodes()
    one, other = (
        nodes.computed("half", half, {"x": nodes.leaf("x", parse(text, "V"), (), real=True)})
        for text in ("10 V ± 1 V", "10 V ± 1 V")
    )
    assert one is other
    assert one.value({"x": 9.0}) == other.value({"x": 9.0}) == 4.5
    assert nodes.computations.number == 1


def test_values_written_otherwise_are_told_apart() -> None:
    nodes = Nodes()
    volts, millivolts = (
        nodes.leaf("x", parse(text, "V"), (), real=True) for text in ("10 V", "10000 mV")
    )
    assert volts is not millivolts  # each is shown as it is written
    assert nodes.fixed(1.0) is not nodes.fixed(True)


def test_what_is_planned_apart_takes_over_and_leaves_nothing_behind() -> None:
    nodes = Nodes()
    known = nodes.fixed(2.0)
    apart = nodes.above()
    assert apart.fixed(2.0) is known
    new = apart.fixed(3.0)
    assert apart.fixed(3.0) is new
    assert nodes.fixed(3.0) is not new


def test_what_follows_from_a_node_is_found_once() -> None:
    nodes, found = Nodes(), []
    node = nodes.fixed(2.0)
    for _ in range(2):
        nodes.once((node, "path"), lambda: found.append(1) or "answer")
    assert found == [1]
