"""The review as a Markdown document to be read, discussed, signed and filed."""

from collections.abc import Iterable, Iterator, Sequence

from ..changes.causes import causes_of
from ..finding import Finding, Severity, Status
from ..judging.deviation import is_behind
from ..judging.review import Outcome, Review
from ..reading.loading import Deviation
from .assumption_words import assumptions_of, unsure_of
from .cause_words import CauseWords, cause_words
from .cautions import cautions_of
from .change_words import change_in_words
from .groups import groups, together
from .markdown import markdown_table, promise_markdown, refusals_markdown
from .measured_words import measured_rows
from .phrases import (
    against,
    cited,
    corner,
    escaped,
    further,
    margin_of,
    place_in_words,
)
from .standing import in_short, mark
from .verdict import (
    DISCLAIMER,
    WEAKENED,
    counted,
    demands,
    lacking,
    reason,
    rests_on,
    weakened_lines,
)

SIGNATORIES = ("Prepared by", "Reviewed by", "Released by")


def markdown_pieces(outcomes: Iterable[tuple[str, Outcome]], dated: bool = False) -> Iterator[str]:
    """One document for all files, in the order given, piece by piece."""
    yield "# Design review"
    for name, outcome in outcomes:
        parts = (
            _review(outcome, dated)
            if isinstance(outcome, Review)
            else refusals_markdown(name, outcome)
        )
        yield from (f"\n\n{part}" for part in parts)
    yield f"\n\n*{DISCLAIMER}*\n"


def _review(review: Review, dated: bool) -> Iterator[str]:
    spec, verdict = review.spec, review.verdict
    yield f"## {escaped(spec.title or spec.file)}"
    for change in weakened_lines(review):
        yield f"**{WEAKENED}** {escaped(change)}"
    word = "RELEASED" if verdict.released else "HELD"
    yield f"**{word}** at {verdict.milestone}: {counted(review)}"
    revision = f"revision {spec.revision}" if spec.revision else ""
    yield escaped(" · ".join(part for part in (spec.file, revision) if part))
    yield escaped(reason(review))
    yield from promise_markdown(review)
    yield from _measured(review)
    causes = cause_words(review, causes_of(review))
    yield from _causes(causes)
    yield from _required(review)
    yield from _house(review)
    yield from _deviations(review)
    yield from _findings(review, causes)
    yield from _assumed(review)
    yield from _others(review)
    yield "### What the report rests on"
    yield markdown_table(("item", "", "SHA-256"), _grounds(review, dated))
    yield "### Signatures"
    yield markdown_table(
        ("", "name", "date", "signature"), [(name, "", "", "") for name in SIGNATORIES]
    )


def _measured(review: Review) -> Iterator[str]:
    rows = [(row.answer, row.what, row.text) for row in measured_rows(review)]
    if rows:
        yield "### Measured"
        yield markdown_table(("answer", "figure", "measured and model"), rows)


def _grounds(review: Review, dated: bool) -> Iterator[tuple[str, ...]]:
    yield from rests_on(review)
    if in_short(review):
        yield "known how", in_short(review).partition(";")[0], ""
    if dated and review.criteria.day:
        yield "date of the review", review.criteria.day.isoformat(), ""


def _causes(causes: Sequence[CauseWords]) -> Iterator[str]:
    """What holds, then what does not, cause by cause; minor ones stand among the findings."""
    for title, holds in (("Required before release", True), ("Does not block release", False)):
        found = [x for x in causes if x.holds is holds and x.severity != Severity.MINOR]
        if found:
            yield f"### {title}"
            yield "\n".join(line for cause in found for line in _cause(cause))


def _cause(cause: CauseWords) -> Iterator[str]:
    checks = {x.check for x in cause.findings}
    count = f" ({len(cause.findings)} findings)" if len(checks) > 1 else ""
    mark = f"{cause.mark}." if cause.mark else "-"
    yield f"{mark} **{cause.severity}** {escaped(cause.headline)}{count}"
    for label, change in cause.changes:
        yield f"    - {label}: {escaped(change)}"
    if cause.note:
        yield f"    - change: {escaped(cause.note)}"
    if cause.caution is not None:
        yield f"    - **{cause.caution.signal}** {escaped(cause.caution.text)}"


def _required(review: Review) -> Iterator[str]:
    """What is open and holds."""
    found = [x for x in demands(review) if x.gravity == str(Status.OPEN)]
    if found:
        yield "### Open, required before release"
        yield "\n".join(f"- {escaped(x.title)}: {escaped(x.text)}" for x in found)


def _house(review: Review) -> Iterator[str]:
    house = review.criteria.house
    if house is None:
        return
    yield f"### House rules of {escaped(house.told)}"
    rows = [
        (change.effect, change.about, change.text, change.reason, str(change.place.line))
        for change in house.changes
    ]
    yield (
        markdown_table(("change", "of", "now", "reason", "line"), rows)
        if rows
        else "They change nothing."
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
    yield markdown_table(heads, rows)


def _standing(item: Deviation, bearing: Sequence[Finding]) -> str:
    borne = [finding for finding in bearing if is_behind(item, finding)]
    if not borne:
        return "permits nothing, see below"
    return "in force, an open item" if borne[0].status is Status.OPEN else "in force"


def _findings(review: Review, causes: Sequence[CauseWords]) -> Iterator[str]:
    """Every finding under its cause, in the order in which one would act."""
    if causes:
        yield f"### Findings: {len(review.failing())}"
    for cause in causes:
        yield f"#### {f'{cause.mark}. ' if cause.mark else ''}{escaped(cause.headline)}"
        for item, subjects in groups(cause.findings):
            yield f"**{item.severity}** {escaped(item.title)} ({escaped(together(subjects))})"
            yield "\n".join(f"- {line}" for line in _finding(review, item))


def _finding(review: Review, item: Finding) -> Iterator[str]:
    if against(item.evidence):
        yield f"**{escaped(against(item.evidence))}**"
    yield escaped(item.message)
    if item.permitted:
        yield f"deviation: {escaped(item.permitted)}"
    if item.evidence.corner:
        yield f"worst at: {escaped(corner(item.evidence))}"
    for remedy in item.advice.remedies:
        yield f"change: {escaped(change_in_words(review, (item,), remedy))}"
    if item.advice.remedy_note:
        yield f"change: {escaped(item.advice.remedy_note)}"
    yield from _based_on(item)
    if mark(review, item):
        yield f"known: {mark(review, item)}, not seen in the source"
    yield f"check: {escaped(item.check)}"
    for caution in cautions_of(item):
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
    unsure = unsure_of(item)
    if unsure:
        yield f"leans on: {escaped('; '.join(unsure))}"


def _assumed(review: Review) -> Iterator[str]:
    """Every assumption once, with what leans on it."""
    leaning = assumptions_of(review)
    if leaning:
        yield f"### Assumptions: {len(leaning)}"
        yield markdown_table(
            ("assumed", "by"), [(x, ", ".join(titles)) for x, titles in leaning.items()]
        )


def _others(review: Review) -> Iterator[str]:
    opened, met = review.of_status(Status.OPEN), review.of_status(Status.MEETS)
    if opened:
        yield f"### Open: {len(opened)}"
        rows = [(*_named(item, subjects), _lacking(item)) for item, subjects in groups(opened)]
        yield markdown_table(("question", "of", "what is missing"), rows)
        warned = dict.fromkeys(caution for item in opened for caution in cautions_of(item))
        if warned:
            yield "\n".join(f"- **{x.signal}** {escaped(x.text)}" for x in warned)
    if met:
        yield f"### Meets: {len(met)}"
        told = [
            (
                *_named(item, subjects),
                against(item.evidence),
                margin_of(item.evidence),
                mark(review, item),
            )
            for item, subjects in groups(met)
        ]
        yield markdown_table(("check", "of", "figure and limit", "margin", "known"), told)
    silent = groups(review.of_status(Status.NOT_APPLICABLE))
    if silent:
        yield f"### Not applicable: {len(silent)}"
        yield escaped(", ".join(dict.fromkeys(item.title for item, _ in silent)))


def _named(item: Finding, subjects: tuple[str, ...]) -> tuple[str, str]:
    return item.title, together(subjects)


def _lacking(item: Finding) -> str:
    text = lacking(item) or item.message
    return f"{text}; {item.permitted}" if item.permitted else text
