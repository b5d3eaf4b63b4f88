"""Heat from the junctions to the air: one network for all channels, solved at once.

Plain functions on SI floats or arrays.  Symbols and units stand in brackets.
"""

from typing import NamedTuple

from .dissipation import T_COLD
from .enclosure import Walls, wall_rise_and_slope
from .maths import at_rest, choose, clip, larger, smaller

T_CEILING = 1000.0
"""Where a runaway is stopped [K]; far above what any junction stands."""

STEPS = 12
"""Newton steps of the network; the tests compare with a root finder."""

AT_REST = 1e-8
"""Newton steps below this [K] have converged to the digits of a float."""

UNSETTLED = 0.1
"""A network that is still this far from balance [K] after all steps has no balance."""


class ChannelHeat(NamedTuple):
    """Heat of one channel at one drive.

    switches [W]: heat of the switches that does not depend on their temperature;
    conduction [W]: heat of their on-resistance, were it at 25 degC; exponent: how that
    rises with absolute temperature; elsewhere [W]: heat of the inductors; p_out [W].
    """

    switches: float
    conduction: float
    exponent: float
    elsewhere: float
    p_out: float


class Sink(NamedTuple):
    """Where the packages give their heat.

    r [K/W]: all heatsinks together to the air round them (0 without heatsink: the packages
    sit in the inside air); t_held [K]: heatsink at a known temperature, None when solved;
    outside: whether the heatsink stands in the outer air.
    """

    r: float
    t_held: float | None
    outside: bool


class Air(NamedTuple):
    """The air of the parts: held at a temperature [K], in a box, or open to ambient."""

    t_ambient: float
    t_held: float | None
    box: Walls | None


class Solution(NamedTuple):
    """Temperatures [K] and heat [W] of a product at one drive.

    t_reference: heatsink, or inside air where there is no heatsink; r_shared [K/W]: how
    far that temperature moves with one watt more in the switches; heat_in_box: taken up
    by the inside air.
    """

    t_air_inside: float
    t_reference: float
    t_junction: tuple[float, ...]
    r_shared: float
    heat_in_box: float


class Balance(NamedTuple):
    """Where a step has led: temperatures [K], heat [W], and how far it is from balance [K]."""

    t_air: float
    t_reference: float
    r_shared: float
    heat_in_box: float
    off_balance: float


def switch_heat(heat: ChannelHeat, t_junction: float) -> tuple[float, float]:
    """Heat of all switches of a channel [W], and how it rises with temperature [W/K].

    Units: heat [bundle], t_junction [K]; returns [W].
    """
    conduction = heat.conduction * (t_junction / T_COLD) ** heat.exponent
    return heat.switches + conduction, conduction * heat.exponent / t_junction


def junction_step(
    t_junction: float, t_reference: float, heat: ChannelHeat, r_own: float
) -> tuple[float, float, float]:
    """One Newton step of a junction over a given heatsink or air.

    r_own [K/W]: junction over that reference for one watt in the channel.  Gives the
    junction [K], the heat of the channel's switches [W] and how that moves with the
    reference [W/K].
    Heat is convex in temperature, so from below the steps never pass the solution.
    Units: t_junction [K], t_reference [K], heat [bundle], r_own [K/W]; returns [K].
    """
    power, slope = switch_heat(heat, t_junction)
    room = larger(1 - r_own * slope, 0.02)
    step = (t_reference + r_own * power - t_junction) / room
    t_next = clip(t_junction + step, smaller(t_reference, t_junction), T_CEILING)
    return t_next, power + slope * (t_next - t_junction), slope / room


def junction_over(t_reference: float, heat: ChannelHeat, r_own: float) -> float:
    """Junction temperature over a heatsink held at a temperature.

    t_reference [K]; r_own [K/W]: junction over heatsink for one watt in the channel's
    switches; gives [K].  Example: four packages share 24 W, 1.2 + 0.5 K/W each, over
    88.00 degC: 98.20 degC.
    Units: t_reference [K], heat [bundle], r_own [K/W]; returns [K].

    >>> heat = ChannelHeat(24.0, 0.0, 1.0, 0.0, 0.0)
    >>> round(junction_over(361.15, heat, 1.7 / 4) - 273.15, 2)
    98.2
    """
    t_junction = t_reference
    for _ in range(STEPS):
        t_junction = junction_step(t_junction, t_reference, heat, r_own)[0]
    return t_junction


def solve(
    air: Air,
    sink: Sink,
    heats: tuple[ChannelHeat, ...],
    r_own: tuple[float, ...],
    p_other: float,
    converter_share: float,
) -> Solution:
    """Inside air, heatsink and all junctions of a product together.

    r_own [K/W]: for each channel, junction over heatsink (over inside air where there is
    no heatsink) for one watt in its switches; p_other [W]: other heat set free in the
    box; converter_share: heat of the converter over the power that it delivers.
    Newton steps until nothing moves, at most a fixed number; a runaway ends at
    ``T_CEILING``.
    Valid in the steady state with one heatsink temperature and one inside air.
    Source: heat balance of the network; thermal resistances add as electrical ones do.
    Units: air [bundle], sink [bundle], heats [bundle], r_own [K/W], p_other [W],
    converter_share [1]; returns [bundle].
    """
    coldest = air.t_ambient if air.t_held is None else smaller(air.t_held, air.t_ambient)
    start = coldest if sink.t_held is None else sink.t_held
    balance = Balance(start, start, 0.0, 0.0, 0.0 * start)
    junctions = [start for _ in heats]
    for _ in range(STEPS):
        before = (balance.t_reference, *junctions)
        power, follow = 0.0, 0.0
        for number, heat in enumerate(heats):
            junctions[number], channel_power, channel_follow = junction_step(
                junctions[number], balance.t_reference, heat, r_own[number]
            )
            power, follow = power + channel_power, follow + channel_follow
        heat_in_box = _heat_in_box(sink, heats, power, p_other, converter_share)
        balance = _reference_step(
            balance.t_reference, air, sink, power, follow, heat_in_box, converter_share
        )
        balance = balance._replace(t_reference=larger(balance.t_reference, coldest))
        if at_rest(before, (balance.t_reference, *junctions), AT_REST):
            break
    return _settled(balance, tuple(junctions), heats, r_own)


def _heat_in_box(
    sink: Sink, heats: tuple[ChannelHeat, ...], power: float, p_other: float, converter_share: float
) -> float:
    """Heat that the inside air takes up; ``power`` is that of all switches."""
    elsewhere = sum(heat.elsewhere for heat in heats)
    delivered = sum(heat.p_out for heat in heats) + elsewhere + power
    from_sink = 0.0 if sink.outside else power
    return from_sink + elsewhere + p_other + converter_share * delivered


def _reference_step(
    t_reference: float,
    air: Air,
    sink: Sink,
    power: float,
    follow: float,
    heat_in_box: float,
    converter_share: float,
) -> Balance:
    """One Newton step of the heatsink, or of the inside air where there is none.

    follow [W/K]: how the heat of all switches moves with the reference.
    """
    t_air, r_air = _air_inside(heat_in_box, air)
    if sink.t_held is not None:
        return Balance(t_air, sink.t_held, 0.0, heat_in_box, 0.0 * t_air)
    base = air.t_ambient if sink.outside else t_air
    r_shared = sink.r if sink.outside else sink.r + r_air * (1 + converter_share)
    off = base + sink.r * power - t_reference
    t_next = smaller(t_reference + off / larger(1 - r_shared * follow, 0.05), T_CEILING)
    return Balance(t_air, t_next, r_shared, heat_in_box, abs(off))


def _settled(
    balance: Balance,
    junctions: tuple[float, ...],
    heats: tuple[ChannelHeat, ...],
    r_own: tuple[float, ...],
) -> Solution:
    """The solution, or the ceiling where the steps have found no balance."""
    off = balance.off_balance
    for t, heat, r in zip(junctions, heats, r_own, strict=True):
        off = larger(off, abs(balance.t_reference + r * switch_heat(heat, t)[0] - t))
    run_away = off > UNSETTLED
    return Solution(
        balance.t_air,
        choose(run_away, T_CEILING, balance.t_reference),
        tuple(choose(run_away, T_CEILING, t) for t in junctions),
        balance.r_shared,
        balance.heat_in_box,
    )


def _air_inside(in_box: float, air: Air) -> tuple[float, float]:
    """Inside air [K], and how that moves with heat [K/W]."""
    if air.t_held is not None:
        return air.t_held, 0.0
    if air.box is None:
        return air.t_ambient, 0.0
    rise, slope = wall_rise_and_slope(in_box, air.t_ambient, air.box)
    share = air.box.air_share
    t_air = air.t_ambient + share * (rise + in_box / air.box.film)
    return t_air, share * (1 / slope + 1 / air.box.film)
