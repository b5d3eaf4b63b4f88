"""Shock, stored charge and fire against simulation, ODE and published examples."""

import math

import pytest
from scipy.integrate import quad, solve_ivp
from scipy.optimize import brentq

from ampreview.linter.finding import Severity, Status
from ampreview.rules.formulas.safety import stored_energy, sum_of_ratios, voltage_left
from ampreview.rules.safety.shock_class_outputs import figure as terminals

from ..whole import answer


def leg(rail: float) -> tuple[float, float]:
    """Mean and rms of the alternating part of one leg at full sine, by quadrature."""

    def v(x: float) -> float:
        return rail / 2 * (1 + math.sin(x))

    mean = quad(v, 0, 2 * math.pi)[0] / (2 * math.pi)
    square = quad(lambda x: (v(x) - mean) ** 2, 0, 2 * math.pi)[0] / (2 * math.pi)
    return mean, square**0.5


def test_bridge_on_100_volt_is_beyond_class_1() -> None:
    # 71 V rms between the terminals alone would allow 100.4 V; the sum gives 1.34
    dc, ac = leg(100.4)
    assert sum_of_ratios(dc, ac, 60.0, 71.0) == pytest.approx(1.34, abs=0.005)
    assert terminals(dc, ac, 100.4 / 2**0.5, 60.0, 71.0) == pytest.approx(1.34, abs=0.005)


@pytest.mark.parametrize(("ac_limit", "rail"), [(71.0, 75.1), (30.0, 49.7)])
def test_highest_rail_of_a_bridge_within_class_1(ac_limit: float, rail: float) -> None:
    # the sum for one terminal against ground, by root finding
    found = brentq(lambda v: sum_of_ratios(*leg(v), 60.0, ac_limit) - 1, 10.0, 200.0)
    assert found == pytest.approx(rail, abs=0.05)


BRIDGE = """
supply: {{source: dc-source, rails: {rails}, v_rail: {v}}}
channels: {{main: {{output_stage: {{topology: {topology}}}}}}}
safety: {{output_terminals: {terminals}}}
"""


@pytest.mark.parametrize(
    ("rails", "v", "topology", "severity"),
    [
        ("single", "75 V", "full-bridge", None),
        ("single", "75.3 V", "full-bridge", Severity.MAJOR),
        # two rails: no direct voltage against ground; 71 V rms are a rail of 100.4 V
        ("split", "100 V", "half-bridge", None),
        ("split", "101 V", "half-bridge", Severity.MAJOR),
        # a bridge on two rails: the pair decides, 2 x 50.2 V peak
        ("split", "50 V", "full-bridge", None),
        ("split", "50.5 V", "full-bridge", Severity.MAJOR),
    ],
)
def test_edges_of_class_1_by_topology(rails, v, topology, severity) -> None:
    text = BRIDGE.format(rails=rails, v=v, topology=topology, terminals="bare")
    assert answer("shock-class-outputs", text).severity is severity


def test_insulated_terminals_are_judged_by_class_2_only() -> None:
    text = BRIDGE.format(rails="single", v="90 V", topology="full-bridge", terminals="insulated")
    assert answer("shock-class-outputs", text).status is Status.NOT_APPLICABLE
    assert answer("shock-class-outputs-two", text).status is Status.MEETS


def test_two_rails_of_45_volt_are_90_across() -> None:
    text = """
supply: {source: dc-source, rails: split, v_rail: 45 V}
safety: {users: ordinary, rail_access: bare}
channels: {main: {rated_power: 50 W}}
"""
    found = answer("shock-class-rails", text)
    assert found.evidence.figure == pytest.approx(90.0 / 60.0, rel=1e-9)
    assert found.severity is Severity.CRITICAL


@pytest.mark.parametrize(("tolerance", "severity"), [("1 %", "minor"), ("3 %", "critical")])
def test_fourteen_cells_cross_class_1_with_their_charger(tolerance: str, severity: str) -> None:
    # 58.80 V at 3 % are 60.6 V
    text = f"""
supply: {{source: battery, converter: none}}
battery: {{chemistry: li-ion, series: 14, charger: {{v: 58.8 V ± {tolerance}}}}}
safety: {{users: ordinary, rail_access: bare}}
channels: {{main: {{rated_power: 50 W}}}}
"""
    assert answer("shock-class-rails", text).severity == severity


def test_a_low_rail_needs_no_word_on_access() -> None:
    text = """
supply: {source: dc-source, rails: single, v_rail: 24 V}
channels: {main: {rated_power: 50 W, output_stage: {topology: full-bridge}}}
"""
    assert answer("shock-class-rails", text).status is Status.MEETS
    assert answer("shock-class-outputs", text).status is Status.MEETS
    high = text.replace("24 V", "70 V")
    asked = answer("shock-class-rails", high, milestone="prototype")
    assert asked.status is Status.OPEN
    assert asked.advice.missing[0].path == "safety.rail_access"


def test_a_pass_from_memory_stays_open_at_production() -> None:
    text = """
supply: {source: dc-source, rails: single, v_rail: 24 V}
safety: {users: ordinary, rail_access: bare}
channels: {main: {rated_power: 50 W}}
"""
    found = answer("shock-class-rails", text, milestone="production")
    assert found.status is Status.OPEN
    assert "from memory" in found.message


@pytest.mark.parametrize(
    ("v", "r", "c", "t", "left"),
    [
        (80.0, 695.2, 10e-3, 2.0, 60.0),
        (100.0, 2200.0, 4.7e-3, 5.282, 60.0),
        (63.0, 4700.0, 10e-3, 119.1, 5.0),
    ],
)
def test_bleeder_by_ode(v: float, r: float, c: float, t: float, left: float) -> None:
    run = solve_ivp(lambda _, y: [-y[0] / (r * c)], (0, t), [v], rtol=1e-10, atol=1e-12)
    assert voltage_left(v, t, r, c) == pytest.approx(run.y[0, -1], rel=1e-7)
    assert voltage_left(v, t, r, c) == pytest.approx(left, rel=1e-3)


def test_published_bleeder_of_80_volt() -> None:
    # 80 V, 10 mF, 60 V after 2 s: 695.2 ohm, 9.205 W, 32.00 J
    r = brentq(lambda x: voltage_left(80.0, 2.0, x, 10e-3) - 60.0, 10.0, 1e5)
    assert r == pytest.approx(695.2, rel=1e-4)
    assert 80.0**2 / r == pytest.approx(9.205, rel=1e-3)
    assert stored_energy(10e-3, 80.0) == pytest.approx(32.0, rel=1e-9)


def test_energy_by_quadrature() -> None:
    # work of charging: integral of v over the charge
    energy = quad(lambda q: q / 4.4e-3, 0.0, 4.4e-3 * 25.2)[0]
    assert stored_energy(4.4e-3, 25.2) == pytest.approx(energy, rel=1e-9)
    assert stored_energy(4.4e-3, 25.2) == pytest.approx(1.397, rel=1e-3)


RAIL = """
supply: {{source: dc-source, rails: {rails}, v_rail: {v}}}
protection: {{bleeder: {bleeder}}}
safety: {{rail_access: bare}}
channels: {{main: {{rated_power: 50 W}}}}
"""


def test_without_a_resistor_no_capacitance_is_needed() -> None:
    text = RAIL.format(rails="split", v="45 V", bleeder="none")
    found = answer("stored-voltage-accessible", text)
    assert found.evidence.figure == pytest.approx(90.0, rel=1e-9)
    assert found.severity is Severity.CRITICAL
    assert answer("stored-voltage-service", text).severity is Severity.MINOR


def test_a_resistor_without_a_capacitance_is_open() -> None:
    text = RAIL.format(rails="single", v="80 V", bleeder="{r: 680 ohm}")
    found = answer("stored-voltage-service", text)
    assert found.status is Status.OPEN
    assert found.advice.missing[0].path == "supply.bulk.c"


@pytest.mark.parametrize(("p_max", "severity"), [("90 W", None), ("120 W", Severity.MAJOR)])
def test_fire_class_of_an_electronic_source(p_max: str, severity: Severity | None) -> None:
    # it gives no more than its limit, whatever its resistance; the class ends at 100 W
    text = f"""
supply: {{source: dc-source, rails: single, v_rail: 24 V, p_max: {p_max}, r_source: 50 mohm}}
safety: {{fire_enclosure: no}}
channels: {{main: {{rated_power: 50 W}}}}
"""
    assert answer("fire-power-class", text).severity is severity
