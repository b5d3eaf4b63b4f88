"""Sound level: sensitivity and drive, distance, sums, pistons, and exposure rules."""

from collections.abc import Sequence
from dataclasses import dataclass

from ...linter.check import Constant, Source, derivation, quoted
from .maths import PI, log10, smaller

V_SENSITIVITY = Constant(
    "2.828427 V",
    "drive of the printed sensitivity, 1 W in 8 ohm",
    derivation("square root of 1 W x 8 ohm, printed as 2.83 V"),
)
R_SENSITIVITY = Constant(
    "8 ohm", "load in which 2.83 V make 1 W", derivation("2.83 V squared over 1 W")
)
PORT_ENDS = Constant(
    "0.732",
    "what both ends of a port add to its length, over its diameter",
    Source(
        "ajdesigner.com, length of vent or port",
        "k values: one free and one flanged end 0.732; two free 0.614, two flanged 0.850",
    ),
)
ONE_METRE = Constant(
    "1 m",
    "distance of the printed sensitivity",
    derivation("data sheets of loudspeakers"),
)
ONE_HERTZ = Constant("1 Hz", "unit of the corners of A-weighting", derivation("definition"))
AIR_DENSITY = Constant(
    "1.18 kg/m3",
    "density of air",
    derivation("ideal gas at 24 degC and 1013 hPa"),
)
SOUND_SPEED = Constant(
    "345 m/s",
    "speed of sound",
    derivation("ideal gas at 24 degC"),
)
P_REFERENCE = Constant(
    "20 uPa",
    "sound pressure of 0 dB",
    Source("ISO 1683, reference values", kind="from memory"),
)


def decibel(ratio: float) -> float:
    """Level [dB] of a ratio of voltages, displacements or pressures [1].

    >>> round(decibel(1.2277 / 0.7746), 3)  # +4 dBu is 1.228 V, 0 dBu is 0.7746 V
    4.0
    """
    return 20 * log10(ratio)


def power_decibel(ratio: float) -> float:
    """Level [dB] of a ratio of powers [1].

    >>> round(power_decibel(1 / 8), 2)  # one eighth of the sine power
    -9.03
    """
    return 10 * log10(ratio)


def programme_drop(crest_factor: float) -> float:
    """Level [dB] by which programme lies below a sine of the same peak.

    crest_factor: peak over rms of the programme [dB]; that of a sine is 3.01 dB.

    >>> round(programme_drop(12.04), 2)  # one eighth of the power
    9.03
    """
    return crest_factor - power_decibel(2)


def sensitivity_at_voltage(per_watt: float, z: float, r_reference: float) -> float:
    """Sensitivity for 2.83 V [dB] of a loudspeaker whose sensitivity is printed for 1 W [dB].

    z: rated impedance of the loudspeaker [ohm]; r_reference: 8 ohm.
    Units: per_watt [dB], z [ohm], r_reference [ohm]; returns [dB].

    >>> round(sensitivity_at_voltage(84.99, 4.0, 8.0), 2)  # 88 dB for 2.83 V in 4 ohm
    88.0
    """
    return per_watt + power_decibel(r_reference / z)


def network_level(sensitivity: float, v_rms: float, parallel: float, v_reference: float) -> float:
    """Level [dB] at 1 m of a network of equal loudspeakers close together.

    sensitivity: of one, for 2.83 V [dB]; v_rms: across the network [V]; parallel: strings
    [1].  Units in series share the voltage, which their number makes good: only the
    strings in parallel add, 6 dB a doubling.  Valid while the group is small against the
    wavelength.  Source: sum of equal pressures.
    Units: sensitivity [dB], v_rms [V], parallel [1], v_reference [V]; returns [dB].

    >>> round(network_level(88.0, 28.284, 1, 2.8284), 1)  # 100 W in 8 ohm
    108.0
    """
    return sensitivity + decibel(v_rms * parallel / v_reference)


def distance_loss(distance: float, one_metre: float) -> float:
    """Fall of level [dB] from 1 m to ``distance`` [m] in the free field.

    Rooms fall slower beyond the critical distance, so this is the least level there.
    Units: distance [m], one_metre [m]; returns [dB].

    >>> round(108.0 - distance_loss(3.0, 1.0), 2)  # 88 dB, 100 W in 8 ohm, 3 m away
    98.46
    """
    return decibel(distance / one_metre)


def sum_of_levels(levels: Sequence[float]) -> float:
    """Level [dB] of sounds that are not alike: their powers add.

    Units: levels [dB]; returns [dB].

    >>> round(sum_of_levels((85.0, 85.0)), 2)
    88.01
    """
    powers = [10 ** (level / 10) for level in levels]
    return power_decibel(sum(powers[1:], powers[0]))


def piston_level(
    f: float,
    s_d: float,
    x_peak: float,
    pistons: float,
    distance: float,
    air_density: float,
    p_reference: float,
) -> float:
    """Level [dB] of pistons in a large wall (half space) that move ``x_peak`` at ``f``.

    f: frequency [Hz]; s_d: area of one [m2]; x_peak: one way, peak [m]; pistons: number
    [1]; distance [m]; air_density [kg/m3]; p_reference: 20 uPa [Pa].  Valid while pistons
    and their spacing are small against the wavelength.  Free space: 6.02 dB less.
    Derived: simple source; the low-frequency form of the Rayleigh integral.

    >>> round(piston_level(30.0, 0.0137, 5e-3, 1, 1.0, 1.18, 20e-6), 2)
    84.17
    """
    x_rms = x_peak / 2**0.5
    pressure = air_density * (2 * PI * f) ** 2 * s_d * pistons * x_rms / (2 * PI * distance)
    return decibel(pressure / p_reference)


A_WEIGHTING = Source("IEC 61672-1, formula of A-weighting and its corners", kind="from memory")


def a_response(f: float) -> float:
    """A-weighting as a plain ratio [1] at ``f`` [1], a frequency in hertz without its unit."""
    low = f**4 / ((f**2 + 20.6**2) * ((f**2 + 107.7**2) * (f**2 + 737.9**2)) ** 0.5)
    return low * 12194**2 / (f**2 + 12194**2)


def a_weighting_at_most(f_top: float, one_hertz: float) -> float:
    """Highest A-weighting [dB] of any sound up to ``f_top`` [Hz], but not above 0 dB.

    It rises up to 2.5 kHz, so below 1 kHz the top of a band bounds the whole of it; from
    1 kHz on 0 dB stands for it.  one_hertz: 1 Hz.
    Units: f_top [Hz], one_hertz [Hz]; returns [dB].

    >>> round(a_weighting_at_most(200.0, 1.0), 1)
    -10.8
    >>> a_weighting_at_most(16e3, 1.0)
    0.0
    """
    f = smaller(f_top / one_hertz, 1000.0)
    return decibel(a_response(f) / a_response(1000.0))


@dataclass(frozen=True, slots=True)
class ExposureRule:
    """Level that may be borne for a time, and how the two are traded.

    level [dB(A)] for hours [h]; exchange: dB for half the time; ceiling [dB(A)]: level
    that the rule never allows, or beyond which it gives no time.
    """

    level: float
    hours: float
    exchange: float
    ceiling: float


EQUAL_ENERGY = 3.0103

EXPOSURE_RULES = {
    "niosh": ExposureRule(85.0, 8.0, 3.0, 140.0),
    "osha": ExposureRule(90.0, 8.0, 5.0, 115.0),
    "eu-2003-10": ExposureRule(87.0, 8.0, EQUAL_ENERGY, 140.0),
    # 40 h a week, spread evenly over seven days
    "who-itu-adult": ExposureRule(80.0, 40.0 / 7, EQUAL_ENERGY, 140.0),
    "who-itu-child": ExposureRule(75.0, 40.0 / 7, EQUAL_ENERGY, 140.0),
}
EXPOSURE_SOURCES = (
    quoted(
        "NIOSH 98-126, Criteria for a recommended standard, as told on "
        "NIOSH's page on sound level meters",
        "85 dBA, 8 h, 3 dB",
    ),
    quoted(
        "29 CFR 1910.95, table G-16, as reprinted by the National "
        "Academies (NAP 9756) and in PMC8356746, table 3",
        "90 dBA, 8 h, 5 dB; the table ends at 115 dBA",
    ),
    Source("Directive 2003/10/EC, article 3", "limit 87 dB(A) of the daily level over 8 h"),
    quoted(
        "ITU-T H.870, WHO safe listening, as told in the summary of ITU-T H.871 and by CNBC-TV18",
        "80 dBA for 40 h a week, by both; children 75 dB, by the latter alone",
    ),
)


def allowed_level(exposure_time: float, rule: str, one_hour: float) -> float:
    """Highest level [dB(A)] that a rule lets a person bear for ``exposure_time`` [s] a day.

    rule: a word of ``EXPOSURE_RULES``; one_hour: 3600 s.
    Units: exposure_time [s], rule [word], one_hour [s]; returns [dB].

    >>> allowed_level(2 * 3600.0, "niosh", 3600.0)  # NIOSH: 91 dBA for 2 h
    91.0
    >>> allowed_level(2 * 3600.0, "osha", 3600.0)  # table G-16: 100 dBA for 2 h
    100.0
    """
    terms = EXPOSURE_RULES[rule]
    halvings = log10(terms.hours * one_hour / exposure_time) / log10(2)
    return smaller(terms.level + terms.exchange * halvings, terms.ceiling)


def port_length(f_b: float, v_b: float, port_area: float, sound_speed: float, end: float) -> float:
    """Length of a round port that tunes a box; below zero where not even a hole would do.

    f_b [Hz]: tuning; v_b [m3]: air in the box; port_area [m2]; sound_speed [m/s]; end [1]: what
    both ends add, over the diameter.  The air in the port is a mass on the spring of the box.
    Valid for a port short against the wavelength.
    Source: Helmholtz resonance; end correction as in ``PORT_ENDS``.
    Units: f_b [Hz], v_b [m3], port_area [m2], sound_speed [m/s], end [1]; returns [m].

    >>> round(port_length(32.0, 0.090, 0.0273, 345.0, 0.732), 3)
    0.757
    """
    diameter = (4 * port_area / PI) ** 0.5
    return sound_speed**2 * port_area / ((2 * PI * f_b) ** 2 * v_b) - end * diameter


def port_tuning(
    length: float, v_b: float, port_area: float, sound_speed: float, end: float
) -> float:
    """Tuning of a box with a round port.

    length [m]; the rest as in ``port_length``.
    Units: length [m], v_b [m3], port_area [m2], sound_speed [m/s], end [1]; returns [Hz].

    >>> round(port_tuning(0.757, 0.090, 0.0273, 345.0, 0.732), 1)
    32.0
    """
    mass = length + end * (4 * port_area / PI) ** 0.5
    return sound_speed / (2 * PI) * (port_area / (v_b * mass)) ** 0.5
