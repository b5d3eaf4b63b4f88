"""What is known of units: a strict grammar in front, pint behind.

A unit text is split into known symbols by a regular grammar, spelled out in long names
and only then handed to pint, whose registry holds nothing but ``units.txt``.  What pint
says of the usual spellings is kept in ``known_units.csv``, which pint itself has written,
so that pint is imported for a rare one only; it is asked once for each unit text.
"""

import math
import re
from dataclasses import dataclass
from decimal import Decimal
from difflib import get_close_matches
from functools import cache, lru_cache
from importlib.resources import files
from typing import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    import pint

Kind = Literal["", "number", "share", "gain", "level", "frequency", "angle"]

# The voltage of 0 dBu drives 1 mW into 600 ohm: sqrt(0.6) V.  0 dBV is 1 V.
LEVEL_REFERENCES = {"dB": 1.0, "dBV": 1.0, "dBu": 0.6**0.5}

_SPELLINGS = {
    "°C": "degC",
    "\u2103": "degC",
    "°": "deg",
    "\u00b5": "u",
    "\u03bc": "u",
    "\u03a9": "ohm",
    "\u2126": "ohm",
    "\u212a": "K",
    "²": "2",
    "³": "3",
    "\u00b7": " ",
    "\u22c5": " ",
}
_KINDS: dict[str, Kind] = {"hertz": "frequency", "radian": "angle", "degree": "angle"}
_POWER = r"(?:[1-9](?:\.[0-9]{1,3})?|0\.[0-9]{1,3})"
_FACTOR = re.compile(rf" *([A-Za-z%]+)(?:\^?({_POWER})|\^(-{_POWER}))?")
_MOST_FACTORS = 4
_EVERYDAY = {
    "sec": "s",
    "hr": "h",
    "amp": "A",
    "r": "ohm",
    "celsius": "degC",
    "centigrade": "degC",
    "metre": "m",
    "litre": "L",
    "pct": "%",
}


class UnitError(ValueError):
    """A text that is not a unit; the message says why."""


@dataclass(frozen=True, slots=True)
class Unit:
    """One unit: number x factor + offset is the SI value.

    reference: for dB, dBu and dBV the value at 0 dB; their factor and offset are idle.
    kind: tells apart what has the same dimension (a share from a count, Hz from 1/s).
    name: long form, for pint.
    """

    text: str
    name: str
    factor: Decimal
    offset: Decimal
    dimension: str
    kind: Kind = ""
    reference: float | None = None


@cache
def _lines() -> tuple[str, ...]:
    return tuple((files(__package__) / "units.txt").read_text("utf-8").splitlines())


@cache
def _names() -> tuple[dict[str, str], dict[str, str], frozenset[str]]:
    """Prefix and unit symbols with their long names, and the symbols without prefix."""
    prefixes: dict[str, str] = {}
    symbols: dict[str, str] = {}
    bare: set[str] = set()
    for line in _lines():
        definition, _, comment = line.partition("#")
        parts = [part.strip() for part in definition.split("=")]
        if len(parts) < 2:
            continue
        name, symbol = parts[0], parts[-1]
        if name.endswith("-"):
            prefixes[symbol[:-1]] = name[:-1]
        else:
            symbols[symbol] = name
            if "no prefix" in comment:
                bare.add(symbol)
    return prefixes, symbols, frozenset(bare)


@cache
def known_symbols() -> dict[str, str]:
    """Every unit symbol, with and without prefix, and its long name."""
    prefixes, symbols, bare = _names()
    known = {
        prefix + symbol: long + name
        for symbol, name in symbols.items()
        if symbol not in bare
        for prefix, long in prefixes.items()
    }
    return known | symbols


@cache
def registry() -> "pint.UnitRegistry[float]":
    """Pint's registry of exactly the units of ``units.txt``."""
    import pint

    units: pint.UnitRegistry[float] = pint.UnitRegistry(None)
    units.load_definitions(list(_lines()))
    return units


def normal(text: str) -> str:
    """The unit text in ASCII: ``µ`` to ``u``, ``Ω`` to ``ohm``, ``²`` to ``2``."""
    if not text.isascii():
        for written, spelled in _SPELLINGS.items():
            text = text.replace(written, spelled)
    return text.strip()


@lru_cache(maxsize=1024)
def unit_of(text: str) -> Unit:
    """Read a unit text; raise ``UnitError`` when it is none.

    ``1`` or nothing is the unit of a plain number.  ``degC`` alone is a temperature,
    inside a compound (``degC/W``) a difference.
    """
    text = normal(text)
    one, none, plain = Decimal(1), Decimal(0), "dimensionless"
    if text in ("", "1"):
        return Unit("1", plain, one, none, plain, "number")
    if text == "V/V":
        return Unit(text, plain, one, none, plain, "gain")
    if text == "%":
        return Unit(text, plain, Decimal("0.01"), none, plain, "share")
    if text == "dB":
        return Unit(text, plain, one, none, plain, "level", LEVEL_REFERENCES[text])
    if text in LEVEL_REFERENCES:
        return Unit(text, "volt", one, none, _in_base("volt")[1], "", LEVEL_REFERENCES[text])
    if text == "degC":
        return Unit(text, "kelvin", one, Decimal("273.15"), "[temperature]")
    name = _spelled(text)
    factor, dimension = _in_base(name)
    return Unit(text, name, factor, none, dimension, _kind(name))


def _kind(name: str) -> Kind:
    if name.isalpha():
        for end, kind in _KINDS.items():
            if name.endswith(end):
                return kind
    return ""


def same_kind(a: Unit, b: Unit) -> bool:
    """Whether two units measure the same: temperature and difference, share and count differ."""
    return (a.dimension, a.kind, bool(a.offset)) == (b.dimension, b.kind, bool(b.offset))


def _in_base(name: str) -> tuple[Decimal, str]:
    """Factor and dimension of a unit spelled out in long names."""
    return _known().get(name) or by_pint(name)


@cache
def _known() -> dict[str, tuple[Decimal, str]]:
    """The usual spellings with what pint says of them."""
    lines = (files(__package__) / "known_units.csv").read_text("utf-8").splitlines()
    rows = (line.split(",") for line in lines[1:])
    return {name: (Decimal(factor), dimension) for name, factor, dimension in rows}


def by_pint(name: str) -> tuple[Decimal, str]:
    """Factor and dimension by pint; a factor off by binary rounding alone is made round.

    Pint gives the base dimensions in an order that depends on what was asked before.
    """
    try:
        amount = registry().Quantity(1.0, registry().parse_units(name)).to_base_units()
    except OverflowError:
        raise UnitError("the powers of the unit are out of reach") from None
    factor = float(amount.magnitude)
    if not 1e-99 < factor < 1e99:
        raise UnitError("the powers of the unit are out of reach")
    round_factor = float(f"{factor:.12g}")
    if math.isclose(factor, round_factor, rel_tol=1e-15):
        factor = round_factor
    powers = sorted(amount.dimensionality.items())
    names = [name if power == 1 else f"{name}^{power:g}" for name, power in powers]
    return Decimal(repr(factor)), " ".join(names) or "dimensionless"


def si_quantity(x: float, text: str) -> "pint.Quantity[float]":
    """The SI value ``x`` as a pint quantity in the base units of the unit ``text``."""
    units = registry()
    base = units.Quantity(1.0, units.parse_units(unit_of(text).name)).to_base_units().units
    return units.Quantity(x, base)


def _spelled(text: str) -> str:
    """``W/(m2 K)`` as ``watt/(meter**2*kelvin)``; only known symbols get through."""
    groups = [group.strip() for group in re.split(r"/(?![^()]*\))", text)]
    spelled = ["1"] if groups[0] == "1" and len(groups) > 1 else [_product(groups[0], text)]
    for group in groups[1:]:
        bracketed = group.startswith("(") and group.endswith(")")
        names = _product(group[1:-1] if bracketed else group, text)
        if "*" in names.replace("**", "") and not bracketed:
            raise UnitError(f"'{text}' is ambiguous: put the denominator in ( )")
        spelled.append(f"({names})")
    return "/".join(spelled)


def _product(text: str, whole: str) -> str:
    names: list[str] = []
    at = 0
    while at < len(text) or not names:
        match = _FACTOR.match(text, at)
        if match is None or len(names) == _MOST_FACTORS:
            raise UnitError(f"'{whole}' is not a unit")
        symbol, upright, raised = match.groups()
        power = upright or raised
        names.append(_long_name(symbol) + (f"**{power}" if power else ""))
        at = match.end()
    return "*".join(names)


def _long_name(symbol: str) -> str:
    name = "kelvin" if symbol == "degC" else known_symbols().get(symbol)
    if name is None:
        raise UnitError(f"unknown unit '{symbol}'")
    return name


def nearest(text: str, dimension: str) -> list[str]:
    """Known symbols that may have been meant, those of the asked dimension alone if any."""
    known = [*known_symbols(), "dB", "dBu", "dBV"]
    lowered = normal(text).casefold()
    spoken = lowered.removesuffix("s")
    same = [symbol for symbol in known if symbol.casefold() == lowered]
    same += [symbol for symbol, name in known_symbols().items() if name in (lowered, spoken)]
    same += [_EVERYDAY[word] for word in {lowered, spoken} & _EVERYDAY.keys()]
    if not same:
        close = get_close_matches(lowered, {symbol.casefold() for symbol in known}, 3, 0.5)
        same = [symbol for word in close for symbol in known if symbol.casefold() == word]
    fitting = [symbol for symbol in same if unit_of(symbol).dimension == dimension]
    return list(dict.fromkeys(fitting or same))[:2]
