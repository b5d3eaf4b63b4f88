"""Bus pumping: energy that an amplifier returns to a supply which cannot take it back.

A half bridge feeds load current back into the rail that is idle at the moment; a full
bridge returns only what a reactive load returns.  The rail capacitors must store it.
"""

from ...linter.check import Source, derivation
from .driver import largest
from .maths import PI, asin, cos, larger, sin, smaller

HALF_BRIDGE_PUMPING = derivation(
    "charge that the idle rail receives in one half cycle: the integral of"
    " i (1 - m) / 2, checked by a switched simulation cycle by cycle"
)
BRIDGE_PUMPING = derivation(
    "energy that a reactive load returns in one half cycle: the integral of m i over the"
    " angle between voltage and current, checked by numeric integration"
)
PUMPING_TREND = Source(
    "International Rectifier, IRAUDAMP7D reference design, rev. 2.9",
    "p. 26: pumping grows with lower frequency, higher output, lower load and smaller capacitors",
)


def worst_depth(m_max: float, phase: float) -> float:
    """Modulation depth at which a half bridge pumps most [1].

    m_max: largest depth in use [1]; phase: of the load impedance [rad].
    The charge goes with M (4 - pi M cos phase), which peaks at 2 / (pi cos phase).

    >>> round(worst_depth(0.95, 0.0), 4)
    0.6366
    >>> worst_depth(0.5, 0.0)
    0.5
    """
    return smaller(m_max, 2 / (PI * cos(phase)))


def half_bridge_rise(v: float, m: float, phase: float, f: float, z: float, c: float) -> float:
    """Rise of ONE rail in a half cycle [V], small against the rail.

    v: half the swing of the node, ONE rail of a split supply or half a single one [V];
    m: depth [1]; phase: of the load [rad]; f: audio frequency [Hz]; z: modulus of the
    load [ohm]; c: all capacitance from ONE rail to ground [F].
    Valid for f far below the carrier and a supply that sinks nothing.  Source: derived;
    the example is a row of a switched simulation (20 kHz carrier).

    >>> round(half_bridge_rise(35.0, 0.5, 0.0, 20.0, 4.0, 1000e-6), 2)
    21.14
    """
    return m * v * (4 - PI * m * cos(phase)) / (8 * PI * f * z * c)


def bridge_rise(v: float, m: float, phase: float, f: float, z: float, c: float) -> float:
    """Rise of the rail when the load returns its energy to a full bridge [V].

    v: largest load voltage, the swing of one node [V]; other symbols as above.
    Nothing with a resistive load; most at full depth.  Source: derived.
    Units: v [V], m [1], phase [rad], f [Hz], z [ohm], c [F]; returns [V].

    >>> round(bridge_rise(48.0, 0.9, PI / 3, 50.0, 4.0, 1e-3), 3)
    5.297
    """
    return m**2 * v * (sin(phase) - phase * cos(phase)) / (4 * PI * f * z * c)


def net_phase(
    phase: float, p_drawn: float, v_rail: float, v: float, m_max: float, v_limiter: float, z: float
) -> float:
    """Phase of a load that would return to an idle rail what a bridge returns net.

    phase [rad], z [ohm]: of the load; p_drawn [W]: what else draws from the rail all the time;
    v_rail, v [V]: rail and largest load voltage; m_max [1]; v_limiter [V].  The bridge returns
    (m i / 2) (cos u - cos phase) while that is positive, i = m v / z; less p_drawn / v_rail it is
    the same with cos phase + 2 p_drawn / (v_rail m i) in place of cos phase.
    Source: derived; the tests integrate the current of the rail.
    Units: phase [rad], p_drawn [W], v_rail [V], v [V], m_max [1], v_limiter [V], z [ohm];
    returns [1].

    >>> round(net_phase(PI / 3, 18.0, 48.0, 48.0, 1.0, 1e9, 4.0), 4)
    0.9734
    """
    m = smaller(m_max, v_limiter / v)
    share = cos(phase) + 2 * p_drawn * z / (v_rail * m**2 * v)
    return PI / 2 - asin(smaller(share, 1.0))


def held_rise(rise: float, v_supply: float) -> float:
    """Rise of the rail when it is not small and feedback holds the output [V].

    rise: the small-rise figure [V]; v_supply: both rails together, or the single one [V].
    A higher rail shortens the pulse that pumps it: (v_supply + x) dx = v_supply d rise.
    Source: derived; the example is a row of a switched simulation.

    >>> round(held_rise(31.663, 100.0), 2)
    27.8
    """
    return v_supply * ((1 + 2 * rise / v_supply) ** 0.5 - 1)


def channel_rise(
    n_legs: float, v: float, m_max: float, phase: float, f: float, z: float, c: float
) -> float:
    """Small-rise pumping of one channel at its worst depth [V], of either topology.

    n_legs: 1 half bridge, 2 full bridge; v: largest load voltage [V]; others as above.
    Units: n_legs [1], v [V], m_max [1], phase [rad], f [Hz], z [ohm], c [F]; returns [V].

    >>> round(channel_rise(1, 50.0, 0.95, 0.0, 20.0, 4.0, 4700e-6), 3)
    6.737
    """
    if n_legs == 2:
        return bridge_rise(v, m_max, phase, f, z, c)
    return half_bridge_rise(v, worst_depth(m_max, phase), phase, f, z, c)


def offset_current(v_dc: float, r: float, v_rail: float) -> float:
    """Mean current that a steady output voltage drives back into the other rail [A].

    v_dc: output offset, magnitude [V]; r: DC resistance of the load [ohm]; v_rail: ONE
    rail of a split supply [V].  Source: derived.

    >>> round(offset_current(2.0, 1.0, 75.0), 2)
    0.97
    """
    return v_dc / (2 * r) * (1 - v_dc / v_rail)


def signs_of(n_legs: tuple[float, ...], channel_phase: str) -> list[int]:
    """Sign with which each channel loads one rail: every second one reversed if opposite.

    Units: n_legs [1], channel_phase [word]; returns [1].

    >>> signs_of((1, 1, 1), "opposite")
    [1, -1, 1]
    """
    return [-1 if channel_phase == "opposite" and k % 2 else 1 for k in range(len(n_legs))]


def pumping(
    n_legs: tuple[float, ...],
    v: tuple[float, ...],
    m_max: tuple[float, ...],
    v_limiter: tuple[float, ...],
    phase: tuple[float, ...],
    f: tuple[float, ...],
    z: tuple[float, ...],
    c: float,
    channel_phase: str,
    v_rail: float,
    rail_count: float,
) -> float:
    """Rise [V] of ONE rail by all channels together, each at its own lowest frequency.

    Tuples over the channels: n_legs; v largest load voltage [V]; m_max; v_limiter peak
    limit at the load [V]; phase [rad]; f [Hz]; z [ohm].  c: ONE rail [F]; channel_phase:
    ``in-phase`` or ``opposite`` bass of the half bridges, or ``alone``, the channel that
    pumps most with the others silent; v_rail: ONE rail [V]; rail_count: 1 or 2.  In
    opposition one half bridge draws from the rail that the other pumps; the difference of
    the two is an upper bound.
    Units: n_legs [1], v [V], m_max [1], v_limiter [V], phase [rad], f [Hz], z [ohm], c [F],
    channel_phase [word], v_rail [V], rail_count [1]; returns [V].

    >>> one = ((1,), (50.0,), (0.95,), (1e9,), (0.0,), (20.0,), (4.0,))
    >>> round(pumping(*one, 1000e-6, "in-phase", 50.0, 2), 2)
    27.8
    """
    rises = [
        (sign if n == 1 else 1) * channel_rise(n, vk, smaller(mk, lk / vk), pk, fk, zk, c)
        for sign, n, vk, mk, lk, pk, fk, zk in zip(
            signs_of(n_legs, channel_phase), n_legs, v, m_max, v_limiter, phase, f, z, strict=True
        )
    ]
    together = largest(rises) if channel_phase == "alone" else sum(rises[1:], rises[0])
    return held_rise(larger(together, -together), rail_count * v_rail)


def pumping_unless_sunk(
    n_legs: tuple[float, ...],
    v: tuple[float, ...],
    m_max: tuple[float, ...],
    v_limiter: tuple[float, ...],
    phase: tuple[float, ...],
    f: tuple[float, ...],
    z: tuple[float, ...],
    c: float,
    channel_phase: str,
    v_rail: float,
    rail_count: float,
    sinks: str,
) -> float:
    """The same, or nothing where the source takes the returned energy (sinks: yes).

    Units: n_legs [1], v [V], m_max [1], v_limiter [V], phase [rad], f [Hz], z [ohm], c [F],
    channel_phase [word], v_rail [V], rail_count [1], sinks [word]; returns [V].
    """
    if sinks == "yes":
        return 0 * v_rail
    return pumping(n_legs, v, m_max, v_limiter, phase, f, z, c, channel_phase, v_rail, rail_count)


def limited_by_trip(v_rail: float, rise: float, v_trip: float) -> float:
    """Highest voltage of ONE rail [V]: a trip ends the pumping, not what the source gives.

    v_rail: highest without pumping; rise: by pumping; v_trip: over-voltage trip [V].
    Units: v_rail [V], rise [V], v_trip [V]; returns [V].

    >>> limited_by_trip(45.0, 12.0, 50.0)
    50.0
    >>> limited_by_trip(45.0, 12.0, 40.0)
    45.0
    """
    return smaller(v_rail + rise, larger(v_rail, v_trip))
