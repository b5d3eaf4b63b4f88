"""The numbers of a picture, ready to be drawn: frozen data."""

from dataclasses import dataclass

from ..finding import Assumed
from ..picture import Kind, Picture, Scale


@dataclass(frozen=True, slots=True)
class Point:
    """A number with its extremes."""

    label: str
    kind: Kind
    low: float
    nominal: float
    high: float


@dataclass(frozen=True, slots=True)
class DrawnRow:
    """A row of a scale with the numbers that are known."""

    label: str
    points: tuple[Point, ...]
    aside: bool = False

    @property
    def values(self) -> tuple[Point, ...]:
        """What the part sees, ratings left out."""
        return tuple(x for x in self.points if x.kind in ("value", "second"))

    def tells(self, picture: Scale) -> bool:
        """Whether the row says what a part sees and, where it is no sum, what it may see."""
        if picture.bars:
            return any(point.high != 0.0 for point in self.values)
        return bool(self.values) and (picture.chain or len(self.values) < len(self.points))


@dataclass(frozen=True, slots=True)
class Line:
    """A curve; low and high are those of the worst case, or empty."""

    label: str
    x: tuple[float, ...]
    y: tuple[float, ...]
    low: tuple[float, ...] = ()
    high: tuple[float, ...] = ()


@dataclass(frozen=True, slots=True)
class DrawnMark:
    """A value on an axis."""

    label: str
    axis: str
    value: float
    kind: Kind


@dataclass(frozen=True, slots=True)
class DrawnSpot:
    """A point among curves; low and high are those of its y."""

    label: str
    x: float
    low: float
    y: float
    high: float
    kind: Kind


@dataclass(frozen=True, slots=True)
class DrawnSpan:
    """A stretch of the x axis.  turned: its ends have changed places, which the label says."""

    label: str
    low: float
    high: float
    turned: bool


@dataclass(frozen=True, slots=True)
class Drawn:
    """A picture with its numbers, for one subject or for channels that state the same.

    before: the same picture of an older revision, drawn thin behind it.
    """

    picture: Picture
    subjects: tuple[str, ...]
    rows: tuple[DrawnRow, ...] = ()
    lines: tuple[Line, ...] = ()
    marks: tuple[DrawnMark, ...] = ()
    spans: tuple[DrawnSpan, ...] = ()
    spots: tuple[DrawnSpot, ...] = ()
    ends: tuple[float | None, float | None, float | None, float | None] = (None,) * 4
    notes: tuple[str, ...] = ()
    assumed: tuple[Assumed, ...] = ()
    before: "Drawn | None" = None

    @property
    def shows(self) -> tuple[object, ...]:
        """All that is drawn, by which two pictures are the same."""
        return self.rows, self.lines, self.marks, self.spans, self.spots
