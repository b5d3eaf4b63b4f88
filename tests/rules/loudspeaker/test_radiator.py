"""Cone in a box with a passive radiator, against a nodal solution with its spring."""

from math import inf

import numpy as np
import pytest

from ampreview.linter.finding import Status
from ampreview.rules.derived.excursion import excursion, excursion_least
from ampreview.rules.formulas.driver import box_load, cone_shape

from ..whole import answers

RHO, SOUND = 1.18, 345.0
Q_MS, Q_ES, V_AS, S_D, F_S, R_E = 4.0, 0.45, 0.020, 0.0137, 45.0, 6.0


def shape(f, alpha: float, f_b: float, beta: float = 0.0):
    return cone_shape(f, F_S, Q_MS, Q_ES, box_load(f, alpha, f_b, beta, 7.0), R_E, inf)


def moved(f: float, v_b: float, f_b: float, v_ap: float, q_l: float) -> float:
    """Excursion over that of the free driver towards zero frequency, from impedances."""
    s, w_s = 2j * np.pi * f, 2 * np.pi * F_S
    spring = RHO * SOUND**2 * S_D**2 / V_AS
    mass = spring / w_s**2
    bl_squared = w_s * mass * R_E / Q_ES
    air = v_b / (RHO * SOUND**2)
    # at f_b the radiator's mass swings with its own spring and that of the box side by side
    stiffness = RHO * SOUND**2 / v_ap
    heavy = (stiffness + 1 / air) / (2 * np.pi * f_b) ** 2
    radiator = s * heavy + stiffness / s
    leak = q_l / (2 * np.pi * f_b * air)
    box = 1 / (s * air + 1 / radiator + 1 / leak)
    whole = s * mass + w_s * mass / Q_MS + spring / s + bl_squared / R_E + S_D**2 * box
    return float(abs(spring / (s * whole)))


@pytest.mark.parametrize("f", [11.0, 18.0, 24.9, 40.0, 50.0, 63.0, 160.0])
@pytest.mark.parametrize("v_ap", [0.004, 0.012, 0.3])
def test_against_impedances(f: float, v_ap: float) -> None:
    found = shape(f, V_AS / 0.012, 50.0, 0.012 / v_ap)
    assert found == pytest.approx(moved(f, 0.012, 50.0, v_ap, 7.0), rel=1e-11)


def test_limits_of_the_radiator() -> None:
    """Without a spring it is a port; at its resonance, here f_b / 2, there is no box."""
    port = moved(33.0, V_AS / 1.7, 50.0, 1e9, 7.0)
    assert shape(33.0, 1.7, 50.0) == pytest.approx(port, rel=1e-6)
    assert shape(25.0, 1.7, 50.0, 1 / 3) == pytest.approx(shape(25.0, 0.0, 0.0), rel=1e-12)


def test_without_the_spring_it_is_a_bound() -> None:
    """300 boxes: at most 3 % above the truth, for the leak; the search finds 99 % of it."""
    dice = np.random.default_rng(7)
    for _ in range(300):
        v_b, f_b = V_AS / dice.uniform(0.3, 6), F_S * dice.uniform(0.6, 1.4)
        v_ap, low = v_b * dice.uniform(0.5, 20.0), dice.uniform(20.0, 90.0)
        box = (1.0, F_S, Q_MS, Q_ES, R_E, dice.choice([inf, 300e-6]), V_AS, v_b, f_b)
        rest = (7.0, 30.0, 2.0, low, 5e3)
        found = excursion(*box, v_ap, *rest)
        assert excursion_least(*box, inf, *rest) <= 1.03 * found
        fine = np.geomspace(low, 5e3, 20001)
        filtered = 1 / np.sqrt(1 + (30.0 / fine) ** 4)
        load = box_load(fine, V_AS / v_b, f_b, v_b / v_ap, 7.0)
        best = max(filtered * cone_shape(fine, *box[1:4], load, *box[4:6]))
        assert 0.99 * best < found <= best * (1 + 1e-6)


SPEC = """
supply: {{source: dc-source, rails: single, v_rail: 32 V, r_source: 20 mohm, bulk: {{c: 4.7 mF}}}}
channels:
  main:
    rated_power: 50 W
    rated_load: 8 ohm
    band: 50 Hz .. 5 kHz
    output_stage: {{topology: full-bridge, devices: integrated, efficiency: 90 %,
      r_series: 50 mohm, device: {{r_ds_on: 60 mohm}}}}
    gate_drive: {{dead_time: 5 ns, t_pulse_min: 50 ns}}
    modulator: {{type: natural-sampling, carrier: 400 kHz, m_max: 95 %}}
    filter: {{type: lc, inductor: {{l: 10 uH, dcr: 15 mohm}}}}
    limiter: {{v_rms: 15 V}}
    loudspeaker: {{z_rated: 8 ohm, r_e: 6 ohm, f_s: 45 Hz, q_ms: 4, q_es: 0.45, v_as: 20 L,
      s_d: 137 cm2, x_max: {x_max}, x_mech: 20 mm, high_pass: {{f: 45 Hz, order: 2}},
      enclosure: {{type: passive-radiator, v_b: 12 L, f_b: 50 Hz{more}}}}}
"""


@pytest.mark.parametrize(
    ("x_max", "more", "expected"),
    [
        ("1 mm", "", Status.FINDING),
        ("5 mm", "", Status.OPEN),
        ("8 mm", ", v_ap: 4 L", Status.MEETS),
        ("1 mm", ", v_ap: 4 L", Status.FINDING),
    ],
)
def test_a_box_with_a_radiator_is_never_passed_over(
    x_max: str, more: str, expected: Status
) -> None:
    found = answers(SPEC.format(x_max=x_max, more=more), "prototype")
    assert found["cone-excursion"].status is expected
    if expected is Status.OPEN:
        (missing,) = found["cone-excursion"].advice.missing
        assert missing.path.endswith("enclosure.v_ap")
    assert found["vented-box-unloading"].status is not Status.NOT_APPLICABLE
