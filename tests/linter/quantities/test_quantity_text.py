"""Numbers for people and canonical spec text."""

import math

import pytest

from ampreview.linter.quantities.quantity import Value, from_si, parse, show, spell

SHOWN = [
    (22e-6, "H", "22 µH"),
    (4.7e-3, "ohm", "4.7 mΩ"),
    (4700.0, "ohm", "4.7 kΩ"),
    (0.0, "V", "0 V"),
    (-0.0, "V", "0 V"),
    (-12.345, "V", "-12.3 V"),
    (0.9996, "V", "1 V"),
    (999.6, "V", "1 kV"),
    (1e3, "Hz", "1 kHz"),
    (1e-9, "s", "1 ns"),
    (5400.0, "s", "5400 s"),
    (1500.0, "m", "1500 m"),
    (0.0125, "m", "12.5 mm"),
    (4.7e-3, "F", "4700 µF"),
    (2.2, "F", "2.2 F"),
    (3.3e-15, "F", "0.0033 pF"),
    (358.15, "degC", "85 °C"),
    (268.15, "degC", "-5 °C"),
    (15.0, "K", "15 K"),
    (1.234, "K/W", "1.23 K/W"),
    (1.5e-6, "mm2", "1.5 mm²"),
    (40.0, "A2s", "40 A²s"),
    (3e5, "kW/m3", "300 kW/m³"),
    (0.025, "L", "25 L"),
    (9000.0, "Ah", "2.5 Ah"),
    (324e3, "Wh", "90 Wh"),
    (21600.0, "h", "6 h"),
    (0.9, "%", "90 %"),
    (6.0, "dB", "6 dB"),
    (20.0, "V/V", "20 V/V"),
    (5e10, "V/ns", "50 V/ns"),
    (math.pi, "deg", "180 deg"),
    (0.17, "mohm", "170 mΩ"),
    (3.0, "1", "3"),
    (0.70711, "1", "0.707"),
    (12345.0, "1", "12345"),
    (1.2e-5, "1", "0.000012"),
    (999.6, "1", "1000"),
    (math.inf, "V", "infinite"),
    (-math.inf, "V", "-infinite"),
    (math.nan, "V", "undefined"),
]


@pytest.mark.parametrize(("x", "unit", "text"), SHOWN)
def test_show(x: float, unit: str, text: str) -> None:
    assert show(x, unit) == text


def test_show_with_more_digits() -> None:
    assert show(12.3456, "V", digits=5) == "12.346 V"


@pytest.mark.parametrize(
    ("x", "unit", "number"),
    [(298.15, "degC", 25.0), (0.9, "%", 90.0), (1.5e-6, "mm2", 1.5), (10.0, "dBV", 20.0)],
)
def test_number_in_a_unit(x: float, unit: str, number: float) -> None:
    assert from_si(x, unit) == pytest.approx(number)


SPELLED = [
    ("22 \u00b5H", "H", "22 uH"),
    ("0.022 mH", "H", "22 uH"),
    ("4.7 k\u03a9", "ohm", "4.7 kohm"),
    ("4R7 ± 5 %", "ohm", "4.7 ohm ± 5 %"),
    ("22 uH+/-20%", "H", "22 uH ± 20 %"),
    ("22 uH -10 % +30 %", "H", "22 uH +30 % -10 %"),
    ("12 V ± 0.5 V", "V", "12 V ± 500 mV"),
    ("0 V ± 50 mV", "V", "0 V ± 50 mV"),
    ("85 \u00b0C ± 4 K", "degC", "85 degC ± 4 K"),
    ("88 dB ± 2 dB", "dB", "88 dB ± 2 dB"),
    ("3 ± 1", "1", "3 ± 1"),
    ("20 V..29.2 V", "V", "20 V .. 29.2 V"),
    ("-5 degC .. 38 degC", "degC", "-5 degC .. 38 degC"),
    ("20 dB", "V/V", "10 V/V"),
    ("1.5 mm\u00b2", "mm2", "1.5 mm2"),
    ({"max": "25 ns", "typ": "0.012 us"}, "s", {"typ": "12 ns", "max": "25 ns"}),
    ({"value": "375 ns", "from": "measured"}, "s", {"value": "375 ns", "from": "measured"}),
    ({"typ": "3", "from": "estimate"}, "1", {"typ": "3", "from": "estimate"}),
]


@pytest.mark.parametrize(("data", "unit", "text"), SPELLED)
def test_canonical_text(data: object, unit: str, text: object) -> None:
    assert spell(parse(data, unit), unit) == text


def test_a_value_made_by_the_program_is_spelled_round() -> None:
    assert spell(Value(0.1 + 0.2, 0.1 + 0.2, 0.1 + 0.2), "V") == "300 mV"
