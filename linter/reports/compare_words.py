"""The words of a comparison that its reports share: outcome, promises, edits, answers."""

from collections.abc import Iterable, Iterator

from ..declare import local_path, subject_of
from ..finding import Finding, Status
from ..judging.compare import ChangedAnswer, Comparison, Edit
from ..judging.review import Review
from .groups import alike
from .phrases import against, margin_of, percent
from .promise_words import promise_rows
from .verdict import counted, house_told, weakened_lines

EFFECTS = {
    "appeared": ("New findings", "red"),
    "graver": ("More severe than before", "red"),
    "no longer judged": (
        "No longer judged: the spec no longer says what the finding rested on",
        "red",
    ),
    "opened": ("No longer answered", "blue"),
    "permission lost": ("No longer permitted", "red"),
    "permitted": ("Permitted by a deviation", "cyan"),
    "eased": ("Improved", "green"),
    "cured": ("No longer found", "green"),
    "answered": ("Answered and met", "green"),
}
OUTCOMES = {
    "better": ("BETTER", "green"),
    "worse": ("WORSE", "red"),
    "neither": ("NEITHER BETTER NOR WORSE", "blue"),
}
EDIT_HEADS = ("value", "of", "meaning", "before", "now", "change")
PROMISE_HEADS = ("promised", "before", "now", "what the spec allows now")
MARGIN_HEADS = ("check", "of", "before", "now", "margin before", "margin now")
MOST_LOWERED = 3
Row = tuple[str, ...]


def promised(found: Comparison) -> list[Row]:
    """Every promise of both with its outlook before and now; what stays supported, by name."""
    before, now = (
        {(row.name, row.channels): row for row in promise_rows(review.promises)}
        for review in (found.old, found.new)
    )
    rows: list[Row] = []
    kept = []
    for key in dict.fromkeys((*now, *before)):
        old, new = before.get(key), now.get(key)
        either = new or old
        assert either is not None
        outlooks = (old.outlook if old else "not made", new.outlook if new else "withdrawn")
        if outlooks == ("supported", "supported"):
            kept.append(either.name)
        else:
            rows.append((either.promised, *outlooks, new.allowed if new else ""))
    if kept:
        rows.append((", ".join(dict.fromkeys(kept)), "supported", "supported", ""))
    return rows


def outcome_of(found: Comparison) -> str:
    """The outcome in words, and which promises are lower than before."""
    word = OUTCOMES[found.outcome][0]
    names = list(dict.fromkeys(_named(edit) for edit in found.lowered))
    if not names:
        return word
    more = len(names) - MOST_LOWERED
    told = ", ".join(names[:MOST_LOWERED]) + (f" and {more} more" if more > 0 else "")
    return f"{word}, with {'promises' if names[1:] else 'a promise'} lowered: {told}"


def _named(edit: Edit) -> str:
    """A promise by its name: ``run time``."""
    return local_path(edit.path).rpartition(".")[2].replace("_", " ")


def edited(found: Comparison) -> Iterator[tuple[str, tuple[Edit, ...], str]]:
    """The lists of changed values: title, values, colour."""
    if found.lowered:
        yield "Lowered promises", found.lowered, "magenta"
    yield "Changed in the spec", found.edits, ""


def weakened_in(found: Comparison) -> list[str]:
    """What the house files weaken in matters of safety, each once."""
    changes = (change for review in (found.old, found.new) for change in weakened_lines(review))
    return list(dict.fromkeys(changes))


def houses_of(found: Comparison) -> list[str]:
    """What the house files change, each once."""
    houses = (review.criteria.house for review in (found.old, found.new))
    return list(dict.fromkeys(line for house in houses for line in house_told(house)))


def verdict_of(review: Review) -> str:
    """File, revision, verdict and counts of one side in a line."""
    spec, verdict = review.spec, review.verdict
    word = "released" if verdict.released else f"held by {len(verdict.holding)}"
    revision = f", revision {spec.revision}" if spec.revision else ""
    return f"{spec.file}{revision}: {word} at the {verdict.milestone} milestone; {counted(review)}"


def edit_rows(edits: Iterable[Edit]) -> list[Row]:
    """The edits, those that are alike in several channels as one."""
    rows = []
    for edit in edits:
        share = "" if edit.change is None else percent(edit.change)
        meaning = edit.meaning.partition(";")[0]
        told = (meaning, edit.old or "not stated", edit.new or "not stated", share)
        rows.append((local_path(edit.path), subject_of(edit.path), *told))
    return alike(rows)


def margin_rows(pairs: Iterable[tuple[Finding, Finding]]) -> list[Row]:
    """The margins, those that are alike in several channels as one."""
    rows = []
    for old, new in pairs:
        margins = (margin_of(item.evidence) for item in (old, new))
        rows.append(
            (new.title, new.subject, against(old.evidence), against(new.evidence), *margins)
        )
    return alike(rows)


def answer_rows(answers: Iterable[ChangedAnswer]) -> list[Row]:
    """Check, subject and what became of the answer, equal channels as one."""
    rows = []
    for changed in answers:
        item = changed.subject
        text = f"{standing_of(changed.old)} before, {standing_of(changed.new)} now"
        figures = against(item.evidence) or item.message
        rows.append((item.title, item.subject, f"{text}; {figures}" if figures else text))
    return alike(rows)


def standing_of(item: Finding | None) -> str:
    """An answer in one word."""
    if item is None:
        return "not asked"
    if item.severity is not None:
        return f"{item.severity}, permitted" if item.permitted else str(item.severity)
    if item.status is Status.OPEN and item.permitted:
        return "open, accepted"
    return "met" if item.status is Status.MEETS else str(item.status)
