"""The comparison with a bill of materials at a terminal."""

from collections.abc import Iterable, Sequence

from rich.console import Console
from rich.text import Text

from ..finding import Place
from ..judging.bom import BomComparison, BomFinding
from .identity import text_hash
from .lines import hanging, print_lines, room

SHORT_HASH = 16
MOST_EXTRA = 12
MOST_TOLD = 100
MOST_NAMED = 40
TITLES = {
    "missing": "MISSING IN THE TABLE",
    "different": "DIFFERENT",
    "not readable": "NOT COMPARED: THE VALUE CANNOT BE READ",
    "quantity": "QUANTITY AND DESIGNATORS",
    "twice": "DESIGNATOR LISTED MORE THAN ONCE",
}


def print_bom(found: BomComparison, console: Console) -> None:
    """Print what is missing, what differs and what could not be compared."""
    width = room(console)
    lines = _head(found, width)
    for kind, title in TITLES.items():
        items = [item for item in found.findings if item.kind == kind]
        if items:
            lines += [Text(), Text(f" {title}", "bold")]
        for item in items[:MOST_TOLD]:
            told = f"{_few(item.names, MOST_NAMED)}: {item.message}"
            lines += hanging("▪ ", told, width, ("red", ""))
            lines += hanging("    ", where(item, found), width, ("", "dim"))
        if len(items) > MOST_TOLD:
            lines += hanging("  ", f"and {len(items) - MOST_TOLD} more", width, ("", "dim"))
    print_lines([*lines, *_rest(found, width)], console)


def told_of(found: BomComparison) -> str:
    """The comparison in numbers."""
    count = len(found.findings)
    told = f"{found.named} parts named in the spec, {len(found.agreed)} values agree"
    return told + (f", {count} disagreement{'' if count == 1 else 's'}" if count else "")


def _head(found: BomComparison, width: int) -> list[Text]:
    word, style = ("HELD", "bold red") if found.findings else ("AGREES", "bold green")
    lines = hanging(f"{word}  ", told_of(found), width, (style, ""))
    for what, name, text in (
        ("spec", found.spec.file, found.spec.text),
        ("table", found.bom.file, found.bom.text),
    ):
        lines += hanging("", f"{what} {name} {text_hash(text)[:SHORT_HASH]}", width, ("", "dim"))
    columns = ", ".join(f"{head} ({column})" for column, head in found.bom.columns.items())
    return [*lines, *hanging("columns read  ", columns, width, ("dim", "dim"))]


def where(item: BomFinding, found: BomComparison) -> str:
    """Both places: in the spec or the parts file, and in the table."""
    lines = _few(list(dict.fromkeys(map(str, item.lines))))
    spec = _place(item.place) if item.place else ""
    table = f"{found.bom.file}, line {lines}" if lines else ""
    return "; ".join(text for text in (spec, table) if text)


def _place(place: Place) -> str:
    return f"{place.file}, line {place.line}"


def _rest(found: BomComparison, width: int) -> list[Text]:
    """What the table does not tell, and what the spec does not name."""
    lines: list[Text] = []
    if found.untold:
        lines += [Text(), Text(" Not compared", "bold")]
        for what, parts in found.untold.items():
            lines += hanging("▪ ", f"{what}: {_few(in_order(parts))}", width, ("dim", ""))
    if found.bom.unread:
        texts = ", ".join(f"{text} (line {line})" for line, text in found.bom.unread[:MOST_EXTRA])
        lines += [Text(), *hanging("No designators: ", texts, width, ("bold", ""))]
    if found.extra:
        lines += [Text(), *hanging("Only in the table: ", _few(found.extra), width, ("bold", ""))]
    return lines


def in_order(parts: Iterable[str]) -> list[str]:
    """Designators in the order in which people count."""
    return sorted(parts, key=_order)


def _order(name: str) -> tuple[str, int, str]:
    letters = name.rstrip("0123456789")
    return letters, int(name[len(letters) :] or 0), name


def _few(names: Sequence[str], most: int = MOST_EXTRA) -> str:
    more = f" and {len(names) - most} more" if len(names) > most else ""
    return ", ".join(names[:most]) + more
