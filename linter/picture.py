"""What a file of pictures fills in: the question, its axes, and the numbers that it shows.

Frozen dataclasses without behaviour, as in ``check``.  A picture answers one question, which
is its title.  A number whose inputs are missing is left out; a picture without its numbers
does not appear.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Any, Literal

from .check import Arguments, Scope, Words

Kind = Literal["value", "second", "limit", "trip", "claim", "measured"]
"""What a number is: of the design, of the design in a second condition, a rating that it must
not pass, where something switches off, what is promised, or what was read off a board."""


@dataclass(frozen=True, slots=True)
class Amount:
    """A number, or with an ``x`` a curve: a pure function of its inputs in SI.

    figure: None where the one input is the number itself.  The figure of a curve takes ``x``
        beside its inputs.
    when: word-valued paths and the words for which it is right.
    note: what a reader has to know about how it was found.
    """

    inputs: Arguments
    figure: Callable[..., Any] | None = None
    when: Mapping[str, Words] = field(default_factory=dict)
    note: str = ""


@dataclass(frozen=True, slots=True)
class Shown:
    """A number as the picture names it.  ways: the first that can be computed is taken.

    A reading of the field or the derived quantity itself is shown beside it.
    measures: the figure of which a reading is needed; the way takes it as ``read``.
    """

    label: str
    ways: tuple[Amount, ...]
    kind: Kind = "value"
    measures: str = ""


@dataclass(frozen=True, slots=True)
class Row:
    """A line of a scale: a part, what it sees and what it is rated for.

    checks: the names of those that judge it.  aside: no link of a chain.
    """

    label: str
    shown: tuple[Shown, ...]
    checks: tuple[str, ...] = ()
    aside: bool = False


@dataclass(frozen=True, slots=True)
class Scale:
    """Several parts on one scale.

    note: what it rests on, in a sentence.  bars: drawn from zero.  chain: the values of the
        rows follow from each other and are joined.  least: rows that it takes; but for
        bars and chains a row counts only with a rating.
    value, second: the conditions of the two kinds of values.
    """

    title: str
    each: Scope
    axis: str
    unit: str
    rows: tuple[Row, ...]
    note: str = ""
    bars: bool = False
    chain: bool = False
    logarithmic: bool = False
    least: int = 1
    value: str = ""
    second: str = ""


@dataclass(frozen=True, slots=True)
class Axis:
    """One axis of curves.  low, high: its ends; None: what the curves take."""

    label: str
    unit: str
    low: Amount | None = None
    high: Amount | None = None
    logarithmic: bool = False


@dataclass(frozen=True, slots=True)
class Curve:
    """A line; with ``band`` the worst case either way is shaded around it."""

    label: str
    ways: tuple[Amount, ...]
    band: bool = True


@dataclass(frozen=True, slots=True)
class Mark:
    """A value on an axis that counts: a border of the band, a rating, a trip.

    measures: as in ``Shown``.
    """

    label: str
    axis: Literal["x", "y"]
    ways: tuple[Amount, ...]
    kind: Kind = "limit"
    measures: str = ""


@dataclass(frozen=True, slots=True)
class Spot:
    """A point among curves: what is promised, or what was read.  measures: as in ``Shown``."""

    label: str
    x: Amount
    y: Amount
    kind: Kind = "measured"
    measures: str = ""


@dataclass(frozen=True, slots=True)
class Span:
    """A stretch of the x axis that is shaded; ``turned``: what it is where high is below low."""

    label: str
    low: Amount
    high: Amount
    turned: str = ""


@dataclass(frozen=True, slots=True)
class Curves:
    """Lines over one axis.

    lanes: each line has a lane of its own, between 0 and 1.  checks: as in ``Row``.
    worst: the picture is drawn at the corner where this number is least.
    """

    title: str
    each: Scope
    x: Axis
    y: Axis
    curves: tuple[Curve, ...]
    marks: tuple[Mark, ...] = ()
    spans: tuple[Span, ...] = ()
    spots: tuple[Spot, ...] = ()
    note: str = ""
    lanes: bool = False
    worst: Amount | None = None
    checks: tuple[str, ...] = ()


Picture = Scale | Curves
