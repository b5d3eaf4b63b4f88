"""Text to quantity and back: what stands in a spec or a rule file, as SI numbers.

``22 uH``, ``22 uH ± 20 %``, ``20 V .. 29.2 V``, ``{min: 8 ns, typ: 12 ns}``, ``4R7``.
Everything that is not clearly a quantity of the asked kind raises ``QuantityError``.
"""

from functools import lru_cache
from typing import TYPE_CHECKING

from .notation import checked, finite, read_text, scalar, scalar_text
from .spelling import expected, from_si, printed, show, spell
from .units import si_quantity, unit_of
from .unreadable import clipped, cut_at_comma, refuse, refuse_comma
from .value import PROVENANCES, SIDES, Provenance, QuantityError, Value

if TYPE_CHECKING:
    import pint

__all__ = [
    "QuantityError",
    "Value",
    "from_si",
    "parse",
    "printed",
    "quantity",
    "same_dimension",
    "show",
    "spell",
    "to_si",
]


def parse(data: object, unit: str) -> Value:
    """Read what stands in a field of the spec.

    data: scalar text, or a mapping with keys among ``value min typ max from``.
    unit: unit of the field; it decides what is accepted.  ``degC`` is a temperature,
        ``K`` a difference, ``%`` a share, ``V/V`` a gain, ``1`` a plain number.
    """
    if isinstance(data, dict):
        return _mapping(data, unit)
    return _plain(scalar_text(data, unit), unit)


@lru_cache(maxsize=4096)
def _plain(text: str, unit: str) -> Value:
    """A value written as one text; each trial of a remedy reads the whole spec again."""
    form, sides = read_text(text, unit)
    lo, nominal, hi = (checked(side, text, unit) for side in sides)
    return Value(lo, nominal, hi, form, text=text)


@lru_cache(maxsize=4096)
def to_si(text: str, unit: str | None = None) -> float:
    """The SI value of one plain number with its unit, as a rule file writes it.

    unit: if given, the dimension must be the same; a bare number passes only where that
    unit is dimensionless.  ``dB`` becomes a ratio where the unit is ``V/V``.
    """
    clean = scalar_text(text, unit)
    return finite(scalar(clean, unit, strict=False).si, clean, unit)


def quantity(text: str, unit: str) -> "pint.Quantity[float]":
    """The same number as a pint quantity in SI base units, for tests of dimension."""
    return si_quantity(to_si(text, unit), unit)


def same_dimension(a: str, b: str) -> bool:
    """Whether two units measure the same dimension; shares, gains, dB and counts do."""
    return unit_of(a).dimension == unit_of(b).dimension


def _mapping(data: dict[object, object], unit: str) -> Value:
    """A data-sheet line, or a value with its provenance."""
    if not data.keys() <= {"value", "from", *SIDES}:
        cut = cut_at_comma({str(key): value for key, value in data.items()})
        if cut is not None:
            refuse_comma(f"{cut[1]},{cut[2]}", unit)
        unknown = next(key for key in data if key not in ("value", "from", *SIDES))
        refuse(f"unknown key '{clipped(unknown)}' among value, min, typ, max, from", unit)
    source = data.get("from")
    provenance = next((word for word in PROVENANCES if word == source), None)
    if "from" in data and provenance is None:
        raise QuantityError(
            f"'{clipped(source)}' does not say where a value comes from",
            "one of " + ", ".join(PROVENANCES),
            f"{{value: {expected(unit)[1]}, from: measured}}",
        )
    stated = [side for side in SIDES if side in data]
    if ("value" in data) == bool(stated):
        refuse("a mapping has either value or some of min, typ, max", unit)
    if not stated:
        if isinstance(data["value"], dict):
            refuse("value is a mapping", unit)
        plain = parse(data["value"], unit)
        return Value(plain.lo, plain.nominal, plain.hi, plain.form, provenance, text=plain.text)
    return _line({side: data[side] for side in stated}, unit, provenance)


def _line(stated: dict[str, object], unit: str, provenance: Provenance | None) -> Value:
    """A data-sheet line; the nearest stated side stands in for a missing one."""
    texts = {side: scalar_text(item, unit) for side, item in stated.items()}
    numbers = {side: checked(scalar(text, unit).si, text, unit) for side, text in texts.items()}
    in_order = list(numbers.values())
    if in_order != sorted(in_order):
        refuse("min, typ and max are not in rising order", unit)
    lo, hi = in_order[0], in_order[-1]
    nominal = numbers.get("typ", lo / 2 + hi / 2)
    text = "{" + ", ".join(f"{side}: {text}" for side, text in texts.items()) + "}"
    return Value(lo, nominal, hi, "line", provenance, frozenset(stated), text)
