"""From names to values: a graph of leaves and derived quantities for one spec.

A name resolves to a ``Node`` that can be evaluated at any corner of the tolerances, or to
a ``Gap`` that says what is missing.  Which way leads to a derived quantity depends only
on what the spec states, so the graph is planned once and evaluated many times.
"""

from collections.abc import Mapping
from typing import Any

from .check import Arguments, Assumption, Constant, Derived, Source, Way, Words
from .finding import Leaned, Missing
from .loading import Spec
from .node import Computed, Fixed, Gap, LeafNode, Node
from .quantity import Value, parse, show, to_si
from .spec import FIELDS, Field, field_of, is_channel_path

STATED_ESTIMATE = Source("called an estimate in the spec", kind="common practice")


class CatalogueFaultError(Exception):
    """The catalogue contradicts itself: an unknown name, or quantities in a circle."""


def _tuple_of(**items: Any) -> tuple[Any, ...]:
    return tuple(items.values())


class Graph:
    """Names to nodes for one spec."""

    def __init__(
        self,
        spec: Spec,
        derived: Mapping[str, Derived],
        sure: bool = False,
        free: frozenset[str] = frozenset(),
        base: "Graph | None" = None,
        changed: frozenset[str] = frozenset(),
    ) -> None:
        """Plan for ``spec``.

        sure: go without adverse assumptions and placeholders.  free: leaves that a corner
        may override although they have no tolerance.  base: a graph of the same spec but
        for the leaves ``changed``; what does not depend on these is taken over from it.
        """
        self.spec = spec
        self.derived = derived
        self.sure = sure
        self.free = free
        self._known: dict[tuple[str, str | None], Node | Gap] = {}
        if base is not None and all(path in base.spec.values for path in changed):
            self._known = {
                key: node
                for key, node in base._known.items()
                if isinstance(node, Node) and not node.used & changed
            }
        self._stack: list[str] = []

    def resolve(
        self, path: str, channel: str | None, default: Assumption | None = None
    ) -> Node | Gap:
        """The node behind a path as a check or a way writes it."""
        if path.startswith("all "):
            return self._over_channels(path[4:], default)
        if path == "channel_index":
            return Fixed(float(self.spec.channels.index(channel or "")))
        if path == "channel_count":
            return Fixed(float(len(self.spec.channels)))
        if "[]" in path:
            return self._over_items(path, channel)
        if ":" in path:
            return self._end_of_range(path, channel)
        field = FIELDS.get(path)
        if field is None and path not in self.derived:
            raise CatalogueFaultError(f"{path} is neither a field nor a derived quantity")
        key = (path, channel)
        if field is None:
            found = self._derived(path, channel)
        elif field.kind in ("section", "sections"):
            found = self._section(path, channel, field)
        else:
            if key not in self._known:
                self._known[key] = self._leaf(path, channel, field)
            found = self._known[key]
        return self._fall_back(found, path, channel, default)

    def arguments(self, inputs: Arguments, channel: str | None) -> dict[str, Node] | Gap:
        """Every argument of a figure, or one gap that unites what is missing."""
        nodes: dict[str, Node] = {}
        missing: dict[Missing, None] = {}
        for name, item in inputs.items():
            if isinstance(item, Constant):
                nodes[name] = Fixed(to_si(item.value))
                continue
            found = self.resolve(item.path, channel, item.default)
            if isinstance(found, Node):
                nodes[name] = found
            elif found.absent:
                return found
            else:
                missing |= dict.fromkeys(found.missing)
        return Gap(tuple(missing)) if missing else nodes

    def matches(self, words: Mapping[str, Words], channel: str | None) -> bool | Gap:
        """Whether word-valued paths have one of the words asked for."""
        gap: Gap | None = None
        for path, allowed in words.items():
            found = self.resolve(path, channel)
            if isinstance(found, Gap):
                if found.absent:
                    return False
                gap = gap or found
            elif found.value() not in ((allowed,) if isinstance(allowed, str) else allowed):
                return False
        return True if gap is None else gap

    def follows(self, name: str, channel: str | None) -> Node | Gap:
        """A derived quantity as it follows from the rest, whatever the spec states."""
        return self._walk(self.derived[name], channel)

    def full(self, path: str, channel: str | None) -> str:
        """The path from the root of the spec."""
        if not is_channel_path(path):
            return path
        if channel is None:
            raise CatalogueFaultError(f"{path} belongs to a channel, but no channel is at hand")
        return f"channels.{channel}.{path}"

    def missing(self, path: str, channel: str | None, field: Field) -> Missing:
        """What to ask for when a leaf is silent."""
        return Missing(self.full(path, channel), field.unit, field.meaning, field.example)

    def asked(self, path: str, channel: str | None) -> tuple[Missing, ...]:
        """What to ask for in place of an assumption about a leaf or a derived quantity."""
        if path not in self.derived:
            field = field_of(path)
            return (Missing(path, field.unit, field.meaning, field.example),)
        scope = self.derived[path].each == "channel" and channel is None
        names = self.spec.channels if scope else (channel,)
        found = [self._derived(path, name) for name in names]
        gaps = [item.missing for item in found if isinstance(item, Gap)]
        return tuple(missing for gap in gaps for missing in gap)

    def _fall_back(
        self, found: Node | Gap, path: str, channel: str | None, default: Assumption | None
    ) -> Node | Gap:
        if isinstance(found, Node):
            assumed_by_field = isinstance(found, LeafNode | Fixed) and not found.used
            if default is None or not (assumed_by_field and found.leaned):
                return found
        if default is None:
            return found
        silent = not (isinstance(found, Gap) and found.absent)
        unit = FIELDS[path].unit if path in FIELDS else self.derived[path].unit
        return self._assumed(path, channel, default, unit, silent)

    def _assumed(
        self, path: str, channel: str | None, assumed: Assumption, unit: str, silent: bool
    ) -> Node | Gap:
        full = self.full(path, channel) if path in FIELDS else path
        if silent and self._is_unsure(assumed):
            return Gap((Missing(full, unit, "only assumed", ""),))
        text = str(assumed.value)
        leaned: tuple[Leaned, ...] = ()
        if silent:
            leaned = (Leaned(full, text, assumed.leaning, assumed.basis, assumed.placeholder),)
        if isinstance(assumed.value, str) and unit not in ("word", "set"):
            return self._leaf_node(full, parse(assumed.value, unit), leaned, real=False)
        return Fixed(assumed.value, leaned=leaned)

    def _is_unsure(self, assumed: Assumption) -> bool:
        return self.sure and (assumed.leaning == "adverse" or assumed.placeholder)

    def _leaf(self, path: str, channel: str | None, field: Field) -> Node | Gap:
        full = self.full(path, channel)
        stated = self.spec.values.get(full)
        if self.sure and isinstance(stated, Value) and stated.provenance == "estimate":
            return Gap((self.missing(path, channel, field),))
        if isinstance(stated, Value):
            return self._leaf_node(full, stated, _estimate(full, stated), real=True)
        if stated is not None:
            return Fixed(stated, frozenset({full}))
        barrier = self._none_above(full)
        if barrier:
            return Gap(absent=barrier)
        if field.default is not None:
            unit = "word" if field.kind in ("word", "flag", "text") else field.unit
            return self._assumed(path, channel, field.default, unit, silent=True)
        return Gap((self.missing(path, channel, field),))

    def _leaf_node(
        self, path: str, stated: Value, leaned: tuple[Leaned, ...], real: bool
    ) -> LeafNode:
        return LeafNode(path, stated, leaned, real, moving=path in self.free)

    def _section(self, path: str, channel: str | None, field: Field) -> Node | Gap:
        full = self.full(path, channel)
        if self._none_above(full):
            return Fixed("none", frozenset({full}))
        if full in self.spec.sections:
            return Fixed("fitted", frozenset({full}))
        if field.default is not None:
            return self._assumed(path, channel, field.default, "word", silent=True)
        return Gap((self.missing(path, channel, field),))

    def _none_above(self, full: str) -> str:
        """The section stated ``none`` that holds this path, if any."""
        parts = full.split(".")
        for end in range(len(parts), 0, -1):
            above = ".".join(parts[:end])
            if above in self.spec.none:
                return above
        return ""

    def _over_channels(self, path: str, default: Assumption | None) -> Node | Gap:
        nodes: dict[str, Node] = {}
        missing: dict[Missing, None] = {}
        for number, channel in enumerate(self.spec.channels):
            found = self.resolve(path, channel, default)
            if isinstance(found, Node):
                nodes[f"item{number}"] = found
            elif found.absent:
                return found
            else:
                missing |= dict.fromkeys(found.missing)
        if missing:
            return Gap(tuple(missing))
        if not nodes:
            example = "channels: {main: {rated_power: 50 W}}"
            return Gap((Missing("channels", "1", "at least one channel", example),))
        return Computed(f"all {path}", _tuple_of, nodes)

    def _end_of_range(self, path: str, channel: str | None) -> Node | Gap:
        """``band:low`` or ``band:high``: one end of a range as a fixed number."""
        leaf, _, end = path.partition(":")
        found = self.resolve(leaf, channel)
        if not isinstance(found, LeafNode):
            return found
        number = found.stated.lo if end == "low" else found.stated.hi
        return Fixed(number, found.used, found.leaned)

    def _over_items(self, path: str, channel: str | None) -> Node | Gap:
        section, _, leaf = path.partition("[].")
        full = self.full(section, channel)
        count = self.spec.lists.get(full, 0)
        if not count:
            return Gap((self.missing(path, channel, FIELDS[path]),))
        nodes: dict[str, Node] = {}
        for number in range(count):
            item = f"{full}[{number}].{leaf}"
            stated = self.spec.values.get(item)
            if not isinstance(stated, Value):
                field = FIELDS[path]
                return Gap((Missing(item, field.unit, field.meaning, field.example),))
            nodes[f"item{number}"] = self._leaf_node(
                item, stated, _estimate(item, stated), real=True
            )
        return Computed(path, _tuple_of, nodes)

    def _derived(self, name: str, channel: str | None) -> Node | Gap:
        quantity = self.derived[name]
        where = channel if quantity.each == "channel" else None
        if quantity.each == "channel" and channel is None:
            raise CatalogueFaultError(f"{name} belongs to a channel, but no channel is at hand")
        key = (name, where)
        if key not in self._known:
            if name in self._stack:
                raise CatalogueFaultError(f"in a circle: {' -> '.join([*self._stack, name])}")
            self._stack.append(name)
            try:
                self._known[key] = self._stated(quantity, where) or self._walk(quantity, where)
            finally:
                self._stack.pop()
        return self._known[key]

    def _stated(self, quantity: Derived, channel: str | None) -> Node | None:
        path = quantity.stated_at
        if path is None or self.full(path, channel) not in self.spec.values:
            return None
        found = self._leaf(path, channel, FIELDS[path])
        return found if isinstance(found, Node) else None

    def _walk(self, quantity: Derived, channel: str | None) -> Node | Gap:
        gap: Gap | None = None
        for way in quantity.ways:
            fits = self.matches(way.when, channel)
            if fits is False or (way.assumes and self._is_unsure(way.assumes)):
                continue
            found = fits if isinstance(fits, Gap) else self.arguments(way.inputs, channel)
            if not isinstance(found, Gap):
                return self._on_way(quantity, way, found, channel)
            if gap is None or (gap.absent and not found.absent):
                gap = found
        if gap is not None:
            return gap
        path = quantity.stated_at
        if path is not None and not self._none_above(self.full(path, channel)):
            return Gap((self.missing(path, channel, FIELDS[path]),))
        return Gap(absent=f"{quantity.name} does not exist in this design")

    def _on_way(
        self, quantity: Derived, way: Way, nodes: dict[str, Node], channel: str | None
    ) -> Node:
        node = Computed(quantity.name, way.figure, nodes, way=way)
        if way.assumes is None:
            return node
        where = quantity.stated_at or quantity.name
        path = self.full(where, channel) if where in FIELDS else where
        value = node.value()
        text = value if isinstance(value, str) else show(value, quantity.unit)
        assumed = way.assumes
        leaned = Leaned(path, text, assumed.leaning, assumed.basis, assumed.placeholder)
        return Computed(quantity.name, way.figure, nodes, (leaned,), way)


def _estimate(path: str, stated: Value) -> tuple[Leaned, ...]:
    """A value that the spec itself calls an estimate counts as an assumption."""
    if stated.provenance != "estimate":
        return ()
    return (Leaned(path, f"{stated.text} (estimate)", "neutral", STATED_ESTIMATE, True),)
