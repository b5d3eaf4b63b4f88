"""What can be measured on a board, as data: the figure, and on what it depends there."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field

from .check import Arguments, AtLeast, AtMost, Stake, Way, Words


def itself(x: float) -> float:
    """The figure is an amount as it stands."""
    return x


@dataclass(frozen=True, slots=True)
class Shown:
    """What a reading answers by itself: no error of a model stands between.

    check: the name of the check that asks the same of the model; without one, title and unit.
    instead: that check is not asked with the reading, for it allows for errors of the model.
    figure: of ``read`` and the inputs; sentence, limits: as those of a check; when: the words
    for which it counts.  What only the uncertainty of the reading takes beyond is minor.
    """

    figure: Callable[..., float]
    inputs: Arguments
    sentence: str
    limits: AtLeast | AtMost
    when: Mapping[str, Words] = field(default_factory=dict)
    check: str = ""
    instead: bool = False
    title: str = ""
    unit: str = ""


@dataclass(frozen=True, slots=True)
class Measurable:
    """A figure that can be measured, and the conditions under which it is the same figure.

    figure: a derived quantity, a field of the spec or a check, by its name.
    conditions: name of a condition as a measurement states it, with the fields or derived
        quantities that hold it in the model; the first one that the spec gives counts.
        Without conditions the figure is the same wherever it is measured.
    none_unless_told: name of a condition that a bench lacks, such as the sun, with the field and
        the quantity of the model; a reading that does not tell it was taken without, is compared
        so, and stands in only where the model has none either.
    stands_in: what is measured may stand in where the spec is silent or estimates.
    high_is_enough: conditions of which the high end tells all: hotter air, hotter parts.
    doubted_below: share of the least that the model computes below which a reading is doubted:
        such a board would be better than its own parts allow.
    amount: what of the figure must not be so little.  rises_over: the condition over which
        it rises; then the rise counts, and is what holds at the worst end of that condition.
    most: how much no board can give, of the inputs; a reading beyond is doubted.
    follows: derived quantities that follow from a reading, which they know as ``read``, and from
        what the model gives of the inputs.
    shows: what a reading answers by itself.
    error: how far a board may lie from the model, as a share of it (of its rise), and still be
        what was judged.  meter: how good a reading is that does not say so, as a share.
    decides: the question of ``QUESTIONS`` that a reading of it answers, if it does.
    last_resort: it answers only where the model has no other figure of that question.
    """

    figure: str
    conditions: Mapping[str, tuple[str, ...]]
    stands_in: bool = False
    high_is_enough: tuple[str, ...] = ()
    doubted_below: float = 0.0
    amount: Callable[[float], float] = itself
    rises_over: str = ""
    most: Way | None = None
    follows: Mapping[str, Way] = field(default_factory=dict)
    shows: Shown | None = None
    error: float = 0.0
    meter: float = 0.02
    decides: str = ""
    last_resort: bool = False
    none_unless_told: Mapping[str, tuple[str, str]] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Question:
    """What only a board can tell, and a release at production waits for.

    about: the quantity in words.  step: the step of the bring-up sheet that reads it, by its
    title.  stake: what hangs on it; nobody can accept that one of safety stays open.
    """

    about: str
    step: str
    stake: Stake = "rating"
