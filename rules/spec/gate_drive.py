"""What drives the gates of a channel's switches."""

from typing import Literal

from ...linter.declare import Section, Value, absent, favourable, quantity, section, usually, word
from .designs import DISCRETE


class Regulator(Section):
    """Regulator that makes the gate supply from the rail."""

    type: str | None = word(
        ("linear", "switching", "separate"),
        "kind of regulator; separate: a supply of its own, not fed by the rail",
        nature="topology",
    )
    i_other: Value | None = quantity(
        "A",
        "current that the regulator delivers to other loads than the gates",
        "0 or 1 .. 900 mA",
        default=favourable("0 A"),
        nature="use",
    )
    v_clamp: Value | None = quantity(
        "V",
        "highest voltage that a clamp behind the regulator lets the gates get; default: no clamp",
        "4.5 .. 25 V",
        given="max",
        default=absent(float("inf")),
        example="16 V",
    )
    r_th_ja: Value | None = quantity(
        "K/W", "regulator: junction to the air in the box", "10 .. 250 K/W", given="typ"
    )
    t_j_max: Value | None = quantity(
        "degC",
        "regulator: highest junction temperature",
        "100 .. 175 degC",
        possible="0 .. 700 degC",
        given="max",
        example="125 degC",
    )


class Bootstrap(Section):
    """Bootstrap supply of ONE high-side switch."""

    c: Value | None = quantity(
        "F",
        "bootstrap capacitor of ONE high-side switch",
        "0.03 .. 25 uF",
        given="tol",
        concerns=DISCRETE,
        also="2 .. 30 nF or 25 .. 100 uF",  # small gates; slow self-oscillators
    )
    v_f: Value | None = quantity(
        "V",
        "drop of the bootstrap diode while it recharges",
        "0.2 .. 2 V",
        given="typ",
        concerns=DISCRETE,
        default=usually("1 V"),
        example="0.7 V",
    )
    r: Value | None = quantity(
        "ohm",
        "resistance of the refill path, diode apart",
        "0 or 0.5 .. 100 ohm",
        concerns=DISCRETE,
        default=favourable("0 ohm"),
    )
    i_q: Value | None = quantity(
        "A",
        "current of the floating supply: quiescent, level shift and leakage",
        "5 .. 4000 uA",
        given="max",
        concerns=DISCRETE,
        also="4 .. 20 mA",  # drivers with logic on the floating side
    )
    v_uvlo: Value | None = quantity(
        "V",
        "floating supply below which the driver locks out",
        "2 .. 15 V",
        given="line",
        concerns=DISCRETE,
        example="7.2 V",
    )
    v_clamp: Value | None = quantity(
        "V",
        "highest voltage that a clamp lets the floating supply reach; default: no clamp",
        "4.5 .. 25 V",
        given="max",
        concerns=DISCRETE,
        default=absent(float("inf")),
        example="5.2 V",
    )
    v_r: Value | None = quantity(
        "V",
        "reverse voltage rating of the bootstrap diode; default: inside the driver",
        "8 .. 1200 V",
        given="max",
        concerns=DISCRETE,
        example="200 V",
    )
    t_rr: Value | None = quantity(
        "s",
        "recovery time of the bootstrap diode",
        "2 .. 1900 ns",
        given="typ",
        concerns=DISCRETE,
        example="35 ns",
    )
    start: str | None = word(
        ("low-side-first", "charge-resistor", "none"),
        "what charges the capacitor before the upper switch is first turned on",
        concerns=DISCRETE,
        nature="topology",
    )
    refresh: str | None = word(
        ("forced-off-time", "charge-pump", "none"),
        "what recharges the capacitor while the output is clipped",
        concerns=DISCRETE,
        nature="topology",
    )


class GateDrive(Section):
    """Gate supply, gate resistors, driver, dead time."""

    v_drv: Value | None = quantity(
        "V",
        "gate supply at the driver",
        "3 .. 20 V",
        given="tol",
        concerns=DISCRETE,
        default=usually("12 V"),
        example="11 V ± 5 %",
        nature="setting",
    )
    r_g_on: Value | None = quantity(
        "ohm",
        "external resistance in the turn-on path of ONE device; 0 ohm: none fitted",
        "0 or 0.5 .. 220 ohm",
        given="tol",
        concerns=DISCRETE,
    )
    r_g_off: Value | None = quantity(
        "ohm",
        "external resistance in the turn-off path of ONE device; 0 ohm: none fitted",
        "0 or 0.5 .. 220 ohm",
        given="tol",
        concerns=DISCRETE,
    )
    i_source: Value | None = quantity(
        "A",
        "peak current of the driver at turn-on; v_drv over it is its resistance; default: no"
        " resistance",
        "0.05 .. 30 A",
        given="line",
        concerns=DISCRETE,
        default=favourable(float("inf")),
    )
    i_sink: Value | None = quantity(
        "A",
        "peak current of the driver at turn-off; v_drv over it is its resistance; default: no"
        " resistance",
        "0.05 .. 30 A",
        given="line",
        concerns=DISCRETE,
        default=favourable(float("inf")),
    )
    dead_time: Value | None = quantity(
        "s",
        "ONE leg: from the off-command of one switch to the on-command of the other",
        "0 or 1 .. 900 ns",
        given="line",
        concerns=DISCRETE,
        example="{min: 40 ns, typ: 45 ns}",
        nature="setting",
    )
    delay_mismatch: Value | None = quantity(
        "s",
        "ONE leg: largest difference between the delays of its two drivers",
        "0 or 0.5 .. 200 ns",
        given="max",
        concerns=DISCRETE,
        default=favourable("0 s"),
        nature="outcome",
    )
    v_gs_ringing: Value | None = quantity(
        "V",
        "ringing on the gate above v_drv, peak; default: 10 % of v_drv",
        "0 or 0.1 .. 20 V",
        concerns=DISCRETE,
        nature="outcome",
    )
    v_node_negative: Value | None = quantity(
        "V",
        "driver: how far below its ground the switch node may go, magnitude",
        "0.3 .. 30 V",
        given="max",
        concerns=DISCRETE,
    )
    cmti: Value | None = quantity(
        "V/ns",
        "driver: largest slope of the switch node that it withstands",
        "2 .. 300 V/ns",
        given="max",
        concerns=DISCRETE,
    )
    t_pulse_min: Value | None = quantity(
        "s",
        "shortest on- or off-pulse that modulator and driver pass; default: from the dead time",
        "5 .. 2000 ns",
        given="max",
        nature="outcome",
    )
    c_reservoir: Value | None = quantity(
        "F",
        "capacitor on the gate supply that refills the bootstrap capacitor",
        "0.1 .. 90 uF",
        given="tol",
        concerns=DISCRETE,
        also="90 .. 2200 uF",  # supplies with the reservoir counted in
    )
    v_floating: Value | None = quantity(
        "V",
        "driver: highest voltage of its floating supply pin against its ground",
        "8 .. 1200 V",
        given="max",
        concerns=DISCRETE,
        example="200 V",
    )
    floating_supply: str | None = word(
        ("isolated", "charge-pump", "p-channel", "none"),
        "what supplies the upper gate in place of a bootstrap; a supply of its own, a charge"
        " pump, or nothing since the upper switch is a p-channel one",
        concerns=DISCRETE,
        nature="topology",
    )
    regulator: Regulator | Literal["none"] | None = section(
        Regulator, part="regulator of the gate supply", can_be_none=True
    )
    bootstrap: Bootstrap | Literal["none"] | None = section(
        Bootstrap, part="bootstrap supply", can_be_none=True, concerns=DISCRETE
    )
