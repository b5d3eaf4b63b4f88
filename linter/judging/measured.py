"""What was measured on boards, held against what the model computes under the same conditions.

A figure is compared only where the conditions on which it depends are given and are those of
the spec; the model is then computed at them.  Where it differs, single values that would
explain it are looked for.  A reading without uncertainty counts as good to 2 %, or 2 K (common
practice, no source), and so does a condition.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from datetime import date
from functools import cache
from importlib import import_module
from importlib.util import find_spec
from math import isfinite
from typing import Literal

from ..check import Scope
from ..declare import PRODUCT
from ..evaluation.catalogue import Catalogue
from ..evaluation.gap import Gap
from ..evaluation.graph import Graph
from ..evaluation.node import FigureError, LeafNode, Node
from ..evaluation.tolerance import worst_case
from ..measurable import Measurable
from ..quantities.quantity import QuantityError, Value, parse, show, spell
from ..reading.loading import Measurement, Spec
from .days import day_of, still_to_come
from .doubt import Held, doubt_of
from .explained import Explanation, explanations
from .modelled import Figure, as_printed, model_of, node_of
from .nearest import near

Answer = Literal["agrees", "part only", "differs", "not compared", "unreadable"]
SAME = 0.02
SAME_KELVIN = 2.0
MOST = 200


@dataclass(frozen=True, slots=True)
class Compared:
    """A measurement and what becomes of it.

    ``part only``: the spec leaves out terms of the sum, and more was measured than it gives.
    band: what the model gives over all tolerances, infinite on a side that nobody prints.
    why: why nothing is compared;
    explanations: single values that would make the model agree, the likeliest first.
    pins: what the model was set to, None where the conditions are not its own.
    firm: whether the band leans on no worst case and no rule of thumb in place of silence.
    doubt: what of the spec speaks against it: the known terms of an incomplete sum add up to
        more, and nothing left out explains it; it is far below what is computed; or beyond what
        a board can give.
    without: conditions of the spec that a bench lacks, and this reading too.
    """

    of: Measurement
    answer: Answer
    figure: Figure | None = None
    read: Value | None = None
    band: tuple[float, float] | None = None
    nominal: float | None = None
    why: str = ""
    explanations: tuple[Explanation, ...] = ()
    pins: Mapping[str, object] | None = None
    firm: bool = True
    doubt: str = ""
    without: tuple[str, ...] = ()

    @property
    def is_compared(self) -> bool:
        """Whether there is a figure of the model to compare with."""
        return self.band is not None

    def ends_beyond(self) -> tuple[float, ...]:
        """The ends of the reading of which the model says nothing yet.

        Where it agrees with the model, what its own uncertainty adds convicts nobody; the bare
        reading does, where it lies beyond what the model gives.
        """
        assert self.read is not None
        low, high = self.band or (0.0, 0.0)
        ends = (self.read.lo, self.read.hi)
        if self.answer == "agrees":
            if self.firm and isfinite(low) and isfinite(high):
                bare = self.read.nominal
                return () if low <= bare <= high else (bare,)
            ends = (max(low, self.read.lo), min(high, self.read.hi))
        return tuple(dict.fromkeys(ends))


@cache
def measurable_in(packages: tuple[str, ...]) -> Mapping[str, Measurable]:
    """The figures that rules packages call measurable, by name."""
    modules = [f"{package}.measurable" for package in packages]
    known = (import_module(module).MEASURABLE for module in modules if find_spec(module))
    return {item.figure: item for items in known for item in items}


def comparisons(
    spec: Spec, catalogue: Catalogue, items: Iterable[Measurement], day: date | None = None
) -> tuple[Compared, ...]:
    """Every measurement against the model of a spec; day: that of the review, None for today."""
    day = day or date.today()
    found: list[Compared] = []
    for number, item in enumerate(items, 1):
        if number > MOST:
            why = f"{MOST} readings are compared at most"
            return (*found, Compared(item, "unreadable", why=why))
        why = _wrong_day(item.date or "", day)
        wrong = Compared(item, "unreadable", why=f"its date {why}")
        found.append(wrong if why else _compared(item, spec, catalogue))
    return tuple(found)


def _wrong_day(text: str, day: date) -> str:
    """What is wrong with the day of a reading, by the day of the review."""
    if text and day_of(text) is None:
        return f"{text} is no day of the calendar; write it as 2025-06-30"
    return still_to_come(text, day)


def _compared(item: Measurement, spec: Spec, catalogue: Catalogue) -> Compared:
    known = measurable_in(catalogue.packages)
    figure = figure_of(item, spec, catalogue, known)
    if isinstance(figure, str):
        return Compared(item, "unreadable", why=figure)
    try:
        meter = known[item.figure].meter
        read = _with_uncertainty(parse(item.value, figure.unit), figure.unit, meter)
    except QuantityError as error:
        return Compared(item, "unreadable", figure, why=f"value: {error}")
    graph = Graph(spec, catalogue.derived)
    try:
        pins = _pins(item, known[figure.name], graph, figure)
        if isinstance(pins, str):
            return Compared(item, "not compared", figure, read, why=pins)
        lacking = _lacking(item, known[figure.name], graph)
        found = _against(item, figure, read, pins | lacking, spec, catalogue)
        fields = known[figure.name].none_unless_told.items()
        return replace(found, without=tuple(x for x, (field, _) in fields if field in lacking))
    except FigureError as error:
        return Compared(item, "not compared", figure, read, why=f"not computed: {error}")


def _with_uncertainty(read: Value, unit: str, meter: float) -> Value:
    """A reading of which nobody says how sure it is counts as good to a few per cent."""
    if read.lo < read.hi:
        return read
    slack = SAME_KELVIN if unit == "degC" else meter * abs(read.nominal)
    return replace(read, lo=read.nominal - slack, hi=read.nominal + slack)


def figure_of(
    item: Measurement, spec: Spec, catalogue: Catalogue, known: Mapping[str, Measurable]
) -> Figure | str:
    """What a measurement is about, or why that cannot be told."""
    name, entry = item.figure, catalogue.entry(item.figure)
    if name not in known:
        hint = near(name, [*known])
        there = entry or name in catalogue.derived or name in spec.schema.fields
        what = "is known, but is none that is read off a board" if there else "is not known"
        return f"{name} {what}{hint}"
    each, unit, meaning = told_of(name, catalogue)
    where = spec.channels if each == "channel" else (PRODUCT,)
    place = item.place or (where[0] if len(where) == 1 else "")
    if place not in where:
        return f"{name}: place is {' or '.join(where) or 'the name of a channel'}"
    return Figure(name, place, unit, meaning.partition(";")[0])


def told_of(name: str, catalogue: Catalogue) -> tuple[Scope, str, str]:
    """Of a measurable figure: whether it belongs to a channel, its unit, what it is."""
    entry = catalogue.entry(name)
    if entry is not None:
        return entry.check.each, entry.check.unit, entry.check.title
    if name in catalogue.derived:
        quantity = catalogue.derived[name]
        return quantity.each, quantity.unit, quantity.meaning
    field = catalogue.schema.fields[name]
    each: Scope = "channel" if catalogue.schema.is_channel_path(name) else "product"
    return each, field.unit, field.meaning


def _pins(
    item: Measurement, known: Measurable, graph: Graph, figure: Figure
) -> dict[str, object] | str:
    """What the model has to be set to for the conditions, or why they are not its own."""
    pins: dict[str, object] = {}
    for name, paths in known.conditions.items():
        value = item.conditions.get(name)
        if value is None:
            return f"{name} is not given, on which this figure depends"
        schema, derived = graph.spec.schema, graph.derived
        of_channel = any(
            derived[path].each == "channel" if path in derived else schema.is_channel_path(path)
            for path in paths
        )
        one = (figure.channel,) if figure.channel else graph.spec.channels
        for channel in one if of_channel else (None,):
            found = _pin(name, value, paths, graph, channel)
            if isinstance(found, str):
                return found
            pins |= found
    return pins


def _lacking(item: Measurement, known: Measurable, graph: Graph) -> dict[str, object]:
    """What the spec has and the bench had less of, by field, as it was on the bench."""
    lacking: dict[str, object] = {}
    for name, (path, quantity) in known.none_unless_told.items():
        node, told = graph.resolve(quantity, None), item.conditions.get(name)
        had = told.nominal if told else 0.0
        if isinstance(node, Node) and had < (1 - SAME) * worst_case(node, 1).figure:
            lacking[path] = spell(Value(had, had, had), graph.fields[path].unit)
    return lacking


def _pin(
    name: str, value: Value, paths: tuple[str, ...], graph: Graph, channel: str | None
) -> dict[str, object] | str:
    """One condition in one channel: what the model is set to, where the spec allows it."""
    for path in paths:
        node = graph.resolve(path, channel)
        if isinstance(node, Gap):
            continue
        unit = graph.derived[path].unit if path in graph.derived else graph.fields[path].unit
        low, high = worst_case(node, -1).figure, worst_case(node, 1).figure
        slack = SAME_KELVIN if unit == "degC" else SAME * abs(value.nominal)
        has = show(low, unit) if low == high else f"{show(low, unit)} .. {show(high, unit)}"
        if value.hi - value.lo > 2 * slack * (1 + 1e-9):
            width = f"{show(value.lo, unit)} .. {show(value.hi, unit)}"
            return f"{name} is {width}, of which one reading says nothing: it needs one {name}"
        if value.hi < low - slack or value.lo > high + slack:
            return f"measured at {name} {show(value.nominal, unit)}; the model has {has}"
        if isinstance(node, LeafNode) and node.path in graph.spec.values:
            leaf = node.path
        elif path in graph.fields:
            leaf = graph.full(path, channel)
        elif high - low > 2 * slack:
            return f"the model has {name} {has} and cannot be set to {show(value.nominal, unit)}"
        else:
            return {}
        return {leaf: spell(Value(*(value.nominal,) * 3), unit)}
    return f"the spec does not give {name}, so that the conditions cannot be compared"


def _against(
    item: Measurement,
    figure: Figure,
    read: Value,
    pins: Mapping[str, object],
    spec: Spec,
    catalogue: Catalogue,
) -> Compared:
    """A measurement against the band that the model gives under its conditions."""
    model = model_of(spec, catalogue, figure, pins)
    node = model.node
    if isinstance(node, Gap):
        names = ", ".join(x.path.rpartition(".")[2] for x in node.missing[:4])
        why = f"the model lacks {names}" if names else "the spec gives nothing to compare it with"
        return Compared(item, "not compared", figure, read, why=why, pins=pins)
    low, high = model.ends()
    slack = 1e-9 * max(abs(low), abs(high))
    low, high = as_printed(node, low, high, spec)
    firm = not any(x.leaning == "adverse" or x.placeholder for x in node.assumed)
    done = (figure, read, (low, high), float(node.value()))
    if read.lo <= high + slack and read.hi >= low - slack:
        return Compared(item, "agrees", *done, pins=pins, firm=firm)

    def plan(other: Graph) -> Node | Gap:
        return node_of(other, catalogue, figure)

    found = explanations(model.graph, plan, read.nominal, frozenset(pins))
    if model.is_computed:  # what was measured does not explain itself
        found = tuple(x for x in found if x.path != model.place)
    floored = {x.path for x in node.assumed if x.leaning == "floor"}
    part = any(x.path in floored - {model.place} for x in found)
    answer: Answer = "part only" if part else "differs"
    known = measurable_in(catalogue.packages)[figure.name]
    doubt = doubt_of(Held(item, read, figure, known), model, bool(floored) and not part)
    return Compared(item, answer, *done, explanations=found, pins=pins, firm=firm, doubt=doubt)
