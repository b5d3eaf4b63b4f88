"""What was measured in place of what the spec does not state, or only estimates.

Only figures that may stand in do, and only where the readings cover what the spec allows of
each condition: what was measured at one end of a range says nothing of the other.  Two boards
say little of a series, so the spread that the model's tolerances give is added to the readings.
A reading below what the known terms of a sum add up to is doubted, and stands in for nothing.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace

from ..evaluation.catalogue import Catalogue
from ..evaluation.gap import Gap
from ..evaluation.graph import Graph
from ..evaluation.node import FigureError
from ..evaluation.tolerance import worst_case
from ..quantities.quantity import Value, parse, spell
from ..reading.loading import Measurement, Spec
from .boards import LEVELS
from .measured import Compared, Figure, comparisons, graph_at, measurable_in, node_of, stated_place

REACHED = 0.02


def with_stand_ins(spec: Spec, catalogue: Catalogue, items: Iterable[Measurement]) -> Spec:
    """The spec with what was measured where it may stand in."""
    items = tuple(items)
    if not items:
        return spec
    known = measurable_in(catalogue.packages)
    groups: dict[Figure, list[Compared]] = {}
    for item in comparisons(spec, catalogue, items):
        if item.figure and item.pins is not None and known[item.figure.name].stands_in:
            groups.setdefault(item.figure, []).append(item)
    graph = Graph(spec, catalogue.derived)
    for figure, found in groups.items():
        path = stated_place(graph, figure)
        doubted = any(item.doubted for item in found)
        if path and not doubted and _is_free(graph, path) and _covers(spec, found):
            unit = spec.schema.field_of(path).unit
            reading = spell(_reading(spec, catalogue, figure, found), unit)
            done = spec.with_values({path: {"value": reading, "from": "measured"}}).spec
            spec = replace(done, stood_in=spec.stood_in | {path}) if done else spec
    return spec


def _is_free(graph: Graph, path: str) -> bool:
    """Whether the spec says nothing at a path, or only an estimate."""
    stated = graph.spec.values.get(path)
    if stated is None:
        return not graph.leaves.none_above(path)
    return isinstance(stated, Value) and stated.provenance == "estimate"


def _covers(spec: Spec, found: Sequence[Compared]) -> bool:
    """Whether the readings reach both ends of every range that the spec has for a condition."""
    pins: list[Mapping[str, object]] = [item.pins or {} for item in found]
    for path in {path for item in pins for path in item}:
        stated = spec.values.get(path)
        if isinstance(stated, Value) and stated.form == "range":
            unit = spec.schema.field_of(path).unit
            at = [parse(item[path], unit).nominal for item in pins if path in item]
            if min(at) > stated.lo * (1 + REACHED) or max(at) < stated.hi * (1 - REACHED):
                return False
    return True


def _reading(spec: Spec, catalogue: Catalogue, figure: Figure, found: Sequence[Compared]) -> Value:
    """All readings of a figure as one range, with the spread of the model's tolerances."""
    reads = [item.read for item in found if item.read]
    low, high = min(x.lo for x in reads), max(x.hi for x in reads)
    below, above = _tolerances(spec, catalogue, figure, found)
    if figure.unit in LEVELS:
        low, high = low - below, high + above
    else:
        low, high = low * (1 - below), high * (1 + above)
    low, high = (float(f"{x:.4g}") for x in (low, high))
    return Value(low, (low + high) / 2, high, "range" if low < high else "plain")


def _tolerances(
    spec: Spec, catalogue: Catalogue, figure: Figure, found: Sequence[Compared]
) -> tuple[float, float]:
    """How far the model's tolerances reach below and above its nominal figure.

    Ranges of use stand where they were measured; shares, or differences on a scale of levels.
    """
    pins = {
        path: text
        for path, text in (found[0].pins or {}).items()
        if getattr(spec.values.get(path), "form", "range") == "range"
    }
    node = node_of(graph_at(spec, catalogue, pins), catalogue, figure)
    if isinstance(node, Gap):
        return 0.0, 0.0
    try:
        low, high = worst_case(node, -1).figure, worst_case(node, 1).figure
        nominal = float(node.value())
    except FigureError:
        return 0.0, 0.0
    whole = 1.0 if figure.unit in LEVELS else abs(nominal) or float("inf")
    return (nominal - low) / whole, (high - nominal) / whole
