"""What a step of the bring-up sheet fills in: what to do, what to read, where to stop.

Frozen dataclasses, as in ``check``.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from typing import Any, Literal

from .check import Arguments, Caution, Scope, Words

Kind = Literal["band", "at most", "at least"]
Side = Literal["nominal", "lowest", "highest", "bottom", "top"]


@dataclass(frozen=True, slots=True)
class Amount:
    """A number that follows from the spec: a setting, a value to expect, a limit.

    figure: pure function of SI floats and words, as in ``Check``.
    side: which end of its tolerances is told; empty: all of the band, and of a limit the
        end that stops first.  ``bottom`` and ``top``: which end of the ranges of use alone,
        the tolerances nominal, as a bench is set.
    digits: significant digits to which a setting is rounded, the way of its side.
    as_designed: told of the design as it is, whatever the bench sets meanwhile.
    """

    unit: str
    figure: Callable[..., Any]
    inputs: Arguments
    side: Side | None = None
    digits: int = 3
    as_designed: bool = False

    def at(self, side: Side) -> "Amount":
        """The same number at one end of its tolerances."""
        return replace(self, side=side)


@dataclass(frozen=True, slots=True)
class Bench:
    """What the bench puts in place of a value of the spec while a step is made.

    path: a field of the product.  value: text with a unit, or what is set, told nominal.
    when: word-valued paths and the words for which the bench does so.
    """

    path: str
    value: str | Amount
    when: Mapping[str, Words] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Line:
    """One thing to do, with ``{name}`` for its amounts.

    each: ``channel`` where an amount belongs to a channel; the line is then told for each.
    """

    text: str
    amounts: Mapping[str, Amount] = field(default_factory=dict)
    applies: Mapping[str, Words] = field(default_factory=dict)
    each: Scope = "product"


@dataclass(frozen=True, slots=True)
class Reading:
    """One value to read, what it should be, and where to stop.

    name: the figure's name, by which a measured value can be told.
    kind: ``band``, or which end of it counts: ``at most``, ``at least``.
    spread: widens the band either way by what is no tolerance of the figure itself.
    stop: whether to stop above or below the limit; it also says which way is worse.
    harms: whether something or somebody may come to harm beyond the limit; else it is
        what is wanted, and the step can be made all the same.
    check: the check whose figure is read, in place of an amount and a limit; its gravest
        limit counts.
    bench: as in ``Step``, for this reading beside those of its step.
    """

    name: str
    title: str
    amount: Amount | None = None
    each: Scope = "product"
    kind: Kind = "band"
    spread: Amount | None = None
    stop: Literal["above", "below"] = "above"
    limit: Amount | None = None
    harms: bool = True
    check: str = ""
    applies: Mapping[str, Words] = field(default_factory=dict)
    bench: tuple[Bench, ...] = ()


@dataclass(frozen=True, slots=True)
class Hazard:
    """A caution of a step: its own, or those of a check that knows the hazard.

    when: word-valued paths and the words for which there is the hazard.
    """

    caution: Caution | str
    when: Mapping[str, Words] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Step:
    """One step of a bring-up; the file that holds it gives its name.

    order: steps are made in rising order.
    instrument: what to measure with, and how it is set.
    bench: under which conditions all numbers of the step hold.
    """

    title: str
    order: int
    instrument: str
    lines: tuple[Line, ...]
    hazards: tuple[Hazard, ...]
    readings: tuple[Reading, ...] = ()
    applies: Mapping[str, Words] = field(default_factory=dict)
    bench: tuple[Bench, ...] = ()
