"""How much heat an amplifier sets free, cold and hot, at full power and at programme.

Plain functions.  Symbols and units stand in brackets.
"""

import math

from .maths import ln, settled

T_COLD = 298.15
"""25 degC in kelvin: where data sheets print the on-resistance."""

T_PRINTED_HOT = 423.15
"""150 degC: where data sheets print how much it has risen."""


def hot_exponent(hot_factor: float) -> float:
    """Exponent of a power law in absolute temperature through 25 and 150 degC.

    hot_factor: on-resistance at 150 degC over that at 25 degC.  The curves of data sheets
    bend upwards as a power law does (mobility of the carriers); a straight line through
    the same two points flatters the current at which the temperature runs away.
    Units: hot_factor [1]; returns [1].

    >>> round(hot_exponent(1.75), 3)
    1.598
    """
    return ln(hot_factor) / math.log(T_PRINTED_HOT / T_COLD)


def hot_resistance(r_cold: float, hot_factor: float, t_junction: float) -> float:
    """On-resistance of a switch at its junction temperature.

    r_cold [ohm] at 25 degC; hot_factor at 150 degC over 25 degC; t_junction [K].
    Valid from -40 degC to the highest junction temperature.
    Source: power law between two printed points, see ``hot_exponent``.
    Units: r_cold [ohm], hot_factor [1], t_junction [K]; returns [ohm].

    >>> round(hot_resistance(0.02, 1.75, 423.15), 4)
    0.035
    """
    return r_cold * (t_junction / T_COLD) ** hot_exponent(hot_factor)


def efficiency_loss(p_out: float, efficiency: float) -> float:
    """Heat of an amplifier of known efficiency.

    p_out [W]; gives [W].  Example: 2 x 1500 W amplifier at one third, 1000 W from 1440 W
    drawn: 440 W (published: Lab.gruppen fP 3400 manual, table 3).
    Units: p_out [W], efficiency [1]; returns [W].

    >>> round(efficiency_loss(1000.0, 1000 / 1440))
    440
    """
    return p_out * (1 / efficiency - 1)


def programme_share(crest_factor: float, crest_of_sine: float) -> float:
    """Power of programme that just touches clipping, over that of a full sine.

    crest_factor: peak over rms of the programme in dB; crest_of_sine: 3.01 dB.
    Units: crest_factor [dB], crest_of_sine [dB]; returns [1].

    >>> round(programme_share(12.04, 3.01), 3)
    0.125
    """
    return 10 ** ((crest_of_sine - crest_factor) / 10)


def pulse_rise(
    power: float,
    resistances: tuple[float, ...],
    times: tuple[float, ...],
    pulse: float,
    period: float,
) -> float:
    """Rise at the end of one of many equal heat pulses, by a ladder of thermal stages.

    power [W]; resistances [K/W] and times [s] of the Foster stages; pulse and period [s];
    gives [K].  Source: geometric series of the exponentials of each stage.
    Example: 0.3, 0.7, 8, 30 K/W, 1 ms, 20 ms, 2 s, 60 s; 12 W, 20 ms each 0.5 s: 27.69 K.
    Units: power [W], resistances [K/W], times [s], pulse [s], period [s]; returns [K].

    >>> stages = (0.3, 0.7, 8.0, 30.0), (1e-3, 20e-3, 2.0, 60.0)
    >>> round(pulse_rise(12.0, *stages, 0.02, 0.5), 2)
    27.69
    """
    total = 0 * power * resistances[0]
    for r, tau in zip(resistances, times, strict=True):
        total = total + power * r * settled(pulse / tau) / settled(period / tau)
    return total
