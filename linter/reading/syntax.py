"""YAML errors in the reader's words: place, what is wrong, what to write instead.

A parser tells where it got stuck, which is often a line or more behind the slip.  The
table below knows, for each way to get stuck, the usual slip and the end that it lies at.
"""

import re
from dataclasses import dataclass
from typing import Any

from ..finding import Place
from .format import SPEC_LINE
from .plain_text import lines_of, place_of
from .refusal import Refusal


@dataclass(frozen=True, slots=True)
class _Slip:
    """A parser message (pattern), whether the slip lies where the construct began, advice."""

    pattern: str
    at_start: bool
    problem: str
    expected: str
    example: str = ""


_SLIPS = (
    _Slip(
        "quoted scalar.*end of stream|quoted scalar.*document separator",
        True,
        "the text in quotes that begins here is not closed",
        "a quote of the same kind at its end",
        'revision: "1.0"',
    ),
    _Slip(
        "unexpected ':'",
        False,
        "no space after the colon, or text with a colon without quotes",
        "a colon and a space; text in quotes",
        "{length: 2 m}",
    ),
    _Slip(
        "escape",
        True,
        "a backslash inside double quotes begins an escape that does not exist",
        "single quotes, or no backslash",
        "title: 'left\\right'",
    ),
    _Slip(
        "flow mapping",
        True,
        "the { that begins here is not closed, or a comma is missing inside",
        "entries separated by commas and a } at the end",
        "{min: 8 ns, typ: 12 ns, max: 25 ns}",
    ),
    _Slip(
        "flow sequence",
        True,
        "the [ that begins here is not closed, or a comma is missing inside",
        "items separated by commas and a ] at the end",
        "[eu, uk]",
    ),
    _Slip(
        "could not find expected ':'",
        True,
        "this line is neither a key with a value nor part of the value above",
        "a key, a colon and a space before the value",
        "voltage: 24 V",
    ),
    _Slip(
        "mapping values are not allowed",
        False,
        "a colon where no key can be: a second one in the line, or a line indented too far",
        "one key a line, level with its neighbours; text with a colon in quotes",
        "title: 'Stage two: the bridge'",
    ),
    _Slip(
        "sequence entries are not allowed",
        False,
        "a dash where no list can begin",
        "the list on the lines below its key, or in brackets",
        "markets: [eu, uk]",
    ),
    _Slip(
        "block mapping|block collection|violates indentation",
        False,
        "this line does not line up with the lines above it, or text follows a closed value"
        " (a section that is none has nothing below it)",
        "spaces that put a key level with its neighbours",
    ),
    _Slip(
        "scanning an? (alias|anchor)",
        True,
        "a value cannot begin with * or & unless it names an anchor",
        "the text in quotes, or the name of an anchor",
        "right: *shared",
    ),
    _Slip(
        "cannot start any token",
        False,
        "a value cannot begin with this character",
        "the text in quotes",
        "title: '@ the pier'",
    ),
    _Slip(
        "block scalar",
        False,
        "nothing may follow | or > in its line",
        "the text on the next lines, indented",
    ),
    _Slip(
        "node content",
        False,
        "a bracket that was never opened, or a comma too many",
        "a value",
    ),
    _Slip(
        "incompatible YAML|directive",
        False,
        "a line that begins with % is an instruction to the parser",
        "the keys of the spec alone",
        SPEC_LINE,
    ),
)
_UNKNOWN = _Slip("", False, "the text cannot be read as YAML", "keys, colons and values")
_GLUED = re.compile(r"^\s*(?:- )?([A-Za-z_][\w-]*):([^\s:/].*)$")


def syntax_refusal(error: Any, text: str, file: str) -> Refusal:
    """Turn what a YAML parser raised into a refusal.

    ``error`` is any exception; marks (lines and columns from 0) are used where it has
    them, so that the C parser and the pure one give the same place.
    """
    stuck = _mark(error, "problem_mark")
    began = _mark(error, "context_mark") or stuck
    if stuck is None:
        position = getattr(error, "position", None)
        place = place_of(text, position if isinstance(position, int) else len(text), file)
        return Refusal(place, _UNKNOWN.problem, _UNKNOWN.expected)
    lines = lines_of(text)
    message = f"{getattr(error, 'context', '')} {getattr(error, 'problem', '')}"
    return (
        _tab(lines, stuck, file)
        or _glued(lines, (began, stuck), file)
        or _tabled(message, began or stuck, stuck, file)
    )


def _mark(error: Any, name: str) -> tuple[int, int] | None:
    mark = getattr(error, name, None)
    return None if mark is None else (mark.line, mark.column)


def _tab(lines: list[str], stuck: tuple[int, int], file: str) -> Refusal | None:
    """A tab among the spaces that a line begins with: YAML refuses it."""
    for number in range(stuck[0], max(stuck[0] - 2, -1), -1):
        line = lines[number] if number < len(lines) else ""
        indent = line[: len(line) - len(line.lstrip())]
        if "\t" in indent:
            place = Place(file, number + 1, indent.index("\t") + 1)
            return Refusal(place, "a tab indents this line", "spaces, two for each level")
    return None


def _glued(
    lines: list[str], marks: tuple[tuple[int, int] | None, ...], file: str
) -> Refusal | None:
    """A key and its value without a space after the colon, near where the parser stuck."""
    rows = {mark[0] + step for mark in marks if mark for step in (-1, 0)}
    for row in sorted(row for row in rows if 0 <= row < len(lines)):
        match = _GLUED.match(lines[row])
        if match:
            place = Place(file, row + 1, match.end(1) + 1)
            example = f"{match.group(1)}: {match.group(2).strip()[:40]}"
            return Refusal(place, "no space after the colon", "a colon and a space", example)
    return None


def _tabled(message: str, began: tuple[int, int], stuck: tuple[int, int], file: str) -> Refusal:
    slip = next((slip for slip in _SLIPS if re.search(slip.pattern, message)), _UNKNOWN)
    line, column = began if slip.at_start else stuck
    return Refusal(Place(file, line + 1, column + 1), slip.problem, slip.expected, slip.example)
