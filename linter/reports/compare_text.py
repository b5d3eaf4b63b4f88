"""Two revisions side by side, at a terminal and as Markdown."""

from collections.abc import Iterator

from rich.console import Console
from rich.padding import Padding
from rich.text import Text

from ..judging.compare import Comparison
from .columns import print_columns
from .compare_words import (
    EDIT_HEADS,
    EFFECTS,
    MARGIN_HEADS,
    OUTCOMES,
    PROMISE_HEADS,
    answer_rows,
    edit_rows,
    edited,
    houses_of,
    margin_rows,
    outcome_of,
    promised,
    verdict_of,
    weakened_in,
)
from .markdown import markdown_table
from .phrases import clean, escaped
from .verdict import DISCLAIMER, WEAKENED

PLAIN = ("meaning", "of")


def print_comparison(found: Comparison, console: Console) -> None:
    """Print a comparison for a person."""
    for change in weakened_in(found):
        console.print(Padding(Text(clean(f"{WEAKENED} {change}"), style="bold red"), (0, 1)))
    style = OUTCOMES[found.outcome][1]
    console.print(Padding(Text(f" {outcome_of(found)} ", style=f"bold reverse {style}"), (0, 1)))
    console.print(Padding(Text(clean(found.why)), (0, 1)))
    for name, review in (("before", found.old), ("now", found.new)):
        console.print(Padding(Text(clean(f"{name}: {verdict_of(review)}")), (0, 1)))
    kept = promised(found)
    if kept:
        console.print(Padding(Text("PROMISES", style="bold"), (1, 1, 0, 1)))
        print_columns(PROMISE_HEADS, kept, console)
    for title, edits, colour in edited(found):
        rows = edit_rows(edits)
        _heading(title.upper(), len(rows), f"bold {colour}".rstrip(), console)
        print_columns(EDIT_HEADS, rows, console, PLAIN)
    for effect, (title, colour) in EFFECTS.items():
        rows = answer_rows(changed for changed in found.answers if changed.effect == effect)
        if rows:
            _heading(title.upper(), len(rows), f"bold {colour}", console)
        for name, subject, told in rows:
            text = Text.assemble(("▪ ", colour), (clean(f"{name} ({subject})"), "bold"))
            console.print(Padding(text.append(clean(f": {told}")), (0, 1)))
    if found.margins:
        rows = margin_rows(found.margins)
        _heading("MARGINS THAT MOVED MOST", len(rows), "bold", console)
        print_columns(MARGIN_HEADS, rows, console, PLAIN)
    for line in (*houses_of(found), DISCLAIMER):
        console.print(Padding(Text(clean(line), style="dim"), (1, 1, 0, 1)))


def compare_markdown(found: Comparison) -> str:
    """The comparison as Markdown."""
    return "\n\n".join(_markdown(found)) + "\n"


def _markdown(found: Comparison) -> Iterator[str]:
    yield f"# Comparison: {escaped(found.new.spec.title or found.new.spec.file)}"
    for change in weakened_in(found):
        yield f"**{WEAKENED}** {escaped(change)}"
    yield f"**{outcome_of(found)}**: {escaped(found.why)}"
    sides = (("before", found.old), ("now", found.new))
    yield "\n".join(f"- {name}: {escaped(verdict_of(review))}" for name, review in sides)
    kept = promised(found)
    if kept:
        yield "## Promises"
        yield markdown_table(PROMISE_HEADS, kept)
    for title, edits, _ in edited(found):
        rows = edit_rows(edits)
        yield f"## {title}: {len(rows)}"
        if rows:
            yield markdown_table(EDIT_HEADS, rows)
    for effect, (title, _) in EFFECTS.items():
        rows = answer_rows(changed for changed in found.answers if changed.effect == effect)
        if rows:
            yield f"## {title}: {len(rows)}"
            yield "\n".join(f"- {escaped(f'{name} ({of}): {told}')}" for name, of, told in rows)
    if found.margins:
        rows = margin_rows(found.margins)
        yield f"## Margins that moved most: {len(rows)}"
        yield markdown_table(MARGIN_HEADS, rows)
    yield from map(escaped, houses_of(found))
    yield f"*{DISCLAIMER}*"


def _heading(title: str, count: int, style: str, console: Console) -> None:
    console.print(Padding(Text(f"{title}  {count}", style=style), (1, 1, 0, 1)))
