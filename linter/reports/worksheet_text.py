"""Worksheets as plain text and as Markdown."""

from collections.abc import Iterable

from rich.console import Console
from rich.padding import Padding
from rich.text import Text

from ..declare import local_path
from ..finding import Finding
from ..judging.worksheet import Line, Worksheet
from ..reading.loading import Spec
from .catalogue_text import limits
from .columns import print_columns
from .groups import together
from .identity import text_hash
from .phrases import against, cited, clean, escaped, margin_of

HEADINGS = ("quantity", "stated as, or formula", "nominal", "worst corner", "where", "source")
PLAIN = ("stated as, or formula", "where", "source")
SIGNATURE = (
    "Calculated by: ____________________   Checked by: ____________________   Date: __________"
)


def print_head(spec: Spec, console: Console) -> None:
    """Say which design the worksheets are of."""
    console.print(Padding(Text(clean(_title(spec)), style="bold"), (0, 1)))
    console.print(Padding(Text(clean(_grounds(spec)), style="dim"), (0, 1, 1, 1)))


def print_worksheets(pages: Iterable[Worksheet], console: Console) -> None:
    """Print worksheets for a person; channels with the same numbers share one."""
    for page, subjects in _alike(pages):
        console.print(Text.assemble((page.entry.name, "bold"), f" · {clean(subjects)}"))
        for text in _head(page):
            console.print(Padding(Text(text), (0, 0, 0, 2)))
        if page.lines:
            console.print()
            last = len(page.lines) - 1
            print_columns(HEADINGS, map(_cells, page.lines), console, PLAIN, strong={last})
        console.print(Padding(Text(SIGNATURE, style="dim"), (1, 0, 1, 2)))


def markdown(pages: Iterable[Worksheet], spec: Spec) -> str:
    """All worksheets as one Markdown text."""
    parts = [f"# Worksheets: {escaped(_title(spec))}", escaped(_grounds(spec))]
    for page, subjects in _alike(pages):
        parts.append(f"## {escaped(page.entry.name)} ({escaped(subjects)})")
        parts.append("\n".join(f"- {escaped(text)}" for text in _head(page)))
        if page.lines:
            rows = [HEADINGS, tuple("---" for _ in HEADINGS)]
            rows += [tuple(escaped(cell) for cell in _cells(line)) for line in page.lines]
            parts.append("\n".join(f"| {' | '.join(row)} |" for row in rows))
        parts.append(escaped(SIGNATURE))
    return "\n\n".join(parts) + "\n"


def _alike(pages: Iterable[Worksheet]) -> list[tuple[Worksheet, str]]:
    """The sheets with their subjects in words, those of which every cell agrees as one."""
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
    finding, check = page.finding, page.entry.check
    lines = [check.title]
    if against(finding.evidence):
        lines.append(f"result: {against(finding.evidence)}; {_margin(finding)}{_status(finding)}")
    else:
        lines.append(f"{finding.status.value}: {finding.message}")
    lines += [f"limit {text}" for text in limits(check)]
    told = check.limits.basis.values()
    sources = [cited(source) for source in check.sources if source not in told]
    return [*lines, f"sources: {'; '.join(sources)}"] if sources else lines


def _margin(finding: Finding) -> str:
    share = " of the limit" if finding.evidence.margin is not None else ""
    return f"margin {margin_of(finding.evidence)}{share}, " if margin_of(finding.evidence) else ""


def _status(finding: Finding) -> str:
    return str(finding.severity or finding.status)


def _cells(line: Line) -> tuple[str, ...]:
    """A row; the sources of the figure itself stand in the head of the sheet."""
    where = f"line {line.place.line}" if line.place else line.kind
    source = "" if line.kind == "figure" else "; ".join(cited(item) for item in line.sources)
    return (local_path(line.symbol), line.formula, line.nominal, line.worst, where, source)
