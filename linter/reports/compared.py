"""Two revisions side by side, at a terminal and as Markdown."""

from collections.abc import Iterable, Iterator, Sequence

from rich.console import Console
from rich.padding import Padding
from rich.table import Table
from rich.text import Text

from ..comparison import Comparison, Edit, Turn
from ..finding import Finding, Status
from ..review import Review
from .marks import against, clean, escaped
from .record import label

EFFECTS = {
    "appeared": ("New findings", "red"),
    "graver": ("Graver than before", "red"),
    "fell silent": ("No longer judged: the spec no longer says what the finding rested on", "red"),
    "opened": ("No longer answered", "blue"),
    "permission lost": ("No longer permitted", "red"),
    "permitted": ("Permitted by a deviation", "cyan"),
    "eased": ("Eased", "green"),
    "cured": ("No longer found", "green"),
    "answered": ("Answered and met", "green"),
}
NARROW = 90
PLAIN = ("meaning", "of")
EDIT_HEADS = ("value", "meaning", "before", "now", "change")
MARGIN_HEADS = ("check", "of", "before", "now", "margin before", "margin now")

Row = tuple[str, ...]


def print_comparison(found: Comparison, console: Console) -> None:
    """Print a comparison for a person."""
    word = " WORSE " if found.worse else " NOT WORSE "
    style = "bold reverse red" if found.worse else "bold reverse green"
    console.print(Padding(Text(word, style=style), (0, 1)))
    for name, review in (("before", found.old), ("now", found.new)):
        console.print(Padding(Text(clean(f"{name}: {_verdict(review)}")), (0, 1)))
    _heading("CHANGED IN THE SPEC", len(found.edits), "bold", console)
    _print_table(EDIT_HEADS, map(_edit, found.edits), console)
    for effect, (title, colour) in EFFECTS.items():
        turns = [turn for turn in found.turns if turn.effect == effect]
        if turns:
            _heading(title.upper(), len(turns), f"bold {colour}", console)
        for turn in turns:
            console.print(Padding(_turn(turn, colour), (0, 1)))
    if found.margins:
        _heading("MARGINS THAT MOVED MOST", len(found.margins), "bold", console)
        _print_table(MARGIN_HEADS, (_margin(*pair) for pair in found.margins), console)


def compared_markdown(found: Comparison) -> str:
    """The comparison as Markdown."""
    return "\n\n".join(_markdown(found)) + "\n"


def _markdown(found: Comparison) -> Iterator[str]:
    yield f"# Comparison: {escaped(found.new.spec.title or found.new.spec.file)}"
    yield f"**{'WORSE' if found.worse else 'NOT WORSE'}**"
    sides = (("before", found.old), ("now", found.new))
    yield "\n".join(f"- {name}: {escaped(_verdict(review))}" for name, review in sides)
    yield f"## Changed in the spec: {len(found.edits)}"
    if found.edits:
        yield _markdown_table(EDIT_HEADS, map(_edit, found.edits))
    for effect, (title, _) in EFFECTS.items():
        turns = [turn for turn in found.turns if turn.effect == effect]
        if turns:
            yield f"## {title}: {len(turns)}"
            yield "\n".join(f"- {escaped(_turn_text(turn))}" for turn in turns)
    if found.margins:
        yield "## Margins that moved most"
        yield _markdown_table(MARGIN_HEADS, (_margin(*pair) for pair in found.margins))


def _verdict(review: Review) -> str:
    spec, verdict = review.spec, review.verdict
    word = "released" if verdict.released else f"held by {len(verdict.holding)}"
    counts = ", ".join(f"{number} {name}" for name, number in review.counts().items())
    revision = f", revision {spec.revision}" if spec.revision else ""
    return f"{spec.file}{revision}: {word} at the {verdict.milestone} milestone; {counts}"


def _edit(edit: Edit) -> Row:
    share = "" if edit.change is None else percent(edit.change)
    meaning = edit.meaning.partition(";")[0]
    return (edit.path, meaning, edit.old or "not stated", edit.new or "not stated", share)


def _margin(old: Finding, new: Finding) -> Row:
    margins = [percent(item.margin or 0.0) for item in (old, new)]
    return (new.check, new.subject, against(old), against(new), *margins)


def percent(share: float) -> str:
    """A signed share in percent, one decimal where that says more.

    >>> percent(-0.0123), percent(12.4)
    ('-1.2 %', '+1240 %')
    """
    return f"{100.0 * share:+.{0 if abs(share) >= 1.0 else 1}f} %"


def _turn(turn: Turn, colour: str) -> Text:
    head, _, rest = _turn_text(turn).partition(": ")
    return Text.assemble(("▪ ", colour), (clean(head), "bold"), f": {clean(rest)}")


def _turn_text(turn: Turn) -> str:
    item = turn.subject
    text = f"{label(item)}: {_standing(turn.old)} before, {_standing(turn.new)} now"
    figures = against(item) or item.message
    return f"{text}; {figures}" if figures else text


def _standing(item: Finding | None) -> str:
    """An answer in one word."""
    if item is None:
        return "not asked"
    if item.severity is not None:
        return f"{item.severity}, permitted" if item.permitted else str(item.severity)
    return "met" if item.status is Status.MEETS else str(item.status)


def _heading(title: str, count: int, style: str, console: Console) -> None:
    console.print(Padding(Text(f"{title}  {count}", style=style), (1, 1, 0, 1)))


def _print_table(heads: Sequence[str], rows: Iterable[Row], console: Console) -> None:
    """Print rows as a table, or one below the other where the terminal is narrow."""
    if console.width < NARROW:
        for row in rows:
            first, *others = (clean(cell) for cell in row)
            named = zip(heads[1:], others, strict=True)
            told = (cell if head in PLAIN else f"{head} {cell}" for head, cell in named if cell)
            rest = "; ".join(told)
            console.print(Padding(Text.assemble("▪ ", (first, "bold"), f": {rest}"), (0, 1)))
        return
    table = Table(box=None, padding=(0, 1), show_edge=False, header_style="dim")
    for head in heads:
        table.add_column(head, overflow="fold", vertical="top")
    for row in rows:
        table.add_row(*(clean(cell) for cell in row))
    if table.row_count:
        console.print(table)


def _markdown_table(heads: Sequence[str], rows: Iterable[Row]) -> str:
    lines = [heads, ["---"] * len(heads), *([escaped(cell) for cell in row] for row in rows)]
    return "\n".join(f"| {' | '.join(line)} |" for line in lines)
