"""The review as SARIF 2.1.0 (OASIS Static Analysis Results Interchange Format).

A finding is ``fail`` with level error, warning or note for critical, major or minor; a
check that is met is ``pass``, an open one ``open``, one that does not concern the design
``notApplicable``, and the level of all these is ``none`` (3.27.9, 3.27.10).  A permitted
finding carries a suppression, in source where the spec itself holds the deviation.
"""

import hashlib
from collections.abc import Iterable, Iterator
from operator import attrgetter
from tempfile import TemporaryFile
from typing import Any, TextIO

from ..changes.causes import causes_of
from ..evaluation.catalogue import Catalogue
from ..finding import Finding, Place, Severity, Status
from ..judging.consistency import BUILT_IN as STATED_VALUES
from ..judging.deviation import BUILT_IN as PERMISSIONS
from ..judging.deviation import is_behind
from ..judging.review import Outcome, Review
from ..judging.unjudged import BUILT_IN as ON_SILENCE
from ..judging.unmeasured import on_readings
from ..reading.loading import Deviation
from ..reading.refusal import Refusal
from .assess_json import demanded, dumped, number
from .cause_words import cause_words, in_order
from .cautions import cautions_of
from .identity import PROGRAM, program_version, rules_hash, text_hash
from .phrases import against, cited
from .sarif_parts import Data, message, rule_of, rule_of_words, uri
from .standing import mark
from .verdict import DISCLAIMER, house_change, lacking, reason, weakened

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

KEY, ITEM, VERDICT = (f"\n{blanks * ' '}" for blanks in (6, 8, 10))
"""A new line inside the run, inside a list of it, and inside the list of verdicts."""


def sarif_pieces(
    outcomes: Iterable[tuple[str, Outcome]], dated: bool = False, full: bool = False
) -> Iterator[str]:
    """One log with one run for all files, in the order given, piece by piece.

    full: with what is met and what is not applicable, beside findings and open items.

    The results come first, as the reviews do; what is gathered on the way stands behind them,
    the verdicts kept in a file till then.
    """
    yield f'{{\n  "$schema": "{SCHEMA}",\n  "version": "2.1.0",\n  "runs": [\n    {{'
    with TemporaryFile("w+", encoding="ascii") as verdicts:
        run = _Run(dated, full)
        yield f'{KEY}"results": ['
        yield from _listed(run.results(outcomes, verdicts), ITEM)
        yield f"{KEY}]"
        for name, value in run.gathered().items():
            yield f',{KEY}"{name}": {_inside(value, KEY)}'
        verdicts.seek(0)
        yield f',{KEY}"properties": {{{ITEM}"note": {_inside(DISCLAIMER, ITEM)},{ITEM}"verdicts": ['
        yield from verdicts
        yield f"{ITEM}]{KEY}}}"
    yield "\n    }\n  ]\n}\n"


def _inside(value: Any, line: str) -> str:
    """A value as it stands inside a document."""
    return dumped(value).rstrip().replace("\n", line)


def _listed(values: Iterable[Any], line: str) -> Iterator[str]:
    """The items of a list, each on lines of its own."""
    comma = ""
    for value in values:
        yield comma + line + _inside(value, line)
        comma = ","


class _Run:
    """Builds the one run; rules and artifacts are numbered as they are met."""

    def __init__(self, dated: bool, full: bool) -> None:
        self.dated = dated
        self.statuses = tuple(Status) if full else (Status.FINDING, Status.OPEN)
        self.rules: dict[str, Data] = {}
        self.rule_numbers: dict[str, int] = {}
        self.artifacts: dict[str, Data] = {}
        self._catalogue: Catalogue | None = None
        self._packages: dict[str, None] = {}
        self._notes: dict[str, None] = {}
        self._refusals: list[Data] = []
        built_in = ON_SILENCE | STATED_VALUES | PERMISSIONS
        self._add(rule_of_words(*item) for item in built_in.items())

    def results(self, outcomes: Iterable[tuple[str, Outcome]], verdicts: TextIO) -> Iterator[Data]:
        """The results of all reviews; the verdicts are written down as text on the way."""
        comma = ""
        for _, outcome in outcomes:
            if not isinstance(outcome, Review):
                self._refusals += [self._refusal(item) for item in outcome]
                continue
            self._meet(outcome)
            verdicts.write(comma + VERDICT + _inside(self._verdict(outcome), VERDICT))
            comma = ","
            for rank, (item, cause) in enumerate(_ordered(outcome), start=1):
                order = {"rank": rank} | ({"cause": cause} if cause else {})
                if item.status in self.statuses:
                    yield self._result(item, outcome, order)

    def gathered(self) -> Data:
        """What all reviews add up to."""
        return {
            "tool": {"driver": self._driver(), "extensions": self._extensions()},
            "columnKind": "unicodeCodePoints",
            "defaultEncoding": "UTF-8",
            "invocations": [self._invocation()],
            "artifacts": list(self.artifacts.values()),
        }

    def _meet(self, review: Review) -> None:
        """Take up what a review rests on."""
        self._artifact(review.spec.file, review.spec.text)
        for beside in (review.spec.parts, review.criteria.permissions, review.criteria.house):
            if beside:
                self._artifact(beside.file, beside.text)
        for change in weakened(review):
            self._notes[f"safety weakened by the house file: {house_change(change)}"] = None
        if review.catalogue is not self._catalogue:
            self._catalogue = review.catalogue
            read = on_readings(review.catalogue.packages)
            self._add(rule_of_words(*item) for item in read.items())
            self._add(map(rule_of, review.catalogue.entries))
            self._packages |= dict.fromkeys(review.catalogue.packages)

    def _add(self, rules: Iterable[Data]) -> None:
        for rule in rules:
            self.rules[rule["id"]] = rule
            self.rule_numbers.setdefault(rule["id"], len(self.rule_numbers))

    def _driver(self) -> Data:
        version = {"version": program_version()}
        return {"name": PROGRAM} | version | {"rules": list(self.rules.values())}

    def _extensions(self) -> list[Data]:
        return [{"name": name, "version": rules_hash(name)} for name in self._packages]

    def _invocation(self) -> Data:
        return {
            "executionSuccessful": not self._refusals,
            "toolConfigurationNotifications": [_note(text) for text in self._notes],
            "toolExecutionNotifications": self._refusals,
        }

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
        data["suppressions"] = self._suppressions(item, review)
        data["properties"] = order | _properties(item) | _known(review, item)
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


def _ordered(review: Review) -> list[tuple[Finding, int | None]]:
    return in_order(review, cause_words(review, causes_of(review)))


def _text(item: Finding) -> str:
    parts = [item.title, against(item.evidence), item.message]
    if item.status is Status.OPEN:
        parts.append(lacking(item))
    parts += [f"{caution.signal}: {caution.text}" for caution in cautions_of(item)]
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


def _known(review: Review, item: Finding) -> Data:
    known = mark(review, item)
    return {"known": known} if known else {}


def _fingerprint(item: Finding) -> str:
    path = item.place.path if item.place else ""
    text = "\0".join((item.check, item.subject, path))
    return hashlib.sha256(text.encode()).hexdigest()[:32]


def _behind(item: Finding, deviations: Iterable[Deviation]) -> list[Deviation]:
    """The deviation that permits a finding."""
    return [x for x in deviations if is_behind(x, item)][:1]


def _note(text: str) -> Data:
    return {"level": "warning", "message": message(text)}
