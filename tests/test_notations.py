"""The same design written in other prefixes and notations gets the same findings.

Every quantity of a sample is written anew: other prefixes (22 uH, 0.022 mH), powers of ten
(2.2e-5 H), letter codes of IEC 60062 (4R7, 2n2), both micro signs and both ohm signs, degC as
°C, areas in other squares.  The arithmetic is that of this file, in decimal fractions.
"""

import json
import random
import re
from collections.abc import Mapping
from decimal import Decimal
from functools import cache
from pathlib import Path
from typing import Any

import pytest
from hypothesis import Phase, given, settings
from hypothesis import strategies as st

from ampreview.linter.declare import load_schema
from ampreview.linter.finding import Finding
from ampreview.linter.judging.review import review
from ampreview.linter.quantities.quantity import Value, parse
from ampreview.linter.reading.loading import Spec, load_text

from .sampling import tries

SCHEMA = load_schema()
field_of = SCHEMA.field_of

SAMPLES = sorted((Path(__file__).parents[1] / "sample_specs").glob("*.amp.yaml"))
PREFIXES = {"p": -12, "n": -9, "u": -6, "m": -3, "": 0, "k": 3, "M": 6}
PREFIXED = ("V", "A", "W", "ohm", "F", "H", "s", "Hz", "C", "J", "T", "m", "Ah", "Wh")
OTHERS: Mapping[str, tuple[tuple[str, str], ...]] = {
    "mm2": (("cm2", "0.01"), ("m2", "1e-6"), ("mm²", "1"), ("um2", "1e6")),
    "cm2": (("mm2", "100"), ("m2", "1e-4"), ("cm²", "1")),
    "mm3": (("cm3", "0.001"), ("mm³", "1"), ("uL", "1")),
    "L": (("cm3", "1000"), ("m3", "0.001"), ("mL", "1000")),
    "h": (("min", "60"), ("s", "3600")),
    "degC": (("°C", "1"), ("\u2103", "1")),
    "K": (("mK", "1000"), ("K", "1")),
    "K/W": (("K/kW", "1000"), ("mK/mW", "1"), ("degC/W", "1")),
    "V/ns": (("V/us", "1000"), ("kV/us", "1")),
    "kW/m3": (("mW/cm3", "1"), ("W/m3", "1000")),
    "T m": (("mT m", "1000"), ("N/A", "1"), ("T\u00b7m", "1")),
    "W/m2": (("mW/cm2", "0.1"), ("W/m²", "1")),
    "A2s": (("A2 s", "1"), ("A²s", "1")),
    "dB": (("dB", "1"),),
}
SIGNS = {"ohm": ("ohm", "\u03a9", "\u2126"), "u": ("u", "\u00b5", "\u03bc")}
LETTERS = {"ohm": {0: "R", 3: "k", 6: "M"}, "F": {-12: "p", -9: "n", -6: "u"}}
TOKEN = re.compile(r"(?<![\w.])(\d+(?:\.\d+)?(?:e-?\d+)?) ([A-Za-z][A-Za-z0-9/]*(?: m\b)?)")
LINE = ("min", "typ", "max", "value")


def written(number: Decimal, dice: random.Random) -> str:
    """A number as digits, or with a power of ten where the digits would be many."""
    plain = f"{number.normalize():f}"
    if len(plain) > 12 or dice.random() < 0.3:
        digits, _, power = f"{number.normalize():e}".partition("e")
        return f"{digits}{dice.choice('eE')}{int(power)}"
    return plain


def rewritten_token(number: str, unit: str, dice: random.Random) -> str:
    amount = Decimal(number)
    if unit in OTHERS:
        other, factor = dice.choice(OTHERS[unit])
        return f"{written(amount * Decimal(factor), dice)} {other}"
    for prefix, power in PREFIXES.items():
        base = unit.removeprefix(prefix)
        if base in PREFIXED and prefix + base == unit:
            other, shift = dice.choice(list(PREFIXES.items()))
            moved = written(amount.scaleb(power - shift), dice)
            symbol = dice.choice(SIGNS["u"]) if other == "u" else other
            gap = dice.choice((" ", "", "\u00a0"))
            return f"{moved}{gap}{symbol}{dice.choice(SIGNS.get(base, (base,)))}"
    return f"{number} {unit}"


def letter_coded(text: str, dice: random.Random) -> str:
    """A resistance or a capacitance as a letter code, where three digits will do."""
    match = TOKEN.fullmatch(text)
    for base, letters in LETTERS.items():
        if match and match[2].removesuffix(base) in PREFIXES and match[2].endswith(base):
            amount = Decimal(match[1]).scaleb(PREFIXES[match[2].removesuffix(base)])
            power, letter = dice.choice(list(letters.items()))
            whole, _, part = f"{amount.scaleb(-power).normalize():f}".partition(".")
            if len(whole) <= 4 and len(part) <= 3:
                return f"{whole}{letter}{part}"
    return text


def rewritten(text: str, dice: random.Random) -> str:
    coded = letter_coded(text, dice)
    if coded != text and dice.random() < 0.5:
        return coded
    new = TOKEN.sub(lambda match: rewritten_token(match[1], match[2], dice), text)
    return new.replace("± ", dice.choice(("± ", "±", "+/- ")))


def anew(data: Any, path: str, dice: random.Random) -> Any:
    """Plain data of a spec with every quantity written anew."""
    if isinstance(data, dict):
        return {
            name: anew(item, f"{path}.{name}" if path else name, dice)
            for name, item in data.items()
        }
    if isinstance(data, list):
        return [anew(item, f"{path}[{n}]", dice) for n, item in enumerate(data)]
    above, _, last = path.rpartition(".")
    for known in (path, above if last in LINE else path):
        try:
            field = field_of(known)
        except KeyError:
            continue
        if field.kind == "quantity" and data not in (None, "none"):
            return rewritten(str(data), dice)
    return data


@cache
def sample(path: Path) -> Spec:
    spec = load_text(path.read_bytes(), path.name).spec
    assert spec is not None
    return spec


def answer(item: Finding) -> tuple[object, ...]:
    missing = tuple(gap.path for gap in item.advice.missing)
    return (item.check, item.subject, item.status, item.severity, missing)


@cache
def answers(path: Path) -> tuple[Finding, ...]:
    return review(sample(path)).findings


@pytest.mark.slow
@settings(
    max_examples=tries(12, swept=36), derandomize=True, deadline=None, phases=[Phase.generate]
)
@given(st.sampled_from(SAMPLES), st.integers(0, 2**32))
def test_other_notations_give_the_same_findings(path: Path, seed: int) -> None:
    dice = random.Random(seed)
    data = anew(sample(path).data, "", dice)
    loaded = load_text(json.dumps(data, ensure_ascii=False), path.name)
    assert loaded.spec is not None, loaded.refusals
    changed = [
        name
        for name, value in loaded.spec.values.items()
        if isinstance(value, Value) and value.text != getattr(sample(path).values[name], "text", "")
    ]
    assert len(changed) > len(loaded.spec.values) / 3
    for before, after in zip(answers(path), review(loaded.spec).findings, strict=True):
        assert answer(before) == answer(after)
        for old, new in (
            (before.evidence.figure, after.evidence.figure),
            (before.evidence.margin, after.evidence.margin),
        ):
            assert (old is None) == (new is None)
            assert old is None or new == pytest.approx(old, rel=1e-9, abs=1e-9), before.check


@pytest.mark.parametrize(
    ("unit", "texts"),
    [
        ("H", ("22 uH", "0.022 mH", "2.2e-5 H", "22\u00b5H", "22 \u03bcH", "22000 nH")),
        ("ohm", ("4.7 ohm", "4R7", "4.7 \u03a9", "4.7 \u2126", "4700 mohm", "0.0047 kohm")),
        ("F", ("2.2 nF", "2n2", "0.0022 uF", "2200 pF", "2200p", "2.2e-9 F")),
        ("degC", ("85 degC", "85 °C", "85\u2103", "85.0 degC")),
        ("s", ("45 ns", "0.045 us", "45000 ps", "4.5E-8 s")),
        ("mm2", ("2.5 mm2", "2.5 mm²", "0.025 cm2", "2.5e-6 m2")),
    ],
)
def test_one_quantity_in_many_notations_is_one_number(unit: str, texts: tuple[str, ...]) -> None:
    first, *others = (parse(text, unit) for text in texts)
    assert all(other == first for other in others)
