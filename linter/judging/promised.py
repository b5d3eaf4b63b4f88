"""A promise of the paperwork, and what becomes of it."""

from dataclasses import dataclass
from typing import Literal

from ..finding import Missing

Outlook = Literal["impossible", "unlikely", "not shown", "supported"]
OUTLOOKS: tuple[Outlook, ...] = ("impossible", "unlikely", "not shown", "supported")
At = Literal["at best", "worst case", "as far as known", ""]


@dataclass(frozen=True, slots=True)
class Allowed:
    """A number that the design allows, by one check.

    says: what it counts or leaves out; at: with all tolerances at which end, where that makes
    a difference, or with what is known only.  at_worst: beside the number at its best, that in
    the worst case, where it is another.
    """

    check: str
    value: float
    unit: str
    says: str
    at: At
    at_worst: float | None = None


@dataclass(frozen=True, slots=True)
class Promised:
    """A promise with its outlook.

    claim: what is promised, as the spec states it; figure, unit: the same as a number, where
    it is one.  allowed: what the design allows instead, the most favourable number first.
    told: what the checks that decide say, where they give no number; told_by: the check whose
    sentence it is.  missing: what they ask for.
    """

    name: str
    subject: str
    claim: str
    outlook: Outlook
    figure: float | None
    unit: str
    allowed: tuple[Allowed, ...] = ()
    told: str = ""
    missing: tuple[Missing, ...] = ()
    checks: tuple[str, ...] = ()
    told_by: str = ""
