"""Assumptions and constants of all figures, written down a second time.

What stands in for a silent value decides verdicts as a limit does, so a change has to be
made in two places.  ``assumptions.csv`` holds every default of an input (with the side it
leans to) and every constant; it cannot tell whether they are right.  Where one follows
from a published number by a line of arithmetic, that line is worked out here.
"""

import csv
import io
import math
from pathlib import Path

import pytest

from ampreview.linter.check import Arguments, Assumption, Constant, Input
from ampreview.linter.evaluation.bringup_steps import amounts, steps_of
from ampreview.linter.evaluation.catalogue import load
from ampreview.linter.quantities.quantity import to_si

TABLE = Path(__file__).with_name("assumptions.csv")
Row = tuple[str, str, str, str]


def used() -> set[Row]:
    """Every default and constant of the catalogue, and how well stated and found must agree."""
    catalogue = load()
    derived = catalogue.derived.values()
    inputs: list[Arguments] = [entry.check.inputs for entry in catalogue.entries]
    inputs += [way.inputs for item in derived for way in item.ways]
    inputs += [amount.inputs for named in steps_of(catalogue) for amount in amounts(named.step)]
    rows = {row for arguments in inputs for row in map(row_of, arguments.values()) if row}
    for item in derived:
        if item.stated_at:
            rows.add(("agreement", item.name, str(item.agree), ""))
        for way in item.ways:
            if way.assumes:
                rows.add(("way", f"{item.name}: {way.formula}", "", leaning(way.assumes)))
    return rows


def leaning(assumed: Assumption) -> str:
    """The side it leans to, and whether it is a rough stand-in."""
    return f"{assumed.leaning} placeholder" if assumed.placeholder else assumed.leaning


def row_of(item: Input | Constant) -> Row | None:
    """An argument as a row of the table, if it holds a number of its own."""
    if isinstance(item, Constant):
        return ("constant", item.meaning, item.value, "")
    if item.default is None:
        return None
    return ("default", item.path, str(item.default.value), leaning(item.default))


def written() -> set[Row]:
    """The rows of the table."""
    with TABLE.open(newline="") as file:
        return {(r["kind"], r["what"], r["value"], r["leaning"]) for r in csv.DictReader(file)}


def lines(rows: set[Row]) -> str:
    """Rows as they stand in the file."""
    text = io.StringIO()
    csv.writer(text, lineterminator="\n").writerows(sorted(rows))
    return text.getvalue()


def test_assumptions_and_constants_stand_in_the_table() -> None:
    added, gone = used() - written(), written() - used()
    changes = f"\nadd\n{lines(added)}" if added else ""
    changes += f"\ntake out\n{lines(gone)}" if gone else ""
    if changes:
        text = f"look the basis up, then in tests/rules/assumptions.csv{changes}"
        pytest.fail(text, pytrace=False)


def test_a_floor_or_an_absent_part_adds_nothing() -> None:
    """A term left out is 0, a guard that is absent never acts; words say it in words."""
    for kind, what, value, side in used():
        if kind == "default" and side in ("floor", "absent") and value[0].isdigit():
            neutral = ("1.0", "100 %", "1 ohm")
            assert float(value.split()[0]) == 0.0 or value in neutral, what


# meaning of the constant, and the number worked out from what is published
FOLLOWS = [
    ("peak over rms of a sine", 10 * math.log10(2)),
    ("fundamental of a square wave of amplitude 1", 4 / math.pi),
    ("peak of 30 V rms", 30 * math.sqrt(2)),
    ("one square mil", (25.4e-6) ** 2),
    ("15 years, life of the seal", 15 * 365 * 24 * 3600.0),
    ("speed of light", 299792458.0),  # SI, exact
    ("field of a current over ground times the distance", 376.73 / (2 * math.pi)),
    ("phase margin of an integrator without delay", math.pi / 2),
    ("winding at 100 degC", 100.0 - 20.0),
    ("height that divides two columns", 3050.0),  # IPC-2221 table 6-1
    ("resistivity of copper at 20 degC", 1 / 58.0e6),  # IEC 60028: 58 MS/m
    ("rise of the resistance of copper, of its value at 20 degC", 0.00393),  # IEC 60028
    ("25 degC, for which the value is printed", 298.15),
    ("100 degC", 373.15),
    ("from 25 degC to 150 degC, where the hot factor is printed", 125.0),
    ("of copper foil", 390.0),  # copper, handbooks: 385 to 400 W/(m K)
    ("lower end of the radiated range", 30e6),  # CISPR 32
    ("distance of the limits", 10.0),
    ("audio voltage of class 1, rms", 71.0),  # IEC 62368-1, table E.1
    ("audio voltage of class 2, rms", 120.0),
    ("direct voltage of class 1", 60.0),  # IEC 62368-1, table 4
    ("direct voltage of class 2", 120.0),
    ("alternating voltage of class 1, rms", 30.0),
    ("chart current of an outer layer", 0.048),  # IPC-2221, 6.2
    ("chart current, inner layer", 0.024),
    ("length of a loud passage", 0.020),
    ("time after disconnection", 2.0),  # IEC 62368-1, 5.5.2.2
]


@pytest.mark.parametrize(("meaning", "expected"), FOLLOWS)
def test_constant_follows_from_a_published_number(meaning: str, expected: float) -> None:
    found = [value for kind, what, value, _ in used() if kind == "constant" and what == meaning]
    assert found, "no such constant"
    for value in found:
        assert to_si(value) == pytest.approx(expected, rel=2e-3)
