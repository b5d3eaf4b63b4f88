"""Over-current trip against the largest current of the music.

A trip that is set below the crest of the music into the lowest load cuts out on loud bass.
The crest counts, not the rms value; the lowest load counts, a loudspeaker dips below its
rated impedance; and where the threshold senses the on-resistance of a switch it falls by a
third or more as the switch heats up.

The crest is what modulator, limiter and rails let through into the lowest load in series
with switches and inductors, taken cold because that lets most current through, with the
ripple that is left at that depth.  First cures: a higher trip, if trip-below-destruction
allows it; a level limiter; a higher rated load.  A tenth of headroom is kept for the
spread of the sensing and for loads that turn more reactive than expected.
"""

from typing import Any

from ...linter.check import (
    COMMON_PRACTICE,
    Assumption,
    AtLeast,
    Case,
    Check,
    Input,
    Lever,
    Source,
    derivation,
)


def figure(
    i_trip_hot: Any,
    i_leg_peak: Any,
    z_load_min: Any,
    n_legs: Any,
    r_ds_on: Any,
    parallel: Any,
    dcr: Any,
) -> Any:
    """Lowest trip over the largest current, series resistances counted."""
    path = n_legs * (r_ds_on / parallel + dcr)
    return i_trip_hot / (i_leg_peak * z_load_min / (z_load_min + path))


WITHOUT = Assumption("0 ohm", "adverse", derivation("less resistance lets more current through"))

CHECK = Check(
    title="Over-current trip above the current of the music",
    figure=figure,
    unit="%",
    each="channel",
    stake="rating",
    formula="i_trip_hot / (i_leg_peak z_load_min / "
    "(z_load_min + n_legs (r_ds_on / parallel + dcr)))",
    sentence="the trip at {i_trip_hot} is {figure} of the largest current, {i_leg_peak} into "
    "{z_load_min} less the path's resistance",
    inputs={
        "i_trip_hot": Input("i_trip_hot", "A", "lowest load current that trips"),
        "i_leg_peak": Input("i_leg_peak", "A", "largest current of a leg, ripple included"),
        "z_load_min": Input("z_load_min", "ohm", "lowest load impedance"),
        "n_legs": Input("n_legs", "1", "legs of the channel"),
        "r_ds_on": Input("output_stage.device.r_ds_on", "mohm", "one switch, cold",
                         default=WITHOUT),
        "parallel": Input("output_stage.parallel", "1", "devices in parallel as one switch"),
        "dcr": Input("filter.inductor.dcr", "mohm", "resistance of one inductor",
                     default=WITHOUT),
    },
    limits=AtLeast(
        major="100 %",
        minor="110 %",
        basis={
            "major": derivation("the protection acts on music"),
            "minor": COMMON_PRACTICE,
        },
    ),
    levers=(
        Lever("output_stage.over_current.i_trip", "0.5 A"),
        Lever("limiter.v_peak", "1 V"),
    ),
    sources=(
        derivation("crest of the clipped signal through load and path"),
        Source("IRAUDAMP7D reference design, International Rectifier: trip of 23 A at 25 degC "
               "on rails of 35 V into 4 ohm", "p. 24"),
    ),
    cases=(
        Case({"i_trip_hot": "9.6 A", "i_leg_peak": "8.842 A", "z_load_min": "6.4 ohm",
              "n_legs": 1.0, "r_ds_on": "0 ohm", "parallel": 1.0, "dcr": "0 ohm"}, "108.6 %",
             "computed: 50 V at depth 0.95 into 6.4 ohm with full ripple, simulated: 8.842 A; "
             "12 A less 20 %"),
        Case({"i_trip_hot": "10 A", "i_leg_peak": "12.3 A", "z_load_min": "4 ohm",
              "n_legs": 2.0, "r_ds_on": "80 mohm", "parallel": 1.0, "dcr": "0 ohm"}, "84.55 %",
             "published: M. Wulf, docu.pdf 2019, 48 V bridge into 4 ohm trips in normal use at "
             "10 A"),
    ),
    topic=("output_stage.over_current",),
    fails="""
supply: {source: dc-source, rails: single, v_rail: 48 V}
channels:
  main:
    rated_load: 4 ohm
    output_stage:
      topology: full-bridge
      devices: discrete
      over_current: {i_trip: 10 A, sensing: shunt}
      device: {r_ds_on: 80 mohm}
    gate_drive: {t_pulse_min: 50 ns}
    modulator: {type: natural-sampling, carrier: 500 kHz, levels: two-level}
    filter: {type: lc, inductor: {l: 15 uH, dcr: 20 mohm}, c_across: {c: 1 uF}}
    loudspeaker: {z_rated: 4 ohm, z_min: 3.6 ohm}
""",
    passes="""
supply: {source: dc-source, rails: single, v_rail: 48 V}
channels:
  main:
    rated_load: 4 ohm
    output_stage:
      topology: full-bridge
      devices: discrete
      over_current: {i_trip: 16 A, sensing: shunt}
      device: {r_ds_on: 80 mohm}
    gate_drive: {t_pulse_min: 50 ns}
    modulator: {type: natural-sampling, carrier: 500 kHz, levels: two-level}
    filter: {type: lc, inductor: {l: 15 uH, dcr: 20 mohm}, c_across: {c: 1 uF}}
    loudspeaker: {z_rated: 4 ohm, z_min: 3.6 ohm}
""",
)
