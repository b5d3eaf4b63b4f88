"""Board copper as a cooling fin: a round sheet heated in the middle.

Plain functions of pure numbers and SI floats; symbols and units stand in brackets.
"""

from .maths import PI, ln

SERIES = 24
"""Terms of the power series of the Bessel functions; enough for arguments up to 8."""


def bessel_i(order: int, x: float) -> float:
    """Modified Bessel function of the first kind, order 0 or 1.

    x: pure number, 0 .. 8.  Power series, Abramowitz and Stegun 9.6.10.
    Units: order [1], x [1]; returns [1].

    >>> round(bessel_i(0, 1.0), 7), round(bessel_i(1, 1.0), 7)
    (1.2660659, 0.5651591)
    """
    term = (x / 2) ** order
    total = term
    for k in range(1, SERIES):
        term = term * (x / 2) ** 2 / (k * (k + order))
        total = total + term
    return total


def bessel_k(order: int, x: float) -> float:
    """Modified Bessel function of the second kind, order 0 or 1.

    x: pure number, above 0 up to about 6 (beyond, the series loses digits).
    Power series, Abramowitz and Stegun 9.6.13 for order 0; order 1 from the Wronskian
    9.6.15, I0 K1 + I1 K0 = 1/x.
    Units: order [1], x [1]; returns [1].

    >>> round(bessel_k(0, 1.0), 7), round(bessel_k(1, 1.0), 7)
    (0.4210244, 0.6019072)
    """
    gamma = 0.5772156649015329
    k_zero = -(ln(x / 2) + gamma) * bessel_i(0, x)
    term, harmonic = 1.0, 0.0
    for k in range(1, SERIES):
        term = term * (x / 2) ** 2 / k**2
        harmonic = harmonic + 1 / k
        k_zero = k_zero + harmonic * term
    if order == 0:
        return k_zero
    return (1 / x - bessel_i(1, x) * k_zero) / bessel_i(0, x)


def copper_resistance(
    area: float, pad_area: float, copper: float, conductivity: float, film: float
) -> float:
    """Least thermal resistance of a copper area, pad to air.

    area, pad_area [m2]: copper of the one package, and what lies under its pad; copper
    [m]: thickness; conductivity [W/(m K)]; film [W/(m2 K)]: heat transfer of each of the
    two faces, radiation included; gives [K/W].
    Valid for a lone source on one layer, round pad amid round copper: of all shapes of
    that area the best.  Planes on more layers, counted into the area, spread better: up to
    a factor of two less.
    Source: radial fin with insulated rim, textbooks of heat transfer.
    Example: pad radius 3 mm, copper radius 25 mm, 35 um: 41.98 K/W.
    Units: area [m2], pad_area [m2], copper [m], conductivity [W/(m K)], film [W/(m2 K)];
    returns [K/W].

    >>> round(copper_resistance(PI * 25e-3**2, PI * 3e-3**2, 35e-6, 390.0, 10.0), 2)
    41.98
    """
    m = (2 * film / (conductivity * copper)) ** 0.5
    inner, outer = m * (pad_area / PI) ** 0.5, m * (area / PI) ** 0.5
    i0, i1, k0, k1 = (f(n, inner) for f in (bessel_i, bessel_k) for n in (0, 1))
    i1_rim, k1_rim = bessel_i(1, outer), bessel_k(1, outer)
    into = k1 * i1_rim - i1 * k1_rim
    return (i0 * k1_rim + k0 * i1_rim) / (2 * PI * conductivity * copper * inner * into)
