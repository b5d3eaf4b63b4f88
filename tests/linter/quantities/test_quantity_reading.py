"""What may be written in a field, and the SI value that it means."""

import math

import pytest

from ampreview.linter.quantities.quantity import Value, parse, to_si

PLAIN = [
    ("22 uH", "H", 22e-6),
    ("22 \u00b5H", "H", 22e-6),
    ("22 \u03bcH", "H", 22e-6),
    ("22uH", "H", 22e-6),
    ("2.2e-5 H", "H", 22e-6),
    ("2.2E-5 H", "H", 22e-6),
    (".5 V", "V", 0.5),
    ("+3 V", "V", 3.0),
    ("\u22125 V", "V", -5.0),
    ("4.7\u00a0ohm", "ohm", 4.7),
    ("4.7 \u03a9", "ohm", 4.7),
    ("4.7 \u2126", "ohm", 4.7),
    ("4.7 kohm", "ohm", 4700.0),
    ("4.7 k\u03a9", "ohm", 4700.0),
    ("170 mohm", "ohm", 0.17),
    ("1 Mohm", "ohm", 1e6),
    ("384 kHz", "Hz", 384e3),
    ("1.2 MHz", "Hz", 1.2e6),
    ("50 mHz", "Hz", 0.05),
    ("100 pF", "F", 1e-10),
    ("1 F", "F", 1.0),
    ("25 nC", "C", 25e-9),
    ("3500 mAh", "Ah", 12600.0),
    ("2.5 Ah", "C", 9000.0),
    ("90 Wh", "J", 324e3),
    ("6 h", "s", 21600.0),
    ("6 h", "h", 21600.0),
    ("30 min", "s", 1800.0),
    ("45 ns", "s", 45e-9),
    ("12 mm", "m", 0.012),
    ("12 um", "m", 12e-6),
    ("3 cm", "m", 0.03),
    ("1.5 mm2", "m2", 1.5e-6),
    ("1.5 mm\u00b2", "m2", 1.5e-6),
    ("1.5 mm^2", "m2", 1.5e-6),
    ("210 cm2", "m2", 0.021),
    ("1200 mm3", "m3", 1.2e-6),
    ("8 cm\u00b3", "m3", 8e-6),
    ("25 L", "m3", 0.025),
    ("40 A2s", "A2s", 40.0),
    ("40 A\u00b2s", "A2s", 40.0),
    ("40 A2 s", "A2s", 40.0),
    ("300 kW/m3", "W/m3", 3e5),
    ("1000 W/m2", "W/m2", 1000.0),
    ("7.5 T m", "N/A", 7.5),
    ("7.5 T\u00b7m", "T m", 7.5),
    ("50 V/ns", "V/s", 50e9),
    ("50 kV/us", "V/ns", 50e9),
    ("250 mT", "T", 0.25),
    ("40 K/W", "K/W", 40.0),
    ("40 \u00b0C/W", "K/W", 40.0),
    ("25 W/(m2 K)", "W/(m2 K)", 25.0),
    ("25 g", "kg", 0.025),
    ("180 deg", "rad", math.pi),
    ("180 \u00b0", "deg", math.pi),
    ("2 rad", "deg", 2.0),
    ("25 degC", "degC", 298.15),
    ("25 \u00b0C", "degC", 298.15),
    ("25 \u2103", "degC", 298.15),
    ("-5 degC", "degC", 268.15),
    ("300 K", "degC", 300.0),
    ("15 K", "K", 15.0),
    ("90 %", "%", 0.9),
    ("90%", "%", 0.9),
    ("20 V/V", "V/V", 20.0),
    ("26.0206 dB", "V/V", 20.0),
    ("88 dB", "dB", 88.0),
    ("3", "1", 3.0),
    ("0.35", "1", 0.35),
    (3, "1", 3.0),
    (0.35, "1", 0.35),
]


@pytest.mark.parametrize(("text", "unit", "si"), PLAIN)
def test_plain_value(text: object, unit: str, si: float) -> None:
    value = parse(text, unit)
    assert value.nominal == pytest.approx(si, rel=1e-6)
    assert (value.lo, value.hi, value.form) == (value.nominal, value.nominal, "plain")


# IEC 60062:2016; the resistances are the examples of the encyclopaedia article "RKM
# code", the capacitances follow its table of letters.
LETTER_CODES = [
    ("R47", "ohm", 0.47),
    ("4R7", "ohm", 4.7),
    ("470R", "ohm", 470.0),
    ("4K7", "ohm", 4.7e3),
    ("4k7", "ohm", 4.7e3),
    ("47K", "ohm", 47e3),
    ("47K3", "ohm", 47.3e3),
    ("470K", "ohm", 470e3),
    ("4M7", "ohm", 4.7e6),
    ("4R7", "mohm", 4.7),
    ("L47", "ohm", 0.47e-3),
    ("10p", "F", 10e-12),
    ("p33", "F", 0.33e-12),
    ("2n2", "F", 2.2e-9),
    ("1u0", "F", 1e-6),
    ("1\u00b50", "F", 1e-6),
    ("4m7", "F", 4.7e-3),
    ("100n", "uF", 100e-9),
]


@pytest.mark.parametrize(("text", "unit", "si"), LETTER_CODES)
def test_letter_codes_of_iec_60062(text: str, unit: str, si: float) -> None:
    assert parse(text, unit).nominal == pytest.approx(si, rel=1e-12)


def test_levels_against_one_milliwatt_in_600_ohm_and_line_levels_in_use() -> None:
    """0 dBu drives 1 mW into 600 ohm (0.7746 V); +4 dBu = 1.228 V; -10 dBV = 0.3162 V."""
    assert parse("0 dBu", "V").nominal ** 2 / 600.0 == pytest.approx(1e-3)
    assert parse("0 dBu", "V").nominal == pytest.approx(0.7746, abs=5e-5)
    studio, home = parse("+4 dBu", "V").nominal, parse("-10 dBV", "V").nominal
    assert studio == pytest.approx(1.228, abs=5e-4)
    assert home == pytest.approx(0.3162, abs=5e-5)
    assert 20.0 * math.log10(studio / home) == pytest.approx(11.78, abs=0.01)


# nominal, lowest and highest worked out by hand
SPREADS = [
    ("22 uH ± 20 %", "H", 17.6e-6, 22e-6, 26.4e-6),
    ("22 uH +/- 20 %", "H", 17.6e-6, 22e-6, 26.4e-6),
    ("22uH±20%", "H", 17.6e-6, 22e-6, 26.4e-6),
    ("22 uH +30 % -10 %", "H", 19.8e-6, 22e-6, 28.6e-6),
    ("22 uH -10 % +30 %", "H", 19.8e-6, 22e-6, 28.6e-6),
    ("12 V ± 0.5 V", "V", 11.5, 12.0, 12.5),
    ("12 V ± 500 mV", "V", 11.5, 12.0, 12.5),
    ("12 V +0.5 V -0.2 V", "V", 11.8, 12.0, 12.5),
    ("-12 V ± 5 %", "V", -12.6, -12.0, -11.4),
    ("0 V ± 50 mV", "V", -0.05, 0.0, 0.05),
    ("85 degC ± 4 K", "degC", 354.15, 358.15, 362.15),
    ("88 dB ± 2 dB", "dB", 86.0, 88.0, 90.0),
    ("20 dB ± 6.0206 dB", "V/V", 5.0, 10.0, 20.0),
    ("0 dBV +6.0206 dB -0 dB", "V", 1.0, 1.0, 2.0),
    ("20 V/V ± 5 %", "V/V", 19.0, 20.0, 21.0),
    ("3 ± 10 %", "1", 2.7, 3.0, 3.3),
    ("3 ± 1", "1", 2.0, 3.0, 4.0),
    ("4R7 ± 5 %", "ohm", 4.465, 4.7, 4.935),
    ("2n2 ± 10 %", "F", 1.98e-9, 2.2e-9, 2.42e-9),
    ("100 uF +100 % -20 %", "F", 80e-6, 100e-6, 200e-6),
]


@pytest.mark.parametrize(("text", "unit", "lo", "nominal", "hi"), SPREADS)
def test_tolerance(text: str, unit: str, lo: float, nominal: float, hi: float) -> None:
    value = parse(text, unit)
    assert (value.lo, value.nominal, value.hi) == pytest.approx((lo, nominal, hi), rel=1e-6)
    assert value.form == "tolerance"


RANGES = [
    ("20 V .. 29.2 V", "V", 20.0, 29.2),
    ("20 V..29.2 V", "V", 20.0, 29.2),
    ("20 V .. .5 kV", "V", 20.0, 500.0),
    ("-5 degC .. 38 degC", "degC", 268.15, 311.15),
    ("500 mV .. 2 V", "V", 0.5, 2.0),
    ("4R7 .. 5R6", "ohm", 4.7, 5.6),
    ("85 % .. 95 %", "%", 0.85, 0.95),
    ("3 .. 5", "1", 3.0, 5.0),
]


@pytest.mark.parametrize(("text", "unit", "lo", "hi"), RANGES)
def test_range(text: str, unit: str, lo: float, hi: float) -> None:
    value = parse(text, unit)
    assert (value.lo, value.hi) == pytest.approx((lo, hi), rel=1e-12)
    assert value.nominal == pytest.approx((lo + hi) / 2.0, rel=1e-12)
    assert value.form == "range"


LINES = [
    ({"min": "8 ns", "typ": "12 ns", "max": "25 ns"}, (8e-9, 12e-9, 25e-9)),
    ({"typ": "16 ns"}, (16e-9, 16e-9, 16e-9)),
    ({"min": "8 ns", "typ": "12 ns"}, (8e-9, 12e-9, 12e-9)),
    ({"typ": "12 ns", "max": "25 ns"}, (12e-9, 12e-9, 25e-9)),
    ({"min": "8 ns", "max": "25 ns"}, (8e-9, 16.5e-9, 25e-9)),
    ({"max": "25 ns"}, (25e-9, 25e-9, 25e-9)),
]


@pytest.mark.parametrize(("line", "sides"), LINES)
def test_data_sheet_line(line: dict[str, str], sides: tuple[float, float, float]) -> None:
    value = parse(line, "s")
    assert (value.lo, value.nominal, value.hi) == pytest.approx(sides)
    assert (value.form, value.sides) == ("line", frozenset(line))


def test_provenance() -> None:
    measured = parse({"value": "375 ns", "from": "measured"}, "s")
    assert measured == Value(375e-9, 375e-9, 375e-9, "plain", "measured")
    spread = parse({"value": "22 uH ± 20 %", "from": "supplier"}, "H")
    assert (spread.form, spread.provenance) == ("tolerance", "supplier")
    line = parse({"typ": "12 ns", "from": "datasheet"}, "s")
    assert (line.provenance, line.sides) == ("datasheet", frozenset({"typ"}))
    assert parse({"value": "12 ns"}, "s") == parse("12 ns", "s")


def test_text_is_kept_for_messages_and_does_not_make_values_differ() -> None:
    assert parse("0.022 mH", "H").text == "0.022 mH"
    assert parse({"typ": "12 ns", "max": "25 ns"}, "s").text == "{typ: 12 ns, max: 25 ns}"
    assert parse("0.022 mH", "H") == parse("22 uH", "H")


RULE_VALUES = [
    ("10 ns", None, 10e-9),
    ("-5 degC", None, 268.15),
    ("90 %", None, 0.9),
    ("3", None, 3.0),
    ("6 dB", None, 6.0),
    ("6.0206 dB", "V/V", 2.0),
    ("4R7", "ohm", 4.7),
    ("0.9", "%", 0.9),
    ("-20 ns", "s", -20e-9),
    ("0.0039 1/K", None, 0.0039),
    ("0.39 %/K", "1/K", 0.0039),
    # 1 mm^1.45 = (1e-3 m)^1.45
    ("2 A/K^0.44/mm^1.45", None, 2.0 * 1e-3**-1.45),
]


@pytest.mark.parametrize(("text", "unit", "si"), RULE_VALUES)
def test_values_of_rule_files(text: str, unit: str | None, si: float) -> None:
    assert to_si(text, unit) == pytest.approx(si, rel=1e-6)
