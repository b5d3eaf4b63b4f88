"""The review as JSON, for other programs.

Numbers are in SI; beside each stands the text that a reader would be shown.  The same
input gives the same bytes.  No text of a spec can leave its string: whatever is not
plain ASCII is escaped, and so is what HTML would obey.
"""

import json
from collections.abc import Iterable, Iterator, Mapping
from operator import attrgetter
from typing import Any

from ..changes.causes import causes_of
from ..changes.effect import in_text
from ..check import Source
from ..evaluation.wording import in_words
from ..finding import Assumed, CornerValue, Evidence, Finding, Place, Remedy, Status
from ..judging.promised import Promised
from ..judging.review import Outcome, Review
from ..reading.refusal import Refusal
from .cause_words import CauseWords, cause_words, in_order
from .measured_json import measured_json
from .phrases import away
from .standing import mark
from .verdict import DISCLAIMER, demand, reason, rests_on

FORMAT = 1
INSIDE = "\n" + 4 * " "
"""A new line inside the list of files."""


def json_pieces(outcomes: Iterable[tuple[str, Outcome]], dated: bool = False) -> Iterator[str]:
    """One document for all files, in the order given, piece by piece.

    No more than one review need be kept.
    """
    around = {"ampreview_report": FORMAT, "note": DISCLAIMER, "files": [None]}
    head, tail = dumped(around).rsplit("null", 1)
    yield head
    between = ""
    for name, outcome in outcomes:
        yield between + dumped(_file(name, outcome, dated)).rstrip().replace("\n", INSIDE)
        between = f",{INSIDE}"
    yield tail


def json_lines(outcomes: Iterable[tuple[str, Outcome]], dated: bool = False) -> Iterator[str]:
    """JSON Lines: what the document says of a file, a line each."""
    around = {"ampreview_report": FORMAT, "note": DISCLAIMER}
    for name, outcome in outcomes:
        yield dumped(around | _file(name, outcome, dated), indent=None)


def dumped(data: Any, indent: int | None = 2) -> str:
    """JSON in ASCII with < > & as escapes, and a line end; indented, or on one line."""
    text = json.dumps(data, indent=indent, ensure_ascii=True, allow_nan=False)
    for sign in "<>&":
        text = text.replace(sign, f"\\u{ord(sign):04x}")
    return text + "\n"


def number(x: float | None) -> float | None:
    """A number that JSON can hold: infinity and what is undefined become null."""
    return x if x is not None and abs(x) < float("inf") else None


def _file(name: str, outcome: Outcome, dated: bool) -> dict[str, Any]:
    if not isinstance(outcome, Review):
        refusals = [_refusal(item) for item in outcome]
        return {"file": name, "assessed": False, "refusals": refusals}
    data = {"file": name, "assessed": True} | _review(outcome)
    if dated and outcome.criteria.day:
        data["date"] = outcome.criteria.day.isoformat()
    return data


def _review(review: Review) -> dict[str, Any]:
    verdict, spec = review.verdict, review.spec
    holding = {(item.check, item.subject, item.message) for item in verdict.holding}
    causes = cause_words(review, causes_of(review))
    return {
        "title": spec.title,
        "revision": spec.revision,
        "milestone": verdict.milestone,
        "verdict": "released" if verdict.released else "held",
        "hold_at": str(verdict.hold_at),
        "why": reason(review),
        "promises": [_promise(item) for item in review.promises],
        "promises_judged_with": {
            path: in_text(right) for path, right in review.slips.items() if review.promises
        },
        "measured": measured_json(review),
        "causes": [_cause(item) for item in causes],
        "to_be_released": [
            demanded(item) for item in sorted(verdict.holding, key=attrgetter("rank"))
        ],
        "counts": dict(review.counts()),
        "rests_on": [
            {"what": what, "name": name} | ({"sha256": digest} if digest else {})
            for what, name, digest in rests_on(review)
        ],
        "house_rules": _house(review),
        "deviations": _deviations(review),
        "answers": [
            {"rank": rank, "cause": cause}
            | _answer(item, (item.check, item.subject, item.message) in holding)
            | {"known": mark(review, item)}
            for rank, (item, cause) in enumerate(in_order(review, causes), start=1)
        ],
    }


def _promise(item: Promised) -> dict[str, Any]:
    """A promise with its outlook and the numbers that the spec allows."""
    return {
        "promise": item.name,
        "subject": item.subject,
        "claim": item.claim,
        "outlook": item.outlook,
        "figure": _figure(item.figure, item.unit),
        "allowed": [
            {"check": x.check, "says": x.says, "at": x.at, "at_worst": _figure(x.at_worst, x.unit)}
            | dict(_figure(x.value, x.unit) or {})
            for x in item.allowed
        ],
        "told": item.told,
        "missing": [x.path for x in item.missing],
        "checks": list(item.checks),
    }


def _cause(item: CauseWords) -> dict[str, Any]:
    """A cause, with the findings that it explains by name."""
    return {
        "number": item.number,
        "severity": str(item.severity),
        "headline": item.headline,
        "holds": item.holds,
        "findings": [{"check": x.check, "subject": x.subject} for x in item.findings],
        "changes": [{"how": label, "text": text} for label, text in item.changes],
        "note": item.note,
    }


def demanded(item: Finding) -> dict[str, Any]:
    """One thing that must be otherwise to be released."""
    return {"check": item.check, "subject": item.subject, "demand": demand(item)}


def _house(review: Review) -> list[dict[str, Any]]:
    if review.criteria.house is None:
        return []
    return [
        {
            "effect": change.effect,
            "about": change.about,
            "text": change.text,
            "reason": change.reason,
            "weakens_safety": change.safety,
            "place": _place(change.place),
        }
        for change in review.criteria.house.changes
    ]


def _deviations(review: Review) -> list[dict[str, Any]]:
    names = ("check", "place", "permitted_by", "reason", "until", "up_to")
    return [
        {name: getattr(item, name) for name in names} | {"stands_at": _place(item.at)}
        for item in review.deviations
    ]


def _answer(item: Finding, holds: bool) -> dict[str, Any]:
    """One answer; what is not applicable has no figures, what is met needs no advice."""
    data = {
        "check": item.check,
        "domain": item.domain,
        "title": item.title,
        "subject": item.subject,
        "status": str(item.status),
        "severity": str(item.severity) if item.severity else None,
        "holds": holds,
        "permitted": item.permitted,
        "stake": item.stake,
        "message": item.message,
    }
    if item.status is not Status.NOT_APPLICABLE:
        data |= _measured(item)
    if item.status in (Status.FINDING, Status.OPEN):
        data |= _advice(item)
    return data


def _measured(item: Finding) -> dict[str, Any]:
    found = item.evidence
    return {
        "unit": found.unit,
        "figure": _figure(found.figure, found.unit),
        "nominal": _figure(found.nominal, found.unit),
        "limit": _figure(found.limit, found.unit),
        "limit_is": "at least" if found.at_least else "at most",
        "margin": number(found.margin),
        "distance": _distance(found),
        "basis": _source(found.basis) if found.basis else None,
        "place": _place(item.place) if item.place else None,
        "related": [_place(place) for place in item.related],
        "worst_at": [_corner_value(item) for item in found.corner],
        "assumptions": [_assumption(assumed) for assumed in found.assumed],
    }


def _advice(item: Finding) -> dict[str, Any]:
    advice = item.advice
    return {
        "missing": [
            {
                "path": x.path,
                "unit": x.unit,
                "meaning": x.meaning,
                "example": x.example,
                "must_be": x.border,
            }
            for x in advice.missing
        ],
        "changes": [_remedy(remedy) for remedy in advice.remedies],
        "changes_note": advice.remedy_note,
        "sources": [_source(source) for source in item.evidence.sources],
        "cautions": [{"signal": x.signal, "text": x.text} for x in advice.cautions],
    }


def _distance(found: Evidence) -> Mapping[str, Any] | None:
    """From figure to limit, negative when missed; of temperatures it is a difference."""
    if found.distance is None:
        return None
    return {"si": number(found.distance), "text": away(found.distance, found.unit)}


def _figure(x: float | None, unit: str) -> Mapping[str, Any] | None:
    return None if x is None else {"si": number(x), "text": in_words(x, unit)}


def _corner_value(item: CornerValue) -> dict[str, Any]:
    return {"path": item.path, "si": number(item.value), "text": in_words(item.value, item.unit)}


def _assumption(item: Assumed) -> dict[str, Any]:
    known = {"path": item.path, "value": item.text, "leaning": item.leaning}
    return known | {"basis": _source(item.basis), "placeholder": item.placeholder}


def _remedy(item: Remedy) -> dict[str, Any]:
    return {
        "set": dict(item.changes),
        "was": list(item.was),
        "fixes": list(item.cured),
        "improves": list(item.eased),
        "worsens": list(item.worsened),
        "introduces": list(item.appeared),
        "leaves_open": list(item.opened),
    }


def _source(item: Source) -> dict[str, str]:
    return {"title": item.title, "where": item.where, "kind": item.kind}


def _place(item: Place) -> dict[str, Any]:
    return {"file": item.file, "line": item.line, "column": item.column, "path": item.path}


def _refusal(item: Refusal) -> dict[str, Any]:
    texts = {"problem": item.problem, "expected": item.expected, "example": item.example}
    return texts | {"place": _place(item.place)}
