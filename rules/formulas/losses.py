"""Losses of the output stage: what idles, what grows with the load."""

from .maths import PI, larger


def hot_ratio(t: float, hot_factor: float, t_cold: float, t_span: float) -> float:
    """On-resistance at a temperature over its value at 25 degC, on a straight line.

    t junction temperature [K], hot_factor printed ratio at 150 degC, t_cold 25 degC in
    [K], t_span the 125 K between the two.  Returns a pure number.
    Valid from about 0 degC to 150 degC; the printed curves bend upwards by a few per cent.
    Source: printed normalised curve of a MOSFET data sheet, its two ends.
    Units: t [K], hot_factor [1], t_cold [K], t_span [K]; returns [1].

    >>> round(hot_ratio(373.15, 1.8, 298.15, 125.0), 3)
    1.48
    """
    return 1 + (hot_factor - 1) * (t - t_cold) / t_span


def output_charge(q_oss: float, v_data: float, v_swing: float) -> float:
    """Output charge at the swing, from the charge printed for another voltage.

    q_oss [C] at v_data [V]; v_swing [V]; returns [C].  Square-root law of a junction
    capacitance C ~ v^-1/2; super-junction devices deviate.  Source: derivation, integral
    of that capacitance.

    >>> round(output_charge(30e-9, 50.0, 100.0) * 1e9, 2)
    42.43
    """
    return q_oss * (v_swing / v_data) ** 0.5


def output_charge_from_capacitance(c_oss: float, v_data: float, v_swing: float) -> float:
    """Output charge at the swing, from the small-signal capacitance at one voltage.

    c_oss [F] at v_data [V], v_swing [V]; returns [C].  Integral of C ~ v^-1/2.

    >>> round(output_charge_from_capacitance(300e-12, 50.0, 50.0) * 1e9, 2)
    30.0
    """
    return 2 * c_oss * (v_data * v_swing) ** 0.5


def capacitance_at(c_oss: float, v_data: float, v_swing: float) -> float:
    """Small-signal output capacitance at the swing: what rings on a node that stands there.

    c_oss [F] at v_data [V], v_swing [V]; returns [F].  C ~ v^-1/2.

    >>> round(capacitance_at(400e-12, 100.0, 115.0) * 1e12, 1)
    373.0
    """
    return c_oss * (v_data / v_swing) ** 0.5


def capacitance_of_charge(q_oss: float, v_swing: float) -> float:
    """The same from the charge at the swing, of which it is half: q / v is the mean from 0.

    q_oss at the swing [C], v_swing [V]; returns [F].  Derivative of q ~ v^1/2.

    >>> round(capacitance_of_charge(30e-9, 100.0) * 1e12, 1)
    150.0
    """
    return q_oss / (2 * v_swing)


def hard_charge(ripple: float, dead_time: float, q_oss: float) -> float:
    """Output charge that one idle edge still switches hard.

    ripple idle ripple of the leg, peak to peak [A], dead_time [s], q_oss of one switch at
    the swing [C] (both switches of the leg are moved).  Returns [C]: what half the ripple
    does not move in the dead time.  An edge loses this charge times the swing (all of
    q_oss if nothing is moved, whatever the law of the capacitance; an upper bound for
    partly soft edges).  At idle a period has two such edges; with load one edge is hard in
    full and the load current turns the other.
    Source: charge and energy balance of the switch node.
    Units: ripple [A], dead_time [s], q_oss [C]; returns [C].

    >>> round(hard_charge(2.841, 25e-9, 30e-9) * 1e9, 3)
    12.244
    """
    return larger(q_oss - ripple * dead_time / 4, 0.0 * q_oss)


def idle_loss(
    n_legs: float,
    carrier: float,
    charge_energy: float,
    gate_energy: float,
    ripple: float,
    resistance: float,
    p_core: float,
) -> float:
    """Loss of a channel without signal.

    n_legs; carrier [Hz]; charge_energy lost per period and leg in output charge [J];
    gate_energy per period and leg [J]; ripple peak to peak [A]; resistance of switch and
    inductor of a leg [ohm]; p_core of the whole channel [W].  Returns [W].
    Source: energy per period times frequency; a triangle has the mean square pp^2 / 12.
    Units: n_legs [1], carrier [Hz], charge_energy [J], gate_energy [J], ripple [A], resistance
    [ohm], p_core [W]; returns [W].

    >>> round(idle_loss(1, 400e3, 3e-6, 0.36e-6, 0.0, 0.05, 0.0), 4)
    1.344
    """
    per_leg = (charge_energy + gate_energy) * carrier + ripple**2 / 12 * resistance
    return n_legs * per_leg + p_core


def overlap_loss(v_swing: float, i_peak: float, t_edge: float, carrier: float) -> float:
    """Loss of one leg while voltage and current overlap, averaged over a sine.

    v_swing [V], i_peak of the sine [A], t_edge 10 to 90 % [s], carrier [Hz]; returns [W].
    Each edge loses V |i| t / 2 with t = t_edge / 0.8, twice a period, mean |i| = 2 I / pi.
    Source: derivation; integrated numerically in the tests.

    >>> round(overlap_loss(100.0, 10.0, 8e-9, 400e3), 3)
    2.546
    """
    return 2.5 * v_swing * i_peak * t_edge * carrier / PI


def dead_time_loss(v_sd: float, i_peak: float, dead_time: float, carrier: float) -> float:
    """Loss of one leg while diodes carry the load in the two dead intervals of a period.

    v_sd diode drop [V], i_peak of the sine [A], dead_time [s], carrier [Hz]; returns [W].
    Source: mean |i| = 2 I / pi; both intervals: TI TPS40055 data sheet.

    >>> round(dead_time_loss(1.0, 5.0, 25e-9, 400e3), 5)
    0.06366
    """
    return 4 * v_sd * i_peak * dead_time * carrier / PI


def mean_carrier_share(modulator_type: str, depth: float) -> float:
    """Mean carrier over idle carrier along a sine.

    A self-oscillating loop slows down as 1 - m^2, on average by depth^2 / 2; others keep
    their clock.  depth 0 .. 1; returns a pure number.  Source: derivation.
    Units: modulator_type [word], depth [1]; returns [1].

    >>> round(mean_carrier_share("self-oscillating", 0.885), 3)
    0.608
    """
    return 1 - depth**2 / 2 if modulator_type == "self-oscillating" else 1 + 0 * depth
