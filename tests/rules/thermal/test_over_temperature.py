"""The over-temperature trip wherever it is sensed, by hand, and what `none` says.

A bridge of 100 W at 80 % of efficiency loses 25 W in a lasting sine.  Four discrete packages
share it: 6.25 W each, through 1.6 K/W 10 K over the case and through 0.4 K/W more 12.5 K over
the heatsink.
"""

import pytest

from ampreview.linter.finding import Finding, Severity, Status

from ..whole import answer as answer_of

STAGE = """milestone: prototype
environment: {altitude: 10 m}
supply: {source: dc-source, rails: single, v_rail: 40 V}
CREST
channels:
  main:
    rated_power: 100 W
    rated_load: 4 ohm
    output_stage:
      topology: full-bridge
      devices: DEVICES
      efficiency: 80 %
      p_idle: 1 W
      device: {t_j_max: 150 degC, r_th_jc: 1.6 K/W, r_th_cs: 0.4 K/W, r_th_ja: 40 K/W}
    filter: {inductor: {dcr: 0.001 mohm}}
thermal:
  enclosure: none
  heatsink: SINK
protection: {over_temperature: TRIP}
"""
FITTED = "{r_th_sa: 2 K/W, place: outside, touch: under-1-s, material: metal}"


def answer(
    check: str, trip: str, sink: str = FITTED, devices: str = "discrete", crest: str = ""
) -> Finding:
    """The answer of one check."""
    text = STAGE.replace("DEVICES", devices).replace("SINK", sink).replace("TRIP", trip)
    return answer_of(check, text.replace("CREST\n", crest))


@pytest.mark.parametrize(
    ("trip", "left"),
    [
        ("{t_trip: 100 degC, at: heatsink}", 150 - 112.5),
        ("{t_trip: 100 degC, at: case}", 150 - 110.0),
        ("{t_trip: 100 degC, at: case, below_junction: 30 K}", 20.0),
        ("{t_trip: 100 degC, at: board, below_junction: 45 K}", 5.0),
    ],
)
def test_junction_when_the_trip_acts(trip: str, left: float) -> None:
    found = answer("over-temperature-trip", trip)
    assert found.evidence.figure == pytest.approx(left, abs=0.02)
    assert found.status is Status.MEETS


def test_a_sensor_on_the_board_can_fail_and_not_pass() -> None:
    """The junction is at least 10 K above the case, and the case above the board."""
    warm = answer("over-temperature-trip", "{t_trip: 85 degC, at: board}")
    assert warm.status is Status.OPEN
    assert warm.evidence.figure == pytest.approx(55.0, abs=0.02)
    hot = answer("over-temperature-trip", "{t_trip: 155 degC, at: board}")
    assert hot.severity is Severity.CRITICAL


@pytest.mark.parametrize(
    ("trip", "sink", "devices", "severity"),
    [
        ("{t_trip: 90 degC, at: heatsink}", "none", "discrete", Severity.MAJOR),
        ("{t_trip: 90 degC, at: heatsink}", "none", "integrated", Severity.MAJOR),
        ("{t_trip: 150 degC, at: junction}", FITTED, "discrete", Severity.MAJOR),
        ("none", FITTED, "discrete", Severity.MINOR),
        ("{t_trip: 90 degC, at: heatsink}", FITTED, "discrete", None),
        ("{t_trip: 150 degC, at: junction}", FITTED, "integrated", None),
    ],
)
def test_sensor_has_to_be_where_it_is_said_to_be(
    trip: str, sink: str, devices: str, severity: Severity | None
) -> None:
    found = answer("over-temperature-sensor", trip, sink, devices)
    assert found.severity is severity
    assert found.status is not Status.OPEN


def test_a_trip_at_a_heatsink_that_is_not_there_ends_nothing() -> None:
    """6.25 W through 40 K/W in 40 degC: 290 degC, whatever the trip promises."""
    found = answer("junction-at-rated-sine", "{t_trip: 90 degC, at: heatsink}", "none")
    assert found.severity is Severity.CRITICAL
    assert found.evidence.figure == pytest.approx(150 - 290, abs=0.1)


@pytest.mark.parametrize("crest", ["12.0412 dB", "15 dB", "20 dB"])
def test_a_stated_crest_factor_never_hides_a_sink(crest: str) -> None:
    """1 W idle and 24 W s^0.82 at s = 1/8: 5.36 W, through 2 K/W 10.7 K in a room."""
    signal = f"signal: {{crest_factor: {crest}}}\n"
    found = answer("touch-temperature-heatsink", "none", crest=signal)
    rise = 2 * (1 + 24 * 0.125**0.82)
    # 70 degC for metal that is touched for less than a second, ordinary persons: from memory
    assert found.evidence.figure == pytest.approx(45 - rise, abs=0.1)


@pytest.mark.parametrize("air", ["41 degC", "{value: 41 degC, from: measured}"])
def test_known_air_rises_over_its_own_ambient(air: str) -> None:
    """41 degC in 35 degC is 6 K, in a room and at 0 degC as well; 5.36 W through 2 K/W more."""
    inside = FITTED.replace("outside", "inside") + f"\n  t_air_inside: {air}"
    text = STAGE.replace("DEVICES", "discrete").replace("SINK", inside).replace("TRIP", "none")
    text = text.replace("CREST\n", "").replace("10 m", "10 m, ambient: 0 degC .. 35 degC")
    found = answer_of("touch-temperature-heatsink", text)
    rise = 6 + 2 * (1 + 24 * 0.125**0.82)
    assert found.evidence.figure == pytest.approx(45 - rise, abs=0.1)


@pytest.mark.parametrize(
    ("device", "trip", "left"),
    [
        # 25 W in four packages: 6.25 W through psi of 1.2 to the top, 5.7 K/W to the board
        ("psi_jt: 1.2 K/W", "{t_trip: 100 degC, at: case}", 50 - 6.25 * 1.2),
        ("psi_jb: 5.7 K/W", "{t_trip: 100 degC, at: board}", 50 - 6.25 * 5.7),
        ("psi_jb: 5.7 K/W, r_th_jc: 1.6 K/W", "{t_trip: 100 degC, at: board}", 50 - 6.25 * 5.7),
    ],
)
def test_junction_by_the_psi_of_its_package(device: str, trip: str, left: float) -> None:
    """A sensor on top of the package, or on the board beside it: no floor any more."""
    text = STAGE.replace("r_th_jc: 1.6 K/W", device).replace("DEVICES", "discrete")
    text = text.replace("SINK", "none").replace("TRIP", trip).replace("CREST\n", "")
    found = answer_of("over-temperature-trip", text)
    assert found.evidence.figure == pytest.approx(left, abs=0.02)
    assert found.status is Status.MEETS


@pytest.mark.parametrize(
    ("fan", "r_sink"),
    [
        ("", 2.0),
        (", fan: {r_th_sa: 0.9 K/W}", 0.9),
        (", fan: {air_speed: 2 m/s}", 2 * 0.435),  # HS Marston, correction graph at 2 m/s
        (", fan: {air_speed: 8 m/s}", 2 * 0.435 / 2),
        (", fan: {air_speed: 0.3 m/s}", 2.0),  # never worse than still air
        (", fan: none", 2.0),
    ],
)
def test_a_fan_cools_the_heatsink(fan: str, r_sink: float) -> None:
    """25 W in 40 degC at 10 m above the sea: heatsink, and 2 K/W x 6.25 W to the junction."""
    sink = FITTED.replace("r_th_sa: 2 K/W", f"r_th_sa: 2 K/W{fan}")
    found = answer("junction-at-rated-sine", "none", sink)
    assert found.evidence.figure == pytest.approx(150 - 40 - 25 * r_sink - 12.5, abs=0.2)
