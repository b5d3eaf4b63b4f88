"""Creepage against the published table, and the code of enclosure protection."""

import pytest

from ampreview.rules.formulas.safety import gap_needed, ip_digits
from ampreview.rules.safety.ingress_and_vents import figure as contradictions


def gap(v: float, degree: int, surface: str = "outer-bare", altitude: float = 0.0) -> float:
    return gap_needed(v, degree, surface, altitude, 1.0, 1.0, 1.0)


@pytest.mark.parametrize(
    ("v", "degree_1", "degree_2", "degree_3"),
    [
        (10.0, 0.025, 0.040, 1.0),
        (12.5, 0.025, 0.040, 1.05),
        (16.0, 0.025, 0.040, 1.1),
        (20.0, 0.025, 0.040, 1.2),
        (25.0, 0.025, 0.040, 1.25),
        (32.0, 0.025, 0.040, 1.3),
        (40.0, 0.025, 0.040, 1.8),
        (50.0, 0.025, 0.040, 1.9),
        (63.0, 0.040, 0.063, 2.0),
        (80.0, 0.063, 0.100, 2.1),
        (100.0, 0.100, 0.160, 2.2),
        (125.0, 0.160, 0.250, 2.4),
        (160.0, 0.250, 0.400, 2.5),
        (200.0, 0.400, 0.630, 3.2),
        (250.0, 0.560, 1.00, 4.0),
        (320.0, 0.75, 1.6, 5.0),
        (400.0, 1.0, 2.0, 6.3),
    ],
)
def test_iec_60664_table_f4_as_printed_by_wago_2015(v, degree_1, degree_2, degree_3) -> None:
    # printed wiring of degree 1 and 2; degree 3, material group III; p. 594 of the catalogue
    assert gap(v, 1) == degree_1
    assert gap(v, 2) == degree_2
    assert gap(v, 3) == degree_3
    assert gap(v * 1.001, 1) >= degree_1


def test_a_coating_counts_as_clean_and_solder_resist_does_not() -> None:
    assert gap(25.0, 3, "assembly-coated") == gap(25.0, 1)
    assert gap(25.0, 3, "outer-coated") == gap(25.0, 3)


@pytest.mark.parametrize(
    ("altitude", "factor"),
    [(2000.0, 1.0), (2500.0, 1.14), (3000.0, 1.14), (4000.0, 1.29), (5000.0, 1.48)],
)
def test_altitude_factors_of_clearance(altitude: float, factor: float) -> None:
    # IEC 60664-1 table A.2, from memory; 0.8 mm of air at degree 3, against 1.0 mm of creepage
    assert gap(10.0, 3, altitude=altitude) == pytest.approx(max(1.0, 0.8 * factor), rel=1e-12)


@pytest.mark.parametrize(
    ("code", "digits"),
    [
        ("IP54", (5, 4)),
        ("IP 67", (6, 7)),
        ("IPX4", (0, 4)),
        ("IP2X", (2, 0)),
        ("IP69K", (6, 9)),
        ("IP23CS", (2, 3)),
        ("IP7", (-1, -1)),
        ("IP77", (-1, -1)),
        ("IP540", (-1, -1)),
        ("waterproof", (-1, -1)),
        ("none", (0, 0)),
    ],
)
def test_codes_of_iec_60529(code: str, digits: tuple[int, int]) -> None:
    assert ip_digits(code) == digits


@pytest.mark.parametrize(
    ("code", "openings", "count"),
    [
        ("IP65", "vented", 2),
        ("IP54", "vented", 1),
        ("IP24", "vented", 0),
        ("IPX5", "vented", 1),
        ("IP65", "sealed", 0),
    ],
)
def test_air_holes_contradict_dust_and_jets(code: str, openings: str, count: int) -> None:
    assert contradictions(code, openings) == count
