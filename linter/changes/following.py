"""What follows from a change of the design: the values that go along with others.

Each value that follows is a figure of the changed design, rounded to what can be bought.
One may follow from another, so all are worked out again in the light of the others.
"""

from collections.abc import Iterable, Mapping

from ..check import Constant, Input
from ..declare import PRODUCT, local_path
from ..design_change import DesignChange, Follow
from ..evaluation.change_faults import BEFORE
from ..evaluation.gap import Gap
from ..evaluation.graph import Graph
from ..evaluation.node import Computed, FigureError, Fixed, Node
from ..evaluation.tolerance import worst_case
from ..finding import Finding
from ..quantities.quantity import Value, spell, to_si
from .effect import Key, gravity
from .rerun import Reruns
from .solve import in_proportion
from .stock import downward, upward

PASSES = 3

Changes = dict[str, object]


class _UnknownError(Exception):
    """A value that a change cannot do without does not follow from what the spec states."""


def offered(reruns: Reruns, change: DesignChange, subject: str) -> Changes:
    """The values that a design change writes by itself; none where nothing need be written."""
    return _written(reruns, change, {}, subject) if _concerns(reruns, change, subject) else {}


def completed(reruns: Reruns, start: Mapping[str, object]) -> tuple[Changes, list[DesignChange]]:
    """Values of levers with all that follows from them, and the design changes they make."""
    name = repr(tuple(start.items()))
    if name not in reruns.completed:
        reruns.completed[name] = _completed(reruns, start)
    return reruns.completed[name]


def spoiler(reruns: Reruns, finding: Finding, start: Mapping[str, object]) -> Key | None:
    """What values of levers that were tried would spoil, if that is why they are refused."""
    whole, _ = completed(reruns, start)
    key = (finding.check, finding.subject)
    return reruns.spoiler(whole, key, gravity(finding)) if whole else None


def _completed(reruns: Reruns, start: Mapping[str, object]) -> tuple[Changes, list[DesignChange]]:
    moved = {local_path(path): path for path in start}
    found = [x for x in reruns.review.catalogue.changes if moved.keys() & set(x.moves)]
    values = dict(start)
    for change in found:
        first = next(moved[path] for path in change.moves if path in moved)
        subject = first.split(".")[1] if first != local_path(first) else PRODUCT
        if _concerns(reruns, change, subject):
            values = _written(reruns, change, values, subject)
    return values, found


def _concerns(reruns: Reruns, change: DesignChange, subject: str) -> bool:
    """Whether a design change concerns the design at hand."""
    channel = None if subject == PRODUCT else subject
    return reruns.run.graph.matches(change.applies, channel) is not False


def _written(
    reruns: Reruns, change: DesignChange, start: Mapping[str, object], subject: str
) -> Changes:
    before, values = reruns.run.graph, dict(start)
    places = [
        (item, path, channel)
        for item in change.follows
        for path, channel in _places(reruns, item, subject)
        if path not in start
    ]
    for _ in range(PASSES):
        after = _graph(reruns, values)
        if after is None:
            return {}
        found = dict(start)
        for item, path, channel in places:
            try:
                data = _needed(item, path, channel, before, after)
            except _UnknownError:
                return {}
            if data is not None:
                found[path] = data
        if found == values:
            break
        values = found
    return values


def _places(reruns: Reruns, item: Follow, subject: str) -> Iterable[tuple[str, str | None]]:
    """Where a value is written: once, or in the channel at hand, or in each that is by itself."""
    spec = reruns.review.spec
    if not spec.schema.is_channel_path(item.path):
        return [(item.path, None)]
    names = spec.channels if subject == PRODUCT else (subject,)
    done: dict[str, str] = {}
    for name in names:
        path = f"channels.{name}.{item.path}"
        if not any(path in reruns.alike.paths(other) for other in done):
            done[path] = name
    return list(done.items())


def _graph(reruns: Reruns, values: Mapping[str, object]) -> Graph | None:
    if not values:
        return reruns.run.graph
    revised = reruns.run.revised(reruns.alike.everywhere(values))
    return revised[0].graph if revised else None


def _needed(
    item: Follow, path: str, channel: str | None, before: Graph, after: Graph
) -> object | None:
    """What is written at a path; None where what is stated stays, or nothing can be said."""
    stated = before.spec.values.get(path)
    if stated is None and not item.new:
        return None
    if item.figure is None:
        return item.word if item.word != (getattr(stated, "text", None) or stated) else None
    number = _figure(item, channel, before, after)
    if number is None and item.new:
        raise _UnknownError(path)
    unit = before.spec.schema.field_of(path).unit
    if number is None or (isinstance(stated, Value) and _is_safe(item, stated, number)):
        return None
    if item.stock:
        walk = downward if item.safe == "down" else upward
        rounded = next(walk(item.stock, unit, number), None)
        if rounded is None:
            return None
        number = rounded
    return _as_data(item, stated, float(f"{number:.3g}") if not item.stock else number, unit)


def _is_safe(item: Follow, stated: Value, number: float) -> bool:
    """Whether a stated value lies far enough the safe way, or is what is wanted already."""
    if item.safe == "up":
        return stated.lo >= number
    if item.safe == "down":
        return stated.hi <= number
    return abs(stated.nominal - number) <= 1e-3 * abs(number)


def _figure(item: Follow, channel: str | None, before: Graph, after: Graph) -> float | None:
    """The figure at the worst corner where it is rounded to the safe side, else the nominal one."""
    nodes: dict[str, Node] = {}
    for name, source in item.inputs.items():
        found = _resolved(source, channel, before, after)
        if isinstance(found, Gap):
            return None
        nodes[name] = found
    assert item.figure is not None
    node = Computed(item.path, item.figure, nodes)
    try:
        if item.safe and item.stock:
            return worst_case(node, 1 if item.safe == "up" else -1).figure
        return float(node.value())
    except FigureError:
        return None


def _resolved(
    source: Input | Constant, channel: str | None, before: Graph, after: Graph
) -> Node | Gap:
    if isinstance(source, Constant):
        return Fixed(to_si(source.value))
    graph = before if source.path.startswith(BEFORE) else after
    path = source.path.removeprefix(BEFORE)
    return graph.resolve(path, channel, source.default)


def _as_data(item: Follow, stated: object, number: float, unit: str) -> object:
    """The value as a spec would hold it, marked as an estimate where it is a guess."""
    data: object = spell(Value(number, number, number), unit)
    if item.spread:
        data = f"{data} {item.spread}"
    elif isinstance(stated, Value) and stated.form in ("tolerance", "line"):
        data = in_proportion(stated, number, unit)
    if not item.guess:
        return data
    if isinstance(data, Mapping):
        return {**data, "from": "estimate"}
    return {"value": data, "from": "estimate"}
