"""Largest sines at the load: clip onset, rails, rating and limiter, by hand."""

import pytest

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
