"""Largest sines at the load: clip onset, rails, rating and limiter, by hand."""

import pytest

from ..whole import answer

SUPPLY = "supply: {source: dc-source, rails: RAILS, v_rail: 24 V}\n"
CHANNEL = """channels:
  main:
    rated_power: 160 W
    rated_load: 8 ohm
    output_stage: {topology: full-bridge, devices: integrated}
    limiter: LIMITER
"""


def spec(rails: str = "single", limiter: str = "none", more: str = "") -> str:
    """A bridge on 24 V that is sold as one of 160 W into 8 ohm: 35.8 V."""
    text = SUPPLY.replace("RAILS", rails) + CHANNEL.replace("LIMITER", limiter)
    return text + "".join(f"    {line}\n" for line in more.splitlines())


@pytest.mark.parametrize(
    ("name", "limiter", "expected"),
    [
        ("v_rail_sine", "{v_rms: 12 V}", 24 / 2**0.5),  # the rails know nothing of a limiter
        ("v_clip_rms", "{v_rms: 12 V}", 24 / 2**0.5),
        ("v_sine_max", "{v_rms: 12 V}", 12.0),
        ("v_load_rms", "{v_rms: 12 V}", 12.0),
        ("v_sine_max", "none", 24 / 2**0.5),
        ("v_load_rms", "none", 24 / 2**0.5),
    ],
)
def test_a_rating_beyond_the_rails_makes_no_voltage(derived, name, limiter, expected):
    """A bridge on 24 V has 24 V of peak, whatever is printed on the box."""
    assert derived(name, spec(limiter=limiter)) == pytest.approx(expected)


def test_without_a_rating_the_rails_bound_clip_onset(derived):
    """12 V of peak are 8.49 V rms, 18 W into 4 ohm: six times what a 3 W loudspeaker bears."""
    text = spec().replace("24 V", "12 V").replace("    rated_power: 160 W\n", "")
    assert derived("v_clip_rms", text) ** 2 / 4 == pytest.approx(18.0)


@pytest.mark.parametrize(
    ("name", "expected"), [("v_clip_rms", 2 * 24 / 2**0.5), ("v_load_rms", 20.0)]
)
def test_a_rating_within_the_rails_stands_in_for_the_level_not_for_clip_onset(
    derived, name, expected
):
    """52.4 W at 1 % are 50 W clean, 20 V in 8 ohm; a stage clips where the rails end, 33.9 V."""
    text = spec("split").replace("160 W", "52.4 W")
    assert derived(name, text) == pytest.approx(expected)


def test_the_depth_counts_in_the_sine_of_the_rails(derived):
    assert derived("v_rail_sine", spec(more="modulator: {m_max: 90 %}")) == pytest.approx(
        15.27, 1e-3
    )


def test_without_a_rail_the_rating_is_believed(derived):
    """160 W into 8 ohm at 1 %: 152.7 W clean, 35.0 V."""
    text = spec().split("\n", 1)[1]
    assert derived("v_clip_rms", text) == pytest.approx((1280 / 1.048) ** 0.5)


@pytest.mark.parametrize("name", ["v_clip_rms", "v_load_rms"])
def test_a_rating_at_ten_percent_is_no_clean_sine(derived, name):
    """TPA3221 plot: 107.7 W at 10 % into 4 ohm; clipping begins at 84.07 W."""
    text = spec().split("\n", 1)[1].replace("8 ohm", "4 ohm")
    text = text.replace("160 W", "107.7 W\n    rated_thd: 10 %")
    assert derived(name, text) ** 2 / 4 == pytest.approx(84.07, rel=0.01)


PATH = "output_stage: {topology: full-bridge, devices: integrated, device: {r_ds_on: 100 mohm}}"
CLOCKED = """gate_drive: {dead_time: 50 ns}
modulator: {carrier: 400 kHz}
filter: {inductor: {dcr: 20 mohm}}
lead: none"""


def resistive(more: str, feedback: str = "") -> str:
    """A bridge with 100 mohm in each switch and 20 mohm in each inductor."""
    lines = spec(more=more).splitlines()
    kept = [line for line in lines if "output_stage" not in line] + [f"    {PATH}"]
    text = "\n".join(kept) + "\n"
    return text.replace("400 kHz", f"400 kHz, feedback: {feedback}") if feedback else text


def onset(depth: float, r_hot: float) -> float:
    """Power of a sine of this depth of 24 V behind both legs."""
    peak = depth * 24 * 8 / (8 + 2 * (r_hot + 0.02))
    return peak**2 / 16


def test_without_a_dead_time_the_loop_makes_no_difference(derived):
    """Few integrated parts print a dead time: with and without a loop 0 s are lost."""
    more = CLOCKED.replace("gate_drive: {dead_time: 50 ns}\n", "")
    r_hot = derived("r_ds_on_hot", resistive(more))
    expected = pytest.approx(onset(1.0, r_hot), rel=0.02)  # the rail sags a little
    found = derived("p_out_max", resistive(more))
    assert found == expected
    assert derived("p_out_max", resistive(more, "after-filter")) == found
    assert derived("p_out_max", resistive(more, "none")) == found


def test_with_a_dead_time_the_loop_makes_a_difference(derived):
    """50 ns at 400 kHz are 2 %: 4 % of the crest are lost in a loop, 5.1 % without one."""
    alike = derived("p_out_max", resistive(CLOCKED.replace("50 ns", "0 ns")))
    loop = derived("p_out_max", resistive(CLOCKED, "after-filter"))
    without = derived("p_out_max", resistive(CLOCKED, "none"))
    assert loop / alike == pytest.approx(0.96**2, rel=2e-3)
    assert without / alike == pytest.approx((1 - 0.16 / 3.14159) ** 2, rel=2e-3)


CAR = """supply: {source: dc-source, rails: single, v_rail: 10.8 V .. 15 V, SOURCE}
channels:
  main:
    rated_power: 24 W
    rated_load: 4 ohm
    rated_thd: 1 %
    modulator: {type: natural-sampling, carrier: 400 kHz, m_max: 100 %}
    gate_drive: {dead_time: 0.01 ns}
    output_stage: {topology: full-bridge, devices: discrete, r_series: 0 ohm,
      device: {r_ds_on: 0.01 mohm}}
    filter: {type: lc, inductor: {dcr: 0.01 mohm}}
    loudspeaker: {z_rated: 4 ohm, p_rated: 25 W, rating_method: aes2-1984}
"""
AT_RATED = "claims: {rated_supply: 14.4 V}\n"
POWER = ("power-above-rail", "output-power", "minimum-pulse-vs-modulation", "rail-trough")


@pytest.mark.parametrize("check", POWER)
@pytest.mark.parametrize(
    ("claim", "severity"),
    [
        ("", "major"),  # 10.8 V: 14.6 W
        (AT_RATED, None),  # 14.4 V: 25.9 W, and 27.2 W at 1 %
        (AT_RATED.replace("14.4", "12"), "major"),  # 18 W
    ],
)
def test_power_is_judged_at_the_supply_that_it_is_promised_for(check, claim, severity):
    """The square of the supply over twice the load: a bridge without a loss into 4 ohm."""
    found = answer(check, CAR.replace("SOURCE", "r_source: 0.01 mohm") + claim)
    assert (found.severity and found.severity.value) == severity, found.message


def test_a_rating_at_one_voltage_lowers_no_hazard():
    """What the loudspeaker gets in clipping, and the part at its pins, stay those of 15 V."""
    text = CAR.replace("SOURCE", "r_source: 0.01 mohm")
    for check in ("loudspeaker-clipped-power", "source-below-rated-power"):
        whole, rated = answer(check, text), answer(check, text + AT_RATED)
        assert (rated.status, rated.severity) == (whole.status, whole.severity)
        assert rated.evidence.figure == whole.evidence.figure


def test_the_rail_of_a_rating_sags_as_any(derived):
    """12 W drawn through 0.1 ohm at 14.4 V: x^2 - 14.4 x + 1.2 = 0 has the root 14.316 V."""
    text = CAR.replace("SOURCE", "r_source: 0.1 ohm") + AT_RATED
    loaded, drawn = derived("v_loaded_promised", text), derived("p_rail_crest", text)
    assert loaded * (14.4 - loaded) / 0.1 == pytest.approx(drawn)


def test_a_converter_holds_its_rail_whatever_the_rating_says(derived):
    text = CAR.replace("SOURCE", "converter: step-up, v_source: 11 V .. 15 V") + AT_RATED
    assert derived("p_out_promised", text) == derived("p_out_max", text)
