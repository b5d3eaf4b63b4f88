"""Parts of SARIF 2.1.0 that stand for themselves: messages, file names, rules."""

from pathlib import PurePath
from typing import Any
from urllib.parse import quote

from ..evaluation.catalogue import Entry
from .phrases import cited

Data = dict[str, Any]


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


def rule_of_words(name: str, text: str) -> Data:
    """A rule that has no file: the program's own."""
    return {"id": name, "fullDescription": message(text)}


def rule_of(entry: Entry) -> Data:
    """A check as a rule."""
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
