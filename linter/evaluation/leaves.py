"""The leaves of a spec as nodes: stated, assumed, or a gap that names what is missing."""

from collections.abc import Iterable, Mapping
from sys import intern

from ..check import Assumption, Source
from ..declare import Field, field_path, usual_bounds
from ..finding import Assumed, Missing
from ..quantities.quantity import Value, parse
from ..reading.loading import Spec
from .gap import Gap
from .node import Node
from .nodes import Nodes

STATED_ESTIMATE = Source("called an estimate in the spec", kind="common practice")


class CatalogueFaultError(Exception):
    """The catalogue contradicts itself: an unknown name, or quantities in a circle."""


def tuple_of(*items: object) -> tuple[object, ...]:
    """Several values as one, in the order given."""
    return items


class Leaves:
    """Reads leaves and sections of one spec for the graph."""

    def __init__(self, spec: Spec, sure: bool, free: frozenset[str], nodes: Nodes) -> None:
        """Read ``spec``; ``supposed`` stands in for silent leaves, by full path."""
        self.spec = spec
        self.schema = spec.schema
        self.sure = sure
        self.nodes = nodes
        self.free = free
        self.supposed: Mapping[str, Value | str] = {}

    def full(self, path: str, channel: str | None) -> str:
        """The path from the root of the spec."""
        if not self.schema.is_channel_path(path):
            return path
        if channel is None:
            raise CatalogueFaultError(f"{path} belongs to a channel, but no channel is at hand")
        return intern(f"channels.{channel}.{path}")

    def missing(self, path: str, channel: str | None, field: Field) -> Missing:
        """What to ask for when a leaf is silent."""
        return Missing(self.full(path, channel), field.unit, field.meaning, field.example)

    def assumed(
        self, path: str, channel: str | None, assumption: Assumption, unit: str, silent: bool
    ) -> Node | Gap:
        """An assumption as a node; ``silent`` where it stands in for silence."""
        full = self.full(path, channel) if path in self.schema.fields else path
        if silent and self.is_unsure(assumption):
            return Gap((Missing(full, unit, "only assumed", ""),))
        value = assumption.value
        made = Assumed(
            full, str(value), assumption.leaning, assumption.basis, assumption.placeholder
        )
        assumed = (made,) if silent else ()
        if isinstance(value, str) and unit not in ("word", "set"):
            return self._node(full, parse(value, unit), assumed, real=False)
        return self.nodes.fixed(value, assumed=assumed)

    def is_unsure(self, assumed: Assumption) -> bool:
        """Whether a graph of sure values goes without this assumption."""
        return self.sure and (assumed.leaning == "adverse" or assumed.placeholder)

    def leaf(self, path: str, channel: str | None, field: Field) -> Node | Gap:
        """A leaf: stated, else assumed by its field's default, else a gap."""
        full = self.full(path, channel)
        stated = self.spec.values.get(full)
        if self.sure and isinstance(stated, Value) and stated.provenance == "estimate":
            return Gap((self.missing(path, channel, field),))
        if isinstance(stated, Value):
            return self._node(full, stated, _estimate(full, stated), real=True)
        if stated is not None:
            return self.nodes.fixed(stated, frozenset({full}))
        barrier = self.none_above(full)
        if barrier:
            return Gap(absent=barrier, none=barrier)
        unsaid = self._absent_above(path, channel)
        if unsaid:
            return Gap(absent=unsaid)
        if full in self.supposed:
            return self._supposed(full)
        default = self.spec.defaults.get(path, field.default)
        if default is not None:
            unit = "word" if field.kind in ("word", "flag", "text") else field.unit
            return self.assumed(path, channel, default, unit, silent=True)
        if path in self.schema.voluntary:
            return Gap(absent=full, unclaimed=True)
        return Gap((self.missing(path, channel, field),))

    def assumed_words(self, node: Node) -> tuple[Missing, ...]:
        """The fields to ask for where a word is only assumed, unless silence means absence."""
        paths = [item.path for item in node.assumed if item.leaning != "absent"]
        known = [path for path in paths if field_path(path) in self.schema.fields]
        if node.used or len(known) < len(node.assumed):
            return ()
        fields = [self.schema.field_of(path) for path in known]
        return tuple(
            Missing(path, field.unit, field.meaning, field.example)
            for path, field in zip(known, fields, strict=True)
        )

    def _supposed(self, full: str) -> Node:
        stand = self.supposed[full]
        if isinstance(stand, Value):
            return self.nodes.leaf(full, stand, (), real=False, moving=True)
        return self.nodes.fixed(stand)

    def end_of(self, full: str, end: str) -> Node:
        """One end of what is supposed: of a range a leaf of its own, with the usual ends."""
        field = self.schema.field_of(full)
        stand = usual_value(field, upper_end=end == "high")
        if field.given != "range" or end == "nominal" or stand is None:
            return self._supposed(full)
        return self.nodes.leaf(f"{full}:{end}", stand, (), real=False, moving=True)

    def _node(self, path: str, stated: Value, assumed: tuple[Assumed, ...], real: bool) -> Node:
        return self.nodes.leaf(path, stated, assumed, real, moving=path in self.free)

    def section(self, path: str, channel: str | None, field: Field) -> Node | Gap:
        """A section as one of the words ``fitted`` and ``none``."""
        full = self.full(path, channel)
        if self.none_above(full):
            return self.nodes.fixed("none", frozenset({full}))
        if full in self.spec.sections:
            return self.nodes.fixed("fitted", frozenset({full}))
        if field.default is not None:
            return self.assumed(path, channel, field.default, "word", silent=True)
        return Gap((self.missing(path, channel, field),))

    def none_above(self, full: str) -> str:
        """The section stated ``none`` that holds this path, if any."""
        parts = full.split(".")
        for end in range(len(parts), 0, -1):
            above = ".".join(parts[:end])
            if above in self.spec.none:
                return above
        return ""

    def _absent_above(self, path: str, channel: str | None) -> str:
        """The section above a leaf that the spec is silent about, where that means absence."""
        above, _, _ = path.rpartition(".")
        while above:
            field = self.schema.fields.get(above.removesuffix("[]"))
            default = field.default if field is not None else None
            full = self.full(above, channel)
            if default is not None and default.value == "none" and full not in self.spec.sections:
                return full
            above, _, _ = above.rpartition(".")
        return ""

    def by_house(self, found: Iterable[Node | Gap]) -> tuple[Assumed, ...]:
        """What only a default of the house gives, of the words that chose a way."""
        defaults = self.spec.defaults
        if not defaults:
            return ()
        nodes = [item for item in found if isinstance(item, Node)]
        return tuple(x for item in nodes for x in item.assumed if field_path(x.path) in defaults)

    def items(self, path: str, channel: str | None) -> Node | Gap:
        """``rungs[].r``: the values of a list of sections as a tuple."""
        section, _, leaf = path.partition("[].")
        full = self.full(section, channel)
        count = self.spec.lists.get(full, 0)
        if not count:
            return Gap((self.missing(path, channel, self.schema.fields[path]),))
        nodes: dict[str, Node] = {}
        for number in range(count):
            item = f"{full}[{number}].{leaf}"
            stated = self.spec.values.get(item)
            if not isinstance(stated, Value):
                field = self.schema.fields[path]
                return Gap((Missing(item, field.unit, field.meaning, field.example),))
            nodes[f"item{number}"] = self._node(item, stated, _estimate(item, stated), real=True)
        return self.nodes.computed(path, tuple_of, nodes)


def usual_value(field: Field, upper_end: bool = False) -> Value | None:
    """The usual range of a field, or of its upper end, as a value that stands for all of it."""
    found = usual_bounds(field, upper_end) if field.kind in ("quantity", "count") else None
    if found is None:
        return None
    low, high = found
    middle = (low * high) ** 0.5 if low > 0.0 else (low + high) / 2
    if field.kind == "count":
        middle = float(round(middle))
    return Value(0.0 if field.zero else low, middle, high, "range")


def _estimate(path: str, stated: Value) -> tuple[Assumed, ...]:
    """A value that the spec itself calls an estimate counts as an assumption."""
    if stated.provenance != "estimate":
        return ()
    return (Assumed(path, f"{stated.text} (estimate)", "neutral", STATED_ESTIMATE, True),)
