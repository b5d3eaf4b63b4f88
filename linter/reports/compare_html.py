"""Two revisions as a page: before and now side by side, margins as slopes, pictures overlaid."""

from collections.abc import Iterator
from dataclasses import replace
from itertools import count

from markupsafe import Markup

from ..evaluation.engine import Assessment
from ..finding import Finding
from ..judging.compare import Comparison
from ..judging.drawn import Drawn
from ..judging.pictures import pictures_of
from ..judging.review import Review
from .compare_words import (
    EDIT_HEADS,
    EFFECTS,
    PROMISE_HEADS,
    answer_rows,
    edit_rows,
    edited,
    houses_of,
    outcome_of,
    promised,
    weakened_in,
)
from .drawing_margins import MOVED, moved_margins, slope_svg
from .html_page import Figure, figure_of, html_page
from .verdict import rests_on

ANSWER_HEADS = ("check", "of", "what became of it")
COUNTED = ("critical", "major", "minor", "open", "meets")


def compare_html(found: Comparison) -> str:
    """The comparison as one page for a browser and for paper."""
    numbers = count(1)
    same, figures = _overlaid(found, numbers)
    return html_page(
        "compare.html",
        title=found.new.spec.title or found.new.spec.file,
        outcome=found.outcome,
        word=outcome_of(found).capitalize(),
        why=found.why,
        weakened=weakened_in(found),
        sides=[("before", _side(found.old)), ("now", _side(found.new))],
        counted=COUNTED,
        promise_heads=PROMISE_HEADS,
        promises=promised(found),
        slopes=_slopes(found, next(numbers)) if found.margins else None,
        figures=figures,
        same=same,
        edits=[(title, edit_rows(edits)) for title, edits, _ in edited(found)],
        edit_heads=EDIT_HEADS,
        answers=list(_answers(found)),
        answer_heads=ANSWER_HEADS,
        house=houses_of(found),
    )


def _side(review: Review) -> dict[str, object]:
    """What stands in the head of one side."""
    verdict = review.verdict
    return {
        "file": review.spec.file,
        "title": review.spec.title,
        "revision": review.spec.revision,
        "released": verdict.released,
        "milestone": verdict.milestone,
        "holding": len(verdict.holding),
        "counts": review.counts(),
        "grounds": rests_on(review),
    }


def _answers(found: Comparison) -> Iterator[tuple[str, list[tuple[str, ...]]]]:
    """What became of answers, kind by kind, what is worse first."""
    for effect, (title, _) in EFFECTS.items():
        rows = answer_rows(changed for changed in found.answers if changed.effect == effect)
        if rows:
            yield title, rows


def _slopes(found: Comparison, number: int) -> Figure:
    """The margins as slopes; those without a share of the limit stand in the table alone."""
    moved = moved_margins(found.new, found.margins)
    rows = tuple((new.title, old.text, new.text, new.word) for old, new in moved)
    heads = ("check", "before", "now", "answer now")
    shares = [pair for pair in found.margins if all(has_margin(x) for x in pair)]
    if not shares:
        return Figure(number, MOVED, "", Markup(), (), heads, rows)
    notes = ["From the hollow dot, before, to the arrow head, now."]
    if len(shares) < len(found.margins):
        notes.append("A distance with a unit is in the numbers alone.")
    drawn = Markup(slope_svg(moved_margins(found.new, shares), number))
    return Figure(number, MOVED, "", drawn, tuple(notes), heads, rows)


def has_margin(item: Finding) -> bool:
    """Whether the distance to the limit is a share of the limit."""
    return item.evidence.margin is not None


def _overlaid(found: Comparison, numbers: Iterator[int]) -> tuple[list[str], list[Figure]]:
    """The titles of pictures that are the same, and the others, the old one behind the new."""
    old, new = (_pictures(review) for review in (found.old, found.new))
    same: list[str] = []
    figures: list[Figure] = []
    left = list(old)
    for drawn in new:
        before = next((x for x in left if _is_of_one(x, drawn)), None)
        if before is not None:
            left.remove(before)
        if before is not None and before.shows == drawn.shows:
            same.append(drawn.picture.title)
            continue
        notes = drawn.notes if before else (*drawn.notes, "Now only: not drawn before.")
        at = replace(drawn, notes=notes, before=before)
        figures.append(figure_of(found.new, at, next(numbers)))
    for gone in left:
        at = replace(gone, notes=(*gone.notes, "Before only: now its numbers are missing."))
        figures.append(figure_of(found.old, at, next(numbers)))
    return list(dict.fromkeys(same)), figures


def _pictures(review: Review) -> tuple[Drawn, ...]:
    run = Assessment(review.spec, review.catalogue, review.verdict.milestone)
    return pictures_of(run, review.measured)


def _is_of_one(old: Drawn, new: Drawn) -> bool:
    """Whether two pictures ask the same of the same channels."""
    return old.picture is new.picture and bool({*old.subjects} & {*new.subjects})
