"""Idle loss of whole specs: its terms by hand, what is named while it is incomplete."""

import math
from itertools import pairwise

import pytest

from ampreview.linter.evaluation.node import Node
from ampreview.linter.finding import Status
from ampreview.rules.formulas.inductor import core_share_of_sine

from ..whole import answer
from .conftest import resolved

SPLIT = "supply: {source: dc-source, converter: none, rails: split, v_rail: 35 V}\n"
LEG = """
signal: {crest_factor: 12.0412 dB}
channels:
  a: &channel
    rated_power: 100 W
    rated_load: 4 ohm
    output_stage:
      topology: half-bridge
      devices: discrete
      parallel: 2
      t_edge: 15 ns
      p_auxiliary: 0.5 W
      snubber: {c: 220 pF, r: 10 ohm}
      device: {r_ds_on: 40 mohm, q_g: 20 nC, q_oss: 10 nC, v_c_oss: 70 V, q_rr: 60 nC, v_sd: 0.9 V}
    gate_drive: {v_drv: 12 V, dead_time: 40 ns, regulator: {type: switching, i_other: 10 mA}}
    modulator: {type: natural-sampling, carrier: 400 kHz}
    filter:
      type: lc
      inductor: {l: 22 uH, dcr: 20 mohm, r_ac: 200 mohm, core: air}
      c_across: {c: 470 nF}
"""
RIPPLE = 70 / (4 * 22e-6 * 400e3)
MOVED = RIPPLE / 2 * 40e-9 * (1 - 2 * 40e-9 * 400e3)
NODE = 2 * 2 * 10e-9 + 220e-12 * 70.0


def left_of_edges() -> float:
    """Energy of one edge: the voltage that is left by bisection, then v dq step by step."""
    share = 1 - MOVED / NODE
    low, high = 0.0, 1.0
    for _ in range(60):
        x = (low + high) / 2
        low, high = (low, x) if (x**0.5 + 1 - (1 - x) ** 0.5) / 2 > share else (x, high)
    lost, steps = 0.0, 20_000
    for k in range(steps):  # the node from x of the swing down to zero through a closing switch
        v = x * (k + 0.5) / steps * 70
        capacitances = 20e-9 / (2 * 70**0.5) * (v**-0.5 + (70 - v) ** -0.5)
        lost += v * capacitances * x / steps * 70
    return lost + 220e-12 * (x * 70) ** 2 / 2


def test_terms_of_a_half_bridge(derived):
    """Two devices for one, a partly soft edge, its snubber, gates, ripple, what feeds them."""
    gates = 2 * 2 * 20e-9 * 12 * 400e3
    copper = RIPPLE**2 / 12 * (0.02 + 0.2)
    expected = 2 * left_of_edges() * 400e3 + gates + copper + 0.5 + 12 * 0.010
    assert 0 < MOVED < NODE
    assert derived("p_idle", SPLIT + LEG) == pytest.approx(expected, rel=1e-3)


def test_a_winding_without_its_resistance_at_the_carrier_has_that_to_direct_current(derived):
    less = RIPPLE**2 / 12 * (0.2 - 0.02)
    text = SPLIT + LEG.replace(", r_ac: 200 mohm", "")
    assert derived("p_idle", SPLIT + LEG) - derived("p_idle", text) == pytest.approx(less)
    node = resolved("p_idle", text)
    assert isinstance(node, Node)
    leanings = {item.path: item.leaning for item in node.assumed}
    assert leanings["channels.a.filter.inductor.r_ac"] == "favourable"


@pytest.mark.parametrize(
    ("gone", "path"),
    [
        (", q_oss: 10 nC, v_c_oss: 70 V", "q_oss_swing"),
        (", q_g: 20 nC", "channels.a.output_stage.device.q_g"),
        ("      p_auxiliary: 0.5 W\n", "channels.a.output_stage.p_auxiliary"),
        ("{c: 220 pF, r: 10 ohm}", "channels.a.output_stage.snubber.c"),
        (", core: air", "p_core"),
        ("r_ds_on: 40 mohm, ", "channels.a.output_stage.device.r_ds_on"),
    ],
)
def test_a_term_that_is_missing_is_named_and_leaves_a_lower_bound(derived, gone, path):
    text = SPLIT + LEG.replace(gone, "{r: 10 ohm}" if "220" in gone else "")
    node = resolved("p_idle", text)
    assert isinstance(node, Node)
    assert path in [item.path for item in node.assumed if item.leaning == "floor"]
    assert float(node.value()) <= derived("p_idle", SPLIT + LEG)
    whole = resolved("p_idle", SPLIT + LEG)
    assert isinstance(whole, Node)
    assert not [item for item in whole.assumed if item.leaning == "floor"]


def test_a_part_from_its_printed_current(derived):
    """Rail to rail, so 70 V: 25 mA are 1.75 W; ripple and a supply of its own beside them."""
    part = LEG.replace("devices: discrete", "devices: integrated\n      i_q: 25 mA")
    switches = RIPPLE**2 / 12 * (0.04 / 2 + 0.2)
    expected = 25e-3 * 70 + switches + 220e-12 * 70**2 * 400e3 + 0.5
    assert derived("p_idle", SPLIT + part) == pytest.approx(expected)
    assert (
        derived("p_idle", SPLIT + part.replace("      p_aux", "      p_idle: 3 W\n      p_aux"))
        == 3
    )


def test_a_part_without_filter_has_no_ripple_in_copper_or_core(derived):
    text = """
supply: {source: dc-source, converter: none, rails: single, v_rail: 5 V}
channels:
  a:
    output_stage:
      {topology: full-bridge, devices: integrated, i_q: 3 mA, device: {r_ds_on: 0.2 ohm}}
    modulator: {levels: three-level, carrier: 300 kHz}
    filter: {type: filterless}
    loudspeaker: {l_e: 50 uH, series: 1, parallel: 1}
"""
    assert derived("p_idle", text) == pytest.approx(15e-3)
    node = resolved("p_idle", text)
    assert isinstance(node, Node)
    assert not [item for item in node.assumed if item.leaning == "floor"]


@pytest.mark.parametrize("kind", ["natural-sampling", "self-oscillating"])
def test_more_load_never_loses_less(derived, kind):
    """From silence, where the idle loss is left, to a sine."""
    losses = []
    for crest in (60.0, 40.0, 30.0, 20.0, 15.0, 12.0, 9.0, 6.0, 4.0, 3.0103):
        text = LEG.replace("12.0412 dB", f"{crest} dB").replace("natural-sampling", kind)
        losses.append(derived("p_loss_programme", SPLIT + text))
    assert losses[0] == pytest.approx(derived("p_idle", SPLIT + LEG), rel=0.02)
    assert losses[-1] == pytest.approx(derived("p_loss_rated", SPLIT + text), rel=1e-4)
    assert all(low <= high for low, high in pairwise(losses))


def test_two_equal_channels_and_both_rails(derived):
    """All power of the rails comes out again: as signal or as heat; each rail has its half."""
    one, two = SPLIT + LEG, SPLIT + LEG + "  b: *channel\n"
    for name, share in (("p_in_programme", 1 / 8), ("p_in_rated", 1.0)):
        assert derived(name, two) == pytest.approx(2 * derived(name, one))
        loss = derived(name.replace("in", "loss"), one)
        assert derived(name, one) == pytest.approx(100 * share + loss, rel=1e-5)
        rail = derived(name.replace("p_in", "p_rail"), one)
        assert 2 * rail == pytest.approx(derived(name, one))


def test_parallel_devices_share_the_conduction_and_add_their_charges(derived):
    """Four for two: edges and gates once more, half the resistance."""
    four = LEG.replace("parallel: 2", "parallel: 4")
    hot = (373.15 / 298.15) ** (math.log(1.8) / math.log(423.15 / 298.15))
    conduction = 0.02 * hot * 50 / 2
    switching = derived("p_switching", SPLIT + four) - derived("p_switching", SPLIT + LEG)
    idle = derived("p_idle", SPLIT + four) - derived("p_idle", SPLIT + LEG)
    loss = derived("p_loss_rated", SPLIT + four) - derived("p_loss_rated", SPLIT + LEG)
    assert idle > 2 * 2 * 20e-9 * 12 * 400e3
    assert switching > 2 * 60e-9 * 70 * 400e3 * 0.9
    assert loss == pytest.approx(switching + idle - conduction / 2, rel=1e-6)


@pytest.mark.parametrize("depth", [0.0, 0.5, 0.8, 1.0])
def test_a_core_keeps_a_least_part_of_its_loss_under_a_sine(depth: float) -> None:
    """Steinmetz over a period, step by step: no exponent up to 3 leaves less than the cube."""
    steps = 4000
    for exponent in (2.0, 2.6, 3.0):
        swings = [1 - (depth * math.sin(math.tau * k / steps)) ** 2 for k in range(steps)]
        part = sum(x**exponent for x in swings) / steps
        assert core_share_of_sine(depth) <= part + 1e-9
    assert core_share_of_sine(depth) == pytest.approx(part)  # that of the cube


@pytest.mark.parametrize(
    ("stated", "status"),
    [
        ("efficiency: 92 %", Status.MEETS),  # 8.7 W lost, of the core 20 W at most
        ("efficiency: 60 %", Status.OPEN),  # 67 W lost, of the core 160 W at most
    ],
)
def test_the_loss_at_rated_power_bounds_the_core(stated: str, status: Status) -> None:
    """In a box of 0.28 m2, some 2 W/K, no core within the loss heats the air from 40 to 85 degC."""
    box = "{width: 250 mm, height: 200 mm, depth: 200 mm, openings: sealed, emissivity: 0.9}"
    text = (SPLIT + LEG).replace(", core: air", "").replace("v_sd:", "r_th_ja: 20 K/W, v_sd:")
    text = text.replace("devices: discrete", f"devices: discrete\n      {stated}".rstrip())
    text = text.replace(
        "v_rail: 35 V}", "v_rail: 35 V, p_auxiliary: 2 W, bulk: {t_rated: 105 degC}}"
    )
    text += "environment: {ambient: 0 degC .. 40 degC}\n"
    text += f"thermal: {{heatsink: none, enclosure: {box}}}\n"
    found = answer("enclosure-air", text, "prototype")
    assert found.status is status, found.message
    if stated and status is Status.OPEN:
        assert [x.path for x in found.advice.missing] == ["channels.a.output_stage.p_idle"]
