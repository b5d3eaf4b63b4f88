"""What was measured in place of what the spec does not state, or only estimates.

Only figures that may stand in do, and only where the readings cover what the spec allows of
each condition, a default of the trade included: what was measured at one end of a range says
nothing of the other, but where a figure is hottest in the hottest air, that end is enough.  Two
boards say little of a series, so the spread that the model's tolerances give is added to the
readings, that of the computed figure where the spec only estimates.  Where nothing gives a
spread and data sheets guarantee one, as of a trip, the reading is a typical value and no more.
A reading below what the known terms of a sum add up to, or far below what the stated parts give,
is doubted and stands in for nothing, and so does one without sun where the spec has it.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from datetime import date

from ..declare import field_path
from ..evaluation.catalogue import Catalogue
from ..evaluation.gap import Gap
from ..evaluation.graph import Graph
from ..evaluation.node import FigureError, LeafNode
from ..quantities.quantity import Value, parse, spell
from ..reading.by_path import data_at
from ..reading.loading import Measurement, Spec
from .boards import LEVELS
from .measured import SAME_KELVIN, Compared, comparisons, measurable_in
from .modelled import Figure, model_of, stated_place

REACHED = 0.02
SELDOM_GUARANTEED = ("typ", "value")
"""Of what is given like this, nobody prints or expects a spread."""


def with_stand_ins(
    spec: Spec, catalogue: Catalogue, items: Iterable[Measurement], day: date | None = None
) -> Spec:
    """The spec with what was measured, by the day of the review, where it may stand in."""
    items = tuple(items)
    if not items:
        return spec
    known = measurable_in(catalogue.packages)
    groups: dict[Figure, list[Compared]] = {}
    for item in comparisons(spec, catalogue, items, day):
        taken = item.figure and item.pins is not None and not item.without
        if item.figure and taken and known[item.figure.name].stands_in:
            groups.setdefault(item.figure, []).append(item)
    graph = Graph(spec, catalogue.derived)
    for figure, found in groups.items():
        path = stated_place(graph, figure)
        doubted = any(item.doubt for item in found)
        told = known[figure.name]
        enough = frozenset(x for name in told.high_is_enough for x in told.conditions[name])
        if path and not doubted and _is_free(graph, path) and _covers(graph, found, enough):
            own = data_at(spec.data, path)
            done = spec.with_values({path: _reading(spec, catalogue, figure, found)}).spec
            spec = replace(done, stood_in={**spec.stood_in, path: own}) if done else spec
    return spec


def _is_free(graph: Graph, path: str) -> bool:
    """Whether the spec says nothing at a path, or only an estimate."""
    stated = graph.spec.values.get(path)
    if stated is None:
        return not graph.leaves.none_above(path)
    return isinstance(stated, Value) and stated.provenance == "estimate"


def _covers(graph: Graph, found: Sequence[Compared], enough: frozenset[str]) -> bool:
    """Whether the readings reach both ends of every range of a condition, or the high one."""
    pins: list[Mapping[str, object]] = [item.pins or {} for item in found]
    for path in {path for item in pins for path in item}:
        range_ = _range_at(graph, path, found[0].figure)
        if range_ is not None:
            unit = graph.spec.schema.field_of(path).unit
            at = [parse(item[path], unit).nominal for item in pins if path in item]
            near = SAME_KELVIN if unit == "degC" else REACHED * abs(range_.hi)
            low_missed = min(at) > range_.lo + near and path not in enough
            if low_missed or max(at) < range_.hi - near:
                return False
    return True


def _range_at(graph: Graph, path: str, figure: Figure | None) -> Value | None:
    """The range of use that the spec or the trade has for a condition."""
    stated = graph.spec.values.get(path)
    if stated is None:
        node = graph.resolve(field_path(path), figure.channel if figure else None)
        stated = node.stated if isinstance(node, LeafNode) else None
    return stated if isinstance(stated, Value) and stated.form == "range" else None


def _reading(
    spec: Spec, catalogue: Catalogue, figure: Figure, found: Sequence[Compared]
) -> dict[str, object]:
    """All readings of a figure as one range, each with the spread of the model's tolerances."""
    spread = [_spread(spec, catalogue, figure, item) for item in found]
    reads = [item.read for item in found if item.read]
    field = spec.schema.fields.get(figure.name)
    if field is not None and field.given not in SELDOM_GUARANTEED and not any(map(sum, spread)):
        middle = sum(x.nominal for x in reads) / len(reads)
        return {"typ": spell(Value(*(middle,) * 3), figure.unit), "from": "measured"}
    pairs = list(zip(reads, spread, strict=True))
    if figure.unit in LEVELS:
        low = min(x.lo - below for x, (below, _) in pairs)
        high = max(x.hi + above for x, (_, above) in pairs)
    else:
        low = min(x.lo * (1 - below) for x, (below, _) in pairs)
        high = max(x.hi * (1 + above) for x, (_, above) in pairs)
    low, high = (float(f"{x:.4g}") for x in (low, high))
    read = Value(low, (low + high) / 2, high, "range" if low < high else "plain")
    return {"value": spell(read, figure.unit), "from": "measured"}


def _spread(
    spec: Spec, catalogue: Catalogue, figure: Figure, item: Compared
) -> tuple[float, float]:
    """How far the model's tolerances reach below and above its figure where it was measured.

    Ranges of use stand there; shares, or differences on a scale of levels.
    """
    pins = item.pins or {}
    used = {
        path: text
        for path, text in pins.items()
        if getattr(spec.values.get(path), "form", "range") == "range"
    }
    model = model_of(spec, catalogue, figure, used)
    there = model_of(spec, catalogue, figure, pins).node
    if isinstance(model.node, Gap) or isinstance(there, Gap):
        return 0.0, 0.0
    try:
        (low, high), at = model.ends(), float(there.value())
    except FigureError:
        return 0.0, 0.0
    whole = 1.0 if figure.unit in LEVELS else abs(at) or float("inf")
    return max(at - low, 0.0) / whole, max(high - at, 0.0) / whole
