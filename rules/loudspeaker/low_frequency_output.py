"""Level that the linear travel allows at the low end of the band.

A cone moves a volume of air; the level falls 12 dB with every octave at the same travel,
whatever the amplifier can do.  A claimed level that the cones reach at 1 kHz may be far
out of reach at the bottom of the claimed band.  The figure is the level of all cones of
the channel at their linear travel and the lowest frequency, in half space (on a floor or
in a wall), above the claimed level at its distance.  In a vented box the port adds to the
cone, most of all at the tuning.

Flattering on purpose: every channel is counted as carrying the same bass in phase.  Ten
decibels are let pass, the drop that data sheets allow where they print a usable range.
Not for open baffles, horns and passive radiators.
"""

from ...linter.check import COMMON_PRACTICE, AtLeast, Case, Check, Input, Lever, derivation
from ..formulas.acoustics import (
    AIR_DENSITY,
    ONE_METRE,
    P_REFERENCE,
    decibel,
    distance_loss,
    piston_level,
)


def figure(
    band_low: float,
    s_d: float,
    x_max: float,
    series: float,
    parallel: float,
    channel_count: float,
    box_gain: float,
    sound_level: float,
    sound_distance: float,
    one_metre: float,
    air_density: float,
    p_reference: float,
) -> float:
    cones = series * parallel * channel_count
    level = piston_level(band_low, s_d, x_max, cones, one_metre, air_density, p_reference)
    return level + decibel(box_gain) - distance_loss(sound_distance, one_metre) - sound_level


_CASE: dict[str, str | float] = {
    "band_low": "30 Hz",
    "s_d": "137 cm2",
    "x_max": "5 mm",
    "series": 1,
    "parallel": 1,
    "channel_count": 1,
    "box_gain": 1,
    "sound_level": "90 dB",
    "sound_distance": "1 m",
    "one_metre": "1 m",
    "air_density": "1.18 kg/m3",
    "p_reference": "20 uPa",
}
CLAIMED = """
channels:
  main:
    band: 35 Hz .. 18 kHz
    loudspeaker: {z_rated: 8 ohm, s_d: 80 cm2, x_max: 3 mm,
      enclosure: {type: sealed, v_b: 5 L}}
claims: {sound_level: 95 dB, sound_distance: 1 m}
"""

CHECK = Check(
    title="Output at the low band edge vs. claimed sound level",
    figure=figure,
    unit="dB",
    each="channel",
    stake="performance",
    formula="20 log10(air_density (2 pi band_low)^2 s_d x_max series parallel channel_count"
    " / (2^0.5 2 pi one_metre p_reference)) + 20 log10(box_gain)"
    " - 20 log10(sound_distance / one_metre) - sound_level",
    sentence="At {band_low} the cones reach {figure:+above|below} the claimed {sound_level} at"
    " {sound_distance} (linear travel {x_max}).",
    inputs={
        "band_low": Input("band_low"),
        "s_d": Input("loudspeaker.s_d"),
        "x_max": Input("loudspeaker.x_max"),
        "series": Input("loudspeaker.series"),
        "parallel": Input("loudspeaker.parallel"),
        "channel_count": Input("channel_count"),
        "box_gain": Input("box_gain"),
        "sound_level": Input("claims.sound_level"),
        "sound_distance": Input("claims.sound_distance"),
        "one_metre": ONE_METRE,
        "air_density": AIR_DENSITY,
        "p_reference": P_REFERENCE,
    },
    applies={"loudspeaker.enclosure.type": ("sealed", "vented"), "travel_stated": "yes"},
    limits=AtLeast(minor="-10 dB", basis={"minor": COMMON_PRACTICE}),
    levers=(Lever("claims.sound_level", "1 dB"),),
    sources=(
        derivation("simple source in half space; the Rayleigh integral agrees"),
        COMMON_PRACTICE,
    ),
    cases=(
        Case(
            _CASE,
            gives="-5.83 dB",
            origin="computed: Rayleigh integral over the piston, 84.17 dB at 1 m",
        ),
        Case(
            {**_CASE, "band_low": "40 Hz", "x_max": "17.4015 mm"},
            gives="10 dB",
            origin="computed: sound power through the half sphere, 100 dB need 238.4 cm3 peak",
        ),
        Case(
            {**_CASE, "series": 2, "parallel": 3, "channel_count": 2},
            gives="15.7526 dB",
            origin="computed: twelve equal sources summed on a baffle, 105.753 dB at 1 m",
        ),
    ),
    topic=("loudspeaker.x_max",),
    fails=CLAIMED,
    passes=CLAIMED.replace("sound_level: 95 dB", "sound_level: 80 dB"),
)
