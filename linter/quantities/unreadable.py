"""Why a text is no quantity: the reasons, each with what was expected and an example."""

import re
from collections.abc import Mapping
from itertools import pairwise
from typing import NoReturn

from .letter_code import looks_like_code
from .spelling import expected, noun
from .units import Unit, UnitError, nearest, same_kind, unit_of
from .value import QuantityError

_DASH = re.compile(r"\bto\b|[-\u2013\u2014~\u2026]|\.\.")
_TWO_VALUES = re.compile(
    r"([0-9]+(?:\.[0-9]+)?)\s*([^\s0-9-]*)\s*(?:\bto\b|[-\u2013\u2014~\u2026])\s*"
    r"([0-9]+(?:\.[0-9]+)?)\s*([^\s0-9-]+)"
)
_NO_NUMBER = re.compile(r"[+-]?((inf|infinity|nan)\b|\u221e)", re.IGNORECASE)
_UNIT_AS_POINT = re.compile(r"([0-9]{1,6})([VAWHs])([0-9]{1,6})")
_SUFFIXED = re.compile(r"([munpkM]?[VAW])(rms|eff|pp|pk|p|dc|ac)", re.IGNORECASE)
_SEVERAL = re.compile(r"([0-9]{1,3}) *[x\u00d7] *([0-9]+(?:\.[0-9]+)?) *([^\s0-9]+)")
_HOURS = {"day": 24, "week": 168, "month": 730, "year": 8760}
_CALENDAR = re.compile(r"([0-9]{1,4}(?:\.[0-9]+)?) *(day|week|month|year)s?", re.IGNORECASE)


def refuse(problem: str, unit: str | None) -> NoReturn:
    """Raise ``QuantityError`` with what a field of that unit expects."""
    raise QuantityError(problem, *expected(unit))


def clipped(item: object) -> str:
    """Short text for messages, whatever stands in the file."""
    text = str(item) if isinstance(item, (str, float)) else type(item).__name__
    return text if len(text) <= 60 else text[:57] + "..."


def refuse_sign(text: str, unit: str | None) -> NoReturn:
    """A dash or a sign stands where neither range nor tolerance can be read."""
    what, example = expected(unit)
    raise QuantityError(
        f"'{clipped(text)}' is neither a range (written with two dots, .. between two values)"
        " nor a value with both sides of its tolerance",
        what,
        _as_range(text, unit) or example,
    )


def _as_range(text: str, unit: str | None) -> str:
    """Two values with a dash between them, as a range is written; else nothing.

    >>> _as_range("376 kHz - 424 kHz", "Hz"), _as_range("22-24 V", "V")
    ('376 kHz .. 424 kHz', '22 V .. 24 V')
    """
    match = _TWO_VALUES.fullmatch(text.strip())
    if match is None or unit is None or len(text) > 60:
        return ""
    low, first, high, second = match.groups()
    first = first or second
    try:
        fits = all(same_kind(unit_of(item), unit_of(unit)) for item in (first, second))
    except UnitError:
        return ""
    if not fits or (first == second and float(low) >= float(high)):
        return ""
    return f"{low} {first} .. {high} {second}"


def refuse_unit(text: str, unit: str | None, whole: str, problem: str) -> NoReturn:
    """Say what may have been meant by an unknown unit."""
    if _DASH.search(text):
        refuse_sign(whole or text, unit)
    refuse_code(whole, unit)
    refuse_several(whole, unit)
    refuse_calendar(whole, unit)
    if match := _SUFFIXED.fullmatch(text):
        refuse(f"write {match[1]} for '{text}': the field says which value is meant", unit)
    dimension = unit_of(unit).dimension if unit else ""
    if near := nearest(text, dimension):
        problem += f", perhaps {' or '.join(near)}"
    refuse(clipped(problem) if len(problem) > 150 else problem, unit)


def refuse_several(text: str, unit: str | None) -> None:
    """Raise if the text is a number of parts: of one or of all, the field says."""
    if match := _SEVERAL.fullmatch(text):
        number, one, of = int(match[1]), match[2], match[3]
        raise QuantityError(
            f"'{clipped(text)}' may mean one part or all of them",
            "the one value that the field describes",
            f"{number * float(one):g} {of} for all of them, {one} {of} for each",
        )


def refuse_calendar(text: str, unit: str | None) -> None:
    """Raise if the text is a time by the calendar, with the same in hours."""
    match = _CALENDAR.fullmatch(text)
    if match and unit is not None and same_kind(unit_of(unit), unit_of("h")):
        hours = float(match[1]) * _HOURS[match[2].lower()]
        raise QuantityError(
            f"'{clipped(text)}' is a calendar time", "a time in hours", f"{hours:g} h"
        )


def refuse_mismatch(text: str, rest: str, given: Unit, unit: str) -> NoReturn:
    """A unit that exists, but measures something else."""
    refuse_code(text, unit)
    field = unit_of(unit)
    if field.kind == "number":
        refuse(f"'{clipped(text)}' has a unit, but this is a plain number", unit)
    if given.kind == "number":
        refuse(f"'{clipped(text)}' has no unit", unit)
    if given.offset and given.dimension == field.dimension:
        refuse(f"'{clipped(text)}' is a temperature, but this is a difference, in K", unit)
    if noun(given) and noun(field):
        refuse(
            f"'{clipped(rest)}' is the unit of {noun(given)}, not of {noun(field)}",
            unit,
        )
    refuse(f"'{clipped(rest)}' is not a unit that fits here", unit)


def refuse_code(text: str, unit: str | None) -> None:
    """Raise if the text has the shape of a letter code."""
    if match := _UNIT_AS_POINT.fullmatch(text):
        refuse(f"write {match[1]}.{match[3]} {match[2]} for '{clipped(text)}'", unit)
    if looks_like_code(text):
        refuse(f"'{clipped(text)}' looks like a letter code that does not fit here", unit)


def refuse_number(text: str, unit: str | None) -> NoReturn:
    """A text that does not begin with a number."""
    if _NO_NUMBER.match(text):
        refuse(f"'{clipped(text)}' is not a finite number", unit)
    refuse_code(text, unit)
    refuse(f"'{clipped(text)}' does not begin with a number", unit)


def cut_at_comma(data: Mapping[str, object]) -> tuple[str, str, str] | None:
    """A value that a decimal comma cut in two, as YAML reads it inside braces.

    The key, what stands before the comma, and the key that the rest was taken for.

    >>> cut_at_comma({"c": "0", "68 uF": None, "rating": "63 V"})
    ('c', '0', '68 uF')
    """
    for (key, value), (rest, nothing) in pairwise(data.items()):
        whole = isinstance(value, str) and value.isdecimal()
        if whole and nothing is None and rest[:1].isdecimal():
            return key, str(value), rest
    return None


def refuse_comma(text: str, unit: str | None) -> NoReturn:
    """A comma inside a number."""
    refuse(f"'{clipped(text)}' has a comma: write a decimal point and no thousands separator", unit)


def refuse_rest(text: str, rest: str, unit: str | None) -> NoReturn:
    """Say why what follows the first digits is no unit."""
    whole, first = clipped(text), rest[0]
    if first == ",":
        refuse_comma(text, unit)
    if re.match(r"['_\u2019]?[0-9]", rest):
        refuse(f"'{whole}' has a thousands separator, a gap or a long exponent", unit)
    if first == ".":
        refuse(f"'{whole}' has a point that is not followed by one group of digits", unit)
    if first in "*/^(+\u00d7":
        refuse(f"'{whole}' is an expression; nothing is computed here", unit)
    if _DASH.match(rest):
        refuse_sign(text, unit)
    refuse(f"'{whole}' has '{clipped(rest)}' where a unit is expected", unit)
