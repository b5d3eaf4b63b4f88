"""Inductances under stress: ringing of the power loop, snubber, saturating inductor."""

from .maths import clip, larger


def ringing_impedance(l_loop: float, c: float) -> float:
    """Characteristic impedance of the power loop with the capacitance of the open switch.

    l_loop [H], c [F]; returns [ohm].  Source: sqrt(L / C) of a resonant circuit.

    >>> round(ringing_impedance(10e-9, 300e-12), 3)
    5.774
    """
    return (l_loop / c) ** 0.5


def current_overshoot(current: float, l_loop: float, c: float, t_edge: float) -> float:
    """Peak above the rail when a current is switched off in a time t_edge.

    current [A], l_loop [H], c of the open switch [F], t_edge [s]; returns [V].
    Two bounds of an undamped loop: current x sqrt(L/C) for an instant step, and twice
    L di/dt for a ramp; the smaller holds.  An estimate: real loops are damped.
    Source: derivation, step and ramp of current into a parallel L-C.

    >>> round(current_overshoot(10.0, 10e-9, 300e-12, 1e-12), 2)
    57.74
    """
    return 2 * l_loop * current / larger(t_edge, 2 * (l_loop * c) ** 0.5)


def snubber_share(c_snubber: float, c: float) -> float:
    """Part of the overshoot that remains with a series R-C snubber of R near sqrt(L/C).

    c_snubber and c of the open switch [F]; returns a pure number.  Fitted to the
    solution of the circuit for c_snubber / c of 0 .. 4, within 3 %; beyond 4 the value
    for 4 is kept.  Source: derivation, differential equation solved in the tests.
    Units: c_snubber [F], c [F]; returns [1].

    >>> round(snubber_share(0.0, 300e-12), 3)
    1.0
    """
    return 1 / (1 + 0.43 * clip(c_snubber / c, 0.0, 4.0))


def inductance_at(l: float, i: float, i_sat: float, drop: float) -> float:  # noqa: E741
    """Inductance left at a current, from one printed point of saturation.

    l at rest [H], i current [A], i_sat printed saturation current [A], drop share of the
    inductance lost there (0 .. 1).  Returns [H].  A smooth curve through rest and the
    printed point, l / (1 + k (i / i_sat)^2); a powder core follows it well, a ferrite
    drops later and steeper.  Source: derivation; the example is the point of the Sagami 7W14A.
    Units: l [H], i [A], i_sat [A], drop [1]; returns [H].

    >>> round(inductance_at(10e-6, 11.0, 11.0, 0.25) * 1e6, 3)
    7.5
    """
    return l / (1 + drop / (1 - drop) * (i / i_sat) ** 2)
