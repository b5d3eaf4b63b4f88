"""JSON Schemas of what stands beside a spec: the house file, and the report for machines."""

from typing import Any

from ..judging.house_file import SECTIONS, SEVERITIES
from ..judging.promised import OUTLOOKS
from ..reading.format import HOUSE_KEY
from .json_schema import DRAFT
from .text_patterns import any_value

NAME = {"type": "string", "pattern": "^[a-z0-9-]+$"}
TEXT = {"type": "string"}
SAID = {"type": ["string", "number", "boolean"], "pattern": r"\S"}  # yes to a YAML reader
REASON = {**SAID, "description": "why, in words"}
LIMIT = {"type": ["string", "number"], "pattern": any_value()}
FOUND = {"type": ["string", "number", "boolean"], "pattern": any_value("yes", "no")}
DAY = {"type": "string", "pattern": r"^\s*\d{4}-\d{2}-\d{2}\s*$"}
BLANK = {"enum": [None, ""]}
LIST = {"type": "array"}
VERSION = {"const": 1}
SIGNALS = ["DANGER", "WARNING", "CAUTION", "NOTICE"]
FIGURE = {
    "type": ["object", "null"],
    "properties": {"si": {"type": ["number", "null"]}, "text": TEXT},
    "required": ["si", "text"],
}


def _open(properties: dict[str, Any]) -> dict[str, Any]:
    """An object that has all of these and may have more."""
    return {"type": "object", "properties": properties, "required": [*properties]}


PLACE = _open({"file": TEXT, "line": {"type": "integer"}, "column": {"type": "integer"}})


def house_schema() -> dict[str, Any]:
    """The schema of a house file; which checks there are is judged by the program."""
    limit = {
        "type": "object",
        "properties": {
            **dict.fromkeys(SEVERITIES, LIMIT),
            "reason": REASON,
        },
        "required": ["reason"],
        "anyOf": [{"required": [severity]} for severity in SEVERITIES],
        "additionalProperties": False,
    }
    default = _object({"path": TEXT, "value": SAID, "reason": REASON})
    records = {"anyOf": [_record(SAID, DAY, FOUND), _record(BLANK, BLANK, BLANK)]}
    sections: dict[str, Any] = {
        HOUSE_KEY: {"enum": [1, "1"]},
        "verified": {"type": ["array", "null"], "items": records},
        "limits": _named(limit),
        "checks_off": _named(REASON),
        "defaults": {"type": ["array", "null"], "items": default},
        "rules": {"type": ["array", "null"], "items": TEXT},
    }
    assert tuple(sections) == SECTIONS
    return {
        "$schema": DRAFT,
        "title": "House file",
        "type": "object",
        "properties": sections,
        "required": [HOUSE_KEY],
        "additionalProperties": False,
    }


def _record(said: dict[str, Any], day: dict[str, Any], value: dict[str, Any]) -> dict[str, Any]:
    """A record of what was looked up: all of it said, or nothing yet."""
    found = _object({"found": value, "clause": said})
    checks = {"type": "object", "minProperties": 1, "additionalProperties": found}
    looked_up = {**_named(checks), "type": "object", "minProperties": 1}
    return _object({"text": said, "by": said, "on": day, "limits": looked_up})


def report_schema() -> dict[str, Any]:
    """The schema of ``assess --report json``; later versions may hold more."""
    files = {"type": "array", "items": _file()}
    whole = _open({"ampreview_report": VERSION, "note": TEXT, "files": files})
    return {"$schema": DRAFT, "title": "Report of a review", **whole}


def line_schema() -> dict[str, Any]:
    """The schema of a line of ``assess --report json-lines``, which tells of one file."""
    head = _open({"ampreview_report": VERSION, "note": TEXT})
    return {"$schema": DRAFT, "title": "Report of a review, one file", **head, **_file()}


def _file() -> dict[str, Any]:
    """What a report says of a file: a review, or why there is none."""
    judged = _open(
        {
            "file": TEXT,
            "assessed": {"const": True},
            "milestone": {"enum": ["concept", "prototype", "production"]},
            "verdict": {"enum": ["released", "held"]},
            "counts": {"type": "object", "additionalProperties": {"type": "integer"}},
            "promises": _list({"claim": TEXT, "outlook": {"enum": [*OUTLOOKS]}, "allowed": LIST}),
            "measured": LIST,
            "causes": _list(
                {"number": {"type": "integer"}, "severity": {"enum": [*SEVERITIES]}}
                | {"headline": TEXT, "holds": {"type": "boolean"}, "findings": LIST}
            ),
            "to_be_released": _list({"check": NAME, "subject": TEXT, "demand": TEXT}),
            "rests_on": _list({"what": TEXT, "name": TEXT}),
            "answers": {"type": "array", "items": _answer()},
        }
    )
    refusal = _open({"problem": TEXT, "expected": TEXT, "example": TEXT, "place": PLACE})
    refusals = {"type": "array", "items": refusal, "minItems": 1}
    refused = _open({"file": TEXT, "assessed": {"const": False}, "refusals": refusals})
    return {"oneOf": [judged, refused]}


def _answer() -> dict[str, Any]:
    """One answer; figures, place and advice stand where there are any."""
    known = _open(
        {
            "check": NAME,
            "domain": TEXT,
            "title": TEXT,
            "subject": TEXT,
            "status": {"enum": ["finding", "open", "meets", "not applicable"]},
            "severity": {"enum": [*SEVERITIES, None]},
            "holds": {"type": "boolean"},
            "message": TEXT,
        }
    )
    change = _open({"set": {"type": "object"}, "fixes": LIST, "worsens": LIST, "introduces": LIST})
    known["properties"] |= {
        **dict.fromkeys(("figure", "nominal", "limit", "distance"), FIGURE),
        "margin": {"type": ["number", "null"]},
        "limit_is": {"enum": ["at least", "at most"]},
        "place": {"anyOf": [PLACE, {"type": "null"}]},
        "missing": _list({"path": TEXT, "unit": TEXT, "meaning": TEXT, "must_be": TEXT}),
        "changes": {"type": "array", "items": change},
        "cautions": _list({"signal": {"enum": SIGNALS}, "text": TEXT}),
    }
    return known


def _list(properties: dict[str, Any]) -> dict[str, Any]:
    return {"type": "array", "items": _open(properties)}


def _object(properties: dict[str, Any]) -> dict[str, Any]:
    return {**_open(properties), "additionalProperties": False}


def _named(inner: dict[str, Any]) -> dict[str, Any]:
    """Entries under the names of checks."""
    return {"type": ["object", "null"], "propertyNames": NAME, "additionalProperties": inner}
