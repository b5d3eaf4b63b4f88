"""YAML text to plain data plus a table {path: places}.  The only reader of YAML here.

A spec is data: no tags, no directives, no second document, no recursion, and limits on
size, depth, number of values and their length.  Scalars stay as they are written: a
``010``, a ``yes`` or a date means only what its field says.  A key without a value gives
None.  Values that come through an alias or a merge key stand in two places: where their
text is, which comes first, and where the alias or merge is (outermost first).

The events of the parser are taken one at a time, so that a hostile file is given up at
the limit it breaks, before it has been read to its end.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import islice
from typing import Any

from ruamel.yaml import YAML
from ruamel.yaml.error import YAMLError

from ..finding import Place
from .flatten import MAX_DEPTH, MAX_VALUES, Flat, GiveUpError, YamlNode
from .format import SPEC_LINE
from .plain_text import decode, describe, unfit
from .refusal import Refusal, in_order, shown
from .syntax import syntax_refusal

MAX_LENGTH = 2_000

# what a parser raises on purpose, and by a slip of its own on odd input
_PARSER_ERRORS = (
    YAMLError,
    ArithmeticError,
    AssertionError,
    AttributeError,
    LookupError,
    RuntimeError,
    TypeError,
    ValueError,
)


@dataclass(frozen=True, slots=True)
class Document:
    """What was read.  ``data`` is None where the text has no readable structure.

    places: for each path (``channels.main.stage.coil.l``, ``rungs[0].r``; the
        whole file is ``""``) where its text stands, then where it is referred to.  The
        place of a section or list is that of its key.
    key_places: where the key itself stands.
    """

    data: Mapping[str, Any] | None
    places: Mapping[str, tuple[Place, ...]]
    key_places: Mapping[str, Place]
    refusals: tuple[Refusal, ...]
    text: str = ""


def read(content: str | bytes, file: str, pure: bool = False) -> Document:
    """Read a spec's text.  Never raises: whatever is wrong stands in ``refusals``.

    pure: use the parser in pure Python even where its C part is installed.
    """
    text, refusals = decode(content, file)
    if refusals:
        return Document(None, {}, {}, refusals, text)
    tree = _Tree(file)
    flat = Flat(file)
    try:
        root = tree.grow(text, pure)
        data = flat.root(root) if root else None
    except GiveUpError as stop:
        refused = in_order([*tree.refusals, *flat.refusals, stop.refusal])
        return Document(None, {}, {}, refused, text)
    refused = in_order([*tree.refusals, *flat.refusals])
    return Document(data, flat.places, flat.key_places, refused, text)


def events(text: str, pure: bool = True) -> Iterator[Any]:
    """What the YAML parser finds in a text, one event after the other, with its places."""
    yield from YAML(typ="safe", pure=pure).parse(text)


class _Tree:
    """Builds nodes from the events of the YAML parser."""

    def __init__(self, file: str) -> None:
        self.file = file
        self.refusals: list[Refusal] = []
        self.anchors: dict[str, YamlNode] = {}
        self.stack: list[YamlNode] = []
        self.root: YamlNode | None = None
        self.count = 0

    def grow(self, text: str, pure: bool) -> YamlNode | None:
        """The root node, or None after a refusal that leaves nothing to flatten."""
        for event in self._events(text, pure):
            kind = type(event).__name__
            if kind == "DocumentStartEvent":
                self._document(event)
            elif kind in ("MappingEndEvent", "SequenceEndEvent"):
                self.stack.pop().open = False
            elif kind == "AliasEvent":
                self._attach(self._alias(event))
            elif kind in ("ScalarEvent", "MappingStartEvent", "SequenceStartEvent"):
                self._attach(self._node(event, kind))
        if self.root is None:
            self._refuse(1, 1, "the file is empty", "a spec", SPEC_LINE)
        return self.root

    def _events(self, text: str, pure: bool) -> Iterator[Any]:
        try:
            yield from events(text, pure)
        except _PARSER_ERRORS as error:
            raise GiveUpError(syntax_refusal(error, text, self.file)) from None

    def _document(self, event: Any) -> None:
        line, column = _start(event)
        if self.root is not None:
            problem = "a second document begins here"
            raise GiveUpError(
                Refusal(Place(self.file, line, column), problem, "one spec in a file")
            )
        if event.version or event.tags:
            self._refuse(1, 1, "an instruction to the parser (%)", "the spec alone", SPEC_LINE)

    def _node(self, event: Any, kind: str) -> YamlNode:
        line, column = _start(event)
        if event.tag is not None:
            tag = str(event.tag).replace("tag:yaml.org,2002:", "!!")
            problem = f"the tag {shown(tag)}"
            self._refuse(line, column, problem, "the value alone: a spec has no tags")
        if kind == "ScalarEvent":
            plain = bool(event.implicit[0])
            node = YamlNode("scalar", line, column, self._checked(event, plain), plain)
        else:
            mapping = kind == "MappingStartEvent"
            node = YamlNode("mapping" if mapping else "list", line, column, open=True)
        if event.anchor is not None:
            self.anchors[event.anchor] = node
        return node

    def _checked(self, event: Any, plain: bool) -> str:
        text = str(event.value)
        if len(text) > MAX_LENGTH:
            line, column = _start(event)
            problem = f"a text of {len(text)} characters"
            self._refuse(line, column, problem, f"{MAX_LENGTH} characters at most")
            return text[:MAX_LENGTH]
        bad = None if plain else unfit(text)
        if bad:
            line, column = _start(event)
            self._refuse(line, column, f"{describe(bad)} written as an escape", "printable text")
        return text

    def _alias(self, event: Any) -> YamlNode:
        line, column = _start(event)
        target = self.anchors.get(event.anchor)
        name = shown(str(event.anchor))
        if target is None:
            known = ", ".join(islice(self.anchors, 5)) or "there are none"
            expected = f"an anchor defined further up ({known})"
            self._refuse(line, column, f"no anchor {name} above", expected, "right: *shared")
        elif target.open:
            problem = f"{name} is used inside itself"
            self._refuse(line, column, problem, "an anchor that is complete")
        else:
            return YamlNode("alias", line, column, target=target)
        return YamlNode("lost", line, column)

    def _attach(self, node: YamlNode) -> None:
        self.count += 1
        if self.count > 2 * MAX_VALUES:
            self._give_up(node, f"more than {2 * MAX_VALUES} keys and values", "a few hundred")
        if not self.stack:
            self.root = node
        else:
            self.stack[-1].items.append(node)
        if node.open:
            self.stack.append(node)
            if len(self.stack) > MAX_DEPTH:
                self._give_up(
                    node, f"sections more than {MAX_DEPTH} deep", "the sections of a spec"
                )

    def _give_up(self, node: YamlNode, problem: str, expected: str) -> None:
        raise GiveUpError(Refusal(Place(self.file, node.line, node.column), problem, expected))

    def _refuse(
        self, line: int, column: int, problem: str, expected: str, example: str = ""
    ) -> None:
        place = Place(self.file, line, column)
        self.refusals.append(Refusal(place, problem, expected, example))


def _start(event: Any) -> tuple[int, int]:
    """Line and column, from 1, where an event begins."""
    return event.start_mark.line + 1, event.start_mark.column + 1
