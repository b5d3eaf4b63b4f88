"""Letter codes of resistors and capacitors: ``4R7``, ``4k7``, ``2n2``, ``R47``.

The letter is the prefix and takes the place of the decimal point (IEC 60062:2016, as
the encyclopaedia article "RKM code" gives it).  Whether ohm or farad, the field says.
Inductors have no such standard: makers mark 4.7 uH as 4R7.
"""

import re
from decimal import Decimal
from functools import cache

from .units import normal, same_kind, unit_of

_LETTERS = {
    "ohm": {"L": -3, "R": 0, "K": 3, "k": 3, "M": 6, "G": 9, "T": 12},
    "F": {"p": -12, "n": -9, "u": -6, "m": -3, "F": 0},
}
_CODE = re.compile(r"([0-9]{0,6})([A-Za-z\u00b5\u03bc])([0-9]{0,6})")


def letter_code(text: str, unit: str) -> Decimal | None:
    """The SI value of a letter code; nothing if the text is none for that unit.

    >>> letter_code("4k7", "ohm")
    Decimal('4.7E+3')
    """
    match = _CODE.fullmatch(text)
    if match is None or not (match[1] or match[3]):
        return None
    power = _letters(unit).get(normal(match[2]))
    if power is None:
        return None
    return Decimal(f"{match[1] or 0}.{match[3] or 0}").scaleb(power)


def looks_like_code(text: str) -> bool:
    """Whether a text has the shape of a letter code, for whatever field."""
    match = _CODE.fullmatch(text)
    if match is None or not (match[1] or match[3]):
        return False
    return any(normal(match[2]) in letters for letters in _LETTERS.values())


@cache
def _letters(unit: str) -> dict[str, int]:
    """The letters and their powers of ten, for a resistance or a capacitance."""
    field = unit_of(unit)
    return next((_LETTERS[base] for base in _LETTERS if same_kind(unit_of(base), field)), {})
