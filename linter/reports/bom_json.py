"""The comparison with a bill of materials as JSON."""

from typing import Any

from ..judging.bom import BomComparison, BomFinding
from .assess_json import dumped
from .bom_text import in_order
from .identity import text_hash
from .verdict import DISCLAIMER

FORMAT = 1


def bom_json(found: BomComparison) -> str:
    """What agrees, what does not, and what could not be compared; the same bytes for the same."""
    spec, bom = found.spec, found.bom
    data = {
        "ampreview_bom": FORMAT,
        "note": DISCLAIMER,
        "agrees": not found.findings,
        "spec": {"file": spec.file, "sha256": text_hash(spec.text)},
        "table": {
            "file": bom.file,
            "sha256": text_hash(bom.text),
            "columns": dict(bom.columns),
        },
        "parts_named": found.named,
        "values_agreed": len(found.agreed),
        "findings": [_finding(item) for item in found.findings],
        "not_compared": [
            {"what": what, "parts": in_order(parts)} for what, parts in found.untold.items()
        ],
        "no_designators": [{"line": line, "text": text} for line, text in bom.unread],
        "only_in_table": list(found.extra),
    }
    return dumped(data)


def _finding(item: BomFinding) -> dict[str, Any]:
    at = item.place
    return {
        "kind": item.kind,
        "parts": list(item.names),
        "message": item.message,
        "place": {"file": at.file, "line": at.line} if at else None,
        "table_lines": list(item.lines),
    }
