"""Equal answers of several channels as one, so that a stereo fault is read once."""

from collections.abc import Iterable

from ..declare import without_channel
from ..finding import Finding


def groups(findings: Iterable[Finding]) -> list[tuple[Finding, tuple[str, ...]]]:
    """The findings in order, each with the subjects that it holds for.

    Answers count as equal when check, severity, status and text agree; the first one
    stands for all.
    """
    found: dict[tuple[object, ...], tuple[Finding, list[str]]] = {}
    for item in findings:
        key = (item.check, item.status, item.severity, _text(item), item.permitted)
        found.setdefault(key, (item, []))[1].append(item.subject)
    return [(item, tuple(subjects)) for item, subjects in found.values()]


def alike(rows: Iterable[tuple[str, ...]]) -> list[tuple[str, ...]]:
    """Table rows of which the second cell names the subject; equal ones as one.

    >>> alike([("gain", "left", "1"), ("gain", "right", "1"), ("gain", "rear", "2")])
    [('gain', 'left and right', '1'), ('gain', 'rear', '2')]
    """
    found: dict[tuple[str, ...], list[str]] = {}
    for first, subject, *rest in rows:
        found.setdefault((first, *rest), []).append(subject)
    return [(first, together(tuple(names)), *rest) for (first, *rest), names in found.items()]


def together(subjects: tuple[str, ...]) -> str:
    """Subjects in words.

    >>> together(("left", "right", "rear"))
    'left, right and rear'
    """
    if len(subjects) == 1:
        return subjects[0]
    return f"{', '.join(subjects[:-1])} and {subjects[-1]}"


def _text(item: Finding) -> str:
    """The message, or what is missing, without the channel's name."""
    missing = ", ".join(gap.path for gap in item.advice.missing)
    return without_channel(f"{item.message} {missing}", item.subject)
