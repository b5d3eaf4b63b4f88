"""Quantities of filter, inductors and output, by hand for small specs through the graph."""

import math

import pytest

HALF = "supply: {source: dc-source, rails: split, v_rail: 30 V}\n"
FULL = "supply: {source: dc-source, rails: single, v_rail: 24 V}\n"


def channel(*lines: str) -> str:
    """A spec with one channel."""
    return "channels:\n  main:\n" + "".join(f"    {line}\n" for line in lines)


BRIDGE = "output_stage: {topology: full-bridge}"
LEG = "output_stage: {topology: half-bridge}"


@pytest.mark.parametrize(
    ("stage", "filter_", "expected"),
    [
        (LEG, "c_across: {c: 1 uF, dielectric: polypropylene}, c_ground: none", 1e-6),
        (BRIDGE, "c_across: {c: 1 uF, dielectric: polyester}, c_ground: none", 1e-6),
        # capacitors to ground of a bridge are in series for the load
        (
            BRIDGE,
            "c_across: {c: 1 uF, dielectric: polyester},"
            " c_ground: {c: 200 nF, dielectric: polyester}",
            1.1e-6,
        ),
        (BRIDGE, "c_across: none, c_ground: {c: 1 uF, dielectric: polyester}", 0.5e-6),
        (
            LEG,
            "c_across: {c: 1 uF, dielectric: ceramic-class-2, bias_retention: 45 %},"
            " c_ground: none",
            0.45e-6,
        ),
        # a class 2 ceramic of unknown loss keeps 60 %, common practice
        (LEG, "c_across: {c: 1 uF, dielectric: ceramic-class-2}, c_ground: none", 0.6e-6),
        (LEG, "c_across: {c: 1 uF, bias_retention: 70 %}, c_ground: none", 0.7e-6),
        (LEG, "c_across: {c: 1 uF}, c_ground: none", 1e-6),
    ],
)
def test_capacitance_across_the_load(derived, stage, filter_, expected):
    text = channel(stage, f"filter: {{{filter_}}}")
    assert derived("c_total", text) == pytest.approx(expected)


def test_a_bridge_with_capacitors_to_ground_alone(derived):
    """Silent across the load: two of 680 nF in series, as with none stated."""
    ground = "c_ground: {c: 680 nF, dielectric: polyester}"
    for across in ("", ", c_across: none"):
        text = channel(BRIDGE, f"filter: {{{ground}{across}}}")
        assert derived("c_total", text) == pytest.approx(0.34e-6)
        assert derived("c_total_unbiased", text) == pytest.approx(0.34e-6)


@pytest.mark.parametrize(
    ("stage", "across"),
    [
        (LEG, ""),  # the output capacitor of a half bridge is its c_across
        (BRIDGE, ", c_across: {dielectric: polyester}"),  # there is one, of unknown size
        (BRIDGE, ", c_across: {v_rated: 63 V}"),
    ],
)
def test_an_unknown_capacitor_across_is_asked_for_by_its_capacitance(gap, stage, across):
    text = channel(stage, f"filter: {{c_ground: {{c: 680 nF}}{across}}}")
    assert gap("c_total", text) == ["channels.main.filter.c_across.c"]


def test_corner_of_a_bridge(derived):
    """2 x 10 uH, 1 uF: 1 / (2 pi sqrt(20 uH 1 uF)) = 35.588 kHz."""
    text = channel(
        BRIDGE,
        "rated_load: 8 ohm",
        "loudspeaker: none",
        "filter: {inductor: {l: 10 uH, dcr: 50 mohm}, c_across: {c: 1 uF}, c_ground: none}",
    )
    assert derived("filter_kind", text) == "lc"
    assert derived("l_total", text) == pytest.approx(20e-6)
    assert derived("f_corner", text) == pytest.approx(35588.1, rel=1e-5)


@pytest.mark.parametrize(
    ("dielectric", "tan_delta"),
    [
        ("polypropylene", 0.0002),
        ("polyester", 0.017),
        ("ceramic-class-1", 0.001),
        ("ceramic-class-2", 0.025),
    ],
)
def test_current_of_a_small_capacitor(derived, dielectric, tan_delta):
    """0.25 W of heat: i^2 (tan_delta / (2 pi f c) + 5 mohm) with the loss factor printed."""
    for which in ("across", "ground"):
        text = channel(
            "band: 20 Hz .. 20 kHz", f"filter: {{c_{which}: {{c: 1 uF, dielectric: {dielectric}}}}}"
        )
        i = derived(f"i_c_{which}_limit_treble", text)
        esr = tan_delta / (2 * math.pi * 20e3 * 1e-6) + 5e-3
        assert i**2 * esr == pytest.approx(0.25)


RIPPLE = "modulator: {carrier: 400 kHz, type: natural-sampling, levels: "


@pytest.mark.parametrize(
    ("supply", "stage", "levels", "expected"),
    [
        # v / (4 l f) where v is the swing of the leg, at half duty
        (HALF, LEG, "two-level", 60 / (4 * 10e-6 * 400e3)),
        (FULL, BRIDGE, "two-level", 2 * 24 / (4 * 20e-6 * 400e3)),
    ],
)
def test_ripple_through_the_filter(derived, supply, stage, levels, expected):
    text = supply + channel(
        stage,
        RIPPLE + levels + "}",
        "filter: {inductor: {l: 10 uH}, c_across: {c: 1 uF}, c_ground: none}",
    )
    assert derived("ripple_idle", text) == pytest.approx(expected)


COIL = "loudspeaker: {l_e: 300 uH, series: 2, parallel: 3}"


@pytest.mark.parametrize(
    ("levels", "expected"),
    [
        # the coil of 200 uH takes the whole bridge voltage of +-24 V
        ("two-level", 48 / (4 * 200e-6 * 400e3)),
        # one leg at a time: at a quarter of the period of twice the carrier
        ("three-level", 24 / (8 * 200e-6 * 400e3)),
    ],
)
def test_ripple_in_the_voice_coil_of_a_filterless_stage(derived, levels, expected):
    """Two in series, three such strings in parallel: 300 uH * 2 / 3."""
    text = FULL + channel(BRIDGE, RIPPLE + levels + "}", "filter: {type: filterless}", COIL)
    found = derived("ripple_idle", text)
    if levels == "three-level":  # largest at half depth, there a quarter of the two-level one
        time = [k / 2000 / 400e3 for k in range(2000)]
        slope = [1.0 if (t * 800e3) % 1 < 0.5 else 0.0 for t in time]
        current, lowest, highest = 0.0, 0.0, 0.0
        for on in slope:
            current += (24 * on - 12) / 200e-6 / 400e3 / 2000
            lowest, highest = min(lowest, current), max(highest, current)
        assert found == pytest.approx(highest - lowest, rel=0.01)
    assert found == pytest.approx(expected)


def sampled_rms(depth: float, three_level: bool) -> float:
    """Sine of 5 A peak with a triangle of 3 A at idle: widths follow the duty, sample by sample."""
    total, steps = 0.0, 4000
    for k in range(steps):
        m = abs(depth * math.sin(2 * math.pi * (k + 0.5) / steps))
        ripple = 3.0 * (4 * m * (1 - m) if three_level else 1 - m * m)
        total += (5.0 * math.sin(2 * math.pi * (k + 0.5) / steps)) ** 2 + ripple**2 / 12
    return math.sqrt(total / steps)


@pytest.mark.parametrize("depth", [0.3, 0.8])
def test_rms_of_the_inductor(depth):
    from ampreview.rules.derived.inductor import rms_constant_ripple, rms_three_level, rms_two_level

    assert rms_two_level(5.0, 3.0, depth) == pytest.approx(sampled_rms(depth, False), rel=1e-4)
    assert rms_three_level(5.0, 3.0, depth) == pytest.approx(sampled_rms(depth, True), rel=1e-4)
    plain = math.sqrt(12.5 + 9.0 / 12)
    assert rms_constant_ripple(5.0, 3.0) == pytest.approx(plain, rel=1e-12)


def test_lead_there_and_back(derived):
    """3 m of 2.5 mm2, 17.24 mohm mm2/m: 41.4 mohm."""
    text = channel("lead: {length: 3 m, area: 2.5 mm2}")
    assert derived("r_lead", text) == pytest.approx(41.376e-3)
    supply = "wiring: {supply_lead: {length: 3 m, area: 2.5 mm2}}\n"
    assert derived("r_supply_lead", supply) == pytest.approx(41.376e-3)


def test_thickest_lead_stands_in_for_an_unknown_one(derived):
    """10 mm2 at the loudspeaker, 49 mm2 at the source flatter the design."""
    assert derived("r_lead", channel("lead: {length: 5 m}")) == pytest.approx(17.24e-3)
    supply = "wiring: {supply_lead: {length: 4.9 m}}\n"
    assert derived("r_supply_lead", supply) == pytest.approx(3.448e-3)


PARTS = (
    "output_stage: {topology: full-bridge, devices: discrete, parallel: 2, r_series: 20 mohm,"
    " device: {r_ds_on: 40 mohm}}"
)


def test_resistance_of_the_cold_path(derived):
    """Two legs of 40/2 + 30 mohm and 20 mohm more: 120 mohm."""
    text = channel(PARTS, "filter: {inductor: {dcr: 30 mohm}}")
    assert derived("r_path_cold", text) == pytest.approx(0.12)


@pytest.mark.parametrize(("core", "factor"), [("ferrite", 0.8), ("powder", 1.0), ("air", 1.0)])
def test_saturation_when_hot(derived, core, factor):
    text = channel(f"filter: {{inductor: {{core: {core}, i_sat: 10 A}}}}")
    assert derived("i_sat_factor", text) == factor
    assert derived("i_sat_hot", text) == pytest.approx(10 * factor)


def test_voltage_of_one_driver_in_a_string(derived):
    from ampreview.rules.derived.level import (
        limited_sine,
        limited_voltage,
        lossless_sine,
        rated_level,
    )
    from ampreview.rules.derived.sound import one_of_string

    assert one_of_string(20.0, 2) == 10.0
    assert limited_voltage(50.0, 8.0, 100.0) == pytest.approx(20.0)
    assert limited_voltage(50.0, 8.0, 12.0) == 12.0
    assert rated_level(52.4, 0.01, 8.0, 30.0, 100.0) == pytest.approx(20.0)
    assert rated_level(52.4, 0.01, 8.0, 30.0, 12.0) == 12.0
    assert rated_level(52.4, 0.01, 8.0, 17.0, 100.0) == 17.0
    assert lossless_sine(0.9, 30.0) == pytest.approx(27 / math.sqrt(2))
    assert limited_sine(19.0, 100.0) == 19.0
    assert limited_sine(19.0, 12.0) == 12.0


@pytest.mark.parametrize("function", ["power_with_dead_time", "power_in_loop", "power_at_depth"])
def test_power_behind_a_path(function):
    """Depth 0.9 of 30 V behind 0.2 ohm into 4 ohm; the pulses lose 2 or 8/pi times 20 ns."""
    from ampreview.rules.derived import output

    lost = {"power_with_dead_time": 8 / math.pi, "power_in_loop": 2.0, "power_at_depth": 0.0}
    depth = 0.9 - lost[function] * 20e-9 * 400e3
    current = depth * 30.0 / 4.2
    arguments = (0.9, 20e-9, 400e3) if lost[function] else (0.9,)
    found = getattr(output, function)(*arguments, 30.0, 4.0, 0.2)
    assert found == pytest.approx(current**2 / 2 * 4.0)


def test_air_core_loses_nothing(derived):
    text = channel("filter: {inductor: {core: air}}")
    assert derived("p_core", text) == 0.0


def test_resistance_of_the_hot_path():
    """Two legs of 60/3 + 30 mohm, 20 and 40 mohm more: 160 mohm."""
    from ampreview.rules.derived.output import path_resistance

    assert path_resistance(2.0, 0.06, 3.0, 0.03, 0.02, 0.04) == pytest.approx(0.16)


@pytest.mark.parametrize(
    ("second", "l_leg", "c"),
    [
        ("none", 0.0, 0.0),
        ("{l: 4.7 uH, c: 220 nF}", 4.7e-6, 220e-9),
        # two of 100 nF to ground are in series for the load
        ("{l: 4.7 uH, c_ground: 100 nF}", 4.7e-6, 50e-9),
        ("{l: 4.7 uH, c: 220 nF, c_ground: 100 nF}", 4.7e-6, 270e-9),
    ],
)
def test_second_section_across_the_load_and_to_ground(derived, second, l_leg, c):
    text = channel(BRIDGE, f"filter: {{second_stage: {second}}}")
    assert derived("l_second", text) == pytest.approx(l_leg)
    assert derived("c_second", text) == pytest.approx(c)


def test_a_second_section_of_unknown_parts_is_asked_for_them(gap):
    text = channel(BRIDGE, "filter: {second_stage: {l: 4.7 uH}}")
    assert gap("c_second", text) == ["channels.main.filter.second_stage.c"]
    text = channel(BRIDGE, "filter: {second_stage: {c: 100 nF}}")
    assert gap("l_second", text) == ["channels.main.filter.second_stage.l"]
