"""Two revisions side by side, at a terminal and as Markdown."""

from collections.abc import Iterable, Iterator

from rich.console import Console
from rich.padding import Padding
from rich.text import Text

from ..declare import local_path, subject_of
from ..finding import Finding, Status
from ..judging.compare import ChangedAnswer, Comparison, Edit
from ..judging.review import Review
from .columns import print_columns
from .groups import alike
from .markdown import markdown_table
from .phrases import against, clean, escaped, margin_of, percent
from .promise_words import promise_rows
from .verdict import DISCLAIMER, WEAKENED, counted, house_told, weakened_lines

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
PLAIN = ("meaning", "of")
EDIT_HEADS = ("value", "of", "meaning", "before", "now", "change")
PROMISE_HEADS = ("promised", "before", "now", "what the spec allows now")
MARGIN_HEADS = ("check", "of", "before", "now", "margin before", "margin now")

MOST_LOWERED = 3

Row = tuple[str, ...]


def print_comparison(found: Comparison, console: Console) -> None:
    """Print a comparison for a person."""
    for change in _weakened(found):
        console.print(Padding(Text(clean(f"{WEAKENED} {change}"), style="bold red"), (0, 1)))
    style = OUTCOMES[found.outcome][1]
    console.print(Padding(Text(f" {_outcome(found)} ", style=f"bold reverse {style}"), (0, 1)))
    console.print(Padding(Text(clean(found.why)), (0, 1)))
    for name, review in (("before", found.old), ("now", found.new)):
        console.print(Padding(Text(clean(f"{name}: {_verdict(review)}")), (0, 1)))
    promised = _promises(found)
    if promised:
        console.print(Padding(Text("PROMISES", style="bold"), (1, 1, 0, 1)))
        print_columns(PROMISE_HEADS, promised, console)
    for title, edits, colour in _edited(found):
        rows = _edits(edits)
        _heading(title.upper(), len(rows), f"bold {colour}".rstrip(), console)
        print_columns(EDIT_HEADS, rows, console, PLAIN)
    for effect, (title, colour) in EFFECTS.items():
        rows = _answers(changed for changed in found.answers if changed.effect == effect)
        if rows:
            _heading(title.upper(), len(rows), f"bold {colour}", console)
        for name, subject, told in rows:
            text = Text.assemble(("▪ ", colour), (clean(f"{name} ({subject})"), "bold"))
            console.print(Padding(text.append(clean(f": {told}")), (0, 1)))
    if found.margins:
        rows = _margins(found.margins)
        _heading("MARGINS THAT MOVED MOST", len(rows), "bold", console)
        print_columns(MARGIN_HEADS, rows, console, PLAIN)
    for line in (*_house(found), DISCLAIMER):
        console.print(Padding(Text(clean(line), style="dim"), (1, 1, 0, 1)))


def compare_markdown(found: Comparison) -> str:
    """The comparison as Markdown."""
    return "\n\n".join(_markdown(found)) + "\n"


def _markdown(found: Comparison) -> Iterator[str]:
    yield f"# Comparison: {escaped(found.new.spec.title or found.new.spec.file)}"
    for change in _weakened(found):
        yield f"**{WEAKENED}** {escaped(change)}"
    yield f"**{_outcome(found)}**: {escaped(found.why)}"
    sides = (("before", found.old), ("now", found.new))
    yield "\n".join(f"- {name}: {escaped(_verdict(review))}" for name, review in sides)
    promised = _promises(found)
    if promised:
        yield "## Promises"
        yield markdown_table(PROMISE_HEADS, promised)
    for title, edits, _ in _edited(found):
        rows = _edits(edits)
        yield f"## {title}: {len(rows)}"
        if rows:
            yield markdown_table(EDIT_HEADS, rows)
    for effect, (title, _) in EFFECTS.items():
        rows = _answers(changed for changed in found.answers if changed.effect == effect)
        if rows:
            yield f"## {title}: {len(rows)}"
            yield "\n".join(f"- {escaped(f'{name} ({of}): {told}')}" for name, of, told in rows)
    if found.margins:
        rows = _margins(found.margins)
        yield f"## Margins that moved most: {len(rows)}"
        yield markdown_table(MARGIN_HEADS, rows)
    yield from map(escaped, _house(found))
    yield f"*{DISCLAIMER}*"


def _promises(found: Comparison) -> list[Row]:
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


def _outcome(found: Comparison) -> str:
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


def _edited(found: Comparison) -> Iterator[tuple[str, tuple[Edit, ...], str]]:
    """The lists of changed values: title, values, colour."""
    if found.lowered:
        yield "Lowered promises", found.lowered, "magenta"
    yield "Changed in the spec", found.edits, ""


def _weakened(found: Comparison) -> list[str]:
    """What the house files weaken in matters of safety, each once."""
    changes = (change for review in (found.old, found.new) for change in weakened_lines(review))
    return list(dict.fromkeys(changes))


def _house(found: Comparison) -> list[str]:
    """What the house files change, each once."""
    houses = (review.criteria.house for review in (found.old, found.new))
    return list(dict.fromkeys(line for house in houses for line in house_told(house)))


def _verdict(review: Review) -> str:
    spec, verdict = review.spec, review.verdict
    word = "released" if verdict.released else f"held by {len(verdict.holding)}"
    revision = f", revision {spec.revision}" if spec.revision else ""
    return f"{spec.file}{revision}: {word} at the {verdict.milestone} milestone; {counted(review)}"


def _edits(edits: Iterable[Edit]) -> list[Row]:
    """The edits, those that are alike in several channels as one."""
    rows = []
    for edit in edits:
        share = "" if edit.change is None else percent(edit.change)
        meaning = edit.meaning.partition(";")[0]
        told = (meaning, edit.old or "not stated", edit.new or "not stated", share)
        rows.append((local_path(edit.path), subject_of(edit.path), *told))
    return alike(rows)


def _margins(pairs: Iterable[tuple[Finding, Finding]]) -> list[Row]:
    """The margins, those that are alike in several channels as one."""
    rows = []
    for old, new in pairs:
        margins = (margin_of(item.evidence) for item in (old, new))
        rows.append(
            (new.title, new.subject, against(old.evidence), against(new.evidence), *margins)
        )
    return alike(rows)


def _answers(answers: Iterable[ChangedAnswer]) -> list[Row]:
    """Check, subject and what became of the answer, equal channels as one."""
    rows = []
    for changed in answers:
        item = changed.subject
        text = f"{_standing(changed.old)} before, {_standing(changed.new)} now"
        figures = against(item.evidence) or item.message
        rows.append((item.title, item.subject, f"{text}; {figures}" if figures else text))
    return alike(rows)


def _standing(item: Finding | None) -> str:
    """An answer in one word."""
    if item is None:
        return "not asked"
    if item.severity is not None:
        return f"{item.severity}, permitted" if item.permitted else str(item.severity)
    if item.status is Status.OPEN and item.permitted:
        return "open, accepted"
    return "met" if item.status is Status.MEETS else str(item.status)


def _heading(title: str, count: int, style: str, console: Console) -> None:
    console.print(Padding(Text(f"{title}  {count}", style=style), (1, 1, 0, 1)))
