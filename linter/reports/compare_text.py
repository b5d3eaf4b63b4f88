"""Two revisions side by side, at a terminal and as Markdown."""

from collections.abc import Iterable, Iterator, Sequence

from rich.console import Console
from rich.padding import Padding
from rich.text import Text

from ..declare import local_path, subject_of
from ..finding import Finding, Status
from ..judging.compare import Comparison, Edit, Turn
from ..judging.review import Review
from .columns import print_columns
from .groups import alike
from .phrases import against, clean, escaped

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
PLAIN = ("meaning", "of")
EDIT_HEADS = ("value", "of", "meaning", "before", "now", "change")
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
    print_columns(EDIT_HEADS, _edits(found.edits), console, PLAIN)
    for effect, (title, colour) in EFFECTS.items():
        turns = [turn for turn in found.turns if turn.effect == effect]
        if turns:
            _heading(title.upper(), len(turns), f"bold {colour}", console)
        for name, subject, told in _turns(turns):
            text = Text.assemble(("▪ ", colour), (clean(f"{name} ({subject})"), "bold"))
            console.print(Padding(text.append(clean(f": {told}")), (0, 1)))
    if found.margins:
        _heading("MARGINS THAT MOVED MOST", len(found.margins), "bold", console)
        print_columns(MARGIN_HEADS, _margins(found.margins), console, PLAIN)


def compare_markdown(found: Comparison) -> str:
    """The comparison as Markdown."""
    return "\n\n".join(_markdown(found)) + "\n"


def _markdown(found: Comparison) -> Iterator[str]:
    yield f"# Comparison: {escaped(found.new.spec.title or found.new.spec.file)}"
    yield f"**{'WORSE' if found.worse else 'NOT WORSE'}**"
    sides = (("before", found.old), ("now", found.new))
    yield "\n".join(f"- {name}: {escaped(_verdict(review))}" for name, review in sides)
    yield f"## Changed in the spec: {len(found.edits)}"
    if found.edits:
        yield _markdown_table(EDIT_HEADS, _edits(found.edits))
    for effect, (title, _) in EFFECTS.items():
        turns = [turn for turn in found.turns if turn.effect == effect]
        if turns:
            yield f"## {title}: {len(turns)}"
            rows = _turns(turns)
            yield "\n".join(f"- {escaped(f'{name} ({of}): {told}')}" for name, of, told in rows)
    if found.margins:
        yield "## Margins that moved most"
        yield _markdown_table(MARGIN_HEADS, _margins(found.margins))


def _verdict(review: Review) -> str:
    spec, verdict = review.spec, review.verdict
    word = "released" if verdict.released else f"held by {len(verdict.holding)}"
    counts = ", ".join(f"{number} {name}" for name, number in review.counts().items())
    revision = f", revision {spec.revision}" if spec.revision else ""
    return f"{spec.file}{revision}: {word} at the {verdict.milestone} milestone; {counts}"


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
        margins = (percent(item.margin or 0.0) for item in (old, new))
        rows.append((new.check, new.subject, against(old), against(new), *margins))
    return alike(rows)


def percent(share: float) -> str:
    """A signed share in percent, one decimal where that says more.

    >>> percent(-0.0123), percent(12.4)
    ('-1.2 %', '+1240 %')
    """
    return f"{100.0 * share:+.{0 if abs(share) >= 1.0 else 1}f} %"


def _turns(turns: Iterable[Turn]) -> list[Row]:
    """Check, subject and what became of the answer, equal channels as one."""
    rows = []
    for turn in turns:
        item = turn.subject
        text = f"{_standing(turn.old)} before, {_standing(turn.new)} now"
        figures = against(item) or item.message
        rows.append((item.check, item.subject, f"{text}; {figures}" if figures else text))
    return alike(rows)


def _standing(item: Finding | None) -> str:
    """An answer in one word."""
    if item is None:
        return "not asked"
    if item.severity is not None:
        return f"{item.severity}, permitted" if item.permitted else str(item.severity)
    return "met" if item.status is Status.MEETS else str(item.status)


def _heading(title: str, count: int, style: str, console: Console) -> None:
    console.print(Padding(Text(f"{title}  {count}", style=style), (1, 1, 0, 1)))


def _markdown_table(heads: Sequence[str], rows: Iterable[Row]) -> str:
    lines = [heads, ["---"] * len(heads), *([escaped(cell) for cell in row] for row in rows)]
    return "\n".join(f"| {' | '.join(line)} |" for line in lines)
