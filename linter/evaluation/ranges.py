"""A missing value is a range: a check judged over all that a value may usually be.

Every field has a usual range, every word a list.  A check that lacks values is computed over
them.  It may fail even with the missing values at their best, meet its limits whatever they
are, or hang on them; where one number decides, the border is solved for.
"""

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from functools import cached_property
from itertools import product

from ..check import AtLeast, Check
from ..finding import Severity
from ..quantities.quantity import Value
from .border import Border, points_of, rank_of, solved
from .gap import Gap
from .graph import Graph
from .leaves import usual_value
from .node import Computed, FigureError
from .share import share_of
from .threshold import missed
from .tolerance import Extreme, climb, worst_case

MOST_MISSING = 4
MOST_ASSUMED = 16
MOST_CHOICES = 12
ROUNDS = 4

Plan = Callable[[Graph], Computed | Gap | None]
Stand = Value | str


@dataclass(frozen=True, slots=True)
class Best:
    """What a check says with the missing values at their best.

    severity: None where it is met.  extreme: the figure there, or at the worst where it is met.
    corner: where the missing values are at their best, where they decide.  border: where one
    number decides, what it must be, in words.  borders: the same where one of several numbers
    would be enough, each by its path.
    """

    severity: Severity | None
    extreme: Extreme
    corner: Mapping[str, float] | None = None
    border: str = ""
    borders: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True)
class Bounded:
    """What a check says over the usual ranges of what is missing.

    worst: the severity with the missing values at their worst, None where the check is met.
    node: what computes the figure.  paths: the missing leaves.  find_best: works out the best,
    which costs the most and is not always asked for.
    """

    worst: Severity | None
    node: Computed
    paths: tuple[str, ...]
    find_best: Callable[[], Best]

    @cached_property
    def at_best(self) -> Best:
        """What the check says with the missing values at their best."""
        return self.find_best()

    @property
    def best(self) -> Severity | None:
        """The severity with the missing values at their best."""
        return self.at_best.severity

    @property
    def extreme(self) -> Extreme:
        """The figure at the worst, or at the best where that fails."""
        return self.at_best.extreme

    @property
    def border(self) -> str:
        """What the one number that decides must be, in words."""
        return self.at_best.border

    def border_of(self, path: str) -> str:
        """What a missing number must be, if that is known."""
        return self.border or dict(self.at_best.borders).get(path, "")


def is_settled(over: Bounded) -> bool:
    """Whether more data could not make of a remark what holds the design."""
    assert over.best is not None
    return over.best != Severity.MINOR or over.worst == Severity.MINOR


def outcomes_of(
    plan: Plan,
    graph: Graph,
    check: Check,
    choices: Iterable[Iterable[str]],
    most: int = MOST_MISSING,
) -> list[Bounded | None]:
    """The check over the usual ranges of some leaves, for each choice and each of its words.

    Nothing where they have no ranges; None where the check does not concern the design then.
    """
    sets = [tuple(dict.fromkeys(paths)) for paths in choices]
    try:
        return [
            _over(plan, graph, check, dict(stand))
            for paths in sets
            for stand in _choices(graph, paths, most)
        ]
    except (_CannotTellError, FigureError):
        return []


def bounded(
    plan: Plan,
    graph: Graph,
    check: Check,
    choices: Iterable[Iterable[str]],
    most: int = MOST_MISSING,
) -> Bounded | None:
    """The check over the usual ranges of some leaves; None where they have none.

    plan: gives the figure's node in a graph.  choices: sets of leaves, each of which would be
    enough; what is said holds for every one of them.
    """
    found = outcomes_of(plan, graph, check, choices, most)
    outcomes = [item for item in found if item is not None]
    if not outcomes:
        return None
    if len(found) == 1:
        return outcomes[0]
    better = 1.0 if isinstance(check.limits, AtLeast) else -1.0
    worst = min(outcomes, key=lambda x: (rank_of(x.worst), better * x.extreme.figure))
    best = max(outcomes, key=lambda x: (rank_of(x.best), better * x.extreme.figure))
    if len(outcomes) < len(found):  # with one of the words the check does not concern the design
        return _as_best(worst, Best(None, worst.extreme, worst.at_best.corner))
    if best.best is not None:
        return replace(best, worst=worst.worst)
    if len(outcomes) == 1:
        return worst
    singles = {item.paths[0]: item.border for item in outcomes if len(item.paths) == 1}
    enough = singles if len(singles) == len(outcomes) else {}  # each number alone decides
    told = tuple(enough.items())
    return _as_best(worst, Best(None, worst.extreme, worst.at_best.corner, borders=told))


def _as_best(over: Bounded, best: Best) -> Bounded:
    return replace(over, find_best=lambda: best)


class _CannotTellError(Exception):
    """A missing value without a range, or too many of them."""


def _choices(
    graph: Graph, paths: Iterable[str], most: int
) -> Iterator[tuple[tuple[str, Stand], ...]]:
    """Every combination of the words of what is missing, each with the ranges of the numbers."""
    options = [_options(graph, path) for path in paths]
    number = 1
    for words in options:
        number *= len(words)
    if not options or len(options) > most or number > MOST_CHOICES:
        raise _CannotTellError
    return iter(list(product(*options)))


def _options(graph: Graph, path: str) -> list[tuple[str, Stand]]:
    """What may stand at a path: one range, or each of some words."""
    share = share_of(graph.derived, path)
    if share is not None:
        return [(path, share)]
    schema = graph.spec.schema
    try:
        field = schema.field_of(path)
    except KeyError:
        raise _CannotTellError from None
    if field.kind in ("word", "flag"):
        return [(path, word) for word in field.words]
    stand = usual_value(field)
    if stand is None or "[" in path:
        raise _CannotTellError
    return [(path, stand)]


def _over(plan: Plan, graph: Graph, check: Check, stand: dict[str, Stand]) -> Bounded | None:
    """The check with some values standing in, and with those that it then lacks as well.

    None where the design is then none that the check concerns.
    """
    node = plan(graph.supposing(stand))
    for _ in range(ROUNDS):
        if node is None or (isinstance(node, Gap) and node.absent):
            return None
        if not isinstance(node, Gap):
            fields = graph.spec.schema.field_of
            units = {x: "1" if x in graph.derived else fields(x).unit for x in stand}
            found = _judged(node, check, units)
            invented = any(isinstance(value, Value) for value in stand.values())
            if invented and found.worst is None and _is_of_words(node):
                raise _CannotTellError  # a range says how large a value is, not that it is there
            return found
        more = [_options(graph, item.path) for item in node.missing if item.path not in stand]
        numbers = [options[0] for options in more if len(options) == 1]
        if not numbers or len(numbers) < len(more) or len(stand) + len(numbers) > MOST_MISSING:
            raise _CannotTellError
        stand |= dict(numbers)
        node = plan(graph.supposing(stand))
    raise _CannotTellError


def _judged(node: Computed, check: Check, units: Mapping[str, str]) -> Bounded:
    adverse = -1 if isinstance(check.limits, AtLeast) else 1
    at_worst = worst_case(node, adverse, check.peaks_inside)
    worst = missed(check, at_worst.figure)
    free = [path for path in node.leaves if path.partition(":")[0] in units]

    def find_best() -> Best:
        if worst is None or not free:
            return Best(worst, at_worst)
        try:
            at_best = _at_best(node, adverse, free, at_worst.corner)
        except FigureError:  # inside the ranges it cannot be computed: what is missing decides
            return Best(None, at_worst)
        best = missed(check, at_best.figure)
        if best is not None:
            return Best(best, at_best)
        if len(units) > 1 or len(free) > 1:
            return Best(None, at_worst, at_best.corner)
        unit = units[free[0].partition(":")[0]]
        border = solved(node, at_best.corner, check, free[0], unit)
        return Best(None, at_worst, at_best.corner, str(border or ""))

    return Bounded(worst, node, tuple(units), find_best)


def _is_of_words(node: Computed) -> bool:
    """Whether a figure takes words alone: whether something is there, not how large it is."""
    return all(isinstance(item.value(), str) for item in node.arguments.values())


def _at_best(node: Computed, adverse: int, free: list[str], corner: Mapping[str, float]) -> Extreme:
    """The free leaves at their best while all others stand at their worst."""
    others = {path: (x.lo, x.hi) for path, x in node.leaves.items() if path not in free}
    ends = {path: (node.leaves[path].lo, node.leaves[path].hi) for path in free}
    turned = {path: hi if corner.get(path) == lo else lo for path, (lo, hi) in ends.items()}
    starts = [dict(corner), {**corner, **turned}]
    start = min(starts, key=lambda item: adverse * float(node.value(item)))
    points = {path: points_of(node.leaves[path]) for path in free}
    best = climb(node, climb(node, start, -adverse, points), adverse, others)
    return Extreme(float(node.value(best)), float(node.value()), best, {})


def border_of(
    over: Bounded, check: Check, path: str, unit: str, avoids: Severity | None = None
) -> Border | None:
    """What a missing leaf must be where the others are at their best.

    avoids: the finding that must not come up; without it none may.  None where the check is not
    met from there to one end of its range.
    """
    corner = over.at_best.corner
    if corner is None or path not in over.node.leaves:
        return None
    return solved(over.node, corner, check, path, unit, avoids)
