"""Patterns for the texts of quantities, as far as a regular expression can tell right from wrong.

A pattern lets through all that the program takes, and refuses wrong units, bare numbers, signs
and zeros that cannot be.  The order of the ends and the size of a value stay with the program.
Written in what the expressions of ECMA-262 and of Python have in common.
"""

import re
from functools import cache

from ..declare import Field
from ..quantities.units import LEVEL_REFERENCES, known_symbols, same_kind, unit_of

NUMBER = r"(?:\d+(?:\.\d+)?|\.\d+)(?:[eE][+-]?\d{1,3})?"
NOT_ZERO = r"(?![0.]+(?![0-9.]))"
MINUS = "[-\u2212]"
SIGNED = ("degC", "dB", "V/V")  # a gain may be written as a level
LETTERS = {"ohm": "LRKkMGT", "F": "pnu\u00b5\u03bcmF"}
OTHERS = {
    "ohm": "(?:ohm|\u03a9|\u2126)",
    "degC": "(?:degC|\u00b0C|\u2103)",
    "deg": "(?:deg|\u00b0)",
}
SIGNS_OF_UNITS = "A-Za-z%\u00b0\u00b5\u03bc\u03a9\u2126\u2103\u212a"
BETWEEN = " \u00a0\u2009\u202f/\u00b7\u22c5^\u00b2\u00b30-9("
COMPOUND = f"[{SIGNS_OF_UNITS}]+[{BETWEEN}](?:[^+\u00b1.]|\\.\\d)*?"


def quantity_pattern(field: Field) -> str:
    """The pattern of a quantity's text: a value, with tolerance, a range, or a letter code."""
    sign = rf"(?:\+|{MINUS})?" if field.unit in SIGNED else r"\+?"
    lead = rf"{sign}\s*{'' if field.zero or field.unit in SIGNED else NOT_ZERO}{NUMBER}"
    rest = r"(?:\s*(?:\u00b1|\+|-|\u2212).*)?"
    if field.unit == "1":
        forms = [rf"{lead}(?:\s*\.\.\s*{sign}{NUMBER})?{rest}"]
    else:
        unit = unit_pattern(field.unit)
        forms = [
            rf"{lead}\s*{unit}{rest}",
            rf"{lead}\s*(?:{unit})?\s*\.\.\s*{sign}\s*{NUMBER}\s*{unit}{rest}",
            rf"{lead}\s*(?:\u00b1|\+/?-)\s*{NUMBER}\s*{unit}",
        ]
        forms += [rf"\d*[{LETTERS[x]}]\d*{rest}" for x in LETTERS if _same(x, field.unit)]
    forms += [spelled_pattern(name) for name in field.called]
    return rf"^\s*(?:{'|'.join(forms)})\s*$"


def count_pattern(zero: bool) -> str:
    """The pattern of a whole number written as text."""
    return rf"^\s*\+?{'' if zero else NOT_ZERO}{NUMBER}\s*$"


def spelled_pattern(name: str) -> str:
    """A size of the trade in capitals or not, with gaps and dashes or not."""
    signs = [
        f"[{x}{x.swapcase()}]" if x.isalpha() else re.escape(x) for x in name if x not in " _-"
    ]
    return r"[\s_-]*".join(signs)


@cache
def unit_pattern(unit: str) -> str:
    """All units of the same kind: single symbols, and whatever is put together of several."""
    if unit == "V/V":
        return r"(?:dB|1|V/V)?"
    alike = [symbol for symbol in (*known_symbols(), *LEVEL_REFERENCES, "%") if _same(symbol, unit)]
    found = sorted({_in_all_signs(symbol) for symbol in alike}, key=lambda x: (-len(x), x))
    return f"(?:{'|'.join([*found, COMPOUND])})"


def _same(symbol: str, unit: str) -> bool:
    return same_kind(unit_of(symbol), unit_of(unit))


def _in_all_signs(symbol: str) -> str:
    for plain, signs in OTHERS.items():
        if symbol.endswith(plain):
            return _micro(symbol.removesuffix(plain)) + signs
    return _micro(symbol)


def _micro(symbol: str) -> str:
    text = re.escape(symbol)
    return text if not symbol.startswith("u") else f"[u\u00b5\u03bc]{text[1:]}"
