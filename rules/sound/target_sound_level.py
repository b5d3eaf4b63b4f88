"""Claimed sound level against sensitivity and drive.

What the loudspeakers give at a metre for the largest sine of every channel, less the fall
with distance, against the claimed level.  Channels are added by power, as sounds that are
not alike.  Mind the basis of the sensitivity: 2.83 V are 2 W in 4 ohm, so a figure for
2.83 V flatters a 4 ohm loudspeaker by 3 dB against one for 1 W.

The fall is that of the free field, 6 dB a doubling; in a room it is less beyond a metre or
two, so the figure is on the safe side indoors.  A peak in place of the rms level is 3 dB, two
loudspeakers in phase in place of adding powers another 3 dB: a claim still higher is out of
reach, and holds at every milestone.  What to do first: more sensitivity is cheaper than power.
"""

from ...linter.check import COMMON_PRACTICE, AtLeast, Case, Check, Input, Lever, derivation
from ..formulas.acoustics import ONE_METRE, distance_loss


def figure(level_max: float, sound_level: float, sound_distance: float, one_metre: float) -> float:
    return level_max - distance_loss(sound_distance, one_metre) - sound_level


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
    loudspeaker: {z_rated: 8 ohm, sensitivity: 88 dB, sensitivity_basis: 2.83-volt}
claims: {sound_level: 112 dB, sound_distance: 1 m}
"""

CHECK = Check(
    title="Maximum sound level vs. claim",
    figure=figure,
    unit="dB",
    each="product",
    stake="performance",
    formula="level_max - 20 log10(sound_distance / one_metre) - sound_level",
    sentence="All channels reach {level_max} at 1 m, {figure:+above|below} the claimed"
    " {sound_level} at {sound_distance}.",
    inputs={
        "level_max": Input("level_max"),
        "sound_level": Input("claims.sound_level"),
        "sound_distance": Input("claims.sound_distance"),
        "one_metre": ONE_METRE,
    },
    applies={"loudspeaker_anywhere": "yes"},
    limits=AtLeast(
        major="-6 dB",
        minor="0 dB",
        basis={
            "major": derivation("crest of a sine, 3 dB, and two sources in phase, 3 dB"),
            "minor": COMMON_PRACTICE,
        },
    ),
    levers=(Lever("claims.sound_level", "1 dB"), Lever("limiter.v_rms", "0.5 V")),
    sources=(derivation("spherical spreading from sensitivity and voltage"), COMMON_PRACTICE),
    cases=(
        Case(
            {
                "level_max": "108 dB",
                "sound_level": "90 dB",
                "sound_distance": "3 m",
                "one_metre": "1 m",
            },
            gives="8.4576 dB",
            origin="computed: sound power of 100 W at 88 dB for 1 W, spread over a sphere of 3 m",
        ),
        Case(
            {
                "level_max": "103.533 dB",
                "sound_level": "85 dB",
                "sound_distance": "3 m",
                "one_metre": "1 m",
            },
            gives="8.99 dB",
            origin="computed: 35.75 W at 88 dB for 1 W by sound power; 85 dB at 3 m with"
            " peaks of 12 dB, 9 dB above a sine",
        ),
    ),
    topic=("claims.sound_level",),
    forbidden=True,
    fails=LOUD,
    passes=LOUD.replace("sound_level: 112 dB", "sound_level: 100 dB"),
)
