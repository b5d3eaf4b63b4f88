"""One value of a spec that is varied, as the command line writes it.

``PATH=FROM..TO:STEP`` goes in steps (``4.7 ohm..22 ohm:1 ohm``), or through the preferred
numbers of IEC 60063 (``4.7 ohm..22 ohm:E12``); ``PATH=A,B,C`` lists values as a spec would have
them, tolerances and braces too; ``PATH=FROM..TO`` is an interval to draw from.
"""

import re
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from itertools import takewhile

from ..changes.stock import upward
from ..quantities.quantity import QuantityError, Value, from_si, parse, show, spell
from ..reading.loading import Spec
from .place import SweepError, checked, field_at, paths_of, plain_data
from .spread import Spread, spread_of

SERIES = re.compile(r"E(3|6|12|24|48|96|192)")
INTERVAL = re.compile(
    r"(?P<start>[^,{}]+?)\s*\.\.\s*(?P<end>[^,{}:]+?)(?:\s*:\s*(?P<step>[^,{}]+))?"
)
OUTSIDE_BRACES = re.compile(r",(?![^{]*\})")
NEAR = 1e-9
DIGITS = 12
MOST = 100_000
STEP_UNITS = {"degC": "K"}
LOGARITHMIC = ("V/V",)


@dataclass(frozen=True, slots=True)
class Choice:
    """One value of an axis.

    shown: in the table; number: in SI units, None for a word and for what is listed with a
    tolerance of its own; data: what each path takes.
    """

    shown: str
    number: float | None
    data: Mapping[str, object]


@dataclass(frozen=True, slots=True)
class Axis:
    """A value that is varied.

    path: as it was asked for; paths: those of the spec that it stands for, one a channel;
    unit: that of the field, empty for words.  choices: the values, none where they are drawn
    from the interval.  spread: what the stated value has around it, and each of these too.
    """

    path: str
    paths: tuple[str, ...]
    unit: str
    choices: tuple[Choice, ...]
    interval: tuple[float, float] | None
    spread: Mapping[str, Spread]

    @property
    def title(self) -> str:
        """The head of its column."""
        return f"{self.path} [{self.unit}]" if self.is_numeric and self.unit != "1" else self.path

    @property
    def is_numeric(self) -> bool:
        """Whether its values are numbers, so that some lie between others."""
        return all(item.number is not None for item in self.choices)

    def at(self, x: float) -> Choice:
        """The choice of a number in SI units."""
        shown = f"{from_si(x, self.unit):.{DIGITS}g}"
        return Choice(shown, x, {path: self.spread[path].around(x) for path in self.paths})

    def in_words(self) -> str:
        """What is tried, as the summary tells it."""
        if self.interval:
            low, high = (show(x, self.unit) for x in self.interval)
            return f"from {low} to {high}"
        texts = [self.told(number) for number in (0, -1)]
        if self.is_numeric and len(self.choices) > 2:
            return f"{texts[0]} to {texts[1]}, {len(self.choices)} values"
        return ", ".join(self.told(number) for number in range(len(self.choices)))

    def told(self, number: int) -> str:
        """One of its values in words."""
        item = self.choices[number]
        return item.shown if item.number is None else show(item.number, self.unit)


def axis_of(text: str, spec: Spec, drawn: bool) -> Axis:
    """The axis behind ``PATH=...``; drawn: whether its values are drawn, so that no step is due."""
    path, sign, values = (part.strip() for part in text.partition("="))
    if not (sign and path and values):
        raise SweepError(f"{text!r}: expected PATH=FROM..TO:STEP or PATH=A,B,C")
    field = field_at(path, spec)
    paths = paths_of(path, spec)
    unit = field.unit if field.kind in ("quantity", "count") else ""
    spread = {full: spread_of(spec.values.get(full), unit) for full in paths}
    empty = Axis(path, paths, unit, (), None, spread)
    match = INTERVAL.fullmatch(values) if unit else None
    if match is None:
        choices = [_listed(item.strip(), empty, spec) for item in OUTSIDE_BRACES.split(values)]
        return _whole(empty, choices, spec)
    low, high = (_number(match[name], unit, empty) for name in ("start", "end"))
    if not low < high:
        raise SweepError(f"{path}: nothing lies between {match['start']} and {match['end']}")
    if match["step"]:
        return _whole(empty, map(empty.at, _steps(low, high, match["step"], empty)), spec)
    if not drawn:
        raise SweepError(f"{path}: a step is missing, as in {values}:{_step_like(low, high, unit)}")
    return replace(empty, interval=(low, high))


def _whole(axis: Axis, choices: Iterable[Choice], spec: Spec) -> Axis:
    """The axis with its choices, each of which the spec would take."""
    found = tuple(choices)
    counted = Counter(item.shown for item in found)
    twice = next((text for text, count in counted.items() if count > 1), "")
    if twice:
        raise SweepError(f"{axis.path}: {twice} {axis.unit} is listed twice")
    for item in (found[0], found[-1]) if axis.unit else found:
        for path, data in item.data.items():
            checked(path, data, spec)
    if any(item.number is None for item in found):
        found = tuple(replace(item, number=None) for item in found)
    return replace(axis, choices=found)


def _listed(text: str, axis: Axis, spec: Spec) -> Choice:
    """A value of a list: a plain number takes the stated spread along, else it is as written."""
    if not text:
        raise SweepError(f"{axis.path}: a value is missing between two commas")
    data = plain_data(text)
    found = checked(axis.paths[0], data, spec)
    if isinstance(found, Value) and found.form == "plain" and found.provenance is None:
        return axis.at(found.nominal)
    return Choice(text, None, dict.fromkeys(axis.paths, data))


def _number(text: str, unit: str, axis: Axis) -> float:
    """One end of an interval, or a step, in SI units."""
    try:
        found = parse(text, unit)
    except QuantityError as error:
        raise SweepError(f"{axis.path}: {error}") from None
    if found.form != "plain":
        raise SweepError(f"{axis.path}: {text} has a spread; the stated one goes along by itself")
    return found.nominal


def _steps(low: float, high: float, step: str, axis: Axis) -> Iterator[float]:
    """The numbers from one end to the other."""
    if SERIES.fullmatch(step):
        yield from _preferred(low, high, step, axis)
        return
    if axis.unit in LOGARITHMIC:
        raise SweepError(f"{axis.path}: levels are not stepped; list them with commas")
    width = _number(step, STEP_UNITS.get(axis.unit, axis.unit), axis)
    if width <= 0.0:
        raise SweepError(f"{axis.path}: a step of {step}; expected one above zero")
    count = (high - low) / width
    if count >= MOST:
        raise SweepError(f"{axis.path}: {count:.3g} values; expected {MOST} at most")
    for number in range(int(count + NEAR) + 1):
        yield float(f"{low + number * width:.{DIGITS}g}")


def _preferred(low: float, high: float, series: str, axis: Axis) -> Iterator[float]:
    """The preferred numbers between two ends, in SI units."""
    if axis.unit in STEP_UNITS or low <= 0.0:
        raise SweepError(f"{axis.path}: {series} has numbers above zero only, and no temperatures")
    found = list(takewhile(lambda x: x <= high * (1 + NEAR), upward(series, axis.unit, low)))
    if not found:
        raise SweepError(f"{axis.path}: no number of {series} lies in that interval")
    yield from found


def _step_like(low: float, high: float, unit: str) -> str:
    """A step that would do."""
    if unit in LOGARITHMIC:
        return "a list with commas"
    step = float(f"{(high - low) / 10:.1g}")
    return str(spell(Value(step, step, step), STEP_UNITS.get(unit, unit)))
