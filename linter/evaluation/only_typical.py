"""Stated sides of a line that stand in where a limit needs the side that is not printed.

A data-sheet line that prints only ``typ`` has it stand in for both sides, one that prints only
``min`` for the other side as well.  Where a shift of it to that side would make the figure worse,
a pass leans on what nobody guarantees.  Fields of which data sheets usually print nothing but the
typical value are left out, and so are lines with typ and a guaranteed side: makers print the one
that matters.

A value that one board showed has the spread of the series about it, a quarter of it or 5 K (common
practice, no source): before a maker's sheet is at hand no grave limit may lie within that.
"""

from collections.abc import Callable, Mapping

from ..check import Check, Source
from ..finding import Assumed, Finding
from ..quantities.quantity import Value
from .graph import Graph
from .node import Computed, FigureError, Node
from .ranges import Plan
from .threshold import missed

NEAR = 1.01
FAR = 3.0
OF_A_SERIES = 1.25
KELVIN_OF_A_SERIES = 5.0
CHANGE = 1e-9
SELDOM_GUARANTEED = "typ"
TYPICAL = Source("data sheets guarantee only what they print as min or max", kind="derived")


def only_typical(plan: Plan, graph: Graph, node: Node, finding: Finding) -> tuple[Assumed, ...]:
    """The data-sheet lines without the side that the figure hangs on.

    plan: gives the figure's node in a graph.
    """
    lines = _lines(graph, node)
    return _hung_on(lines, plan, graph, finding, lambda node, at: _is_worse(node, at, finding))


def open_ended(
    plan: Plan, graph: Graph, node: Node, finding: Finding, check: Check
) -> tuple[Assumed, ...]:
    """The lines with a least or a largest value alone, where ``FAR`` beyond it the check fails.

    And what was read off a board, where another board of the series may fail it.
    """

    def spoils(node: Computed, at: dict[str, object]) -> bool:
        return _fails(node, at, check)

    found: tuple[Assumed, ...] = ()
    for path, x in sorted(_lines(graph, node).items()):
        if x.sides != {"typ"}:
            found += _hung_on({path: x}, plan, graph, finding, spoils, FAR)
        elif x.provenance == "measured":
            warm = graph.spec.schema.field_of(path).unit == "degC"
            factor = 1 + KELVIN_OF_A_SERIES / x.nominal if warm else OF_A_SERIES
            found += _hung_on({path: x}, plan, graph, finding, spoils, factor)
    return found


def _lines(graph: Graph, node: Node) -> dict[str, Value]:
    values, field_of = graph.spec.values, graph.spec.schema.field_of
    return {
        path: x
        for path in node.used
        if isinstance(x := values.get(path), Value)
        and _beyond(x)
        and field_of(path).given != SELDOM_GUARANTEED
    }


def _hung_on(
    lines: Mapping[str, Value],
    plan: Plan,
    graph: Graph,
    finding: Finding,
    spoils: Callable[[Computed, dict[str, object]], bool],
    factor: float = NEAR,
) -> tuple[Assumed, ...]:
    """Those lines of which a value beyond what they state spoils the answer."""
    moving = plan(graph.freed(frozenset(lines))) if lines else None
    if not isinstance(moving, Computed):
        return ()
    corner = {item.path: item.value for item in finding.evidence.corner}
    return tuple(
        Assumed(path, f"{value.text} ({_kind(value)} only)", "favourable", TYPICAL)
        for path, value in sorted(lines.items())
        if any(spoils(moving, {**corner, path: x}) for x in _beyond(value, factor))
    )


def _beyond(value: Value, factor: float = NEAR) -> tuple[float, ...]:
    """Values beside a line, on the sides that it leaves open."""
    if value.form != "line" or len(value.sides) != 1:
        return ()
    above, below = value.nominal * factor, value.nominal / factor
    sides = {"typ": (above, below), "min": (above,), "max": (below,)}
    return sides[next(iter(value.sides))]


def _kind(value: Value) -> str:
    return "typical" if value.sides == {"typ"} else next(iter(value.sides))


def _fails(node: Computed, corner: dict[str, object], check: Check) -> bool:
    try:
        return missed(check, float(node.value(corner))) is not None
    except FigureError:
        return False


def _is_worse(node: Computed, corner: dict[str, object], finding: Finding) -> bool:
    try:
        figure = float(node.value(corner))
    except FigureError:
        return False
    base = finding.evidence.figure or 0.0
    change = base - figure if finding.evidence.at_least else figure - base
    return change > CHANGE * max(abs(base), abs(figure))
