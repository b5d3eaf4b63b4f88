"""Worksheets as plain text and as Markdown, from the same blocks."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field

from rich.console import Console
from rich.padding import Padding
from rich.text import Text

from ..check import Source
from ..declare import local_path
from ..finding import Finding
from ..judging.house import House
from ..judging.sheets import Sheet, rows_of
from ..judging.worksheet import Line, Worksheet
from ..reading.loading import Spec
from .catalogue_text import limits, thresholds
from .columns import print_columns
from .groups import together
from .identity import text_hash
from .markdown import markdown_table
from .phrases import against, cited, clean, escaped, margin_of
from .verdict import DISCLAIMER, house_told

HEADINGS = ("quantity", "stated as, or formula", "nominal", "worst corner", "where", "source")
COMMON = ("quantity", "stated as, or formula", "nominal", "where", "source")
OF_A_CHECK = ("quantity", "nominal", "worst corner")
PLAIN = ("stated as, or formula", "where", "source")
SIGNATURE = (
    "Calculated by: ________________  Date: __________  Signature: ________________",
    "Checked by: ___________________  Date: __________  Signature: ________________",
)
INITIALS = "agreed: ____"


@dataclass(frozen=True, slots=True)
class Block:
    """A heading with texts and a table below it, as both forms print it.

    mark: room for initials beside the heading; strong: the last row is printed bold.
    """

    heading: str
    level: int
    texts: Sequence[str] = ()
    heads: Sequence[str] = ()
    rows: Sequence[Sequence[str]] = field(default_factory=list)
    mark: str = ""
    strong: bool = False


def of_house(house: House | None) -> Iterator[Block]:
    """What a house file changes."""
    for line in house_told(house):
        yield Block("", 2, [line])


def of_checks(pages: Iterable[Worksheet]) -> Iterator[Block]:
    """Checks by name, each with every number; channels with the same numbers share one."""
    for page, subjects in _alike(pages):
        rows = [_cells(line) for line in page.lines]
        name = f"{page.entry.name} · {subjects}"
        yield Block(name, 2, _head(page), HEADINGS, rows, strong=True)
    yield Block("", 2, SIGNATURE)


def of_sheets(sheets: Iterable[Sheet]) -> Iterator[Block]:
    """A whole spec: what all checks of a subject share, then its checks, then who signs."""
    for sheet in sheets:
        yield from _of_sheet(sheet)


def print_blocks(spec: Spec, blocks: Iterable[Block], console: Console) -> None:
    """Print worksheets for a person."""
    console.print(Padding(Text(clean(_title(spec)), style="bold"), (0, 1)))
    console.print(Padding(Text(clean(_grounds(spec)), style="dim"), (0, 1)))
    for block in blocks:
        console.print()
        if block.heading:
            mark = f"   {block.mark}" if block.mark else ""
            console.print(Text.assemble((clean(block.heading), "bold"), (mark, "dim")))
        for text in block.texts:
            console.print(Padding(Text(clean(text)), (0, 0, 0, 2)))
        if block.rows:
            strong = {len(block.rows) - 1} if block.strong else ()
            print_columns(block.heads, block.rows, console, PLAIN, strong)
    console.print(Padding(Text(DISCLAIMER, style="dim"), (1, 1, 0, 1)))


def markdown(spec: Spec, blocks: Iterable[Block]) -> str:
    """The same as one Markdown text."""
    parts = [f"# Worksheets: {escaped(_title(spec))}", escaped(_grounds(spec))]
    for block in blocks:
        mark = f" ({block.mark})" if block.mark else ""
        if block.heading:
            parts.append(f"{'#' * block.level} {escaped(block.heading + mark)}")
        if block.texts:
            parts.append("\n".join(f"- {escaped(text)}" for text in block.texts))
        if block.rows:
            parts.append(markdown_table(block.heads, block.rows))
    return "\n\n".join([*parts, escaped(DISCLAIMER)]) + "\n"


def _of_sheet(sheet: Sheet) -> Iterator[Block]:
    name = together(sheet.subjects)
    count = f"{len(sheet.pages)} checks computed, {len(sheet.open)} answered without a figure"
    yield Block(f"Sheet: {name}", 2, [count])
    numbers = _numbers(sheet)
    if sheet.common:
        yield _quantities(sheet, name, numbers)
    for page in sheet.pages:
        lines, more = rows_of(page)
        texts = _short_head(page, numbers)
        if more:
            texts.append(f"{more} more quantities move at this corner: name the check to see them")
        rows = [(local_path(line.symbol), line.nominal, line.worst) for line in lines]
        yield Block(page.entry.name, 3, texts, OF_A_CHECK, rows, INITIALS, strong=True)
    if sheet.open:
        rows = [(x.entry.name, str(x.finding.status), x.finding.message) for x in sheet.open]
        yield Block(f"Answered without a figure: {name}", 3, (), ("check", "status", "why"), rows)
    for subject, names in sheet.alike.items():
        yield Block(f"Equal in the sheet of {subject}: {name}", 3, [", ".join(names)])
    if numbers:
        texts = [f"[{number}]  {text}" for text, number in numbers.items()]
        yield Block(f"Sources of {name}", 3, texts)
    yield Block(f"Signed for {name}", 3, SIGNATURE)


def _numbers(sheet: Sheet) -> dict[str, int]:
    """The sources of a sheet, of its quantities first, each with its number."""
    checks = [page.entry.check for page in sheet.pages]
    found = [
        *(x for line in sheet.common for x in line.sources),
        *(x for check in checks for x in (*check.limits.basis.values(), *check.sources)),
    ]
    return {text: number for number, text in enumerate(dict.fromkeys(map(cited, found)), 1)}


def _short_head(page: Worksheet, numbers: Mapping[str, int]) -> list[str]:
    """Title and result, limits and formula, with the numbers of their sources."""
    check = page.entry.check
    told = [
        f"{name} {side} {text} {_cited([check.limits.basis[name]], numbers)}"
        for name, side, text in thresholds(check)
    ]
    sources = _cited(check.sources, numbers)
    return [
        f"{check.title}: {_result(page).removeprefix('result: ')}",
        f"limits: {', '.join(told)}",
        f"{page.entry.name} = {page.lines[-1].formula} {sources}",
    ]


def _cited(sources: Iterable[Source], numbers: Mapping[str, int]) -> str:
    return f"[{', '.join(str(numbers[cited(x)]) for x in sources)}]"


def _quantities(sheet: Sheet, name: str, numbers: Mapping[str, int]) -> Block:
    """What the checks share, each quantity once."""
    full: dict[str, set[str]] = {}
    for line in sheet.common:
        full.setdefault(local_path(line.symbol), set()).add(line.symbol)
    rows = []
    for line in sheet.common:
        short = local_path(line.symbol)
        symbol = short if len(full[short]) == 1 else line.symbol
        _, formula, nominal, where, _ = _common(line)
        told = _cited(line.sources, numbers) if line.sources else ""
        rows.append((symbol, formula, nominal, where, told))
    return Block(f"Quantities of {name}", 3, (), COMMON, rows)


def _alike(pages: Iterable[Worksheet]) -> list[tuple[Worksheet, str]]:
    """The pages with their subjects in words, those of which every cell agrees as one."""
    found: dict[tuple[object, ...], tuple[Worksheet, list[str]]] = {}
    for page in pages:
        key = (page.entry.name, *_head(page), *map(_cells, page.lines))
        found.setdefault(key, (page, []))[1].append(page.finding.subject)
    return [(page, together(tuple(subjects))) for page, subjects in found.values()]


def _title(spec: Spec) -> str:
    revision = f", revision {spec.revision}" if spec.revision else ""
    return f"{spec.title or spec.file}{revision}"


def _grounds(spec: Spec) -> str:
    return f"{spec.file}, SHA-256 {text_hash(spec.text)}"


def _head(page: Worksheet) -> list[str]:
    """Title, result and limits with their sources."""
    check = page.entry.check
    known = check.limits.basis.values()
    sources = [cited(source) for source in check.sources if source not in known]
    lines = [check.title, _result(page), f"limits: {'. '.join(limits(check))}"]
    return [*lines, f"sources: {'; '.join(sources)}"] if sources else lines


def _result(page: Worksheet) -> str:
    finding = page.finding
    if against(finding.evidence):
        return f"result: {against(finding.evidence)}; {_margin(finding)}{_status(finding)}"
    return f"{finding.status.value}: {finding.message}"


def _margin(finding: Finding) -> str:
    share = " of the limit" if finding.evidence.margin is not None else ""
    return f"margin {margin_of(finding.evidence)}{share}, " if margin_of(finding.evidence) else ""


def _status(finding: Finding) -> str:
    return str(finding.severity or finding.status)


def _cells(line: Line) -> tuple[str, ...]:
    """A row; the sources of the figure itself stand in the head of the sheet."""
    symbol, formula, nominal, where, source = _common(line)
    source = "" if line.kind == "figure" else source
    return (symbol, formula, nominal, line.worst, where, source)


def _common(line: Line) -> tuple[str, ...]:
    where = f"line {line.place.line}" if line.place else line.kind
    source = "; ".join(cited(item) for item in line.sources)
    return (local_path(line.symbol), line.formula, line.nominal, where, source)
