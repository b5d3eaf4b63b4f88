"""Measurements in words, the same in every report: what was read, what the model gives, why not."""

from collections.abc import Iterator
from dataclasses import dataclass
from math import isinf

from ..declare import PRODUCT, subject_of
from ..judging.boards import LEVELS, Boards
from ..judging.measured import Answer, Compared
from ..judging.review import Review
from ..quantities.quantity import show
from .phrases import apart

ANSWERS: tuple[Answer, ...] = ("differs", "part only", "unreadable", "not compared", "agrees")
STYLES = {
    "differs": "yellow",
    "part only": "cyan",
    "unreadable": "red",
    "not compared": "blue",
    "agrees": "green",
}
MOST_EXPLANATIONS = 4


@dataclass(frozen=True, slots=True)
class MeasuredRow:
    """One measurement, or the spread of several boards, as the reports print it."""

    answer: str
    what: str
    text: str


def measured_rows(review: Review, most: int = MOST_EXPLANATIONS) -> list[MeasuredRow]:
    """All measurements, first those that disagree; then what several boards say together.

    most: how many explanations of each are told.
    """
    order = sorted(review.measured, key=lambda item: ANSWERS.index(item.answer))
    rows = [MeasuredRow(item.answer, name_of(item), _told(review, item, most)) for item in order]
    return [*rows, *(_of_boards(item) for item in review.boards), *_stood_in(review)]


def name_of(item: Compared) -> str:
    """What was measured, where and on which board."""
    parts = [item.of.figure]
    if item.figure is not None and item.figure.subject != PRODUCT:
        parts.append(f"({item.figure.subject})")
    return " ".join(parts) + (f", board {item.of.board}" if item.of.board else "")


def in_words(item: Compared, most: int = MOST_EXPLANATIONS) -> str:
    """What was read, what the model gives, and what would explain the difference."""
    if item.band is None or item.read is None or item.figure is None:
        return f"{item.of.value.strip()}: {item.why}"
    unit = item.figure.unit
    band = _band(*item.band, unit)
    read = item.of.value.strip()
    lacks = " and ".join(item.without).replace("_", " ")
    kept = f"; not taken over: read without {lacks}" if lacks else ""
    if item.answer == "agrees":
        return f"{read}; model {band}{kept}"
    if item.answer == "part only":
        head = f"{read}; the spec accounts for {band} of it"
    else:
        edge = item.band[1] if item.read.nominal > item.band[1] else item.band[0]
        ratio = item.read.nominal / edge if edge and unit not in LEVELS else 0.0
        plain = apart(item.read.nominal, edge, unit)[1]
        times = f" ({ratio:.3g} times {plain})" if ratio > 0.0 else ""
        head = f"{read}; model {band}{times}"
    brief = most < MOST_EXPLANATIONS
    found = [x.short if brief else x.text for x in item.explanations[:most]]
    more = len(item.explanations) - most
    rest = f"; {more} more" if more > 0 else ""
    why = f"explained by {', or '.join(found)}{rest}" if found else "no single value explains it"
    doubt = f"doubted and not taken over, {item.doubt}; " if item.doubt else ""
    return f"{head}; {doubt}{why}{kept}"


def _band(low: float, high: float, unit: str) -> str:
    """What the model gives, with one end where only one is printed."""
    if isinf(high):
        return f"at least {show(low, unit)}"
    if isinf(low):
        return f"at most {show(high, unit)}"
    ends = (show(low, unit), show(high, unit))
    return ends[0] if ends[0] == ends[1] else " .. ".join(ends)


def _of_boards(item: Boards) -> MeasuredRow:
    """The spread of several boards beside the tolerances."""
    unit = item.figure.unit
    low, high = apart(item.low, item.high, unit)
    text = f"{low} .. {high}, spread {_spread(item.spread, unit)}"
    if item.allowed is not None:
        allowed = _spread(item.allowed, unit)
        text += f"; tolerances {'only allow' if item.is_wider else 'allow'} {allowed}"
    place = f" ({item.figure.subject})" if item.figure.subject != PRODUCT else ""
    return MeasuredRow(f"{item.count} boards", f"{item.figure.name}{place}", text)


def _spread(x: float, unit: str) -> str:
    return show(x, "K" if unit == "degC" else unit) if unit in LEVELS else show(x, "%")


def _told(review: Review, item: Compared, most: int) -> str:
    """A measurement in words; of one that stands in there is nothing else to compare it with."""
    stands_in = any(_is_of(item, path) for path in review.spec.stood_in)
    if item.is_compared or item.pins is None or not stands_in:
        return in_words(item, most)
    return f"{item.of.value.strip()}: the model has nothing to compare it with, so it is taken over"


def _is_of(item: Compared, path: str) -> bool:
    """Whether a measurement is of the figure at a path of the spec."""
    figure = item.figure
    if figure is None or figure.subject != subject_of(path):
        return False
    return figure.name.rpartition(".")[2] == path.rpartition(".")[2]


def _stood_in(review: Review) -> Iterator[MeasuredRow]:
    """What stands in for values that the spec does not state."""
    for path in sorted(review.spec.stood_in):
        value = review.spec.values[path]
        count = sum(1 for item in review.measured if _is_of(item, path))
        source = "one reading" if count == 1 else f"{count} readings"
        told = f"{getattr(value, 'text', '')}, from {source}; not in the file"
        yield MeasuredRow("taken over", path, told)
