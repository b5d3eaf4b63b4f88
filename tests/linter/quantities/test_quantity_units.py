"""The units known, held against pint's full registry; when pint is imported; speed."""

import subprocess
import sys

import pint
import pytest

from ampreview.linter.quantities.quantity import quantity, same_dimension
from ampreview.linter.quantities.units import known_symbols, registry, unit_of

FULL = pint.UnitRegistry()

# What the trade writes and pint's registry spells differently or reads as something else.
SPECIAL = {"%": "percent", "degC": "degC"}


def in_order(amount: "pint.Quantity[float]") -> str:
    """Pint's base dimensions by name: its own order depends on what was asked before."""
    powers = sorted(amount.dimensionality.items())
    names = (name if power == 1 else f"{name}^{power:g}" for name, power in powers)
    return " ".join(names) or "dimensionless"


@pytest.mark.parametrize("symbol", sorted(known_symbols()))
def test_each_symbol_against_the_full_registry(symbol: str) -> None:
    """Factor and dimension of every symbol, with every prefix, by pint's own definitions."""
    ours = unit_of(symbol)
    if symbol == "degC":
        assert FULL.Quantity(0.0, "degC").to("kelvin").magnitude == float(ours.offset)
        return
    theirs = FULL.Quantity(1.0, SPECIAL.get(symbol, symbol)).to_base_units()
    assert float(ours.factor) == pytest.approx(theirs.magnitude, rel=1e-12)
    assert ours.dimension == in_order(theirs)


COMPOUND = [
    ("K/W", "kelvin / watt"),
    ("A2s", "ampere ** 2 * second"),
    ("kW/m3", "kilowatt / meter ** 3"),
    ("V/ns", "volt / nanosecond"),
    ("T m", "tesla * meter"),
    ("W/(m2 K)", "watt / (meter ** 2 * kelvin)"),
    ("1/K", "1 / kelvin"),
    ("A/K^0.44", "ampere / kelvin ** 0.44"),
    ("mm^-3", "1 / millimeter ** 3"),
    ("cm\u00b2", "centimeter ** 2"),
]


@pytest.mark.parametrize(("text", "meant"), COMPOUND)
def test_compound_units_against_the_full_registry(text: str, meant: str) -> None:
    theirs = FULL.Quantity(1.0, meant).to_base_units()
    assert float(unit_of(text).factor) == pytest.approx(theirs.magnitude, rel=1e-12)
    assert unit_of(text).dimension == in_order(theirs)


def test_a_force_factor_may_be_written_in_tesla_metre_or_newton_per_ampere() -> None:
    assert same_dimension("T m", "N/A")
    assert not same_dimension("T", "N/A")


def test_same_dimension_looks_at_nothing_but_the_dimension() -> None:
    assert same_dimension("degC", "K")
    assert same_dimension("%", "1") and same_dimension("V/V", "dB")
    assert same_dimension("Wh", "J") and same_dimension("dBu", "V")
    assert not same_dimension("V", "A")


@pytest.mark.parametrize(
    ("text", "unit", "number", "base"),
    [
        ("22 uH", "H", 22e-6, "henry"),
        ("25 degC", "degC", 298.15, "kelvin"),
        ("15 K", "K", 15.0, "kelvin"),
        ("90 %", "%", 0.9, "dimensionless"),
        ("88 dB", "dB", 88.0, "dimensionless"),
        ("0 dBV", "V", 1.0, "volt"),
        ("3", "1", 3.0, "dimensionless"),
        ("1.5 mm2", "mm2", 1.5e-6, "meter ** 2"),
        ("50 V/ns", "V/ns", 5e10, "volt / second"),
    ],
)
def test_quantity_for_the_dimension_test(text: str, unit: str, number: float, base: str) -> None:
    result = quantity(text, unit)
    assert result.to(base).magnitude == pytest.approx(number, rel=1e-12)


def test_quantities_of_the_registry_multiply_to_the_right_dimension() -> None:
    power = quantity("10 V", "V") ** 2 / quantity("4 ohm", "ohm")
    assert power.to("watt").magnitude == pytest.approx(25.0)
    with pytest.raises(pint.DimensionalityError):
        power.to("volt")


def test_importing_the_module_does_not_import_pint() -> None:
    code = "import sys, ampreview.linter.quantities.quantity; print('pint' in sys.modules)"
    answer = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, check=True, text=True
    )
    assert answer.stdout.strip() == "False"


def test_the_registry_holds_no_unit_that_the_file_does_not_define() -> None:
    with pytest.raises(pint.UndefinedUnitError):
        registry().parse_units("furlong")
