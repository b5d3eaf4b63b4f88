"""Stated values beyond what bounds them: other stated values, words, or physics alone.

A bound convicts only where it is sure: every value behind it is stated or leans to the design's
side, and every word that chose the way to it is stated or follows from stated ones.  A value
that the spec calls an estimate bounds as well, because the two statements stand side by side;
such a finding is a contradiction of statements, and somebody may permit it.
"""

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from functools import partial
from typing import Any

from ..check import Derived, derivation
from ..declare import local_path
from ..evaluation.graph import Graph
from ..evaluation.node import Computed, FigureError, Node
from ..evaluation.tolerance import worst_case
from ..finding import Assumed, Finding, Severity
from ..quantities.quantity import Value, show
from ..reading.loading import Spec
from .stated import CONTRADICTS, Asked, stated_finding

SLACK = 1e-3
MOST_NAMES = 4
TO_THE_DESIGN_S_SIDE = ("favourable", "floor", "absent")


@dataclass(frozen=True, slots=True)
class Ground:
    """What a bound rests on: stated paths, words that chose the way to it among them.

    assumed: what is behind it and not stated.
    """

    paths: frozenset[str]
    assumed: tuple[Assumed, ...]


@dataclass(frozen=True, slots=True)
class Bound:
    """The bound of one stated value; above: that it lies above the value."""

    path: str
    quantity: Derived
    node: Node
    ground: Ground
    above: bool


def bounds_asked_of(spec: Spec, derived: Mapping[str, Derived]) -> Iterator[Asked]:
    """Whether a stated value lies beyond a sure bound, for each value and each bound."""
    for quantity in derived.values():
        for written in (*quantity.bounds_from_above, *quantity.bounds_from_below):
            path, _, end = written.partition(":")
            above = written in quantity.bounds_from_above
            for channel in _channels(spec, quantity, path):
                for number in _items(spec, path, channel):
                    answer = partial(
                        _bounded,
                        quantity=quantity,
                        path=path,
                        number=number,
                        end=end,
                        above=above,
                        channel=channel,
                    )
                    yield Asked(frozenset({path, quantity.name}), answer)


def _items(spec: Spec, path: str, channel: str | None) -> Iterable[int | None]:
    """The numbers of the items where a leaf stands in a list of sections, else one None."""
    section, _, leaf = path.partition("[].")
    if not leaf:
        return (None,)
    own = channel is not None and spec.schema.is_channel_path(path)
    full = f"channels.{channel}.{section}" if own else section
    return range(spec.lists.get(full, 0))


def _bounded(
    spec: Spec,
    graph: Graph,
    quantity: Derived,
    path: str,
    number: int | None,
    end: str,
    above: bool,
    channel: str | None,
) -> Finding | None:
    section, _, leaf = path.partition("[].")
    full = graph.full(section, channel)
    if number is not None:
        full = f"{full}[{number}].{leaf}"
    stated = spec.values.get(full)
    if not isinstance(stated, Value):
        return None
    node = graph.resolve(quantity.name, channel)
    if not isinstance(node, Node):
        return None
    ground = ground_of(graph, node, channel)
    if number is not None:
        node = Computed(quantity.name, _picked(number), {"whole": node})
    bound = Bound(full, quantity, node, ground, above)
    beyond = _is_sure(bound, spec) and _is_beyond(bound, _reached(stated, end))
    return _beyond(spec, bound, stated) if beyond else None


def _picked(number: int) -> Callable[[Any], Any]:
    """What bounds one item of a list: its own number, or the one that bounds them all."""
    return lambda whole: whole[number] if isinstance(whole, tuple) else whole


def ground_of(graph: Graph, node: Node, channel: str | None) -> Ground:
    """What a value rests on, down to the leaves, with the words that chose the way to it.

    A word that only an assumption gives is as unsure as a number that is assumed; on a silent
    word no way hangs that was taken.
    """
    if not isinstance(node, Computed):
        return Ground(node.used, node.assumed)
    words = (graph.resolve(path, channel) for path in _words(graph, node))
    below = [ground_of(graph, x, channel) for x in words if isinstance(x, Node)]
    below += _arguments(graph, node, channel)
    assumed = dict.fromkeys((*node.assumed, *(x for item in below for x in item.assumed)))
    paths = node.used.union(*(item.paths for item in below))
    return Ground(paths, tuple(assumed))


def _words(graph: Graph, node: Computed) -> Iterator[str]:
    """The words of the way that was taken, and of those before it that were not."""
    ways = graph.derived[node.label].ways if node.way else ()
    for way in ways:
        yield from way.when
        if way is node.way:
            return


def _arguments(graph: Graph, node: Computed, channel: str | None) -> Iterator[Ground]:
    """The ground of each argument; those of a sum over the channels each in its own channel."""
    over_all = node.label.startswith("all ")
    channels = graph.spec.channels if over_all else (channel,) * len(node.arguments)
    for item, where in zip(node.arguments.values(), channels, strict=False):
        yield ground_of(graph, item, where)


def _channels(spec: Spec, quantity: Derived, path: str) -> tuple[str | None, ...]:
    each = quantity.each == "channel" or spec.schema.is_channel_path(path)
    return spec.channels if each else (None,)


def _reached(stated: Value, end: str) -> float:
    """How far a statement goes: a range by its upper end, or by the lower one if asked."""
    if stated.form != "range":
        return stated.nominal
    return stated.lo if end == "low" else stated.hi


def _is_sure(bound: Bound, spec: Spec) -> bool:
    """Whether a bound rests on what is stated, and leans at most to the design's side.

    What rests on nothing but a constant is sure, what rests on assumptions alone is not; a share
    of a model leaves room for what is assumed to neither side.
    """
    ground = bound.ground
    sure = all(
        item.leaning in TO_THE_DESIGN_S_SIDE
        or item.path in spec.values
        or (bound.quantity.bounds_neutral and item.leaning == "neutral")
        for item in ground.assumed
    )
    return sure and bool(ground.paths or not ground.assumed)


def _is_beyond(bound: Bound, reached: float) -> bool:
    try:
        figure = worst_case(bound.node, 1 if bound.above else -1).figure
    except FigureError:
        return False
    slack = SLACK * abs(figure)
    return reached > figure + slack if bound.above else reached < figure - slack


def _beyond(spec: Spec, bound: Bound, stated: Value) -> Finding:
    """The finding; physics cannot be permitted away, a mere contradiction of statements can."""
    quantity, path = bound.quantity, bound.path
    figure = worst_case(bound.node, 1 if bound.above else -1).figure
    unit = spec.schema.field_of(path).unit
    others = sorted(item for item in bound.ground.paths if item != path)
    places = [spec.place(item) for item in (path, *others)]
    names = list(dict.fromkeys(map(local_path, others)))
    more = len(names) - MOST_NAMES
    named = ", ".join(names[:MOST_NAMES]) + (f" and {more} more" if more > 0 else "")
    source = f" (from {named})" if named else ""
    found = stated_finding(
        CONTRADICTS,
        "Stated value vs. its bound",
        path,
        Severity.MAJOR,
        f"{local_path(path)} is stated as {stated.text}; its bound is {show(figure, unit)}:"
        f" {quantity.meaning}{source}",
        tuple(place for place in places if place),
        derivation("recomputed from the values named")
        if others
        else (quantity.sources or (derivation("a bound of physics"),))[0],
    )
    guessed = any(item.path in spec.values for item in bound.ground.assumed)
    return replace(
        found,
        stake=quantity.bounds_stake,
        permissible=quantity.bounds_by == "practice" or guessed,
        holds_always=quantity.bounds_always and not guessed,
    )
