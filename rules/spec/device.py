"""A discrete switch or an integrated power stage, as its data sheet prints it."""

from ...linter.check import from_memory
from ...linter.declare import (
    Section,
    Value,
    absent,
    count,
    favourable,
    quantity,
    section,
    text,
    usually,
    word,
)
from .designs import DISCRETE, INTEGRATED, NO_HEATSINK, UNFILTERED
from .foster import FosterStage


class Device(Section):
    """ONE switch before paralleling, or one integrated part; thermal rows: ONE package."""

    part: str | None = text("type number, for the reader only", example="XYZ1234")
    switches_per_package: Value | None = count(
        "switches, of all channels, inside ONE package; default: 1 if discrete, else the channel's",
        "1 .. 16",
        nature="topology",
    )
    v_dss: Value | None = quantity(
        "V", "drain-source voltage rating", "12 .. 900 V", given="max", concerns=DISCRETE
    )
    v_gss: Value | None = quantity(
        "V",
        "gate-source voltage rating, positive side",
        "5 .. 40 V",
        given="max",
        concerns=DISCRETE,
        example="20 V",
    )
    i_d: Value | None = quantity(
        "A",
        "drain current rating, continuous, case at 25 degC",
        "1 .. 400 A",
        given="max",
        concerns=DISCRETE,
    )
    i_dm: Value | None = quantity(
        "A", "drain current rating, pulsed", "2 .. 1500 A", given="max", concerns=DISCRETE
    )
    e_as: Value | None = quantity(
        "J",
        "rated energy of a single avalanche pulse",
        "3 .. 2900 mJ",
        given="max",
        concerns=DISCRETE,
        also="0.02 .. 3 mJ",  # small dies
    )
    r_ds_on: Value | None = quantity(
        "ohm",
        "on-resistance of ONE switch, junction at 25 degC",
        "1 .. 900 mohm",
        given="line",
        example="{typ: 8 mohm, max: 11 mohm}",
        also="0.9 .. 5 ohm",  # battery parts
    )
    r_ds_on_at: str | None = word(
        ("pins", "die"),
        "what r_ds_on is printed for: pin to pin, or without metal and bonds of the package",
        concerns=INTEGRATED,
        default=usually("pins"),
    )
    r_ds_on_hot_factor: Value | None = quantity(
        "1",
        "on-resistance at a junction of 150 degC over that at 25 degC",
        "1.2 .. 2.6",
        given="typ",
        default=usually("1.8", from_memory("data sheets of silicon MOSFETs up to 200 V")),
        example="1.75",
        nature="outcome",
    )
    v_gs_on: Value | None = quantity(
        "V",
        "gate voltage for which r_ds_on is printed",
        "2 .. 15 V",
        given="line",
        concerns=DISCRETE,
        example="10 V",
    )
    v_gs_pl: Value | None = quantity(
        "V",
        "plateau of the gate-charge curve; default: 0.4 of the gate supply",
        "1 .. 10 V",
        given="line",
        concerns=DISCRETE,
        example="4.1 V",
    )
    v_gs_th: Value | None = quantity(
        "V", "gate threshold, junction at 25 degC", "0.5 .. 6 V", given="line", concerns=DISCRETE
    )
    v_gs_th_fall: Value | None = quantity(
        "V/K",
        "fall of the gate threshold per kelvin",
        "2 .. 15 mV/K",
        given="typ",
        concerns=DISCRETE,
    )
    q_g: Value | None = quantity(
        "C",
        "total gate charge up to v_drv",
        "1 .. 500 nC",
        given="line",
        concerns=DISCRETE,
        example="{typ: 14 nC, max: 19 nC}",
        also="0.05 .. 1 nC",  # gallium nitride
    )
    q_gd: Value | None = quantity(
        "C",
        "gate-drain charge; stands in for q_sw and q_sw for it",
        "0.2 .. 150 nC",
        given="line",
        concerns=DISCRETE,
        also="0.01 .. 0.2 nC",  # gallium nitride
    )
    q_sw: Value | None = quantity(
        "C",
        "gate charge from threshold to the end of the plateau; stands in for q_gd",
        "0.2 .. 190 nC",
        given="line",
        concerns=DISCRETE,
    )
    q_g_th: Value | None = quantity(
        "C", "gate charge up to the threshold", "0.2 .. 150 nC", given="line", concerns=DISCRETE
    )
    r_g_int: Value | None = quantity(
        "ohm",
        "gate resistance inside the device",
        "0.3 .. 30 ohm",
        given="typ",
        concerns=DISCRETE,
        default=favourable("0.01 ohm"),
    )
    c_iss: Value | None = quantity(
        "F",
        "input capacitance",
        "50 .. 20000 pF",
        given="typ",
        concerns=DISCRETE,
        also="5 .. 50 pF",  # gallium nitride
    )
    c_oss: Value | None = quantity(
        "F",
        "output capacitance at the drain voltage v_c_oss",
        "20 .. 9000 pF",
        given="typ",
        concerns=DISCRETE,
        default=favourable("0 F"),
        also="2 .. 20 pF",  # gallium nitride
    )
    q_oss: Value | None = quantity(
        "C",
        "output charge at the drain voltage v_c_oss; default: from c_oss",
        "1 .. 900 nC",
        given="typ",
        concerns=DISCRETE,
        also="0.1 .. 1 nC",  # gallium nitride
    )
    v_c_oss: Value | None = quantity(
        "V",
        "drain voltage for which c_oss and q_oss are printed",
        "5 .. 800 V",
        given="typ",
        concerns=DISCRETE,
    )
    q_rr: Value | None = quantity(
        "C",
        "recovery charge of the diode, as printed; 0 nC: none",
        "0 or 2 .. 1900 nC",
        given="typ",
        default=favourable("0 nC"),
    )
    v_sd: Value | None = quantity(
        "V",
        "drop of the diode, or in reverse, at working current",
        "0.5 .. 4 V",
        given="typ",
        default=usually("1 V"),
    )
    t_d_on: Value | None = quantity(
        "s",
        "turn-on delay as printed, behind r_g_test",
        "1 .. 500 ns",
        given="line",
        concerns=DISCRETE,
    )
    t_r: Value | None = quantity(
        "s", "rise time as printed, behind r_g_test", "1 .. 500 ns", given="line", concerns=DISCRETE
    )
    t_d_off: Value | None = quantity(
        "s",
        "turn-off delay as printed, behind r_g_test",
        "1 .. 500 ns",
        given="line",
        concerns=DISCRETE,
    )
    t_f: Value | None = quantity(
        "s", "fall time as printed, behind r_g_test", "1 .. 500 ns", given="line", concerns=DISCRETE
    )
    r_g_test: Value | None = quantity(
        "ohm",
        "gate resistance behind the printed times; default: the times are taken as printed",
        "0 or 0.5 .. 100 ohm",
        concerns=DISCRETE,
    )
    t_j_max: Value | None = quantity(
        "degC",
        "absolute maximum of the junction temperature",
        "100 .. 200 degC",
        given="max",
        example="150 degC",
    )
    r_th_jc: Value | None = quantity(
        "K/W",
        "junction to case of ONE package, all its switches heated",
        "0.05 .. 40 K/W",
        given="max",
    )
    r_th_cs: Value | None = quantity(
        "K/W",
        "case to heatsink of ONE package, all its switches heated, insulator included",
        "0 or 0.02 .. 9 K/W",
        given="max",
        default=favourable("0 K/W"),
    )
    r_th_ja: Value | None = quantity(
        "K/W",
        "junction to the air in the box, ONE package without heatsink on this board",
        "5 .. 200 K/W",
        given="typ",
        concerns=NO_HEATSINK,
    )
    psi_jt: Value | None = quantity(
        "K/W",
        "ONE package on its board: junction over the middle of its top, all its heat",
        "0.05 .. 40 K/W",
        given="typ",
    )
    psi_jb: Value | None = quantity(
        "K/W",
        "ONE package on its board: junction over the board 1 mm beside it, all its heat",
        "0.5 .. 60 K/W",
        given="typ",
    )
    foster: tuple[FosterStage, ...] | None = section(FosterStage, kind="sections", default=absent())
    v_supply: Value | None = quantity(
        "V",
        "recommended supply of the part, pin to pin, lowest to highest",
        "1.8 .. 150 V",
        given="range",
        concerns=INTEGRATED,
        example="8 V .. 28 V",
    )
    v_supply_abs: Value | None = quantity(
        "V",
        "absolute maximum supply of the part, pin to pin",
        "1.8 .. 150 V",
        given="max",
        concerns=INTEGRATED,
        example="34 V",
    )
    load_min: Value | None = quantity(
        "ohm",
        "lowest rated load that the part allows in this connection",
        "1 .. 32 ohm",
        given="max",
        concerns=INTEGRATED,
        example="3 ohm",
        also="32 .. 600 ohm",  # headphone parts
    )
    l_min: Value | None = quantity(
        "H",
        "least inductance that the part needs at its trip current",
        "0.5 .. 100 uH",
        given="max",
        concerns=INTEGRATED,
    )
    c_bootstrap: Value | None = quantity(
        "F",
        "bootstrap capacitor that the part specifies",
        "0.01 .. 9 uF",
        concerns=INTEGRATED,
        also="1 .. 10 nF or 9 .. 50 uF",  # fast and slow carriers
    )
    lead_max: Value | None = quantity(
        "m",
        "longest loudspeaker lead that the part allows; default: from the edge time",
        "0.02 .. 10 m",
        given="max",
        concerns=UNFILTERED,
    )
