"""Heat and temperatures, by hand for small specs through the graph."""

import math

import pytest

SPLIT = (
    "supply: {source: dc-source, converter: none, rails: split, v_rail: 30 V, p_auxiliary: 3 W}\n"
)
STAGE = (
    "output_stage: {topology: half-bridge, devices: discrete, parallel: 2, p_idle: 4 W,"
    " device: {r_ds_on: 40 mohm, r_ds_on_hot_factor: 1.75, r_th_jc: 1 K/W, r_th_cs: 0.5 K/W}}"
)
CHANNEL = f"channels:\n  main:\n    rated_power: 50 W\n    rated_load: 4 ohm\n    {STAGE}\n"


def spec(more: str = "", stage: str = STAGE, channel: str = "") -> str:
    """A split supply, one half-bridge with two devices for one, and what is added."""
    return SPLIT + more + CHANNEL.replace(STAGE, stage) + channel


SINK = "thermal: {heatsink: {t: 60 degC, place: outside}}\n"
# 5 A peak through 20 mohm that grow with the absolute temperature to 1.75 at 150 degC
EXPONENT = math.log(1.75) / math.log(423.15 / 298.15)


def conduction(t_kelvin: float) -> float:
    """Heat of 12.5 A^2 in 20 mohm at a temperature."""
    return 12.5 * 0.02 * (t_kelvin / 298.15) ** EXPONENT


def junction(t_sink: float, r_th: float, other: float, share: float = 1.0) -> float:
    """Junction over a sink by plain repetition."""
    t = t_sink
    for _ in range(200):
        t = t_sink + r_th * (other + share * conduction(t))
    return t


def test_junction_over_a_heatsink_of_known_temperature(derived):
    """Four packages share the channel: (1 + 0.5)/4 K/W for each watt of the channel."""
    expected = junction(333.15, 1.5 / 4, 4.0)
    assert derived("r_th_own", spec(SINK)) == pytest.approx(1.5 / 4)
    assert derived("t_junction_rated", spec(SINK)) == pytest.approx(expected, abs=1e-3)
    assert derived("p_loss_rated", spec(SINK)) == pytest.approx(4.0 + conduction(expected))
    assert derived("p_switch_rated", spec(SINK)) == pytest.approx((4 + conduction(expected)) / 4)
    assert derived("r_ds_on_hot", spec(SINK)) == pytest.approx(0.04 * conduction(expected) / 0.25)
    slope = (conduction(expected + 0.5) - conduction(expected - 0.5)) / 1.0
    assert derived("p_slope", spec(SINK)) == pytest.approx(slope, rel=1e-6)


def test_programme_takes_the_share_of_its_power(derived):
    """12.04 dB: an eighth of the sine, and with it an eighth of the conduction."""
    text = spec(SINK + "signal: {crest_factor: 12.0412 dB}\n")
    expected = junction(333.15, 1.5 / 4, 4.0, 1 / 8)
    assert derived("t_junction_programme", text) == pytest.approx(expected, abs=1e-3)
    heat = 4.0 + conduction(expected) / 8
    assert derived("p_loss_programme", text) == pytest.approx(heat, rel=1e-4)
    assert derived("p_package_programme", text) == pytest.approx(heat / 4, rel=1e-4)
    case = expected - heat / 4 * 1.0
    assert derived("t_case_programme", text) == pytest.approx(case, abs=1e-3)


def test_heat_while_the_path_is_open_counts_at_100_degrees(derived):
    """Nothing is known of the cooling: the switches are taken to be at 100 degC."""
    text = spec()
    assert derived("p_loss_rated", text) == pytest.approx(4.0 + conduction(373.15))
    assert derived("r_ds_on_hot", text) == pytest.approx(0.04 * conduction(373.15) / 0.25)


def test_stated_efficiency_holds_all_losses(derived):
    """50 W at 80 %: 12.5 W, of which the inductor's own heat leaves the switches."""
    stage = STAGE.replace("p_idle: 4 W", "efficiency: 80 %")
    coil = "    filter: {inductor: {dcr: 100 mohm}}\n"
    copper = 12.5 * 0.1 * (1 + 80 * 0.00393)  # 5 A peak; winding at 100 degC
    assert derived("p_inductor", spec(SINK, stage, coil)) == pytest.approx(copper)
    assert derived("p_loss_rated", spec(SINK, stage)) == pytest.approx(12.5)
    assert derived("p_loss_rated", spec(SINK, stage, coil)) == pytest.approx(12.5)
    hotter = derived("t_junction_rated", spec(SINK, stage))
    cooler = derived("t_junction_rated", spec(SINK, stage, coil))
    assert hotter - cooler == pytest.approx(copper * 1.5 / 4, rel=1e-6)


def test_programme_of_a_stated_efficiency_alone(derived):
    """Idle 2 W and 10.5 W more at rated power; an eighth of the power has 8^-0.82 of that.

    The power 0.82 is that of two published curves, and only stands in for a curve.
    """
    stage = STAGE.replace("p_idle: 4 W", "p_idle: 2 W, efficiency: 80 %")
    text = spec(SINK + "signal: {crest_factor: 12.0412 dB}\n", stage)
    assert derived("p_loss_programme", text) == pytest.approx(2 + 10.5 / 8**0.82, rel=1e-3)


def test_inductor_heat_of_programme():
    """Sums of known terms, unlike in size, at an eighth of the power."""
    from ampreview.rules.derived.heat import (
        stated_programme,
        stated_rated,
        summed_programme,
        summed_rated,
    )

    eighth = 1 / 8
    rated = summed_rated(50.0, 4.0, 2.0, 1.6, 0.3, 2.0, 2.0, 5.0, 0.04, 1.75, 0.9)
    assert rated.conduction == pytest.approx(2 * 12.5 * 0.02)
    assert rated.elsewhere == pytest.approx(1.9)
    assert rated.switches == pytest.approx(4 + 2 + 1.6 + 50 / 9 - 1.9)
    programme = summed_programme(50.0, 4.0, 2.0, 1.6, 0.3, 2.0, 2.0, 5.0, 0.04, 1.75, eighth, 0.9)
    assert programme.conduction == pytest.approx(2 * 12.5 * 0.02 / 8)
    assert programme.elsewhere == pytest.approx(0.2 + 0.3)
    assert programme.switches == pytest.approx(4 + 2 + 0.2 + 50 / 72 - 0.5)
    assert programme.p_out == pytest.approx(6.25)
    integrated = stated_rated(50.0, 1.6, 0.3, 0.9)
    assert (integrated.conduction, integrated.elsewhere) == (0.0, pytest.approx(1.9))
    part = stated_programme(50.0, 1.6, 0.3, 1.0, 0.8, eighth)
    assert (part.conduction, part.elsewhere) == (0.0, pytest.approx(0.5))
    assert part.switches == pytest.approx(1.8 - 0.5)
    assert part.p_out == pytest.approx(6.25)


@pytest.mark.parametrize(("altitude", "factor"), [("0 m", 1.0), ("2000 m", (1.225 / 1.007) ** 0.5)])
def test_heatsink_of_known_resistance(derived, altitude, factor):
    """Two of 3 K/W; ISO 2533: 1.225 kg/m3 at sea level, 1.007 at 2000 m."""
    text = (
        f"environment: {{altitude: {altitude}}}\n"
        "thermal: {heatsink: {r_th_sa: 3 K/W, count: 2, place: outside}}\n"
    )
    assert derived("r_sink", text) == pytest.approx(1.5 * factor, rel=1e-3)


def test_heatsink_outside_of_an_open_frame(derived):
    """30 degC, 2 K/W for the switches' 4 W and the conduction; the sink is in the ambient."""
    text = spec(
        "environment: {ambient: 30 degC, altitude: 0 m}\n"
        "thermal: {enclosure: none, heatsink: {r_th_sa: 2 K/W, place: outside}}\n"
    )
    t_junction = junction(303.15, 2 + 1.5 / 4, 4.0)
    heat = 4.0 + conduction(t_junction)
    assert derived("t_junction_rated", text) == pytest.approx(t_junction, abs=0.02)
    assert derived("t_heatsink_rated", text) == pytest.approx(303.15 + 2 * heat, abs=0.02)
    programme = junction(303.15, 2 + 1.5 / 4, 4.0, 1 / 8)
    rise = 2 * (4 + conduction(programme) / 8)
    assert derived("heatsink_rise", text) == pytest.approx(rise, abs=0.05)


def test_packages_in_still_air(derived):
    """No heatsink: four packages of 40 K/W share the heat of the channel."""
    stage = STAGE.replace("r_th_jc: 1 K/W", "r_th_ja: 40 K/W")
    text = spec(
        "environment: {ambient: 30 degC}\nthermal: {enclosure: none, heatsink: none}\n", stage
    )
    assert derived("r_th_own", text) == pytest.approx(10.0)
    expected = junction(303.15, 10.0, 4.0)
    assert derived("t_junction_rated", text) == pytest.approx(expected, abs=0.02)


@pytest.mark.parametrize(("basis", "share"), [("one-eighth", 1 / 8), ("full-sine", 1.0)])
def test_heat_of_the_rating(derived, basis, share):
    text = spec(
        f"thermal: {{basis: {basis}, heatsink: {{t: 60 degC, place: outside}}}}\n"
        "signal: {crest_factor: 12.0412 dB}\n"
    )
    t = junction(333.15, 1.5 / 4, 4.0, share)
    expected = 4 + share * conduction(t) + 3
    assert derived("p_heat_basis", text) == pytest.approx(expected, rel=1e-3)


def test_surface_of_a_box_against_the_heat_that_leaves_it(derived):
    """A sealed box in a room of 25 degC: what convection and radiation carry off is the heat."""
    size = (0.3, 0.1, 0.2)
    text = spec(
        "environment: {ambient: 25 degC, altitude: 0 m, place: indoor}\n"
        "thermal: {heatsink: none, enclosure: {width: 300 mm, height: 100 mm, depth: 200 mm,"
        " emissivity: 0.9, openings: sealed}}\nsignal: {crest_factor: 12.0412 dB}\n",
        STAGE.replace("r_th_jc: 1 K/W", "r_th_ja: 40 K/W"),
    )
    rise = derived("enclosure_rise", text)
    width, height, depth = size
    side = 2 * (width + depth) * height
    top = width * depth
    span = 2 * top / (width + depth)
    carried = (1.42 * side / height**0.25 + 1.91 * top / span**0.25) * rise**1.25
    hot = 298.15 + rise
    carried += 0.9 * 5.670e-8 * (side + 2 * top) * (hot**4 - 298.15**4)
    t = derived("t_junction_programme", text)
    heat = 4 + conduction(t) / 8 + 3
    assert carried == pytest.approx(heat, rel=1e-3)


def test_shares_of_one_switch_and_one_package():
    """30 W in 2 legs of 3 devices each way: 12 switches; packages of two: a sixth each."""
    from ampreview.rules.derived.thermal_use import case, one_package, one_switch
    from ampreview.rules.formulas.heat import ChannelHeat

    heat = ChannelHeat(30.0, 0.0, 1.0, 5.0, 100.0)
    assert one_switch(heat, 350.0, 423.15, 2.0, 3.0) == pytest.approx(2.5)
    assert one_package(heat, 350.0, 423.15, 1 / 6) == pytest.approx(5.0)
    assert case(400.0, 5.0, 0.8) == pytest.approx(396.0)


def test_heatsink_inside_and_outside():
    from ampreview.rules.derived.cooling import held, nothing, solved

    assert held(1.5, 330.0, "outside").outside
    assert not held(1.5, 330.0, "inside").outside
    assert solved(1.5, "outside").outside
    assert not solved(1.5, "inside").outside
    assert nothing(330.0) == 0.0
