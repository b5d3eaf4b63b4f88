"""Excursion and port speed against a separate model: electrical, mechanical, acoustical nodes.

The model here knows nothing of Q, compliance ratio or polynomials: it has a coil, a motor,
a mass, a spring, an air spring, a leak and a port, and is solved as complex equations.
"""

from dataclasses import dataclass

import numpy as np
import pytest
from scipy import signal

from ampreview.linter.finding import Status
from ampreview.linter.quantities.units import registry
from ampreview.rules.derived.excursion import excursion, free_excursion_of
from ampreview.rules.formulas.driver import (
    box_load,
    compliance,
    cone_shape,
    free_excursion,
    high_pass,
    port_speed,
    total_q,
    vented_denominator,
    vented_volume_gain,
)

from ..whole import answer

RHO, SOUND = 1.18, 345.0


@dataclass
class Driver:
    """Data-sheet values in SI units."""

    f_s: float = 45.0
    q_ms: float = 4.0
    q_es: float = 0.45
    v_as: float = 0.020
    s_d: float = 0.0137
    r_e: float = 6.0

    @property
    def q_ts(self) -> float:
        return total_q(self.q_ms, self.q_es)

    def x_free(self, v_rms: float) -> float:
        c_ms = compliance(self.v_as, self.s_d, RHO, SOUND)
        return free_excursion(v_rms, c_ms, self.f_s, self.q_es, self.r_e)

    def shape(self, f, v_b: float = np.inf, f_b: float = 0.0, q_l: float = 7.0):
        load = box_load(f, self.v_as / v_b, f_b, 0.0, q_l)
        return cone_shape(f, self.f_s, self.q_ms, self.q_es, load, self.r_e, np.inf)

    def excursion(self, v_rms: float, v_b: float, f_b: float, *band: float) -> float:
        motion = (self.x_free(v_rms), self.f_s, self.q_ms, self.q_es, self.r_e, np.inf)
        return excursion(*motion, self.v_as, min(v_b, 1e9), f_b, 1e9, 7.0, *band)


@dataclass
class Motion:
    """Peak values at one frequency: cone, port and everything that leaves the box."""

    cone: float
    port_volume: float
    box_volume: float


def solve(
    d: Driver, v_rms: float, f: float, v_b: float, f_b: float, q_l: float, c: float = 1e15
) -> Motion:
    """Nodal solution; infinite ``v_b`` is no box, ``f_b`` of 0 Hz a sealed one.

    ``c`` is a capacitor ahead of the coil.
    """
    s = 2j * np.pi * f
    w_s = 2 * np.pi * d.f_s
    spring = RHO * SOUND**2 * d.s_d**2 / d.v_as
    mass = spring / w_s**2
    friction = w_s * mass / d.q_ms
    bl = (w_s * mass * d.r_e / d.q_es) ** 0.5
    mechanical = s * mass + friction + spring / s
    acoustic = 0j
    air_spring = v_b / (RHO * SOUND**2)
    if np.isfinite(v_b):
        acoustic += s * air_spring
    port_admittance = 0j
    if f_b:
        port_mass = 1 / ((2 * np.pi * f_b) ** 2 * air_spring)
        acoustic += 1 / (q_l * np.sqrt(port_mass / air_spring)) + 1 / (s * port_mass)
        port_admittance = 1 / (s * port_mass)
    load = d.s_d**2 / acoustic if acoustic else 0
    equations = np.array([[d.r_e + 1 / (s * c), bl], [bl, -(mechanical + load)]])
    _, speed = np.linalg.solve(equations, np.array([2**0.5 * v_rms, 0]))
    pressure = d.s_d * speed / acoustic if acoustic else 0
    return Motion(abs(speed / s), abs(pressure * port_admittance), abs(pressure * s * air_spring))


@pytest.mark.parametrize(("f", "millimetres"), [(5.0, 9.398), (40.0, 9.048)])
def test_sealed_box_example(f: float, millimetres: float) -> None:
    d = Driver()
    model = solve(d, 20.0, f, 0.010, 0.0, 7.0).cone
    formula = d.x_free(20.0) * d.shape(f, 0.010)
    assert model * 1e3 == pytest.approx(millimetres, abs=6e-4)
    assert formula == pytest.approx(model, rel=1e-12)


@pytest.mark.parametrize("f", [8.0, 31.5, 45.0, 63.0, 160.0])
def test_driver_without_a_box(f: float) -> None:
    d = Driver()
    model = solve(d, 20.0, f, np.inf, 0.0, 7.0).cone
    assert d.x_free(20.0) * d.shape(f) == pytest.approx(model, rel=1e-12)


@pytest.mark.parametrize("f", [8.0, 25.0, 40.0, 50.0, 63.0, 160.0])
@pytest.mark.parametrize("q_l", [5.0, 7.0, 20.0])
def test_vented_box(f: float, q_l: float) -> None:
    d, v_b, f_b, port = Driver(), 0.012, 50.0, 34e-4
    model = solve(d, 11.0, f, v_b, f_b, q_l)
    shape = (f, d.f_s, d.q_ts, d.v_as / v_b, f_b, q_l)
    assert d.x_free(11.0) * d.shape(f, v_b, f_b, q_l) == pytest.approx(model.cone, rel=1e-11)
    speed = port_speed(f, d.x_free(11.0), d.s_d, port, *shape[1:])
    assert speed == pytest.approx(model.port_volume / port, rel=1e-11)
    gain = model.box_volume / (2 * np.pi * f * d.s_d * model.cone)
    assert vented_volume_gain(f, f_b, q_l) == pytest.approx(gain, rel=1e-11)


def test_small_1973_butterworth_alignment() -> None:
    """Small, vented boxes: QT 0.383, alpha 1.414, h 1 is the fourth-order Butterworth."""
    numerator, denominator = signal.butter(4, 2 * np.pi * 40.0, "highpass", analog=True)
    q_ts, alpha = 1 / (4 + 2 * 2**0.5) ** 0.5, 2**0.5
    assert q_ts == pytest.approx(0.3827, abs=5e-5)
    for f in (20.0, 30.0, 40.0, 50.0, 80.0, 160.0):
        _, response = signal.freqs(numerator, denominator, [2 * np.pi * f])
        ours = (f / 40.0) ** 4 / vented_denominator(f, 40.0, q_ts, alpha, 40.0, 1e12)
        assert ours == pytest.approx(abs(response[0]), rel=1e-9)


def test_port_at_the_tuning_moves_q_l_times_the_cone() -> None:
    """The usual estimate from the cone's travel is 2.5 to 7 times too low."""
    args = (40.0, 0.3827, 1.414, 40.0, 7.0)
    above = np.linspace(40.0, 200.0, 40001)
    load = box_load(above, 1.414, 40.0, 0.0, 7.0)
    shapes = cone_shape(above, 40.0, np.inf, 0.3827, load, 6.0, np.inf)
    x_free = 5e-3 / max(shapes)
    port = np.pi / 4 * 0.05**2
    speed = port_speed(40.0, x_free, 0.0137, port, *args)
    at_tuning = 2 * np.pi * 40.0 * 0.0137 * x_free * shapes[0] / port
    assert speed == pytest.approx(7 * at_tuning, rel=1e-9)
    assert speed == pytest.approx(22.1, abs=0.05)
    assert at_tuning == pytest.approx(3.16, abs=0.01)
    assert 2 * np.pi * 40.0 * 0.0137 * 5e-3 / port == pytest.approx(8.77, abs=0.01)


@pytest.mark.parametrize("order", [1, 2, 3, 4, 8])
def test_high_pass_against_scipy(order: int) -> None:
    numerator, denominator = signal.butter(order, 2 * np.pi * 40.0, "highpass", analog=True)
    _, response = signal.freqs(numerator, denominator, [2 * np.pi * f for f in (10, 20, 40, 90)])
    for f, expected in zip((10.0, 20.0, 40.0, 90.0), abs(response), strict=True):
        assert high_pass(f, 40.0, order) == pytest.approx(expected, rel=1e-9)


def test_search_over_the_band_against_a_fine_one() -> None:
    """The peak is found within half a percent, for 300 drivers in boxes."""
    dice = np.random.default_rng(20)
    for _ in range(300):
        d = Driver(
            f_s=dice.uniform(25, 90),
            q_ms=dice.uniform(2, 10),
            q_es=dice.uniform(0.25, 0.9),
            v_as=dice.uniform(0.005, 0.1),
        )
        v_b, f_b = d.v_as / dice.uniform(0.3, 5), d.f_s * dice.uniform(0.7, 1.5)
        f_hp, low = dice.uniform(0, 60), dice.uniform(20, 80)
        fine = np.geomspace(low, 5e3, 20001)
        hp = d.x_free(10.0) * high_pass(fine, f_hp, 2)
        for box, tuning in ((v_b, 0.0), (np.inf, 0.0), (v_b, f_b)):
            found = d.excursion(10.0, box, tuning, f_hp, 2.0, low, 5e3)
            best = (hp * d.shape(fine, box, tuning)).max()
            assert best * 0.995 < found <= best * (1 + 1e-6)


def test_excursion_has_the_dimension_of_a_length() -> None:
    q = registry().Quantity
    x_free = free_excursion_of(
        q(20.0, "volt"),
        q(0.020, "meter**3"),
        q(0.0137, "meter**2"),
        q(45.0, "hertz"),
        0.45,
        q(6.0, "ohm"),
        q(RHO, "kilogram/meter**3"),
        q(SOUND, "meter/second"),
    )
    found = excursion(
        x_free,
        q(45.0, "hertz"),
        4.0,
        0.45,
        q(6.0, "ohm"),
        q(1e-3, "farad"),
        q(0.020, "meter**3"),
        q(0.012, "meter**3"),
        q(50.0, "hertz"),
        q(0.1, "meter**3"),
        7.0,
        q(42.0, "hertz"),
        2.0,
        q(40.0, "hertz"),
        q(5000.0, "hertz"),
    )
    motion = (Driver().x_free(20.0), 45.0, 4.0, 0.45, 6.0, 1e-3)
    plain = excursion(*motion, 0.020, 0.012, 50.0, 0.1, 7.0, 42.0, 2.0, 40.0, 5e3)
    assert found.to("meter").magnitude == pytest.approx(plain, rel=1e-12)


def test_band_above_the_bass_looks_at_its_low_end_only() -> None:
    """A tweeter's band begins far above the search: its excursion is that at the low end."""
    d = Driver()
    found = d.excursion(10.0, np.inf, 0.0, 0.0, 1.0, 2500.0, 16e3)
    expected = solve(d, 10.0, 2500.0, np.inf, 0.0, 7.0).cone
    assert found == pytest.approx(expected, rel=1e-9)


@pytest.mark.parametrize(
    ("said", "status"),
    [("", Status.OPEN), ("x_peak: 1 mm,", Status.MEETS), ("x_peak: 3 mm,", Status.FINDING)],
)
def test_a_horn_is_no_excuse_for_the_cone(said: str, status: Status) -> None:
    """Nothing computes it, so the travel at the limiter is asked for."""
    text = f"""milestone: prototype
channels:
  main:
    rated_power: 50 W
    loudspeaker: {{z_rated: 8 ohm, x_mech: 2 mm, {said} enclosure: {{type: horn}}}}
"""
    assert answer("excursion-destructive", text).status is status
