"""The grammar of one quantity text: number, unit, letter code, tolerance, range.

Number and unit are split by a strict regular grammar; only the unit is put to pint
(``units.py``).  Arithmetic is decimal, so that 22 uH and 0.022 mH are one number.
"""

import math
import re
from decimal import Decimal
from functools import cache
from typing import NamedTuple

from .letter_code import letter_code
from .units import Unit, UnitError, normal, same_kind, unit_of
from .unreadable import (
    clipped,
    refuse,
    refuse_mismatch,
    refuse_number,
    refuse_rest,
    refuse_sign,
    refuse_unit,
)
from .value import Form, QuantityError

LONGEST_TEXT = 200
LONGEST_NUMBER = 40

_NUMBER = r"(?:[0-9]+(?:\.[0-9]+)?|\.[0-9]+)(?:[eE][+-]?[0-9]{1,3})?"
_SCALAR = re.compile(rf"([+-]?{_NUMBER}) *(.*)", re.DOTALL)
_STEP = rf"({_NUMBER}) *([^\s0-9+,/-][^+,-]*?|)"
_UP_DOWN = re.compile(rf"\+ *{_STEP}[ ,/]*- *{_STEP}")
_DOWN_UP = re.compile(rf"- *{_STEP}[ ,/]*\+ *{_STEP}")
_SIGN_AFTER = re.compile(r"(?<=\S) +(?=[+-] *[.0-9])")
_TYPOGRAPHY = str.maketrans({"\u2212": "-", "\u00a0": " ", "\u2009": " ", "\u202f": " "})
_PLUS_MINUS = ("±", "+/-", "+-")

# Quantities lie within the SI prefixes yocto to yotta; beyond that a formula could overflow.
_LEAST, _MOST = 1e-24, 1e24
_LOUDEST = 480  # dB, a ratio of 1e24

# Quantities that cannot fall below zero.
_UNSIGNED = ("ohm", "F", "H", "s", "Hz", "m2", "m3", "kg", "K/W", "W", "J", "C", "%")


Sides = tuple[Decimal, Decimal, Decimal]


class Scalar(NamedTuple):
    """A number as written, its unit and the SI value."""

    number: Decimal
    unit: Unit
    si: Decimal


def scalar_text(data: object, unit: str | None) -> str:
    """The text of a scalar; numbers become text, everything else is refused."""
    if isinstance(data, bool) or not isinstance(data, (str, int, float)):
        refuse(f"a quantity is text, not {_type_name(data)}", unit)
    if isinstance(data, int) and data.bit_length() > 128:
        refuse("the number is too long", unit)
    text = (data if isinstance(data, str) else repr(data)).translate(_TYPOGRAPHY).strip()
    if not text:
        refuse("nothing is written here", unit)
    if len(text) > LONGEST_TEXT:
        refuse(f"the text is longer than {LONGEST_TEXT} characters", unit)
    return text


def _type_name(data: object) -> str:
    names = {
        bool: "yes or no",
        type(None): "nothing",
        list: "a list",
        dict: "a mapping",
    }
    return names.get(type(data), type(data).__name__)


def finite(number: Decimal, text: str, unit: str | None) -> float:
    """The float nearest to a decimal number, unless it is out of a float's reach."""
    value = float(number)
    if not math.isfinite(value):
        refuse(f"the number of '{clipped(text)}' is too large", unit)
    if value == 0.0 and number:
        refuse(f"the number of '{clipped(text)}' is too small", unit)
    return value


def checked(number: Decimal, text: str, unit: str) -> float:
    """The float, where the field's quantity can have that sign."""
    value = finite(number, text, unit)
    if abs(value) > _MOST:
        refuse(f"the number of '{clipped(text)}' is too large", unit)
    if value and abs(value) < _LEAST:
        refuse(f"the number of '{clipped(text)}' is too small", unit)
    if value < 0.0 and unit_of(unit).offset:
        refuse(f"'{clipped(text)}' lies below absolute zero", unit)
    if value < 0.0 and _is_unsigned(unit):
        refuse(f"'{clipped(text)}' lies below zero", unit)
    return value


@cache
def _is_unsigned(unit: str) -> bool:
    field = unit_of(unit)
    return any(same_kind(unit_of(known), field) for known in _UNSIGNED)


def read_text(text: str, unit: str) -> tuple[Form, Sides]:
    """The form of a quantity text, and its lowest, nominal and highest SI value."""
    if "..." in text or "\u2026" in text:
        refuse_sign(text, unit)
    if ".." in text:
        return "range", _range(text, unit)
    for sign in _PLUS_MINUS:
        if sign in text:
            head, _, tail = text.partition(sign)
            step = re.fullmatch(_STEP, tail.strip())
            if not head.strip():
                refuse(f"'{clipped(text)}' has no value before {sign}", unit)
            if step is None:
                refuse(f"'{tail.strip()}' is not a tolerance: a number with its unit", unit)
            return "tolerance", _spread(head.strip(), step.groups() * 2, unit)
    if split := _SIGN_AFTER.search(text):
        head, tail = text[: split.start()], text[split.end() :]
        if step := _UP_DOWN.fullmatch(tail):
            return "tolerance", _spread(head, step.groups(), unit)
        if step := _DOWN_UP.fullmatch(tail):
            down = step.groups()
            return "tolerance", _spread(head, down[2:] + down[:2], unit)
        refuse_sign(text, unit)
    number = scalar(text, unit).si
    return "plain", (number, number, number)


def _range(text: str, unit: str) -> Sides:
    sides = [side.strip() for side in text.split("..")]
    if len(sides) != 2 or not all(sides):
        refuse(f"'{clipped(text)}' is not a range of two values", unit)
    if any(sign in text for sign in _PLUS_MINUS):
        refuse("a range has no tolerance: write its outermost ends", unit)
    first, last = _SCALAR.fullmatch(sides[0]), _SCALAR.fullmatch(sides[1])
    if first and last and last[2] and not first[2]:
        if not _is_bare(last[2]):
            problem = f"the first side of '{clipped(text)}' has no unit"
            example = f"{sides[0]} {last[2]} .. {sides[1]}"
            raise QuantityError(problem, "a unit on both sides", example)
        sides[0] += f" {last[2]}"
    low, high = (scalar(side, unit).si for side in sides)
    if low > high:
        refuse(f"'{clipped(text)}' starts above its end", unit)
    return low, (low + high) / 2, high


def _is_bare(unit: str) -> bool:
    """Whether a unit has no prefix, so that it can only be that of both ends of a range."""
    return normal(unit) in ("degC", "K", "V", "A", "W", "ohm", "s", "h", "Hz", "m", "%", "dB")


def _spread(head: str, steps: tuple[str, ...], unit: str) -> Sides:
    """Lowest, nominal and highest value; steps: number and unit upward, then downward."""
    value = scalar(head, unit)
    up, up_unit, down, down_unit = steps
    high = _moved(value, Decimal(up), up_unit, unit)
    low = _moved(value, -Decimal(down), down_unit, unit)
    if low <= 0 < value.si and _is_unsigned(unit):
        refuse("the tolerance reaches down to zero", unit)
    return low, value.si, high


def _moved(value: Scalar, step: Decimal, step_unit: str, field: str) -> Decimal:
    """The SI value of ``value`` moved by one side of its tolerance."""
    if not step_unit and value.unit.kind != "number":
        refuse("a tolerance has a unit too", field)
    given = _known(step_unit, field)
    in_decibel = value.unit.reference is not None
    if given.text == "dB" and in_decibel:
        moved = value.number + step
        level = value.unit.kind == "level" and not _is_gain(field)
        return moved if level else _from_decibel(moved, value.unit, field)
    if in_decibel or given.reference is not None:
        refuse("the tolerance of a value in dB is in dB, and of no other value", field)
    if given.text == "%":
        if value.unit.kind == "share":
            refuse("± of a share is ambiguous: write a range, 85 % .. 95 %", field)
        if unit_of(field).offset:
            refuse("the tolerance of a temperature is a difference in K, not %", field)
        if step <= -100:
            refuse("a tolerance of -100 % or more leaves nothing", field)
        return value.si + abs(value.si) * step / 100
    if given.offset:
        refuse("the tolerance of a temperature is a difference, in K", field)
    if (given.dimension, given.kind) != (value.unit.dimension, value.unit.kind):
        refuse(f"'{step_unit}' is not a unit of this tolerance", field)
    return value.si + step * given.factor


def scalar(text: str, unit: str | None, strict: bool = True) -> Scalar:
    """One number with its unit, or a letter code where the unit is ohm or farad.

    strict: as in a spec file, where a share needs its ``%`` and a count has no unit.
    """
    if unit is not None and (coded := letter_code(text, unit)) is not None:
        return Scalar(coded, unit_of(unit), coded)
    match = _SCALAR.fullmatch(text)
    if match is None:
        refuse_number(text, unit)
    digits, rest = match.groups()
    if len(digits) > LONGEST_NUMBER:
        refuse(f"the number has more than {LONGEST_NUMBER} characters", unit)
    if rest and not re.match(r"[A-Za-z%\u00b0-\u03ff\u2100-\u21ff]|1/", rest):
        refuse_rest(text, rest, unit)
    given = _known(rest, unit, text)
    number = Decimal(digits)
    if unit is not None and not _fits(given, unit_of(unit), strict):
        refuse_mismatch(text, rest, given, unit)
    if given.reference is not None and (given.kind != "level" or _is_gain(unit)):
        return Scalar(number, given, _from_decibel(number, given, unit))
    return Scalar(number, given, number * given.factor + given.offset)


def _from_decibel(number: Decimal, given: Unit, unit: str | None) -> Decimal:
    if abs(number) > _LOUDEST:
        refuse(f"{number} {given.text} is no level", unit)
    return Decimal(repr((given.reference or 1.0) * 10.0 ** (float(number) / 20.0)))


def _known(text: str, unit: str | None, whole: str = "") -> Unit:
    try:
        return unit_of(text)
    except UnitError as error:
        refuse_unit(text, unit, whole, str(error))


def _is_gain(unit: str | None) -> bool:
    return unit is not None and unit_of(unit).kind == "gain"


_NUMBERS = ("number", "share", "gain", "angle", "")


def _fits(given: Unit, field: Unit, strict: bool) -> bool:
    """Whether a number in the unit ``given`` can stand where ``field`` is asked for."""
    if given.dimension != field.dimension or (given.offset and not field.offset):
        return False
    if field.kind == "gain" and given.kind == "level":
        return True
    if not strict and field.dimension == "dimensionless":
        return given.kind == field.kind or {given.kind, field.kind} <= set(_NUMBERS)
    return given.kind == field.kind
