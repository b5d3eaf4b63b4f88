"""The review as a Markdown document to be read, discussed, signed and filed."""

from collections.abc import Iterable, Iterator, Sequence

from ..finding import Finding, Remedy, Severity, Status
from ..judging.deviation import is_behind
from ..judging.review import Outcome, Review
from ..reading.loading import Deviation
from ..reading.refusal import Refusal
from .phrases import (
    against,
    assumptions,
    cited,
    corner,
    effects,
    escaped,
    further,
    margin_of,
    moves,
    place_in_words,
)
from .verdict import (
    DISCLAIMER,
    WEAKENED,
    demands,
    label,
    lacking,
    reason,
    rests_on,
    weakened_lines,
)

SIGNATORIES = ("Prepared by", "Reviewed by", "Released by")


def markdown_report(outcomes: Sequence[tuple[str, Outcome]], dated: bool = False) -> str:
    """One document for all files, in the order given."""
    parts = ["# Design review"]
    for name, outcome in outcomes:
        if isinstance(outcome, Review):
            parts += _review(outcome, dated)
        else:
            parts += _refused(name, outcome)
    parts.append(f"*{DISCLAIMER}*")
    return "\n\n".join(parts) + "\n"


def _review(review: Review, dated: bool) -> Iterator[str]:
    spec, verdict = review.spec, review.verdict
    yield f"## {escaped(spec.title or spec.file)}"
    for change in weakened_lines(review):
        yield f"**{WEAKENED}** {escaped(change)}"
    word = "RELEASED" if verdict.released else "HELD"
    yield f"**{word}** at the {verdict.milestone} milestone. {escaped(reason(review))}"
    yield _table(("item", "", "SHA-256"), _grounds(review, dated))
    yield from _demands(review)
    yield from _house(review)
    yield from _deviations(review)
    yield from _findings(review)
    yield from _others(review)
    yield "### Signatures"
    yield _table(("", "name", "date", "signature"), [(name, "", "", "") for name in SIGNATORIES])


def _refused(name: str, refusals: Sequence[Refusal]) -> Iterator[str]:
    yield f"## {escaped(name)}"
    yield "**NOT ASSESSED.** The file must be put right first."
    rows = [
        (item.place.file, place_in_words(item.place), item.problem, item.expected, item.example)
        for item in refusals
    ]
    yield _table(("file", "location", "problem", "expected", "for example"), rows)


def _grounds(review: Review, dated: bool) -> Iterator[tuple[str, ...]]:
    yield from rests_on(review)
    if review.spec.revision:
        yield "revision", review.spec.revision, ""
    counts = ", ".join(f"{number} {name}" for name, number in review.counts().items())
    yield "answers", counts, ""
    if dated and review.criteria.day:
        yield "date of the review", review.criteria.day.isoformat(), ""


def _demands(review: Review) -> Iterator[str]:
    if review.verdict.released:
        return
    yield "### What must change to be released"
    lines = [
        f"{item.gravity}: {escaped(item.label)}: {escaped(item.text)}" for item in demands(review)
    ]
    yield "\n".join(f"{number}. {line}" for number, line in enumerate(lines, start=1))


def _house(review: Review) -> Iterator[str]:
    house = review.criteria.house
    if house is None:
        return
    yield f"### House rules of {escaped(house.file)}"
    rows = [
        (change.effect, change.about, change.text, change.reason, str(change.place.line))
        for change in house.changes
    ]
    yield (
        _table(("change", "of", "now", "reason", "line"), rows) if rows else "They change nothing."
    )


def _deviations(review: Review) -> Iterator[str]:
    if not review.deviations:
        return
    yield "### Deviations on record"
    bearing = [item for item in review.findings if item.permitted]
    rows = [
        (
            item.check,
            item.place,
            item.permitted_by,
            item.reason,
            item.until,
            item.up_to or "any figure",
            _standing(item, bearing),
        )
        for item in review.deviations
    ]
    heads = ("check", "place", "permitted by", "reason", "until", "up to", "standing")
    yield _table(heads, rows)


def _standing(item: Deviation, bearing: Sequence[Finding]) -> str:
    borne = [finding for finding in bearing if is_behind(item, finding)]
    if not borne:
        return "permits nothing, see below"
    return "in force, an open item" if borne[0].status is Status.OPEN else "in force"


def _findings(review: Review) -> Iterator[str]:
    for severity in Severity:
        found = [item for item in review.failing() if item.severity is severity]
        if found:
            yield f"### {severity.value.capitalize()}: {len(found)}"
        for item in found:
            yield f"#### {escaped(item.title)} ({escaped(item.subject)})"
            yield "\n".join(f"- {line}" for line in _finding(item))


def _finding(item: Finding) -> Iterator[str]:
    if against(item.evidence):
        yield f"**{escaped(against(item.evidence))}**"
    yield escaped(item.message)
    if item.permitted:
        yield f"deviation: {escaped(item.permitted)}"
    if item.evidence.corner:
        yield f"worst at: {escaped(corner(item.evidence))}"
    for remedy in item.advice.remedies:
        yield f"change: {escaped(_change(remedy))}"
    if item.advice.remedy_note:
        yield f"change: {escaped(item.advice.remedy_note)}"
    yield from _based_on(item)
    yield f"check: {escaped(item.check)}"
    for caution in item.advice.cautions:
        yield f"**{caution.signal}** {escaped(caution.text)}"


def _based_on(item: Finding) -> Iterator[str]:
    """Where a finding stands, and what its limit and its figure rest on."""
    where = (
        f"{item.place.file}, {place_in_words(item.place)}"
        if item.place
        else "not stated in the file"
    )
    yield f"location: {escaped(where)}"
    if item.evidence.basis:
        yield f"limit from: {escaped(cited(item.evidence.basis))}"
    if further(item.evidence):
        yield f"see: {escaped(further(item.evidence))}"
    for text in assumptions(item.evidence):
        yield f"assumed: {escaped(text)}"


def _change(remedy: Remedy) -> str:
    text = " and ".join(f"{path} to {value}" for path, value in moves(remedy.changes))
    return f"{text}; {effects(remedy)}" if effects(remedy) else text


def _others(review: Review) -> Iterator[str]:
    opened, met = review.of_status(Status.OPEN), review.of_status(Status.MEETS)
    if opened:
        yield f"### Open: {len(opened)}"
        rows = [(x.check, x.subject, x.title, _lacking(x)) for x in opened]
        yield _table(("check", "of", "question", "what is missing"), rows)
    if met:
        yield f"### Meets: {len(met)}"
        rows = [(x.check, x.subject, against(x.evidence), margin_of(x.evidence)) for x in met]
        yield _table(("check", "of", "figure and limit", "margin"), rows)
    silent = review.of_status(Status.NOT_APPLICABLE)
    if silent:
        yield f"### Not applicable: {len(silent)}"
        yield escaped(", ".join(label(item) for item in silent))


def _lacking(item: Finding) -> str:
    text = lacking(item) or item.message
    return f"{text}; {item.permitted}" if item.permitted else text


def _table(heads: Sequence[str], rows: Iterable[Sequence[str]]) -> str:
    lines = [heads, ["---"] * len(heads), *([escaped(cell) for cell in row] for row in rows)]
    return "\n".join(f"| {' | '.join(line)} |" for line in lines)
