"""From names to values: a graph of leaves and derived quantities for one spec.

A name resolves to a ``Node`` that can be evaluated at any corner of the tolerances, or to
a ``Gap`` that says what is missing.  Which way leads to a derived quantity depends only
on what the spec states, so the graph is planned once and evaluated many times.
"""

from collections.abc import Mapping

from ..check import Arguments, Assumption, Constant, Derived, Way, Words
from ..declare import CHANNELS
from ..finding import Assumed, Missing
from ..quantities.quantity import Value, show, to_si
from ..reading.loading import Spec
from .affected import Affected
from .gap import Gap, best, united
from .known import Key, Known
from .leaves import CatalogueFaultError, Leaves, tuple_of
from .node import Fixed, LeafNode, Node
from .nodes import Nodes
from .share import shared
from .variants import Variants

UNUSED: frozenset[str] = frozenset()


class Graph:
    """Names to nodes for one spec."""

    def __init__(
        self,
        spec: Spec,
        derived: Mapping[str, Derived],
        sure: bool = False,
        free: frozenset[str] = frozenset(),
        known: Known | None = None,
        nodes: Nodes | None = None,
    ) -> None:
        """Plan for ``spec``.

        sure: go without adverse assumptions and placeholders.  free: leaves that a corner
        may override although they have no tolerance.  known: what is resolved already.
        nodes: those of all graphs of one review.
        """
        self.spec = spec
        self.fields = spec.schema.fields
        self.derived = derived
        self.nodes = nodes or Nodes()
        self.leaves = Leaves(spec, sure, free, self.nodes)
        self.known = known or Known()
        self._stack: list[str] = []
        self._variants: Variants[Graph] = Variants()

    def freed(self, free: frozenset[str]) -> "Graph":
        """A graph of the same spec in which a corner may override these leaves as well."""
        known = self.known.where(lambda _, x: isinstance(x, Gap) or not x.used & free)
        return Graph(self.spec, self.derived, self.leaves.sure, free, known, self.nodes)

    def supposing(self, values: Mapping[str, Value | str]) -> "Graph":
        """A graph of the same spec in which values stand in for silent or assumed leaves."""
        return self._variants.of(values, self._supposing)

    def _supposing(self, values: Mapping[str, Value | str]) -> "Graph":
        hangs = {*values, *self.derived}

        def stands(_: Key, found: Node | Gap) -> bool:
            return isinstance(found, Node) and not any(x.path in hangs for x in found.assumed)

        graph = Graph(self.spec, self.derived, known=self.known.where(stands), nodes=self.nodes)
        graph.leaves.supposed = dict(values)
        return graph

    def revised(self, spec: Spec, change: Affected, nodes: Nodes | None = None) -> "Graph":
        """A graph of a changed spec; what the change cannot alter is taken over."""

        def stands(key: Key, found: Node | Gap) -> bool:
            used = found.used if isinstance(found, Node) else UNUSED
            return not change.alters(key[0], used)

        known, made = self.known.where(stands), nodes or self.nodes
        graph = Graph(spec, self.derived, self.leaves.sure, known=known, nodes=made)
        graph.leaves.supposed = self.leaves.supposed
        graph._variants = self._variants.revised(spec, change, made)
        return graph

    def resolve(
        self, path: str, channel: str | None, default: Assumption | None = None
    ) -> Node | Gap:
        """The node behind a path as a check or a way writes it."""
        if path.startswith("all "):
            return self._over_channels(path[4:], default)
        if path == "channel_index":
            return self.nodes.fixed(float(self.spec.channels.index(channel or "")))
        if path == "channel_count":
            return self.nodes.fixed(float(len(self.spec.channels)))
        if "[]" in path:
            return self.leaves.items(path, channel)
        if ":" in path:
            return self._end_of_range(path, channel, default)
        field = self.fields.get(path)
        if field is None and path not in self.derived:
            raise CatalogueFaultError(f"{path} is neither a field nor a derived quantity")
        key = (path, channel)
        if field is None:
            found = self._derived(path, channel)
        elif field.kind in ("section", "sections"):
            found = self.leaves.section(path, channel, field)
        else:
            found = self.known.get(key) or self.known.add(
                key, self.leaves.leaf(path, channel, field)
            )
        return self._fall_back(found, path, channel, default)

    def arguments(self, inputs: Arguments, channel: str | None) -> dict[str, Node] | Gap:
        """Every argument of a figure, or one gap that unites what is missing."""
        nodes: dict[str, Node] = {}
        gaps: list[Gap] = []
        for name, item in inputs.items():
            if isinstance(item, Constant):
                nodes[name] = self.nodes.fixed(to_si(item.value))
                continue
            found = self.resolve(item.path, channel, item.default)
            if isinstance(found, Node):
                nodes[name] = found
            elif found.absent:
                return found
            else:
                gaps.append(found)
        return united(gaps) if gaps else nodes

    def matches(self, words: Mapping[str, Words], channel: str | None) -> bool | Gap:
        """Whether word-valued paths have one of the words asked for.

        A gap where a word is silent, or where only an assumed word is another one.
        """
        gap: Gap | None = None
        assumed: tuple[Missing, ...] = ()
        for path, allowed in words.items():
            found = self.resolve(path, channel)
            if isinstance(found, Gap):
                if found.absent:
                    return False
                gap = gap or found
            elif found.value() not in ((allowed,) if isinstance(allowed, str) else allowed):
                asked = self.leaves.assumed_words(found)
                if not asked:
                    return False
                assumed = assumed or asked
        return Gap(assumed, assumed=True) if assumed else gap or True

    def follows(self, name: str, channel: str | None) -> Node | Gap:
        """A derived quantity as it follows from the rest, whatever the spec states."""
        return self._walk(self.derived[name], channel)

    def full(self, path: str, channel: str | None) -> str:
        """The path from the root of the spec."""
        return self.leaves.full(path, channel)

    def asked(self, path: str, channel: str | None) -> tuple[Missing, ...]:
        """What to ask for in place of an assumption about a leaf or a derived quantity."""
        if path not in self.derived:
            field = self.spec.schema.field_of(path)
            return (Missing(path, field.unit, field.meaning, field.example),)
        scope = self.derived[path].each == "channel" and channel is None
        names = self.spec.channels if scope else (channel,)
        found = [gap for name in names for gap in self._gaps(self.derived[path], name)]
        return tuple(missing for gap in found for missing in gap.missing)

    def _gaps(self, quantity: Derived, channel: str | None) -> list[Gap]:
        """What the ways that assume nothing lack, or all of them where none can be walked."""
        found = self._derived(quantity.name, channel)
        if isinstance(found, Gap):
            return [found]
        ways = [way for way in quantity.ways if not way.assumes]
        fits = [(self.matches(way.when, channel), way) for way in ways]
        lacks = (
            x if x is not True else self.arguments(way.inputs, channel) for x, way in fits if x
        )
        return [gap for gap in lacks if isinstance(gap, Gap)][:1]

    def _fall_back(
        self, found: Node | Gap, path: str, channel: str | None, default: Assumption | None
    ) -> Node | Gap:
        if isinstance(found, Node):
            assumed_by_field = isinstance(found, LeafNode | Fixed) and not found.used
            if default is None or not (assumed_by_field and found.assumed):
                return found
            if path in self.spec.defaults:
                return found
        if default is None:
            return found
        silent = not (isinstance(found, Gap) and found.absent)
        unit = self.fields[path].unit if path in self.fields else self.derived[path].unit
        return self.leaves.assumed(path, channel, default, unit, silent)

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
            return Gap(
                (Missing(CHANNELS, "1", "at least one channel", self.spec.schema.one_channel()),)
            )
        return self.nodes.computed(f"all {path}", tuple_of, nodes)

    def _end_of_range(
        self, path: str, channel: str | None, default: Assumption | None
    ) -> Node | Gap:
        """``band:low``, ``band:high``, ``voltage:nominal``: one number of a range or tolerance."""
        leaf, _, end = path.partition(":")
        found = self.resolve(leaf, channel)
        if not isinstance(found, LeafNode):
            return found
        if found.path in self.leaves.supposed:
            return self.leaves.end_of(found.path, end)
        stated = found.stated
        ends = {"low": ("min", stated.lo), "high": ("max", stated.hi)}
        side, number = ends.get(end, ("typ", stated.nominal))
        if side != "typ" and stated.form == "line" and side not in stated.sides:
            return Gap((self.leaves.missing(leaf, channel, self.fields[leaf]),))
        one_end = self.nodes.fixed(number, found.used, found.assumed)
        return self._fall_back(one_end, leaf, channel, default)

    def _derived(self, name: str, channel: str | None) -> Node | Gap:
        quantity = self.derived[name]
        where = channel if quantity.each == "channel" else None
        if quantity.each == "channel" and channel is None:
            raise CatalogueFaultError(f"{name} belongs to a channel, but no channel is at hand")
        key = (name, where)
        found = self.known.get(key)
        if found is None:
            if name in self._stack:
                raise CatalogueFaultError(f"in a circle: {' -> '.join([*self._stack, name])}")
            self._stack.append(name)
            try:
                found = self._stated(quantity, where) or self._walk(quantity, where)
            finally:
                self._stack.pop()
            self.known.add(key, found)
        return found

    def _stated(self, quantity: Derived, channel: str | None) -> Node | None:
        path = quantity.stated_at
        full = self.leaves.full(path, channel) if path else ""
        supposed = full in self.leaves.supposed and isinstance(self._walk(quantity, channel), Node)
        if path is None or not (full in self.spec.values or supposed):
            return None
        found = self.leaves.leaf(path, channel, self.fields[path])
        return found if isinstance(found, Node) else None

    def _walk(self, quantity: Derived, channel: str | None) -> Node | Gap:
        gaps: list[Gap] = []
        for way in quantity.ways:
            fits = self.matches(way.when, channel)
            if fits is False or (way.assumes and self.leaves.is_unsure(way.assumes)):
                continue
            found = fits if isinstance(fits, Gap) else self.arguments(way.inputs, channel)
            if not isinstance(found, Gap):
                return self._on_way(quantity, way, found, channel)
            gaps.append(found)
        if gaps:
            return best(gaps)
        path = quantity.stated_at
        if path is not None and not self.leaves.none_above(self.leaves.full(path, channel)):
            return Gap((self.leaves.missing(path, channel, self.fields[path]),))
        return Gap(absent=f"{quantity.name} does not exist in this design")

    def _on_way(
        self, quantity: Derived, way: Way, nodes: dict[str, Node], channel: str | None
    ) -> Node:
        by_house = self.leaves.by_house(self.resolve(path, channel) for path in way.when)
        node = self.nodes.computed(quantity.name, way.figure, nodes, by_house, way)
        if way.assumes is None:
            return node
        where = quantity.stated_at or quantity.name
        path = self.leaves.full(where, channel) if where in self.fields else where
        if path in self.leaves.supposed:  # what may be stated, in place of what is assumed
            stand = self.leaves.supposed[path]
            if path == quantity.name and isinstance(stand, Value):
                return shared(node, way, stand, self.nodes)
            supposed = self.leaves.leaf(where, channel, self.fields[where])
            return supposed if isinstance(supposed, Node) else node
        value = node.value()
        text = value if isinstance(value, str) else show(value, quantity.unit)
        why = way.assumes
        assumed = (*by_house, Assumed(path, text, why.leaning, why.basis, why.placeholder))
        return self.nodes.computed(quantity.name, way.figure, nodes, assumed, way)
