"""Answers in a table (CSV): one row a value, read as if they stood in a spec file.

The first row names the columns.  Two are read: ``field``, with the paths that the answer
belongs to, and ``your value``.  What stays blank stays open.
"""

import csv
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any

from ..finding import Place
from ..reading.format import SPEC_KEY, VERSION
from ..reading.loading import Loaded, load_text
from ..reading.plain_text import content_of, decode
from ..reading.refusal import Refusal
from ..reading.source import read

FIELD, VALUE = "field", "your value"
DELIMITERS = ",;\t"


def load_table(path: Path) -> Loaded:
    """The answers as a spec of their own, or refusals with the rows at fault."""
    content = content_of(path, "a table as CSV")
    if isinstance(content, Refusal):
        return Loaded(None, (content,))
    text, refusals = decode(content, str(path))
    if refusals:
        return Loaded(None, refusals)
    try:
        rows = list(csv.reader(text.splitlines(), delimiter=_delimiter(text)))
    except csv.Error as error:
        refusal = Refusal(Place(str(path), 1, 1), f"cannot be read: {error}", "a table as CSV")
        return Loaded(None, (refusal,))
    heads = [cell.strip().lower() for cell in rows[0]] if rows else []
    if FIELD not in heads or VALUE not in heads:
        wanted = f"the columns `{FIELD}` and `{VALUE}` in the first row"
        problem = "this is no table of answers"
        return Loaded(None, (Refusal(Place(str(path), 1, 1), problem, wanted),))
    places, answers = {}, {}
    for row, paths, value in _answers(rows, heads.index(FIELD), heads.index(VALUE)):
        for name in paths:
            places[name] = Place(str(path), row, heads.index(VALUE) + 1, name)
            answers[name] = value
    return _as_spec(str(path), answers, places)


def _delimiter(text: str) -> str:
    """The sign between the columns: the one of which the first row has most."""
    first = text.partition("\n")[0]
    return max(DELIMITERS, key=first.count)


def _answers(rows: list[list[str]], field: int, value: int) -> Iterator[tuple[int, list[str], Any]]:
    for number, cells in enumerate(rows[1:], start=2):
        if len(cells) > max(field, value) and cells[value].strip():
            yield number, cells[field].split(), _plain(cells[value].strip())


def _plain(text: str) -> Any:
    """A cell as plain data: a data-sheet line or a list in brackets, else its text."""
    if text[0] not in "{[":
        return text
    document = read(f"value: {text}", "table")
    return document.data.get("value", text) if document.data else text


def _as_spec(file: str, answers: dict[str, Any], places: dict[str, Place]) -> Loaded:
    empty = load_text(f"{SPEC_KEY}: {VERSION}\n", file).spec
    assert empty is not None
    rows = {path: (place,) for path, place in places.items()}
    return replace(empty, places=rows).with_values(answers)
