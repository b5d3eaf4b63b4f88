"""Numbers and names of a check turned into the words of a finding."""

import re
from math import inf, isnan, nan
from sys import intern
from typing import Any

from ..check import Check, Input
from ..finding import Assumed, CornerValue, Place
from ..quantities.quantity import show
from .graph import Graph
from .node import Computed, Corner, Node
from .parameters import placeholders
from .tolerance import Extreme
from .twins import own_first

PLAIN = ("word", "text", "set")
UNKNOWN = "unknown"
NOT_THERE = "none"
IN_BRACKETS = re.compile(r" \(([^()]*)\)")
UNBOUNDED = "without limit"
MANY_TIMES = 3.0
NEAR = 0.01
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
    ``{count:turn|turns}`` says "1 turn", "3 turns" or "no turns";
    ``{part:?no part|part of #}`` says the first of zero and of ``none``, else the second, in
    which ``#`` is the value; ``{figure:%}`` says "102 %", or "4.9 times" from three times on,
    ``{figure:% of}`` "102 % of" or "4.9 times";
    ``{limit:*figure}`` and ``{current:/figure}`` say the other one of the two values of which
    the figure is the ratio; ``{figure}`` says the value; ``{basis:words}`` says a word of the
    spec without its hyphens, ``{rule:upper}`` one that is an abbreviation.
    instead: what is said in place of a value that nobody knows.  ratio: the figure.

    >>> f"{Said(-2.0, 'dB'):+above|below} and {Said(3.0, '1'):turn|turns}"
    '2 dB below and 3 turns'
    >>> f"{Said(5.0, 'A'):*figure}", f"{Said(5.0, 'A', ratio=2.0):*figure}"
    ('5 A', '10 A')
    """

    def __init__(self, value: Any, unit: str, instead: str = "", ratio: float = 1.0) -> None:
        self.value = value
        self.unit = unit
        self.instead = instead
        self.ratio = ratio

    def __format__(self, choice: str) -> str:
        if choice.startswith("?"):
            return self._one_of(choice.removeprefix("?"))
        if choice == "words":
            return f"{self}".replace("-", " ")
        if choice == "upper":
            return f"{self}".replace("-", " ", 1).upper()
        if choice in ("", "%", "% of", "*figure", "/figure"):
            return self.instead or self._number(choice)
        first, _, second = choice.removeprefix("+").partition("|")
        if self.instead:
            return f"{self.instead} {first}"
        if choice.startswith("+"):
            return f"{in_words(abs(self.value), self.unit)} {second if self.value < 0 else first}"
        if self.value == 0:
            return f"no {second}"
        return f"{in_words(self.value, self.unit)} {first if self.value == 1 else second}"

    def _one_of(self, choice: str) -> str:
        first, _, second = choice.partition("|")
        is_nothing = not self.instead and self.value in (0.0, NOT_THERE)
        if is_nothing or self.instead == NOT_THERE:
            return first
        return second.replace("#", f"{self}")

    def _number(self, choice: str) -> str:
        if choice.startswith("%"):
            return _ratio(self.value, choice.removeprefix("%"))
        if choice:
            return self._other_end(choice)
        return in_words(self.value, self.unit)

    def _other_end(self, choice: str) -> str:
        if choice == "/figure" and self.ratio == 0.0:
            return UNBOUNDED
        value = self.value * self.ratio if choice == "*figure" else self.value / self.ratio
        if isnan(value):
            return UNKNOWN
        return UNBOUNDED if value == inf else in_words(value, self.unit)


def _ratio(value: float, of: str) -> str:
    """A ratio as a reader says it; near 100 % with one more digit.

    of: what follows a percentage alone.
    """
    if value == inf:
        return UNBOUNDED
    if value >= MANY_TIMES:
        return f"{show(value, '1')} times"
    return show(value, "%", 4 if abs(value - 1.0) < NEAR else 3) + of


def sentence(check: Check, node: Computed, corner: Corner) -> str:
    """The check's sentence with the figure and the inputs at a corner.

    It begins with a capital and ends without a full stop, because a note may follow.  What
    nobody knows is left out of its brackets; else nothing can be said but that.
    """
    figure = node.value(corner)
    unknown = _of_figure(node, figure)
    ratio = nan if unknown == UNKNOWN else figure
    words: dict[str, Said | str] = {"figure": Said(figure, check.unit, unknown)}
    for name in placeholders(check.sentence) - words.keys():
        item = check.inputs[name]
        if isinstance(item, Input):
            value = node.arguments[name].value(corner)
            words[name] = Said(value, item.unit, _instead(node.arguments[name], value), ratio)
        else:
            words[name] = item.value
    text = check.sentence.format_map(words).removesuffix(".")
    if UNKNOWN in text:
        text = IN_BRACKETS.sub(known, text)
        if re.search(rf"\b{UNKNOWN}\b", text):
            return f"{check.title}: not known"
    return text[:1].upper() + text[1:]


def known(remark: re.Match[str]) -> str:
    """A remark in brackets without the parts that say nothing."""
    parts = re.split(r"(?<=[,;]) ", remark[1])
    said = [part for part in parts if not re.search(rf"\b{UNKNOWN}\b", part)]
    return f" ({' '.join(said).rstrip(',;')})" if said else ""


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


def assumed_in_words(item: Assumed) -> str:
    """What is assumed of a path; a bound without end is no value.

    >>> from ..check import COMMON_PRACTICE
    >>> assumed_in_words(Assumed("feed.band", "inf", "adverse", COMMON_PRACTICE))
    'feed.band not given'
    """
    return f"{item.path} {'not given' if item.text in ('inf', '-inf') else item.text}"


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


def places(
    node: Computed, check: Check, graph: Graph, channel: str | None, most: int
) -> tuple[Place, ...]:
    """Where the finding points: the first lever that is stated, then the other inputs."""
    wanted = [
        graph.full(lever.path, channel)
        for lever in check.levers
        if channel is not None or not graph.spec.schema.is_channel_path(lever.path)
    ]
    direct = [stated_path(item) for item in node.arguments.values()]
    ordered = [path for path in wanted if path in graph.spec.values]
    ordered += [path for path in direct if path]
    others = node.used.difference(ordered)
    ordered += sorted(others, key=lambda path: own_first(path, channel))
    pointed = (place for path in ordered for place in graph.spec.places.get(path, ()))
    found: dict[Place, None] = {}
    for place in pointed:
        found.setdefault(place)
        if len(found) == most:
            break
    return tuple(found)
