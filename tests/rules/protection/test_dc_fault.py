"""Direct voltage at the loudspeaker against nodal solutions and simulation."""

import itertools
import math

import numpy as np
import pytest

from ampreview.linter.finding import Finding, Severity, Status
from ampreview.rules.derived.access import coil_power
from ampreview.rules.protection.dc_detector_bass import figure as bass

from ..whole import answer

SPLIT = """
supply: {{source: dc-source, rails: {rails}, v_rail: {v}}}
channels:
  main:
    output_stage: {{topology: {topology}, devices: discrete}}
    loudspeaker: {{z_rated: 4 ohm, r_e: 3.2 ohm, p_rated: 60 W, rating_method: aes2-1984{more}}}
protection: {{dc_detector: {detector}}}
"""


def judge(name: str, **words: str) -> Finding:
    filled = {"rails": "single", "v": "25.2 V", "topology": "full-bridge", "more": ""} | words
    return answer(name, SPLIT.format(**filled))


@pytest.mark.parametrize(("series", "parallel"), [(1, 1), (2, 1), (1, 2), (2, 2), (3, 2)])
def test_coil_power_by_nodal_solution(series: int, parallel: int) -> None:
    # strings of coils across the rail, solved joint by joint
    v, r = 25.2, 3.2
    matrix = np.eye(series + 1)
    right = np.zeros(series + 1)
    right[0] = v
    for n in range(1, series):
        matrix[n, n], matrix[n, n - 1], matrix[n, n + 1] = 2 / r, -1 / r, -1 / r
    nodes = np.linalg.solve(matrix, right)
    total = sum((a - b) ** 2 / r for a, b in itertools.pairwise(nodes))
    each = total * parallel / (series * parallel)
    assert coil_power(v, series, r) == pytest.approx(each, rel=1e-12)


def test_published_fault_powers() -> None:
    # 25.2 V bridge on 3.2 ohm: 198.5 W; a split supply of 12.6 V: 49.61 W
    assert coil_power(25.2, 1, 3.2) == pytest.approx(198.5, rel=1e-3)
    assert coil_power(12.6, 1, 3.2) == pytest.approx(49.61, rel=1e-3)


def test_undetected_bridge_is_critical() -> None:
    found = judge("dc-fault-power", detector="none")
    assert found.severity is Severity.CRITICAL
    assert found.evidence.figure == pytest.approx(198.45 / 60, rel=1e-6)


def test_half_bridge_of_a_split_supply_sees_one_rail() -> None:
    found = judge(
        "dc-fault-power", rails="split", v="12.6 V", topology="half-bridge", detector="none"
    )
    assert found.evidence.figure == pytest.approx(49.61 / 60, rel=1e-3)
    assert found.status is Status.MEETS


@pytest.mark.parametrize(
    "words",
    [
        {"topology": "half-bridge"},  # its output capacitor blocks
        {"more": ", c_series: {c: 10 uF}"},
    ],
)
def test_a_capacitor_in_series_spares_the_coil(words: dict[str, str]) -> None:
    found = judge("dc-fault-power", detector="none", **words)
    assert found.status is Status.NOT_APPLICABLE


MODULE = """
supply: {source: dc-source, rails: split, v_rail: 79 V}
channels:
  main:
    rated_power: 500 W
    rated_load: 4 ohm
    MORE
    output_stage: {topology: half-bridge}
    loudspeaker: none
protection: {dc_detector: none}
"""


@pytest.mark.parametrize(
    ("more", "figure"),
    [
        ("", 79**2 / 3.2 / 1000),  # at best a loudspeaker of twice the rated power
        ("loudspeaker_rating: 250 W", 79**2 / 3.2 / 250),
    ],
)
def test_a_module_without_loudspeaker_burns_the_one_that_gets_connected(
    more: str, figure: float
) -> None:
    """The rated load stands for the coil: 79 V on 0.8 of 4 ohm are 1950 W."""
    found = answer("dc-fault-power", MODULE.replace("MORE", more), "prototype")
    assert found.severity is Severity.CRITICAL
    assert found.evidence.figure == pytest.approx(figure)


def test_a_module_without_loudspeaker_is_asked_for_the_detector() -> None:
    text = MODULE.replace("MORE", "").replace("protection: {dc_detector: none}\n", "")
    found = answer("dc-fault-power", text, "prototype")
    assert found.status is Status.OPEN
    assert "protection.dc_detector" in {item.path for item in found.advice.missing}


@pytest.mark.parametrize(
    ("detector", "severity"),
    [
        ("{v_trip: 2 V, action: mute, independent: yes}", Severity.CRITICAL),
        ("{v_trip: 2 V, action: disconnect-load, independent: no}", Severity.CRITICAL),
        ("{v_trip: 2 V, action: disconnect-load, independent: yes}", None),
    ],
)
def test_only_an_independent_disconnection_cures_a_shorted_switch(detector, severity) -> None:
    assert judge("independent-disconnect", detector=detector).severity is severity


def test_silence_on_the_detector_is_open() -> None:
    found = judge("independent-disconnect", detector="{v_trip: 2 V}")
    assert found.status is Status.OPEN
    assert {item.path for item in found.advice.missing} == {
        "protection.dc_detector.action",
        "protection.dc_detector.independent",
    }


def trips(delay: float, f: float, v: float, v_trip: float, clipped: bool = False) -> bool:
    """Whether a low-pass detector that needs ``delay`` at full direct voltage trips on bass."""
    tau = -delay / math.log(1 - v_trip / v)
    step = min(delay, 1 / f) / 2000
    deepest = math.tanh(1 / (4 * f * tau)) if clipped else 1 / math.hypot(1, math.tau * f * tau)
    x, peak, t = -v * deepest, 0.0, 0.0  # from the steady state
    while t < 8 / f:
        t += step
        wave = math.sin(math.tau * f * t)
        x += (v * (math.copysign(1.0, wave) if clipped else wave) - x) * step / tau
        peak = max(peak, x) if t > 4 / f else peak
    return peak > v_trip


@pytest.mark.parametrize("f", [20.0, 60.0])
def test_low_pass_detector_fires_on_clipped_bass_below_the_limit(f: float) -> None:
    # threshold a hundredth of the rail; the limit is a delay of a quarter period
    edge = 1 / (4 * f)
    assert bass(edge, f, "filtered-output") == pytest.approx(1.0)
    assert trips(0.97 * edge, f, 100.0, 1.0, clipped=True)
    assert not trips(1.03 * edge, f, 100.0, 1.0, clipped=True)


@pytest.mark.parametrize("f", [20.0, 60.0])
def test_low_pass_detector_fires_on_a_clean_sine_only_when_quicker(f: float) -> None:
    edge = 1 / (2 * math.pi * f)
    assert bass(edge, f, "filtered-output") == pytest.approx(2 / math.pi)
    assert trips(0.97 * edge, f, 100.0, 1.0)
    assert not trips(1.03 * edge, f, 100.0, 1.0)


def test_time_counting_detector_fires_on_bass_below_the_limit() -> None:
    # counts how long the output stays above the threshold: just under half a period
    f, v, v_trip = 20.0, 100.0, 1.0
    longest = (math.pi - 2 * math.asin(v_trip / v)) / (2 * math.pi * f)
    assert bass(longest, f, "timed-output") == pytest.approx(1.0, rel=0.01)
    assert longest < 1 / (2 * f)


REST = """milestone: prototype
supply: {source: dc-source, rails: single, v_rail: 12 V}
channels:
  main:
    rated_power: 2 W
    rated_load: 6 ohm
    output_stage: {topology: half-bridge}
    filter: {c_block: BLOCK}
    loudspeaker: {z_rated: 6 ohm, r_e: 5 ohm, rating_method: aes2-1984 MORE}
"""


@pytest.mark.parametrize(
    ("block", "more", "severity", "status"),
    [
        ("none", ", p_rated: 6 W", Severity.CRITICAL, Status.FINDING),  # 7.2 W for ever
        ("none", ", p_rated: 12 W, series: 1", None, Status.MEETS),
        ("none", ", p_rated: 6 W, series: 2", None, Status.MEETS),  # 3 V at each: 1.8 W
        ("none", ", p_rated: 6 W, c_series: {c: 470 uF}", None, Status.NOT_APPLICABLE),
        ("none", "", None, Status.OPEN),
        ("{c: 470 uF}", ", p_rated: 6 W", None, Status.NOT_APPLICABLE),
    ],
)
def test_half_the_rail_for_ever_in_a_small_coil(block, more, severity, status) -> None:
    found = answer(
        "dc-power-without-capacitor", REST.replace("BLOCK", block).replace(" MORE", more)
    )
    assert (found.severity, found.status) == (severity, status), found.message
