"""Claimed level with hot voice coils.

Copper gains 0.39 % of resistance with every kelvin.  A coil that is 150 K hotter takes 4 dB
less level from the same voltage, after minutes, without a sign of distortion.  A claimed
level that is met only by cold coils is not met for long.

The figure is the level of all channels with their coils at the stated rise, above the
claimed level at its distance.  What to do first: leave 3 dB or more between the sine level
and the claim, or claim what is left.
"""

from ...linter.check import COMMON_PRACTICE, AtLeast, Case, Check, Input, Lever, Source
from ..formulas.acoustics import ONE_METRE, decibel, distance_loss, sum_of_levels
from ..formulas.constants import COPPER_COEFFICIENT

COMPRESSION = Source(
    "Wikipedia, Power compression",
    "article: from 20 to 200 degC: resistance up 72 %, level down 4.7 dB; no page given",
)


def figure(
    levels: tuple[float, ...],
    coil_rise: tuple[float, ...],
    sound_level: float,
    sound_distance: float,
    copper: float,
    one_metre: float,
) -> float:
    hot = [
        level - decibel(1 + copper * rise) for level, rise in zip(levels, coil_rise, strict=True)
    ]
    return sum_of_levels(hot) - distance_loss(sound_distance, one_metre) - sound_level


LOUD = """
supply: {source: dc-source, rails: single, v_rail: 32 V, r_source: 20 mohm, bulk: {c: 4700 uF}}
channels:
  main:
    rated_power: 50 W
    rated_load: 8 ohm
    output_stage: {topology: full-bridge, devices: integrated, efficiency: 90 %,
      r_series: 50 mohm, device: {r_ds_on: 60 mohm}}
    gate_drive: {dead_time: 5 ns, t_pulse_min: 50 ns}
    modulator: {type: natural-sampling, carrier: 400 kHz, m_max: 95 %}
    filter: {type: lc, inductor: {l: 10 uH, dcr: 15 mohm}}
    limiter: {v_rms: 20 V}
    loudspeaker: {z_rated: 8 ohm, sensitivity: 88 dB, sensitivity_basis: 2.83-volt,
      coil_rise: 150 K}
claims: {sound_level: 103 dB, sound_distance: 1 m}
"""

CHECK = Check(
    title="Sound level with hot voice coils vs. claim",
    figure=figure,
    unit="dB",
    each="product",
    stake="performance",
    formula="sum over channels of levels - 20 log10(1 + copper coil_rise), powers added,"
    " - 20 log10(sound_distance / one_metre) - sound_level",
    sentence="With hot voice coils (rise {coil_rise}) the level is {figure:+above|below} the"
    " claimed {sound_level} at {sound_distance}.",
    inputs={
        "levels": Input("all level_channel"),
        "coil_rise": Input("all loudspeaker.coil_rise"),
        "sound_level": Input("claims.sound_level"),
        "sound_distance": Input("claims.sound_distance"),
        "copper": COPPER_COEFFICIENT,
        "one_metre": ONE_METRE,
    },
    applies={"coils_anywhere": "yes"},
    limits=AtLeast(minor="0 dB", basis={"minor": COMMON_PRACTICE}),
    levers=(Lever("claims.sound_level", "1 dB"),),
    sources=(COMPRESSION, COMMON_PRACTICE),
    cases=(
        Case(
            {
                "levels": ("100 dB",),
                "coil_rise": ("180 K",),
                "sound_level": "95.3 dB",
                "sound_distance": "1 m",
                "copper": "0.00393 1/K",
                "one_metre": "1 m",
            },
            gives="0.053 dB",
            tolerance=0.02,
            origin="computed: 20 log10 of 1.7074; the encyclopaedia prints 4.7 dB for 180 K",
        ),
        Case(
            {
                "levels": ("100 dB", "100 dB"),
                "coil_rise": ("150 K", "150 K"),
                "sound_level": "95 dB",
                "sound_distance": "2 m",
                "copper": "0.00393 1/K",
                "one_metre": "1 m",
            },
            gives="-2.0355 dB",
            origin="computed: pressures squared and added, half of them at twice the distance",
        ),
    ),
    topic=("claims.sound_level",),
    fails=LOUD,
    passes=LOUD.replace("sound_level: 103 dB", "sound_level: 98 dB"),
)
