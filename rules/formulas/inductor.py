"""Output inductor: ripple, mean square over a sine, core loss, saturation, temperature."""

from .maths import PI, clip, larger, smaller


def ripple_two_level(v_swing: float, l_leg: float, carrier: float) -> float:
    """Largest ripple, peak to peak, of an inductor whose leg is filtered to ground.

    v_swing [V] of one node, l_leg [H] of one inductor, carrier [Hz]; returns [A].
    v_swing D (1-D) / (l_leg carrier) at D = 0.5.  Half-bridge, and each leg of a two-level
    bridge; valid while the capacitor holds its voltage (22 uH, 0.68 uF, 400 kHz: 0.9 %
    more in a simulation).
    Source: volt-seconds.  No sound published figure was found (one data sheet prints a
    tenth of what its own values give); the tests integrate the switched circuit.

    >>> round(ripple_two_level(50.0, 22e-6, 400e3), 3)
    1.42
    """
    return v_swing / (4 * l_leg * carrier)


def ripple_three_level(v_swing: float, l_leg: float, carrier: float) -> float:
    """Largest ripple of each inductor of a three-level bridge, capacitor across the load.

    v_swing [V] of one node, l_leg [H] of one inductor, carrier [Hz] of one leg; returns
    [A] peak to peak.  The bridge gives v_swing in pulses at twice the carrier across
    both inductors: v_swing M (1-M) / (4 l_leg carrier), largest at M = 0.5, zero at idle.
    Source: volt-seconds; a quarter of the two-level ripple.
    Units: v_swing [V], l_leg [H], carrier [Hz]; returns [A].

    >>> ripple_three_level(24.0, 10e-6, 400e3)
    0.375
    """
    return v_swing / (16 * l_leg * carrier)


def ripple_to_ground(v_swing: float, l_leg: float, c_ground: float, carrier: float) -> float:
    """Largest ripple of each inductor of a three-level bridge with capacitors to ground.

    v_swing [V] of one node, l_leg [H], c_ground [F] of one leg, carrier [Hz]; returns [A]
    peak to peak.  The common-mode carrier drives the full two-level ripple through l_leg
    and c_ground.  Where l_leg and c_ground resonate above the carrier (a few nF against
    radio interference) their reactance lets less through: times (carrier/f_cm)^2.
    The rise at the resonance itself is left to a check of its own.
    Source: volt-seconds; divider of reactances above the carrier.

    >>> round(ripple_to_ground(50.0, 11e-6, 1e-6, 400e3), 3)
    2.841
    """
    ratio_squared = (2 * PI * carrier) ** 2 * l_leg * c_ground
    common = ripple_two_level(v_swing, l_leg, carrier) * smaller(ratio_squared, 1)
    return larger(common, ripple_three_level(v_swing, l_leg, carrier))


def mean_square_two_level(depth: float) -> float:
    """Mean square of the ripple over a sine, as a share of that at idle.

    depth [1], 0 .. 1 (clipped to it); returns [1].  Ripple (1 - m^2), m = depth sin:
    mean of its square is 1 - M^2 + 3 M^4 / 8.
    Source: integral over one period.  M 0.8: 0.5136, root 0.7167.

    >>> round(mean_square_two_level(0.8) ** 0.5, 4)
    0.7167
    """
    m = clip(depth, 0.0, 1.0)
    return 1 - m**2 + 3 * m**4 / 8


def mean_square_three_level(depth: float) -> float:
    """The same for a three-level bridge with the capacitor across the load.

    depth [1], 0 .. 1; returns [1], as a share of the largest ripple (at m = 0.5):
    16 (M^2/2 - 8 M^3/(3 pi) + 3 M^4/8).
    Source: integral of (4 m (1-m))^2, m = M abs(sin), over one period.

    >>> mean_square_three_level(0.0)
    0.0
    """
    m = clip(depth, 0.0, 1.0)
    return 16 * (m**2 / 2 - 8 * m**3 / (3 * PI) + 3 * m**4 / 8)


def flux_swing(l_leg: float, ripple: float, turns: float, a_e: float) -> float:
    """Flux density amplitude of the carrier, half of peak to peak.

    l_leg [H], ripple [A] peak to peak, turns [1], a_e [m2]; returns [T].
    Source: l_leg i = turns a_e B.  Equal to v_swing/(8 turns a_e carrier) at duty 0.5.

    >>> round(flux_swing(22e-6, 50 / (4 * 22e-6 * 400e3), 12, 40e-6) * 1e3, 2)
    32.55
    """
    return l_leg * ripple / (2 * turns * a_e)


def core_loss(
    flux: float,
    carrier: float,
    v_e: float,
    p_v: float,
    exponent_f: float,
    exponent_b: float,
    f_reference: float,
    b_reference: float,
) -> float:
    """Core loss of one inductor by the power law that data sheets are fitted with.

    flux [T] amplitude, carrier [Hz], v_e [m3], p_v [W/m3] at f_reference [Hz] and
    b_reference [T], exponent_f [1], exponent_b [1]; returns [W].
    Valid to perhaps +/- 50 %: sine law for a triangle (7 % too high at exponent 1.4),
    bias by the audio current ignored.
    Source: Steinmetz law, as in Electronics (MDPI) 2025, 14(14), 2883.
    """
    shape = (carrier / f_reference) ** exponent_f * (flux / b_reference) ** exponent_b
    return p_v * shape * v_e


def core_share_of_sine(depth: float) -> float:
    """Least part of its idle loss that a core has in the carrier of a sine of a depth [1].

    depth [1], up to 1: ripple and flux go with 1 - m^2, the loss with the third power of the flux
    at most (2 to 3 in data sheets), m = depth sin x: the mean of (1 - m^2)^3 over a period.
    The duty beside one half and the audio itself only add to it.  Source: Steinmetz.

    >>> core_share_of_sine(0.0), core_share_of_sine(1.0)
    (1.0, 0.3125)
    """
    square = smaller(depth, 1.0) ** 2
    return 1 - 3 * square / 2 + 9 * square**2 / 8 - 5 * square**3 / 16


def hot_saturation(
    i_sat: float, factor: float, t_inductor: float, t_cold: float, t_hot: float
) -> float:
    """Saturation current at the temperature of the core, straight between two points.

    i_sat [A] at t_cold, factor [1] of it at t_hot, t_inductor, t_cold, t_hot [K];
    returns [A].  Not extrapolated below t_cold; above t_hot the line goes on, not below
    a tenth of i_sat.
    Source: saturation flux of power ferrite falls nearly in a straight line.
    """
    share = larger((t_inductor - t_cold) / (t_hot - t_cold), 0)
    return i_sat * larger(1 - (1 - factor) * share, 0.1)


def hot_resistance(dcr: float, rise: float, per_kelvin: float) -> float:
    """Resistance of a copper winding that is warmer by ``rise`` than 20 degC.

    dcr [ohm] at 20 degC, rise [K], per_kelvin [1/K]; returns [ohm].
    Source: temperature coefficient of copper, 0.00393 per kelvin (IEC 60028).
    """
    return dcr * (1 + per_kelvin * rise)
