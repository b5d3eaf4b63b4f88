"""Moving-coil driver behind a series capacitor: excursion of the cone.

The model of ``driver`` with the capacitor in line with the coil resistance.  The capacitor takes
voltage from the coil, and as much less damping is left for the cone: below the resonance the
driver is an inductance, with which it can even resonate, so that it is no plain high-pass.  The
coil inductance is left out, as in that model: near the corner of a tweeter the excursion comes
out up to a tenth low.
"""

from .maths import PI

STEPS = 256  # frequencies of the search: the peak is sharper than without a capacitor


def vented_load(f: float, alpha: float, f_b: float, q_l: float) -> complex:
    """Stiffness of a vented box over that of the suspension [1].

    f [Hz]; alpha: v_as / v_b [1]; f_b: tuning [Hz]; q_l: leakage Q [1].  Far above the tuning it
    is alpha, as of a sealed box.  Derived: nodal solution of air spring, leak and port.
    Units: f [Hz], alpha [1], f_b [Hz], q_l [1]; returns [1].

    >>> round(abs(vented_load(400.0, 1.4, 40.0, 7.0)), 2)
    1.41
    """
    return radiator_load(f, alpha, f_b, 0.0, q_l)


def radiator_load(f: float, alpha: float, f_b: float, beta: float, q_l: float) -> complex:
    """The same of a box with a passive radiator [1].

    beta: v_b / v_ap, stiffness of the radiator over that of the box [1]; 0: a port.
    Units: f [Hz], alpha [1], f_b [Hz], beta [1], q_l [1]; returns [1].

    >>> round(abs(radiator_load(400.0, 1.4, 40.0, 0.3, 7.0)), 2)
    1.41
    """
    b = f / f_b
    mass = b**2 + beta * (b**2 - 1)
    return -alpha * mass / (1 - mass + 1j * mass / (b * q_l))


def shape_behind_capacitor(
    f: float, f_s: float, q_ms: float, q_es: float, box: complex, r_e: float, c: float
) -> float:
    """Excursion behind a capacitor over the free excursion towards zero frequency without it [1].

    f [Hz]; f_s: free-air resonance [Hz]; q_ms, q_es: Q of the driver [1]; box: stiffness of the
    box over that of the suspension [1]; r_e: coil resistance [ohm]; c: capacitor [F].
    Derived: equation of motion with r_e + 1/(j 2 pi f c) in place of r_e.
    Units: f [Hz], f_s [Hz], q_ms [1], q_es [1], box [1], r_e [ohm], c [F]; returns [1].

    >>> round(28.2 * shape_behind_capacitor(40.0, 45.0, 4.0, 0.45, 2.0, 6.0, 1.0), 2)  # mm
    9.05
    """
    u = f / f_s
    left = 1 / (1 - 1j / (2 * PI * f * c * r_e))
    return abs(left / (1 - u**2 + 1j * u / q_ms + left * 1j * u / q_es + box))
