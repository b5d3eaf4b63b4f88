"""The causes by number: equal causes of several channels are told as one, in the same order."""

from collections.abc import Sequence

from ..declare import without_channel
from ..finding import Cause


def numbered(causes: Sequence[Cause]) -> tuple[tuple[Cause, ...], ...]:
    """Causes that differ in nothing but the channel, together; the first ones are number 1."""
    found: dict[tuple[str, str], list[Cause]] = {}
    for cause in causes:
        found.setdefault((cause.kind, headline_without_channel(cause)), []).append(cause)
    return tuple(map(tuple, found.values()))


def headline_without_channel(cause: Cause) -> str:
    """The headline without the name of the channel, which the findings give."""
    text = cause.headline
    for name in dict.fromkeys(x.subject for x in cause.findings):
        text = without_channel(text, name)
    return text
