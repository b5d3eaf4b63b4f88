"""Rails and sources: sag, source current, ripple, inrush."""

from ...linter.check import Source, derivation
from .maths import PI, cos, larger, sin, smaller

CONSTANT_POWER = derivation(
    "power balance P = V (V0 - V) / r of a source with resistance, upper root;"
    " checked by root finding and by a time simulation"
)
BRIDGE_CURRENT = derivation(
    "supply current of a lossless bridge: mean (1 - cos 2wt), of a half bridge besides"
    " (2/M) sin wt; checked by a switched waveform"
)
SHARED_RIPPLE = derivation(
    "divider of source resistance and rail capacitors at the frequency of the ripple;"
    " checked by a phasor and by a differential equation"
)
EIGHTH_POWER = Source(
    "Lab.gruppen fP 3400 manual; Martin Audio E1300 guide",
    "p. 13; p. 12: one eighth of the sine power as the loud programme limit",
)


def loaded_voltage(v_open: float, r: float, p: float) -> float:
    """Voltage [V] of a source with resistance when a constant power is taken from it.

    v_open: without load [V]; r: resistance [ohm]; p: power [W].  Valid while
    4 r p <= v_open^2; above that no voltage can deliver p, and half of v_open, the point
    of largest power, is returned.  Source: power balance.

    >>> round(loaded_voltage(20.4, 0.120, 90.909), 2)
    19.85
    """
    room = v_open**2 - 4 * r * p
    return (v_open + larger(room, 0 * room) ** 0.5) / 2


def loaded_current(v_open: float, r: float, p: float) -> float:
    """Current [A] from a source with resistance for a constant power; as above.

    Units: v_open [V], r [ohm], p [W]; returns [A].

    >>> round(loaded_current(20.4, 0.120, 90.909), 3)
    4.58
    """
    return p / loaded_voltage(v_open, r, p)


def source_current_rms(
    v_open: float, r: float, p_mean: float, p_double: float, p_signal: float
) -> float:
    """Rms current [A] of a source whose power swings with the music.

    p_mean: mean power [W]; p_double: amplitude of its swing at twice the audio frequency
    [W], equal to p_mean for a full-scale sine on a bridge; p_signal: amplitude at the
    audio frequency itself [W], half bridges only.  Without sag and with p_double = p_mean
    it is sqrt(1.5) times the mean.  Sixteen points of one period; the wave is smooth, so
    the sum is exact to better than 1e-6.  Source: derived.
    Units: v_open [V], r [ohm], p_mean [W], p_double [W], p_signal [W]; returns [A].

    >>> round(source_current_rms(20.4, 0.120, 90.909, 90.909, 0.0), 3)
    5.722
    """
    squares = [
        loaded_current(v_open, r, p_mean - p_double * cos(2 * x) + p_signal * sin(x)) ** 2
        for x in (PI * k / 8 for k in range(16))
    ]
    return (sum(squares[1:], squares[0]) / 16) ** 0.5


def source_share(r: float, c: float, f: float) -> float:
    """Part of an alternating rail current that the source carries, not the capacitors [1].

    r: source resistance at the rail [ohm]; c: capacitance of the rail [F]; f [Hz].
    Source: current divider.

    >>> round(source_share(0.05, 3.3e-3, 40.0), 4)
    0.9991
    """
    return 1 / (1 + (2 * PI * f * r * c) ** 2) ** 0.5


def half_bridge_swing(power: float, depth: float) -> float:
    """Amplitude [W] of the swing at the audio frequency, both rails of a half bridge added.

    power: output [W]; depth: modulation depth there [1].  One rail's mean current is
    I M / 4 and its part at the audio frequency I / 2, which is 2 / M times the mean.

    >>> half_bridge_swing(100.0, 0.8)
    250.0
    """
    return 2 * power / depth


def programme_share(crest_factor: float) -> float:
    """Power of a programme over that of a sine with the same peak [1].

    crest_factor: peak over rms of the programme [dB]; 12.04 dB gives one eighth.

    >>> round(programme_share(12.04), 3)
    0.125
    """
    return 2 * 10 ** (-crest_factor / 10)


def stored_energy(v: float, c: float) -> float:
    """Energy [J] of c [F] at v [V]; charging through a resistor heats it by as much.

    Units: v [V], c [F]; returns [J].

    >>> round(stored_energy(25.2, 4.4e-3), 3)
    1.397
    """
    return c * v**2 / 2


def lowest(values: tuple[float, ...]) -> float:
    """The smallest of a tuple.

    Units: values [any]; returns [any].

    >>> lowest((60.0, 20.0, 2000.0))
    20.0
    """
    least = values[0]
    for value in values[1:]:
        least = smaller(least, value)
    return least


def rail_ripple(v_rail: float, r: float, p_double: float, p_signal: float, turn: float) -> float:
    """Ripple of ONE rail at the audio frequency [V, peak to peak].

    v_rail: ONE rail [V]; r: source resistance there [ohm]; p_double, p_signal: power
    swings [W] at twice the audio frequency and at it, that the source carries (after
    ``source_share``); turn: 2 pi f r c [1], which turns their phases.  What the source does
    not carry the capacitors do, and both see the same voltage.  The mains or converter's own
    ripple is left out.  The sum is looked at in 64 points of one period, within 0.5 %.
    Source: rail current I M/4 (1 - cos 2wt + 2/M sin wt) through r beside c, for a half
    bridge on two rails or on one; a bridge has no part at wt.
    Units: v_rail [V], r [ohm], p_double [W], p_signal [W], turn [1]; returns [V].

    >>> x = 2 * PI * 20.0 * 0.05 * 3.3e-3
    >>> round(rail_ripple(30.0, 0.05, 200 * source_share(0.05, 3.3e-3, 40.0), 0.0, x), 3)
    0.666
    >>> round(rail_ripple(30.0, 1.0, 100.0, 200.0, 0.0), 1)  # depth 1: 4.5, not 6, times 100 W
    15.0
    """
    lag, double_lag = (1 + turn**2) ** 0.5, (1 + 4 * turn**2) ** 0.5
    a, b = p_signal / lag, p_double / double_lag
    top = bottom = a - a + b - b
    for s, c, s_2, c_2 in ROUND:
        swing = a * (s - turn * c) - b * (c_2 + 2 * turn * s_2)
        top, bottom = larger(top, swing), smaller(bottom, swing)
    return r * larger(top - bottom, 2 * p_double) / v_rail  # a bridge: exact


POINTS = 64
ROUND = tuple(
    (sin(x), cos(x), sin(2 * x), cos(2 * x)) for x in (2 * PI * k / POINTS for k in range(POINTS))
)
