"""The review as SARIF 2.1.0 (OASIS Static Analysis Results Interchange Format).

A finding is ``fail`` with level error, warning or note for critical, major or minor; a
check that is met is ``pass``, an open one ``open``, one that does not concern the design
``notApplicable``, and the level of all these is ``none`` (3.27.9, 3.27.10).  A permitted
finding carries a suppression, in source where the spec itself holds the deviation.
"""

import hashlib
from collections.abc import Iterable, Sequence
from operator import attrgetter
from pathlib import PurePath
from typing import Any
from urllib.parse import quote

from ..changes.causes import causes_of
from ..evaluation.catalogue import Entry
from ..finding import Finding, Place, Severity, Status
from ..judging.consistency import BUILT_IN as STATED_VALUES
from ..judging.deviation import BUILT_IN as PERMISSIONS
from ..judging.deviation import is_behind
from ..judging.review import Outcome, Review
from ..reading.loading import Deviation
from ..reading.refusal import Refusal
from .assess_json import demanded, dumped, number
from .cause_words import cause_words, in_order
from .identity import PROGRAM, program_version, rules_hash, text_hash
from .phrases import against, cited
from .verdict import house_change, lacking, reason, weakened

SCHEMA = (
    "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"
)
LEVELS = {Severity.CRITICAL: "error", Severity.MAJOR: "warning", Severity.MINOR: "note"}
KINDS = {
    Status.FINDING: "fail",
    Status.MEETS: "pass",
    Status.OPEN: "open",
    Status.NOT_APPLICABLE: "notApplicable",
}

Data = dict[str, Any]


def sarif_report(outcomes: Sequence[tuple[str, Outcome]], dated: bool = False) -> str:
    """One log with one run for all files, in the order given."""
    run = _Run(outcomes, dated)
    return dumped({"$schema": SCHEMA, "version": "2.1.0", "runs": [run.data()]})


def message(text: str) -> Data:
    """A plain text message; braces and brackets are literal (3.11.5, 3.11.6).

    >>> message("{a} [b](c)")["text"] == "{{a}} " + chr(92) + "[b" + chr(92) + "](c)"
    True
    """
    plain = text.replace("\\", "\\\\").replace("[", "\\[").replace("]", "\\]")
    return {"text": plain.replace("{", "{{").replace("}", "}}")}


def uri(file: str) -> str:
    """A file name as a URI reference; an absolute one with its scheme.

    >>> uri("a b/50%.amp.yaml")
    'a%20b/50%25.amp.yaml'
    """
    path = PurePath(file)
    return path.as_uri() if path.is_absolute() else quote(path.as_posix(), errors="surrogateescape")


class _Run:
    """Builds the one run; rules and artifacts are numbered as they are met."""

    def __init__(self, outcomes: Sequence[tuple[str, Outcome]], dated: bool) -> None:
        self.reviews = [item for _, item in outcomes if isinstance(item, Review)]
        self.refused = [item for _, item in outcomes if not isinstance(item, Review)]
        self.names = [name for name, _ in outcomes]
        self.dated = dated
        self.rules = {rule["id"]: rule for rule in _rules(self.reviews)}
        self.rule_numbers = {name: number for number, name in enumerate(self.rules)}
        self.artifacts: dict[str, Data] = {}
        self.any_permitted = any(x.permitted for review in self.reviews for x in review.findings)

    def data(self) -> Data:
        """The run."""
        for review in self.reviews:
            self._artifact(review.spec.file, review.spec.text)
            for beside in (review.spec.parts, review.criteria.permissions, review.criteria.house):
                if beside:
                    self._artifact(beside.file, beside.text)
        results = [
            self._result(item, review, {"rank": rank} | ({"cause": cause} if cause else {}))
            for review in self.reviews
            for rank, (item, cause) in enumerate(_ordered(review), start=1)
        ]
        invocation = self._invocation()
        return {
            "tool": {"driver": self._driver(), "extensions": self._extensions()},
            "columnKind": "unicodeCodePoints",
            "defaultEncoding": "UTF-8",
            "invocations": [invocation],
            "results": results,
            "artifacts": list(self.artifacts.values()),
            "properties": {"verdicts": [self._verdict(review) for review in self.reviews]},
        }

    def _driver(self) -> Data:
        version = {"version": program_version()}
        return {"name": PROGRAM} | version | {"rules": list(self.rules.values())}

    def _extensions(self) -> list[Data]:
        packages = {name: None for x in self.reviews for name in x.catalogue.packages}
        return [{"name": name, "version": rules_hash(name)} for name in packages]

    def _invocation(self) -> Data:
        notes = [_note(item) for item in dict.fromkeys(self._notes())]
        refusals = [self._refusal(item) for group in self.refused for item in group]
        return {
            "executionSuccessful": not self.refused,
            "toolConfigurationNotifications": notes,
            "toolExecutionNotifications": refusals,
        }

    def _notes(self) -> Iterable[str]:
        for review in self.reviews:
            for change in weakened(review):
                yield f"safety weakened by the house file: {house_change(change)}"

    def _refusal(self, item: Refusal) -> Data:
        text = f"{item.problem}; expected {item.expected}"
        if item.example:
            text += f", for example {item.example}"
        return {
            "level": "error",
            "message": message(text),
            "locations": [self._location(item.place)],
        }

    def _verdict(self, review: Review) -> Data:
        verdict = review.verdict
        house = review.criteria.house
        data: Data = {
            "file": review.spec.file,
            "verdict": "released" if verdict.released else "held",
            "milestone": verdict.milestone,
            "why": reason(review),
            "toBeReleased": [
                demanded(item) for item in sorted(verdict.holding, key=attrgetter("rank"))
            ],
            "houseRules": [house_change(x) for x in house.changes] if house else [],
        }
        if house:
            data["houseFile"] = {"name": house.file, "sha256": text_hash(house.text)}
        if self.dated and review.criteria.day:
            data["date"] = review.criteria.day.isoformat()
        return data

    def _result(self, item: Finding, review: Review, order: Data) -> Data:
        data: Data = {
            "ruleId": item.check,
            "ruleIndex": self.rule_numbers[item.check],
            "kind": KINDS[item.status],
            "level": LEVELS[item.severity] if item.severity else "none",
            "message": message(_text(item)),
            "locations": [self._location(item.place or Place(review.spec.file, 1, 1), item)],
            "partialFingerprints": {"checkSubjectPath/v1": _fingerprint(item)},
        }
        if item.related:
            data["relatedLocations"] = [
                {"id": number} | self._location(place)
                for number, place in enumerate(item.related, start=1)
            ]
        if self.any_permitted:
            data["suppressions"] = self._suppressions(item, review)
        data["properties"] = order | _properties(item)
        return data

    def _suppressions(self, item: Finding, review: Review) -> list[Data]:
        if not item.permitted:
            return []
        return [
            {
                "kind": "inSource" if deviation.at.file == review.spec.file else "external",
                "status": "accepted",
                "justification": item.permitted,
                "location": self._location(deviation.at),
            }
            for deviation in _behind(item, review.deviations)
        ]

    def _location(self, place: Place, item: Finding | None = None) -> Data:
        data: Data = {
            "physicalLocation": {
                "artifactLocation": self._artifact(place.file),
                "region": {"startLine": place.line, "startColumn": place.column},
            }
        }
        names = [place.path] if place.path else []
        if item is not None and not names:
            names = [item.subject]
        if names:
            data["logicalLocations"] = [{"fullyQualifiedName": name} for name in names]
        return data

    def _artifact(self, file: str, text: str | None = None) -> Data:
        """The reference to an artifact, which is listed when it is first met."""
        if file not in self.artifacts:
            self.artifacts[file] = {"location": {"uri": uri(file), "index": len(self.artifacts)}}
        if text is not None:
            self.artifacts[file] |= {
                "mimeType": "application/yaml",
                "hashes": {"sha-256": text_hash(text)},
            }
        location: Data = dict(self.artifacts[file]["location"])
        return location


def _rules(reviews: Iterable[Review]) -> Iterable[Data]:
    for name, text in (STATED_VALUES | PERMISSIONS).items():
        yield {"id": name, "fullDescription": message(text)}
    for review in reviews:
        for entry in review.catalogue.entries:
            yield _rule(entry)


def _rule(entry: Entry) -> Data:
    return {
        "id": entry.name,
        "shortDescription": message(entry.check.title),
        "fullDescription": message(" ".join(entry.prose.split())),
        "properties": {
            "domain": entry.domain,
            "stake": entry.check.stake,
            "figure": entry.check.formula,
            "sources": [cited(source) for source in entry.check.sources],
        },
    }


def _ordered(review: Review) -> list[tuple[Finding, int | None]]:
    return in_order(review, cause_words(review, causes_of(review)))


def _text(item: Finding) -> str:
    parts = [item.title, against(item.evidence), item.message]
    if item.status is Status.OPEN:
        parts.append(lacking(item))
    parts += [
        f"{caution.signal}: {caution.text}" for caution in item.advice.cautions if item.severity
    ]
    return ". ".join(part.rstrip(".") for part in parts if part)


def _properties(item: Finding) -> Data:
    data: Data = {"subject": item.subject, "domain": item.domain}
    for name in ("figure", "nominal", "limit", "margin", "distance"):
        value = number(getattr(item.evidence, name))
        if value is not None:
            data[name] = value
    if item.evidence.basis:
        data["limitFrom"] = cited(item.evidence.basis)
    if item.advice.remedies:
        data["changes"] = [dict(remedy.changes) for remedy in item.advice.remedies]
    return data


def _fingerprint(item: Finding) -> str:
    path = item.place.path if item.place else ""
    text = "\0".join((item.check, item.subject, path))
    return hashlib.sha256(text.encode()).hexdigest()[:32]


def _behind(item: Finding, deviations: Iterable[Deviation]) -> list[Deviation]:
    """The deviation that permits a finding."""
    return [x for x in deviations if is_behind(x, item)][:1]


def _note(text: str) -> Data:
    return {"level": "warning", "message": message(text)}
