"""What every kind of report says the same way: demands, house rules, what it rests on."""

from collections.abc import Sequence
from dataclasses import dataclass
from operator import attrgetter

from ..declare import without_channel
from ..evaluation.catalogue import load
from ..finding import Finding, Status
from ..judging.house import House, HouseChange
from ..judging.review import Review
from ..judging.unjudged import UNJUDGED
from .groups import groups, together
from .identity import PROGRAM, program_version, rules_hash, text_hash
from .phrases import against, missing_in_words, moves, place_in_words

FEW = 5
WEAKENED = "Safety check weakened by the house file:"
DISCLAIMER = (
    "Engineering aid, not a certificate. For mains, batteries, hearing and fire, local codes"
    " and licensed practice come first. An open item is not a pass."
)


@dataclass(frozen=True, slots=True)
class Demand:
    """Something that must change to be released, for one subject or several alike.

    gravity: the severity, or ``open``; title: that of the check, with the subjects.
    """

    gravity: str
    title: str
    text: str


def demands(review: Review) -> list[Demand]:
    """Everything that holds the design, the gravest first; alike ones stand together."""
    ordered = sorted(review.verdict.holding, key=attrgetter("rank"))
    return [
        Demand(
            str(item.severity or item.status),
            f"{item.title} ({together(subjects)})",
            without_channel(demand(item), item.subject),
        )
        for item, subjects in groups(ordered)
    ]


def demand(finding: Finding) -> str:
    """What must change so that a finding no longer holds the design, in a sentence."""
    if finding.status is Status.OPEN:
        return lacking(finding) or finding.message
    text = finding.message or against(finding.evidence)
    if finding.advice.remedies:
        changes = moves(finding.advice.remedies[0].changes)
        text += "; change " + " and ".join(f"{path} to {value}" for path, value in changes)
    return text


def lacking(finding: Finding) -> str:
    """What to state so that an open check can be judged."""
    return f"state {missing_in_words(finding.advice.missing)}" if finding.advice.missing else ""


def reason(review: Review, brief: bool = False) -> str:
    """Why the verdict is what it is; in brief without what the milestone asks for."""
    verdict = review.verdict
    judged = len({item.check for item in review.findings if item.evidence.figure is not None})
    if verdict.released:
        few = f" Only {_number(judged, 'check', '')} could be judged, so this says little yet."
        return f"No blocking findings: {verdict.why}.{few if judged < FEW else ''}"
    silence = [x.message for x in verdict.holding if x.check == UNJUDGED]
    if silence and (judged < FEW or len(silence) == len(verdict.holding)):
        return f"{'Nothing to judge yet. ' if judged < FEW else ''}{silence[0]}."
    opened = sum(1 for item in verdict.holding if item.status is Status.OPEN)
    always = sum(1 for x in verdict.holding if x.severity and x.rank > verdict.hold_at.rank)
    found = len(verdict.holding) - opened - always
    parts = [_number(found, "finding", f" from {verdict.hold_at} up")] if found else []
    if always:
        parts.append(_number(always, "finding", " at every milestone"))
    if opened:
        parts.append(_number(opened, "open item", ""))
    held = f"Held by {' and '.join(parts)}"
    return f"{held}." if brief else f"{held}: {verdict.why}."


def counted(review: Review) -> str:
    """How many answers there are of each kind, those that are none left out."""
    found = {name: number for name, number in review.counts().items() if number}
    words = {"meets": "met"}
    return ", ".join(f"{number} {words.get(name, name)}" for name, number in found.items())


def house_change(change: HouseChange) -> str:
    """A change of the house file in one line."""
    return f"{change.effect}: {change.about}: {change.text}; {change.reason}"


def house_told(house: House | None) -> list[str]:
    """What a house file changes, in one line, besides what it weakens in matters of safety."""
    changes = [item for item in house.changes if not item.safety] if house else []
    if house is None or not changes:
        return []
    looked = [item for item in changes if item.effect == "looked up"]
    others = [item for item in changes if item not in looked]
    told = [house_change(others[0])] if others else []
    told += [f"{len(others) - 1} more: --full"] if len(others) > 1 else []
    told += [_number(len(looked), "limit", " looked up")] if looked else []
    return [f"House rules: {house.told}, {'; and '.join(told)}"]


def weakened(review: Review) -> Sequence[HouseChange]:
    """What the house file weakens in matters of safety."""
    return review.criteria.house.weakened if review.criteria.house else ()


def weakened_lines(review: Review) -> list[str]:
    """The same, a line each, with its place."""
    return [f"{house_change(item)} ({place_in_words(item.place)})" for item in weakened(review)]


def rests_on(review: Review) -> list[tuple[str, str, str]]:
    """The texts and rules behind a report: what, by which name, and its SHA-256."""
    packages = review.catalogue.packages or load().packages
    rows = [
        ("spec", review.spec.file, text_hash(review.spec.text)),
        ("program", f"{PROGRAM} {program_version()}", ""),
        *(("catalogue", package, rules_hash(package)) for package in packages),
    ]
    house, permissions = review.criteria.house, review.criteria.permissions
    if review.spec.parts:
        rows.append(("parts file", review.spec.parts.file, text_hash(review.spec.parts.text)))
    if house:
        rows.append(("house file", house.file, text_hash(house.text)))
    if permissions:
        rows.append(("deviations", permissions.file, text_hash(permissions.text)))
    if review.criteria.measured:
        measured = review.criteria.measured
        rows.append(("measurements", measured.file, text_hash(measured.text)))
    return rows


def _number(count: int, noun: str, rest: str) -> str:
    return f"{count} {noun}{'' if count == 1 else 's'}{rest}"
