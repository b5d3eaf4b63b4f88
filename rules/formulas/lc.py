"""Output filter: corner, quality, response of the ladder, open-load peak, damper.

A full bridge is computed as the load sees it: both inductors in series, the capacitor
across the load, and half of each capacitor that goes to ground.
"""

from .maths import PI, choose, larger, log10, smaller

STEPS = 16  # frequencies tried between the two ends of the range that holds the peak
FAR = 1e-9  # share that stands for a missing second section
ROUNDING = 1e-15  # share of one that the numbers of the machine no longer tell from nothing
BELOW = 8  # frequencies tried below a natural frequency, down to a tenth less
BAND_STEPS = 8  # equal parts of the band in which the largest deviation is looked for
HALVINGS = 8  # of such a part, around the best frequency so far


def corner(l_1: float, c_1: float) -> float:
    """Undamped corner f0 = 1 / (2 pi sqrt(l_1 c_1)).

    l_1 [H], c_1 [F]; returns [Hz].  This is not the -3 dB point unless Q is 0.7071.
    Raises ZeroDivisionError where l_1 or c_1 is zero.
    Source: circuit theory; MAX4295 data sheet p. 11 prints 30 uH and 0.937 uF for
    30 kHz (half-bridge, 4 ohm).

    >>> round(corner(30e-6, 0.937e-6) / 1e3, 1)
    30.0
    """
    return 1 / (2 * PI * (l_1 * c_1) ** 0.5)


def quality(l_1: float, c_1: float, r_load: float, r_series: float) -> float:
    """Q of the corner with a resistive load and the resistance of the inductors.

    l_1 [H], c_1 [F], r_load [ohm], r_series [ohm]; returns [1].  Valid for loads that are
    resistive at the corner; a voice coil's inductance leaves less damping.
    Source: denominator s^2 l_1 c_1 + s (l_1/r_load + r_series c_1) + 1 + r_series/r_load.
    Butterworth parts of the MAX4295 data sheet p. 11 give 0.707.

    >>> round(quality(30e-6, 0.937e-6, 4.0, 0.0), 3)
    0.707
    """
    return (l_1 * c_1 * (1 + r_series / r_load)) ** 0.5 / (l_1 / r_load + r_series * c_1)


def ladder_gain(
    f: float, l_1: float, c_1: float, z_load: complex, r_series: float, l_2: float, c_2: float
) -> float:
    """Modulus of load voltage over stage voltage, one or two L-C sections.

    f [Hz], l_1 [H], c_1 [F] first section as the load sees it, z_load [ohm] (may be complex),
    r_series [ohm] in line with l_1, l_2 [H] and c_2 [F] second section (or zero); returns [1].
    Valid below the self-resonance of the parts.  Raises ZeroDivisionError for z_load 0.
    Source: Kirchhoff's laws from the load backwards.  Butterworth at its corner: -3 dB.

    >>> round(ladder_gain(30e3, 30e-6, 0.937e-6, 4.0, 0.0, 0.0, 0.0), 3)
    0.707
    """
    return _gain(2j * PI * f, l_1, c_1, 1 / z_load, r_series, l_2, c_2)


def damped_gain(
    f: float,
    l_1: float,
    c_1: float,
    r_load: float,
    r_series: float,
    l_2: float,
    c_2: float,
    r_damper: float,
    c_damper: float,
) -> float:
    """The same into a resistor with a damper beside it.

    Symbols as above, r_load [ohm] (infinite: nothing connected), r_damper [ohm] in series with
    c_damper [F] (0 F: none); returns [1].
    Source: Kirchhoff's laws from the load backwards.  10 ohm and 100 nF change little at the
    carrier, where 0.68 uF have 0.6 ohm.
    Units: f [Hz], l_1 [H], c_1 [F], r_load [ohm], r_series [ohm], l_2 [H], c_2 [F], r_damper
    [ohm], c_damper [F]; returns [1].

    >>> round(1e3 * damped_gain(400e3, 22e-6, 0.68e-6, 8.0, 0.0, 0.0, 0.0, 10.0, 0.1e-6), 2)
    10.4
    """
    s = 2j * PI * f
    return _gain(s, l_1, c_1, 1 / r_load + _branch(s, r_damper, c_damper), r_series, l_2, c_2)


def _branch(s: complex, r_damper: float, c_damper: float) -> complex:
    """Admittance of a resistor in series with a capacitor; s = j 2 pi f [1/s]."""
    return s * c_damper / (1 + s * r_damper * c_damper)


def _gain(
    s: complex, l_1: float, c_1: float, load: complex, r_series: float, l_2: float, c_2: float
) -> float:
    """Gain of the ladder whose end is an admittance; endless at a resonance that nothing damps."""
    current = load + s * c_2
    voltage = 1 + s * l_2 * current
    z_series = r_series + s * l_1
    drive = voltage * (1 + z_series * (s * c_1)) + z_series * current
    return 1 / larger(abs(drive), ROUNDING)


def two_section_lower(l_1: float, c_1: float, l_2: float, c_2: float) -> float:
    """Lower natural frequency of a lossless filter of two sections, nothing connected.

    A second section of zero: one section.
    Source: roots of 1 - w^2 (l_1 (c_1 + c_2) + l_2 c_2) + w^4 l_1 c_1 l_2 c_2, Kirchhoff's laws.
    Units: l_1 [H], c_1 [F], l_2 [H], c_2 [F]; returns [Hz].

    >>> round(two_section_lower(22e-6, 0.68e-6, 22e-6, 0.68e-6) / 1e3, 1)
    25.4
    """
    a = l_1 * (c_1 + c_2) + l_2 * c_2
    b = larger(l_1 * c_1 * l_2 * c_2, FAR * a**2)
    return (2 / (a + (a**2 - 4 * b) ** 0.5)) ** 0.5 / (2 * PI)


def two_section_upper(l_1: float, c_1: float, l_2: float, c_2: float) -> float:
    """Upper natural frequency of the same filter, far away where a part is missing.

    Source: product of both roots, 1 / (l_1 c_1 l_2 c_2).
    Units: l_1 [H], c_1 [F], l_2 [H], c_2 [F]; returns [Hz].

    >>> round(two_section_upper(22e-6, 0.68e-6, 22e-6, 0.68e-6) / 1e3, 1)
    66.6
    """
    a = l_1 * (c_1 + c_2) + l_2 * c_2
    b = larger(l_1 * c_1 * l_2 * c_2, FAR * a**2)
    return 1 / ((2 * PI) ** 2 * b**0.5 * two_section_lower(l_1, c_1, l_2, c_2))


def two_section_peak(
    l_1: float,
    c_1: float,
    r_load: float,
    r_series: float,
    l_2: float,
    c_2: float,
    r_damper: float,
    c_damper: float,
    r_piezo: float,
    c_piezo: float,
) -> float:
    """Largest gain of a filter of one or two sections, over that at low frequency.

    Damper and piezo, each a resistor in series with a capacitor (0 F: none), lie beside the load
    (infinite: none).  Each peak is looked for from a tenth below its natural frequency with the
    capacitors beside the load up to that without them.  Within 3 % above a gain of 1.5 (tests
    compare with node equations on a fine scan); below that it reads low, and nothing is wrong.
    Source: Kirchhoff's laws.  One section of a Q of 10 without damper peaks by 10.
    Units: l_1 [H], c_1 [F], r_load [ohm], r_series [ohm], l_2 [H], c_2 [F], r_damper [ohm],
    c_damper [F], r_piezo [ohm], c_piezo [F]; returns [1].

    >>> round(two_section_peak(22e-6, 0.68e-6, 56.88, 0.0, 0.0, 0.0, 1.0, 0.0, 1.0, 0.0), 1)
    10.0
    """
    full = c_2 + c_damper + c_piezo
    peak = 0.0
    for mode in (two_section_lower, two_section_upper):
        f, f_top = mode(l_1, c_1, l_2, full), mode(l_1, c_1, l_2, c_2)
        for k in range(-BELOW, STEPS + 1):
            f_here = f * (0.9 ** (-k / BELOW) if k < 0 else (f_top / f) ** (k / STEPS))
            s = 2j * PI * f_here
            beside = _branch(s, r_damper, c_damper) + _branch(s, r_piezo, c_piezo)
            gain = _gain(s, l_1, c_1, 1 / r_load + beside, r_series, l_2, c_2)
            peak = larger(peak, gain)
    return peak * (1 + r_series / r_load)


def damper_resistance(l_1: float, c_1: float, c_damper: float) -> float:
    """Damper resistance that gives the lowest open-load gain peak for a given c_damper.

    l_1 [H], c_1 [F], c_damper [F]; returns [ohm]: sqrt(l_1/c_1) sqrt((1+n)(2+n)/2)/n with
    n = c_damper/c_1.  Lossless filter, no load.
    Source: the curves of all resistances meet in one point, w^2 = 2/((2+n) l_1 c_1); the
    best one has its peak there (confirmed with a numerical optimiser).

    >>> round(damper_resistance(1.0, 1.0, 1.0), 3)
    1.732
    """
    n = c_damper / c_1
    return (l_1 / c_1) ** 0.5 * ((1 + n) * (2 + n) / 2) ** 0.5 / n


def open_load_gain(
    l_1: float, c_1: float, r_series: float, r_damper: float, c_damper: float
) -> float:
    """Largest gain of the filter without load, with or without damper.

    l_1 [H], c_1 [F], r_series [ohm], r_damper [ohm], c_damper [F] (0 F: none); returns [1].
    The peak lies between the corners with c_1 and with c_1 + c_damper: sixteen steps, within 2 %.
    Source: Kirchhoff's laws.  22 uH, 0.68 uF, 30 mohm: gain sqrt(l_1/c_1)/r = 189.6.

    >>> round(open_load_gain(22e-6, 0.68e-6, 0.03, 1.0, 0.0), 1)
    189.6
    """
    span = (1 + c_damper / c_1) ** (0.5 / STEPS)
    f = corner(l_1, c_1 + c_damper)
    far = (r_series, 0 * l_1, 0 * c_1)
    peak = 0.0
    for _ in range(STEPS + 1):
        s = 2j * PI * f
        peak = larger(peak, _gain(s, l_1, c_1, _branch(s, r_damper, c_damper), *far))
        f = f * span
    return peak


def deviation_db(
    f: float,
    l_1: float,
    c_1: float,
    r_load: float,
    l_load: float,
    r_series: float,
    l_2: float,
    c_2: float,
    r_damper: float = 0.0,
    c_damper: float = 0.0,
) -> float:
    """Level at f against that at low frequency, one or two sections, coil as load.

    f [Hz], l_1 [H], c_1 [F], r_load [ohm], l_load [H] in series with r_load, r_series [ohm],
    l_2 [H], c_2 [F], r_damper [ohm] in series with c_damper [F] beside the load (0 F: none);
    returns [dB], positive where the response rises.
    Source: Kirchhoff's laws.  TPA3001D1 data sheet p. 18: two 33 uH, 0.47 uF across and
    0.1 uF to ground on each side are meant for 27 kHz into 8 ohm, 1.09 dB down at 20 kHz.

    >>> round(deviation_db(20e3, 66e-6, 0.52e-6, 8.0, 0.0, 0.0, 0.0, 0.0), 2)
    -1.09
    """
    parts = (l_1, c_1, r_load, l_load, r_series, l_2, c_2, r_damper, c_damper)
    return 20 * log10(_level(f, *parts))


def frequency_of_deviation(
    f_top: float,
    l_1: float,
    c_1: float,
    r_load: float,
    l_load: float,
    r_series: float,
    l_2: float,
    c_2: float,
    r_damper: float = 0.0,
    c_damper: float = 0.0,
) -> float:
    """Where, up to f_top, the level differs most from that at low frequency, up or down.

    f_top [Hz], l_1 [H], c_1 [F], r_load [ohm], l_load [H], r_series [ohm], l_2 [H], c_2 [F],
    r_damper [ohm], c_damper [F] as in ``deviation_db``; returns [Hz].  Eight frequencies are tried.
    The lowest level is broad, or lies at the top; a peak may be narrow, so that the highest is
    moved by ever smaller steps.  Within 0.2 dB of the largest deviation (tests: fine scan).
    Source: Kirchhoff's laws; a resonance rises steadily to its one peak.
    100 uH, 2.09 uF, Q 10: the peak lies at 11 kHz, in the middle of the band.

    >>> f = frequency_of_deviation(20e3, 100e-6, 2.09e-6, 69.2, 0.0, 0.0, 0.0, 0.0)
    >>> round(f / 1e3, 1), round(deviation_db(f, 100e-6, 2.09e-6, 69.2, 0.0, 0.0, 0.0, 0.0), 1)
    (11.0, 20.0)
    """
    parts = (l_1, c_1, r_load, l_load, r_series, l_2, c_2, r_damper, c_damper)
    step = f_top / BAND_STEPS
    f_low = f_high = f_top
    low = high = _level(f_top, *parts)
    for k in range(1, BAND_STEPS):
        level = _level(k * step, *parts)
        f_low, low = choose(level < low, k * step, f_low), smaller(level, low)
        f_high, high = choose(level > high, k * step, f_high), larger(level, high)
    no_peak = isinstance(high, float) and (
        high <= 1 or (f_high == f_top and _level(f_top - step / 50, *parts) < high)
    )
    for _ in range(0 if no_peak else HALVINGS):
        step = step / 2
        for f in (f_high - step, smaller(f_high + step, f_top)):
            level = _level(f, *parts)
            f_high, high = choose(level > high, f, f_high), larger(level, high)
    return choose(high * low > 1, f_high, f_low)


def _level(
    f: float,
    l_1: float,
    c_1: float,
    r_load: float,
    l_load: float,
    r_series: float,
    l_2: float,
    c_2: float,
    r_damper: float,
    c_damper: float,
) -> float:
    """Gain at f over that at low frequency."""
    s = 2j * PI * f
    load = 1 / (r_load + s * l_load) + _branch(s, r_damper, c_damper)
    return _gain(s, l_1, c_1, load, r_series, l_2, c_2) * (1 + r_series / r_load)
