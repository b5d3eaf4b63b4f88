"""Dead time: distortion against a switched simulation, presets and published failures."""

import math

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from ampreview.linter.finding import Severity, Status
from ampreview.rules.formulas.switching import (
    dead_time_distortion,
    distorting_dead_time,
    gate_outlasts,
    late_beyond,
)
from ampreview.rules.output_stage.dead_time_margin_gallium_nitride import (
    CHECK as GALLIUM_NITRIDE,
)

from ..whole import answer

RAIL, LOAD, AUDIO = 50.0, 8.0, 1e3
LARGE_CURRENT = (470e-6, 22e-9)
USUAL_RIPPLE = (22e-6, 0.47e-6)


class Leg:
    """A half-bridge of ideal switches and diodes on +-50 V with L, C and 8 ohm."""

    def __init__(self, l_out: float, c_out: float) -> None:
        self.l_out, self.c_out = l_out, c_out
        self.current, self.output, self.time = 0.0, 0.0, 0.0
        self.sums = dict.fromkeys((1, *range(3, 20, 2)), 0j)
        self.counting = False

    def hold(self, node: float | None, duration: float, steps: int) -> None:
        """Keep the node at a voltage; None: both switches off, the diodes decide."""
        dt = duration / steps
        for _ in range(steps):
            level = self.diode() if node is None else node
            before = self.current
            self.advance(level, dt)
            if node is None and before * self.current < 0.0:
                self.current = 0.0
            if self.counting:
                self.count(level, dt)
            self.time += dt

    def diode(self) -> float:
        """Node voltage while both switches are off."""
        if self.current == 0.0:
            return self.output
        return -RAIL if self.current > 0.0 else RAIL

    def advance(self, level: float, dt: float) -> None:
        """One step of the filter, second order (midpoint)."""
        i, v = self.current, self.output
        i_mid = i + (level - v) / self.l_out * dt / 2
        v_mid = v + (i - v / LOAD) / self.c_out * dt / 2
        self.current += (level - v_mid) / self.l_out * dt
        self.output += (i_mid - v_mid / LOAD) / self.c_out * dt

    def count(self, level: float, dt: float) -> None:
        """Add the exact Fourier integral of a constant node voltage."""
        for n in self.sums:
            w = 2 * math.pi * AUDIO * n
            self.sums[n] += (
                level
                * (
                    complex(math.cos(w * (self.time + dt)), -math.sin(w * (self.time + dt)))
                    - complex(math.cos(w * self.time), -math.sin(w * self.time))
                )
                * 1j
                / w
            )


def crossings(depth: float, carrier: float, period: int) -> tuple[float, float]:
    """Times at which a triangle crosses the sine: natural sampling, up and down slope."""
    quarter = 1 / carrier / 4
    start = period / carrier
    found = []
    for middle, slope in ((start + quarter, 1.0), (start + 3 * quarter, -1.0)):
        t = middle
        for _ in range(30):
            t = middle + slope * depth * math.sin(2 * math.pi * AUDIO * t) * quarter
        found.append(t)
    return found[0], found[1]


def simulated(
    depth: float, dead_time: float, carrier: float, filter_values: tuple[float, float]
) -> float:
    """THD of the node of a leg with dead time, harmonics of 1 kHz to 19 kHz."""
    leg = Leg(*filter_values)
    periods = round(carrier / AUDIO)
    for period in range(3 * periods):
        leg.counting = period >= 2 * periods
        fall, rise = crossings(depth, carrier, period)
        leg.hold(RAIL, fall - leg.time, 12)
        leg.hold(None, dead_time, 6)
        leg.hold(-RAIL, rise - leg.time, 12)
        leg.hold(None, dead_time, 6)
    tone = abs(leg.sums[1])
    return math.sqrt(sum(abs(x) ** 2 for n, x in leg.sums.items() if n > 1)) / tone


def by_formula(
    depth: float, dead_time: float, carrier: float, filter_values: tuple[float, float]
) -> float:
    ripple = 2 * RAIL / (4 * filter_values[0] * carrier)
    return float(
        dead_time_distortion(depth, dead_time * carrier, ripple * LOAD / (2 * RAIL), 0.0, 1.0)
    )


@pytest.mark.parametrize(
    ("depth", "dead_time", "carrier", "filter_values"),
    [
        (0.8, 20e-9, 400e3, LARGE_CURRENT),
        (0.4, 10e-9, 400e3, LARGE_CURRENT),
        (0.8, 20e-9, 400e3, USUAL_RIPPLE),
        (0.4, 20e-9, 400e3, USUAL_RIPPLE),
        (0.6, 30e-9, 400e3, USUAL_RIPPLE),
    ],
)
def test_distortion_against_a_switched_simulation(
    depth: float, dead_time: float, carrier: float, filter_values: tuple[float, float]
) -> None:
    found = by_formula(depth, dead_time, carrier, filter_values)
    assert found == pytest.approx(simulated(depth, dead_time, carrier, filter_values), rel=0.06)


def test_below_half_the_ripple_both_are_clean() -> None:
    assert by_formula(0.2, 20e-9, 400e3, USUAL_RIPPLE) == 0.0
    assert simulated(0.2, 20e-9, 400e3, USUAL_RIPPLE) < 2e-4


# Computed by another event-driven simulation (natural sampling, L-C-R, exact Fourier sums
# of the edge times, 1 kHz, harmonics to 19), per cent for depths of 0.2, 0.4, 0.6, 0.8, 0.9.
LARGE_CURRENT_TABLE = {
    (10, 200): (0.979, 0.547, 0.384, 0.288, 0.258),
    (20, 300): (3.305, 1.749, 1.177, 0.882, 0.785),
    (10, 400): (2.267, 1.174, 0.783, 0.588, 0.522),
    (20, 400): (4.699, 2.397, 1.591, 1.187, 1.055),
    (30, 400): (7.333, 3.672, 2.421, 1.802, 1.599),
    (20, 600): (7.751, 3.731, 2.437, 1.808, 1.599),
}
USUAL_RIPPLE_TABLE = {
    (20, 200): (0.0, None, 0.524, 0.318, 0.272),
    (20, 300): (0.0, 1.284, 0.632, 0.485, 0.450),
    (20, 400): (0.0, 1.362, 0.857, 0.717, 0.674),
    (30, 400): (0.0, 2.077, 1.289, 1.078, 1.014),
    (20, 600): (5.625, 1.927, 1.506, 1.285, 1.185),
}
"""None: load current within a tenth of half the ripple, outside the formula's validity."""


@pytest.mark.parametrize(
    ("table", "filter_values"),
    [(LARGE_CURRENT_TABLE, LARGE_CURRENT), (USUAL_RIPPLE_TABLE, USUAL_RIPPLE)],
)
def test_table_of_simulated_distortion(
    table: dict[tuple[int, int], tuple[float | None, ...]], filter_values: tuple[float, float]
) -> None:
    for (nanoseconds, kilohertz), row in table.items():
        for depth, expected in zip((0.2, 0.4, 0.6, 0.8, 0.9), row, strict=True):
            share = nanoseconds * 1e-9 * kilohertz * 1e3
            if expected is None or share / depth > 0.05:
                continue
            found = 100 * by_formula(depth, nanoseconds * 1e-9, kilohertz * 1e3, filter_values)
            assert found == pytest.approx(expected, rel=0.06, abs=1e-3), (share, depth)


@pytest.mark.parametrize(("depth", "expected"), [(0.2, 4.750), (0.4, 2.406), (0.8, 1.186)])
def test_three_level_bridge_without_ground_capacitors(depth: float, expected: float) -> None:
    """Computed by simulating both legs: 50 V, 8 ohm, 11 uH a leg, 400 kHz, 20 ns."""
    found = 100 * dead_time_distortion(depth, 20e-9 * 400e3, 0.0, 0.0, 1.0)
    assert found == pytest.approx(expected, rel=0.05)


def test_closed_form_for_large_current() -> None:
    """Square wave of 2 t f: THD = 1.163 t f / (M - 2.546 t f) for harmonics 3 to 19."""
    share, depth = 10e-9 * 200e3, 0.9
    closed = 1.163 * share / (depth - 2.546 * share)
    assert dead_time_distortion(depth, share, 0.0, 0.0, 1.0) == pytest.approx(closed, rel=0.02)


def test_feedback_divides_each_harmonic() -> None:
    """With a first-order loop gain of 90 at 1 kHz the third harmonic is divided by 31."""
    plain = dead_time_distortion(0.8, 8e-3, 0.0, 0.0, 1.0)
    flat = dead_time_distortion(0.8, 8e-3, 0.0, 30.0, 0.0)
    sloped = dead_time_distortion(0.8, 8e-3, 0.0, 90.0, 1.0)
    assert flat == pytest.approx(plain / 31, rel=1e-9)
    assert plain / 31 < sloped < plain / 10


def crossing(start: float, goal: float, tau: float, level: float) -> float:
    """Time at which a gate on its way from start to goal passes a level (ODE)."""

    def passed(_: float, x: np.ndarray) -> float:
        return float(x[0] - level)

    passed.terminal = True  # type: ignore[attr-defined]
    solved = solve_ivp(
        lambda _, x: (goal - x) / tau, (0.0, 10 * tau), [start], events=passed, rtol=1e-9
    )
    return float(solved.t_events[0][0])


def test_gates_race_each_other_by_differential_equation() -> None:
    """12 V, 1.7 nF, 28 ohm off and 14 ohm on: to the threshold of 2 V, to a plateau of 4.8 V."""
    c, r_on, r_off = 1700e-12, 14.0, 28.0
    down = crossing(12.0, 0.0, r_off * c, 2.0)
    up = crossing(0.0, 12.0, r_on * c, 2.0)
    assert gate_outlasts(c, r_on, r_off, 12.0, 2.0) == pytest.approx(down - up, rel=1e-5)
    down, up = crossing(12.0, 0.0, r_off * c, 4.8), crossing(0.0, 12.0, r_on * c, 4.8)
    assert late_beyond(c, r_on, r_off, 12.0, 4.8) == pytest.approx(down - up, rel=1e-5)


# Data sheets at their own test resistance (outside and inside): Qg and Qgd at 10 V in nC,
# threshold V; delays and fall time in ns.  The gate's own way is a lower bound of the rest.
PRINTED_TIMES = [
    ("IRFB4020", 5.6, 18, 5.3, 3.0, (7.8, 16, 6.3)),
    ("IXTH36N50P", 3.0, 85, 31, 3.0, (25, 75, 21)),
    ("IRF540N, largest charges", 5.1, 71, 21, 4.0, (11, 39, 35)),
]


@pytest.mark.parametrize(("name", "r", "q_g", "q_gd", "v_th", "times"), PRINTED_TIMES)
def test_gates_are_a_lower_bound_of_printed_times(
    name: str, r: float, q_g: float, q_gd: float, v_th: float, times: tuple[float, float, float]
) -> None:
    t_on, t_off, t_fall = times
    figure = gate_outlasts((q_g - q_gd) * 1e-9 / 10, r, r, 10.0, v_th) * 1e9
    assert 0.15 * (t_off + t_fall - t_on) < figure < t_off + t_fall - t_on, name


def test_two_times_of_published_boards() -> None:
    """Thesis of 2017 (IXTH36N50P): 325 ns distort; Wulf 2019 (IRFB4020): 0.8 ns."""
    assert distorting_dead_time(375e-9, 25e-9, 75e-9) == pytest.approx(325e-9)
    assert distorting_dead_time(9e-9, 7.8e-9, 16e-9) == pytest.approx(0.8e-9)


def test_a_flat_loop_divides_every_harmonic_alike() -> None:
    """Loop gain of 20 up to 100 kHz: a twenty-first of the open loop, not less."""
    plain = dead_time_distortion(0.8, 8e-3, 0.1, 0.0, 1.0)
    flat = dead_time_distortion(0.8, 8e-3, 0.1, 20.0, 1.0, corner=1e3)
    assert flat == pytest.approx(plain / 21, rel=1e-3)
    falling = dead_time_distortion(0.8, 8e-3, 0.1, 20.0, 1.0)
    assert plain / 8 < falling < plain / 4


LOOP = """
milestone: prototype
supply: {source: dc-source, rails: split, v_rail: 50 V}
channels:
  main:
    rated_power: 100 W
    rated_load: 8 ohm
    output_stage:
      topology: half-bridge
      devices: discrete
      device: {q_g: 20 nC, q_gd: 5 nC, v_gs_pl: 4.5 V, c_iss: 1.25 nF, r_g_int: 1 ohm}
    gate_drive:
      {v_drv: 12 V, r_g_on: 4 ohm, r_g_off: 4 ohm, i_source: 4 A, i_sink: 4 A, dead_time: 25 ns}
    modulator: {type: natural-sampling, carrier: 400 kHz, feedback: before-filter,
      loop_crossover: 90 kHz, loop_order: 1EXTRA}
    filter: {type: lc, inductor: {l: 22 uH}, c_across: {c: 0.47 uF}, c_ground: none}
claims: {thd: 0.1 %}
"""


def test_a_loop_of_unknown_corner_is_asked_for_it() -> None:
    """By a line of 20 dB per decade met; with a gain that is flat below 20 kHz it fails."""
    silent = answer("dead-time-distortion", LOOP.replace("EXTRA", ""))
    assert silent.status is Status.OPEN
    assert "channels.main.modulator.loop_corner" in [item.path for item in silent.advice.missing]
    for more, status in (
        (", loop_corner: 100 Hz", Status.MEETS),
        (", loop_gain: 39 dB", Status.MEETS),
        (", loop_corner: 20 kHz", Status.FINDING),
        (", loop_gain: 13 dB", Status.FINDING),
    ):
        assert answer("dead-time-distortion", LOOP.replace("EXTRA", more)).status is status, more


def test_the_margin_of_dead_time_follows_what_the_switches_are_made_of() -> None:
    """3 ns of turn-off beyond turn-on leave 6 ns of 9: enough for LMG1210, not for IRS20124S."""
    names = ("dead-time-margin", "dead-time-margin-gallium-nitride")
    fast = GALLIUM_NITRIDE.passes.replace("dead_time: 12 ns", "dead_time: 9 ns")
    assert [answer(x, fast).status for x in names] == [Status.NOT_APPLICABLE, Status.MEETS]
    silicon = fast.replace("v_gss: 6 V", "v_gss: 20 V")
    assert answer(names[0], silicon).severity is Severity.MAJOR
    assert answer(names[1], silicon).status is Status.NOT_APPLICABLE
    short = GALLIUM_NITRIDE.passes.replace("dead_time: 12 ns", "dead_time: 3 ns")
    assert answer(names[1], short).severity is Severity.CRITICAL
