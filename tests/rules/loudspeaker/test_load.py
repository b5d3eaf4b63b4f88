"""Load, clipped power, ratings and R-C arms against circuits, sums and published numbers."""

from itertools import pairwise

import numpy as np
import pytest

from ampreview.linter.evaluation.catalogue import load
from ampreview.linter.evaluation.graph import Gap, Graph
from ampreview.linter.reading.loading import load_text
from ampreview.rules.formulas.load import (
    network_impedance,
    one_of_network,
    series_arm_power,
    sine_voltage,
)
from ampreview.rules.loudspeaker.voice_coil_zobel import figure as zobel_figure


def derived(channel: str, name: str) -> float:
    """A derived quantity of a channel written as YAML flow text."""
    loaded = load_text(f"amplifier_spec: 1\nchannels: {{main: {channel}}}\n", "fragment")
    assert loaded.spec is not None, loaded.refusals
    node = Graph(loaded.spec, load().derived).resolve(name, "main")
    assert not isinstance(node, Gap), node
    return float(node.value({}))


@pytest.mark.parametrize(("series", "parallel"), [(1, 3), (2, 2), (3, 1), (2, 3)])
def test_network_against_nodes(series: int, parallel: int) -> None:
    """Every loudspeaker a conductance between nodes; 1 A in, voltage out."""
    nodes = 1 + parallel * (series - 1)
    matrix = np.zeros((nodes + 1, nodes + 1))
    ground = nodes
    for string in range(parallel):
        inner = [1 + string * (series - 1) + k for k in range(series - 1)]
        chain = [0, *inner, ground]
        for a, b in pairwise(chain):
            matrix[[a, b, a, b], [a, b, b, a]] += np.array([1, 1, -1, -1]) / 8.0
    current = np.zeros(nodes)
    current[0] = 1.0
    found = np.linalg.solve(matrix[:nodes, :nodes], current)[0]
    assert network_impedance(8.0, series, parallel) == pytest.approx(found, rel=1e-12)
    assert one_of_network(found, series, parallel) == pytest.approx(8.0, rel=1e-12)


def test_published_rating_voltages() -> None:
    """tonmeister.ca no. 97: 125 W, 6 ohm, 27.39 V; maonotech: 400 W, 8 ohm, 56.57 V."""
    assert sine_voltage(125.0, 6.0) == pytest.approx(27.39, abs=0.005)
    assert sine_voltage(400.0, 8.0) == pytest.approx(56.57, abs=0.005)


def test_b_and_c_statement_on_programme_and_peak() -> None:
    """B&C Speakers: programme is twice, peak four times the nominal rating."""
    one = "{{loudspeaker: {{z_rated: 8 ohm, p_rated: {} W, rating_method: {}}}}}"
    assert derived(one.format(100, "aes2-1984"), "p_driver_noise") == 100
    assert derived(one.format(200, "programme"), "p_driver_noise") == 100
    assert derived(one.format(400, "peak"), "p_driver_noise") == 100


@pytest.mark.parametrize(("rated", "lowest"), [(8, 6.4), (6, 4.8), (4, 3.2)])
def test_visaton_dictionary_minimum_impedance(rated: float, lowest: float) -> None:
    """IEC 60268-5 as quoted: the lowest modulus is 80 % of the rated impedance."""
    channel = f"{{loudspeaker: {{z_rated: {rated} ohm}}}}"
    assert derived(channel, "z_load_min") == pytest.approx(lowest, rel=1e-12)


@pytest.mark.parametrize(
    ("channel", "lowest"),
    [
        # the stated minimum counts, not 80 %
        ("{rated_load: 4 ohm, loudspeaker: {z_rated: 4 ohm, z_min: 3.4 ohm}}", 3.4),
        # two strings of two of 8 ohm with a minimum of 6 ohm
        ("{loudspeaker: {z_rated: 8 ohm, z_min: 6 ohm, series: 2, parallel: 2}}", 6.0),
        # a 4 ohm load may be connected as well: it dips in the same ratio
        (
            "{rated_load: 8 ohm, load_range: 4 ohm .. 8 ohm,"
            " loudspeaker: {z_rated: 8 ohm, z_min: 6 ohm}}",
            3.0,
        ),
        # measured into resistors; loudspeakers of that rating will follow
        ("{rated_load: 4 ohm, loudspeaker: none}", 3.2),
        ("{rated_load: 8 ohm, load_range: 4 ohm .. 8 ohm, loudspeaker: none}", 3.2),
    ],
)
def test_lowest_load(channel: str, lowest: float) -> None:
    assert derived(channel, "z_load_min") == pytest.approx(lowest, rel=1e-12)


def test_coil_resistance_is_stated_or_four_fifths() -> None:
    assert derived("{loudspeaker: {z_rated: 8 ohm}}", "r_e") == pytest.approx(6.4, rel=1e-12)
    assert derived("{loudspeaker: {z_rated: 8 ohm, r_e: 5.5 ohm}}", "r_e") == 5.5


@pytest.mark.parametrize("f", [200.0, 13.5e3, 20e3, 1e6])
def test_arm_power_against_complex_current(f: float) -> None:
    current = 35.0 / abs(40.0 + 1 / (2j * np.pi * f * 100e-9))
    power = current**2 * 40.0
    assert series_arm_power(35.0, f, 40.0, 100e-9) == pytest.approx(power, rel=1e-12)


def test_dayton_br1_voice_coil_correction() -> None:
    """Manual p. 4: 6.5 ohm, 1.87 mH: 8.125 ohm and 28.3 uF; levels 6.83 .. 8.37 ohm."""
    assert zobel_figure(8.125, 28.3e-6, 6.5, 1.87e-3) == pytest.approx(1.0, abs=2e-3)
    f = np.geomspace(200, 20e3, 400)
    s = 2j * np.pi * f
    arm = 8.125 + 1 / (s * 28.3e-6)
    modulus = abs(1 / (1 / (6.5 + s * 1.87e-3) + 1 / arm))
    assert modulus.min() == pytest.approx(6.83, abs=0.01)
    assert modulus.max() == pytest.approx(8.37, abs=0.01)


def test_exact_correction_levels_the_coil_and_passes() -> None:
    """R = Re and C = Le / Re^2 make the impedance constant; the check lets it pass."""
    r, c = 6.5, 1.87e-3 / 6.5**2
    s = 2j * np.pi * np.geomspace(20, 20e3, 50)
    modulus = abs(1 / (1 / (6.5 + s * 1.87e-3) + 1 / (r + 1 / (s * c))))
    assert np.allclose(modulus, 6.5, rtol=1e-12)
    assert zobel_figure(r, c, 6.5, 1.87e-3) < 2
