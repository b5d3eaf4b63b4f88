"""Rules for hearing against their published tables; each test is named after its table."""

from itertools import pairwise

import numpy as np
import pytest

from ampreview.linter.evaluation.catalogue import load
from ampreview.linter.evaluation.graph import Graph
from ampreview.linter.evaluation.node import Node
from ampreview.linter.reading.loading import load_text
from ampreview.rules.formulas.acoustics import (
    EXPOSURE_RULES,
    a_weighting_at_most,
    allowed_level,
)

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
    from ampreview.linter.declare import load_schema

    assert set(load_schema().fields["safety.exposure_rule"].words) == set(EXPOSURE_RULES)


# exact frequencies of thirds of an octave, 1 kHz times powers of ten: table from memory
A_TABLE = [
    (10**1.5, -39.4),
    (10**1.8, -26.2),
    (10**2.0, -19.1),
    (10**2.3, -10.9),
    (10**2.4, -8.6),
    (10**2.7, -3.2),
    (10**2.9, -0.8),
    (10**3.0, 0.0),
]


@pytest.mark.parametrize(("f", "weighting"), A_TABLE)
def test_iec_61672_1_table_of_a_weighting(f: float, weighting: float) -> None:
    assert a_weighting_at_most(f, 1.0) == pytest.approx(weighting, abs=0.051)


def test_a_weighting_rises_to_1_khz_and_stays() -> None:
    below = [a_weighting_at_most(f, 1.0) for f in np.geomspace(10.0, 999.0, 200)]
    assert all(one < other for one, other in pairwise(below))
    assert {a_weighting_at_most(f, 1.0) for f in (1000.0, 2500.0, 20e3)} == {0.0}


SUB_AND_TOP = """
amplifier_spec: 1
channels:
  sub: &c
    band: 25 Hz .. 200 Hz
    rated_power: 50 W
    rated_load: 8 ohm
    limiter: {v_rms: 20 V}
    loudspeaker: {z_rated: 8 ohm, sensitivity: 88 dB, sensitivity_basis: 2.83-volt}
  top:
    <<: *c
    band: BAND
"""


@pytest.mark.parametrize(
    ("band", "top"),
    [("150 Hz .. 18 kHz", 0.0), ("25 Hz .. 100 Hz", -19.14)],
)
def test_each_channel_has_the_weighting_of_its_own_band(band: str, top: float) -> None:
    """Two equal channels; 200 Hz by the formula -10.85 dB, from 1 kHz on none."""
    loaded = load_text(SUB_AND_TOP.replace("BAND", band), "sub and top")
    assert loaded.spec is not None, loaded.refusals
    graph = Graph(loaded.spec, load().derived)
    plain, weighted = graph.resolve("level_channel", "top"), graph.resolve("level_a", None)
    assert isinstance(plain, Node) and isinstance(weighted, Node)
    level = float(plain.value())
    expected = 10 * np.log10(sum(10 ** ((level + a) / 10) for a in (-10.847, top)))
    assert float(weighted.value()) == pytest.approx(expected, abs=0.01)
