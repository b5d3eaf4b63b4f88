"""Where a position of a text is in the structure of a spec, also while the text is broken.

A YAML reader tells nothing of a text that it cannot read, and a spec that is being written
seldom can be.  Lines are followed from the top by their indentation and brackets, as far as the
position; what is behind it does not matter.
"""

import re
from dataclasses import dataclass
from typing import Literal

_KEY = re.compile(r"""(?P<name>[\w-]+|"[^"]*"|'[^']*')[ ]*:(?=\s|$)""")
_ANCHOR = re.compile(r"&\S+\s*")
_REST_OF_KEY = re.compile(r"""[\w-]*["']?[ ]*(?::(?=\s|$))?""")


@dataclass(frozen=True, slots=True)
class Spot:
    """A position of a text.

    path: of the section in which a key is written, or of the field that has the value.
    what: whether the position is in a key or in a value; typed: what stands before it there;
    start: the column where that begins, from 0.
    """

    path: str
    what: Literal["key", "value"]
    typed: str
    start: int


@dataclass(slots=True)
class _Level:
    """A key or an item of a list that is open, and how far it is indented."""

    indent: int
    name: str
    item: int = -1


@dataclass(slots=True)
class _Bracket:
    """A bracket that is open, and the key or the number of the item that it is at."""

    sign: str
    key: str = ""
    number: int = 0


def spot_at(lines: list[str], line: int, column: int) -> Spot | None:
    """What a position is in (from 0, in characters); None in a comment."""
    walk = _Walk()
    for text in lines[:line]:
        walk.follow(text)
    return walk.follow(lines[line][:column]) if line < len(lines) else None


def keys_in(lines: list[str]) -> set[str]:
    """The paths of the keys of a text, as far as it can be followed."""
    walk = _Walk()
    for text in lines:
        walk.follow(text)
    return walk.met


def spot_of(lines: list[str], line: int, column: int) -> Spot | None:
    """The same for what is pointed at: a key is that of its value, not one being written."""
    text = lines[line] if line < len(lines) else ""
    found = _REST_OF_KEY.match(text, column)
    behind = found.end() if found and text[column : found.end()].endswith(":") else column
    return spot_at(lines, line, behind)


class _Walk:
    """Follows a text line by line."""

    def __init__(self) -> None:
        self.levels: list[_Level] = []
        self.brackets: list[_Bracket] = []
        self.met: set[str] = set()

    def follow(self, text: str) -> Spot | None:
        """Take in a line; gives what its end is in, None for a comment."""
        body = text.lstrip(" ")
        indent = len(text) - len(body)
        if self.brackets and body and self.levels and indent <= self.levels[-1].indent:
            self.brackets = []  # a bracket that was never closed
        if self.brackets:
            return self._inside(text, indent)
        if not body or body.startswith("#"):
            self._leave(indent if body else len(text))
            return None if body else Spot(self._path(), "key", "", len(text))
        while body.startswith("- ") or body == "-":
            self._item(indent)
            rest = body[1:].lstrip(" ")
            indent += len(body) - len(rest)
            body = rest
        if body.startswith(("{", "[")):
            return self._inside(text, indent)
        self._leave(indent)
        found = _KEY.match(body)
        if found is None:
            return Spot(self._path(), "key", body, indent)
        self.levels.append(_Level(indent, found["name"].strip("\"'")))
        self.met.add(self._path())
        return self._inside(text, indent + found.end())

    def _leave(self, indent: int) -> None:
        """Close what is indented as far or further."""
        while self.levels and self.levels[-1].indent >= indent:
            self.levels.pop()

    def _item(self, indent: int) -> None:
        """Begin an item of a list, the next one where one ends at the same indent."""
        number = 0
        while self.levels and self.levels[-1].indent >= indent:
            level = self.levels[-1]
            if level.item < 0 and level.indent == indent:
                break  # the key of the list, which need not be indented less
            if level.indent == indent:
                number = level.item + 1
            self.levels.pop()
        self.levels.append(_Level(indent, f"[{number}]", number))

    def _inside(self, text: str, at: int) -> Spot | None:
        """Follow a value, or what stands in brackets, to the end of a line."""
        start = at
        while at < len(text):
            sign, word = text[at], _ANCHOR.sub("", text[start:at].strip())
            if sign in "\"'" and not word:
                closed = text.find(sign, at + 1)
                at = len(text) if closed < 0 else closed
            elif sign == "#" and text[at - 1] == " ":
                return None
            elif sign in "{[" and not word:
                self.brackets.append(_Bracket(sign))
                start = at + 1
            elif self.brackets and sign in "}],:":
                start = self._sign(text, start, at)
            at += 1
        typed = text[start:].lstrip()
        is_key = bool(self.brackets) and self.brackets[-1].sign == "{" and not self.brackets[-1].key
        return Spot(self._path(), "key" if is_key else "value", typed, len(text) - len(typed))

    def _sign(self, text: str, start: int, at: int) -> int:
        """Take in a sign between brackets; gives where the next word begins."""
        last, sign = self.brackets[-1], text[at]
        if sign == ",":
            last.key, last.number = "", last.number + 1
        elif sign in "}]":
            self.brackets.pop()
        elif last.sign == "{" and not last.key and text[at + 1 : at + 2] in ("", " "):
            last.key = text[start:at].strip().strip("\"'")
            self.met.add(self._path())
        else:
            return start
        return at + 1

    def _path(self) -> str:
        names = [level.name for level in self.levels]
        names += [x.key if x.sign == "{" else f"[{x.number}]" for x in self.brackets]
        return re.sub(r"\.?\[", "[", ".".join(name for name in names if name))
