"""The worksheets of a whole spec: one sheet a subject, its quantities once, then its checks.

A check then shows only what its figure takes, and what stands elsewhere at its worst corner.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from ..declare import local_path
from .worksheet import Line, Worksheet

MOST_ROWS = 12


@dataclass(frozen=True, slots=True)
class Sheet:
    """All that is computed for one subject, or for channels of which every number agrees.

    common: each quantity once; pages: the checks that are computed; open: those that are not;
    alike: checks with the same numbers as in another sheet, with the subject of that one.
    """

    subjects: tuple[str, ...]
    common: tuple[Line, ...]
    pages: tuple[Worksheet, ...]
    open: tuple[Worksheet, ...]
    alike: tuple[tuple[Worksheet, str], ...] = ()


def sheets_of(pages: Sequence[Worksheet]) -> tuple[Sheet, ...]:
    """The sheets of all subjects, the product first; equal channels share one."""
    first: dict[tuple[object, ...], str] = {}
    for page in pages:
        first.setdefault(_content(page), page.finding.subject)
    groups: dict[tuple[object, ...], list[str]] = {}
    by_subject: dict[str, list[Worksheet]] = {}
    for page in pages:
        by_subject.setdefault(page.finding.subject, []).append(page)
    for subject, own in by_subject.items():
        groups.setdefault(tuple(map(_content, own)), []).append(subject)
    return tuple(
        _sheet(tuple(subjects), by_subject[subjects[0]], first) for subjects in groups.values()
    )


def _sheet(
    subjects: tuple[str, ...], pages: list[Worksheet], first: dict[tuple[object, ...], str]
) -> Sheet:
    own = [page for page in pages if first[_content(page)] == subjects[0]]
    computed = tuple(page for page in own if page.lines)
    lines: dict[tuple[str, str, str], Line] = {}
    for page in computed:
        for line in page.lines[:-1]:
            lines.setdefault((local_path(line.symbol), line.formula, line.nominal), line)
    return Sheet(
        subjects,
        tuple(lines.values()),
        computed,
        tuple(page for page in own if not page.lines),
        tuple((page, first[_content(page)]) for page in pages if page not in own),
    )


def rows_of(page: Worksheet) -> tuple[list[Line], int]:
    """What a check shows beside the common quantities, and how much more moves at its corner.

    First counts what its figure takes, then what the spec states, then what is nearest to
    the figure.
    """
    *every, figure = page.lines
    lines = {(local_path(x.symbol), x.nominal, x.worst, x.direct): x for x in every}.values()
    rows = [(place, line) for place, line in enumerate(lines) if line.direct or line.moves]
    rows.sort(key=lambda x: (not x[1].direct, x[1].kind == "derived", -x[0]))
    kept = sorted(rows[: MOST_ROWS - 1], key=lambda x: x[0])
    return [*(line for _, line in kept), figure], len(rows) - len(kept)


def _content(page: Worksheet) -> tuple[object, ...]:
    """All that a page says, without the name of the channel and the order of its lines."""
    finding = page.finding
    message = finding.message.replace(f"channels.{finding.subject}.", "")
    lines = frozenset(
        (local_path(x.symbol), x.formula, x.nominal, x.worst, x.place and x.place.line, x.direct)
        for x in page.lines
    )
    return (page.entry.name, finding.status, finding.severity, message, lines)
