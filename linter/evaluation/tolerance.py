"""Worst case over the leaves: extreme corner, root-sum-square, share of each leaf."""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from types import MappingProxyType

from ..quantities.quantity import Value
from .node import NOMINAL, Moved, Node
from .twins import Leaf

SCAN_POINTS = 33
GOLDEN = (5**0.5 - 1) / 2
GOLDEN_STEPS = 24
NEAR_BY = 1e-6

Alike = Mapping[str, Leaf]
NONE_ALIKE: Alike = MappingProxyType({})


@dataclass(frozen=True, slots=True)
class Extreme:
    """A figure at its worst corner.

    corner: the overrides of the leaves; shares: how much of the figure's span from end to
    end each leaf makes up when it moves alone, adding up to 1.
    """

    figure: float
    nominal: float
    corner: Mapping[str, float]
    shares: Mapping[str, float]


def worst_case(
    node: Node, adverse: int, peaks_inside: tuple[str, ...] = (), alike: Alike = NONE_ALIKE
) -> Extreme:
    """The largest (``adverse`` 1) or smallest (-1) value of a figure over its leaves.

    Each leaf is first moved alone, which gives its sign; from the corner of these signs
    single leaves are tried at their other end, and at nominal where that alone was the
    worst, until none makes it worse.  Leaves named in ``peaks_inside`` are then searched
    inside their range as well.  Of leaves that are alike one is moved for all of them, as
    long as it moves nothing.
    """
    nominal = float(node.value())
    ends = _one_at_a_time(node, alike)
    corner = _sign_corner(node.leaves, ends, adverse)
    tries = _tries(node.leaves, ends, adverse, nominal)
    corner = climb(node, corner, adverse, tries, alike)
    inside = [path for path in node.leaves if _is_named(path, peaks_inside)] if peaks_inside else []
    for path in inside:
        corner = _search_inside(node, corner, path, adverse)
    if inside:
        corner = climb(node, corner, adverse, tries)
    figure = float(node.value(corner))
    if adverse * nominal > adverse * figure:
        figure, corner = nominal, {}
    return Extreme(figure, nominal, corner, _shares(ends))


def root_sum_square(node: Node, adverse: int, alike: Alike = NONE_ALIKE) -> float:
    """The figure with conditions at their adverse ends and spreads added in squares.

    Ranges are conditions of use that all occur; tolerances and data-sheet lines are
    spreads between independent pieces.
    """
    ends = _one_at_a_time(node, alike)
    corner = _sign_corner(node.leaves, ends, adverse)
    biased = {p: x for p, x in corner.items() if node.leaves[p].form == "range"}
    start = float(node.value(biased))
    steps: dict[object, float] = {}
    for path, value in corner.items():
        if path not in biased:
            kind = _kind(path, alike)
            if kind not in steps:
                steps[kind] = adverse * (float(node.value(Moved(biased, path, value))) - start)
    spread = (max(steps[_kind(path, alike)], 0.0) for path in corner if path not in biased)
    return start + adverse * math.hypot(*spread)


def _kind(path: str, alike: Alike) -> object:
    """The same for leaves that are alike."""
    leaf = alike.get(path)
    return path if leaf is None else (leaf.group, leaf.field)


def _one_at_a_time(node: Node, alike: Alike) -> dict[str, tuple[float, float]]:
    """The figure with one leaf at its low and at its high end, the others nominal."""
    known: dict[object, tuple[float, float]] = {}
    for path, leaf in node.leaves.items():
        kind = _kind(path, alike)
        if kind not in known:
            low = float(node.moved(Moved(NOMINAL, path, leaf.lo)))
            known[kind] = low, float(node.moved(Moved(NOMINAL, path, leaf.hi)))
    return {path: known[_kind(path, alike)] for path in node.leaves}


def _sign_corner(
    leaves: Mapping[str, Value], ends: Mapping[str, tuple[float, float]], adverse: int
) -> dict[str, float]:
    corner = {}
    for path, (at_low, at_high) in ends.items():
        if at_low != at_high:
            worse_high = adverse * at_high > adverse * at_low
            corner[path] = leaves[path].hi if worse_high else leaves[path].lo
    return corner


def climb(
    node: Node,
    corner: dict[str, float],
    adverse: int,
    tries: Mapping[str, Sequence[float]],
    alike: Alike = NONE_ALIKE,
) -> dict[str, float]:
    """Move single leaves to one of their tries as long as that makes the figure worse.

    alike: leaves that stand at the same corner wherever they are alike.
    """
    best = adverse * float(node.value(corner))
    vain = _Vain(alike)
    moved = True
    while moved:
        moved = False
        for path, candidates in tries.items():
            here = corner.get(path, node.leaves[path].nominal)
            for candidate in candidates:
                if candidate == here or vain.knows(path, candidate):
                    continue
                moving = Moved(corner, path, candidate)
                reached = adverse * float(node.moved(moving))
                if reached > best and not math.isclose(reached, best, rel_tol=1e-12):
                    best, corner, here, moved = reached, moving.corner(), candidate, True
                    vain.moved(path, candidate)
                else:
                    vain.add(path, candidate)
    return corner


class _Vain:
    """Moves that made nothing worse, and that need not be tried in a channel that is alike."""

    def __init__(self, alike: Alike) -> None:
        self._alike = alike
        self._known: set[object] = set()
        self._moves: dict[str, frozenset[tuple[str, float]]] = {}

    def knows(self, path: str, candidate: float) -> bool:
        """Whether the same move was in vain where the same leaves had been moved."""
        leaf = self._alike.get(path)
        return leaf is not None and self._move(leaf, candidate) in self._known

    def add(self, path: str, candidate: float) -> None:
        """A move was in vain."""
        leaf = self._alike.get(path)
        if leaf is not None:
            self._known.add(self._move(leaf, candidate))

    def moved(self, path: str, candidate: float) -> None:
        """A leaf has been moved: what was in vain may no longer be."""
        self._known.clear()
        leaf = self._alike.get(path)
        if leaf is not None:
            others = dict(self._moves.get(leaf.channel, ()))
            self._moves[leaf.channel] = frozenset({**others, leaf.field: candidate}.items())

    def _move(self, leaf: Leaf, candidate: float) -> object:
        return leaf.group, self._moves.get(leaf.channel), leaf.field, candidate


def _tries(
    leaves: Mapping[str, Value],
    ends: Mapping[str, tuple[float, float]],
    adverse: int,
    nominal: float,
) -> dict[str, tuple[float, ...]]:
    """Both ends of each leaf, and its nominal value where that alone was the worst."""
    return {
        path: (leaf.lo, leaf.hi, leaf.nominal)
        if adverse * nominal > max(adverse * end for end in ends[path])
        else (leaf.lo, leaf.hi)
        for path, leaf in leaves.items()
    }


def _is_named(path: str, names: tuple[str, ...]) -> bool:
    return any(path == name or path.endswith(f".{name}") for name in names)


def _search_inside(
    node: Node, corner: dict[str, float], path: str, adverse: int
) -> dict[str, float]:
    """Scan one leaf's range, then narrow down on the worst point by golden sections.

    These take it that there is one peak between two points of the scan: an end from which the
    figure gets better at once is that peak.
    """
    leaf = node.leaves[path]
    step = (leaf.hi - leaf.lo) / (SCAN_POINTS - 1)

    def bad(x: float) -> float:
        return adverse * float(node.moved(Moved(corner, path, x)))

    scanned = {x: bad(x) for x in (leaf.lo + step * n for n in range(SCAN_POINTS))}
    worst = max(scanned, key=scanned.__getitem__)
    low, high = max(leaf.lo, worst - step), min(leaf.hi, worst + step)
    beside = worst + (NEAR_BY * step if worst == low else -NEAR_BY * step)
    if worst in (low, high) and bad(beside) < scanned[worst]:
        return Moved(corner, path, worst).corner()
    left, right = high - GOLDEN * (high - low), low + GOLDEN * (high - low)
    at_left, at_right = bad(left), bad(right)
    for _ in range(GOLDEN_STEPS):
        if at_left > at_right:
            high, right, at_right = right, left, at_left
            left = high - GOLDEN * (high - low)
            at_left = bad(left)
        else:
            low, left, at_left = left, right, at_right
            right = low + GOLDEN * (high - low)
            at_right = bad(right)
    best = max((worst, (low + high) / 2), key=bad)
    return Moved(corner, path, best).corner()


def _shares(ends: Mapping[str, tuple[float, float]]) -> dict[str, float]:
    spans = {path: abs(high - low) for path, (low, high) in ends.items()}
    total = sum(spans.values())
    if not 0.0 < total < float("inf"):
        return {}
    return {path: span / total for path, span in spans.items()}
