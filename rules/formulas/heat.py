"""Heat from the junctions to the air: one network for all channels, solved at once.

Plain functions on SI floats or arrays.  Symbols and units stand in brackets.
"""

from collections.abc import Hashable, Sequence
from contextlib import suppress
from itertools import repeat
from typing import NamedTuple

from .dissipation import T_COLD
from .enclosure import Walls, wall_rise_and_slope
from .maths import at_rest, choose, larger, smaller

STEPS = 40
"""Newton steps of the network at most; the tests compare with a root finder."""

AT_REST = 1e-8
"""Newton steps below this [K] have converged to the digits of a float."""

UNKNOWN = float("nan")
PAIR = 2


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

    t_reference: heatsink, or inside air where there is no heatsink; t_junction: where the
    heat would take it, were it not ended; r_shared [K/W]: how far that temperature moves
    with one watt more in the switches; heat_in_box: taken up by the inside air.
    """

    t_air_inside: float
    t_reference: float
    t_junction: tuple[float, ...]
    r_shared: float
    heat_in_box: float


class Balance(NamedTuple):
    """Where a step has led: temperatures [K] and heat [W]; r_air, r_shared [K/W]."""

    t_air: float
    r_air: float
    t_reference: float
    r_shared: float
    heat_in_box: float


def switch_heat(heat: ChannelHeat, t_junction: float, t_end: float) -> tuple[float, float]:
    """Heat of all switches of a channel [W], and how it rises with temperature [W/K].

    t_end [K]: where the part ends its heat, by its own trip or at its absolute limit; no
    data sheet prints an on-resistance beyond, and none is made up here.
    Units: heat [bundle], t_junction [K], t_end [K]; returns [W].

    >>> heat = ChannelHeat(1.0, 2.0, 1.6, 0.0, 0.0)
    >>> switch_heat(heat, 900.0, 423.15) == (switch_heat(heat, 423.15, 423.15)[0], 0.0)
    True
    """
    conduction = heat.conduction * (smaller(t_junction, t_end) / T_COLD) ** heat.exponent
    slope = choose(t_junction < t_end, conduction * heat.exponent / t_junction, 0.0 * conduction)
    return heat.switches + conduction, slope


def junction_step(
    t_junction: float, t_reference: float, heat: ChannelHeat, r_own: float, t_end: float
) -> tuple[float, float, float]:
    """One Newton step of a junction over a given heatsink or air.

    r_own [K/W]: junction over that reference for one watt in the channel.  Gives the
    junction [K], the heat of the channel's switches [W] and how that moves with the
    reference [W/K].
    Heat is convex in temperature up to ``t_end``, so from below the steps never pass a
    solution there; beyond it stays, so that there is always one.
    Units: t_junction [K], t_reference [K], heat [bundle], r_own [K/W], t_end [K]; returns [K].
    """
    power, slope = switch_heat(heat, t_junction, t_end)
    room = larger(1 - r_own * slope, 0.02)
    step = (t_reference + r_own * power - t_junction) / room
    t_next = larger(t_junction + step, smaller(t_reference, t_junction))
    return t_next, power + slope * (t_next - t_junction), slope / room


def junction_over(t_reference: float, heat: ChannelHeat, r_own: float, t_end: float) -> float:
    """Junction temperature over a heatsink held at a temperature.

    t_reference [K]; r_own [K/W]: junction over heatsink for one watt in the channel's
    switches; t_end [K] as in ``switch_heat``; gives [K].  Example: four packages share
    24 W, 1.2 + 0.5 K/W each, over 88.00 degC: 98.20 degC.
    Units: t_reference [K], heat [bundle], r_own [K/W], t_end [K]; returns [K].

    >>> heat = ChannelHeat(24.0, 0.0, 1.0, 0.0, 0.0)
    >>> round(junction_over(361.15, heat, 1.7 / 4, 423.15) - 273.15, 2)
    98.2
    """
    t_junction = t_reference
    for _ in range(STEPS):
        before = t_junction
        t_junction = junction_step(t_junction, t_reference, heat, r_own, t_end)[0]
        if at_rest(before, t_junction, AT_REST):
            break
    return t_junction


def forced_share(air_speed: float, at_reference: float, v_reference: float) -> float:
    """Thermal resistance of a heatsink in moving air over that in still air.

    air_speed [m/s] along the fins; at_reference [1]: the share printed for v_reference [m/s].
    Valid for laminar flow along plates, about 1 .. 5 m/s; never more than 1.
    Source: heat transfer of the laminar flat plate goes as the root of the speed.
    Units: air_speed [m/s], at_reference [1], v_reference [m/s]; returns [1].

    >>> round(forced_share(4.0, 0.435, 2.0), 4)
    0.3076
    """
    return smaller(at_reference * (v_reference / air_speed) ** 0.5, 1.0)


def junction_after(share: float, t_before: float, t_lasting: float, at_once: float) -> float:
    """Junction some time after a programme has become a sine.

    share [1]: 1 - exp(-time / time constant) of what is slow to heat; t_before [K] and
    t_lasting [K]: the two steady states; at_once [K]: rise of the quick part alone, its
    thermal resistance times what is more of heat.
    Valid for one slow and one quick stage; from above where the heat rises on the way.
    Source: step of a single pole between two steady states.
    Units: share [1], t_before [K], t_lasting [K], at_once [K]; returns [K].

    >>> round(junction_after(1 - 2.718281828**-1, 330.0, 430.0, 10.0), 2)
    396.89
    """
    return share * t_lasting + (1 - share) * (t_before + at_once)


def solve(
    air: Air,
    sink: Sink,
    heats: tuple[ChannelHeat, ...],
    r_own: tuple[float, ...],
    t_end: tuple[float, ...],
    p_other: float,
    converter_share: float,
) -> Solution:
    """Inside air, heatsink and all junctions of a product together.

    r_own [K/W]: for each channel, junction over heatsink (over inside air where there is
    no heatsink) for one watt in its switches; t_end [K] of each channel: where the part
    ends its heat, see ``switch_heat``; p_other [W]: other heat set free in the box;
    converter_share: heat of the converter over the power that it delivers.
    Newton steps until nothing moves.  A loop that would run away has its balance beyond
    ``t_end``: it gets there, and that is what matters.
    Valid in the steady state with one heatsink temperature and one inside air.
    Source: heat balance of the network; thermal resistances add as electrical ones do.
    Units: air [bundle], sink [bundle], heats [bundle], r_own [K/W], t_end [K], p_other [W],
    converter_share [1]; returns [bundle].
    """
    coldest = air.t_ambient if air.t_held is None else smaller(air.t_held, air.t_ambient)
    start = coldest if sink.t_held is None else sink.t_held
    balance = Balance(start, 0.0, start, 0.0, UNKNOWN)
    channels = tuple(zip(heats, r_own, t_end, strict=True))
    alike = _first_alike(channels)
    junctions = [start for _ in channels]
    steps = [(start, 0.0, 0.0) for _ in channels]
    elsewhere = sum(heat.elsewhere for heat in heats)
    p_out = sum(heat.p_out for heat in heats)
    for _ in range(STEPS):
        before = (balance.t_reference, *junctions)
        power, follow = 0.0, 0.0
        for number, first in enumerate(alike):
            if first == number:
                heat, r, end = channels[number]
                steps[number] = junction_step(junctions[number], balance.t_reference, heat, r, end)
            junctions[number], channel_power, channel_follow = steps[first]
            power, follow = power + channel_power, follow + channel_follow
        delivered = p_out + elsewhere + power
        from_sink = 0.0 if sink.outside else power
        heat_in_box = from_sink + elsewhere + p_other + converter_share * delivered
        balance = _reference_step(
            balance, coldest, air, sink, power, follow, heat_in_box, converter_share
        )
        after = (balance.t_reference, *junctions)
        if all(map(at_rest, before, after, repeat(AT_REST))):
            break
    return Solution(
        balance.t_air,
        balance.t_reference,
        tuple(junctions),
        balance.r_shared,
        balance.heat_in_box,
    )


def _first_alike(channels: Sequence[Hashable]) -> Sequence[int]:
    """For each of many channels the number of the first one that is the same in all.

    To compare two takes as long as to compute both; arrays cannot be compared as a whole.
    """
    first: dict[Hashable, int] = {}
    if len(channels) > PAIR:
        with suppress(TypeError):
            return [first.setdefault(channel, number) for number, channel in enumerate(channels)]
    return range(len(channels))


def _reference_step(
    before: Balance,
    coldest: float,
    air: Air,
    sink: Sink,
    power: float,
    follow: float,
    heat_in_box: float,
    converter_share: float,
) -> Balance:
    """One Newton step of the heatsink, or of the inside air where there is none.

    coldest [K]: it lies no lower; power [W] and follow [W/K]: heat of all switches, and how
    that moves with the reference; heat_in_box [W]: taken up by the inside air, which stands
    as it was before where this has not moved.
    """
    t_air, r_air = before.t_air, before.r_air
    if not at_rest(before.heat_in_box, heat_in_box, 0.0):
        t_air, r_air = air_inside(heat_in_box, air)
    if sink.t_held is not None:
        return Balance(t_air, r_air, larger(sink.t_held, coldest), 0.0, heat_in_box)
    base = air.t_ambient if sink.outside else t_air
    r_shared = sink.r if sink.outside else sink.r + r_air * (1 + converter_share)
    off = base + sink.r * power - before.t_reference
    t_next = before.t_reference + off / larger(1 - r_shared * follow, 0.05)
    return Balance(t_air, r_air, larger(t_next, coldest), r_shared, heat_in_box)


def air_inside(in_box: float, air: Air) -> tuple[float, float]:
    """Temperature inside [K], and how that moves with heat [K/W].

    in_box [W]: taken up by the inside air.
    Source: wall over ambient from ``wall_rise``, then the film between the air and the wall.
    Units: in_box [W], air [bundle]; returns [K].
    """
    if air.t_held is not None:
        return air.t_held, 0.0
    if air.box is None:
        return air.t_ambient, 0.0
    rise, slope = wall_rise_and_slope(in_box, air.t_ambient, air.box)
    share = air.box.air_share
    t_air = air.t_ambient + share * (rise + in_box / air.box.film)
    return t_air, share * (1 / slope + 1 / air.box.film)
