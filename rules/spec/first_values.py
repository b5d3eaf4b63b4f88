"""What a concept is asked for: the values that its promises and its ratings are judged by.

Left out is what has a usual value, what follows from other values, and what a part is not
chosen by.  Tests hold that each of these can decide something at concept, and that no design
is asked for more than thirty.
"""

AT_CONCEPT = frozenset(
    {
        "title",
        "environment.ambient",
        # what feeds it
        "supply.source",
        "supply.rails",
        "supply.v_source",
        "supply.v_rail",
        "supply.p_max",
        "supply.certified",
        "battery.chemistry",
        "battery.series",
        "battery.parallel",
        "battery.cell.capacity",
        "battery.cell.i_cont",
        "battery.cell.v_oc_low",
        "battery.charger.v",
        # what a channel is made for
        "rated_power",
        "rated_load",
        # power stage
        "output_stage.topology",
        "output_stage.devices",
        "output_stage.device.v_dss",
        "output_stage.device.r_ds_on",
        "output_stage.device.v_supply_abs",
        "modulator.carrier",
        # filter
        "filter.type",
        "filter.inductor.l",
        "filter.inductor.i_sat",
        "filter.c_across.c",
        "filter.c_block.c",
        "filter.c_block.v_rated",
        # loudspeaker and heat
        "loudspeaker.sensitivity",
        "loudspeaker.p_rated",
        "thermal.heatsink.r_th_sa",
        # what the paperwork promises
        "claims.efficiency",
        "claims.run_time",
        "claims.sound_level",
        "claims.sound_distance",
        "claims.thd",
    }
)
