"""What the missing values must be: the bounds that the open checks set, by part.

A bound is solved at the worst corner of all that is stated.  Where a check lacks several
values, each of them is bounded with the others at the best that they usually are: no value
beyond the bound can do, and one within it need not be enough.  Of several bounds on one
side the tightest counts.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from ..check import Check
from ..declare import CHANNELS, PRODUCT, Field, local_path
from ..evaluation.engine import Assessment
from ..evaluation.ranges import Border, Bounded, border_of, outcomes_of
from ..finding import Finding, Status
from ..judging.review import Review
from .questions import alike_paths, part_of

NO_CHOICE = ("claim", "use", "outcome")


@dataclass(frozen=True, slots=True)
class Requirement:
    """A bound on one missing value.

    paths: where the value belongs, one for each channel that it holds for; check, subject:
    what sets the bound; beside: the other missing values, taken at their best.
    """

    paths: tuple[str, ...]
    field: Field
    border: Border
    check: str
    title: str
    subject: str
    beside: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Requirements:
    """The bounds on the missing values of one part, one value after the other."""

    part: str
    channels: tuple[str, ...]
    type_number: str
    bounds: tuple[Requirement, ...]


def requirements_of(review: Review) -> tuple[Requirements, ...]:
    """The bounds on all that is missing, by part; on each side of a value the tightest."""
    run = Assessment(review.spec, review.catalogue, review.verdict.milestone)
    tightest: dict[tuple[tuple[str, ...], bool], Requirement] = {}
    for finding in review.of_status(Status.OPEN):
        for item in _required(run, finding):
            key = (item.paths, item.border.at_least)
            if key not in tightest or _is_tighter(item, tightest[key]):
                tightest[key] = item
    parts: dict[tuple[str, tuple[str, ...], str], list[Requirement]] = {}
    for item in sorted(tightest.values(), key=_order):
        parts.setdefault(part_of(review.spec, item.paths, item.field), []).append(item)
    return tuple(Requirements(*key, tuple(items)) for key, items in parts.items())


def _required(run: Assessment, finding: Finding) -> Iterator[Requirement]:
    """The bounds that one open answer sets on what it lacks."""
    entry = run.catalogue.entry(finding.check)
    paths = [item.path for item in finding.advice.missing]
    if entry is None or not paths:
        return
    question = run.question(entry, finding.subject)
    for path in paths:
        where = alike_paths(run.spec, path)
        if finding.subject == PRODUCT and len(where) > 1:
            continue  # the channels would have to move together
        field = run.spec.schema.field_of(path)
        if field.kind != "quantity" or _is_statement(entry.check, local_path(path), run):
            continue
        found = outcomes_of(question.plan, question.graph, entry.check, [[path]])
        border = _loosest(found, entry.check, path, field.unit)
        beside = dict.fromkeys(x for item in found if item for x in item.paths if x != path)
        if border is not None and not any(_is_elsewhere(x, path) for x in beside):
            told = (finding.check, finding.title, finding.subject)
            yield Requirement(where, field, border, *told, tuple(beside))


def _is_elsewhere(path: str, other: str) -> bool:
    """Whether two paths belong to different channels, whose values would have to move together."""
    owners = [x.split(".")[1] for x in (path, other) if x.startswith(f"{CHANNELS}.")]
    return len(set(owners)) > 1


def _is_statement(check: Check, path: str, run: Assessment) -> bool:
    """Whether a value is no one's choice, or a check only asks whether a print can be true."""
    levers = {lever.path for lever in check.levers}
    return run.spec.schema.nature_of(path) in NO_CHOICE or path in {*check.topic} - levers


def _loosest(
    outcomes: Sequence[Bounded | None], check: Check, path: str, unit: str
) -> Border | None:
    """What a value must be whatever the missing words are; None where one sets no bound."""
    borders = [border_of(item, check, path, unit) for item in outcomes if item is not None]
    known = [border for border in borders if border is not None]
    if not known or len(known) < len(outcomes) or len({border.at_least for border in known}) > 1:
        return None
    return min(known, key=lambda x: x.value if x.at_least else -x.value)


def _is_tighter(one: Requirement, other: Requirement) -> bool:
    if one.border.value == other.border.value:
        return len(one.beside) < len(other.beside)
    return (one.border.value > other.border.value) is one.border.at_least


def _order(item: Requirement) -> tuple[str, bool]:
    return item.paths[0], not item.border.at_least
