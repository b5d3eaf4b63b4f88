"""The output stage of a channel: its legs, their power loop, what guards them."""

from typing import ClassVar, Literal

from ...linter.declare import (
    Nature,
    Section,
    Value,
    absent,
    count,
    favourable,
    quantity,
    section,
    word,
)
from .designs import INTEGRATED
from .device import Device
from .trade_sizes import DEVICES_CALLED, TOPOLOGIES


class Snubber(Section):
    """Series R-C from ONE switch node to a rail or to ground."""

    c: Value | None = quantity(
        "F",
        "capacitor of the snubber at ONE switch node",
        "47 .. 10000 pF",
        given="tol",
        also="10 .. 47 pF or 10 .. 100 nF",  # gallium nitride; slow switches
    )
    r: Value | None = quantity(
        "ohm", "resistor of the snubber at ONE switch node", "0.5 .. 100 ohm", given="tol"
    )
    p_rated: Value | None = quantity(
        "W", "power rating of the resistor of ONE snubber", "0.1 .. 20 W", given="max"
    )
    v_rated: Value | None = quantity(
        "V",
        "rated direct voltage of the capacitor of ONE snubber",
        "6 .. 2000 V",
        given="max",
        example="200 V",
    )


class OverCurrent(Section):
    """Over-current protection of ONE channel."""

    guards: ClassVar[bool] = True
    nature: ClassVar[Nature] = "setting"

    i_trip: Value | None = quantity(
        "A",
        "peak of the load current at which it trips, sensor at 25 degC",
        "0.5 .. 200 A",
        also="50 .. 500 mA",  # of a headphone output
        given="line",
        example="{min: 8 A, typ: 9 A, max: 10 A}",
    )
    t_response: Value | None = quantity(
        "s",
        "from crossing i_trip until the switches are off",
        "20 .. 10000 ns",
        also="10 .. 50000 us",  # a limiter of the mean current
        given="line",
    )
    t_retry: Value | None = quantity(
        "s",
        "from the trip until the next try; default: it stays off",
        "5 .. 4500 ms",
        given="line",
        default=favourable(float("inf")),
        also="1 .. 5000 us or 4.5 .. 60 s",  # cycle by cycle; slow restarts
    )
    sensing: str | None = word(
        ("shunt", "r-ds-on", "internal"),
        "what senses the current; default: inside an integrated stage",
        nature="topology",
    )


class EfficiencyPoint(Section):
    """One point of the efficiency curve of ONE channel with its filter, sine."""

    power: Value | None = quantity(
        "W",
        "output power of ONE channel at this point of the curve",
        "0.5 .. 450 W",
        also="0.01 .. 3000 W",
        given="typ",
        example="5 W",
    )
    efficiency: Value | None = quantity(
        "%",
        "efficiency of ONE channel with its filter at this power",
        "15 .. 98 %",
        possible="0.1 .. 99.9 %",
        given="typ",
        example="78 %",
    )


class OutputStage(Section):
    """Legs, devices, power loop and losses of ONE channel."""

    topology: str | None = word(
        ("half-bridge", "full-bridge"),
        "one leg and a fixed terminal, or two legs, per channel",
        asked_first="topology",
        nature="topology",
        called=TOPOLOGIES,
    )
    devices: str | None = word(
        ("discrete", "integrated"),
        "separate switches, or a power stage that its data sheet limits as a whole",
        asked_first="devices",
        nature="topology",
        called=DEVICES_CALLED,
    )
    parallel: Value | None = count(
        "devices in parallel that act as one switch; paralleled legs of a part count here",
        "1 .. 8",
        default=absent(1.0),
        nature="topology",
    )
    l_loop: Value | None = quantity(
        "H",
        "inductance of the power loop of ONE leg: both switches, board and local capacitor",
        "0.5 .. 100 nH",
    )
    c_local: Value | None = quantity(
        "F",
        "ONE leg: film or ceramic capacitor close to the switches, rail to rail",
        "0.05 .. 45 uF",
        given="tol",
        also="1 .. 50 nF or 45 .. 10000 uF",  # high frequency alone; bulk counted in
    )
    v_c_local: Value | None = quantity(
        "V", "rated direct voltage of c_local", "6 .. 1000 V", given="max", example="100 V"
    )
    v_overshoot: Value | None = quantity(
        "V",
        "ringing above the rail at turn-off of the full current, peak; default: from l_loop",
        "0.5 .. 100 V",
        nature="outcome",
    )
    t_edge: Value | None = quantity(
        "s",
        "switch-node edge at rated current, 10 % to 90 %; default: from the gate charge",
        "0.5 .. 400 ns",
        nature="outcome",
    )
    r_series: Value | None = quantity(
        "ohm",
        "resistance of the load loop without switches, inductors and lead: sense resistor, board,"
        " bonds",
        "0 or 1 .. 900 mohm",
        default=favourable("0 ohm"),
        also="0.9 .. 5 ohm",  # beads and thin leads
    )
    p_idle: Value | None = quantity(
        "W",
        "idle loss of ONE channel, filter and load on, all its supplies; default: from charges",
        "0.02 .. 19 W",
        given="typ",
        also="0.2 .. 20 mW or 19 .. 200 W",  # shutdown current; high rails
        beats_sum=True,
        nature="outcome",
    )
    i_q: Value | None = quantity(
        "A",
        "supply current of ONE channel of an integrated part, idle, as printed, no filter, no load",
        "1 .. 150 mA",
        given="typ",
        concerns=INTEGRATED,
        example="16 mA",
    )
    p_auxiliary: Value | None = quantity(
        "W",
        "ONE channel: modulator and drivers with what makes their supplies, gate charge and"
        " regulator.i_other apart",
        "0 or 0.02 .. 9 W",
        given="typ",
        example="0.4 W",
    )
    efficiency: Value | None = quantity(
        "%",
        "efficiency of ONE channel with its filter at rated power, data sheet or bench; default:"
        " loss model",
        "60 .. 98 %",
        possible="0.1 .. 99.9 %",
        given="typ",
        example="90 %",
        beats_sum=True,
        nature="outcome",
    )
    efficiency_curve: tuple[EfficiencyPoint, ...] | None = section(
        EfficiencyPoint, part="efficiency curve", kind="sections", default=absent()
    )
    snubber: Snubber | Literal["none"] | None = section(
        Snubber, part="snubber", can_be_none=True, default=absent()
    )
    over_current: OverCurrent | Literal["none"] | None = section(
        OverCurrent, part="over-current protection", can_be_none=True
    )
    device: Device | None = section(Device, part="output devices")
