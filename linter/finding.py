"""The answers of a review: frozen data, no behaviour.  All numbers are SI floats."""

from dataclasses import dataclass
from enum import StrEnum

from .check import Caution, Leaning, Limits, Source


class Severity(StrEnum):
    """How bad a finding is, in the words of the inspection standards."""

    CRITICAL = "critical"
    MAJOR = "major"
    MINOR = "minor"

    @property
    def rank(self) -> int:
        """0 for critical, rising with mildness."""
        return tuple(Severity).index(self)


CLEAR = len(Severity)


class Status(StrEnum):
    """The kind of answer that a check gave for one subject."""

    FINDING = "finding"
    MEETS = "meets"
    OPEN = "open"
    NOT_APPLICABLE = "not applicable"


@dataclass(frozen=True, slots=True)
class Place:
    """Where a value stands: file, line and column counted from 1, and its path."""

    file: str
    line: int
    column: int
    path: str = ""


@dataclass(frozen=True, slots=True)
class Reading:
    """A value as a check used it: an input, or a leaf at the worst corner."""

    name: str
    path: str
    value: object
    unit: str
    meaning: str
    place: Place | None = None


@dataclass(frozen=True, slots=True)
class Sway:
    """How much of the figure's span from corner to corner one leaf makes up (0 .. 1)."""

    path: str
    share: float


@dataclass(frozen=True, slots=True)
class Leaned:
    """An assumption that an answer leans on."""

    path: str
    text: str
    leaning: Leaning
    basis: Source
    placeholder: bool = False


@dataclass(frozen=True, slots=True)
class Missing:
    """A leaf that the spec does not state, and what to write there.

    border: what it must be for the check to be met, where it alone decides.
    """

    path: str
    unit: str
    meaning: str
    example: str
    border: str = ""


@dataclass(frozen=True, slots=True)
class Remedy:
    """A change of one or more leaves that cures a finding.

    changes: pairs of path and new value as a reader would write it; values: the same as
    plain data of a spec.  The other fields tell what the re-run of the catalogue showed,
    as ``check (subject)`` labels; opened: what had an answer and lacks one with the change.
    """

    changes: tuple[tuple[str, str], ...]
    values: tuple[tuple[str, object], ...] = ()
    was: tuple[str, ...] = ()
    cured: tuple[str, ...] = ()
    eased: tuple[str, ...] = ()
    worsened: tuple[str, ...] = ()
    appeared: tuple[str, ...] = ()
    opened: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Finding:
    """The answer of one check for one subject (a channel's name, or ``product``).

    figure: at the worst corner; nominal: at the nominal values; limit: the threshold
    that was missed, or the nearest one that is met; distance: from the figure to that
    limit, negative when missed; margin: the same as a share of the limit, None where such a
    share means nothing (a limit of zero, temperatures, decibels).  needs: what is missing
    when open.  permitted: by whom, until when and why, where a deviation keeps the finding
    or the open item from holding.
    holds_always: whether it holds at every milestone, whatever its severity.
    """

    check: str
    domain: str
    title: str
    subject: str
    status: Status
    message: str
    severity: Severity | None = None
    unit: str = "1"
    figure: float | None = None
    nominal: float | None = None
    limit: float | None = None
    at_least: bool = True
    distance: float | None = None
    margin: float | None = None
    basis: Source | None = None
    limits: Limits | None = None
    place: Place | None = None
    related: tuple[Place, ...] = ()
    readings: tuple[Reading, ...] = ()
    corner: tuple[Reading, ...] = ()
    sways: tuple[Sway, ...] = ()
    leaned: tuple[Leaned, ...] = ()
    missing: tuple[Missing, ...] = ()
    remedies: tuple[Remedy, ...] = ()
    remedy_note: str = ""
    sources: tuple[Source, ...] = ()
    cautions: tuple[Caution, ...] = ()
    stake: str = "performance"
    follows: object = None
    leaves: frozenset[str] = frozenset()
    permitted: str = ""
    holds_always: bool = False

    @property
    def can_be_critical(self) -> bool:
        """Whether the check has a limit beyond which there is a hazard or destruction."""
        return self.limits is not None and self.limits.critical is not None

    @property
    def rank(self) -> int:
        """That of the severity; ``CLEAR``, beyond them all, where nothing is found."""
        return CLEAR if self.severity is None else self.severity.rank
