"""What a worker does: reviews some items and tells of each; a fault costs its item only."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Literal

from ..changes.causes import causes_of
from ..changes.stages import with_remedies
from ..check import Milestone
from ..evaluation.catalogue import without_checks
from ..evaluation.engine import Assessment
from ..finding import Place, Severity
from ..judging.criteria import USUAL, Terms
from ..judging.review import Outcome, Review, with_run
from ..reading.refusal import Refusal
from .items import Item, Text, Variant, criteria_of, loaded, name_of
from .result import Result, result_of
from .variants import varied

Wanted = Literal["all", "holding", "none"]


@dataclass(frozen=True, slots=True)
class Order:
    """What is asked for each spec.

    remedies: findings that proven changes are wanted for; checks: only those of these checks.
    margins: the checks whose margins are wanted; whole: whether the whole review is.
    """

    milestone: Milestone | None = None
    hold_at: Severity | None = None
    terms: Terms = USUAL
    remedies: Wanted = "none"
    checks: tuple[str, ...] = ()
    margins: tuple[str, ...] = ()
    whole: bool = False


PLAIN = Order()
Numbered = tuple[int, Item]


def results_of(items: Sequence[Numbered], order: Order) -> list[Result]:
    """The results of some items."""
    return [one_result(number, item, order) for number, item in items]


def light_results_of(items: Sequence[Numbered], order: Order) -> list[Result]:
    """The same without what the other side has anyway: catalogue and house file hold functions."""
    return [_light(result) for result in results_of(items, order)]


def one_result(number: int, item: Item, order: Order) -> Result:
    """The result of one item; a fault of the program is told there."""
    try:
        outcome = review_item(item, order)
    except Exception as error:
        return not_assessed(number, item, f"the program failed: {type(error).__name__}: {error}")
    return result_of(number, name_of(item), outcome, order.margins, order.whole)


def not_assessed(number: int, item: Item, why: str) -> Result:
    """The result of an item whose review did not come to an end."""
    name = name_of(item)
    refusal = Refusal(Place(name, 1, 1), why, "a review that comes to its end")
    return result_of(number, name, (refusal,), (), whole=True)


def review_item(item: Item, order: Order) -> Outcome:
    """The review of one item as ordered, or its refusals."""
    if isinstance(item, Variant):
        terms = (order.milestone, order.hold_at, order.terms)
        outcome, run = varied(item.base, item.changes, *terms, whole=_is_whole(order)), None
    else:
        outcome, run = _alone(item, order)
    if isinstance(outcome, Review) and order.remedies != "none":
        only_holding = order.remedies == "holding" and not order.checks
        advised = with_remedies(outcome, only_holding, order.checks, run)
        return replace(advised, causes=causes_of(advised, run))
    return outcome


def _is_whole(order: Order) -> bool:
    return order.whole or order.remedies != "none"


def _alone(item: Path | Text, order: Order) -> tuple[Outcome, Assessment | None]:
    """A review with its run, or refusals."""
    found = loaded(item, order.terms)
    if found.spec is None:
        return found.refusals, None
    criteria = criteria_of(item, order.terms)
    if isinstance(criteria, tuple):
        return criteria, None
    return with_run(found.spec, order.milestone, order.hold_at, criteria=criteria)


def _light(result: Result) -> Result:
    outcome = result.outcome
    if not isinstance(outcome, Review):
        return result
    spec = replace(outcome.spec, defaults={})
    criteria = replace(outcome.criteria, house=None)
    bare = without_checks(spec.schema)
    return replace(result, outcome=replace(outcome, spec=spec, catalogue=bare, criteria=criteria))


def made_whole(result: Result, item: Item, order: Order) -> Result:
    """The result of a worker, made whole again."""
    outcome = result.outcome
    if not isinstance(outcome, Review):
        return result
    criteria = criteria_of(item.base if isinstance(item, Variant) else item, order.terms)
    if isinstance(criteria, tuple):
        return result_of(result.number, result.name, criteria, (), whole=True)
    criteria = replace(criteria, day=outcome.criteria.day)
    spec = criteria.applied(outcome.spec)
    whole = replace(outcome, spec=spec, catalogue=criteria.catalogue, criteria=criteria)
    return replace(result, outcome=whole)
