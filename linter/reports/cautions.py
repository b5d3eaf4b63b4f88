"""Signal words, their colours on a terminal, and which answers print a caution.

The words are those of ANSI Z535.6; the colours of its signal panels are safety red, orange,
yellow and blue (ANSI Z535.1, from memory).
"""

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
