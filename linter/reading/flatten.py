"""Nodes of a YAML text to plain data, with the places of every key and value.

Aliases and merge keys are followed here.  Each value counted is a value handed out, so
that a small file cannot unfold into a large one.
"""

import re
from dataclasses import dataclass, field
from sys import intern
from typing import Any, Literal, NoReturn

from ..finding import Place
from .format import SPEC_LINE
from .refusal import Refusal, shown

MAX_DEPTH = 20
MAX_VALUES = 20_000

_PATH_SIGNS = re.compile(r"[.\[\]]")
_MERGE = "<<"


class GiveUpError(Exception):
    """A limit is broken; reading on would only serve an attacker."""

    def __init__(self, refusal: Refusal) -> None:
        super().__init__(refusal.problem)
        self.refusal = refusal


@dataclass(slots=True)
class YamlNode:
    """A scalar, mapping, list or alias of the text; ``lost`` where it was refused.

    items: keys and values of a mapping by turns, or the items of a list.
    plain: a scalar without quotes.  open: its end has not been read yet.
    """

    kind: Literal["scalar", "mapping", "list", "alias", "lost"]
    line: int
    column: int
    text: str = ""
    plain: bool = False
    items: list["YamlNode"] = field(default_factory=list)
    target: "YamlNode | None" = None
    open: bool = False


@dataclass(frozen=True, slots=True)
class _KeyAndValue:
    """A key and its value, and the merges that the entry came through, outermost first."""

    key: YamlNode
    value: YamlNode
    merges: tuple[YamlNode, ...] = ()


class Flat:
    """Plain data and places of one file; refusals are collected, limits raise GiveUpError."""

    def __init__(self, file: str) -> None:
        self.file = file
        self.places: dict[str, tuple[Place, ...]] = {}
        self.key_places: dict[str, Place] = {}
        self.refusals: list[Refusal] = []
        self.count = 0
        self.known: dict[int, dict[str, _KeyAndValue]] = {}

    def root(self, node: YamlNode) -> dict[str, Any] | None:
        """The whole file, which is a mapping."""
        self.places[""] = (Place(self.file, node.line, node.column),)
        if node.kind != "mapping":
            self._refuse(node, "the file is not a spec", "keys with values", SPEC_LINE)
            return None
        return self._mapping(node, "", (), 1)

    def _value(self, node: YamlNode, path: str, uses: tuple[YamlNode, ...], depth: int) -> Any:
        if node.kind == "scalar":
            return None if node.plain and not node.text else node.text
        if node.kind == "mapping":
            return self._mapping(node, path, uses, depth + 1)
        return self._list(node, path, uses, depth + 1)

    def _mapping(
        self, node: YamlNode, path: str, uses: tuple[YamlNode, ...], depth: int
    ) -> dict[str, Any]:
        data: dict[str, Any] = {}
        for name, entry in self._entries(node, depth).items():
            inner = intern(f"{path}.{name}" if path else name)
            value, through = _followed(entry.value)
            if value.kind == "lost":
                continue
            all_uses = uses + entry.merges + through
            self._count(entry.key, 1)
            place = value if value.kind == "scalar" and value.text else entry.key
            self.key_places[inner] = Place(self.file, entry.key.line, entry.key.column, inner)
            self._put(inner, place, all_uses)
            data[name] = self._value(value, inner, all_uses, depth)
        return data

    def _list(self, node: YamlNode, path: str, uses: tuple[YamlNode, ...], depth: int) -> list[Any]:
        self._check_depth(node, depth)
        data: list[Any] = []
        for item in node.items:
            value, through = _followed(item)
            if value.kind == "lost":
                continue
            inner = f"{path}[{len(data)}]"
            self._count(item, 1)
            self._put(inner, value, uses + through)
            data.append(self._value(value, inner, uses + through, depth))
        return data

    def _entries(self, node: YamlNode, depth: int) -> dict[str, _KeyAndValue]:
        """The entries of a mapping after its merges: its own first, then those merged."""
        self._check_depth(node, depth)
        if id(node) in self.known:
            return self.known[id(node)]
        entries: dict[str, _KeyAndValue] = {}
        merged: list[YamlNode] = []
        for key, value in zip(node.items[0::2], node.items[1::2], strict=True):
            if key.kind == "scalar" and key.plain and key.text == _MERGE:
                merged.append(value)
            elif self._fit_key(key, entries):
                entries[key.text] = _KeyAndValue(key, value)
        for value in merged:
            self._merge(value, entries, depth)
        self.known[id(node)] = entries
        return entries

    def _fit_key(self, key: YamlNode, entries: dict[str, _KeyAndValue]) -> bool:
        if key.kind != "scalar":
            self._refuse(key, "a key that is not a word", "a plain word before the colon")
        elif not key.text:
            self._refuse(key, "a value without a key", "a key before the colon")
        elif _PATH_SIGNS.search(key.text):
            problem = f"the key {shown(key.text)} contains a dot or a bracket"
            expected = "one word a key; the contents of a section go below its key"
            self._refuse(key, problem, expected, "section: {voltage: 24 V}")
        elif key.text in entries:
            line = entries[key.text].key.line
            problem = f"the key {shown(key.text)} is given twice, first in line {line}"
            self._refuse(key, problem, "each key once in its section")
        else:
            return True
        return False

    def _merge(self, node: YamlNode, entries: dict[str, _KeyAndValue], depth: int) -> None:
        """Add what ``<<`` brings in; keys that are there already win, earlier ones too."""
        target, through = _followed(node)
        sources = target.items if target.kind == "list" else [node]
        for source in sources:
            mapping, uses = _followed(source)
            if mapping.kind == "lost":
                continue
            if mapping.kind != "mapping":
                expected = "the alias of a section, or a list of such aliases"
                self._refuse(source, "<< merges what is not a section", expected, "<<: *shared")
                continue
            uses = uses if source is node else through + uses
            brought = self._entries(mapping, depth + 1)
            self._count(source, len(brought))
            for name, entry in brought.items():
                merges = uses + entry.merges
                if len(merges) > MAX_DEPTH:
                    problem = f"values merged through more than {MAX_DEPTH} sections"
                    self._give_up(source, problem, "a merge of the section that states the values")
                entries.setdefault(name, _KeyAndValue(entry.key, entry.value, merges))

    def _put(self, path: str, node: YamlNode, uses: tuple[YamlNode, ...]) -> None:
        file = self.file
        place = Place(file, node.line, node.column, path)
        related = tuple(Place(file, use.line, use.column, path) for use in uses) if uses else ()
        self.places[path] = (place, *related)

    def _count(self, node: YamlNode, number: int) -> None:
        self.count += number
        if self.count > MAX_VALUES:
            self._give_up(
                node, f"more than {MAX_VALUES} values, aliases and merges unfolded", "fewer"
            )

    def _check_depth(self, node: YamlNode, depth: int) -> None:
        if depth > MAX_DEPTH:
            self._give_up(node, f"sections more than {MAX_DEPTH} deep", "the sections of a spec")

    def _give_up(self, node: YamlNode, problem: str, expected: str) -> NoReturn:
        raise GiveUpError(Refusal(Place(self.file, node.line, node.column), problem, expected))

    def _refuse(self, node: YamlNode, problem: str, expected: str, example: str = "") -> None:
        place = Place(self.file, node.line, node.column)
        self.refusals.append(Refusal(place, problem, expected, example))


def _followed(node: YamlNode) -> tuple[YamlNode, tuple[YamlNode, ...]]:
    """The node behind an alias, and the alias."""
    if node.kind == "alias" and node.target is not None:
        return node.target, (node,)
    return node, ()
