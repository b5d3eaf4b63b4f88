"""The load of a channel: networks of equal loudspeakers, clipped power, series R-C arms."""

from ...linter.check import Source, derivation
from .maths import PI

MINIMUM_IMPEDANCE = Source(
    "IEC 60268-5, as web pages on impedance quote it: the lowest in the rated band is not"
    " below 80 % of the rated impedance",
    "80 % without the standard: Visaton dictionary; ELAC questions and answers",
    kind="quoted",
)
RATING_KINDS = Source(
    "B&C Speakers, Power handling",
    "web page: noise with a crest factor of 2 after AES2-1984; "
    "programme rating is twice the nominal; no page given",
)
PEAKS_OF_NOISE = derivation(
    "the rating noise of AES2-1984 has a crest factor of 2: its peaks carry 4 times the rating"
)
CLIPPED_SINE = derivation(
    "mean square of a sine cut off at the clip level, over the mean square at clip onset"
)


def network_impedance(z_one: float, series: float, parallel: float) -> float:
    """Impedance [ohm] of equal loudspeakers: parallel strings of ``series`` units each.

    z_one: impedance of one loudspeaker [ohm]; series, parallel: counts [1].
    Valid for equal units.  Source: Kirchhoff.
    Units: z_one [ohm], series [1], parallel [1]; returns [ohm].

    >>> round(network_impedance(8.0, 1, 3), 3)  # three of 8 ohm in parallel
    2.667
    """
    return z_one * series / parallel


def one_of_network(z_all: float, series: float, parallel: float) -> float:
    """Impedance [ohm] of one loudspeaker of a network whose impedance [ohm] is known.

    Units: z_all [ohm], series [1], parallel [1]; returns [ohm].

    >>> one_of_network(8.0, 2, 2)  # two strings of two
    8.0
    """
    return z_all * parallel / series


def line_impedance(v_line: float, p_tap: float, ratio: float) -> float:
    """Impedance [ohm] of a constant-voltage line as the amplifier sees it.

    Every tap takes its power at the rated voltage, so all of them take p_tap; a transformer
    ahead of the line brings the impedance down by the square of its ratio.
    Source: conservation of energy; textbook of distributed sound: 100 V and 100 W are 100 ohm.
    Units: v_line [V], p_tap [W], ratio [1]; returns [ohm].

    >>> line_impedance(100.0, 100.0, 1.0), line_impedance(100.0, 100.0, 5.0)
    (100.0, 4.0)
    """
    return v_line**2 / p_tap / ratio**2


def flux_share(order: float) -> float:
    """Largest voltage over frequency behind a Butterworth high-pass, as a share of V / f0.

    With x = f / f0 the voltage is x^n / sqrt(1 + x^2n), and over x it is largest at
    x^2n = n - 1; behind a first order it is largest at zero frequency.
    Source: derivative of x^(n-1) / sqrt(1 + x^2n).  Units: order [1]; returns [1].

    >>> [round(flux_share(n), 3) for n in (1, 2, 3, 4)]
    [1.0, 0.707, 0.727, 0.755]
    """
    return (order - 1) ** ((order - 1) / (2 * order)) / order**0.5


def piezo_impedance(f: float, c: float, r_series: float) -> float:
    """Modulus [ohm] of a piezo transducer behind a resistor: it falls with frequency.

    Valid above the resonances of the ceramic, where it is a capacitor.  Source: Kirchhoff.
    Units: f [Hz], c [F], r_series [ohm]; returns [ohm].

    >>> round(piezo_impedance(20e3, 150e-9, 0.0), 1), round(piezo_impedance(20e3, 150e-9, 22.0), 1)
    (53.1, 57.4)
    """
    return (r_series**2 + 1 / (2 * PI * f * c) ** 2) ** 0.5


def sine_voltage(power: float, z: float) -> float:
    """Rms voltage [V] of a sine that makes ``power`` [W] in a resistance ``z`` [ohm].

    Worked example: 125 W in 6 ohm (tonmeister.ca no. 97, quoting IEC 268-5:1989).
    Units: power [W], z [ohm]; returns [V].

    >>> round(sine_voltage(125.0, 6.0), 2)
    27.39
    """
    return (power * z) ** 0.5


def series_arm_power(v_rms: float, f: float, r: float, c: float) -> float:
    """Power [W] in the resistor of a series R-C arm across a sine of ``v_rms`` [V].

    f: frequency [Hz]; r [ohm]; c [F].  Valid for a voltage source across the arm.
    Worked example: 40 ohm and 100 nF at 35 V rms, 13.5 kHz; R. MacLachlan reckons with 3 W at
    35 V (ILEMT laboratory notebook, 15 Dec 2020, frequency not told).
    Units: v_rms [V], f [Hz], r [ohm], c [F]; returns [W].

    >>> round(series_arm_power(35.0, 13.5e3, 40.0, 100e-9), 1)
    3.2
    """
    u = 2 * PI * f * r * c
    return v_rms**2 / r * u**2 / (1 + u**2)
