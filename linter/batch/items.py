"""What can be reviewed in one go: files, texts, plain data, and a base with other values."""

import json
from collections.abc import Mapping
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from ..judging.criteria import Criteria, Terms, criteria_for
from ..reading.loading import Loaded, load_file, load_text
from ..reading.parts_file import no_parts, parts_beside
from ..reading.refusal import Refusal


@dataclass(frozen=True, slots=True)
class Text:
    """A spec as text; ``name`` stands for its file in places and reports.

    No house file and no parts file is looked for: there is no folder to look in.  The terms
    may name them.
    """

    name: str
    text: str | bytes


@dataclass(frozen=True, slots=True)
class Variant:
    """A base with other values: full path to plain data, such as ``33 uH``."""

    base: Text
    changes: Mapping[str, object]

    @property
    def name(self) -> str:
        """The base, and what is different in it."""
        told = ", ".join(f"{path} {value}" for path, value in self.changes.items())
        return f"{self.base.name} with {told}"


Item = Path | Text | Variant


def from_data(name: str, data: Mapping[str, Any]) -> Text:
    """Plain data as a spec: it is read as a file that says the same would be.

    >>> from_data("board", {"amplifier_spec": 1}).text
    '{"amplifier_spec": 1}'
    """
    return Text(name, json.dumps(data, ensure_ascii=False))


def name_of(item: Item) -> str:
    """What an item is called in results."""
    return str(item) if isinstance(item, Path) else item.name


def loaded(item: Path | Text, terms: Terms) -> Loaded:
    """The spec of an item, or its refusals; a parts file is found beside a file only."""
    if isinstance(item, Path):
        return load_file(item, parts=terms.parts)
    source = parts_beside(Path(item.name), terms.parts) if terms.parts else no_parts
    return load_text(item.text, item.name, parts=source)


def criteria_of(item: Path | Text, terms: Terms) -> Criteria | tuple[Refusal, ...]:
    """What an item is reviewed against; a house file is found beside a file only."""
    if isinstance(item, Path):
        return criteria_for(item, terms)
    return criteria_for(Path(item.name), replace(terms, no_house=terms.house is None))
