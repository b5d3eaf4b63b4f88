"""Which single value would make the model agree with what was measured, and how far it has to go.

Each value on which a figure depends is turned alone, over its usual range, all others at their
nominal values.  What a sum leaves out has no value that speaks against it, and comes first;
then what is assumed or estimated; then what is stated, by the ratio that it would take.
"""

import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Literal

from ..declare import field_path, local_path, usual_bounds
from ..evaluation.gap import Gap
from ..evaluation.graph import Graph
from ..evaluation.leaves import usual_value
from ..evaluation.node import FigureError, Node
from ..finding import Assumed
from ..quantities.quantity import QuantityError, Value, parse, show

Plan = Callable[[Graph], Node | Gap]
Kind = Literal["left out", "assumed", "stated"]
KINDS: tuple[Kind, ...] = ("left out", "assumed", "stated")
STEPS = 48
BISECTIONS = 60
LEAST, MOST, PER_DECADE = -15, 6, 4
FIXED_NATURES = ("claim", "topology")
LINEAR = ("degC", "dB")


@dataclass(frozen=True, slots=True)
class Explanation:
    """One value that would explain a measurement.

    now: what it is taken as, in words; needed: what it would have to be; distance: how far
    that is, the logarithm of the ratio or the share of its usual range; of a value that was
    taken as nothing, the ratio to the middle of what is usual.
    """

    path: str
    kind: Kind
    now: str
    needed: float
    unit: str
    distance: float
    meaning: str = ""

    @property
    def short(self) -> str:
        """What it would have to be."""
        return f"{local_path(self.path)} {show(self.needed, self.unit)}"

    @property
    def text(self) -> str:
        """The same, and what it is."""
        return f"{self.short} ({self.now})"


def explanations(
    graph: Graph, plan: Plan, target: float, fixed: frozenset[str]
) -> tuple[Explanation, ...]:
    """Every single value that would make a figure what was measured, the likeliest first.

    plan: gives the figure in a graph.  fixed: what the conditions set.
    """
    node = plan(graph)
    assert isinstance(node, Node)
    found = [*_of_assumed(graph, plan, target, node), *_of_stated(graph, plan, target, node, fixed)]
    once = {x.path: x for x in reversed(found)}
    return tuple(sorted(once.values(), key=lambda x: (KINDS.index(x.kind), x.distance, x.path)))


def _of_stated(
    graph: Graph, plan: Plan, target: float, node: Node, fixed: frozenset[str]
) -> Iterator[Explanation]:
    """Stated values, over their usual range."""
    schema = graph.spec.schema
    for path in sorted(node.used - fixed):
        now = graph.spec.values.get(path)
        field = schema.field_of(path)
        bounds = usual_bounds(field) if field.kind == "quantity" and "[" not in path else None
        if not isinstance(now, Value) or not bounds or schema.nature_of(path) in FIXED_NATURES:
            continue
        low, high = min(bounds[0], now.lo), max(bounds[1], now.hi)
        at = plan(graph.freed(frozenset({path})))
        needed = _needed(at, path, target, now.nominal, _points(low, high, field.unit))
        if needed is not None:
            kind: Kind = "assumed" if now.provenance == "estimate" else "stated"
            word = "estimated" if now.provenance == "estimate" else "stated"
            far = _distance(needed, now.nominal, low, high, field.unit)
            yield Explanation(path, kind, f"{word}: {now.text}", needed, field.unit, far)


def _of_assumed(graph: Graph, plan: Plan, target: float, node: Node) -> Iterator[Explanation]:
    """What stands in for silence: a field over its usual range, a left-out term over any."""
    for item in node.assumed:
        if item.path in graph.spec.stood_in:
            yield from _of_itself(graph, target, item)
        if item.path in graph.spec.values:
            continue  # an estimate, which is turned among the stated ones
        turn = _of_quantity if item.path in graph.derived else _of_silence
        found = turn(graph, plan, target, item)
        if found is not None:
            yield found


def _of_itself(graph: Graph, target: float, item: Assumed) -> Iterator[Explanation]:
    """The figure itself, which the model only assumes and the measurement has replaced."""
    unit = graph.spec.schema.field_of(item.path).unit
    try:
        now = parse(item.text, unit).nominal
    except QuantityError:
        return
    far = _distance(target, now, now, now, unit)
    yield Explanation(item.path, *_standing(item), target, unit, far)


def _of_quantity(graph: Graph, plan: Plan, target: float, item: Assumed) -> Explanation | None:
    quantity = graph.derived[item.path]
    try:
        now = parse(item.text, quantity.unit).nominal
    except QuantityError:
        return None
    count = (MOST - LEAST) * PER_DECADE + 1
    points = [10.0 ** (LEAST + n / PER_DECADE) for n in range(count)]
    at = plan(Graph(graph.spec, graph.derived, free=frozenset({item.path})))
    needed = _needed(at, item.path, target, now, points)
    if needed is None:
        return None
    far = _distance(needed, now, now, now, quantity.unit)
    words = _standing(item)
    return Explanation(item.path, *words, needed, quantity.unit, far, quantity.meaning)


def _of_silence(graph: Graph, plan: Plan, target: float, item: Assumed) -> Explanation | None:
    field = graph.fields.get(field_path(item.path))
    stand = usual_value(field) if field and field.kind == "quantity" else None
    if field is None or stand is None or field.given == "range":
        return None
    at = plan(graph.supposing({item.path: stand}))
    try:
        now = parse(item.text, field.unit).nominal
    except QuantityError:
        now = stand.nominal
    points = _points(stand.lo, stand.hi, field.unit)
    needed = _needed(at, item.path, target, now, points)
    if needed is None:
        return None
    far = _distance(needed, now, stand.lo, stand.hi, field.unit)
    return Explanation(item.path, *_standing(item), needed, field.unit, far, field.meaning)


def _standing(item: Assumed) -> tuple[Kind, str]:
    if item.leaning == "floor":
        return "left out", "not given, left out"
    return "assumed", f"not given, taken as {item.text}"


def _points(low: float, high: float, unit: str) -> list[float]:
    """Values over a range: by ratio, or in equal steps where the scale has no ratio."""
    if unit in LINEAR or low < 0.0:
        return [low + (high - low) * n / STEPS for n in range(STEPS + 1)]
    least = low or high * 1e-6
    return [least * (high / least) ** (n / STEPS) for n in range(STEPS + 1)]


def _needed(
    node: Node | Gap, path: str, target: float, now: float, points: list[float]
) -> float | None:
    """The nearest value at which a figure is what was measured, above or below the present one."""
    if isinstance(node, Gap) or path not in node.leaves:
        return None

    def off(x: float) -> float | None:
        try:
            found = float(node.value({path: x})) - target
        except FigureError:
            return None
        return found if math.isfinite(found) else None

    found = []
    for side in ([x for x in points if x > now], [x for x in points[::-1] if x < now]):
        last = now
        for point in side:
            here, there = off(last), off(point)
            if here is not None and there is not None and here * there <= 0.0 and here != there:
                found.append(_bisected(last, point, off))
                break
            last = point
    return min(found, key=lambda x: abs(x - now)) if found else None


def _bisected(a: float, b: float, off: Callable[[float], float | None]) -> float:
    """Where the distance changes its sign between two values."""
    start = off(a) or 0.0
    for _ in range(BISECTIONS):
        middle = (a + b) / 2
        here = off(middle)
        if here is None or here * start > 0.0:
            a = middle
        else:
            b = middle
    return b


def _distance(needed: float, now: float, low: float, high: float, unit: str) -> float:
    """How far a value has to go; from nothing, by how unusual it would be."""
    if unit in LINEAR:
        return abs(needed - now) / max(high - low, 1e-30)
    start = now if now > 0.0 else (low * high) ** 0.5
    return abs(math.log(needed / start)) if needed > 0.0 and start > 0.0 else 0.0
