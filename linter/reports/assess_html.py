"""The review as one page for a browser and for paper: verdict, causes, pictures, details.

The words are those of the terminal's page.
"""

from collections.abc import Iterator, Sequence
from itertools import count
from operator import attrgetter

from markupsafe import Markup

from ..changes.causes import causes_of
from ..evaluation.engine import Assessment
from ..finding import Finding, Severity, Status
from ..judging.monte_carlo import Yield, build_many
from ..judging.pictures import channels_left_out, pictures_of
from ..judging.review import Outcome, Review
from ..reading.refusal import Refusal
from .assess_page import cautions_of_causes, wanted
from .assess_text import finding_rows
from .assumption_words import assumptions_of
from .cause_words import CauseWords, cause_words
from .drawing_margins import QUESTION, distances_told, margin_svg, margins_of, shown
from .drawing_spread import HEADS, spread_rows, spread_svg
from .drawing_spread import QUESTION as SPREAD
from .groups import groups, together
from .html_page import Figure, figure_of, html_page
from .phrases import against, margin_of, missing_in_words, place_in_words
from .promise_words import promise_rows
from .tolerance_text import DRAWN, yield_words
from .verdict import (
    WEAKENED,
    counted,
    house_change,
    reason,
    rests_on,
    weakened_lines,
)

MOST_CAUSES = 5
MOST_SPREADS = 8
Builds = tuple[int, int]
SIGNATORIES = ("Prepared by", "Reviewed by", "Released by")


def html_report(
    outcomes: Sequence[tuple[str, Outcome]],
    dated: bool = False,
    builds: Builds | None = None,
) -> str:
    """One page for all files, in the order given.  builds: how many are drawn, and the seed."""
    numbers = count(1)
    parts = [
        _review(outcome, place, numbers, dated, builds)
        if isinstance(outcome, Review)
        else _refused(name, place, outcome)
        for place, (name, outcome) in enumerate(outcomes, start=1)
    ]
    return html_page("assess.html", parts=parts)


def _refused(name: str, place: int, refusals: Sequence[Refusal]) -> dict[str, object]:
    rows = [
        (x.place.file, place_in_words(x.place), x.problem, x.expected, x.example) for x in refusals
    ]
    return {"id": f"file-{place}", "refused": True, "title": name, "rows": rows}


def _review(
    review: Review, place: int, numbers: Iterator[int], dated: bool, builds: Builds | None
) -> dict[str, object]:
    """All that the page says of one review."""
    run = Assessment(review.spec, review.catalogue, review.verdict.milestone)
    built = _built(review, *builds) if builds else None
    causes = cause_words(review, causes_of(review))
    grave = [x for x in causes if x.severity != Severity.MINOR]
    opened = [x for x in review.verdict.holding if x.status is Status.OPEN]
    if review.verdict.released:
        opened = [x for x in review.of_status(Status.OPEN) if not x.permitted]
    return {
        "id": f"file-{place}",
        "refused": False,
        "title": review.spec.title or review.spec.file,
        "revision": review.spec.revision,
        "file": review.spec.file,
        "released": review.verdict.released,
        "milestone": review.verdict.milestone,
        "counted": counted(review),
        "reason": reason(review),
        "weakened": [f"{WEAKENED} {x}" for x in weakened_lines(review)],
        "promises": promise_rows(review.promises),
        "causes": grave,
        "most": MOST_CAUSES,
        "cautions": cautions_of_causes(grave),
        "wanted": wanted(review, opened),
        "open_count": len(opened),
        "figures": list(_figures(review, run, numbers, built)),
        "built": "".join(yield_words(built)) if built else "",
        "left_out": channels_left_out(run),
        "findings": [(cause, _told(review, cause)) for cause in causes],
        "finding_count": len(review.failing()),
        **_rest(review, dated),
    }


def _rest(review: Review, dated: bool) -> dict[str, object]:
    """What follows the findings."""
    house, holding = review.criteria.house, {id(x) for x in review.verdict.holding}
    grounds = rests_on(review)
    if dated and review.criteria.day:
        grounds.append(("reviewed on", review.criteria.day.isoformat(), ""))
    items = sorted(review.of_status(Status.OPEN), key=lambda x: id(x) not in holding)
    return {
        "opened": [_open_row(x, names, id(x) in holding) for x, names in groups(items)],
        "met": [
            (x.title, together(names), against(x.evidence), margin_of(x.evidence))
            for x, names in groups(review.of_status(Status.MEETS))
        ],
        "assumed": list(assumptions_of(review).items()),
        "silent": list(dict.fromkeys(x.title for x in review.of_status(Status.NOT_APPLICABLE))),
        "house": [house_change(x) for x in house.changes] if house else [],
        "permitted": [(x.title, x.permitted) for x in review.findings if x.permitted],
        "grounds": grounds,
        "signatories": SIGNATORIES,
    }


def _told(review: Review, cause: CauseWords) -> list[dict[str, object]]:
    """The findings of a cause, each with what is said of it, label by label.

    A change that the cause tells already is not told again.
    """
    told = {_values(text) for _, text in cause.changes} if not cause.is_plain else set()
    return [
        {
            "title": item.title,
            "of": together(subjects),
            "severity": str(item.severity),
            "rows": [
                (label, text)
                for label, text in finding_rows(review, item)
                if label != "change" or _values(text) not in told
            ],
            "cautions": item.advice.cautions,
            "id": item.check,
        }
        for item, subjects in groups(cause.findings)
    ]


def _values(change: str) -> str:
    """What a change moves, without what that does."""
    return change.partition("; ")[0]


def _open_row(item: Finding, subjects: tuple[str, ...], holds: bool) -> tuple[str, ...]:
    missing = missing_in_words(item.advice.missing)
    told = f"state {missing}" if missing else item.message
    return item.title, together(subjects), told, "required before release" if holds else ""


def _built(review: Review, builds: int, seed: int) -> Yield:
    """Many builds, with the spread of the figures that hold the design, the gravest first."""
    ordered = sorted(review.verdict.holding, key=attrgetter("rank"))
    held = [x for x, _ in groups(ordered) if x.evidence.figure is not None]
    given = (review.spec, review.catalogue, review.verdict.milestone, review.verdict.hold_at)
    wanted = [(x.check, x.subject) for x in held]
    return build_many(*given, builds, seed, wanted)


def _figures(
    review: Review, run: Assessment, numbers: Iterator[int], built: Yield | None
) -> Iterator[Figure]:
    """The pictures of the design, the builds, and the margins of all checks."""
    for drawn in pictures_of(run, review.measured):
        yield figure_of(review, drawn, next(numbers))
    if built and built.spreads:
        spreads, number = built.spreads[:MOST_SPREADS], next(numbers)
        more = len(built.spreads) - len(spreads)
        notes = (DRAWN, *([f"{more} more are not drawn."] if more else []))
        svg = Markup(spread_svg(spreads, built.builds, number))
        numbered = spread_rows(built.spreads, built.builds)
        yield Figure(number, SPREAD, "", svg, notes, HEADS, numbered)
    margins = margins_of(review)
    if margins:
        number = next(numbers)
        rows, note = shown(margins)
        yield Figure(
            number,
            QUESTION,
            "",
            Markup(margin_svg(rows, number)),
            tuple(x for x in (note, distances_told(rows)) if x),
            ("check", "margin", "answer"),
            tuple((x.title, x.text, x.word) for x in margins),
        )
