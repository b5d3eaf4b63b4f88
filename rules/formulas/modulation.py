"""Modulation: carrier products, sampling harmonics, noise of clock and edges, clipping."""

from math import factorial

from .maths import PI, clip, larger, sin, smaller

TERMS = 16  # of the Bessel series: exact to 1e-12 for arguments up to 2 pi


def bessel(order: int, x: float) -> float:
    """Bessel function of the first kind, by its power series.

    order: whole number from 0; x [1], up to 2 pi; returns [1].
    Source: Abramowitz and Stegun 9.1.10; table 9.1 prints J0(1) = 0.7651976866.
    Units: order [1], x [1]; returns [1].

    >>> round(bessel(0, 1.0), 10)
    0.7651976866
    """
    term = (x / 2) ** order / factorial(order)
    total = term
    for k in range(1, TERMS):
        term = -term * (x / 2) ** 2 / (k * (k + order))
        total = total + term
    return total


def uniform_harmonic(n: int, f: float, carrier: float, depth: float, waveform: str) -> float:
    """Harmonic n of a tone that uniform sampling puts into the audio band.

    n: 2, 3, ...; f [Hz] tone, carrier [Hz], depth [1], waveform: ``triangle`` (both
    edges move) or ``sawtooth`` (one edge); returns [1], a share of the ideal peak.
    With q = n f/carrier: (4/(pi q)) J_n(q pi depth/2) sin((q+n) pi/2), or
    (2/(pi q)) J_n(q pi depth).  Modulator outside any loop, no correction.
    Source: double Fourier series (Black 1953, Holmes and Lipo 2003, from memory);
    confirmed with the exact Fourier sums of the edges.
    Units: n [1], f [Hz], carrier [Hz], depth [1], waveform [word]; returns [1].

    >>> round(uniform_harmonic(3, 1.0, 20.0, 0.8, "triangle"), 6)
    0.001149
    """
    q = n * f / carrier
    if waveform == "sawtooth":
        return 2 / (PI * q) * abs(bessel(n, q * PI * depth))
    return 4 / (PI * q) * abs(bessel(n, q * PI * depth / 2) * sin((q + n) * PI / 2))


def carrier_fundamental(v_swing: float, n_legs: float, levels: str) -> float:
    """Largest carrier component that the filter has to stop, rms, between its inputs.

    v_swing [V] of one node, n_legs [1], levels: ``two-level`` or ``three-level``;
    returns [V] rms.  Two-level: n_legs sqrt(2)/pi v_swing at the carrier, at idle.
    Three-level: sqrt(2)/pi v_swing at twice the carrier, at half modulation.
    Source: Fourier series of the pulse train: 2 v_swing/pi sin(pi D) for one leg.
    Units: v_swing [V], n_legs [1], levels [word]; returns [V].

    >>> round(carrier_fundamental(1.0, 1, "two-level"), 4)
    0.4502
    """
    one_leg = 2**0.5 / PI * v_swing
    return one_leg if levels == "three-level" else n_legs * one_leg


def effective_carrier(carrier: float, levels: str) -> float:
    """Lowest frequency of the differential carrier: twice that of a leg if three-level.

    carrier [Hz] of one leg; returns [Hz].  Source: the legs' pulses alternate.
    Units: carrier [Hz], levels [word]; returns [Hz].

    >>> effective_carrier(400e3, "three-level")
    800000.0
    """
    return 2 * carrier if levels == "three-level" else carrier


def timer_noise(v_ideal: float, carrier: float, clock: float, order: float, band: float) -> float:
    """Noise in the band of a pulse width that a counter can only set in whole clocks.

    v_ideal [V] peak, carrier [Hz], clock [Hz], order [1] of noise shaping (0: none),
    band [Hz] highest audio frequency; returns [V] rms.
    Step 2 v_ideal carrier/clock, white, 1/sqrt(12); in the band 1/sqrt(r) of it with
    r = carrier/(2 band), shaped pi^order/sqrt(2 order + 1) / r^(order + 1/2).
    Valid for a step that both edges share or one edge makes, busy signal, r >= 4.
    Source: white rounding, |2 sin(pi f/carrier)|^(2 order) integrated; 250 steps, depth 0.9.

    >>> from math import log10
    >>> round(20 * log10(0.9 / 2**0.5 / timer_noise(1.0, 400e3, 100e6, 0, 20e3)), 1)
    58.8
    """
    ratio = carrier / (2 * band)
    step = 2 * v_ideal * carrier / clock / 12**0.5
    return step * PI**order / (2 * order + 1) ** 0.5 / ratio ** (order + 0.5)


def jitter_noise(v_swing: float, legs: float, carrier: float, jitter: float, band: float) -> float:
    """Noise in the band of edges that move independently of each other.

    v_swing [V] of one node, legs [1] effective number of legs (2 where one comparator
    moves both, sqrt(2) where they are independent), carrier [Hz], jitter [s] rms of
    one edge, band [Hz]; returns [V] rms: v_swing carrier jitter sqrt(2) sqrt(2 band/carrier).
    Source: each edge adds a charge error; two edges a period, white up to carrier/2.

    >>> round(1e3 * jitter_noise(100.0, 1, 400e3, 100e-12, 20e3), 3)
    1.789
    """
    return legs * v_swing * carrier * jitter * 2**0.5 * (2 * band / carrier) ** 0.5


def oscillation_frequency(carrier: float, depth: float) -> float:
    """Switching frequency of a hysteretic loop at the crest of a signal.

    carrier [Hz] at idle, depth [1] (clipped to 0 .. 1); returns [Hz]: carrier (1 - M^2).
    Valid for an ideal hysteretic integrator; delay makes it fall a little less.
    Source: slopes (1 - M) and (1 + M) across a fixed band.

    >>> round(oscillation_frequency(500e3, 0.9) / 1e3, 6)
    95.0
    """
    return carrier * (1 - clip(depth, 0.0, 1.0) ** 2)


def clipped_power_ratio(thd: float) -> float:
    """Power at a stated distortion over the power at the onset of clipping.

    thd [1], 0.001 .. 0.1; returns [1]: 1 + 0.048 (thd / 1 %)^0.778, a power law fitted
    to the hard-clipped sine, within 0.3 % of it (tests solve the exact one).
    Source: hard clipping of a sine: 1 % 1.048, 10 % 1.288.

    >>> round(clipped_power_ratio(0.10), 3)
    1.288
    """
    return 1 + 0.048 * (thd / 0.01) ** 0.778


def share_of_clipped_power(ratio: float, thd: float, thd_most: float) -> float:
    """Rated power over the power at its distortion, which lies between ``thd`` and ``thd_most``.

    ratio: rated power over the power at the onset of clipping [1]; thd, thd_most [1].
    A power that the least distortion does not give and the most does is taken to be
    rated where it is just reached: 1.  Both alike where the distortion is stated.
    Units: ratio [1], thd [1], thd_most [1]; returns [1].

    >>> round(share_of_clipped_power(1.2, 0.01, 0.01), 3)
    1.145
    >>> round(share_of_clipped_power(1.2, 0.01, 0.10), 3)
    1.0
    >>> round(share_of_clipped_power(1.5, 0.01, 0.10), 3)
    1.165
    """
    at_least, at_most = ratio / clipped_power_ratio(thd), ratio / clipped_power_ratio(thd_most)
    return larger(at_most, smaller(at_least, 1 + 0 * ratio))


def lossless_power(
    v_ideal: float,
    z_load: float,
    n_legs: float,
    r_ds_on: float,
    parallel: float,
    dcr: float,
    r_series: float,
) -> float:
    """Largest clean sine behind the resistances of the path, cold, and no other loss.

    v_ideal [V] ideal peak at the load, z_load [ohm], n_legs [1], r_ds_on of one switch
    [ohm], parallel [1] switches, dcr of one inductor [ohm], r_series [ohm]; returns [W].
    One switch and one inductor of each leg carry the load current at any time.
    Source: Ohm's law.
    Units: v_ideal [V], z_load [ohm], n_legs [1], r_ds_on [ohm], parallel [1], dcr [ohm],
    r_series [ohm]; returns [W].

    >>> round(lossless_power(31.0, 4.0, 1, 0.0, 1, 0.0, 0.0), 1)
    120.1
    >>> round(lossless_power(31.0, 4.0, 2, 0.1, 2, 0.04, 0.02), 1)  # 0.2 ohm beside 4 ohm
    109.0
    """
    path = n_legs * (r_ds_on / parallel + dcr) + r_series
    return (v_ideal * z_load / (z_load + path)) ** 2 / (2 * z_load)


def loop_gain(f: float, crossover: float, corner: float, order: float) -> float:
    """Loop gain of equal leaky integrators in the audio band.

    f [Hz], crossover [Hz] where the asymptote crosses 1, corner [Hz] below which the gain is
    flat (0 Hz: ideal integrators), order: slope above it in units of 20 dB per decade;
    returns [1]: (crossover / sqrt(f^2 + corner^2))^order.
    An amplifier of finite gain makes no ideal integrator, and many loops are left flat in the
    band on purpose.  Source: modulus of 1 / (1 + j f/corner), order times.
    Units: f [Hz], crossover [Hz], corner [Hz], order [1]; returns [1].

    >>> loop_gain(1e3, 50e3, 0.0, 1.0)
    50.0
    >>> round(loop_gain(1e3, 50e3, 20e3, 1.0), 3)  # nearly flat in the band: 20 times less
    2.497
    """
    return (crossover / (f**2 + corner**2) ** 0.5) ** order


def loop_corner(f: float, gain: float, crossover: float, order: float) -> float:
    """Below which frequency a loop gain is flat that is ``gain`` at f, not below 0 Hz.

    f [Hz], gain [1] there, crossover [Hz], order [1] as in ``loop_gain``; returns [Hz].
    Source: that formula solved for its corner.
    Units: f [Hz], gain [1], crossover [Hz], order [1]; returns [Hz].

    >>> round(loop_corner(1e3, 2.497, 50e3, 1.0) / 1e3, 2)
    20.0
    """
    square = (crossover / gain ** (1 / order)) ** 2 - f**2
    return larger(square, 0 * square) ** 0.5
