"""What was read off boards, as the pictures of a design take it."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from ..declare import PRODUCT
from .measured import Compared

NOTE = "Measured: as read off a board, under the conditions of the reading."


@dataclass(frozen=True, slots=True)
class Reading:
    """A value with its uncertainty, and which board it is of where boards are told apart."""

    board: str
    low: float
    nominal: float
    high: float

    def named(self, label: str) -> str:
        """A label that says that it was measured."""
        board = f", board {self.board}" if self.board else ""
        return f"{label} measured{board}".strip()


def readings_of(
    measured: Iterable[Compared], subjects: Iterable[str]
) -> Mapping[str, tuple[Reading, ...]]:
    """What can be compared with the model, by the name of the figure, of some subjects."""
    found: dict[str, tuple[Reading, ...]] = {}
    wanted = {*subjects, PRODUCT}
    for item in measured:
        if item.is_compared and item.figure and item.read and item.figure.subject in wanted:
            read = Reading(item.of.board, item.read.lo, item.read.nominal, item.read.hi)
            found[item.figure.name] = (*found.get(item.figure.name, ()), read)
    return found
