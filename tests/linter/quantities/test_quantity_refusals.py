"""What is refused, why, and that the example offered instead is accepted."""

import pytest

from ampreview.linter.quantities.quantity import QuantityError, parse, to_si

REFUSED = [
    # bare number, unit not due, wrong dimension
    ("22", "H", "has no unit"),
    (22, "H", "has no unit"),
    (0.9, "%", "has no unit"),
    ("5 V", "1", "plain number"),
    ("90 %", "1", "plain number"),
    ("3.5 A", "V", "unit of a current, not of a voltage"),
    ("24 V", "dB", "unit of a voltage"),
    ("6 dB", "V", "unit of a level"),
    ("+4 dBu", "A", "unit of a voltage"),
    ("6 dB", "1", "plain number"),
    ("2 W/K", "K/W", "not a unit that fits"),
    ("3 rad/s", "Hz", "not a unit that fits"),
    ("3 1/s", "Hz", "not a unit that fits"),
    ("85 C", "degC", "unit of a charge, not of a temperature"),
    ("40 °", "degC", "unit of an angle"),
    ("25 degC", "K", "temperature, but this is a difference"),
    ("0.5 V/V", "%", "unit of a gain"),
    # the number
    ("1,5 V", "V", "comma"),
    ("1,000 V", "V", "comma"),
    ("10 000 V", "V", "thousands"),
    ("10'000 V", "V", "thousands"),
    ("10_000 V", "V", "thousands"),
    ("1.000.000 Hz", "Hz", "point"),
    ("5. V", "V", "point"),
    ("2*3 V", "V", "expression"),
    ("2 * 3 V", "V", "expression"),
    ("1/2 W", "W", "expression"),
    ("2^3 V", "V", "expression"),
    ("2(3) V", "V", "expression"),
    ("5 V + 3 V", "V", "neither a range"),
    ("nan", "V", "finite"),
    ("NaN V", "V", "finite"),
    (float("nan"), "1", "finite"),
    ("inf", "V", "finite"),
    ("-inf V", "V", "finite"),
    (float("inf"), "1", "finite"),
    ("∞", "V", "finite"),
    ("1e999 V", "V", "too large"),
    ("1e-400 V", "V", "too small"),
    ("1e9999 V", "V", "long exponent"),
    ("5 000000000000000000", "1", "thousands"),
    ("0." + "1" * 40 + " V", "V", "more than 40"),
    ("1 V" + " " * 200 + "1", "V", "longer than 200"),
    (10**60, "1", "too long"),
    ("10² V", "V", "not a unit"),
    ("٣ V", "V", "begin with a number"),
    ("hello", "V", "begin with a number"),
    ("", "V", "nothing"),
    ("   ", "V", "nothing"),
    # the unit
    ("22 UH", "H", "perhaps uH"),
    ("400 KHz", "Hz", "perhaps kHz"),
    ("22 Uf", "F", "perhaps uF"),
    ("3 Ohms", "ohm", "perhaps ohm"),
    ("3 volts", "V", "perhaps V"),
    ("3 hours", "s", "perhaps h"),
    ("25 litre", "m3", "perhaps L"),
    ("5 mh", "s", "unknown unit 'mh'"),
    ("5 kdegC", "degC", "unknown unit"),
    ("5 Vs", "V", "unknown unit"),
    ("5 As", "A", "unknown unit"),
    ("24 Vrms", "V", "write V"),
    ("24 Vpp", "V", "write V"),
    ("25 W/m2 K", "W/(m2 K)", "ambiguous"),
    ("25 W/()", "W", "not a unit"),
    ("25 W/", "W", "not a unit"),
    ("1 km9999", "m", "not a unit"),
    ("1 m m m m m m m m", "m", "not a unit"),
    ("1 __import__('os')", "V", "where a unit is expected"),
    ("30 °F", "degC", "unknown unit"),
    # letter codes
    ("4R7", "H", "letter code"),
    ("4u7", "H", "letter code"),
    ("R47", "H", "letter code"),
    ("3V3", "V", "write 3.3 V"),
    ("4K7", "V", "letter code"),
    ("4M7", "F", "letter code"),
    ("4m7", "ohm", "letter code"),
    ("2n2", "ohm", "letter code"),
    ("2N2", "F", "not a unit that fits"),
    # tolerance
    ("22 uH ± -20 %", "H", "not a tolerance"),
    ("22 uH ± 20", "H", "has a unit too"),
    ("22 uH ± 20 V", "H", "not a unit of this tolerance"),
    ("22 uH ± %", "H", "not a tolerance"),
    ("±35 V", "V", "no value before"),
    ("22 uH +30 %", "H", "both sides"),
    ("22 uH +30/-10 %", "H", "has a unit too"),
    ("22 uH ± 100 %", "H", "leaves nothing"),
    ("22 uH ± 120 %", "H", "leaves nothing"),
    ("22 uH ± 30 uH", "H", "reaches down to zero"),
    ("12 V ± 100 %", "V", "leaves nothing"),
    ("85 degC ± 4 degC", "degC", "difference, in K"),
    ("85 degC ± 5 %", "degC", "difference in K"),
    ("358 K ± 5 %", "degC", "difference in K"),
    ("88 dB ± 5 %", "dB", "in dB"),
    ("12 V ± 1 dB", "V", "in dB"),
    ("26 dB ± 5 %", "V/V", "in dB"),
    ("90 % ± 5 %", "%", "ambiguous"),
    ("12 V ± 1 V ± 2 V", "V", "not a unit"),
    # range
    ("20 .. 29.2 mV", "V", "first side"),
    ("20 V .. 29.2", "V", "has no unit"),
    ("29.2 V .. 20 V", "V", "above its end"),
    ("20 V ... 29.2 V", "V", "neither a range"),
    ("1 V...5 V", "V", "neither a range"),
    ("20 V … 29.2 V", "V", "neither a range"),
    ("20 - 29.2 V", "V", "neither a range"),
    ("20-29.2 V", "V", "neither a range"),
    ("20 V – 29.2 V", "V", "neither a range"),
    ("20 V to 29.2 V", "V", "neither a range"),
    ("20 V ..", "V", "range of two"),
    (".. 20 V", "V", "range of two"),
    ("1 V .. 2 V .. 3 V", "V", "range of two"),
    ("1 V .. 3 A", "V", "unit of a current"),
    ("1 V .. 2 V ± 5 %", "V", "no tolerance"),
    # sign
    ("-22 uH", "H", "below zero"),
    ("-5 mm2", "mm2", "below zero"),
    ("-5 %", "%", "below zero"),
    ("-300 degC", "degC", "absolute zero"),
    # what is not text
    (True, "V", "yes or no"),
    (None, "V", "nothing"),
    ([1, 2], "V", "a list"),
    (b"5 V", "V", "bytes"),
    # mappings
    ({}, "V", "either value or"),
    ({"from": "measured"}, "V", "either value or"),
    ({"value": "5 V", "max": "6 V"}, "V", "either value or"),
    ({"value": {"typ": "5 V"}}, "V", "is a mapping"),
    ({"typical": "5 V"}, "V", "unknown key 'typical'"),
    ({1: "5 V"}, "V", "unknown key"),
    ({"value": "5 V", "from": "hearsay"}, "V", "'hearsay' does not say"),
    ({"value": "5 V", "from": None}, "V", "does not say"),
    ({"value": "5 V", "from": ["measured"]}, "V", "does not say"),
    ({"min": "6 V", "max": "5 V"}, "V", "rising order"),
    ({"min": "6 V", "typ": "5 V"}, "V", "rising order"),
    ({"typ": "6 V", "max": "5 V"}, "V", "rising order"),
    ({"typ": None}, "V", "nothing"),
    ({"typ": {"typ": "5 V"}}, "V", "a mapping"),
    ({"typ": "5 V ± 5 %"}, "V", "not a unit"),
    ({"min": "5", "max": "6 V"}, "V", "has no unit"),
]


@pytest.mark.parametrize(("data", "unit", "reason"), REFUSED)
def test_refused_with_reason_and_a_right_example(data: object, unit: str, reason: str) -> None:
    with pytest.raises(QuantityError) as caught:
        parse(data, unit)
    error = caught.value
    assert reason in error.problem
    assert error.expected
    assert error.problem in str(error) and error.example in str(error)
    if error.expected.startswith("one of"):
        assert error.example == "{value: 24 V, from: measured}"
    else:
        parse(error.example, unit)


RULE_REFUSED = [
    ("25 degC", "K"),
    ("10 ns", "V"),
    ("10", "V"),
    ("3 rad/s", "Hz"),
    ("6 dB", "1"),
    ("inf", None),
    ("20 V .. 29 V", "V"),
    ("12 V ± 5 %", "V"),
    ("4R7", None),
]


@pytest.mark.parametrize(("text", "unit"), RULE_REFUSED)
def test_refused_in_rule_files(text: str, unit: str | None) -> None:
    with pytest.raises(QuantityError):
        to_si(text, unit)


def test_a_range_without_its_first_unit_is_offered_back_in_full() -> None:
    with pytest.raises(QuantityError) as caught:
        parse("20 .. 29.2 kHz", "Hz")
    assert caught.value.example == "20 kHz .. 29.2 kHz"


@pytest.mark.parametrize(
    ("text", "unit", "example"),
    [
        ("376 kHz - 424 kHz", "Hz", "376 kHz .. 424 kHz"),
        ("20-29.2 V", "V", "20 V .. 29.2 V"),
        ("0.5 A to 2 A", "A", "0.5 A .. 2 A"),
        ("900 mA – 2 A", "A", "900 mA .. 2 A"),
        # no range can be made of these: the usual example
        ("29 V - 20 V", "V", "24 V"),
        ("5 V - 10 %", "V", "24 V"),
        ("5 A - 10 A", "V", "24 V"),
        ("5 foo - 10 foo", "V", "24 V"),
        ("1-2-3 V", "V", "24 V"),
    ],
)
def test_a_range_with_a_dash_is_offered_back_with_dots(text: str, unit: str, example: str) -> None:
    with pytest.raises(QuantityError) as caught:
        parse(text, unit)
    assert caught.value.example == example
    parse(example, unit)


def test_an_integer_too_long_for_text_is_refused() -> None:
    with pytest.raises(QuantityError, match="too long"):
        parse(1 << 20000, "1")
