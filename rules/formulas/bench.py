"""Numbers of the bench: supply setting, current limit, dummy load, discharge.

What a first board is powered up with follows from what it should draw, and from what it must
not be given.
"""

from .maths import PI, smaller
from .modulation import carrier_fundamental, clipped_power_ratio


def just_above(v_trip: float, v_most: float) -> float:
    """Voltage [V] at which a stage with an undervoltage lockout surely runs.

    v_trip [V]: where it stops; v_most [V]: never more than that; returns [V].  A twentieth
    above the threshold.  Source: common practice, no source.

    >>> round(just_above(20.0, 33.6), 9)
    21.0
    """
    return smaller(1.05 * v_trip, v_most)


def charging_current(c: float, v_rail: float, v_supply: float, t: float) -> float:
    """Current [A] that charges the capacitors of a rail from a bench supply in a time.

    c [F] of one rail, v_rail [V], v_supply [V], t [s]; returns [A].  Behind a converter the
    charge goes with the ratio of the voltages.  Source: I = C V / t, energy balance.

    >>> round(charging_current(4.4e-3, 33.6, 33.6, 5.0), 6)
    0.029568
    """
    return c * v_rail / t * (v_rail / v_supply)


def supply_limit(i_idle: float, i_charge: float, margin: float) -> float:
    """Current limit [A] of the bench supply: idle with a margin, and the charging current.

    i_idle [A], i_charge [A], margin [1]; returns [A].  Source: common practice, no source.

    >>> round(supply_limit(0.15, 0.03, 1.25), 9)
    0.2175
    """
    return margin * i_idle + i_charge


def discharge_resistor(c: float, t: float) -> float:
    """Resistance [ohm] that empties a rail to 5 % in a time.

    c [F], t [s]; returns [ohm].  Source: three time constants of R C leave 5 %.

    >>> discharge_resistor(1e-2, 3.0)
    100.0
    """
    return t / (3 * c)


def dummy_power(p_onset: float, thd: float, reserve: float) -> float:
    """Power [W] that a dummy load is rated for: that at a distortion, with a reserve.

    p_onset [W] at the onset of clipping, thd [1], reserve [1]; returns [W].  A stage that is
    clipped to a square wave gives twice its largest sine.  Source: hard clipping of a sine.

    >>> round(dummy_power(100.0, 0.01, 2.0), 6)
    209.6
    """
    return reserve * p_onset * clipped_power_ratio(thd)


def dummy_inductance(r: float, f: float, share: float) -> float:
    """Largest inductance [H] of a dummy load: its reactance is a share of its resistance.

    r [ohm], f [Hz], share [1]; returns [H].  A tenth adds 0.5 % to the impedance.
    Source: |Z| = root(r^2 + x^2).

    >>> round(dummy_inductance(4.0, 1e6 / (2 * PI), 0.1) * 1e9, 6)
    400.0
    """
    return share * r / (2 * PI * f)


def residual(v_swing: float, n_legs: float, levels: str, gain: float) -> float:
    """Carrier [V] rms that is left across the load, at its largest.

    v_swing [V], n_legs [1], levels [word], gain [1] of the filter; returns [V].
    Source: Fourier series of the pulse train, as in ``carrier_fundamental``.

    >>> round(residual(50.0, 1.0, "two-level", 0.01), 4)
    0.2251
    """
    return carrier_fundamental(v_swing, n_legs, levels) * gain


def load_that_trips(v_peak: float, m_max: float, i_trip: float, beyond: float) -> float:
    """Resistance [ohm] into which the largest sine exceeds a trip.

    v_peak [V]: largest peak that the rails allow; m_max [1]; i_trip [A]; beyond [1]: by how
    much; returns [ohm].  Source: Ohm's law.

    >>> load_that_trips(30.0, 0.9, 10.0, 1.35)
    2.0
    """
    return m_max * v_peak / (beyond * i_trip)
