"""The numbers of the pictures: nominal, and the worst case either way, as the checks find it."""

import importlib
import pkgutil
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import replace
from itertools import chain
from math import inf, isfinite
from typing import Any

from ..check import Input
from ..declare import PRODUCT
from ..evaluation.engine import Assessment
from ..evaluation.node import FigureError, Node
from ..evaluation.tolerance import worst_case
from ..evaluation.twins import Leaf
from ..finding import Assumed
from ..picture import Amount, Curve, Curves, Mark, Picture, Row, Scale, Shown, Span, Spot
from .drawn import Drawn, DrawnMark, DrawnRow, DrawnSpan, DrawnSpot, Line, Point
from .measured import Compared
from .readings import NOTE, Reading, readings_of

POINTS, IN_LANES = 61, 361
STRIDE = 5
MOST_CHANNELS = 4
Ys = tuple[float, ...]
NO_CORNER: Mapping[str, float] = {}


def pictures_of(run: Assessment, measured: Sequence[Compared] = ()) -> tuple[Drawn, ...]:
    """Every picture that has its numbers, of the first channels that differ, with readings."""
    first = dict.fromkeys(run.twins.first(name) for name in run.spec.channels)
    found = []
    for picture in declared(run.catalogue.packages):
        those = [PRODUCT] if picture.each == "product" else list(first)[:MOST_CHANNELS]
        for subject in those:
            alike = tuple(x for x in run.spec.channels if run.twins.first(x) == subject)
            subjects = alike or (subject,)
            readings = readings_of(measured, subjects)
            found.append(_Easel(run, subject, readings).drawn(picture, subjects))
    return tuple(drawn for drawn in found if drawn is not None)


def channels_left_out(run: Assessment) -> int:
    """How many channels differ from all that are drawn."""
    different = {run.twins.first(name) for name in run.spec.channels}
    return max(len(different) - MOST_CHANNELS, 0)


def declared(packages: Iterable[str]) -> Iterable[Picture]:
    """The pictures of rules packages, one a file, in the order that their folder gives."""
    for package in packages:
        root = importlib.import_module(package)
        if any(info.name == "pictures" for info in pkgutil.iter_modules(root.__path__)):
            for name in importlib.import_module(f"{package}.pictures").ORDER:
                yield importlib.import_module(f"{package}.pictures.{name}").PICTURE


class _Easel:
    """Draws one picture for one subject, and keeps what it leans on."""

    def __init__(
        self, run: Assessment, subject: str, readings: Mapping[str, tuple[Reading, ...]]
    ) -> None:
        self.run = run
        self.readings = readings
        self.channel = None if subject == PRODUCT else subject
        self.assumed: dict[Assumed, None] = {}
        self.notes: dict[str, None] = {}

    def drawn(self, picture: Picture, subjects: tuple[str, ...]) -> Drawn | None:
        """The picture, or None where it would say nothing."""
        if isinstance(picture, Scale):
            return self._scale(picture, subjects)
        return self._curves(picture, subjects)

    def _scale(self, picture: Scale, subjects: tuple[str, ...]) -> Drawn | None:
        rows = [row for row in map(self._row, picture.rows) if row.tells(picture)]
        if len(rows) < picture.least:
            return None
        return Drawn(picture, subjects, tuple(rows), notes=self._notes, assumed=self._leans)

    def _row(self, row: Row) -> DrawnRow:
        points = [self._point(shown) for shown in row.shown if not shown.measures]
        known = [point for point in points if point is not None]
        known += [
            Point(read.named(""), "measured", read.low, read.nominal, read.high)
            for shown in row.shown
            for read in self._read(shown.ways, shown.measures)
        ]
        return DrawnRow(row.label, tuple(dict.fromkeys(known)), row.aside)

    def _point(self, shown: Shown) -> Point | None:
        found = self._first(shown.ways)
        if found is None:
            return None
        amount, arguments = found
        node = self._node(amount.figure, arguments)
        with_ends = self._ends(node)
        if with_ends is None:
            return None
        self._keep(amount, [node])
        return Point(shown.label, shown.kind, *with_ends)

    def _curves(self, picture: Curves, subjects: tuple[str, ...]) -> Drawn | None:
        corner: Mapping[str, float] | None = NO_CORNER
        if picture.worst is not None:
            corner = self._worst(picture.worst)
        ends = tuple(self._value(x, corner or {}) for axis in (picture.x, picture.y)
                     for x in (axis.low, axis.high))  # fmt: skip
        if corner is None or ends[0] is None or ends[1] is None or not ends[0] < ends[1]:
            return None
        points = IN_LANES if picture.lanes else POINTS
        steps = _steps(ends[0], ends[1], points, picture.x.logarithmic)
        lines = [self._line(curve, steps, corner) for curve in picture.curves]
        known = tuple(line for line in lines if line is not None)
        if not known or (picture.lanes and len(known) < len(lines)):
            return None
        return Drawn(
            picture,
            subjects,
            lines=known,
            marks=tuple(self._marks(picture.marks, ends[0], ends[1])),
            spans=tuple(self._spans(picture.spans, corner)),
            spots=tuple(self._spots(picture.spots, ends[0], ends[1])),
            ends=(ends[0], ends[1], ends[2], ends[3]),
            notes=self._notes,
            assumed=self._leans,
        )

    def _line(
        self, curve: Curve, steps: Sequence[float], corner: Mapping[str, float]
    ) -> Line | None:
        found = self._first(curve.ways)
        if found is None or found[0].figure is None:
            return None
        amount, arguments = found
        fixed = self.run.nodes.fixed
        nodes = [self._node(amount.figure, {"x": fixed(x), **arguments}) for x in steps]
        try:
            y = tuple(float(node.value(corner)) for node in nodes)
            low, high = self._band(nodes, y) if curve.band and nodes[0].leaves else ((), ())
        except FigureError:
            return None
        if not all(map(isfinite, chain(low, y, high))):
            return None
        self._keep(amount, nodes[:1])
        return Line(curve.label, tuple(steps), y, low, high)

    def _band(self, nodes: Sequence[Node], y: Ys) -> tuple[Ys, Ys]:
        """The worst case either way at each place, among the corners of every few of them."""
        corners: list[Mapping[str, float]] = []
        for node in nodes[::STRIDE]:
            alike = self._alike(node)
            for adverse in (-1, 1):
                corner = dict(worst_case(node, adverse, alike=alike).corner)
                if corner not in corners:
                    corners.append(corner)
        values = [[float(node.value(corner)) for corner in corners] for node in nodes]
        low = tuple(min(at, *there) for at, there in zip(y, values, strict=True))
        return low, tuple(max(at, *there) for at, there in zip(y, values, strict=True))

    def _marks(self, marks: Iterable[Mark], low: float, high: float) -> Iterable[DrawnMark]:
        """The marks that lie on the picture, with what was read of them."""
        for mark in marks:
            values = (self._value(way, {}) for way in mark.ways if not mark.measures)
            value = next((x for x in values if x is not None), inf)
            found = [DrawnMark(mark.label, mark.axis, value, mark.kind)]
            found += [
                DrawnMark(read.named(mark.label), mark.axis, read.nominal, "measured")
                for read in self._read(mark.ways, mark.measures)
            ]
            for item in found:
                if isfinite(item.value) and (mark.axis == "y" or low <= item.value <= high):
                    yield item

    def _spots(self, spots: Iterable[Spot], low: float, high: float) -> Iterable[DrawnSpot]:
        """The points that lie on the picture."""
        for spot in spots:
            x = self._value(spot.x, {})
            if x is None or not low <= x <= high:
                continue
            y = None if spot.measures else self._value(spot.y, {})
            if y is not None:
                yield DrawnSpot(spot.label, x, y, y, y, spot.kind)
            for read in self._read((spot.y,), spot.measures):
                ends = (read.low, read.nominal, read.high)
                yield DrawnSpot(read.named(spot.label), x, *ends, "measured")

    def _read(self, ways: Iterable[Amount], measures: str) -> Iterable[Reading]:
        """What was read of a number, as it is or as its way takes it."""
        found = self._first(ways)
        name = "" if found is None else measures or _path(found[0])
        for read in self.readings.get(name, ()):
            assert found is not None
            self.notes[NOTE] = None
            figure = found[0].figure
            if figure is None:
                yield read
                continue
            fixed = self.run.nodes.fixed
            nodes = (self._node(figure, {"read": fixed(x), **found[1]})
                     for x in (read.low, read.nominal, read.high))  # fmt: skip
            low, nominal, high = (float(node.value()) for node in nodes)
            yield replace(read, low=min(low, high), nominal=nominal, high=max(low, high))

    def _spans(self, spans: Iterable[Span], corner: Mapping[str, float]) -> Iterable[DrawnSpan]:
        for span in spans:
            low, high = self._value(span.low, corner), self._value(span.high, corner)
            if low is None or high is None:
                continue
            if low <= high:
                yield DrawnSpan(span.label, low, high, False)
            elif span.turned:
                yield DrawnSpan(span.turned, high, low, True)

    def _first(self, ways: Iterable[Amount]) -> tuple[Amount, dict[str, Node]] | None:
        """The first way that can be computed, with its arguments."""
        graph = self.run.graph
        for amount in ways:
            if graph.matches(amount.when, self.channel) is True:
                arguments = graph.arguments(amount.inputs, self.channel)
                if isinstance(arguments, dict):
                    return amount, arguments
        return None

    def _node(self, figure: Callable[..., Any] | None, arguments: dict[str, Node]) -> Node:
        if figure is None:
            return next(iter(arguments.values()))
        return self.run.nodes.computed("picture", figure, arguments)

    def _value(self, amount: Amount | None, corner: Mapping[str, float]) -> float | None:
        found = None if amount is None else self._first([amount])
        if found is None:
            return None
        try:
            value = float(self._node(found[0].figure, found[1]).value(corner))
        except FigureError:
            return None
        self._keep(found[0], [])
        return value if isfinite(value) else None

    def _worst(self, amount: Amount) -> Mapping[str, float] | None:
        """The corner at which a number is least; None where it cannot be computed."""
        found = self._first([amount])
        if found is None:
            return None
        node = self._node(found[0].figure, found[1])
        try:
            corner = worst_case(node, -1, alike=self._alike(node)).corner
        except FigureError:
            return None
        self._keep(amount, [node])
        return corner

    def _ends(self, node: Node) -> tuple[float, float, float] | None:
        """A number at its least, nominal and at its most; None where it is none."""
        try:
            nominal = float(node.value())
            low = high = nominal
            if node.leaves:
                alike = self._alike(node)
                low = worst_case(node, -1, alike=alike).figure
                high = worst_case(node, 1, alike=alike).figure
        except FigureError:
            return None
        return (low, nominal, high) if all(map(isfinite, (low, nominal, high))) else None

    def _alike(self, node: Node) -> Mapping[str, Leaf]:
        """The leaves of channels that state the same, which move together."""
        return self.run.twins.leaves(node.leaves, self.channel)

    def _keep(self, amount: Amount, nodes: Iterable[Node]) -> None:
        """Remember what a number leans on."""
        if amount.note:
            self.notes[amount.note] = None
        for node in nodes:
            self.assumed |= dict.fromkeys(x for x in node.assumed if x.leaning != "absent")

    @property
    def _notes(self) -> tuple[str, ...]:
        return tuple(self.notes)

    @property
    def _leans(self) -> tuple[Assumed, ...]:
        return tuple(self.assumed)


def _path(amount: Amount) -> str:
    """The one field or derived quantity that an amount shows as it is; or nothing."""
    given = [x.path for x in amount.inputs.values() if isinstance(x, Input)]
    return given[0] if amount.figure is None and len(given) == 1 else ""


def _steps(low: float, high: float, points: int, logarithmic: bool) -> tuple[float, ...]:
    """Evenly spread places from one end of an axis to the other."""
    shares = [number / (points - 1) for number in range(points)]
    if logarithmic:
        return tuple(low * (high / low) ** share for share in shares)
    return tuple(low + (high - low) * share for share in shares)
