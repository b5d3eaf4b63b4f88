"""Switching times of a leg: gate loop, delays, edge, dead time and what it distorts."""

from .maths import PI, choose, clip, larger, ln, sin

POINTS = 40
HARMONICS = (3, 5, 7, 9, 11, 13, 15, 17, 19)


def gate_loop(v_drv: float, i_driver: float, parallel: float, r_g: float, r_g_int: float) -> float:
    """Resistance that charges or discharges one gate: driver, resistor, inside the device.

    v_drv gate supply [V], i_driver peak current of the driver [A], parallel devices that
    share the driver, r_g external gate resistor of one device [ohm], r_g_int internal gate
    resistance [ohm].  Returns [ohm].
    A driver is printed with the current into a near short, so v_drv / i_driver is its
    resistance; true within about a factor of 1.5 for a complementary output pair.
    Source: Ohm's law; the same reading of a driver's peak current is common practice.
    Units: v_drv [V], i_driver [A], parallel [1], r_g [ohm], r_g_int [ohm]; returns [ohm].

    >>> round(gate_loop(12.0, 2.0, 1.0, 0.0, 3.2), 3)
    9.2
    """
    return parallel * v_drv / i_driver + r_g + r_g_int


def scaled_time(
    t_printed: float, r_circuit: float, r_g_test: float, r_g_int: float, r_least: float
) -> float:
    """A printed switching time carried from the gate resistance of its test to the circuit's.

    t_printed [s] measured with r_g_test [ohm] outside and r_g_int [ohm] inside the
    device; r_circuit [ohm] whole gate loop in the circuit; r_least [ohm] the smallest
    resistance that a test set-up is credited with.  Returns [s].
    Valid while the gate current is set by resistance (r_circuit and r_g_test within a
    factor of ten) and the gate supply is like that of the test.  Source: exponential
    charging of the gate capacitance; all its times are proportional to R C.
    Units: t_printed [s], r_circuit [ohm], r_g_test [ohm], r_g_int [ohm], r_least [ohm];
    returns [s].

    >>> round(scaled_time(16e-9, 9.2, 2.4, 3.2, 0.5) * 1e9, 2)
    26.29
    """
    return t_printed * r_circuit / larger(r_g_test + r_g_int, r_least)


def drive_left(v_drv: float, v_gs: float) -> float:
    """What the gate supply has left to drive a gate on from a voltage that it has reached.

    v_drv gate supply, v_gs gate [V]; returns [V].  At least a thousandth of v_drv: a gate
    that is never driven that far takes very long, not less than no time.

    >>> drive_left(12.0, 4.5), drive_left(10.0, 12.0)
    (7.5, 0.01)
    """
    return larger(v_drv - v_gs, v_drv * 1e-3)


def gate_outlasts(c_gate: float, r_on: float, r_off: float, v_drv: float, v_gs_th: float) -> float:
    """How much longer one gate takes down to its threshold than the other one up to it.

    c_gate input capacitance [F], r_on and r_off whole gate loops [ohm], v_drv gate supply
    [V], v_gs_th threshold [V].  Returns [s].  The leaving switch is the one whose diode
    takes over, so that its drain stays where it is and no gate-drain charge has to go:
    the least time that any turn-off takes.  Source: exponential of gate loop and
    capacitance in both directions; differential equations solved in the tests.
    Units: c_gate [F], r_on [ohm], r_off [ohm], v_drv [V], v_gs_th [V]; returns [s].

    >>> round(gate_outlasts(1700e-12, 14.0, 28.0, 12.0, 2.0) * 1e9, 2)
    80.95
    """
    down = r_off * c_gate * ln(v_drv / v_gs_th)
    return down - r_on * c_gate * ln(v_drv / drive_left(v_drv, v_gs_th))


def late_beyond(c_gate: float, r_on: float, r_off: float, v_drv: float, v_gs_pl: float) -> float:
    """How much later one gate falls to its plateau than the other one rises to it.

    Symbols as above, v_gs_pl plateau [V]; returns [s].  At the plateau the node moves:
    this is what the dead time loses as the output voltage sees it.
    Units: c_gate [F], r_on [ohm], r_off [ohm], v_drv [V], v_gs_pl [V]; returns [s].

    >>> round(late_beyond(1700e-12, 14.0, 28.0, 12.0, 4.8) * 1e9, 2)
    31.46
    """
    down = r_off * c_gate * ln(v_drv / v_gs_pl)
    return down - r_on * c_gate * ln(v_drv / drive_left(v_drv, v_gs_pl))


def distorting_dead_time(dead_time: float, t_on: float, t_d_off: float) -> float:
    """Time per edge during which the load current, not the modulator, sets the node.

    dead_time, t_on turn-on delay, t_d_off turn-off delay, all [s]; returns [s], never
    negative.  The fall time is left out: the node moves while the current falls.
    Source: derivation from the sequence of gate signals at high load current.

    >>> round(distorting_dead_time(375e-9, 25e-9, 75e-9) * 1e9, 6)
    325.0
    """
    time = dead_time + t_on - t_d_off
    return larger(time, time * 0.0)


def charge_time(q: float, r_gate: float, v_across: float) -> float:
    """Time in which a gate loop moves a charge while the gate sits on its plateau.

    q charge [C], r_gate whole gate loop [ohm], v_across voltage across that resistance:
    v_drv - v_gs_pl at turn-on, v_gs_pl at turn-off [V].  Returns [s].
    Valid while the plateau lasts.  Source: i = v / r, t = q / i; checked against the
    solved differential equation of the transistor in the tests.
    Units: q [C], r_gate [ohm], v_across [V]; returns [s].

    >>> round(charge_time(6e-9, 6.0, 12.0 - 3.125) * 1e9, 3)
    4.056
    """
    return q * r_gate / v_across


def edge_time(q: float, r_on: float, r_off: float, v_drv: float, v_gs_pl: float) -> float:
    """Mean edge of the switch node, 10 to 90 %, from the charge of the plateau.

    q [C], r_on and r_off gate loops [ohm], v_drv gate supply [V], v_gs_pl plateau [V].
    Returns [s]: 0.8 of the mean of the two charge times, because the charge covers the
    whole swing and the edge is counted from 10 to 90 %.
    Valid for hard-switched edges.  Source: as ``charge_time``.
    Units: q [C], r_on [ohm], r_off [ohm], v_drv [V], v_gs_pl [V]; returns [s].

    >>> round(edge_time(6e-9, 6.0, 6.0, 12.0, 3.125) * 1e9, 3)
    6.231
    """
    on = charge_time(q, r_on, drive_left(v_drv, v_gs_pl))
    off = charge_time(q, r_off, v_gs_pl)
    return 0.8 * (on + off) / 2


def slope(v_swing: float, t_edge: float) -> float:
    """Slope of the switch node from its 10 to 90 % edge.

    v_swing swing of the node [V], t_edge [s]; returns [V/s].

    >>> round(slope(100.0, 5e-9) / 1e9, 6)
    16.0
    """
    return 0.8 * v_swing / t_edge


def _sines() -> tuple[tuple[float, ...], tuple[tuple[float, ...], ...]]:
    """sin(x) and sin(n x) at the middles of POINTS equal parts of a quarter wave."""
    angles = [(k + 0.5) * PI / 2 / POINTS for k in range(POINTS)]
    return (
        tuple(sin(x) for x in angles),
        tuple(tuple(sin(n * x) for x in angles) for n in HARMONICS),
    )


SINE, SINES = _sines()


def dead_time_errors(
    depth: float, share: float, ripple: float, frequency_falls: bool
) -> list[float]:
    """Voltage error of a leg pair along a quarter wave, in parts of the ideal peak.

    depth modulation depth 0 .. 1; share = dead time x carrier; ripple = half the idle
    ripple over v_ideal / z: the load current, in the same parts, below which an edge is
    clean.  frequency_falls: self-oscillating loop, whose carrier and clean current
    follow f0 (1 - m^2) and a constant ripple.
    While the current exceeds the clean level the dead time takes 2 x share away, but
    never so much that the current would fall below the clean level again.
    Units: depth [1], share [1], ripple [1], frequency_falls [word]; returns [1].

    >>> dead_time_errors(0.8, 0.01, 3.0, False)[-1]
    0.0
    """
    errors = []
    for s in SINE:
        m = depth * s
        falling = 1 - m * m
        clean = ripple if frequency_falls else ripple * falling
        full = 2 * share * falling if frequency_falls else 2 * share
        errors.append(clip(m - clean, 0.0 * m, full))
    return errors


def dead_time_distortion(
    depth: float,
    share: float,
    ripple: float,
    loop_gain_1k: float,
    loop_order: float,
    frequency_falls: bool = False,
    corner: float = 0.0,
) -> float:
    """Total harmonic distortion of a 1 kHz sine that dead time causes, harmonics to 19 kHz.

    depth modulation depth 0 .. 1; share = distorting dead time x carrier; ripple =
    ripple_idle z / (2 v_ideal), 0 where no ripple is there to commutate the node;
    loop_gain_1k loop gain at 1 kHz, falling above its corner (in kHz) as the frequency to the
    power loop_order; all pure numbers.  Returns a pure number (0.01 is 1 %).
    Valid for share / depth < 0.05 and ideal edges: output capacitance softens small
    currents, real figures are usually lower.  Source: derivation (square-wave error with
    a clean interval), checked against an event-driven simulation in the tests; that dead
    time dominates: abstract of Electronics Letters 35 (12), 10 June 1999.
    Units: depth [1], share [1], ripple [1], loop_gain_1k [1], loop_order [1], frequency_falls
    [word], corner [1]; returns [1].

    >>> round(dead_time_distortion(0.8, 20e-9 * 400e3, 0.0, 0.0, 1.0), 3)
    0.012
    """
    errors = dead_time_errors(depth, share, ripple, frequency_falls)
    fundamental = depth - 2 * sum(e * s for e, s in zip(errors, SINE, strict=True)) / POINTS
    squares = 0.0
    for n, sines in zip(HARMONICS, SINES, strict=True):
        level = 2 * sum(e * s for e, s in zip(errors, sines, strict=True)) / POINTS
        fall = ((1 + corner**2) / (n**2 + corner**2)) ** (loop_order / 2)
        squares = squares + (level / (1 + loop_gain_1k * fall)) ** 2
    small = 1e-6
    return choose(fundamental > small, squares**0.5 / larger(fundamental, small), 1.0)
