"""Assumptions in words: each once with what leans on it, and what could overturn a finding."""

from collections.abc import Iterable, Mapping
from itertools import chain

from ..finding import Assumed, Finding, Status
from ..judging.review import Review
from .phrases import assumption

MOST_UNSURE = 2


def assumptions_of(review: Review) -> Mapping[str, list[str]]:
    """Every assumption of the findings and open items, with the titles of those."""
    leaning: dict[str, dict[str, None]] = {}
    for item in chain(review.failing(), review.of_status(Status.OPEN)):
        for text in _told(x for x in item.evidence.assumed if x.leaning != "absent"):
            leaning.setdefault(text, {})[item.title] = None
    return {text: list(titles) for text, titles in leaning.items()}


def unsure_of(item: Finding) -> list[str]:
    """The assumptions that could overturn a finding, the first ones."""
    assumed = item.evidence.assumed if item.severity else ()
    unsure = (x for x in assumed if x.leaning in ("adverse", "neutral") or x.placeholder)
    return _told(unsure)[:MOST_UNSURE]


def _told(assumed: Iterable[Assumed]) -> list[str]:
    """Each once: two channels that lean on the same say it once."""
    return list(dict.fromkeys(map(assumption, assumed)))
