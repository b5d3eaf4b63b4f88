"""Packs: Peukert, run time, energy, against published examples and second methods."""

import math

import pytest
from scipy.optimize import minimize_scalar

from ampreview.linter.quantities.quantity import to_si
from ampreview.rules.battery.capacity_at_high_rate import figure as high_rate
from ampreview.rules.battery.charge_voltage import CHECK as CHARGE_VOLTAGE
from ampreview.rules.battery.pack_collapse import figure as collapse
from ampreview.rules.battery.protection_trip_above_music import figure as above_music
from ampreview.rules.battery.run_time import figure as run_time
from ampreview.rules.battery.shelf_time import figure as shelf_time
from ampreview.rules.formulas.pack import pack_energy, pack_resistance, peukert_time


def test_peukert_published_example() -> None:
    """Oracle Tutoring: 120 Ah at the 20 h rate, 120 A, exponent 1.4, about 0.30 h."""
    assert peukert_time(120.0, 20.0, 120.0, 1.4) == pytest.approx(0.30, rel=0.01)
    assert peukert_time(120.0, 20.0, 120.0, 1.4) == pytest.approx(0.3017, rel=1e-3)


def test_peukert_by_constant_product() -> None:
    """I^k t is the same at every rate; 7 Ah at 20 h, 2 A, exponent 1.2: 2.470 h, 4.940 Ah."""
    constant = (7.0 / 20.0) ** 1.2 * 20.0
    hours = constant / 2.0**1.2
    assert hours == pytest.approx(2.470, rel=5e-4)
    assert peukert_time(7.0, 20.0, 2.0, 1.2) == pytest.approx(hours, rel=1e-12)
    assert 2.0 * hours == pytest.approx(4.940, rel=5e-4)


def test_peukert_at_the_rated_current_gives_the_rated_time() -> None:
    """100 Ah at 5 A is its own 20 h rate: 20.0 h, not the 14.5 h of the misread short form."""
    assert peukert_time(100.0, 20.0, 5.0, 1.2) == pytest.approx(20.0, rel=1e-12)
    assert pytest.approx(14.5, rel=1e-2) == 100.0 / 5.0**1.2


def test_capacity_at_high_rate_in_si() -> None:
    seconds = high_rate(120 * 3600.0, 20 * 3600.0, 120.0, 1.4, 1.0)
    assert seconds / 3600 == pytest.approx(0.3017, rel=1e-3)


def test_largest_power_by_search() -> None:
    """20.4 V behind 0.12 ohm give 867.0 W at most."""
    found = minimize_scalar(lambda v: -v * (20.4 - v) / 0.12, bounds=(0.0, 20.4), method="bounded")
    assert -found.fun == pytest.approx(867.0, rel=1e-4)
    assert collapse(-found.fun, 0.12, 20.4) == pytest.approx(1.0, rel=1e-9)


def test_run_time_counts_idle_once() -> None:
    """10 W out and 2.676 W of heat from 151.2 Wh at 90 % and 80 %: 8.588 h, step by step."""
    joules, seconds = 151.2 * 3600 * 0.9 * 0.8, 0
    while joules > 0:
        joules -= (10.0 + 2.676) * 10
        seconds += 10
    assert seconds / 3600 == pytest.approx(8.588, rel=1e-3)
    hours = run_time(151.2 * 3600 * 0.8, 0.9, 12.676, 3600.0)
    assert hours == pytest.approx(seconds / 3600, rel=1e-3)


def test_shelf_time_day_by_day() -> None:
    charge, days = 7.0 * 3600 * 0.9, 0
    while charge > 0:
        charge -= 1e-3 * 86400
        days += 1
    assert shelf_time(7.0 * 3600, 0.9, 1e-3, 86400.0) == pytest.approx(days, abs=1)


def test_resistance_by_combining_two_at_a_time() -> None:
    """Cells chained one by one, strings laid in parallel one by one."""
    string = 0.0
    for _ in range(6):
        string += 0.028
    both = string * string / (string + string)
    assert pack_resistance(6, 2, 0.028, 0.009, 0.027) == pytest.approx(both + 0.036, rel=1e-12)


def test_energy_of_a_published_pack() -> None:
    """Twelve cells of 3.5 Ah and 3.6 V: 151.2 Wh, over 100 and under 160."""
    assert to_si("151.2 Wh") == pytest.approx(pack_energy(6, 2, 3.5 * 3600, 3.6), rel=1e-12)


def test_short_delay_sees_the_crest_long_delay_the_rms() -> None:
    """A 1 - cos wave of twice 40 Hz exceeds a level inside its crest for less than 12.5 ms."""
    level, steps = 8.0, 200_000
    period = 1 / 80.0
    above = (
        sum(4.649 * (1 - math.cos(2 * math.pi * k / steps)) > level for k in range(steps))
        * period
        / steps
    )
    assert above < period
    assert above_music(8.0, above * 0.9, 9.436, 5.722, (40.0,)) < 1.0
    assert above_music(8.0, period * 1.01, 9.436, 5.722, (40.0,)) > 1.0


def test_cell_voltage_limit_is_the_published_absolute() -> None:
    """Lithium-ion: 4.20 V, never above 4.25 V."""
    limit = to_si(str(CHARGE_VOLTAGE.limits.critical))
    assert 4.20 * limit == pytest.approx(4.25, rel=1e-3)
