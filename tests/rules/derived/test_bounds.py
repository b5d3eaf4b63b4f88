"""Statements that bound each other: each pair in both directions.

The bound of each row is worked out beside it; a row of a pair that is not in the catalogue,
or a pair without a row, is a fault.
"""

import re

import pytest

from ampreview.linter.evaluation.catalogue import load
from ampreview.linter.evaluation.graph import Graph
from ampreview.linter.judging.consistency import built_in_findings
from ampreview.linter.reading.loading import load_text

AIR = "environment: {ambient: 0 degC .. 45 degC}\n"
RAIL = "supply: {source: dc-source, rails: single, v_rail: 36 V}\n"


def channel(text: str) -> str:
    """A spec of one channel."""
    return f"channels: {{main: {{rated_power: 50 W, {text}}}}}"


def device(text: str) -> str:
    """A spec of one channel's switches."""
    return channel(f"output_stage: {{devices: discrete, device: {{{text}}}}}")


def cell(chemistry: str, text: str) -> str:
    """A spec of one kind of cell."""
    return (
        channel("gain: 26 dB")
        + f"\nsupply: {{source: battery}}\nbattery: {{chemistry: {chemistry}, cell: {{{text}}}}}"
    )


def trip(text: str) -> str:
    """A spec of a shutdown at low rail, of 36 V."""
    return channel("gain: 26 dB") + f"\nprotection: {{under_voltage: {{v_trip: {text}}}}}"


def choke(text: str) -> str:
    """A spec of one inductor of 10 uH, 12 turns on 65 mm2."""
    rest = text if "l:" in text else f"l: 10 uH, {text}"
    return channel(
        f"filter: {{type: lc, inductor: {{{rest}, turns: 12, a_e: 65 mm2, i_sat: VALUE}}}}"
    )


def driver(basis: str, box: str) -> str:
    """A spec of one loudspeaker of 4 ohm."""
    return channel(
        f"loudspeaker: {{z_rated: 4 ohm, sensitivity: VALUE, sensitivity_basis: {basis},"
        f" enclosure: {{type: {box}}}}}"
    )


def source(text: str) -> str:
    """A spec of one channel of 50 W on a source."""
    return (
        channel("gain: 26 dB")
        + f"\nsupply: {{source: dc-source, rails: single, v_rail: 36 V, {text}}}"
    )


def vehicle(rest: str) -> str:
    """A spec of an amplifier in a vehicle of that voltage."""
    return (
        channel("gain: 26 dB")
        + f"\nsupply: {{source: dc-source, rails: single, v_rail: {rest}, surge: {{v: VALUE}}}}"
        + "\nenvironment: {ambient: 0 degC .. 45 degC, place: vehicle}"
    )


def losses(text: str) -> str:
    """A half-bridge of which gate charge and on-resistance are known."""
    return channel(
        "rated_load: 4 ohm, modulator: {carrier: 400 kHz, type: natural-sampling}, output_stage:"
        f" {{topology: half-bridge, devices: discrete, parallel: 1, {text}, device: {{r_ds_on:"
        " 100 mohm, q_g: 40 nC, v_sd: 0.8 V}}, gate_drive: {v_drv: 12 V, dead_time: 0 ns},"
        " filter: {type: lc, c_ground: none}"
    )


def integrated(text: str) -> str:
    """A bridge of one integrated part into 4 ohm, on 36 V."""
    return channel(
        f"rated_load: 4 ohm, output_stage: {{topology: full-bridge, devices: integrated, {text}}}"
    )


# the suspension moves 0.759 mm/N, the mass is 16.5 g: Q is 2 pi 45 Hz 16.5 g 6 ohm / 7.9^2 = 0.45
MOTOR = channel(
    "loudspeaker: {z_rated: 8 ohm, r_e: 6 ohm, f_s: 45 Hz, v_as: 20 L, s_d: 137 cm2, bl: 7.9 T m,"
    " q_es: VALUE}"
)
WARMED = """
milestone: prototype
environment: {ambient: 0 degC .. 45 degC, altitude: 0 m}
signal: {crest_factor: 12.04 dB}
thermal: {heatsink: {r_th_sa: 20 K/W, place: outside, t: VALUE}}
protection: {over_temperature: {t_trip: 150 degC, at: junction}}
""" + integrated(
    "p_idle: 1 W, efficiency_curve: [{power: 6.25 W, efficiency: 70 %}, {power: 50 W, efficiency:"
    " 85 %}], device: {r_th_jc: 1 K/W, r_th_cs: 0.3 K/W}"
)


def film(which: str, dielectric: str, field: str) -> str:
    """A spec of one filter capacitor."""
    text = f"{which}: {{c: 1 uF, dielectric: {dielectric}, {field}: VALUE}}"
    return channel(f"filter: {{type: lc, {text}}}")


def dirt(text: str) -> str:
    """A spec of a place of use."""
    return channel("gain: 26 dB") + f"\nenvironment: {{{text}, pollution_degree: VALUE}}"


def sensor(at: str, t_trip: str) -> str:
    """A spec of one over-temperature trip."""
    trip = f"{{at: {at}, t_trip: {t_trip}}}"
    return channel("gain: 26 dB") + f"\nprotection: {{over_temperature: {trip}}}"


def contact(text: str) -> str:
    """A spec of what carries the supply."""
    return channel("gain: 26 dB") + f"\nwiring: {{{text}}}"


def shelved(chemistry: str) -> str:
    """A spec of one pack in store."""
    return cell(chemistry, "capacity: 3 Ah") + "\nclaims: {shelf_time: VALUE}"


def gate(text: str) -> str:
    """A spec of the drive of one channel's switches."""
    return channel(f"output_stage: {{devices: discrete}}, gate_drive: {{{text}}}")


def pack(text: str) -> str:
    """A spec of one pack."""
    return (
        channel("gain: 26 dB")
        + f"\nsupply: {{source: battery}}\nbattery: {{chemistry: li-ion, {text}}}"
    )


BOXED = (
    "environment: {ambient: 0 degC .. 45 degC, solar: 1000 W/m2, altitude: 0 m}\n"
    "supply: {source: dc-source, rails: single, v_rail: 36 V, p_auxiliary: 8 W}\n"
    "thermal: {t_air_inside: VALUE, enclosure: {width: 200 mm, height: 300 mm, depth: 200 mm,"
    " emissivity: 0.9, openings: vented}SINK}"
)
BLOWN = BOXED.replace("SINK", ", heatsink: {fan: {air_speed: 2 m/s}}")
BOXED = BOXED.replace("SINK", "")
SINK = "thermal: {heatsink: {r_th_sa: 3 K/W}}\n"
BLOCKED = "supply: {source: dc-source, rails: single}\n" + channel(
    "WHAT: VALUE, output_stage: {topology: half-bridge}"
)


# leaf, spec around it with VALUE in its place, value that may be, value that cannot be, if any
PAIRS = [
    # 100 ns of 2500 ns twice: 1 - 0.08
    (
        "modulator.m_max",
        channel(
            "gate_drive: {t_pulse_min: 100 ns},"
            " modulator: {type: natural-sampling, carrier: 400 kHz, m_max: VALUE}"
        ),
        "91 %",
        "93 %",
    ),
    ("loudspeaker.r_e", channel("loudspeaker: {z_rated: 8 ohm, r_e: VALUE}"), "6 ohm", "9 ohm"),
    # 1.25 * 4 ohm
    (
        "loudspeaker.r_e",
        channel("loudspeaker: {z_rated: 8 ohm, z_min: 4 ohm, r_e: VALUE}"),
        "4.9 ohm",
        "5.1 ohm",
    ),
    ("loudspeaker.z_min", channel("loudspeaker: {z_rated: 4 ohm, z_min: VALUE}"), "5 ohm", "9 ohm"),
    ("loudspeaker.x_mech", channel("loudspeaker: {x_max: 6 mm, x_mech: VALUE}"), "9 mm", "5 mm"),
    ("limiter.v_rms", channel("limiter: {v_peak: 20 V, v_rms: VALUE}"), "14 V", "21 V"),
    (
        "output_stage.device.v_supply",
        device("v_supply_abs: 36 V, v_supply: VALUE"),
        "8 V .. 32 V",
        "8 V .. 38 V",
    ),
    ("thermal.heatsink.t", "thermal: {heatsink: {t: VALUE}}", "70 degC", "40 degC"),
    ("thermal.t_air_inside", "thermal: {t_air_inside: VALUE}", "0 degC .. 55 degC", "40 degC"),
    # faces 0.06, 0.06, 0.04 m2; white walls take up 0.3 * 1000 * sqrt(0.0088) = 28.1 W of the sun,
    # with half of 8 W 32.1 W.  At a rise of 10 K they give off (1.42 0.24 / 0.3^0.25 + 1.91 0.04
    # / 0.2^0.25) 10^1.25 = 10.2 W, by light 0.9 5.67e-8 0.32 (328.15^4 - 318.15^4) = 22.0 W.  Air
    # to wall 4 / (5 0.32) = 2.5 K; vented half of 12.5 K: 45 + 6.2 = 51.2 degC
    ("thermal.t_air_inside", BOXED, "52 degC", "50 degC"),
    # the fan blows through the vents: the outer air alone is sure
    ("thermal.t_air_inside", BLOWN, "46 degC", "44 degC"),
    (
        "gate_drive.t_pulse_min",
        channel("gate_drive: {dead_time: 40 ns, t_pulse_min: VALUE}"),
        "80 ns",
        "20 ns",
    ),
    ("output_stage.device.q_gd", device("q_g: 20 nC, q_gd: VALUE"), "6 nC", "21 nC"),
    ("output_stage.device.q_sw", device("q_g: 20 nC, q_sw: VALUE"), "8 nC", "21 nC"),
    ("output_stage.device.q_g_th", device("q_g: 20 nC, q_g_th: VALUE"), "4 nC", "21 nC"),
    ("output_stage.device.v_gs_th", device("v_gs_pl: 4.5 V, v_gs_th: VALUE"), "3 V", "5 V"),
    # half of 4.20 V on 30 mohm, the new and warm cell: 70 A
    (
        "battery.cell.i_cont",
        cell("li-ion", "r_internal: 30 mohm .. 90 mohm, i_cont: VALUE"),
        "35 A",
        "75 A",
    ),
    # 3 Ah in 15 min: 12 A; 18 Ah in 20 min: 54 A
    ("battery.cell.i_charge", cell("li-ion", "i_cont: 8 A, i_charge: VALUE"), "4 A", "9 A"),
    ("battery.cell.i_charge", cell("li-ion", "capacity: 3 Ah, i_charge: VALUE"), "6 A", "15 A"),
    (
        "battery.cell.i_charge",
        cell("lead-acid-agm", "capacity: 18 Ah, i_charge: VALUE"),
        "6 A",
        "60 A",
    ),
    (
        "battery.cell.i_pulse",
        cell("li-ion", "r_internal: 30 mohm .. 90 mohm, i_pulse: VALUE"),
        "60 A",
        "75 A",
    ),
    # 4.45 V over a thousand times 3.3 A: 1.35 mohm
    (
        "battery.cell.r_internal",
        cell("li-ion", "capacity: 3.3 Ah, r_internal: VALUE"),
        "1.4 mohm .. 60 mohm",
        "1 mohm .. 60 mohm",
    ),
    ("battery.cell.v_nominal", cell("li-ion", "v_nominal: VALUE"), "3.85 V", "6 V"),
    ("battery.cell.v_oc_low", cell("lfp", "v_oc_low: VALUE"), "3.0 V", "3.8 V"),
    ("battery.cell.v_nominal", cell("lfp", "v_charge: 3.65 V, v_nominal: VALUE"), "3.2 V", "3.7 V"),
    ("battery.cell.v_oc_low", cell("li-ion", "v_charge: 4.2 V, v_oc_low: VALUE"), "3.4 V", "4.6 V"),
    ("protection.under_voltage.v_trip", trip("VALUE"), "{min: 30 V, typ: 32 V}", "40 V"),
    (
        "claims.rated_supply",
        channel("gain: 26 dB") + f"\n{RAIL}claims: {{rated_supply: VALUE}}",
        "34 V",
        "40 V",
    ),
    (
        "supply.v_lockout",
        channel("gain: 26 dB") + "\nsupply: {source: dc-source, converter: step-up, rails: single,"
        " v_source: 12 V .. 14 V, v_rail: 36 V, v_lockout: VALUE}",
        "11 V",
        "15 V",
    ),
    (
        "filter.inductor.r_ac",
        channel("filter: {type: lc, inductor: {dcr: 30 mohm, r_ac: VALUE}}"),
        "120 mohm",
        "12 mohm",
    ),
    ("output_stage.device.r_ds_on_hot_factor", device("r_ds_on_hot_factor: VALUE"), "1.1", "0.9"),
    ("output_stage.device.r_th_ja", device("r_th_ja: VALUE"), "12 K/W", "5 K/W"),
    (
        "gate_drive.regulator.r_th_ja",
        channel("gate_drive: {regulator: {type: linear, r_th_ja: VALUE}}"),
        "30 K/W",
        "5 K/W",
    ),
    ("thermal.heatsink.r_th_sa", "thermal: {heatsink: {r_th_sa: VALUE}}", "0.1 K/W", "0.02 K/W"),
    (
        "thermal.heatsink.fan.r_th_sa",
        "thermal: {heatsink: {r_th_sa: 2 K/W, fan: {r_th_sa: VALUE}}}",
        "0.5 K/W",
        "0.1 K/W",
    ),
    (
        "output_stage.device.switches_per_package",
        channel("output_stage: {devices: integrated, device: {switches_per_package: VALUE}}"),
        "2",
        "1",
    ),
    # 45 degC + 40 K/W (384 mW / 2 + 1.25 W / 16) = 55.8 degC
    (
        "thermal.heatsink.t",
        losses("l_loop: 20 nH") + "\nthermal: {heatsink: {r_th_sa: 40 K/W, t: VALUE}}",
        "60 degC",
        "50 degC",
    ),
    # a hole of 50 cm2 in 20 L: 345 / 2 pi sqrt(0.005 / (0.02 0.732 0.0798)) = 113.6 Hz
    (
        "loudspeaker.enclosure.f_b",
        channel(
            "loudspeaker: {z_rated: 4 ohm, enclosure: {type: vented, v_b: 20 L, port_area: 50 cm2,"
            " f_b: VALUE}}"
        ),
        "110 Hz",
        "118 Hz",
    ),
    ("loudspeaker.q_es", MOTOR, "0.8", "1.0"),
    ("loudspeaker.q_es", MOTOR, "0.25", "0.2"),
    # 200 pF at 50 V: at least 10 nC
    (
        "output_stage.device.q_oss",
        device("c_oss: 200 pF, v_c_oss: 50 V, q_oss: VALUE"),
        "15 nC",
        "8 nC",
    ),
    ("output_stage.device.v_c_oss", device("v_dss: 100 V, v_c_oss: VALUE"), "50 V", "150 V"),
    ("output_stage.device.q_sw", device("q_gd: 6 nC, q_sw: VALUE"), "8 nC", "5 nC"),
    # an eighth, 6.25 W at 70 %, heats with 2.68 W; 45 degC + 20 K/W 2.68 W / 2 = 71.8 degC
    ("thermal.heatsink.t", WARMED, "75 degC", "65 degC"),
    # 0.55 T 12 65 mm2 / (10 uH (1 - 0.1)) = 47.7 A; powder 1.6 T: 139 A; silent drop: 166 A
    ("filter.inductor.i_sat", choke("i_sat_drop: 20 %, core: ferrite"), "45 A", "50 A"),
    ("filter.inductor.i_sat", choke("i_sat_drop: 20 %, core: powder"), "130 A", "150 A"),
    ("filter.inductor.i_sat", choke("l: 10 uH"), "160 A", "180 A"),
    # 109 dB + 3 dB from 1 W; of 2 W, 2.83 V in 4 ohm, 115 dB; + 12 dB in a horn
    ("loudspeaker.sensitivity", driver("1-watt", "sealed"), "110 dB", "113 dB"),
    ("loudspeaker.sensitivity", driver("2.83-volt", "vented"), "114 dB", "116 dB"),
    ("loudspeaker.sensitivity", driver("1-watt", "horn"), "118 dB", "122 dB"),
    (
        "loudspeaker.sensitivity",
        channel("loudspeaker: {z_rated: 8 ohm, sensitivity: VALUE}"),
        "118 dB",
        "122 dB",
    ),
    (
        "signal.crest_factor",
        channel("gain: 26 dB") + "\nsignal: {crest_factor: VALUE}",
        "20 dB",
        "60 dB",
    ),
    (
        "signal.crest_factor",
        channel("gain: 26 dB") + "\nsignal: {crest_factor: VALUE}",
        "3 dB .. 12 dB",
        "-3 dB .. 12 dB",
    ),
    ("supply.p_peak", source("p_peak: VALUE"), "120 W", "20 W"),
    ("supply.p_peak", source("p_max: 90 W, p_peak: VALUE"), "95 W", "80 W"),
    # of ten of 8 ohm, 80 ohm, a quarter
    (
        "rated_load",
        channel("rated_load: VALUE, loudspeaker: {z_rated: 8 ohm, series: 10}"),
        "40 ohm",
        "4 ohm",
    ),
    ("supply.surge.v", vehicle("14 V"), "35 V", "20 V"),
    ("supply.surge.v", vehicle("28 V"), "60 V", "35 V"),
    (
        "claims.efficiency",
        channel("gain: 26 dB") + "\nclaims: {efficiency: VALUE}",
        "95 %",
        "99.9 %",
    ),
    ("output_stage.efficiency", channel("output_stage: {efficiency: VALUE}"), "95 %", "99.5 %"),
    # gates 2 x 40 nC x 12 V x 400 kHz = 384 mW, half of it 192 mW
    ("output_stage.p_idle", losses("p_idle: VALUE"), "250 mW", "150 mW"),
    # 50 W, 5 A: conduction 0.1 ohm x 25 A2 / 2 = 1.25 W and 0.19 W of the rest: 97.2 %
    ("output_stage.efficiency", losses("efficiency: VALUE"), "96 %", "97.5 %"),
    # 4 ohm over 4 ohm + 2 (0.1 ohm + 0.05 ohm) + 0.02 ohm: 92.6 %
    (
        "output_stage.efficiency",
        channel(
            "rated_load: 4 ohm, output_stage: {topology: full-bridge, parallel: 1, r_series:"
            " 20 mohm, efficiency: VALUE, device: {r_ds_on: 100 mohm}}, filter: {type: lc,"
            " inductor: {dcr: 50 mohm}}"
        ),
        "91 %",
        "94 %",
    ),
    # at 12.5 W a quarter of the 1.25 W, and 96 mW of idle loss: 96.8 %; at 50 W 97.3 %
    (
        "output_stage.efficiency_curve[0].efficiency",
        losses("efficiency_curve: [{power: 12.5 W, efficiency: VALUE}]"),
        "96 %",
        "97.2 %",
    ),
    (
        "output_stage.efficiency_curve[1].efficiency",
        losses(
            "efficiency_curve: [{power: 12.5 W, efficiency: 90 %}, {power: 50 W, efficiency:"
            " VALUE}]"
        ),
        "96 %",
        "97.9 %",
    ),
    # half of 36 V x 10 mA
    ("output_stage.p_idle", integrated("i_q: 10 mA, p_idle: VALUE"), "250 mW", "150 mW"),
    # 0.3 mA from 36 V: 10.8 mW
    ("output_stage.p_idle", integrated("p_idle: VALUE"), "15 mW", "5 mW"),
    # 1 ohm in line with 4 ohm takes a fifth, so 50 W / 8 x 0.25 = 1.56 W of heat
    (
        "claims.heat",
        integrated("r_series: 900 mohm, device: {r_ds_on: 50 mohm}") + "\nclaims: {heat: VALUE}",
        "2 W",
        "1.2 W",
    ),
    ("environment.pollution_degree", dirt("place: outdoor"), "2", "1"),
    ("environment.pollution_degree", dirt("place: indoor, ip_code: IP54"), "2", "1"),
    ("environment.pollution_degree", dirt("place: indoor, ip_code: IP67"), "1", ""),
    (
        "environment.pollution_degree",
        dirt("place: indoor") + "\nthermal: {enclosure: {openings: vented}}",
        "2",
        "1",
    ),
    (
        "filter.c_across.bias_retention",
        film("c_across", "ceramic-class-2", "bias_retention"),
        "60 %",
        "100 %",
    ),
    (
        "filter.c_ground.bias_retention",
        film("c_ground", "polyester", "bias_retention"),
        "100 %",
        "",
    ),
    (
        "filter.c_across.tan_delta",
        film("c_across", "ceramic-class-2", "tan_delta"),
        "0.02",
        "0.0002",
    ),
    ("filter.c_ground.tan_delta", film("c_ground", "polyester", "tan_delta"), "0.01", "0.0002"),
    ("protection.over_temperature.t_trip", sensor("board", "VALUE"), "110 degC", "165 degC"),
    ("protection.over_temperature.t_trip", sensor("heatsink", "VALUE"), "95 degC", "165 degC"),
    ("protection.over_temperature.t_trip", sensor("junction", "VALUE"), "165 degC", ""),
    # 50 W at 90 %: 5.56 W, 1 K/W of the only package; half of it 2.8 K
    (
        "protection.over_temperature.below_junction",
        integrated("efficiency: 90 %, p_idle: 1 W, device: {r_th_jc: 1 K/W, t_j_max: 150 degC}")
        + sensor("board", "100 degC, below_junction: VALUE").removeprefix(channel("gain: 26 dB")),
        "5 K",
        "2 K",
    ),
    ("output_stage.device.t_j_max", device("t_j_max: VALUE"), "175 degC", "400 degC"),
    ("wiring.connector.t_max", contact("connector: {t_max: VALUE}"), "125 degC", "600 degC"),
    (
        "filter.inductor.i_sat_hot_factor",
        channel("filter: {type: lc, inductor: {i_sat_hot_factor: VALUE}}"),
        "0.8",
        "1.5",
    ),
    # 100 s x (16 A)^2
    (
        "protection.fuse.i2t",
        channel("gain: 26 dB") + "\nprotection: {fuse: {i_rated: 16 A, i2t: VALUE}}",
        "7000 A2s",
        "26000 A2s",
    ),
    # root of 40 K / (1 K/W x 9 mohm) = 66.7 A
    (
        "filter.inductor.i_rms",
        channel("filter: {type: lc, inductor: {dcr: 9 mohm, rise_rated: 40 K, i_rms: VALUE}}"),
        "60 A",
        "70 A",
    ),
    ("band", channel("band: VALUE"), "30 Hz .. 120 Hz", "1 kHz .. 1.01 kHz"),
    ("claims.shelf_time", shelved("li-ion"), "20000 h", "90000 h"),
    ("claims.shelf_time", shelved("lead-acid-agm"), "9000 h", "40000 h"),
    # zero is a claim, but where there is nothing: gallium nitride, blocked direct voltage
    ("output_stage.device.q_rr", device("v_gss: 20 V, q_rr: VALUE"), "5 nC", "0 nC"),
    ("output_stage.device.q_rr", device("v_gss: 6 V, q_rr: VALUE"), "0 nC", ""),
    ("output_stage.device.q_rr", device("q_rr: VALUE"), "0 nC", ""),
    ("output_stage.device.r_th_cs", SINK + device("r_th_cs: VALUE"), "0.3 K/W", "0 K/W"),
    ("output_stage.device.r_th_cs", device("r_th_cs: VALUE"), "0 K/W", ""),
    # a hundredth of 12 V
    ("gate_drive.v_gs_ringing", gate("v_drv: 12 V, v_gs_ringing: VALUE"), "0.2 V", "0 V"),
    ("gate_drive.delay_mismatch", gate("delay_mismatch: VALUE"), "2 ns", "0 ns"),
    (
        "output_stage.p_auxiliary",
        channel("output_stage: {devices: discrete, p_auxiliary: VALUE}"),
        "50 mW",
        "0 W",
    ),
    ("output_stage.p_auxiliary", integrated("p_auxiliary: VALUE"), "0 W", ""),
    (
        "dc_offset",
        channel("dc_offset: VALUE, output_stage: {topology: full-bridge}"),
        "5 mV",
        "0 V",
    ),
    ("dc_offset", BLOCKED.replace("WHAT", "dc_offset"), "0 V", ""),
    (
        "turn_on_step",
        channel("turn_on_step: VALUE, output_stage: {topology: full-bridge}"),
        "5 mV",
        "0 V",
    ),
    ("turn_on_step", BLOCKED.replace("WHAT", "turn_on_step"), "0 V", ""),
    ("battery.protection.r", pack("protection: {r: VALUE, v_cutoff: 6 V}"), "5 mohm", "0 ohm"),
    (
        "protection.reverse_polarity.r_th_ja",
        channel("gain: 26 dB") + "\nprotection: {reverse_polarity: {r_th_ja: VALUE}}",
        "3 K/W",
        "0.5 K/W",
    ),
    ("battery.i_standby", pack("protection: {v_cutoff: 6 V}, i_standby: VALUE"), "5 uA", "0 uA"),
    ("battery.i_standby", pack("protection: none, i_standby: VALUE"), "0 uA", ""),
    (
        "thermal.heatsink.r_th_sa",
        "thermal: {heatsink: {material: plastic, r_th_sa: VALUE}}",
        "12 K/W",
        "2 K/W",
    ),
    (
        "thermal.heatsink.r_th_sa",
        "thermal: {heatsink: {material: metal, r_th_sa: VALUE}}",
        "2 K/W",
        "",
    ),
]


def contradictions(text: str) -> set[str]:
    """The leaves that a spec states beyond what bounds them."""
    supply = "" if "supply:" in text else RAIL
    air = "" if "environment:" in text else AIR
    loaded = load_text("amplifier_spec: 1\n" + air + supply + text + "\n", "pair")
    assert loaded.spec is not None, loaded.refusals
    found = built_in_findings(loaded.spec, Graph(loaded.spec, load().derived))
    paths = {path for item in found for path in item.evidence.leaves if "its bound" in item.title}
    return {path.removeprefix("channels.main.") for path in paths}


@pytest.mark.parametrize(("path", "around", "possible", "impossible"), PAIRS)
def test_a_bound_holds_in_both_directions(
    path: str, around: str, possible: str, impossible: str
) -> None:
    assert contradictions(around.replace("VALUE", possible)) == set()
    if impossible:
        assert contradictions(around.replace("VALUE", impossible)) == {path}


def test_every_pair_has_a_row_and_every_row_a_pair() -> None:
    pairs = {
        path
        for item in load().derived.values()
        for path in (*item.bounds_from_above, *item.bounds_from_below)
    }
    rows = {re.sub(r"\[\d\]", "[]", row[0]) for row in PAIRS}
    assert {path.partition(":")[0] for path in pairs} == rows


def test_an_assumed_bound_convicts_nobody() -> None:
    """The hottest air is assumed where nobody states it."""
    text = "amplifier_spec: 1\nthermal: {heatsink: {t: 30 degC}}\n"
    loaded = load_text(text, "pair")
    assert loaded.spec is not None
    assert built_in_findings(loaded.spec, Graph(loaded.spec, load().derived)) == ()
