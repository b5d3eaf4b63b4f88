"""Edits give the text that is wanted, whatever its line ends and characters."""

import pytest
from pygls.workspace import PositionCodec

from ampreview.linter.editor.ranges import Ranges, edits
from ampreview.linter.finding import Place

from .client import applied, under

TEXTS = [
    ("a: 1\nb: 2\n", "a: 1\nb: 3\n"),
    ("a: 🔊\r\nb: 2\r\nc: 3", "a: 🔊\r\nb: 2\r\nc: 4"),
    ("a: 1\nb: µ🔊", "a: 1\n"),
    ("a: 1", "a: 1\nb: 2"),
    ("a: 1\n", "# x\na: 1\nb: 2\n"),
    ("a\nb\nc\nd\n", "b\nx\nd\ne\n"),
]


@pytest.mark.parametrize(("old", "new"), TEXTS)
def test_edits_lead_from_one_text_to_the_other(old: str, new: str) -> None:
    found = [
        {
            "range": {
                "start": {"line": x.range.start.line, "character": x.range.start.character},
                "end": {"line": x.range.end.line, "character": x.range.end.character},
            },
            "newText": x.new_text,
        }
        for x in edits(old, new, PositionCodec())
    ]
    assert applied(old, found) == new


@pytest.mark.parametrize(
    ("line", "column", "wanted"),
    [
        ("  v_rail: 24 V ± 5 %   # x", 11, "24 V ± 5 %"),
        ("  v_rail: 24 V", 3, "v_rail"),
        ("🔊: {a: 1 uF, b: [2, 3]}", 4, "{a: 1 uF, b: [2, 3]}"),
        ("🔊: {a: 1 uF, b: [2, 3]}", 8, "1 uF"),
        ("t: 'a: b, c' # x", 4, "'a: b, c'"),
        ("a: http://x", 4, "http://x"),
    ],
)
def test_a_mark_covers_the_key_or_the_value(line: str, column: int, wanted: str) -> None:
    ranges = Ranges(line, PositionCodec())
    found = ranges.of(Place("x", 1, column))
    start, end = found.start.character, found.end.character
    span = {"start": {"line": 0, "character": start}, "end": {"line": 0, "character": end}}
    assert under(line, span) == wanted
    assert ranges.column(found.start) == (0, column - 1)
