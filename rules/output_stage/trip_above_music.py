"""Over-current trip against the largest current of the music.

A trip that is set below the crest of the music into the lowest load cuts out on loud bass.
The crest counts, not the rms value; the lowest load that the spec states counts, which is the
stated minimum of a loudspeaker (it dips below its rated impedance) or the lowest rated load:
the common 0.8 of rated is not assumed here, because integrated stages rated for 3 ohm would
fail with the trip that their maker built in; and where the threshold senses the on-resistance
of a switch it falls by a third or more as the switch heats up.

The crest is what modulator, limiter and rails let through into the lowest load in series with
switches and inductors, taken cold because that lets most current through, with the ripple
that is left at that depth. First fixes: a higher trip, if trip-below-destruction allows it; a
level limiter; a higher rated load. A tenth of headroom is kept for the spread of the sensing
and for loads that turn more reactive than expected.
"""

from ...linter.check import (
    COMMON_PRACTICE,
    AtLeast,
    Case,
    Check,
    Input,
    Lever,
    Source,
    derivation,
)
from ..derived.current import I_TRIP


def figure(i_trip: float, i_trip_hot: float, i_crest: float) -> float:
    """Lowest trip over the largest current; the printed trip is for the report."""
    return i_trip_hot / i_crest


CHECK = Check(
    title="Over-current trip vs. peak music current",
    figure=figure,
    unit="%",
    each="channel",
    stake="rating",
    formula="i_trip_hot / i_crest, i_trip_hot from i_trip as printed",
    sentence="Over-current trip {i_trip_hot} hot ({i_trip} rated); peak current {i_crest} into the"
    " lowest load ({figure:%}).",
    inputs={
        "i_trip": I_TRIP,
        "i_trip_hot": Input("i_trip_hot"),
        "i_crest": Input("i_inductor_crest"),
    },
    limits=AtLeast(
        major="100 %",
        minor="110 %",
        basis={
            "major": derivation("the protection acts on music"),
            "minor": COMMON_PRACTICE,
        },
    ),
    levers=(Lever("output_stage.over_current.i_trip", "0.5 A"),),
    sources=(
        derivation("crest of the clipped signal through load and path"),
        Source(
            "International Rectifier, IRAUDAMP7D reference design, rev. 2.9",
            "p. 24: trip of 23 A at 25 degC; p. 4: rails of 35 V into 4 ohm",
        ),
    ),
    cases=(
        Case(
            {"i_trip": "12 A", "i_trip_hot": "9.6 A", "i_crest": "8.842 A"},
            "108.6 %",
            "computed: 50 V at depth 0.95 into 6.4 ohm with full ripple, simulated: 8.842 A; "
            "12 A less 20 %",
        ),
        Case(
            {"i_trip": "10 A", "i_trip_hot": "10 A", "i_crest": "11.54 A"},
            "86.67 %",
            "published: M. Wulf, docu.pdf 2019: 48 V bridge, 4 ohm, trip of 10 A; 2 x 80 mohm of "
            "the IRFB4020 data sheet; 11.54 A by hand",
        ),
    ),
    topic=("output_stage.over_current",),
    asked_from="prototype",
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
