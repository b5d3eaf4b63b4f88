"""Which values of one leaf bring a check's figure inside its limit.

The leaf is moved at the worst corner that the check reported, over the usual range of its
field; the border between missing and meeting is found by bisection and rounded to stock
on the meeting side.
"""

import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from itertools import islice

from .catalogue import Entry
from .check import AtLeast, Lever
from .engine import PRODUCT, Assessment
from .finding import Finding
from .graph import Graph
from .node import Computed, FigureError
from .quantity import Value, spell
from .spec import field_of, usual_bounds
from .stock import downward, upward

GRID = 32
BISECTIONS = 40
CANDIDATES = 3


@dataclass(frozen=True, slots=True)
class Candidate:
    """A stock value of a leaf that should meet the limit; ``change`` as a ratio's log."""

    path: str
    text: object
    number: float
    change: float


@dataclass(frozen=True, slots=True)
class Dial:
    """One leaf that can be turned, with the values it can take."""

    path: str
    lever: Lever
    unit: str
    now: Value
    low: float
    high: float

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
        """How large a change from the present value is."""
        if self.linear or x <= 0.0 or self.now.nominal <= 0.0:
            return abs(x - self.now.nominal) / max(self.high - self.low, 1e-30)
        return abs(math.log(x / self.now.nominal))


def dial(run: Assessment, lever: Lever, path: str) -> Dial | None:
    """The leaf behind a lever, when the spec states it as a number."""
    now = run.spec.values.get(path)
    field = field_of(path)
    bounds = usual_bounds(field)
    if not isinstance(now, Value) or bounds is None:
        return None
    low, high = min(bounds[0], now.nominal), max(bounds[1], now.nominal)
    return Dial(path, lever, field.unit, now, low, high)


def candidates(run: Assessment, entry: Entry, finding: Finding, turn: Dial) -> list[Candidate]:
    """Stock values that meet the limit at the worst corner, nearest change first."""
    meets = _probe(run, entry, finding, turn)
    if meets is None:
        return []
    found: list[Candidate] = []
    for border, rising in _borders(turn, meets):
        walk = (upward if rising else downward)(turn.lever.stock, turn.unit, border)
        for number in islice(walk, CANDIDATES):
            if turn.low <= number <= turn.high and meets(number):
                text = _as_text(turn, number)
                found.append(Candidate(turn.path, text, number, turn.distance(number)))
    return sorted(found, key=lambda item: item.change)


def _probe(
    run: Assessment, entry: Entry, finding: Finding, turn: Dial
) -> Callable[[float], bool] | None:
    """Whether a value of the leaf meets the mildest limit at the finding's worst corner."""
    graph = Graph(run.spec, run.catalogue.derived, free=frozenset({turn.path}))
    node = run.prepare(entry, finding.subject, graph)
    if not isinstance(node, Computed) or turn.path not in node.leaves:
        return None
    corner = {item.path: float(item.value) for item in finding.corner}  # type: ignore[arg-type]
    at_end = corner.get(turn.path, turn.now.nominal)
    rising = isinstance(entry.check.limits, AtLeast)
    limit = run.target(entry.check)

    def meets(x: float) -> bool:
        if turn.linear or not turn.now.nominal:
            end = x + at_end - turn.now.nominal
        else:
            end = x * at_end / turn.now.nominal
        try:
            figure = float(node.value(corner | {turn.path: end}))
        except FigureError:
            return False
        return figure >= limit if rising else figure <= limit

    return meets


def _borders(turn: Dial, meets: Callable[[float], bool]) -> Iterator[tuple[float, bool]]:
    """The nearest meeting values above and below the present one."""
    grid = turn.grid()
    here = grid.index(turn.now.nominal)
    for rising in (True, False):
        points = grid[here:] if rising else grid[here::-1]
        outside = points[0]
        for point in points[1:]:
            if meets(point):
                yield _bisect(outside, point, meets), rising
                break
            outside = point


def _bisect(outside: float, inside: float, meets: Callable[[float], bool]) -> float:
    for _ in range(BISECTIONS):
        middle = (outside + inside) / 2
        if meets(middle):
            inside = middle
        else:
            outside = middle
    return inside


def _as_text(turn: Dial, number: float) -> object:
    """The new value as spec text, with the tolerance that the old one has."""
    now = turn.now
    if now.form not in ("tolerance", "line"):
        return spell(Value(number, number, number), turn.unit)
    if turn.linear:
        step = number - now.nominal
        moved = Value(now.lo + step, number, now.hi + step, now.form, sides=now.sides)
    else:
        ratio = number / now.nominal
        moved = Value(now.lo * ratio, number, now.hi * ratio, now.form, sides=now.sides)
    return spell(moved, turn.unit)


def subject_channel(finding: Finding) -> str | None:
    """The channel of a finding, None for the product."""
    return None if finding.subject == PRODUCT else finding.subject
