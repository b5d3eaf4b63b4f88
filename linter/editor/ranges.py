"""Places of a text as the protocol counts them: lines from 0, columns in units of its encoding.

A place of a review counts characters from 1; the encoding is UTF-16 unless client and server
have agreed on another one, so that a character beyond the first 65 536 counts as two there.
"""

import re
from collections.abc import Iterator
from difflib import SequenceMatcher

from lsprotocol import types
from pygls.workspace import PositionCodec

from ..finding import Place
from ..reading.plain_text import lines_of

_WHOLE_LINES = re.compile(r"[^\r\n]*(?:\r\n|\r|\n)|[^\r\n]+")
_CLOSED = {"{": "}", "[": "]", '"': '"', "'": "'"}
_PLAIN = re.compile(r"(?:[^\s,{}\[\]:]|:(?=\S)|[ ](?=[^\s#,{}\[\]]))+")


class Ranges:
    """Positions of one text."""

    def __init__(self, text: str, codec: PositionCodec) -> None:
        self.lines = lines_of(text)
        self.codec = codec

    def position(self, line: int, column: int) -> types.Position:
        """A position from line and column, both from 0, in characters."""
        line = min(line, len(self.lines) - 1)
        return types.Position(line, self.codec.client_num_units(self.lines[line][:column]))

    def column(self, position: types.Position) -> tuple[int, int]:
        """Line and column, in characters, of a position."""
        line = min(position.line, len(self.lines) - 1)
        text, units = self.lines[line], 0
        for column, sign in enumerate(text):
            if units >= position.character:
                return line, column
            units += self.codec.client_num_units(sign)
        return line, len(text)

    def of(self, place: Place) -> types.Range:
        """What stands at a place: a key, a value, or what brackets of one line hold."""
        line = min(place.line, len(self.lines)) - 1
        start = min(place.column - 1, len(self.lines[line]))
        end = start + _length(self.lines[line][start:])
        return types.Range(self.position(line, start), self.position(line, end))

    def first(self) -> types.Range:
        """The first line, for what has no place of its own."""
        return types.Range(types.Position(0, 0), self.position(0, len(self.lines[0])))


def edits(old: str, new: str, codec: PositionCodec) -> Iterator[types.TextEdit]:
    """What turns a text into another one, by whole lines."""
    before, after = _WHOLE_LINES.findall(old), _WHOLE_LINES.findall(new)
    ranges = Ranges(old, codec)
    for kind, start, end, left, right in SequenceMatcher(
        None, before, after, autojunk=False
    ).get_opcodes():
        if kind != "equal":
            ends = _line_start(ranges, before, start), _line_start(ranges, before, end)
            yield types.TextEdit(types.Range(*ends), "".join(after[left:right]))


def _line_start(ranges: Ranges, lines: list[str], number: int) -> types.Position:
    """Where a line begins; behind the last one, the end of the text."""
    if number < len(lines) or not lines or lines[-1].endswith(("\r", "\n")):
        return types.Position(number, 0)
    return ranges.position(number - 1, len(lines[-1]))


def _length(text: str) -> int:
    """How long the key or value is that a text begins with; one sign at least."""
    close = _CLOSED.get(text[:1])
    if close:
        end = text.find(close, 1)
        return end + 1 if end > 0 else len(text.rstrip())
    found = _PLAIN.match(text)
    return found.end() if found else min(len(text), 1)
