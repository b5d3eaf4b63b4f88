"""What every kind of report says the same way: demands, house rules, what it rests on."""

from collections.abc import Sequence

from ..catalogue import load
from ..finding import Finding, Status
from ..house import Change
from ..identity import PROGRAM, program_version, rules_hash, text_hash
from ..review import Review
from .marks import against, asked, local

DISCLAIMER = (
    "Engineering aid, not a certificate. For mains, batteries, hearing and fire, local codes"
    " and licensed practice come first. An open item is not a pass."
)
MOST_ASKED = 6


def label(finding: Finding) -> str:
    """A finding by name: ``rail-ripple (product)``."""
    return f"{finding.check} ({finding.subject})"


def demand(finding: Finding) -> str:
    """What must change so that a finding no longer holds the design."""
    if finding.status is Status.OPEN:
        return lacking(finding) or finding.message
    text = against(finding) or finding.message
    if finding.remedies:
        changes = finding.remedies[0].changes
        text += "; " + " and ".join(f"{local(path)} to {value}" for path, value in changes)
    return text


def lacking(finding: Finding) -> str:
    """What to state so that an open check can be judged."""
    if not finding.missing:
        return ""
    names = ", ".join(asked(item) for item in finding.missing[:MOST_ASKED])
    more = len(finding.missing) - MOST_ASKED
    return f"state {names}" + (f" and {more} more" if more > 0 else "")


def reason(review: Review) -> str:
    """Why the verdict is what it is."""
    verdict = review.verdict
    if verdict.released:
        return f"Nothing holds it: {verdict.why}."
    opened = sum(1 for item in verdict.holding if item.status is Status.OPEN)
    found = len(verdict.holding) - opened
    parts = [_number(found, "finding", f" from {verdict.hold_at} up")] if found else []
    if opened:
        parts.append(_number(opened, "open item", ""))
    return f"Held by {' and '.join(parts)}: {verdict.why}."


def house_change(change: Change) -> str:
    """A change of the house file in one line."""
    return f"{change.effect}: {change.about}: {change.text}; {change.reason}"


def weakened(review: Review) -> Sequence[Change]:
    """What the house file weakens in matters of safety."""
    return review.criteria.house.weakened if review.criteria.house else ()


def rests_on(review: Review) -> list[tuple[str, str, str]]:
    """The texts and rules behind a report: what, by which name, and its SHA-256."""
    packages = review.catalogue.packages or load().packages
    rows = [
        ("spec", review.spec.file, text_hash(review.spec.text)),
        ("program", f"{PROGRAM} {program_version()}", ""),
        *(("catalogue", package, rules_hash(package)) for package in packages),
    ]
    house, permissions = review.criteria.house, review.criteria.permissions
    if house:
        rows.append(("house file", house.file, text_hash(house.text)))
    if permissions:
        rows.append(("deviations", permissions.file, text_hash(permissions.text)))
    return rows


def _number(count: int, noun: str, rest: str) -> str:
    return f"{count} {noun}{'' if count == 1 else 's'}{rest}"
