"""What a concept is asked for: the values that its promises are judged by.

Left out is what has a usual value, what follows from other values, and the ratings that the
requirements tell once these are known.  Tests hold that each of these can decide something at
concept, and that no design is asked for more than 25.
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
        # what a channel is made for
        "rated_power",
        "rated_load",
        # power stage
        "output_stage.topology",
        "output_stage.devices",
        "output_stage.device.r_ds_on",
        "modulator.carrier",
        # filter
        "filter.type",
        "filter.inductor.l",
        "filter.c_across.c",
        "filter.c_block.c",
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
