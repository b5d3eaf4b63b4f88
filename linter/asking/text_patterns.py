"""Patterns for the texts of quantities, as far as a regular expression can tell right from wrong.

A pattern lets through all that the program takes.  That of a field refuses wrong units, bare
numbers, signs and zeros that cannot be; one for all fields tells what numbers, symbols and
tolerances look like.  The order of the ends and the size of a value stay with the program.
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
GAPS = " \u00a0\u2009\u202f\u00b7\u22c5"
FIRST = f"[/^\u00b2\u00b30-9]|[{GAPS}]+[{SIGNS_OF_UNITS}/(]"
COMPOUND = (
    f"(?:1\\s*/|[{SIGNS_OF_UNITS}]+(?:{FIRST}))"
    r"(?:[^+\u00b1.]|\.\d)*?"
)
PLUS_MINUS = r"(?:\u00b1|\+/?[-\u2212])"
CODE = r"(?:\d{1,6}[A-Za-z\u00b5\u03bc]\d{0,6}|[A-Za-z\u00b5\u03bc]\d{1,6})"


def quantity_pattern(field: Field) -> str:
    """The pattern of a quantity's text: a value, with tolerance, a range, or a letter code."""
    sign = rf"(?:\+|{MINUS})?" if field.unit in SIGNED else r"\+?"
    lead = rf"{sign}\s*{'' if field.zero or field.unit in SIGNED else NOT_ZERO}{NUMBER}"
    rest = "" if field.unit == "%" else rf"(?:\s*(?:\u00b1|\+|{MINUS}).*)?"
    if field.unit == "1":
        forms = [rf"{lead}(?:\s*\.\.\s*{sign}{NUMBER})?{rest}"]
    else:
        unit = unit_pattern(field.unit)
        forms = [
            rf"{lead}\s*{unit}{rest}",
            rf"{lead}\s*(?:{unit})?\s*\.\.\s*{sign}\s*{NUMBER}\s*{unit}",
        ]
        codes = (rf"\d*[{LETTERS[x]}]\d*" for x in LETTERS if _same(x, field.unit))
        forms += (rf"{code}(?:{rest}|\s*\.\..*)" for code in codes)
    forms += [spelled_pattern(name) for name in field.called]
    return rf"^\s*(?:{'|'.join(forms)})\s*$"


@cache
def any_quantity() -> str:
    """The pattern of every quantity: a number with a known unit, with tolerance, or a range."""
    step, one = _step(), _one()
    steps = rf"\+\s*{step}[ ,/]*{MINUS}\s*{step}|{MINUS}\s*{step}[ ,/]*\+\s*{step}"
    return rf"^\s*(?:{one})(?:\s*(?:{PLUS_MINUS}\s*{step}|{steps})|\s*\.\.\s*(?:{one}))?\s*$"


@cache
def any_value(*words: str) -> str:
    """The pattern of one value in any unit, or of a word in its place."""
    return rf"^\s*(?:{'|'.join([*words, _one()])})\s*$"


def _one() -> str:
    return rf"(?:\+|{MINUS})?\s*{_step()}|{CODE}"


def _step() -> str:
    return rf"{NUMBER}\s*(?:{_any_unit()})?"


@cache
def _any_unit() -> str:
    """Known symbols, alone or put together with powers, gaps and strokes."""
    known = known_symbols()
    plain = {x for x in known if f"n{x}" in known}
    bare = known.keys() - plain - {f"{sign}{x}" for sign in "pnumkMG" for x in plain}
    prefixed = f"[pnu\u00b5\u03bcmkMG]?(?:{'|'.join(sorted(map(_in_all_signs, plain)))})"
    factor = f"(?:{prefixed}|{'|'.join(sorted(map(_in_all_signs, bare)))})"
    raised = rf"{factor}(?:\^{MINUS}?[0-9.]+|[0-9.\u00b2\u00b3]+)?"
    product = rf"{raised}(?:[{GAPS}]*{raised}){{0,3}}"
    below = rf"\s*/\s*(?:{product}|\(\s*{product}\s*\))"
    return rf"V/V|dB[uV]?|(?:1|{product})(?:{below}){{0,3}}"


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
    alike = [x for x in (*known_symbols(), *LEVEL_REFERENCES, "%") if _fits(x, unit)]
    found = sorted({_in_all_signs(symbol) for symbol in alike}, key=lambda x: (-len(x), x))
    compound = [] if unit_of(unit).kind else [COMPOUND]  # no product is an angle or a frequency
    return f"(?:{'|'.join([*found, *compound])})"


def _same(symbol: str, unit: str) -> bool:
    return same_kind(unit_of(symbol), unit_of(unit))


def _fits(symbol: str, unit: str) -> bool:
    """Whether a symbol may stand there: a temperature may be written in K too."""
    return _same(symbol, unit) or (_same("degC", unit) and _same(symbol, "K"))


def _in_all_signs(symbol: str) -> str:
    for plain, signs in OTHERS.items():
        if symbol.endswith(plain):
            return _micro(symbol.removesuffix(plain)) + signs
    return _micro(symbol)


def _micro(symbol: str) -> str:
    text = re.escape(symbol)
    return text if not symbol.startswith("u") else f"[u\u00b5\u03bc]{text[1:]}"
