"""Every number of one check: the figure, its inputs, and all that they follow from.

The lines come in the order of evaluation, leaves first, so that a second engineer can
follow the sheet with a pencil and sign it.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Any

from ..check import Derived, Input, Source, Way
from ..evaluation.catalogue import Entry
from ..evaluation.engine import Assessment
from ..evaluation.node import Computed, Corner, FigureError, Fixed, LeafNode, Node
from ..evaluation.wording import in_words
from ..finding import Finding, Place


@dataclass(frozen=True, slots=True)
class Line:
    """One quantity of a sheet.

    kind: ``stated``, ``assumed``, ``derived`` or ``figure``; formula: how it follows, or
    the text of the spec; direct: the figure itself takes it.
    """

    kind: str
    symbol: str
    meaning: str
    formula: str
    nominal: str
    worst: str
    place: Place | None
    sources: tuple[Source, ...]
    direct: bool = False

    @property
    def moves(self) -> bool:
        """Whether it stands elsewhere at the worst corner."""
        return self.nominal != self.worst


@dataclass(frozen=True, slots=True)
class Worksheet:
    """A check for one subject with all its numbers."""

    entry: Entry
    finding: Finding
    lines: tuple[Line, ...]


def worksheet(run: Assessment, entry: Entry, subject: str) -> Worksheet:
    """The worksheet of a check; without lines where it cannot be computed."""
    finding = run.judge(entry, subject)
    try:
        return Worksheet(entry, finding, _lines(run, entry, subject, finding))
    except FigureError:  # the finding says so, and holds
        return Worksheet(entry, finding, ())


def _lines(run: Assessment, entry: Entry, subject: str, finding: Finding) -> tuple[Line, ...]:
    node = run.prepare(entry, subject, run.graph)
    if not isinstance(node, Computed):
        return ()
    corner = {item.path: item.value for item in finding.evidence.corner}
    taken = {id(below) for below in node.arguments.values()}
    lines = [
        replace(line, direct=id(below) in taken)
        for below in _in_order(node)
        if (line := _line(run, below, corner))
    ]
    return (*lines, _figure(entry, node, corner))


def _in_order(top: Computed) -> Iterator[Node]:
    """The nodes below the figure, each once, what they need before them."""
    seen: set[int] = set()

    def walk(node: Node) -> Iterator[Node]:
        if id(node) in seen:
            return
        seen.add(id(node))
        if isinstance(node, Computed):
            for below in node.arguments.values():
                yield from walk(below)
        if node is not top:
            yield node

    yield from walk(top)


def _figure(entry: Entry, node: Computed, corner: Corner) -> Line:
    check = entry.check
    return Line(
        "figure",
        entry.name,
        check.title,
        check.formula,
        in_words(node.value(), check.unit),
        in_words(node.value(corner), check.unit),
        None,
        check.sources,
    )


def _line(run: Assessment, node: Node, corner: Corner) -> Line | None:
    if isinstance(node, Computed):
        return _derived(run, node, corner)
    if isinstance(node, LeafNode):
        return _leaf(run, node, corner)
    if isinstance(node, Fixed) and node.used:
        path = next(iter(node.used))
        word = in_words(node.value(), run.spec.schema.field_of(path).unit)
        return _stated(run, path, word, word, word)
    return None


def _derived(run: Assessment, node: Computed, corner: Corner) -> Line | None:
    quantity = run.catalogue.derived.get(node.label)
    if quantity is None or node.way is None:
        return None
    return Line(
        "derived",
        node.label,
        quantity.meaning,
        _formula(node.way),
        _value(quantity, node.value()),
        _value(quantity, node.value(corner)),
        None,
        quantity.sources,
    )


def _formula(way: Way) -> str:
    """The formula; of a value that is taken as it is the name of what it is taken from."""
    paths = [item.path for item in way.inputs.values() if isinstance(item, Input)]
    return paths[0] if way.formula == "value" and len(paths) == 1 else way.formula


def _value(quantity: Derived, value: Any) -> str:
    """A value in words; of a bundle that is solved together its parts, each with its unit."""
    if quantity.unit != "set":
        return in_words(value, quantity.unit)
    parts = ((name, getattr(value, name), unit) for name, unit in quantity.parts.items())
    known = (f"{name} {in_words(part, unit)}" for name, part, unit in parts if part is not None)
    return ", ".join(known) or "nothing"


def _leaf(run: Assessment, node: LeafNode, corner: Corner) -> Line:
    quantity = run.catalogue.derived.get(node.path)
    known = quantity or run.spec.schema.field_of(node.path)
    unit = known.unit
    nominal, worst = in_words(node.value(), unit), in_words(node.value(corner), unit)
    if node.used:
        return _stated(run, node.path, node.stated.text, nominal, worst)
    assumed = node.assumed[0] if node.assumed else None
    sources = (assumed.basis,) if assumed else ()
    text = f"{node.stated.text} assumed" if assumed else node.stated.text
    return Line("assumed", node.path, known.meaning, text, nominal, worst, None, sources)


def _stated(run: Assessment, path: str, text: str, nominal: str, worst: str) -> Line:
    place = run.spec.place(path)
    return Line(
        "stated", path, run.spec.schema.field_of(path).meaning, text, nominal, worst, place, ()
    )
