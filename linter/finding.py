"""The answers of a review: frozen data, no behaviour.  All numbers are SI floats."""

from dataclasses import dataclass
from enum import StrEnum
from typing import Literal

from .check import Caution, Leaning, Limits, Source, Stake


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
class CornerValue:
    """What a leaf is at the worst corner."""

    name: str
    path: str
    value: float
    unit: str


@dataclass(frozen=True, slots=True)
class Assumed:
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


RemedyKind = Literal["slip", "value", "part", "design", "promise"]
"""A slip put right, a stock value or a setting, another part, another design, less promised."""


@dataclass(frozen=True, slots=True)
class Remedy:
    """A change of one or more leaves that cures a finding.

    changes: pairs of path and new value as a reader would write it; values: the same as
    plain data of a spec.  The other fields tell what the re-run of the catalogue showed,
    as ``check (subject)`` labels; opened: what met its limit and is without an answer now.
    kind: what an engineer would call it; in this order they are tried and told.
    title: the name of a change of the design.
    lacks: what has to be known before the finding is settled: the change takes away what
    could be seen to fail, and leaves it open.  lowers: the promises that it lowers.  left: how
    grave the finding still is, where the change only makes it milder.  aside: what is cured or
    eased by the values that go along, and not by the change itself.
    """

    changes: tuple[tuple[str, str], ...]
    values: tuple[tuple[str, object], ...] = ()
    was: tuple[str, ...] = ()
    cured: tuple[str, ...] = ()
    eased: tuple[str, ...] = ()
    worsened: tuple[str, ...] = ()
    appeared: tuple[str, ...] = ()
    opened: tuple[str, ...] = ()
    kind: RemedyKind = "value"
    title: str = ""
    lacks: tuple[Missing, ...] = ()
    lowers: tuple[str, ...] = ()
    left: Severity | None = None
    aside: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Evidence:
    """The figure of an answer, the limit it is held against, and what both come from.

    figure: at the worst corner; nominal: at the nominal values; best: with everything in the
    design's favour, where even that misses a bound of physics; limit: the threshold
    that was missed, or the nearest one that is met, and its basis; distance: from the figure
    to that limit, negative when missed; margin: the same as a share of the limit, None where
    such a share means nothing (a limit of zero, temperatures, decibels).
    limits, sources: all thresholds of the check, and where its formula comes from.
    corner: the leaves that make the worst corner, those that move the figure most first;
    leaves: the paths of all that it depends on.
    """

    unit: str = "1"
    at_least: bool = True
    limits: Limits | None = None
    sources: tuple[Source, ...] = ()
    figure: float | None = None
    nominal: float | None = None
    best: float | None = None
    limit: float | None = None
    basis: Source | None = None
    distance: float | None = None
    margin: float | None = None
    corner: tuple[CornerValue, ...] = ()
    assumed: tuple[Assumed, ...] = ()
    leaves: frozenset[str] = frozenset()


@dataclass(frozen=True, slots=True)
class Advice:
    """What to do about an answer.

    missing: what to state when it is open; remedy_note: why there are no remedies, or what
    they are worth; follows: what a doubtful value of the spec should be instead.
    """

    missing: tuple[Missing, ...] = ()
    remedies: tuple[Remedy, ...] = ()
    remedy_note: str = ""
    cautions: tuple[Caution, ...] = ()
    follows: object = None


@dataclass(frozen=True, slots=True)
class Finding:
    """The answer of one check for one subject (a channel's name, or ``product``).

    place: where the spec states what it is about; related: further such places.
    permitted: by whom, until when and why, where a deviation keeps the finding or the open
    item from holding.  permissible: whether one may, whatever the severity.  holds_always:
    whether it holds at every milestone, whatever its severity.
    """

    check: str
    domain: str
    title: str
    subject: str
    status: Status
    message: str
    severity: Severity | None = None
    stake: Stake = "performance"
    place: Place | None = None
    related: tuple[Place, ...] = ()
    evidence: Evidence = Evidence()
    advice: Advice = Advice()
    permitted: str = ""
    permissible: bool = True
    holds_always: bool = False

    @property
    def can_be_critical(self) -> bool:
        """Whether the check has a limit beyond which there is a hazard or destruction."""
        return self.evidence.limits is not None and self.evidence.limits.critical is not None

    @property
    def rank(self) -> int:
        """That of the severity; ``CLEAR``, beyond them all, where nothing is found."""
        return CLEAR if self.severity is None else self.severity.rank


CauseKind = Literal["suspect", "change", "part"]


@dataclass(frozen=True, slots=True)
class Cause:
    """Failing answers that one doubtful value, one change or one part explains.

    findings: what it explains, the gravest first; the headline is about that one, or about
    the doubtful value.  remedies: what to do, together, the one that clears most first;
    alternatives: other changes that end the gravest finding.  note: why there is no remedy,
    or what was tried.  parts: the parts that it is about, in words.
    """

    kind: CauseKind
    headline: str
    findings: tuple[Finding, ...]
    remedies: tuple[Remedy, ...] = ()
    note: str = ""
    alternatives: tuple[Remedy, ...] = ()
    parts: tuple[str, ...] = ()

    @property
    def severity(self) -> Severity:
        """The gravest severity among the findings."""
        return min((x.severity for x in self.findings if x.severity), key=lambda s: s.rank)
