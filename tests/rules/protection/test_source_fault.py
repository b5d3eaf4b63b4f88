"""Fault power and surge against maximisation and nodal solution; words through the engine."""

import pytest
from scipy.optimize import brentq, minimize_scalar

from ampreview.linter.finding import Finding, Severity, Status
from ampreview.rules.formulas.safety import available_power
from ampreview.rules.protection.surge_current import figure as surge

from ..whole import answer


def judge(name: str, text: str) -> Finding:
    return answer(name, "channels: {main: {rated_power: 50 W}}\n" + text)


def test_available_power_by_maximisation() -> None:
    # load of a 25.2 V pack of 60 mohm, over all resistances: 2646 W
    best = minimize_scalar(lambda r: -((25.2 / (0.06 + r)) ** 2) * r, bounds=(1e-4, 1.0))
    assert available_power(25.2, 0.06) == pytest.approx(-best.fun, rel=1e-9)
    assert available_power(25.2, 0.06) == pytest.approx(2646.0, rel=1e-9)


def test_fault_power_takes_new_warm_cells_and_full_charge() -> None:
    pack = """
supply: {source: battery, converter: none}
battery: {chemistry: li-ion, series: 6, parallel: 2, protection: none,
  cell: {r_internal: 20 mohm .. 60 mohm, v_charge: 4.2 V}}
protection: {fuse: none}
"""
    found = judge("unprotected-source-power", pack)
    assert found.evidence.figure == pytest.approx(2646.0, rel=1e-9)
    assert found.severity is Severity.CRITICAL


def test_surge_current_by_root_finding() -> None:
    # 60 V behind 2 ohm into a suppressor of 45.4 V: 7.300 A; 600 W part of 13.2 A
    current = brentq(lambda i: 60.0 - 2.0 * i - 45.4, 0.0, 60.0)
    assert current == pytest.approx(7.300, rel=1e-9)
    assert surge(60.0, 45.4, 2.0, 13.2) == pytest.approx(current / 13.2, rel=1e-9)
    assert pytest.approx(599.3, rel=1e-3) == 45.4 * 13.2


def test_fuse_of_a_split_supply_breaks_both_rails() -> None:
    split = "supply: {source: dc-source, rails: split, v_rail: 35 V}\n"
    found = judge("fuse-voltage", split + "protection: {fuse: {v_dc: 58 V}}")
    assert found.evidence.figure == pytest.approx(70.0 / 58.0, rel=1e-9)
    assert found.severity is Severity.CRITICAL


def test_a_fuse_without_direct_voltage_rating_is_open() -> None:
    text = "supply: {source: dc-source, rails: single, v_rail: 24 V}\n"
    found = judge("fuse-voltage", text + "protection: {fuse: {i_rated: 5 A}}")
    assert found.status is Status.OPEN
    assert found.advice.missing[0].path == "protection.fuse.v_dc"


def test_an_uncertified_mains_supply_is_referred_not_computed() -> None:
    found = judge("mains-barrier", "supply: {source: mains-converter, certified: no}")
    assert found.severity is Severity.CRITICAL
    assert "licensed" in found.message
    silent = judge("mains-barrier", "supply: {source: mains-converter}")
    assert silent.status is Status.OPEN


@pytest.mark.parametrize(
    ("connection", "part", "severity"),
    [
        ("reversible", "none", Severity.CRITICAL),
        ("keyed", "none", None),
        ("reversible", "{method: p-channel}", None),
    ],
)
def test_reversed_pack(connection: str, part: str, severity: Severity | None) -> None:
    text = f"""
supply: {{source: battery}}
battery: {{connection: {connection}}}
protection: {{reverse_polarity: {part}}}
"""
    assert judge("reverse-polarity", text).severity is severity


def test_six_full_cells_break_a_gate_of_20_volt() -> None:
    # charge end 25.2 V on an unclamped 20 V gate; lithium cells at 4.2 V
    text = """
supply: {source: battery, converter: none}
battery: {chemistry: li-ion, series: 6, cell: {v_charge: 4.2 V}}
protection: {reverse_polarity: {method: p-channel, v_gss: 20 V, gate_clamp: GATE}}
"""
    assert judge("reverse-polarity-gate", text.replace("GATE", "no")).severity is Severity.CRITICAL
    clamped = judge("reverse-polarity-gate", text.replace("GATE", "yes"))
    assert clamped.status is Status.NOT_APPLICABLE
