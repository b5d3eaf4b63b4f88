"""The reviews of parts files as JSON."""

from collections.abc import Iterable
from typing import Any

from ..finding import Finding
from ..judging.parts_review import PartReview, PartsReview
from ..reading.refusal import Refusal
from .assess_json import dumped
from .identity import text_hash
from .verdict import DISCLAIMER

FORMAT = 1


def parts_json(found: Iterable[tuple[str, PartsReview | tuple[Refusal, ...]]]) -> str:
    """What contradicts and what is missing in each part, of each file that can be read."""
    files = [_file(name, item) for name, item in found]
    return dumped({"ampreview_parts": FORMAT, "note": DISCLAIMER, "files": files})


def _file(name: str, found: PartsReview | tuple[Refusal, ...]) -> dict[str, Any]:
    if not isinstance(found, PartsReview):
        refusals = [
            {"line": item.place.line, "problem": item.problem, "expected": item.expected}
            for item in found
        ]
        return {"file": name, "assessed": False, "refusals": refusals}
    return {
        "file": name,
        "assessed": True,
        "sha256": text_hash(found.file.text),
        "consistent": not found.holds,
        "parts": [_part(item) for item in found.parts],
    }


def _part(part: PartReview) -> dict[str, Any]:
    return {
        "kind": part.kind,
        "name": part.name,
        "stated": part.stated,
        "findings": [_finding(item) for item in part.findings],
        "missing": [
            {
                "name": item.name,
                "unit": item.unit,
                "checks": item.checks,
                "grave_checks": item.grave,
                "only_for": item.only_for,
            }
            for item in part.wanted
        ],
    }


def _finding(item: Finding) -> dict[str, Any]:
    return {
        "severity": item.severity.value if item.severity else None,
        "message": item.message,
        "place": {"file": item.place.file, "line": item.place.line} if item.place else None,
    }
