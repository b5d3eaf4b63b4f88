"""Power and current on both sides of a converter, followed through a whole spec."""

import math

import numpy as np
import pytest

from ampreview.linter.evaluation.catalogue import load
from ampreview.linter.evaluation.graph import Graph
from ampreview.linter.evaluation.node import Node
from ampreview.linter.reading.loading import load_text


def value(text: str, name: str) -> float:
    loaded = load_text("amplifier_spec: 1\n" + text, "feed")
    assert loaded.spec is not None, loaded.refusals
    node = Graph(loaded.spec, load().derived).resolve(name, None)
    assert isinstance(node, Node), node
    return float(node.value())


CONVERTER = """
supply:
  source: battery
  rails: split
  converter: step-up
  converter_efficiency: 80 %
  v_rail: 30 V
  p_auxiliary: 4 W
battery: {series: 4, cell: {v_oc_low: 3.0 V, r_internal: 20 mohm}}
channels:
  main:
    rated_power: 40 W
    rated_load: 4 ohm
    output_stage: {topology: half-bridge, efficiency: 80 %}
"""


def test_other_loads_do_not_pass_the_converter() -> None:
    """40 W / 0.8 / 0.8 and the 4 W beside the converter: 66.5 W from the pack."""
    assert value(CONVERTER, "p_source_rated") == pytest.approx(40 / 0.8 / 0.8 + 4.0)


def test_two_rails_behind_a_converter_take_turns() -> None:
    """Sum of the instantaneous powers of both rails of a half bridge: only twice the note."""
    m, x = 0.7, np.linspace(0, 2 * math.pi, 20_001)[:-1]
    current = np.sin(x)
    both = current * (1 + m * np.sin(x)) / 2 - current * (1 - m * np.sin(x)) / 2
    at_note = 2 * float(np.mean(both * np.sin(x)))
    at_double = -2 * float(np.mean(both * np.cos(2 * x)))
    assert at_note == pytest.approx(0.0, abs=1e-12)
    assert value(CONVERTER, "p_source_signal") == 0.0
    share = value(CONVERTER, "p_source_double") / (value(CONVERTER, "p_source_rated") - 4.0)
    assert share == pytest.approx(at_double / float(np.mean(both)), rel=1e-9)


def test_one_rail_of_a_direct_split_supply_carries_half_and_the_note_itself() -> None:
    """Waveform of one rail: mean I M / 4, amplitude I / 2 at the note, at the rail voltage."""
    text = """
supply: {source: dc-source, rails: split, v_rail: 30 V}
channels:
  main:
    rated_power: 40 W
    rated_load: 4 ohm
    output_stage: {topology: half-bridge, efficiency: 80 %}
"""
    i_peak = math.sqrt(2 * 40 / 4)
    assert value(text, "p_source_rated") == pytest.approx(25.0)
    assert value(text, "p_source_signal") == pytest.approx(30 * i_peak / 2)
    mean = 30 * i_peak * (i_peak * 4 / 30) / 4
    assert value(text, "p_rated_sum") / 2 == pytest.approx(mean)


def test_pack_by_chemistry() -> None:
    """A 12 V lead-acid block is full at 14.4 V (AGM) and 15.5 V (flooded, equalised)."""
    block = "supply: {{source: battery}}\nbattery: {{chemistry: {}, series: 6}}\n" + (
        "channels: {{main: {{rated_power: 10 W}}}}\n"
    )
    assert value(block.format("lead-acid-agm"), "v_rail_high") == pytest.approx(14.4)
    assert value(block.format("lead-acid-flooded"), "v_rail_high") == pytest.approx(15.5, abs=0.03)
    lithium = block.replace("series: 6", "series: 14").format("li-ion")
    assert value(lithium, "v_rail_high") == pytest.approx(58.80)
    iron = block.replace("series: 6", "series: 16").format("lfp")
    assert value(iron, "v_rail_high") == pytest.approx(58.40)


STIFF = """
supply: {source: dc-source, rails: single, v_rail: 24 V}
channels:
  main:
    rated_power: 16 W
    rated_load: 4 ohm
    output_stage: {topology: half-bridge, devices: integrated}
"""


def test_a_source_without_resistance_is_loaded_by_no_loss() -> None:
    """No term of the losses can move the rail, so none of them is taken in."""
    loaded = load_text("amplifier_spec: 1\n" + STIFF, "stiff")
    assert loaded.spec is not None, loaded.refusals
    node = Graph(loaded.spec, load().derived).resolve("v_rail_loaded", None)
    assert isinstance(node, Node), node
    assert node.value() == 24.0
    assert {item.path for item in node.assumed} <= {"supply.r_source"}


@pytest.mark.parametrize("stated", ["0.1 ohm", "{typ: 1 uohm, max: 0.1 ohm}", "{typ: 0.1 ohm}"])
def test_a_source_with_resistance_is_loaded_by_the_losses(stated: str) -> None:
    sagging = STIFF.replace("24 V", f"24 V, r_source: {stated}")
    loaded = load_text("amplifier_spec: 1\n" + sagging, "sagging")
    assert loaded.spec is not None, loaded.refusals
    node = Graph(loaded.spec, load().derived).resolve("v_rail_loaded", None)
    assert isinstance(node, Node), node
    assert "floor" in {item.leaning for item in node.assumed}
