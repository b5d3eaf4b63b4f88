"""The worksheets of a whole spec: one sheet a subject, its quantities once, then its checks.

A check then shows only what its figure takes, and what stands elsewhere at its worst corner.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import zip_longest

from ..declare import local_path, without_channel
from .worksheet import Line, Worksheet

MOST_ROWS = 10


@dataclass(frozen=True, slots=True)
class Sheet:
    """All that is computed for one subject, or for channels of which every number agrees.

    common: each quantity once; pages: the checks that are computed; open: those that are not;
    alike: the names of checks that say the same as in the sheet of another subject.
    """

    subjects: tuple[str, ...]
    common: tuple[Line, ...]
    pages: tuple[Worksheet, ...]
    open: tuple[Worksheet, ...]
    alike: Mapping[str, tuple[str, ...]]


def sheets_of(pages: Sequence[Worksheet]) -> tuple[Sheet, ...]:
    """The sheets of all subjects; one that says nothing of its own joins the sheet that does."""
    owner: dict[tuple[object, ...], str] = {}
    by_subject: dict[str, list[Worksheet]] = {}
    for page in pages:
        owner.setdefault(_content(page), page.finding.subject)
        by_subject.setdefault(page.finding.subject, []).append(page)
    joined: dict[str, list[str]] = {}
    for subject, own in by_subject.items():
        owners = {owner[_content(page)] for page in own}
        lead = owners.pop() if len(owners) == 1 else subject
        joined.setdefault(lead, []).append(subject)
    return tuple(
        _sheet(tuple(subjects), by_subject[lead], owner) for lead, subjects in joined.items()
    )


def _sheet(
    subjects: tuple[str, ...], pages: list[Worksheet], owner: dict[tuple[object, ...], str]
) -> Sheet:
    own = [page for page in pages if owner[_content(page)] == subjects[0]]
    computed = tuple(page for page in own if page.lines)
    lines: dict[tuple[str, str, str], Line] = {}
    for page in computed:
        for line in page.lines[:-1]:
            lines.setdefault((local_path(line.symbol), line.formula, line.nominal), line)
    alike: dict[str, list[str]] = {}
    for page in pages:
        if owner[_content(page)] != subjects[0]:
            alike.setdefault(owner[_content(page)], []).append(page.entry.name)
    return Sheet(
        subjects,
        tuple(lines.values()),
        computed,
        tuple(page for page in own if not page.lines),
        {subject: tuple(names) for subject, names in alike.items()},
    )


def rows_of(page: Worksheet) -> tuple[list[Line], int]:
    """What a check shows beside the common quantities, and how much more moves at its corner.

    First counts what its figure takes; then, by turns, what moves it most and what is nearest
    to it in the computation.
    """
    *every, figure = page.lines
    lines = {(local_path(x.symbol), x.nominal, x.worst, x.direct): x for x in every}.values()
    rows = [line for line in lines if line.direct or line.moves]
    order = [line for line in rows if line.direct]
    strength = {item.path: place for place, item in enumerate(page.finding.evidence.corner)}
    moving = [line for line in rows if not line.direct]
    given = [line for line in moving if line.kind != "derived"]
    given.sort(key=lambda line: strength.get(line.symbol, len(strength)))
    nearest = [line for line in reversed(moving) if line.kind == "derived"]
    order += [line for pair in zip_longest(given, nearest) for line in pair if line is not None]
    kept = [line for line in rows if any(line is one for one in order[: MOST_ROWS - 1])]
    return [*kept, figure], len(rows) - len(kept)


def _content(page: Worksheet) -> tuple[object, ...]:
    """All that a page says, without the name of the channel and the order of its lines.

    Of values over all channels the order is that of the channels, and counts as little.
    """
    finding = page.finding
    message = without_channel(finding.message, finding.subject)
    lines = frozenset(
        (
            local_path(x.symbol),
            x.formula,
            _parts(x.nominal),
            _parts(x.worst),
            x.place and x.place.line,
            x.direct,
        )
        for x in page.lines
    )
    return (page.entry.name, finding.status, finding.severity, message, lines)


def _parts(value: str) -> tuple[str, ...]:
    return tuple(sorted(value.replace(",", "").split()))
