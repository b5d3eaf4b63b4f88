"""Moving-coil driver in its box at low frequency: excursion, port, high-pass.

Small-signal model of Thiele and Small: voltage source, coil resistance, no coil
inductance, so valid well below the band where the inductance counts.
"""

from collections.abc import Callable, Iterable, Sequence

from ...linter.check import Source, derivation
from .maths import PI, choose, clip, larger, smaller

STEPS, CLOSER = 48, 8  # of the search over the band, and of each step to either side of the best
SMALL_CLOSED = derivation(
    "equation of motion of coil, cone and air spring, after the model of Thiele and Small"
)
SMALL_VENTED = Source(
    "R. H. Small, Vented-Box Loudspeaker Systems, Part II, J. Audio Eng. Soc., 1973",
    "section 6: cone motion has a notch at the box tuning",
)
VENTED_DERIVED = derivation(
    "volume velocity of the cone splits between air spring, leak and port of the box;"
    " nodal solution agrees"
)


def total_q(q_ms: float, q_es: float) -> float:
    """Total Q of a driver [1] from mechanical and electrical Q [1].

    Units: q_ms [1], q_es [1]; returns [1].

    >>> round(total_q(4.0, 0.45), 4)
    0.4045
    """
    return q_ms * q_es / (q_ms + q_es)


def compliance(v_as: float, s_d: float, air_density: float, sound_speed: float) -> float:
    """Compliance of the suspension [m/N] from the volume of air as compliant as it [m3].

    s_d: cone area [m2]; air_density [kg/m3]; sound_speed [m/s].  Source: equation of motion.
    Units: v_as [m3], s_d [m2], air_density [kg/m3], sound_speed [m/s]; returns [m/N].

    >>> round(compliance(0.020, 0.0137, 1.18, 345.0) * 1e3, 4)  # mm/N
    0.7587
    """
    return v_as / (air_density * sound_speed**2 * s_d**2)


def free_excursion(v_rms: float, c_ms: float, f_s: float, q_es: float, r_e: float) -> float:
    """Peak excursion [m] towards zero frequency of a driver without a box, for a sine.

    v_rms: at the driver [V]; c_ms: compliance [m/N]; f_s: free-air resonance [Hz]; q_es:
    electrical Q [1]; r_e: coil resistance [ohm].
    Derived: force Bl V/Re on the spring, with Bl from q_es = 2 pi f_s M_ms R_e / Bl^2.

    >>> round(free_excursion(20.0, 0.7587e-3, 45.0, 0.45, 6.0) * 1e3, 1)  # mm
    28.2
    """
    return (2 * c_ms / (2 * PI * f_s * q_es * r_e)) ** 0.5 * v_rms


def box_load(f: float, alpha: float, f_b: float, beta: float, q_l: float) -> complex:
    """Stiffness of a box over that of the suspension [1].

    f [Hz]; alpha: v_as / v_b [1], 0 for no box; f_b: tuning [Hz], 0 Hz for a closed box; beta:
    v_b / v_ap, stiffness of a passive radiator over that of the box [1], 0 for a port; q_l:
    leakage Q [1].  A radiator is a port with a spring: at its own resonance,
    f_b (beta / (1 + beta))^0.5, it lets the air out as if there were no box, below that the
    cone is held again.
    Derived: nodal solution of air spring, leak and port, whose reactance a spring makes that of
    the port times 1 + beta (1 - (f_b/f)^2).
    Units: f [Hz], alpha [1], f_b [Hz], beta [1], q_l [1]; returns [1].

    >>> round(abs(box_load(400.0, 1.4, 40.0, 0.3, 7.0)), 2)
    1.41
    >>> round(abs(box_load(20.0, 1.4, 40.0, 1 / 3, 7.0)), 9)
    0.0
    """
    t = f_b / f
    mass = 1 + beta * (1 - t**2)
    return alpha * mass / (mass - t**2 - 1j * mass * t / q_l)


def cone_shape(
    f: float, f_s: float, q_ms: float, q_es: float, box: complex, r_e: float, c: float
) -> float:
    """Excursion over the free excursion towards zero frequency without a capacitor [1].

    f [Hz]; f_s: free-air resonance [Hz]; q_ms, q_es: Q of the driver [1]; box: its stiffness
    over that of the suspension [1]; r_e: coil resistance [ohm]; c: capacitor in series with the
    coil [F], endless for none.  The capacitor takes voltage from the coil, and as much less
    damping is left for the cone: below the resonance the driver is an inductance, with which it
    can even resonate, so that it is no plain high-pass.  Near the corner of a tweeter the
    excursion comes out up to a tenth low, for the inductance of the coil.
    Derived: equation of motion with r_e + 1/(j 2 pi f c) in place of r_e.
    Units: f [Hz], f_s [Hz], q_ms [1], q_es [1], box [1], r_e [ohm], c [F]; returns [1].

    >>> round(28.2 * cone_shape(40.0, 45.0, 4.0, 0.45, 2.0, 6.0, float("inf")), 2)  # mm
    9.05
    """
    u = f / f_s
    left = 1 / (1 - 1j * (1 / (2 * PI * f * c * r_e)))
    return abs(left / (1 - u**2 + 1j * u / q_ms + left * 1j * u / q_es + box))


def _port_terms(f: float, f_b: float, q_l: float) -> tuple[float, float]:
    """Real and imaginary part of 1 + s Tb/QL + s^2 Tb^2: cone over port volume velocity."""
    b = f / f_b
    return 1 - b**2, b / q_l


def vented_denominator(
    f: float, f_s: float, q_ts: float, alpha: float, f_b: float, q_l: float
) -> float:
    """Modulus of the fourth-order polynomial D(j 2 pi f) of a vented box [1].

    f [Hz]; f_s: free-air resonance [Hz]; q_ts: total Q [1]; alpha: v_as / v_b [1]; f_b:
    tuning [Hz]; q_l: leakage Q [1].  D = (1 + s Ts/QT + s^2 Ts^2)(1 + s Tb/QL + s^2 Tb^2)
    + alpha s^2 Tb^2.  Source: Small 1973.

    Worked example: Butterworth alignment, whose response 1/abs(D) is -3.01 dB at f_s.
    Units: f [Hz], f_s [Hz], q_ts [1], alpha [1], f_b [Hz], q_l [1]; returns [1].

    >>> round(vented_denominator(40.0, 40.0, 0.38268, 1.41421, 40.0, 1e9) ** 2, 3)
    2.0
    """
    u = f / f_s
    cone_re, cone_im = 1 - u**2, u / q_ts
    port_re, port_im = _port_terms(f, f_b, q_l)
    real = cone_re * port_re - cone_im * port_im - alpha * (f / f_b) ** 2
    imaginary = cone_re * port_im + cone_im * port_re
    return (real**2 + imaginary**2) ** 0.5


def vented_volume_gain(f: float, f_b: float, q_l: float) -> float:
    """Volume moved by cone, port and leak together over volume moved by the cone [1].

    f [Hz]; f_b: tuning [Hz]; q_l: leakage Q [1].  Tends to 1 far above the tuning; q_l at
    it.  Derived: what leaves the box in sum is what its air spring takes up.

    >>> round(vented_volume_gain(40.0, 40.0, 7.0), 9)
    7.0
    """
    real, imaginary = _port_terms(f, f_b, q_l)
    return (f / f_b) ** 2 / (real**2 + imaginary**2) ** 0.5


def sealed_response(f: float, f_s: float, q_ts: float, alpha: float) -> float:
    """Sound pressure of a driver in a sealed box over that far above its resonance [1].

    f: frequency [Hz]; f_s: free-air resonance [Hz]; q_ts: total Q of the driver [1]; alpha:
    v_as / v_b [1], 0 for no box.  Source: equation of motion; the pressure goes as the
    acceleration of the cone.
    Units: f [Hz], f_s [Hz], q_ts [1], alpha [1]; returns [1].

    >>> round(sealed_response(50.0, 50.0, 0.5**0.5, 0.0), 4)  # -3.01 dB: Butterworth
    0.7071
    """
    u = f / f_s
    return u**2 / ((1 + alpha - u**2) ** 2 + (u / q_ts) ** 2) ** 0.5


def vented_response(
    f: float, f_s: float, q_ts: float, alpha: float, f_b: float, q_l: float
) -> float:
    """Sound pressure of cone, port and leak together over that far above the tuning [1].

    Symbols as in ``vented_denominator``.  Source: Small 1973.
    Units: f [Hz], f_s [Hz], q_ts [1], alpha [1], f_b [Hz], q_l [1]; returns [1].

    >>> round(vented_response(40.0, 40.0, 0.38268, 1.41421, 40.0, 1e9), 4)
    0.7071
    """
    moved = (f / f_s) ** 2 * (f / f_b) ** 2
    return moved / vented_denominator(f, f_s, q_ts, alpha, f_b, q_l)


def port_speed(
    f: float,
    x_free: float,
    s_d: float,
    port_area: float,
    f_s: float,
    q_ts: float,
    alpha: float,
    f_b: float,
    q_l: float,
) -> float:
    """Peak speed [m/s] of the air in the port of a vented box.

    x_free: free excursion towards zero frequency, peak [m]; s_d: cone area [m2];
    port_area: all ports of the box [m2]; the rest as in ``vented_denominator``.  At f_b
    the port moves q_l times the volume of the cone.  Derived: continuity in the box.
    Units: f [Hz], x_free [m], s_d [m2], port_area [m2], f_s [Hz], q_ts [1], alpha [1], f_b
    [Hz], q_l [1]; returns [m/s].
    """
    velocity = 2 * PI * f * s_d * x_free / port_area
    return velocity / vented_denominator(f, f_s, q_ts, alpha, f_b, q_l)


def high_pass(f: float, f_corner: float, order: float) -> float:
    """Voltage passed by a Butterworth high-pass [1]; a corner of 0 Hz is no filter.

    f [Hz]; f_corner: 3 dB corner [Hz]; order [1].

    >>> import math
    >>> round(20 * math.log10(high_pass(20.0, 40.0, 2)), 2)  # dB, an octave below
    -12.3
    """
    return 1 / (1 + (f_corner / f) ** (2 * order)) ** 0.5


def bass_frequencies(band_low: float, band_high: float, f_top: float) -> list[float]:
    """Frequencies [Hz] from the low end of the band up to ``f_top``, evenly in octaves.

    band_low, band_high: ends of the audio band [Hz]; f_top: where a search may end [Hz].
    Units: band_low [Hz], band_high [Hz], f_top [Hz]; returns [Hz].
    """
    end = larger(band_low, f_top)
    end = smaller(band_high, end)
    return [band_low * (end / band_low) ** (step / STEPS) for step in range(STEPS + 1)]


def largest_in_bass(
    value: Callable[[float], float],
    f_s: float,
    alpha: float,
    f_high_pass: float,
    order: float,
    band_low: float,
    band_high: float,
    also: Iterable[float] = (),
) -> float:
    """The largest that a value gets behind the high-pass, up to twice the box resonance.

    value: what grows with the voltage, at a frequency [Hz] and without high-pass; f_s:
    free-air resonance [Hz]; alpha: v_as / v_b [1], 0 for no box; f_high_pass: corner [Hz];
    order [1]; band_low, band_high: ends of the audio band [Hz]; also: further frequencies
    to look at [Hz].  Looked for at frequencies that are even in octaves, then closer by.
    Units: value [function], f_s [Hz], alpha [1], f_high_pass [Hz], order [1], band_low [Hz],
    band_high [Hz], also [Hz]; returns [any].

    >>> round(largest_in_bass(lambda f: 1.0, 40.0, 0.0, 20.0, 2, 20.0, 20e3), 4)
    0.9981
    """

    def passed(f: float) -> float:
        return high_pass(f, f_high_pass, order) * value(f)

    sweep = bass_frequencies(band_low, band_high, 2 * f_s * (1 + alpha) ** 0.5)
    step = (sweep[-1] / sweep[0]) ** (1 / STEPS / CLOSER)
    at = highest(passed, [*sweep, *also])
    near = [clip(at * step**count, sweep[0], sweep[-1]) for count in range(1 - CLOSER, CLOSER)]
    return passed(highest(passed, [at, *near]))


def highest(value: Callable[[float], float], frequencies: Sequence[float]) -> float:
    """The frequency [Hz] at which a value is largest, element by element for arrays.

    Units: value [function], frequencies [Hz]; returns [Hz].

    >>> highest(lambda f: 2 * f, [1.0, 3.0, 2.0])
    3.0
    """
    at, most = frequencies[0], value(frequencies[0])
    for f in frequencies[1:]:
        found = value(f)
        at, most = choose(found > most, f, at), larger(found, most)
    return at


def largest(values: Sequence[float]) -> float:
    """The largest of some values, element by element for arrays.

    Units: values [any]; returns [any].

    >>> largest([1.0, 3.0, 2.0])
    3.0
    """
    found = values[0]
    for value in values[1:]:
        found = larger(found, value)
    return found
