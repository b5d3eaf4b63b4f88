"""The gate: false turn-on by the slope of the node, bootstrap supply, drive power."""

from ...linter.check import Source, from_memory
from .maths import choose, larger, settled

IRFB4020 = Source(
    "IRFB4020PbF data sheet PD-97195, International Rectifier",
    "p. 2: threshold 3.0 to 4.9 V, coefficient -13 mV/degC",
)
GAN_GATES = from_memory("data sheets of enhancement-mode gallium nitride: gates rated 6 to 7 V")


def miller_bump(v_swing: float, slope: float, r_gate: float, c_gd: float, c_gs: float) -> float:
    """Voltage that a rising drain lifts the gate of a switch that is held off.

    v_swing of the drain [V], slope of the drain [V/s], r_gate of the hold-off path with
    driver and device [ohm], c_gd as charge over voltage [F], c_gs [F]; returns [V].
    Valid for a constant slope, common-source inductance left out.  Source: derivation,
    first-order circuit; differential equation solved in the tests.

    >>> round(miller_bump(100.0, 10e9, 5.0, 50e-12, 1500e-12), 3)
    1.812
    """
    return r_gate * c_gd * slope * settled((v_swing / slope) / (r_gate * (c_gd + c_gs)))


def threshold_hot(v_gs_th: float, t: float, t_cold: float, coefficient: float) -> float:
    """Gate threshold at a junction temperature.

    v_gs_th at 25 degC [V], t [K], t_cold 25 degC in [K], coefficient [V/K] positive for
    a falling threshold.  Returns [V].  Source: data sheets print the fall as a constant.
    Units: v_gs_th [V], t [K], t_cold [K], coefficient [V/K]; returns [V].

    >>> round(threshold_hot(2.2, 398.15, 298.15, 7e-3), 3)
    1.5
    """
    return v_gs_th - coefficient * (t - t_cold)


def threshold_in_use(
    v_gs_th: float,
    t: float,
    t_cold: float,
    coefficient: float,
    v_least: float,
    v_gss: float,
    v_gss_gan: float,
) -> float:
    """Gate threshold that a switch has in use: hot silicon, or gallium nitride, which stays.

    Symbols as in ``threshold_hot``; v_least [V] is counted with at least; a gate rated v_gss
    [V] below v_gss_gan is gallium nitride.  Returns [V].
    Units: v_gs_th [V], t [K], t_cold [K], coefficient [V/K], v_least [V], v_gss [V],
    v_gss_gan [V]; returns [V].

    >>> round(threshold_in_use(2.2, 398.15, 298.15, 7e-3, 0.1, 20.0, 8.0), 3)
    1.5
    """
    silicon = threshold_hot(v_gs_th, t, t_cold, coefficient)
    return larger(choose(v_gss < v_gss_gan, v_gs_th, silicon), v_least)


def period_at(modulator_type: str, depth: float, carrier: float) -> float:
    """Switching period at a modulation depth.

    A self-oscillating loop slows down as 1 - depth^2, others keep their clock.  depth
    0 .. 1, carrier at idle [Hz]; returns [s].  Source: derivation.
    Units: modulator_type [word], depth [1], carrier [Hz]; returns [s].

    >>> round(period_at("self-oscillating", 0.8, 500e3) * 1e6, 3)
    5.556
    """
    slows = modulator_type == "self-oscillating"
    return 1 / (carrier * (1 - depth * depth)) if slows else 1 / carrier


def bootstrap_charge(q_g: float, i_q: float, carrier: float) -> float:
    """Charge that a floating supply gives away in one period of the carrier.

    q_g gate charge of all devices of one switch [C], i_q quiescent, level-shift and
    leakage current [A], carrier at that moment [Hz]; returns [C].

    >>> round(bootstrap_charge(54e-9, 115e-6, 20e3) * 1e9, 2)
    59.75
    """
    return q_g + i_q / carrier


def bootstrap_minimum(
    v_drv: float, v_f: float, charge: float, c: float, r: float, t_refill: float
) -> float:
    """Lowest voltage of a bootstrap capacitor in steady state.

    v_drv gate supply [V], v_f diode drop [V], charge given away per period [C], c [F],
    r of the refill path [ohm], t_refill on-time of the lower switch [s]; returns [V].
    With little resistance it is the plain drop charge / c, with much it is
    charge r / t_refill.  Valid for the same charge in each period and a constant diode
    drop; a thousandth of t_refill is added to r c, so that r may be 0.
    Source: derivation, exponential recharge; iterated in the tests.  The
    limit of much resistance: ST L6388E data sheet, p. 9 (30 nC, 125 ohm, 5 us: 0.8 V).

    >>> round(12.0 - bootstrap_minimum(12.0, 0.0, 30e-9, 1e-3, 125.0, 5e-6), 3)
    0.75
    """
    refill = settled(t_refill / (r * c + t_refill * 1e-3))
    return v_drv - v_f - charge / c / refill


def gate_power(n_switches: float, q_g: float, v_drv: float, carrier: float) -> float:
    """Power that the gate supply delivers into gates.

    n_switches devices driven, q_g of one [C], v_drv [V], carrier [Hz]; returns [W].
    Units: n_switches [1], q_g [C], v_drv [V], carrier [Hz]; returns [W].

    >>> round(gate_power(1, 15e-9, 12.0, 400e3) * 1e3, 3)
    72.0
    """
    return n_switches * q_g * v_drv * carrier
