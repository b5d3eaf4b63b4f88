"""Capacitors of the output: reactive current, loss limit, bias distortion, series R-C."""

from ...linter.check import Source
from .maths import PI

VENTS = Source(
    "ELNA, cautions for aluminium electrolytic capacitors",
    "ripple current: the inside heats up at once, the pressure valve blows; how far beyond the"
    " rating is common practice: programme of twice the rated current, four times the heat;"
    " no page given",
)


def reactive_current(f: float, c: float, v: float) -> float:
    """Current of a capacitor, rms.

    f [Hz], c [F], v [V] rms; returns [A]: 2 pi f c v.  Source: circuit theory.

    >>> round(reactive_current(20e3, 0.68e-6, 16.79), 3)
    1.435
    """
    return 2 * PI * f * c * v


def current_at_loss(p: float, f: float, c: float, tan_delta: float, r_metal: float) -> float:
    """Current, rms, at which the loss in dielectric, layers and leads reaches p.

    p [W], f [Hz], c [F], tan_delta [1] at that frequency, r_metal [ohm]; returns [A].
    Without r_metal a good film would carry tens of amperes at the carrier.
    Source: P = I^2 (tan_delta / (2 pi f c) + r_metal); loss factors from CEE "Technicalities",
    0.017 for polyester at 100 kHz: 1 uF and 0.25 W allow 4.84 V, that is 3.04 A.

    >>> round(current_at_loss(0.25, 100e3, 1e-6, 0.017, 0.0) / (2 * PI * 100e3 * 1e-6), 3)
    4.838
    """
    return (p / (tan_delta / (2 * PI * f * c) + r_metal)) ** 0.5


def bias_third_harmonic(f: float, f_corner: float, loss: float) -> float:
    """Third harmonic that a class-2 filter capacitor adds, relative to the tone.

    f [Hz] tone, f_corner [Hz] of the filter, loss [1]: share of the (small-signal)
    capacitance lost at the peak voltage; returns [1]: (3/4) (f/f_corner)^2 loss.
    Valid for f well below f_corner/3, parabolic loss, filter outside the loop.
    Source: first-order perturbation of l q'' + q/c(v); a bias curve prints dq/dv.
    A solution of the differential equation gives 0.0349 % for this case.

    >>> round(100 * bias_third_harmonic(1.0, 15.0, 0.1), 4)
    0.0333
    """
    return 0.75 * (f / f_corner) ** 2 * loss


def high_pass_corner(r: float, c: float) -> float:
    """-3 dB corner of a capacitor in series with a load.

    r [ohm], c [F]; returns [Hz].  Source: circuit theory; CS4525 data sheet
    DS726PP1 table 19 prints 40 Hz for 1000 uF and 4 ohm.

    >>> round(high_pass_corner(4.0, 1000e-6))
    40
    """
    return 1 / (2 * PI * r * c)


def series_rc_power(v: float, f: float, r: float, c: float) -> float:
    """Heat in the resistor of a series R-C across a sine voltage.

    v [V] rms, f [Hz], r [ohm], c [F]; returns [W].  Source: circuit theory.

    >>> round(series_rc_power(17.68, 20e3, 10.0, 100e-9), 4)
    0.4859
    """
    x = 2 * PI * f * c
    return v**2 * x**2 * r / (1 + (x * r) ** 2)
