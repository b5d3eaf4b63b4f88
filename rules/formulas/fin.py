"""Board copper as a cooling fin: a round sheet heated in the middle.

Plain functions of pure numbers and SI floats; symbols and units stand in brackets.
"""

from .maths import PI, choose, larger, ln, smaller

SERIES = 24
"""Terms of the power series of the Bessel functions; enough for arguments up to 8."""
FAR, REACH = 6.0, 8.0
"""Lengths 1/m that a pad and its copper count to; what lies farther out takes no more heat."""


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


def rim_ratio(x: float) -> float:
    """K1 over K0: what an endless sheet takes up at its inner rim.

    x: pure number, above 0.  Power series up to 3, beyond it 1 + 1/2x - 1/8x^2 + 1/8x^3
    (Abramowitz and Stegun 9.7.2), within 0.1 %.
    Units: x [1]; returns [1].

    >>> round(rim_ratio(1.0), 4), round(rim_ratio(5.0), 3)
    (1.4296, 1.096)
    """
    small = smaller(x, 3.0)
    large = larger(x, 3.0)
    series = bessel_k(1, small) / bessel_k(0, small)
    tail = 1 + 1 / (2 * large) - 1 / (8 * large**2) + 1 / (8 * large**3)
    return choose(x < 3.0, series, tail)


def sheet_resistance(
    area: float, pad_area: float, sheet: float, bare: float, faces: float, film: float
) -> float:
    """Thermal resistance of a round sheet on a large bare board, pad to air.

    area, pad_area [m2]: copper, and what lies under the pad; sheet [W/K]: conductivity times
    thickness of the copper; bare [W/K]: the same of the board beyond it; faces [1] that give
    off heat, film [W/(m2 K)] of each; gives [K/W].
    Valid for a lone source, round pad amid round copper: of all shapes of that area the best.
    Source: radial fin on an endless radial fin, textbooks of heat transfer.
    Example: pad radius 3 mm, copper radius 25 mm, 35 um, two faces of 10, nothing beyond:
    41.98 K/W.
    Units: area [m2], pad_area [m2], sheet [W/K], bare [W/K], faces [1], film [W/(m2 K)];
    returns [K/W].

    >>> square = (PI * 25e-3**2, PI * 3e-3**2)
    >>> round(sheet_resistance(*square, 390.0 * 35e-6, 1e-12, 2, 10.0), 2)
    41.98
    """
    radius = (area / PI) ** 0.5
    m, m_bare = (faces * film / sheet) ** 0.5, (faces * film / bare) ** 0.5
    inner, outer = m * (pad_area / PI) ** 0.5, m * radius
    beyond = bare * m_bare / (sheet * m) * rim_ratio(m_bare * radius)
    near, end = smaller(inner, FAR), smaller(outer, REACH)
    i0, i1, k0, k1 = (f(n, near) for f in (bessel_i, bessel_k) for n in (0, 1))
    up = bessel_k(1, end) - beyond * bessel_k(0, end)
    down = bessel_i(1, end) + beyond * bessel_i(0, end)
    into = k1 * down - i1 * up
    return (i0 * up + k0 * down) / (2 * PI * sheet * inner * into)


def copper_resistance(
    area: float,
    pad_area: float,
    copper: float,
    layers: float,
    vias: float,
    via: float,
    board: float,
    conductivity: float,
    resin: float,
    film: float,
) -> float:
    """Thermal resistance of a copper area on one or several layers, pad to air.

    area, pad_area [m2]: copper of the one package on its largest layer, and under its pad;
    copper [m]: thickness of one layer; layers [1] of about that area; vias [1] under the
    pad, with via [m2] of copper each; board [m]: its thickness; conductivity and resin
    [W/(m K)]: of copper and board; film [W/(m2 K)] of each face, radiation included; gives [K/W].
    The layer of the package and all others give off heat from one face each; vias and the
    resin between them join both.  One layer has both faces.
    Valid for a lone source on a large board without other copper, and from below: resin and
    vias are taken to join the layers all over the area.
    Source: sheets in parallel behind what joins them; see ``sheet_resistance``.
    Units: area [m2], pad_area [m2], copper [m], layers [1], vias [1], via [m2],
    board [m], conductivity [W/(m K)], resin [W/(m K)], film [W/(m2 K)]; returns [K/W].

    >>> six = (600e-6, 30e-6, 35e-6)
    >>> round(copper_resistance(*six, 1, 0, 24e-9, 1.6e-3, 390.0, 0.3, 15.0), 1)
    46.9
    >>> round(copper_resistance(*six, 4, 16, 24e-9, 1.6e-3, 390.0, 0.3, 15.0), 1)
    39.9
    """
    sheet, bare = conductivity * copper, resin * board
    alone = sheet_resistance(area, pad_area, sheet, bare, 2, film)
    top = sheet_resistance(area, pad_area, sheet, bare / 2, 1, film)
    others = larger(layers - 1, 1)
    rest = sheet_resistance(area, pad_area, others * sheet, bare / 2, 1, film)
    joined = rest + board / (vias * via * conductivity + resin * area)
    return choose(layers < 2, alone, smaller(alone, top * joined / (top + joined)))
