"""Numbers and names of a check turned into the words of a finding."""

from collections.abc import Mapping
from typing import Any

from ..check import Check, Constant, Input
from ..finding import Place, Reading
from ..quantities.quantity import show
from .graph import Graph
from .node import Computed, Corner, Node

PLAIN = ("word", "text", "set")


def in_words(value: Any, unit: str) -> str:
    """A value of any kind as a reader would write it.

    >>> in_words("full-bridge", "word")
    'full-bridge'
    """
    if isinstance(value, str):
        return value
    if isinstance(value, tuple):
        shown = [in_words(item, unit) for item in value]
        alike = len(shown) > 1 and len(set(shown)) == 1
        return f"{shown[0]} each" if alike else ", ".join(shown)
    if unit in PLAIN:
        return str(value)
    return show(float(value), unit)


class Said:
    """A value in a check's sentence, which may choose a word by it.

    ``{figure:+above|below}`` says "2 dB above" or, of a negative figure, "2 dB below";
    ``{count:turn|turns}`` says "1 turn" or "3 turns"; ``{figure}`` says the value.

    >>> f"{Said(-2.0, 'dB'):+above|below} and {Said(3.0, '1'):turn|turns}"
    '2 dB below and 3 turns'
    """

    def __init__(self, value: Any, unit: str) -> None:
        self.value = value
        self.unit = unit

    def __format__(self, choice: str) -> str:
        if not choice:
            return in_words(self.value, self.unit)
        first, _, second = choice.removeprefix("+").partition("|")
        if choice.startswith("+"):
            return f"{in_words(abs(self.value), self.unit)} {second if self.value < 0 else first}"
        return f"{in_words(self.value, self.unit)} {first if self.value == 1 else second}"


def sentence(check: Check, node: Computed, corner: Corner) -> str:
    """The check's sentence with the figure and the inputs at a corner.

    It begins with a capital and ends without a full stop, because a note may follow.
    """
    words: dict[str, Said | str] = {"figure": Said(node.value(corner), check.unit)}
    for name, item in check.inputs.items():
        if isinstance(item, Input):
            words[name] = Said(node.arguments[name].value(corner), item.unit)
        else:
            words[name] = item.value
    text = check.sentence.format_map(words).removesuffix(".")
    return text[:1].upper() + text[1:]


def readings(check: Check, node: Computed, corner: Corner, graph: Graph) -> tuple[Reading, ...]:
    """Every input of a check at a corner, with its place where the spec states it."""
    found = []
    for name, item in check.inputs.items():
        if isinstance(item, Constant):
            continue
        below = node.arguments[name]
        path = stated_path(below) or item.path
        found.append(
            Reading(
                name,
                path,
                below.value(corner),
                item.unit,
                item.meaning,
                graph.spec.place(path) if stated_path(below) else None,
            )
        )
    return tuple(found)


def stated_path(node: Node) -> str:
    """The path of a node that is one stated value, else nothing."""
    if isinstance(node, Computed) or len(node.used) != 1:
        return ""
    return next(iter(node.used))


def corner_readings(
    node: Node, corner: Mapping[str, float], graph: Graph, shares: Mapping[str, float]
) -> tuple[Reading, ...]:
    """The leaves that make the worst corner, those with the largest share first.

    A leaf that moves nothing at nominal can still matter where the others stand at their worst.
    """
    field_of = graph.spec.schema.field_of
    moved = sorted(corner, key=lambda path: (-shares.get(path, 0.0), path))
    return tuple(
        Reading(
            path.rpartition(".")[2],
            path,
            corner[path],
            field_of(path).unit,
            field_of(path).meaning,
            graph.spec.place(path),
        )
        for path in moved
    )


def places(node: Computed, check: Check, graph: Graph, channel: str | None) -> tuple[Place, ...]:
    """Where the finding points: the first lever that is stated, then the other inputs."""
    wanted = [
        graph.full(lever.path, channel)
        for lever in check.levers
        if channel is not None or not graph.spec.schema.is_channel_path(lever.path)
    ]
    direct = [stated_path(item) for item in node.arguments.values()]
    ordered = [path for path in wanted if path in graph.spec.values]
    ordered += [path for path in direct if path]
    ordered += sorted(node.used - set(ordered))
    found: dict[Place, None] = {}
    for path in ordered:
        for place in graph.spec.places.get(path, ()):
            found.setdefault(place)
    return tuple(found)
