"""Why a spec file cannot be assessed: frozen data, no behaviour."""

from collections.abc import Iterable
from dataclasses import dataclass

from ..finding import Place


@dataclass(frozen=True, slots=True)
class Refusal:
    """One thing in a file that must be put right before the file can be assessed.

    problem: what is wrong, with the words of the file; expected: what may stand there;
    example: text that would be accepted, empty where none would help.
    """

    place: Place
    problem: str
    expected: str
    example: str = ""


def shown(text: str, limit: int = 40) -> str:
    """Text of the file as a message quotes it: on one line, cut where it is long."""
    line = " ".join(text.split())
    return f"`{line[:limit]}...`" if len(line) > limit else f"`{line}`"


def in_order(refusals: Iterable[Refusal]) -> tuple[Refusal, ...]:
    """Refusals as a reader meets them in the file."""
    return tuple(sorted(refusals, key=lambda item: (item.place.line, item.place.column)))
