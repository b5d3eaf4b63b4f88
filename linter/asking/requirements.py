"""What the missing values must be: the bounds that the open checks set, by part.

A bound is solved at the worst corner of all that is stated.  Where a check lacks several
values, each of them is bounded with the others at the best that they usually are: beyond the
bound the check finds what the bound says, and a value within it need not be enough.  All checks
that a value would be used by are asked, those that are answered without it as well.  Of several
bounds on one side the tightest counts; where two sides contradict each other, or a check fails
whatever the value is, it is said.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from ..check import Check
from ..declare import CHANNELS, PRODUCT, Field, field_path, local_path
from ..evaluation.border import Border
from ..evaluation.catalogue import Entry
from ..evaluation.dependence import taken
from ..evaluation.engine import Assessment
from ..evaluation.ranges import Bounded, border_of, outcomes_of
from ..finding import Severity
from ..judging.review import Review
from .questions import alike_paths, asks, part_of

NO_CHOICE = ("claim", "use", "outcome")


@dataclass(frozen=True, slots=True)
class Requirement:
    """A bound on one missing value.

    paths: where the value belongs, one for each channel that it holds for; check, subject:
    what sets the bound; beside: the other missing values, taken at their best; hard: the bound
    beyond which the check finds the worst that it can.  conflicts: the check of the other side,
    where no value is within both bounds.  unmet: checks that fail whatever the value is.
    """

    paths: tuple[str, ...]
    field: Field
    border: Border
    check: str
    title: str
    subject: str
    beside: tuple[str, ...] = ()
    hard: Border | None = None
    conflicts: str = ""
    unmet: tuple[str, ...] = ()


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
    unmet: dict[tuple[str, ...], dict[str, None]] = {}
    for item in _found(run, review):
        if isinstance(item, Unmet):
            unmet.setdefault(item.paths, {})[item.title] = None
            continue
        key = (item.paths, item.border.at_least)
        if key not in tightest or _is_tighter(item, tightest[key]):
            tightest[key] = item
    parts: dict[tuple[str, tuple[str, ...], str], list[Requirement]] = {}
    for item in sorted(tightest.values(), key=_order):
        other = tightest.get((item.paths, not item.border.at_least))
        told = replace(
            item,
            conflicts=other.title if other and _contradict(item, other) else "",
            unmet=tuple(unmet.get(item.paths, ())),
        )
        parts.setdefault(part_of(review.spec, item.paths, item.field), []).append(told)
    return tuple(Requirements(*key, tuple(items)) for key, items in parts.items())


@dataclass(frozen=True, slots=True)
class Unmet:
    """A check that fails whatever a missing value is."""

    paths: tuple[str, ...]
    title: str


def _found(run: Assessment, review: Review) -> Iterator[Requirement | Unmet]:
    """All bounds on what the open answers lack."""
    wanted: dict[tuple[str, ...], str] = {}
    lacking: set[tuple[str, str, str]] = set()
    for finding in (x for x in review.findings if asks(x)):
        for gap in finding.advice.missing:
            wanted.setdefault(alike_paths(run.spec, gap.path), gap.path)
            lacking.add((finding.check, finding.subject, gap.path))
    for path in wanted.values():
        for entry, subject in run.questions() if _is_chosen(run, path) else ():
            asked = (entry.name, subject, path) in lacking or _takes(run, entry, path)
            if asked and run.twins.first(subject) == subject:
                yield from _required(run, entry, subject, path)


def _takes(run: Assessment, entry: Entry, path: str) -> bool:
    """Whether a check takes a value itself, or by a quantity that takes it."""
    wanted, derived = field_path(path), run.catalogue.derived
    names = set(taken(entry.check.inputs))
    ways = (way for name in names if name in derived for way in derived[name].ways)
    return wanted in names.union(*(taken(way.inputs) for way in ways))


def _is_chosen(run: Assessment, path: str) -> bool:
    """Whether a value is a number that somebody chooses."""
    schema = run.spec.schema
    kind = schema.field_of(path).kind
    return kind == "quantity" and schema.nature_of(local_path(path)) not in NO_CHOICE


def _required(
    run: Assessment, entry: Entry, subject: str, path: str
) -> Iterator[Requirement | Unmet]:
    """The bounds that one check sets on one missing value."""
    where = alike_paths(run.spec, path)
    if subject == PRODUCT and len(where) > 1:
        return  # the channels would have to move together
    if subject != PRODUCT and _is_elsewhere(f"{CHANNELS}.{subject}.", path):
        return
    if _is_statement(entry.check, local_path(path)):
        return
    question, field = run.question(entry, subject), run.spec.schema.field_of(path)
    found = outcomes_of(question.plan, question.graph, entry.check, [[path]])
    if any(item is None or path not in item.node.leaves for item in found):
        return
    beside = dict.fromkeys(x for item in found if item for x in item.paths if x != path)
    if any(_is_elsewhere(x, path) for x in beside):
        return
    if found and not beside and all(item and _fails(item.best) for item in found):
        yield Unmet(where, entry.check.title)
    borders = [
        _loosest(found, entry.check, path, field.unit, x) for x in (None, _gravest(entry.check))
    ]
    if borders[0] is not None:
        told = (entry.name, entry.check.title, subject)
        yield Requirement(where, field, borders[0], *told, tuple(beside), borders[1])


def _gravest(check: Check) -> Severity:
    return Severity.MAJOR if check.limits.critical is None else Severity.CRITICAL


def _fails(severity: Severity | None) -> bool:
    return severity is not None and severity != Severity.MINOR


def _contradict(one: Requirement, other: Requirement) -> bool:
    """Whether no value is within the bounds on both sides."""
    low, high = (one, other) if one.border.at_least else (other, one)
    return low.border.value > high.border.value


def _is_elsewhere(path: str, other: str) -> bool:
    """Whether two paths belong to different channels, whose values would have to move together."""
    owners = [x.split(".")[1] for x in (path, other) if x.startswith(f"{CHANNELS}.")]
    return len(set(owners)) > 1


def _is_statement(check: Check, path: str) -> bool:
    """Whether a check only asks whether what is printed can be true."""
    return path in {*check.topic} - {lever.path for lever in check.levers}


def _loosest(
    outcomes: Sequence[Bounded | None],
    check: Check,
    path: str,
    unit: str,
    avoids: Severity | None,
) -> Border | None:
    """What a value must be whatever the missing words are; None where one sets no bound."""
    borders = [border_of(item, check, path, unit, avoids) for item in outcomes if item is not None]
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
