"""Numbers and names of a check turned into the words of a finding."""

from math import inf
from sys import intern
from typing import Any

from ..check import Check, Input
from ..finding import CornerValue, Place
from ..quantities.quantity import show
from .graph import Graph
from .node import Computed, Corner, Node
from .tolerance import Extreme
from .twins import own_first

PLAIN = ("word", "text", "set")
UNKNOWN = "unknown"
NOT_THERE = "none"
UNBOUNDED = "without limit"
BOUNDS = ("floor", "favourable", "adverse")


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
    ``instead``: what is said in place of a value that nobody knows.

    >>> f"{Said(-2.0, 'dB'):+above|below} and {Said(3.0, '1'):turn|turns}"
    '2 dB below and 3 turns'
    """

    def __init__(self, value: Any, unit: str, instead: str = "") -> None:
        self.value = value
        self.unit = unit
        self.instead = instead

    def __format__(self, choice: str) -> str:
        if not choice:
            return self.instead or in_words(self.value, self.unit)
        first, _, second = choice.removeprefix("+").partition("|")
        if self.instead:
            return f"{self.instead} {first}"
        if choice.startswith("+"):
            return f"{in_words(abs(self.value), self.unit)} {second if self.value < 0 else first}"
        return f"{in_words(self.value, self.unit)} {first if self.value == 1 else second}"


def sentence(check: Check, node: Computed, corner: Corner) -> str:
    """The check's sentence with the figure and the inputs at a corner.

    It begins with a capital and ends without a full stop, because a note may follow.
    """
    figure = node.value(corner)
    words: dict[str, Said | str] = {"figure": Said(figure, check.unit, _of_figure(node, figure))}
    for name, item in check.inputs.items():
        if isinstance(item, Input):
            value = node.arguments[name].value(corner)
            words[name] = Said(value, item.unit, _instead(node.arguments[name], value))
        else:
            words[name] = item.value
    text = check.sentence.format_map(words).removesuffix(".")
    return text[:1].upper() + text[1:]


def _instead(node: Node, value: Any) -> str:
    """What to say of a value that is no fact: a bound in place of silence, or infinity.

    A floor is the best that can be, and so is the zero or the infinity of another bound; what
    is infinite otherwise is a part that is not there.
    """
    endless = value in (0.0, inf, -inf)
    leanings = {item.leaning for item in node.assumed}
    bound = bool(leanings) and not node.used and leanings <= {*BOUNDS, "absent"}
    if bound and ("floor" in leanings or (endless and leanings & set(BOUNDS))):
        return UNKNOWN
    if value in (inf, -inf):
        return UNKNOWN if leanings & set(BOUNDS) else NOT_THERE
    return ""


def _of_figure(node: Computed, figure: float) -> str:
    """What to say of a figure that is a mere floor, nothing or all, or that has no end."""
    floored = any(item.leaning == "floor" for item in node.assumed)
    if floored and figure in (0.0, inf, -inf):
        return UNKNOWN
    return UNBOUNDED if figure in (inf, -inf) else ""


def stated_path(node: Node) -> str:
    """The path of a node that is one stated value, else nothing."""
    if isinstance(node, Computed) or len(node.used) != 1:
        return ""
    return next(iter(node.used))


def corner_values(extreme: Extreme, graph: Graph, channel: str | None) -> tuple[CornerValue, ...]:
    """The leaves that make the worst corner, those with the largest share first.

    A leaf that moves nothing at nominal can still matter where the others stand at their worst.
    """
    shares = extreme.shares
    moved = sorted(
        extreme.corner, key=lambda path: (-shares.get(path, 0.0), own_first(path, channel))
    )
    unit_of = {path: graph.spec.schema.field_of(path).unit for path in moved}
    return tuple(
        CornerValue(intern(path.rpartition(".")[2]), path, extreme.corner[path], unit_of[path])
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
    others = node.used - set(ordered)
    ordered += sorted(others, key=lambda path: own_first(path, channel))
    found: dict[Place, None] = {}
    for path in ordered:
        for place in graph.spec.places.get(path, ()):
            found.setdefault(place)
    return tuple(found)
