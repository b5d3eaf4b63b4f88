"""Values as bills of materials write them: ``100n``, ``4k7``, ``22uF/50V``, ``10k 1%``.

Unit signs are often left out there, and the decimal sign may be a comma.  What is not
clearly one value gives nothing.
"""

import re
from dataclasses import dataclass
from decimal import Decimal

from .letter_code import letter_code
from .units import normal

_OHM = ("Ω", "\u2126", "ohms", "ohm", "R")
_POWERS = {"p": -12, "n": -9, "u": -6, "m": -3, "": 0, "k": 3, "K": 3, "M": 6, "G": 9}
_NUMBER = re.compile(r"([0-9]+(?:\.[0-9]+)?|\.[0-9]+)\s*([^\s0-9.]*)")
_GROUPED = re.compile(r"(?<![0-9.,])[1-9][0-9]{0,2},[0-9]{3}(?![0-9.,])")
_TOLERANCE = re.compile(r"(?:±|\+/-|\+-)?\s*([0-9]+(?:\.[0-9]+)?|\.[0-9]+)\s*%")
_FRACTION = re.compile(r"(?<![0-9A-Za-z.])([0-9]{1,2})/([1-9][0-9]?)(?=\s*W)")
_VOLTS_DC = re.compile(r"(?<=[0-9 ])V[_ ]?[Dd][Cc]\b")
_VOLTS_CODE = re.compile(r"(?<![0-9A-Za-z.])([0-9]{1,3})V([0-9]{1,2})(?![0-9A-Za-z])")
_SPEED = re.compile(r"(?<![A-Za-z])(?:TT|T|FF|F|M)\s?(?=[0-9.]+\s*m?A\b)")
_GAP = re.compile(
    r"(?<=[0-9])\s+(?=[pnuµμmkKMG]?(?:F|H|V|W|A|Ω|\u2126|[oO]hms?)(?![A-Za-z0-9])"
    r"|[pnuµμmkKMG](?![A-Za-z0-9]))"
)


@dataclass(frozen=True, slots=True)
class BoardValue:
    """What a cell says: the value in SI units, the tolerance as a share, ratings by unit."""

    value: float | None
    tolerance: float | None
    ratings: dict[str, float]


def board_value(text: str, unit: str) -> BoardValue:
    """Read a cell that holds a value of a unit, and perhaps its tolerance and ratings.

    >>> board_value("2,2uF/50V X7R 10%", "F")
    BoardValue(value=2.2e-06, tolerance=0.1, ratings={'V': 50.0})
    >>> board_value("4k7", "ohm").value, board_value("22", "F").value
    (4700.0, None)
    """
    plain = _plain(text)
    tolerance = _TOLERANCE.search(plain)
    tokens = [x for x in re.split(r"[\s/;_|,]+", _GAP.sub("", _TOLERANCE.sub(" ", plain))) if x]
    bare = unit == "ohm" and len(tokens) == 1
    values = [x for x in (number(token, unit, bare) for token in tokens) if x is not None]
    ratings: dict[str, float] = {}
    for other in ("V", "W"):
        found = [number(token, other) for token in tokens] if other != unit else []
        told = [x for x in found if x is not None]
        if told:
            ratings[other] = told[-1]
    share = float(Decimal(tolerance[1]) / 100) if tolerance else None
    sure = len(values) == 1 and not _GROUPED.search(text)
    return BoardValue(values[0] if sure else None, share, ratings)


def number(text: str, unit: str, bare: bool = False) -> float | None:
    """One number with its unit sign, or with a prefix alone; else nothing.

    bare: digits alone are of that unit too.

    >>> number("100n", "F"), number("4R7", "ohm"), number("1/4W", "W"), number("50", "V", True)
    (1e-07, 4.7, 0.25, 50.0)
    """
    text = _plain(text)
    code = letter_code(text, "F" if unit == "H" else unit) if unit in ("F", "H", "ohm") else None
    if code is not None and not (unit == "H" and "F" in text):
        return float(code)
    match = _NUMBER.fullmatch(text)
    power = _power(match[2], unit, bare) if match else None
    return None if match is None or power is None else float(Decimal(match[1]).scaleb(power))


def tolerance_of(text: str) -> float | None:
    """A tolerance as a share: ``5%``, ``±20 %``, or the number of percent alone.

    >>> tolerance_of("±20 %"), tolerance_of("5"), tolerance_of("J")
    (0.2, 0.05, None)
    """
    plain = _plain(text).strip()
    found = _TOLERANCE.fullmatch(plain) or _TOLERANCE.fullmatch(f"{plain}%")
    return float(Decimal(found[1]) / 100) if found else None


def _power(sign: str, unit: str, bare: bool) -> int | None:
    """The power of ten of a prefix with or without the sign of the unit."""
    sign = normal(sign)
    if sign.lower().startswith("meg"):
        sign = "M" + sign[3:]
    for name in _OHM if unit == "ohm" else (unit,):
        if sign.lower().endswith(name.lower()):
            return _POWERS.get(_prefix(sign[: -len(name)], unit))
    if not sign:
        return 0 if bare else None
    prefix = _prefix(sign, unit)
    usual = {"F": ("p", "n", "u", "m"), "H": ("n", "u", "m"), "ohm": ("m", "k", "K", "M", "G")}
    return _POWERS[prefix] if prefix in usual.get(unit, ()) else None


def _prefix(sign: str, unit: str) -> str:
    """A prefix, where capitals stand for small letters that cannot be meant otherwise."""
    return sign.lower() if unit in ("F", "H") and sign in ("P", "N", "U") else sign


def _plain(text: str) -> str:
    """The text with a decimal point, fractions of a watt worked out, volts spelled alike."""
    text = re.sub(r"(?<=[0-9]),(?=[0-9])", ".", text.strip())
    text = _FRACTION.sub(lambda found: f"{Decimal(found[1]) / Decimal(found[2]):f}", text)
    text = _VOLTS_CODE.sub(r"\1.\2V", text)
    return _SPEED.sub("", _VOLTS_DC.sub("V", text))
