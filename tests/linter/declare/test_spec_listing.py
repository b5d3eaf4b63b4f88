"""Every field of the spec against a list of its own: path, kind, dimension.

The list was made from the symbols that data sheets print and the SI units of those
quantities; pint's full registry, not the program's own units, judges the dimension.
"""

import pint
import pytest

from ampreview.linter.declare import load_schema

SCHEMA = load_schema()
FIELDS = SCHEMA.fields

# Kind or SI unit, and the paths that have it.  degC: a temperature; K: a difference.
LISTED = {
    "count": """
        thermal.board_copper.layers thermal.board_copper.vias
        amplifier_spec environment.pollution_degree battery.series battery.parallel
        battery.packs output_stage.parallel output_stage.device.switches_per_package
        modulator.loop_order modulator.noise_shaping loudspeaker.series loudspeaker.parallel
        loudspeaker.high_pass.order line.high_pass.order
        thermal.heatsink.count wiring.connector.contacts
    """,
    "text": """
        title revision environment.ip_code output_stage.device.part battery.cell.part
        deviations[].check deviations[].place deviations[].permitted_by deviations[].reason
        deviations[].until deviations[].up_to
        measured[].figure measured[].place measured[].value measured[].board measured[].date
        measured[].instrument
    """,
    "word": """
        output_stage.device.r_ds_on_at
        milestone environment.place environment.am_receiver signal.channel_phase
        signal.c_in_dielectric supply.source supply.rails supply.converter battery.chemistry
        battery.connection battery.charger.sensor battery.charger.playing
        output_stage.topology output_stage.devices output_stage.over_current.sensing
        gate_drive.regulator.type gate_drive.bootstrap.refresh gate_drive.bootstrap.start
        modulator.type
        modulator.levels modulator.locked modulator.waveform modulator.feedback filter.type
        filter.inductor.core filter.c_across.dielectric filter.c_ground.dielectric
        filter.damper.connection loudspeaker.rating_method loudspeaker.sensitivity_basis
        loudspeaker.enclosure.type thermal.heatsink.place thermal.heatsink.touch
        thermal.enclosure.touch thermal.heatsink.material thermal.enclosure.material
        thermal.enclosure.openings thermal.basis wiring.trace.layer wiring.spacing.surface
        protection.over_temperature.at gate_drive.floating_supply
        protection.dc_detector.senses protection.dc_detector.action
        protection.fuse.standard protection.reverse_polarity.method safety.users
        safety.rail_access safety.output_terminals safety.exposure_rule claims.air_travel
        claims.emission_class
        battery.cell.made_for protection.fuse.place
    """,
    "degC": """
        environment.ambient measured[].ambient supply.bulk.t_rated battery.cell.t_charge
        battery.cell.t_discharge battery.charger.t_window output_stage.device.t_j_max
        gate_drive.regulator.t_j_max thermal.heatsink.t thermal.t_air_inside
        protection.reverse_polarity.t_j_max
        wiring.connector.t_max protection.over_temperature.t_trip
        battery.charger.t_reduced
    """,
    "m": """
        environment.altitude lead.length output_stage.device.lead_max loudspeaker.x_max
        loudspeaker.enclosure.port_length
        loudspeaker.x_mech loudspeaker.x_peak thermal.enclosure.width thermal.enclosure.height
        thermal.enclosure.depth wiring.supply_lead.length wiring.trace.width
        wiring.trace.copper wiring.spacing.gap safety.nearest_listener claims.sound_distance
    """,
    "V/K": """
        output_stage.device.v_gs_th_fall
    """,
    "W/m**2": """
        environment.solar measured[].sun
    """,
    "dB": """
        signal.crest_factor loudspeaker.sensitivity claims.response claims.sound_level
        measured[].crest_factor
    """,
    "V": """
        measured[].supply
        signal.source_level signal.v_in_max supply.v_source supply.v_rail supply.ripple
        claims.rated_supply
        supply.surge.v supply.bulk.v_rated battery.cell.v_charge battery.cell.v_nominal
        battery.cell.v_oc_low battery.protection.v_cutoff battery.charger.v rated_voltage
        dc_offset turn_on_step limiter.v_rms limiter.v_peak output_stage.v_overshoot
        output_stage.device.v_dss output_stage.device.v_gss output_stage.device.v_gs_on
        output_stage.device.v_gs_pl output_stage.device.v_gs_th output_stage.device.v_c_oss
        output_stage.device.v_sd output_stage.device.v_supply
        output_stage.device.v_supply_abs gate_drive.v_drv gate_drive.v_gs_ringing
        gate_drive.v_node_negative gate_drive.bootstrap.v_f gate_drive.bootstrap.v_uvlo
        filter.c_across.v_rated filter.c_ground.v_rated filter.c_block.v_rated
        loudspeaker.c_series.v_rated protection.over_voltage.v_trip
        protection.under_voltage.v_trip protection.dc_detector.v_trip protection.fuse.v_dc
        protection.reverse_polarity.v_f protection.reverse_polarity.v_gss
        protection.surge.v_rwm protection.surge.v_clamp claims.noise
        protection.dc_detector.v_break protection.reverse_polarity.v_block supply.v_lockout
        supply.v_source_abs
        gate_drive.regulator.v_clamp line.v_line loudspeaker.piezo.v_rated
        gate_drive.v_floating gate_drive.bootstrap.v_r gate_drive.bootstrap.v_clamp
        output_stage.v_c_local output_stage.snubber.v_rated filter.damper.v_rated
    """,
    "ohm": """
        measured[].load signal.r_in supply.r_source supply.surge.r battery.cell.r_internal
        battery.protection.r rated_load load_range output_stage.r_series
        output_stage.snubber.r output_stage.device.r_ds_on output_stage.device.r_g_int
        output_stage.device.r_g_test output_stage.device.load_min gate_drive.r_g_on
        gate_drive.r_g_off gate_drive.bootstrap.r filter.inductor.dcr filter.damper.r
        filter.inductor.r_ac loudspeaker.piezo.r_series
        loudspeaker.z_rated loudspeaker.z_min loudspeaker.r_e loudspeaker.zobel.r
        protection.inrush.r protection.reverse_polarity.r_on protection.bleeder.r
    """,
    "F": """
        signal.c_in supply.bulk.c supply.c_source output_stage.c_local
        output_stage.snubber.c output_stage.device.c_iss output_stage.device.c_oss
        output_stage.device.c_bootstrap gate_drive.c_reservoir gate_drive.bootstrap.c
        filter.c_across.c filter.c_ground.c filter.c_block.c filter.damper.c
        filter.second_stage.c filter.second_stage.c_ground
        loudspeaker.c_series.c loudspeaker.zobel.c loudspeaker.piezo.c
    """,
    "kg": """
        thermal.heatsink.mass
    """,
    "m/s": """
        thermal.heatsink.fan.air_speed
    """,
    "s": """
        rated_duration thermal.time_constant
        signal.mute_time supply.bulk.life battery.rating_hours battery.protection.t_trip
        output_stage.t_edge output_stage.over_current.t_response
        output_stage.over_current.t_retry output_stage.device.t_d_on output_stage.device.t_r
        output_stage.device.t_d_off output_stage.device.t_f output_stage.device.foster[].tau
        gate_drive.dead_time gate_drive.delay_mismatch gate_drive.t_pulse_min
        modulator.loop_delay modulator.jitter protection.dc_detector.t_trip
        safety.discharge_wait safety.exposure_time claims.run_time claims.shelf_time
        claims.life gate_drive.bootstrap.t_rr
    """,
    "A": """
        supply.i_max supply.bulk.i_ripple battery.i_standby battery.cell.i_cont
        battery.cell.i_pulse battery.cell.i_charge battery.protection.i_trip
        battery.charger.i output_stage.over_current.i_trip output_stage.device.i_d
        output_stage.device.i_dm gate_drive.i_source gate_drive.i_sink
        gate_drive.regulator.i_other gate_drive.bootstrap.i_q filter.inductor.i_sat
        filter.inductor.i_rms filter.c_across.i_rated filter.c_ground.i_rated
        filter.c_block.i_rated filter.bead.i_rated wiring.supply_lead.i_rated
        loudspeaker.c_series.i_rated
        wiring.connector.i_rated protection.fuse.i_rated protection.fuse.i_breaking
        protection.inrush.i_limit protection.inrush.i_surge protection.surge.i_pp
        battery.protection.i_breaking protection.dc_detector.i_break wiring.connector.i_surge
        output_stage.i_q
    """,
    "W": """
        measured[].power measured[].other_loads
        supply.p_max supply.p_auxiliary rated_power output_stage.p_idle
        output_stage.p_auxiliary output_stage.efficiency_curve[].power
        output_stage.snubber.p_rated filter.damper.p_rated loudspeaker.p_rated
        loudspeaker.zobel.p_rated protection.bleeder.p_rated claims.heat
        supply.p_peak line.p_tap
        loudspeaker_rating
    """,
    "%": """
        supply.converter_efficiency battery.usable_share battery.cold_share rated_thd
        output_stage.efficiency modulator.m_max filter.inductor.i_sat_drop
        output_stage.efficiency_curve[].efficiency
        filter.c_across.bias_retention filter.c_ground.bias_retention
        protection.fuse.k_ambient claims.efficiency claims.thd
    """,
    "Hz": """
        measured[].frequency measured[].bandwidth
        supply.converter_frequency band modulator.carrier modulator.loop_crossover
        modulator.loop_corner
        modulator.clock filter.corner loudspeaker.f_s loudspeaker.enclosure.f_b
        loudspeaker.high_pass.f line.f_full line.high_pass.f
    """,
    "flag": """
        supply.sinks_current supply.certified open_load modulator.carrier_shift
        modulator.feed_forward protection.dc_detector.independent
        protection.reverse_polarity.gate_clamp safety.dc_fault_test safety.fire_enclosure
        safety.hearing_notice
        claims.radio
        supply.self_limiting
    """,
    "1": """
        battery.peukert output_stage.device.r_ds_on_hot_factor
        filter.inductor.i_sat_hot_factor
        filter.inductor.turns filter.inductor.exponent_f
        filter.inductor.exponent_b filter.c_across.tan_delta filter.c_ground.tan_delta
        loudspeaker.q_ms loudspeaker.q_es loudspeaker.enclosure.q_l
        thermal.enclosure.emissivity line.ratio
    """,
    "C": """
        battery.cell.capacity output_stage.device.q_g output_stage.device.q_gd
        output_stage.device.q_sw output_stage.device.q_g_th output_stage.device.q_oss
        output_stage.device.q_rr
    """,
    "V/V": """
        gain modulator.loop_gain
    """,
    "m**2": """
        lead.area filter.inductor.a_e loudspeaker.s_d loudspeaker.enclosure.port_area
        thermal.board_copper.area thermal.board_copper.pad_area wiring.supply_lead.area
        battery.vent_area
    """,
    "H": """
        output_stage.l_loop output_stage.device.l_min filter.inductor.l
        filter.second_stage.l loudspeaker.l_e
    """,
    "J": """
        output_stage.device.e_as protection.inrush.e_rated
    """,
    "K/W": """
        output_stage.device.r_th_jc output_stage.device.r_th_cs output_stage.device.r_th_ja
        output_stage.device.foster[].r gate_drive.regulator.r_th_ja thermal.heatsink.r_th_sa
        protection.reverse_polarity.r_th_ja
        thermal.heatsink.fan.r_th_sa output_stage.device.psi_jt output_stage.device.psi_jb
    """,
    "V/s": """
        gate_drive.cmti
    """,
    "K": """
        filter.inductor.rise_rated loudspeaker.coil_rise
        protection.over_temperature.below_junction
    """,
    "m**3": """
        filter.inductor.v_e loudspeaker.v_as loudspeaker.enclosure.v_b
        loudspeaker.enclosure.v_ap
    """,
    "W/m**3": """
        filter.inductor.p_v
    """,
    "rad": """
        loudspeaker.phase
    """,
    "N/A": """
        loudspeaker.bl
    """,
    "A**2*s": """
        protection.fuse.i2t
    """,
    "list": """
        claims.markets claims.standards
    """,
}
KINDS = ("count", "text", "word", "flag", "list")
UNITS = {path: unit for unit, paths in LISTED.items() for path in paths.split()}
LEAVES = {path: field for path, field in FIELDS.items() if field.model is None}
REGISTRY = pint.UnitRegistry()


def dimension(unit: str) -> str:
    """Dimension after pint's own registry; shares, gains and levels have none."""
    written = unit.replace("A2s", "A**2*s").replace("T m", "tesla*m").replace("cm2", "cm**2")
    for plain_power in ("mm2", "mm3", "W/m2", "kW/m3"):
        written = written.replace(plain_power, f"{plain_power[:-1]}**{plain_power[-1]}")
    names = {"%": "1", "V/V": "1", "dB": "1", "degC": "K", "C": "coulomb", "F": "farad"}
    found = REGISTRY.parse_units(names.get(written, written)).dimensionality
    return str(found)


def test_every_field_is_listed_and_no_other() -> None:
    new = {x: LEAVES[x] for x in LEAVES.keys() - UNITS.keys()}
    lines = [f"add {x} under its kind or SI unit ({new[x].kind} {new[x].unit})" for x in new]
    lines += [f"take out {x}: no such field" for x in UNITS.keys() - LEAVES.keys()]
    if lines:
        told = "LISTED in tests/linter/test_spec_listing.py:"
        pytest.fail("\n".join((told, *sorted(lines))), pytrace=False)


def test_kind_and_dimension() -> None:
    for path, unit in UNITS.items():
        field = FIELDS[path]
        if unit in KINDS:
            assert field.kind == unit, path
            continue
        assert field.kind == "quantity", path
        assert dimension(field.unit) == dimension(unit), path
        for alone in ("degC", "%", "V/V", "dB"):
            assert (field.unit == alone) == (unit == alone), path


def test_a_temperature_difference_is_not_shown_as_a_temperature() -> None:
    assert {path for path, field in LEAVES.items() if field.unit == "K"} == {
        "filter.inductor.rise_rated",
        "loudspeaker.coil_rise",
        "protection.over_temperature.below_junction",
    }
