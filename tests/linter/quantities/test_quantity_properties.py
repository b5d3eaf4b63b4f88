"""Properties that hold for any text, any number and any prefix."""

from dataclasses import astuple

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from ampreview.linter.quantities.quantity import QuantityError, Value, parse, show, spell, to_si

UNITS = ("V", "ohm", "F", "H", "s", "degC", "K", "K/W", "%", "dB", "V/V", "1", "mm2", "A2s", "deg")
MANTISSA = st.decimals("0.001", "9999", places=3).map(lambda number: f"{number.normalize():f}")
PERCENT = st.integers(0, 99)


@st.composite
def quantities(draw: st.DrawFn) -> tuple[object, str]:
    """A text or mapping that is accepted, and the unit of its field."""
    unit = draw(st.sampled_from(UNITS))
    number = draw(MANTISSA)
    bare = "" if unit == "1" else f" {unit}"
    plain = number + bare
    step = {"degC": "K", "dB": "dB"}.get(unit, "%")
    forms: list[object] = [plain, {"typ": plain}, {"value": plain, "from": "measured"}]
    second = draw(MANTISSA)
    low, high = sorted((number, second), key=float)
    forms += [f"{low}{bare} .. {high}{bare}", {"min": low + bare, "max": high + bare}]
    if unit != "%":
        up, down = draw(PERCENT), draw(PERCENT)
        forms += [f"{plain} ± {up} {step}", f"{plain} +{up} {step} -{down} {step}"]
    return draw(st.sampled_from(forms)), unit


def _close(a: Value, b: Value) -> bool:
    first, second = astuple(a)[:3], astuple(b)[:3]
    return first == pytest.approx(second, rel=1e-9, abs=1e-9 * abs(a.nominal)) and (
        a.form,
        a.provenance,
        a.sides,
    ) == (b.form, b.provenance, b.sides)


@given(quantities())
def test_text_to_value_to_text_is_stable(item: tuple[object, str]) -> None:
    data, unit = item
    value = parse(data, unit)
    text = spell(value, unit)
    again = parse(text, unit)
    assert _close(value, again)
    assert spell(again, unit) == text
    assert value.lo <= value.nominal <= value.hi


@given(st.integers(1, 999_999), st.integers(-12, 9), st.integers(-12, 9), st.sampled_from("VAFH"))
def test_the_same_number_in_another_prefix_is_the_same_value(
    digits: int, power: int, other: int, unit: str
) -> None:
    prefixes = {-12: "p", -9: "n", -6: "u", -3: "m", 0: "", 3: "k", 6: "M", 9: "G"}
    first, second = 3 * (power // 3), 3 * (other // 3)
    one = f"{digits} {prefixes[first]}{unit}"
    two = f"{digits}e{first - second} {prefixes[second]}{unit}"
    assert parse(one, unit) == parse(two, unit)


ALPHABET = "0123456789..+-±%/eE ,'_*^()µμΩ°²³dBuVAmknpMRKFHsWhGLT{}[]\n\x00·"


@given(st.one_of(st.text(ALPHABET, max_size=30), st.text(max_size=250)), st.sampled_from(UNITS))
@example("1 " + "m" * 190, "V")
@example("9" * 39 + "e999 V", "V")
@example("1 Gm9.999 Gm9.999 Gm9.999 Gm9.999", "m")
@example("1 pm9.999 pm9.999 pm9.999 pm9.999", "m")
@example("999 dB", "V/V")
@example("-9e99 dBu", "V")
def test_junk_is_refused_and_nothing_else_is_raised(text: str, unit: str) -> None:
    for read in (lambda: parse(text, unit), lambda: to_si(text), lambda: to_si(text, unit)):
        try:
            read()
        except QuantityError as error:
            assert error.problem and error.expected and error.example


JUNK = st.recursive(
    st.one_of(st.none(), st.booleans(), st.integers(), st.floats(), st.text(ALPHABET, max_size=9)),
    lambda inner: (
        st.lists(inner, max_size=2)
        | st.dictionaries(st.sampled_from(("value", "min", "typ", "max", "from", "x")), inner)
    ),
    max_leaves=5,
)


@given(JUNK, st.sampled_from(UNITS))
def test_junk_of_any_type_is_refused_and_nothing_else_is_raised(data: object, unit: str) -> None:
    try:
        value = parse(data, unit)
    except QuantityError:
        return
    assert value.lo <= value.nominal <= value.hi


@given(st.floats(), st.sampled_from(UNITS))
def test_any_float_can_be_shown(x: float, unit: str) -> None:
    assert show(x, unit)
