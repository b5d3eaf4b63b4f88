"""Losses of the output stage: what idles, what grows with the load."""

from .maths import PI, asin, larger, smaller


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


def charge_moved(ripple: float, dead_time: float, carrier: float) -> float:
    """Charge that half the idle ripple carries in one dead time.

    ripple of the leg, peak to peak, without dead time [A], dead_time [s], carrier [Hz];
    returns [C].  The node stands at a rail for the rest of its half period only, which makes
    the ripple that much smaller.
    Source: volt-seconds; solved in time in the tests.

    >>> round(charge_moved(2.841, 25e-9, 400e3) * 1e9, 2)
    34.8
    """
    return ripple / 2 * dead_time * larger(1 - 2 * dead_time * carrier, 0.0)


def charge_left(moved: float, charge: float) -> float:
    """Share of the charge of a node that an idle edge still switches hard.

    moved by the ripple in the dead time [C], charge of the whole node: the output charge of
    both switches and that of a snubber [C].  Returns [1].
    Source: charge balance of the node.  Units: moved [C], charge [C]; returns [1].

    >>> round(charge_left(34.8e-9, 60e-9), 2)
    0.42
    """
    return larger(1 - moved / charge, 0.0)


def edge_energy(q_oss: float, c_snubber: float, v_swing: float, left: float) -> float:
    """Energy that one edge of a leg loses in its output charge and its snubber.

    q_oss [C] of one switch at the swing, c_snubber [F] at the node, v_swing [V], left: share
    of the node's charge that is switched hard [1].  Returns [J]: q_oss v_swing and
    c_snubber v_swing^2 / 2 where all of it is.
    The output capacitances fall as v^-1/2, so what is left over is (u + 1 - w) / 2 of the
    charge, with u^2 of the swing across one switch and w^2 = 1 - u^2 across the other; u and
    w follow from a square, the energy from the integral of v dq.  Exact without a snubber;
    with one as large as the output charge u^2 is right within 0.06.
    Source: derivation; a node solved in time and an energy balance in the tests.
    Units: q_oss [C], c_snubber [F], v_swing [V], left [1]; returns [J].

    >>> round(edge_energy(30e-9, 0.0, 100.0, 1.0) * 1e6, 6)
    3.0
    >>> round(edge_energy(30e-9, 1e-9, 100.0, 0.5) * 1e6, 3)
    1.836
    """
    lean = 2 * left - 1
    both = (2 - lean**2) ** 0.5
    u, w = (both + lean) / 2, (both - lean) / 2
    share = 2 / 3 + (u**3 + w**3) / 3 - w
    return q_oss * v_swing * share + c_snubber * (u**2 * v_swing) ** 2 / 2


def idle_diode_energy(moved: float, charge: float, v_sd: float) -> float:
    """Energy that the diodes of a leg lose per period at idle.

    moved by the ripple in one dead time [C], charge of the node [C], v_sd diode drop [V];
    returns [J].  Once half the ripple has moved the node, it flows through a diode for the
    rest of the dead time, twice a period.  Source: charge balance.

    >>> round(idle_diode_energy(50e-9, 30e-9, 0.9) * 1e9, 3)
    36.0
    """
    return 2 * v_sd * larger(moved - charge, 0.0 * charge)


def loaded_share(ripple: float, i_peak: float) -> float:
    """Share of a sine during which its current exceeds half the ripple.

    ripple of the leg at idle, peak to peak [A], i_peak of the sine [A]; returns [1].  Only
    then one edge of a period is switched hard, whatever happens at idle.
    Source: derivation.  Units: ripple [A], i_peak [A]; returns [1].

    >>> loaded_share(2.0, 2.0), loaded_share(3.0, 1.0)
    (0.6666666666666666, 0.0)
    """
    return 1 - 2 / PI * asin(smaller(ripple / 2 / i_peak, 1.0))


def idle_loss(
    n_legs: float,
    carrier: float,
    energy: float,
    ripple: float,
    resistance: float,
    p_rest: float,
) -> float:
    """Loss of a channel without signal.

    n_legs; carrier [Hz]; energy lost per period and leg in charges [J]; ripple peak to peak
    [A]; resistance of switch and inductor of a leg [ohm]; p_rest core loss and auxiliary
    supply of the whole channel [W].  Returns [W].
    Source: energy per period times frequency; a triangle has the mean square pp^2 / 12.
    Units: n_legs [1], carrier [Hz], energy [J], ripple [A], resistance [ohm], p_rest [W];
    returns [W].

    >>> round(idle_loss(1, 400e3, 3.36e-6, 0.0, 0.05, 0.0), 4)
    1.344
    """
    return n_legs * (energy * carrier + ripple**2 / 12 * resistance) + p_rest


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
