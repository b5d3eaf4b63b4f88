"""Signal words, their colours on a terminal, and which answers print a caution.

The words are those of ANSI Z535.6; the colours of its signal panels are safety red, orange,
yellow and blue (ANSI Z535.1, from memory).
"""

from collections.abc import Iterable

from ..check import Caution, SignalWord
from ..finding import Finding, Status

SIGNALS: dict[SignalWord, str] = {
    "DANGER": "bold red",
    "WARNING": "bold dark_orange",
    "CAUTION": "bold yellow",
    "NOTICE": "bold blue",
}


def cautions_of(item: Finding) -> tuple[Caution, ...]:
    """What a finding warns of, and an open question of safety as well; the gravest first."""
    open_safety = item.status is Status.OPEN and item.stake == "safety"
    told = item.advice.cautions if item.severity or open_safety else ()
    return tuple(sorted(told, key=lambda x: list(SIGNALS).index(x.signal)))


def distinct(cautions: Iterable[Caution]) -> list[Caution]:
    """Each hazard once, with the most that is said of it; the gravest first."""
    found: dict[str, Caution] = {}
    for item in cautions:
        hazard = item.text.partition(". ")[0]
        if hazard not in found or len(item.text) > len(found[hazard].text):
            found[hazard] = item
    return sorted(found.values(), key=lambda x: list(SIGNALS).index(x.signal))
