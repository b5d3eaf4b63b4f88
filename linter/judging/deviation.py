"""Deviations: permission, given beforehand, to depart from a limit (ISO 9000, 3.12.6).

A valid permission keeps a finding from holding the design; the finding stays in every
report, with who permitted it, why and until when.  A permission that does not work is a
finding of its own, minor, because what it was meant for then holds by itself.

An open item can be accepted in the same way: who, why, until when.  Up to which figure
makes no sense there: nobody knows how far the departure goes.  So a permission of a critical
finding has to name its figure: what was written for an open item does not cover the
destruction that its answer may show.

What cannot be permitted stands in ``forbidden``: people in danger, open questions of safety,
figures that cannot be.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date
from typing import cast

from ..check import MILESTONES, Milestone, Source
from ..declare import PRODUCT
from ..evaluation.catalogue import Catalogue, Entry
from ..evaluation.threshold import AMPLE, missed
from ..finding import Evidence, Finding, Severity, Status
from ..quantities.quantity import QuantityError, show, to_si
from ..reading.loading import Deviation
from .consistency import BUILT_IN as STATED_VALUES
from .days import day_of
from .nearest import near
from .unjudged import BUILT_IN as ON_SILENCE
from .unmeasured import on_readings

DOMAIN = "deviations"
OF_MISS, OF_FIGURE = 0.5, 0.2
PERMIT = Source("ISO 9000:2015, Quality management systems, vocabulary", "3.12.6 deviation permit")
BUILT_IN = {
    "deviation-expired": "A permission whose last day is over, or whose milestone is reached."
    " What it permitted holds again.",
    "deviation-exceeded": "A departure that goes further than the figure up to which it is"
    " permitted.",
    "deviation-too-far": "A figure up to which a departure is permitted that lies far beyond what"
    " is found: further than half of what the limit is missed by, and than a fifth of the figure"
    " (10 K, 2 dB). It would cover a worse design unseen, so it permits nothing.",
    "deviation-unused": "A permission without anything that it could permit: the check is met"
    " or not applicable. It would cover a later mistake unseen.",
    "deviation-incomplete": "A permission that nobody has put a name to, or whose last day or"
    " figure cannot be read, with a figure for an open item, which has none, or without one for"
    " a critical finding. It permits nothing.",
    "deviation-unknown": "A permission for a check or a place that does not exist, mostly a"
    " slip of the pen. It permits nothing.",
    "deviation-against-safety": "A permission for what nobody can permit: a critical finding or"
    " an open question of safety, by which people can be hurt, a figure that says that the"
    " design cannot be, or a statement beyond a bound of physics. It stays as it is, whatever is"
    " permitted.",
}
_TITLES = {
    "deviation-expired": "Deviation expired",
    "deviation-exceeded": "Deviation exceeded",
    "deviation-too-far": "Deviation permits far more than is found",
    "deviation-unused": "Unused deviation",
    "deviation-incomplete": "Incomplete deviation",
    "deviation-unknown": "Deviation for an unknown check or place",
    "deviation-against-safety": "Deviation not allowed",
}
NOBODY = (
    "", "-", "?", "n/a", "na", "nobody", "none", "tba", "tbc", "tbd", "todo", "unknown", "xxx",
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class Occasion:
    """What the deviations of a review are judged against."""

    catalogue: Catalogue
    channels: Sequence[str]
    milestone: Milestone
    day: date
    file: str


@dataclass(frozen=True, slots=True)
class Fault:
    """Why a permission does not work: one of ``BUILT_IN``, and what to tell."""

    check: str
    text: str


def with_deviations(
    findings: Sequence[Finding], deviations: Sequence[Deviation], occasion: Occasion
) -> tuple[Finding, ...]:
    """The findings, permitted ones marked, followed by those on the permissions themselves."""
    marked = list(findings)
    own: list[Finding] = []
    for item in deviations:
        judged = _judged(item, marked, occasion)
        if isinstance(judged, Fault):
            own.append(_finding(item, judged, occasion))
            continue
        for number in judged:
            if not marked[number].permitted:
                text = permission_in_words(item, marked[number].status is Status.OPEN)
                marked[number] = replace(marked[number], permitted=text)
    return (*marked, *own)


def permission_in_words(item: Deviation, opened: bool = False) -> str:
    """A permission as the reports give it; an open item is accepted, a finding permitted."""
    upper = f" up to {item.up_to}" if item.up_to else ""
    word = "accepted as open" if opened else "permitted"
    text = f"{word} by {item.permitted_by}{upper} until {item.until}: {item.reason}"
    return " ".join(text.split())


def is_behind(item: Deviation, finding: Finding) -> bool:
    """Whether it is this permission that a finding or an open item bears."""
    return finding.permitted == permission_in_words(item, finding.status is Status.OPEN)


def forbidden(finding: Finding, entry: Entry | None) -> str:
    """Why nobody can permit a finding or accept an open item, empty where somebody can."""
    critical, safety = finding.severity is Severity.CRITICAL, finding.stake == "safety"
    impermissible = entry is not None and not entry.check.permissible
    if safety and finding.status is Status.OPEN:
        return "an open question of safety cannot be accepted; it must be answered"
    if finding.status is Status.OPEN and not finding.permissible:
        return "other checks wait for this answer; it cannot be accepted as open"
    barred = impermissible or not finding.permissible
    if safety and (critical or barred or _is_beyond_critical(finding, entry)):
        return "a finding that endangers people cannot be permitted; it holds"
    if not finding.permissible:
        return "what physics forbids is beyond permission; the statement must be put right"
    if critical and impermissible:
        return "a figure that says that the design cannot be is beyond permission; it holds"
    return ""


def _is_beyond_critical(finding: Finding, entry: Entry | None) -> bool:
    """Whether a figure misses the critical limit, though an assumption makes it a major."""
    if entry is None or finding.evidence.figure is None:
        return False
    return missed(entry.check, finding.evidence.figure) is Severity.CRITICAL


def _judged(item: Deviation, findings: Sequence[Finding], occasion: Occasion) -> Fault | list[int]:
    """Why a permission does not work, or the numbers of the findings that it permits."""
    entry = occasion.catalogue.entry(item.check)
    for fault in (*_unknown(item, entry, occasion), *_incomplete(item, entry)):
        return fault
    answers = [
        (number, finding)
        for number, finding in enumerate(findings)
        if (finding.check, finding.subject) == (item.check, item.place)
    ]
    found = [(number, finding) for number, finding in answers if _can_depart(finding, entry)]
    if not found:
        return Fault("deviation-unused", _nothing([finding for _, finding in answers]))
    for fault in (*_expired(item, occasion), *_beyond(item, entry, [x for _, x in found])):
        return fault
    return [number for number, _ in found]


def _can_depart(finding: Finding, entry: Entry | None) -> bool:
    """Whether there is a departure: from a figure, of a stated value, or an open item."""
    if finding.status is Status.OPEN:
        return True
    return finding.severity is not None and (entry is None or finding.evidence.figure is not None)


def _unknown(item: Deviation, entry: Entry | None, occasion: Occasion) -> Iterator[Fault]:
    built_in = (*STATED_VALUES, *on_readings(occasion.catalogue.packages), *ON_SILENCE)
    if entry is None and item.check not in built_in:
        names = [known.name for known in occasion.catalogue.entries]
        text = f"there is no check named {item.check}{near(item.check, names)}"
        yield Fault("deviation-unknown", text)
        return
    places = (*occasion.channels, PRODUCT)
    if item.place not in places:
        hint = near(item.place, places) or f"; there is {' and '.join(places)}"
        yield Fault("deviation-unknown", f"there is no channel named {item.place}{hint}")
    elif entry is not None and (entry.check.each == "product") != (item.place == PRODUCT):
        where = PRODUCT if entry.check.each == "product" else "the name of a channel"
        yield Fault("deviation-unknown", f"{item.check} is judged elsewhere: place is {where}")


def _incomplete(item: Deviation, entry: Entry | None) -> Iterator[Fault]:
    for name, wanted in (("permitted_by", "who permitted it"), ("reason", "why it does no harm")):
        stated = getattr(item, name).strip()
        if stated.lower() in NOBODY:
            text = f"{name} is {stated or 'empty'}; it must say {wanted}"
            yield Fault("deviation-incomplete", text)
    if item.until not in MILESTONES and day_of(item.until) is None:
        text = f"until {item.until} is neither a day such as 2030-06-30 nor a milestone"
        yield Fault("deviation-incomplete", text)
    if not item.up_to:
        return
    if entry is None:
        yield Fault(
            "deviation-incomplete", f"{item.check} has no figure, so up_to cannot be judged"
        )
        return
    try:
        to_si(item.up_to, entry.check.unit)
    except QuantityError as error:
        yield Fault("deviation-incomplete", f"up_to: {error}")


def _expired(item: Deviation, occasion: Occasion) -> Iterator[Fault]:
    day = day_of(item.until)
    if day is not None and day < occasion.day:
        yield Fault(
            "deviation-expired", f"the permission of {item.permitted_by} ended on {item.until}"
        )
    elif day is None:
        end = MILESTONES.index(cast(Milestone, item.until))
        if MILESTONES.index(occasion.milestone) >= end:
            text = f"the permission of {item.permitted_by} ended with the {item.until} milestone"
            yield Fault("deviation-expired", text)


def _beyond(item: Deviation, entry: Entry | None, findings: Sequence[Finding]) -> Iterator[Fault]:
    for finding in findings:
        found = finding.evidence
        against = forbidden(finding, entry)
        if against:
            yield Fault("deviation-against-safety", against)
        if finding.severity is Severity.CRITICAL and entry is not None and not item.up_to:
            text = "up_to is missing; it must say up to which figure a critical finding may go"
            yield Fault("deviation-incomplete", text)
        elif item.up_to and finding.status is Status.OPEN:
            text = "up_to: the item is open, so it has no figure to compare"
            yield Fault("deviation-incomplete", text)
        elif item.up_to and entry is not None and found.figure is not None:
            yield from _up_to(item, found, found.figure)


def _up_to(item: Deviation, found: Evidence, figure: float) -> Iterator[Fault]:
    """A departure further than permitted, or a permission much wider than the departure."""
    sign = -1.0 if found.at_least else 1.0
    left = sign * (to_si(item.up_to, found.unit) - figure)
    room = max(OF_MISS * abs(found.distance or 0.0), OF_FIGURE * AMPLE.get(found.unit, abs(figure)))
    if left < 0.0:
        text = f"{show(figure, found.unit)} at the worst corner, permitted up to {item.up_to}"
        yield Fault("deviation-exceeded", text)
    elif left > room:
        most = show(figure + sign * room, found.unit)
        reached = show(figure, found.unit)
        text = f"up_to {item.up_to} is far beyond the {reached} found; {most} is the most"
        yield Fault("deviation-too-far", text)


def _nothing(answers: Sequence[Finding]) -> str:
    """Why there is nothing to permit."""
    statuses: Mapping[Status, str] = {
        Status.MEETS: "the check is met without it",
        Status.NOT_APPLICABLE: "the check does not concern this design",
        Status.FINDING: "the check itself failed and judged nothing",
    }
    return statuses[answers[0].status] if answers else "there is no such finding"


def _finding(item: Deviation, fault: Fault, occasion: Occasion) -> Finding:
    place = item.place if item.place in (*occasion.channels, PRODUCT) else PRODUCT
    about = f"{item.check} ({item.place}): {fault.text}"
    if item.at.file != occasion.file:
        about += f"; in {item.at.file}"
    return Finding(
        check=fault.check,
        domain=DOMAIN,
        title=_TITLES[fault.check],
        subject=place,
        status=Status.FINDING,
        message=about,
        severity=Severity.MINOR,
        place=item.at,
        evidence=Evidence(basis=PERMIT, sources=(PERMIT,)),
    )
