"""Ripple current in the bulk capacitors of one rail."""

from ...linter.check import derivation
from .maths import PI, smaller
from .supply import lowest

CARRIER_RIPPLE = derivation(
    "variance of the switched rail current within one carrier period, averaged over the"
    " sine; checked by a switched waveform"
)


def capacitor_share(r: float, c: float, f: float) -> float:
    """Part of an alternating rail current that the capacitors carry [1]; as above.

    Units: r [ohm], c [F], f [Hz]; returns [1].

    >>> round(capacitor_share(0.05, 3.3e-3, 40.0), 4)
    0.0414
    """
    x = 2 * PI * f * r * c
    return x / (1 + x**2) ** 0.5


def carrier_ripple_square(n_legs: float, levels: str, i_peak: float, depth: float) -> float:
    """Mean square [A2] of the carrier-frequency current in the capacitors of ONE rail.

    n_legs: 1 or 2; levels: two-level or three-level; i_peak: load current [A];
    depth [1]; above 1, where the rated power is beyond the rail, it counts as 1.
    Source: derived, switched waveform.
    Units: n_legs [1], levels [word], i_peak [A], depth [1]; returns [A2].

    >>> round(carrier_ripple_square(1, "two-level", 5.0, 0.8) ** 0.5, 3)
    1.275
    >>> round(carrier_ripple_square(2, "three-level", 5.0, 0.8) ** 0.5, 3)
    1.577
    """
    depth = smaller(depth, 1)
    if levels == "three-level":
        return i_peak**2 * (4 * depth / (3 * PI) - 3 * depth**2 / 8)
    return (n_legs * i_peak / 2) ** 2 * (0.5 - 3 * depth**2 / 8)


def bulk_current(
    n_legs: tuple[float, ...],
    levels: tuple[str, ...],
    i_peak: tuple[float, ...],
    depth: tuple[float, ...],
    locked: tuple[str, ...],
    r: float,
    c: float,
    f: tuple[float, ...],
    share: float,
) -> float:
    """Rms current [A] in the capacitors of ONE rail, all channels at work.

    Tuples over the channels: n_legs; levels; i_peak [A] and depth [1] at rated power;
    locked yes/channels/no; f lowest frequency [Hz].  r: source resistance [ohm]; c: capacitance
    [F]; share: of the rated output power [1].  Audio parts add in phase.  Carrier parts
    add straight where channels run on one clock, else in squares.  The carrier is taken
    to stay in the bulk: film capacitors at the switches relieve it.
    Units: n_legs [1], levels [word], i_peak [A], depth [1], locked [word], r [ohm], c [F], f
    [Hz], share [1]; returns [A].

    >>> one = ((1,), ("two-level",), (5.0,), (0.8,), ("yes",))
    >>> big = bulk_current(*one, 1e3, 1.0, (20.0,), 1.0)  # no source: all audio, all carrier
    >>> round((big**2 - 1.275**2) ** 0.5, 3)
    1.904
    """
    root = share**0.5
    i = [root * item for item in i_peak]
    m = [root * item for item in depth]
    double = [a * b * n / 4 for a, b, n in zip(i, m, n_legs, strict=True)]
    signal = [a / 2 if n == 1 else 0 * a for a, n in zip(i, n_legs, strict=True)]
    at_double = sum(double[1:], double[0]) * capacitor_share(r, c, 2 * lowest(f))
    at_signal = sum(signal[1:], signal[0]) * capacitor_share(r, c, lowest(f))
    parts = [
        carrier_ripple_square(n, word, a, b)
        for n, word, a, b in zip(n_legs, levels, i, m, strict=True)
    ]
    roots = [part**0.5 for part in parts]
    straight = sum(roots[1:], roots[0]) ** 2
    carrier = straight if {"yes", "channels"} & set(locked) else sum(parts[1:], parts[0])
    return ((at_double**2 + at_signal**2) / 2 + carrier) ** 0.5
