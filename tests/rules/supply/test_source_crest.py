"""Humps of the bass against the source, by quadrature and by an energy balance in time."""

import math

import pytest

from ampreview.linter.finding import Severity, Status
from ampreview.rules.supply.source_crest import figure

from ..whole import answers


@pytest.mark.parametrize(
    ("p_aux", "p_signal", "rails"), [(0, 0, 1), (30, 0, 1), (0, 40, 1), (0, 40, 2)]
)
def test_mean_of_the_hump_by_quadrature(p_aux: float, p_signal: float, rails: float) -> None:
    """The quarter of a period round the crest, where the part at twice the tone is positive."""
    p_in, steps = 100.0, 20_000
    angles = [-math.pi / 4 + math.pi / 2 * (k + 0.5) / steps for k in range(steps)]
    one_way = p_signal if rails == 1 else 0.0
    hump = sum(p_in + (p_in - p_aux) * math.cos(2 * x) + one_way * math.cos(x) for x in angles)
    found = figure(p_in, p_aux, p_signal, rails, 80.0, 0.0, 24.0, 0.1, (50.0,))
    assert found == pytest.approx(hump / steps / 80.0, rel=1e-6)


def test_capacitors_in_time() -> None:
    """A source of constant power and capacitors: the rail after the quarter period."""
    p_in, p_peak, v, f = 100.0, 120.0, 30.0, 40.0
    duration, steps = 1 / (4 * f), 20_000
    c = (p_in * (1 + 2 / math.pi) - p_peak) * duration * 2 / (v**2 * (1 - 0.9**2))
    assert figure(p_in, 0.0, 0.0, 1, p_peak, c, v, 0.1, (f,)) == pytest.approx(1.0)
    rail = v
    for k in range(steps):
        angle = math.pi * ((k + 0.5) / steps - 0.5)
        drawn = p_in * (1 + math.cos(angle))
        rail += (p_peak - drawn) / (c * rail) * duration / steps
    assert rail == pytest.approx(0.9 * v, rel=1e-4)


START = """
milestone: prototype
supply:
  {source: dc-source, rails: split, v_rail: 50 V, r_source: 40 mohm, self_limiting: no,
  bulk: {c: 20 mF}}
wiring: {supply_lead: {length: 1 m, area: 3.448 mm2}, connector: {i_surge: 200 A}}
protection: {inrush: none}
channels: {main: {rated_power: 50 W}}
"""


def test_start_into_large_bulk() -> None:
    """25 J a rail; 50 V over 40 mohm and 2 x 5 mohm of lead, 1.724e-8 ohm m: 1000 A."""
    found = answers(START)
    assert found["inrush-limiter"].evidence.figure == pytest.approx(50.0)
    assert found["inrush-limiter"].severity is Severity.MAJOR
    assert found["inrush-current"].evidence.figure == pytest.approx(1000.0 / 200.0, rel=1e-3)
    assert found["inrush-current"].severity is Severity.CRITICAL


def test_a_small_start_is_not_asked_about() -> None:
    found = answers(START.replace("20 mF", "100 uF"))
    assert found["inrush-current"].status is Status.NOT_APPLICABLE
    silent = answers(START.replace("protection: {inrush: none}\n", ""))["inrush-limiter"]
    assert [gap.path for gap in silent.advice.missing] == ["protection.inrush"]


@pytest.mark.parametrize(
    ("stated", "power"), [("p_max: 200 W, i_max: 5 A", 120.0), ("p_max: 100 W, i_max: 5 A", 100.0)]
)
def test_the_tighter_of_two_statements_counts(stated: str, power: float) -> None:
    text = f"supply: {{source: dc-source, rails: single, v_rail: 24 V, {stated}}}\n"
    found = answers(text + "channels: {main: {rated_power: 60 W}}\n")
    assert found["source-below-rated-power"].evidence.figure == pytest.approx(60.0 / power)
