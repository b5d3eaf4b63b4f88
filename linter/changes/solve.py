"""Which values of one leaf bring a check's figure inside its limit.

The leaf is moved at the worst corner that the check reported, over the usual range of its
field; the border between missing and meeting is found by bisection and rounded to stock
on the meeting side.
"""

import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from itertools import islice

from ..check import Lever
from ..declare import usual_bounds
from ..evaluation.catalogue import Entry
from ..evaluation.engine import Assessment
from ..evaluation.node import Computed, FigureError, Moved
from ..evaluation.threshold import missed
from ..finding import Finding, Status
from ..quantities.quantity import Value, spell
from .alike import Alike
from .stock import downward, upward

GRID = 32
BISECTIONS = 40
CANDIDATES = 3
DIGITS = 9
LINE_DIGITS = 3
MORE_PARTS = 1e-3
END_STEPS = 40
NUMBERS = ("quantity", "count")
PART_WAY = (1.3, 0.75, 2.0, 0.5)


@dataclass(frozen=True, slots=True)
class Candidate:
    """A stock value of a leaf that should meet the limit.

    direction: 1 for more than now (where new: than usual), -1 for less, 0 for a word.
    change: how far it is from the present value, as the logarithm of the ratio.
    border: of what meets the limit, from which it was rounded; nothing of a word.
    """

    path: str
    text: object
    direction: int
    change: float
    border: float | None = None


@dataclass(frozen=True, slots=True)
class NumericLeaf:
    """One leaf that can be turned, with the values it can take."""

    path: str
    lever: Lever
    unit: str
    now: Value
    low: float
    high: float
    new: bool = False

    @property
    def linear(self) -> bool:
        """Whether steps are differences (temperatures, zero) and not ratios."""
        return self.unit in ("degC", "dB") or self.low <= 0.0

    def grid(self) -> list[float]:
        """Values over the range, the present one included."""
        if self.linear:
            step = (self.high - self.low) / GRID
            points = [self.low + step * n for n in range(GRID + 1)]
        else:
            ratio = (self.high / self.low) ** (1 / GRID)
            points = [self.low * ratio**n for n in range(GRID + 1)]
        return sorted({*points, self.now.nominal})

    def distance(self, x: float) -> float:
        """How large a change from the present value is; a new value counts as one."""
        if self.new:
            return 1.0
        if self.linear or x <= 0.0 or self.now.nominal <= 0.0:
            return abs(x - self.now.nominal) / max(self.high - self.low, 1e-30)
        return abs(math.log(x / self.now.nominal))


def candidates(
    run: Assessment, entry: Entry, finding: Finding, lever: Lever, path: str
) -> list[Candidate]:
    """Stock values that meet the limit at the worst corner, nearest change first."""
    field = run.spec.schema.field_of(path)
    if field.kind not in NUMBERS or (isinstance(lever.stock, tuple) and field.kind == "count"):
        return list(_words(run, lever, path))
    now = run.spec.values.get(path)
    if isinstance(now, Value) and now.form == "range":
        return list(_ends(run, entry, finding, lever, path))
    leaf = numeric_leaf(run, lever, path)
    if leaf is not None:
        return _numbers(run, entry, finding, leaf)
    bounds = usual_bounds(field)
    if bounds is None:
        return []
    middle = Value(*(((bounds[0] * bounds[1]) ** 0.5 if bounds[0] > 0 else bounds[1] / 2),) * 3)
    found = run.revised(_everywhere(run, path, spell(middle, field.unit)))
    if found is None:
        return []
    fitted, _ = found
    leaf = NumericLeaf(path, lever, field.unit, middle, *bounds, new=True)
    return _numbers(fitted, entry, finding, leaf)


def _everywhere(run: Assessment, path: str, value: object) -> dict[str, object]:
    """A value in all channels that state the same: they are changed together."""
    return Alike(run.spec, run.twins).everywhere({path: value})


def numeric_leaf(run: Assessment, lever: Lever, path: str) -> NumericLeaf | None:
    """The leaf behind a lever with its usual range, when the spec states it as one number."""
    field = run.spec.schema.field_of(path)
    bounds = usual_bounds(field)
    now = run.spec.values.get(path)
    if bounds is None or not isinstance(now, Value) or now.form == "range":
        return None
    low, high = min(bounds[0], now.nominal), max(bounds[1], now.nominal)
    if lever.within < float("inf") and now.nominal > 0.0:
        low, high = max(low, now.nominal / lever.within), min(high, now.nominal * lever.within)
    return NumericLeaf(path, lever, field.unit, now, low, high)


def _ends(
    run: Assessment, entry: Entry, finding: Finding, lever: Lever, path: str
) -> Iterator[Candidate]:
    """A range narrowed from one end in steps of stock, until the check is met."""
    now = run.spec.values[path]
    assert isinstance(now, Value)
    unit = run.spec.schema.field_of(path).unit
    for direction in (1, -1):
        start = now.lo if direction > 0 else now.hi
        walk = (upward if direction > 0 else downward)(lever.stock, unit, start)
        for number in islice(walk, 1, END_STEPS):
            low, high = (number, now.hi) if direction > 0 else (now.lo, number)
            if low >= high:
                break
            text = spell(Value(low, (low + high) / 2, high, "range"), unit)
            found = run.revised(_everywhere(run, path, text))
            if found is None:
                break
            if found[0].answer(entry, finding.subject).status is Status.MEETS:
                yield Candidate(path, text, direction, abs(number - start) / (now.hi - now.lo))
                break


def part_way(run: Assessment, lever: Lever, path: str) -> Iterator[object]:
    """Stock values some way up and down from the present one, for changes in pairs."""
    field = run.spec.schema.field_of(path)
    bounds = usual_bounds(field)
    now = run.spec.values.get(path)
    if field.kind not in NUMBERS:
        yield from (item.text for item in _words(run, lever, path))
        return
    if bounds is None or not isinstance(now, Value) or now.form == "range":
        return
    leaf = NumericLeaf(path, lever, field.unit, now, min(bounds[0], now.lo), max(bounds[1], now.hi))
    if leaf.linear or now.nominal <= 0.0:
        return
    for ratio in PART_WAY:
        walk = (upward if ratio > 1 else downward)(lever.stock, leaf.unit, now.nominal * ratio)
        number = next(walk, None)
        if number is not None and leaf.low <= number <= leaf.high:
            yield in_proportion(leaf.now, number, leaf.unit, leaf.linear)


def _words(run: Assessment, lever: Lever, path: str) -> Iterator[Candidate]:
    """The other words or counts that a lever may be set to."""
    now = run.spec.values.get(path)
    stated = now.text if isinstance(now, Value) else now
    for text in lever.stock if isinstance(lever.stock, tuple) else ():
        if text != stated:
            far = 1.0
            if run.spec.schema.field_of(path).kind == "count":
                now_is = now.nominal if isinstance(now, Value) else 1.0
                far = abs(math.log(float(text) / now_is))
                if far == 0.0:
                    continue
                far += MORE_PARTS if float(text) > now_is else 0.0
            yield Candidate(path, text, 0, far)


def _numbers(run: Assessment, entry: Entry, finding: Finding, leaf: NumericLeaf) -> list[Candidate]:
    meets = probe(run, entry, finding, leaf)
    if meets is None:
        return []
    found: list[Candidate] = []
    within = leaf.new and meets(leaf.now.nominal)
    for border, rising in _borders(leaf, meets):
        walk = (upward if rising else downward)(leaf.lever.stock, leaf.unit, border)
        for number in islice(walk, CANDIDATES):
            if leaf.low <= number <= leaf.high and meets(number):
                direction = 1 if rising or within else -1
                text = in_proportion(leaf.now, number, leaf.unit, leaf.linear)
                found.append(Candidate(leaf.path, text, direction, leaf.distance(number), border))
    return sorted(found, key=lambda item: item.change)


def probe(
    run: Assessment, entry: Entry, finding: Finding, leaf: NumericLeaf
) -> Callable[[float], bool] | None:
    """Whether a value of the leaf meets the mildest limit at the finding's worst corner."""
    paths = Alike(run.spec, run.twins).paths(leaf.path)
    node = run.prepare(entry, finding.subject, run.graph.freed(frozenset(paths)))
    if not isinstance(node, Computed) or leaf.path not in node.leaves:
        return None
    corner = {item.path: item.value for item in finding.evidence.corner}
    others = [path for path in paths if path != leaf.path and path in node.leaves]
    at_end = corner.get(leaf.path, leaf.now.nominal)

    def meets(x: float) -> bool:
        if leaf.linear or not leaf.now.nominal:
            end = x + at_end - leaf.now.nominal
        else:
            end = x * at_end / leaf.now.nominal
        try:
            base = corner | dict.fromkeys(others, end) if others else corner
            figure = float(node.value(Moved(base, leaf.path, end)))
        except FigureError:
            return False
        return missed(entry.check, figure) is None

    return meets


def _borders(leaf: NumericLeaf, meets: Callable[[float], bool]) -> Iterator[tuple[float, bool]]:
    """The nearest meeting values above and below the present one.

    Where the usual middle of a new leaf meets, the ends of what meets follow it: the middle
    may break what a milder value leaves whole.
    """
    grid = leaf.grid()
    here = grid.index(leaf.now.nominal)
    inside = meets(leaf.now.nominal)
    if inside:
        yield leaf.now.nominal, True
        if not leaf.new:
            return
    for rising in (True, False):
        points = grid[here:] if rising else grid[here::-1]
        last = points[0]
        for point in points[1:]:
            if meets(point) is not inside:
                ends = (point, last) if inside else (last, point)
                yield _bisect(*ends, meets), rising is not inside
                break
            last = point


def _bisect(outside: float, inside: float, meets: Callable[[float], bool]) -> float:
    for _ in range(BISECTIONS):
        middle = (outside + inside) / 2
        if meets(middle):
            inside = middle
        else:
            outside = middle
    return inside


def in_proportion(now: Value, number: float, unit: str, linear: bool = False) -> object:
    """A new value as spec text, with the tolerance or the line that the old one has."""
    if now.form not in ("tolerance", "line"):
        return spell(Value(number, number, number), unit)
    if now.form == "tolerance" and "±" in now.text:
        tolerance = now.text.partition("±")[2].strip()
        return f"{spell(Value(number, number, number), unit)} ± {tolerance}"
    if linear or (now.form == "tolerance" and "%" not in now.text):
        step = number - now.nominal
        low, high = now.lo + step, now.hi + step
    else:
        digits = DIGITS if now.form == "tolerance" else LINE_DIGITS
        ratio = number / now.nominal
        low, high = (float(f"{x * ratio:.{digits}g}") for x in (now.lo, now.hi))
    return spell(Value(low, number, high, now.form, sides=now.sides), unit)
