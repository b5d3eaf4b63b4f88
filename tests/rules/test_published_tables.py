"""Tables of standards and makers, typed a second time row by row as they are printed.

The code holds them column by column or transposed; a slip in either shows here.  What was
read where is said at each table; "from memory" means that the standard was not at hand.
"""

import pytest

from ampreview.linter.quantities.quantity import to_si
from ampreview.rules.formulas.acoustics import (
    AIR_DENSITY,
    ONE_METRE,
    P_REFERENCE,
    R_SENSITIVITY,
    SOUND_SPEED,
    V_SENSITIVITY,
    allowed_level,
)
from ampreview.rules.formulas.conductors import spacing_needed
from ampreview.rules.formulas.fuse import PULSE_SHARE, continuous_current, opening_current
from ampreview.rules.formulas.safety import gap_needed
from ampreview.rules.formulas.touch import allowed_rise

# IPC-2221 table 6-1, from memory: row ends at [V]; B1 inner, B2 outer bare up to 3050 m,
# B3 above, B4 outer with solder mask, A5 assembly coated, A6 lead bare, A7 lead coated [mm].
COLUMNS = (
    ("inner", 0),
    ("outer-bare", 0),
    ("outer-bare", 3051),
    ("outer-coated", 0),
    ("assembly-coated", 0),
    ("lead-bare", 0),
    ("lead-coated", 0),
)
SPACING = (
    (15, 0.05, 0.1, 0.1, 0.05, 0.13, 0.13, 0.13),
    (30, 0.05, 0.1, 0.1, 0.05, 0.13, 0.25, 0.13),
    (50, 0.1, 0.6, 0.6, 0.13, 0.13, 0.4, 0.13),
    (100, 0.1, 0.6, 1.5, 0.13, 0.13, 0.5, 0.13),
    (150, 0.2, 0.6, 3.2, 0.4, 0.4, 0.8, 0.4),
    (170, 0.2, 1.25, 3.2, 0.4, 0.4, 0.8, 0.4),
    (250, 0.2, 1.25, 6.4, 0.4, 0.4, 0.8, 0.4),
    (300, 0.2, 1.25, 12.5, 0.4, 0.4, 0.8, 0.8),
    (500, 0.25, 2.5, 12.5, 0.8, 0.8, 1.5, 0.8),
)
PER_VOLT = (0.0025, 0.005, 0.025, 0.00305, 0.00305, 0.00305, 0.00305)


@pytest.mark.parametrize("number", range(len(SPACING)))
@pytest.mark.parametrize("column", range(7))
def test_ipc_2221_table_6_1(number: int, column: int) -> None:
    surface, altitude = COLUMNS[column]
    first = SPACING[number - 1][0] + 0.1 if number else 1.0
    for volts in (first, SPACING[number][0]):
        gap = spacing_needed(volts, surface, altitude, 1.0, 1e-3, 3050.0)
        assert gap * 1e3 == pytest.approx(SPACING[number][column + 1]), volts


@pytest.mark.parametrize("column", range(7))
def test_ipc_2221_above_500_volt(column: int) -> None:
    surface, altitude = COLUMNS[column]
    gap = spacing_needed(600.0, surface, altitude, 1.0, 1e-3, 3050.0)
    assert gap * 1e3 == pytest.approx(SPACING[-1][column + 1] + 100 * PER_VOLT[column])


# IEC 62368-1 table 38, class TS1, from memory: metal; glass and the like; plastic; wood [degC].
TOUCH = {
    "over-1-min": (48, 48, 48, 48),
    "10-s-to-1-min": (51, 56, 60, 60),
    "1-to-10-s": (60, 71, 77, 107),
    "under-1-s": (70, 85, 94, 140),
}


@pytest.mark.parametrize("touch", TOUCH)
def test_iec_62368_1_table_38(touch: str) -> None:
    for material, limit in zip(("metal", "glass", "plastic", "wood"), TOUCH[touch], strict=True):
        assert allowed_rise(touch, material, "ordinary") == limit - 25
        assert allowed_rise(touch, material, "instructed") == limit + 10 - 25


# IEC 60664-1 table F.4 as printed in WAGO, Full line catalog vol. 1, 2015, p. 594: voltage;
# printed wiring of degree 1 and of degree 2; degree 3, material group III [mm].
CREEPAGE = (
    (10, 0.025, 0.04, 1.0),
    (12.5, 0.025, 0.04, 1.05),
    (16, 0.025, 0.04, 1.1),
    (20, 0.025, 0.04, 1.2),
    (25, 0.025, 0.04, 1.25),
    (32, 0.025, 0.04, 1.3),
    (40, 0.025, 0.04, 1.8),
    (50, 0.025, 0.04, 1.9),
    (63, 0.04, 0.063, 2.0),
    (80, 0.063, 0.1, 2.1),
    (100, 0.1, 0.16, 2.2),
    (125, 0.16, 0.25, 2.4),
    (160, 0.25, 0.4, 2.5),
    (200, 0.4, 0.63, 3.2),
    (250, 0.56, 1.0, 4.0),
    (320, 0.75, 1.6, 5.0),
    (400, 1.0, 2.0, 6.3),
)


@pytest.mark.parametrize("number", range(len(CREEPAGE)))
@pytest.mark.parametrize("degree", [1, 2, 3])
def test_iec_60664_1_table_f_4(number: int, degree: int) -> None:
    first = CREEPAGE[number - 1][0] + 0.01 if number else 1.0
    for volts in (first, CREEPAGE[number][0]):
        gap = gap_needed(volts, degree, "outer-bare", 0.0, 1.0, 1.0, 1e-3)
        assert gap * 1e3 == pytest.approx(CREEPAGE[number][degree]), volts


# IEC 60664-1 table A.2, from memory; 0.8 mm at degree 3 (table F.2).
@pytest.mark.parametrize(
    ("altitude", "factor"),
    [
        (0, 1.0),
        (2000, 1.0),
        (2001, 1.14),
        (3000, 1.14),
        (3001, 1.29),
        (4000, 1.29),
        (4001, 1.48),
        (5000, 1.48),
    ],
)
def test_iec_60664_1_clearance_and_altitude(altitude: int, factor: float) -> None:
    """1 V: at degree 2 the creepage of 0.04 mm is the least clearance too, so height shows."""
    two = gap_needed(1.0, 2, "outer-bare", altitude, 1.0, 1.0, 1e-3)
    assert two * 1e3 == pytest.approx(0.04 * factor)
    three = gap_needed(1.0, 3, "outer-bare", altitude, 1.0, 1.0, 1e-3)
    assert three * 1e3 == pytest.approx(max(1.0, 0.8 * factor))


def test_littelfuse_pulse_cycles() -> None:
    """Fuseology, chart 2: 100, 1000, 10 000, 100 000 pulses at 48, 38, 29, 22 % of the I2t."""
    assert PULSE_SHARE == {1e2: 0.48, 1e3: 0.38, 1e4: 0.29, 1e5: 0.22}


def test_currents_of_the_two_fuse_standards() -> None:
    """UL 248-14: 75 % at length, opens at 135 % (Littelfuse, p. 12); IEC 60127-2: 100, 210 %."""
    assert continuous_current(8.0, "ul-248-14", 1.0) == pytest.approx(6.0)
    assert continuous_current(8.0, "iec-60127", 1.0) == pytest.approx(8.0)
    assert opening_current(8.0, "ul-248-14") == pytest.approx(10.8)
    assert opening_current(8.0, "iec-60127") == pytest.approx(16.8)


# NIOSH 98-126: 85 dBA, 8 h, 3 dB, nothing above 140 dBA; 29 CFR 1910.95 table G-16: 90 dBA,
# 8 h, 5 dB, table ends at 115 dBA; 2003/10/EC: 87 dB(A), 8 h, equal energy, peak 140 dB(C);
# ITU-T H.870: 80 dBA (children 75) for 40 h a week.
@pytest.mark.parametrize(
    ("rule", "level", "hours", "exchange", "ceiling"),
    [
        ("niosh", 85, 8, 3.0, 140),
        ("osha", 90, 8, 5.0, 115),
        ("eu-2003-10", 87, 8, 3.0103, 140),
        ("who-itu-adult", 80, 40 / 7, 3.0103, 140),
        ("who-itu-child", 75, 40 / 7, 3.0103, 140),
    ],
)
def test_exposure_rules(rule, level, hours, exchange, ceiling) -> None:
    assert allowed_level(hours * 3600, rule, 3600.0) == pytest.approx(level)
    assert allowed_level(hours * 900, rule, 3600.0) == pytest.approx(level + 2 * exchange)
    assert allowed_level(1e-6, rule, 3600.0) == pytest.approx(ceiling)


def test_constants_of_acoustics() -> None:
    """1 W in 8 ohm; dry air as an ideal gas at 24 degC; ISO 1683."""
    assert to_si(V_SENSITIVITY.value) ** 2 / to_si(R_SENSITIVITY.value) == pytest.approx(1.0)
    assert to_si(V_SENSITIVITY.value) == pytest.approx(2.83, rel=1e-3)
    assert to_si(ONE_METRE.value) == 1.0
    assert to_si(P_REFERENCE.value) == pytest.approx(20e-6)
    kelvin = 273.15 + 24
    assert to_si(AIR_DENSITY.value) == pytest.approx(101325 / (287.05 * kelvin), rel=0.01)
    assert to_si(SOUND_SPEED.value) == pytest.approx((1.4 * 287.05 * kelvin) ** 0.5, rel=0.01)


def test_tables_go_on_with_their_last_row() -> None:
    """Beyond 400 V and 5000 m nothing is printed: the last row is kept, the check says so."""
    assert gap_needed(450.0, 2, "outer-bare", 0.0, 1.0, 1.0, 1e-3) * 1e3 == pytest.approx(2.0)
    assert gap_needed(1.0, 2, "outer-bare", 6e3, 1.0, 1.0, 1e-3) * 1e3 == pytest.approx(0.0592)
