"""Edits of a YAML text at known spans: every other character stays as it is.

The parts of a text carry the index where they begin and end.  Each edit gives a new text;
the parts are then read anew.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Any, Literal

from .yaml_text import Alias, block, flow, scalar

MERGE = "<<"
_ANCHOR = re.compile(r"&\S+\s*")


@dataclass(slots=True)
class Part:
    """A scalar, mapping, list or alias, and where it stands.

    text: of a scalar its content, of an alias the anchor's name.  items: keys and values
    by turns, or the items of a list.  brackets: a mapping or list in flow form.
    """

    kind: Literal["scalar", "mapping", "list", "alias"]
    start: int
    end: int
    column: int
    text: str = ""
    plain: bool = True
    anchor: str | None = None
    brackets: bool = False
    items: list["Part"] = field(default_factory=list)
    target: "Part | None" = None

    @property
    def behind(self) -> "Part":
        """The part itself, or what its alias stands for."""
        return self.target if self.target is not None else self

    def pairs(self) -> Iterator[tuple["Part", "Part"]]:
        """Keys and values of a mapping, merges included."""
        return zip(self.items[0::2], self.items[1::2], strict=True)


def own(mapping: Part, name: str) -> tuple[Part, Part] | None:
    """The key and value that the mapping itself holds."""
    return next(
        ((key, value) for key, value in mapping.pairs() if key.text == name and name != MERGE),
        None,
    )


def merged(mapping: Part, name: str) -> tuple[Part, Part] | None:
    """The key and value that come through a merge, first merge first."""
    for key, value in mapping.pairs():
        if key.text == MERGE and key.plain:
            behind = value.behind
            for source in behind.items if behind.kind == "list" else [behind]:
                found = own(source.behind, name) or merged(source.behind, name)
                if found:
                    return found
    return None


def value_start(text: str, key: Part) -> int:
    """The index behind the colon of a key."""
    return text.index(":", key.end) + 1


def line_end(text: str, index: int) -> int:
    """The index of the line break behind ``index``, or of the end of the text."""
    found = re.compile(r"\r?\n|$").search(text, index)
    return found.start() if found else len(text)


def replace(text: str, key: Part | None, part: Part, data: Any, inside: bool) -> str:
    """The text with other data in place of a part; its anchor stays."""
    start = part.start
    anchored = _ANCHOR.match(text, start) if part.anchor else None
    if part.kind == "scalar":
        start = anchored.end() if anchored else start
        quote = text[start] if not part.plain and text[start] in "'\"" else ""
        new = scalar(data, inside, quote) if isinstance(data, str) else flow(data, inside)
        return _put(text, start, part.end, new)
    if part.brackets or part.kind == "alias" or key is None:
        start = anchored.end() if anchored else start
        return _put(text, start, part.end, flow(data, inside))
    new = (f"&{part.anchor} " if part.anchor else "") + flow(data, inside)
    stop = line_end(text, part.end)
    remarks = re.findall(r"(?m)(?:^|\s)(#.*)$", text[value_start(text, key) : stop])
    return text[: value_start(text, key)] + " ".join(["", new, *remarks]) + text[stop:]


def insert(text: str, mapping: Part, name: str, data: Any, step: int) -> str:
    """The text with a new key at the end of a mapping."""
    if mapping.brackets:
        pair = f"{name}: {flow(data, True)}"
        if not mapping.items:
            at = text.index("{", mapping.start) + 1
            return text[:at] + pair + text[at:]
        at = mapping.items[-1].end
        gap = " " if text[at - 1] == ":" else ""  # ``a:,`` would be a word
        return f"{text[:at]}{gap}, {pair}{text[at:]}"
    at = line_end(text, mapping.items[-1].end)
    column = mapping.items[0].column
    lines = block(name, data, column, step)
    newline = newline_of(text)
    gap = newline if column == 0 and len(lines) > 1 else ""
    return text[:at] + newline + gap + newline.join(lines) + text[at:]


def open_alias(text: str, key: Part | None, alias: Part, indent: int | None) -> str:
    """An alias of a section turned into a section that merges it, to hold more keys.

    indent: of the keys in it, None within brackets and lists.
    """
    if key is None or indent is None:
        return f"{text[: alias.start]}{{{MERGE}: *{alias.text}}}{text[alias.end :]}"
    start = value_start(text, key)
    merge = f"{MERGE}: *{alias.text}"
    if "\n" in text[start : alias.start]:
        return text[: alias.start] + merge + text[alias.end :]
    stop = line_end(text, alias.end)
    rest = text[alias.end : stop].rstrip()
    return text[:start] + rest + newline_of(text) + " " * indent + merge + text[stop:]


def override(text: str, mapping: Part, name: str, provider: tuple[Part, Part], step: int) -> str:
    """A merged section written out in the mapping as a merge of its own.

    Where the section has no anchor yet it gets one; the caller then calls again.
    """
    key, value = provider
    known = value.text if value.kind == "alias" else value.anchor
    if known:
        return insert(text, mapping, name, {MERGE: Alias(known)}, step)
    at = value_start(text, key)
    return f"{text[:at]} &{_unused(text, name)}{text[at:]}"


def remark(text: str, part: Part, note: str) -> str:
    """The text with a trailing comment on the line where a part ends."""
    stop = line_end(text, part.end)
    if _has_comment(text[part.end : stop]):
        return f"{text[:stop].rstrip()}; {note}{text[stop:]}"
    return f"{text[:stop].rstrip()}  # {note}{text[stop:]}"


def remark_above(text: str, part: Part, note: str) -> str:
    """The text with a comment on a line of its own above a part."""
    at = text.rfind("\n", 0, part.start) + 1
    indent = re.compile(r" *").match(text, at)
    margin = indent.group() if indent else ""
    return f"{text[:at]}{margin}# {note}{newline_of(text)}{text[at:]}"


def newline_of(text: str) -> str:
    """The line break that the text uses."""
    return "\r\n" if "\r\n" in text else "\n"


def _put(text: str, start: int, end: int, new: str) -> str:
    gap = " " if start and text[start - 1] == ":" and new else ""
    return text[:start] + gap + new + text[end:]


def _has_comment(rest: str) -> bool:
    """Whether what follows a value on its line holds a comment outside of quotes."""
    bare = re.sub(r"\"(?:[^\"\\]|\\.)*\"|'(?:[^']|'')*'", "", rest)
    return bool(re.search(r"(?:^|\s)#", bare))


def _unused(text: str, name: str) -> str:
    """An anchor that the text does not use yet."""
    number, anchor = 2, f"shared-{name}"
    while re.search(rf"[&*]{re.escape(anchor)}(?![\w-])", text):
        anchor, number = f"shared-{name}-{number}", number + 1
    return anchor
