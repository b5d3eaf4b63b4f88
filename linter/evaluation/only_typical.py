"""Typical values that stand in where a limit needs a guaranteed one.

A data-sheet line that prints only ``typ`` has it stand in for both sides.  Where a shift of
it would make the figure worse, a pass leans on a typical value.  Fields of which data sheets
usually print nothing but the typical value are left out, and so are lines with a guaranteed
side: makers print the one that matters.
"""

from ..check import Source
from ..finding import Assumed, Finding
from ..quantities.quantity import Value
from .graph import Graph
from .node import Computed, FigureError, Node
from .ranges import Plan

STEP = 0.01
CHANGE = 1e-9
SELDOM_GUARANTEED = "typ"
TYPICAL = Source("data sheets guarantee only what they print as min or max", kind="derived")


def only_typical(plan: Plan, graph: Graph, node: Node, finding: Finding) -> tuple[Assumed, ...]:
    """The data-sheet lines that are only typical, and that the figure hangs on.

    plan: gives the figure's node in a graph.
    """
    values = graph.spec.values
    lines = {
        path: x
        for path in node.used
        if isinstance(x := values.get(path), Value)
        and _gaps(x)
        and graph.spec.schema.field_of(path).given != SELDOM_GUARANTEED
    }
    if not lines:
        return ()
    moving = plan(graph.freed(frozenset(lines)))
    if not isinstance(moving, Computed):
        return ()
    corner = {item.path: item.value for item in finding.evidence.corner}
    found = [
        Assumed(path, f"{value.text} (typical only)", "favourable", TYPICAL)
        for path, value in sorted(lines.items())
        if any(_is_worse(moving, {**corner, path: x}, finding) for x in _gaps(value))
    ]
    return tuple(found)


def _gaps(value: Value) -> tuple[float, ...]:
    """Values a little beside a line that is only typical."""
    if value.form != "line" or value.sides != {"typ"}:
        return ()
    step = STEP * abs(value.nominal)
    return (value.nominal + step, value.nominal - step)


def _is_worse(node: Computed, corner: dict[str, object], finding: Finding) -> bool:
    try:
        figure = float(node.value(corner))
    except FigureError:
        return False
    base = finding.evidence.figure or 0.0
    change = base - figure if finding.evidence.at_least else figure - base
    return change > CHANGE * max(abs(base), abs(figure))
