"""Direct voltage at the loudspeaker against nodal solutions and simulation."""

import itertools
import math

import numpy as np
import pytest

from ampreview.linter.finding import Finding, Severity, Status
from ampreview.rules.derived.dc_fault import coil_power
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
    # 3.3 times its rating, and 1.98 times the 100 W that a second disconnect is usual from
    assert found.evidence.figure == pytest.approx(5 * 198.45 / 100, rel=1e-6)


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
        ("", 5 * 79**2 / 3.2 / 1000),  # at best a loudspeaker of twice the rated power
        ("loudspeaker_rating: 250 W", 5 * 79**2 / 3.2 / 250),
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


SMALL = """milestone: prototype
supply: {source: dc-source, rails: single, v_rail: RAIL, MORE}
channels:
  main:
    output_stage: {topology: TOPOLOGY, devices: integrated}
    loudspeaker: {z_rated: 8 ohm, r_e: 6.4 ohm, p_rated: 10 W, rating_method: aes2-1984}
protection: {dc_detector: DETECTOR}
safety: {dc_fault_test: TESTED}
"""
CHIP = "{v_trip: 2 V, t_trip: 0.1 s, action: mute, independent: yes, senses: filtered-output}"
DUTY = CHIP.replace("filtered-output", "duty")


def small(check: str, rail: str, detector: str = "none", **words: str) -> Finding:
    """A bridge with a coil of 10 W and 6.4 ohm."""
    words = {"RAIL": rail, "DETECTOR": detector, "MORE": "p_max: 200 W", "TESTED": "no"} | words
    text = SMALL.replace("TOPOLOGY", words.pop("TOPOLOGY", "full-bridge"))
    for name, word in words.items():
        text = text.replace(name, word)
    return answer(check, text)


@pytest.mark.parametrize(
    ("rail", "detector", "tested", "severity"),
    [  # V^2 / 6.4 ohm: 9.5 W, 22.5 W, 56 W, 90 W, 133 W
        ("7.8 V", "none", "no", None),
        ("12 V", "none", "no", Severity.MAJOR),
        ("12 V", "none", "yes", None),
        ("12 V", DUTY, "no", Severity.MAJOR),
        ("12 V", CHIP, "no", None),
        ("19 V", "none", "no", Severity.CRITICAL),  # 5.6 times the rating: burnt out at once
        ("24 V", CHIP, "no", None),
        ("24 V", "none", "yes", None),
        ("29.2 V", CHIP, "no", Severity.CRITICAL),  # beyond 100 W one safeguard is not enough
        ("29.2 V", "none", "yes", Severity.CRITICAL),
    ],
)
def test_a_second_disconnect_is_asked_of_a_source_of_the_highest_class(
    rail: str, detector: str, tested: str, severity: Severity | None
) -> None:
    """Class 2 of IEC 62368-1, up to 100 W, lets control of the spread of fire do."""
    grave = "dc-fault-power" if detector == "none" else "independent-disconnect"
    found = small(grave, rail, detector, TESTED=tested)
    assert found.severity is severity, found.message
    told = small("dc-fault-one-safeguard", rail, detector, TESTED=tested)
    covered = detector == CHIP or tested == "yes"
    assert told.severity is (Severity.MINOR if covered else None), told.message


def test_what_is_not_said_of_a_detector_in_the_stage_is_asked() -> None:
    found = small("independent-disconnect", "12 V", "{v_trip: 2 V, action: mute}")
    assert found.status is Status.OPEN, found.message
    assert "protection.dc_detector.senses" in {x.path for x in found.advice.missing}


def test_what_is_stated_not_to_outlive_the_fault_is_no_safeguard() -> None:
    found = small("independent-disconnect", "12 V", CHIP.replace("yes", "no"))
    assert found.severity is Severity.MAJOR


def test_muting_a_half_bridge_ends_nothing() -> None:
    words = {"TOPOLOGY": "half-bridge", "rails: single": "rails: split"}
    assert small("independent-disconnect", "12 V", CHIP, **words).severity is Severity.MAJOR


@pytest.mark.parametrize(
    ("more", "severity"),
    [
        ("self_limiting: yes, p_max: 12 W, p_peak: 20 W", None),
        ("self_limiting: yes, i_max: 1 A", Severity.MAJOR),  # 24 W
        ("p_max: 12 W", Severity.CRITICAL),  # nobody says that it ends there
        ("self_limiting: no, p_max: 12 W", Severity.CRITICAL),
    ],
)
def test_a_coil_takes_no_more_than_the_source_gives_for_good(
    more: str, severity: Severity | None
) -> None:
    """24 V on 6.4 ohm are 90 W, which a converter of 12 W never gives."""
    assert small("dc-fault-power", "24 V", MORE=more).severity is severity


def test_a_limiting_source_of_unknown_power_is_asked_for_it() -> None:
    found = small("dc-fault-power", "24 V", MORE="self_limiting: yes")
    assert found.status is Status.OPEN, found.message


@pytest.mark.parametrize(("rating", "severity"), [("0.5 A", Severity.MAJOR), ("4 A", "critical")])
def test_a_fuse_bounds_what_lasts(rating: str, severity: str) -> None:
    """0.5 A after IEC 60127-2 are sure to open at 1.05 A: 25 W of 24 V last."""
    fuse = f"dc_detector: none, fuse: {{i_rated: {rating}, standard: iec-60127}}"
    words = {"dc_detector: none": fuse}
    found = small("dc-fault-power", "24 V", **words)
    assert found.severity == Severity(severity)


def test_five_times_its_rating_burns_a_coil_whatever_its_copper_does() -> None:
    """Balance of heat, iterated: rating 200 K, copper 0.393 % a kelvin, power as of a cold coil."""
    rise = 0.0
    for _ in range(200):
        rise = 0.5 * (rise + 5 * 200.0 / (1 + 0.00393 * rise))
    assert rise > 390  # enamel of the best thermal class, IEC 60085, from memory: 250 degC
    assert 1 + 0.00393 * rise == pytest.approx(2.5, rel=0.02)


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
