"""Rules for hearing against their published tables; each test is named after its table."""

import numpy as np
import pytest

from ampreview.rules.formulas.acoustics import EXPOSURE_RULES, allowed_level

HOUR = 3600.0


@pytest.mark.parametrize(
    ("hours", "level"), [(8, 85), (4, 88), (2, 91), (1, 94), (0.5, 97), (0.25, 100)]
)
def test_niosh_recommended_exposure_limit(hours: float, level: float) -> None:
    """NIOSH sound level app page: 85 dBA 8 h ... 100 dBA 15 min."""
    assert allowed_level(hours * HOUR, "niosh", HOUR) == pytest.approx(level, abs=1e-9)


def test_niosh_dose_and_time_weighted_average() -> None:
    """2 h at 91 and 1 h at 94 dBA are a dose of 200 %; NIOSH: TWA = 10 log10(D/100) + 85.

    The same dose over 8 h comes from one level; the rule must allow 3 dB less for it.
    """
    twa = 10 * np.log10(200 / 100) + 85
    assert twa - allowed_level(8 * HOUR, "niosh", HOUR) == pytest.approx(3.0, abs=0.02)


G_16 = [(8, 90), (6, 92), (4, 95), (3, 97), (2, 100), (1.5, 102), (1, 105), (0.5, 110), (0.25, 115)]
G_16A = [
    (32, 80),
    (16, 85),
    (8, 90),
    (6.1, 92),
    (4, 95),
    (3.0, 97),
    (2, 100),
    (1, 105),
    (0.25, 115),
]


@pytest.mark.parametrize(("hours", "level"), [*G_16, *G_16A])
def test_29_cfr_1910_95_table_g_16(hours: float, level: float) -> None:
    """Times in the table are rounded by up to 1.5 %, which is 0.11 dB at 5 dB a halving."""
    rounding = 5 * np.log2(1.015)
    assert allowed_level(hours * HOUR, "osha", HOUR) == pytest.approx(level, abs=rounding)


def test_29_cfr_1910_95_allows_nothing_above_115() -> None:
    assert allowed_level(0.01 * HOUR, "osha", HOUR) == 115.0


@pytest.mark.parametrize(
    ("hours", "level"), [(8, 87), (4, 90), (2, 93), (1, 96), (0.5, 99), (0.25, 102)]
)
def test_scenihr_table_3_for_the_limit_of_2003_10_ec(hours: float, level: float) -> None:
    """The table takes 3 dB for half the time; equal energy is 3.01, up to 0.06 dB at 15 min."""
    assert allowed_level(hours * HOUR, "eu-2003-10", HOUR) == pytest.approx(level, abs=0.06)


@pytest.mark.parametrize("hours", [0.25, 1.0, 3.0, 8.0, 12.0])
def test_directive_2003_10_ec_by_energy(hours: float) -> None:
    """Level over 8 h from squared pressure times time must come out as 87 dB(A)."""
    level = allowed_level(hours * HOUR, "eu-2003-10", HOUR)
    energy = (20e-6 * 10 ** (level / 20)) ** 2 * hours
    over_day = 10 * np.log10(energy / 8 / 20e-6**2)
    assert over_day == pytest.approx(87.0, abs=1e-3)


@pytest.mark.parametrize(
    ("rule", "pascal_squared_hours"), [("who-itu-adult", 1.6), ("who-itu-child", 0.506)]
)
@pytest.mark.parametrize("weekly", [0.4, 1.265, 4.0, 12.65, 40.0])
def test_itu_t_h_870_weekly_dose(rule: str, pascal_squared_hours: float, weekly: float) -> None:
    """80 dBA (children 75 dBA) 40 h a week: 1.6 (0.506) Pa2h, in seven equal days."""
    level = allowed_level(weekly / 7 * HOUR, rule, HOUR)
    dose = (20e-6 * 10 ** (level / 20)) ** 2 * weekly
    assert dose == pytest.approx(pascal_squared_hours, rel=2e-3)


@pytest.mark.parametrize(
    ("weekly", "level"), [(40, 80), (12.65, 85), (4, 90), (1.265, 95), (0.4, 100)]
)
def test_itu_t_h_870_levels(weekly: float, level: float) -> None:
    found = allowed_level(weekly / 7 * HOUR, "who-itu-adult", HOUR)
    assert found == pytest.approx(level, abs=2e-3)


def test_every_rule_is_a_word_of_the_spec() -> None:
    from ampreview.linter.spec import FIELDS

    assert set(FIELDS["safety.exposure_rule"].words) == set(EXPOSURE_RULES)
