"""Claimed sound level against the power rating of the loudspeakers.

A large amplifier makes a small loudspeaker loud, for a while.  The figure is the level
that all loudspeakers give at their own noise rating, less the fall with distance, above
the claimed level.  Three decibels below the claim are let pass: they are the amplifier of
twice the rating that makers advise for unclipped music.  Six decibels ask for four times
the rating, the peak power of the rating signal, and hold at every milestone.

A rating without a method counts as a noise rating, which flatters; programme and peak
ratings are brought down first.  What to do first: more or more sensitive loudspeakers.
"""

from ...linter.check import AtLeast, Case, Check, Input, Lever, derivation
from ..formulas.acoustics import ONE_METRE, distance_loss, sum_of_levels
from ..formulas.load import PEAKS_OF_NOISE, RATING_KINDS


def figure(
    levels: tuple[float, ...], sound_level: float, sound_distance: float, one_metre: float
) -> float:
    return sum_of_levels(levels) - distance_loss(sound_distance, one_metre) - sound_level


CLAIMED = """
channels:
  main:
    loudspeaker: {z_rated: 8 ohm, sensitivity: 88 dB, sensitivity_basis: 2.83-volt,
      p_rated: 30 W, rating_method: aes2-1984}
claims: {sound_level: 110 dB, sound_distance: 1 m}
"""

CHECK = Check(
    title="Sound level at the loudspeakers' rating vs. claim",
    figure=figure,
    unit="dB",
    each="product",
    stake="performance",
    formula="sum of levels as powers - 20 log10(sound_distance / one_metre) - sound_level",
    sentence="Loudspeakers at their noise rating reach {levels} at 1 m, {figure:+above|below} the"
    " claimed {sound_level} at {sound_distance}.",
    inputs={
        "levels": Input("all level_rating"),
        "sound_level": Input("claims.sound_level"),
        "sound_distance": Input("claims.sound_distance"),
        "one_metre": ONE_METRE,
    },
    applies={"coils_anywhere": "yes", "loudspeaker_anywhere": "yes"},
    limits=AtLeast(
        major="-6.1 dB",
        minor="-3.1 dB",
        basis={"major": PEAKS_OF_NOISE, "minor": RATING_KINDS},
    ),
    levers=(Lever("claims.sound_level", "1 dB"),),
    sources=(RATING_KINDS, derivation("sensitivity scaled with the rated voltage")),
    cases=(
        Case(
            {
                "levels": ("108 dB",),
                "sound_level": "95 dB",
                "sound_distance": "3 m",
                "one_metre": "1 m",
            },
            gives="3.4576 dB",
            origin="computed: sound power of 100 W at 88 dB for 1 W, spread over a sphere of 3 m",
        ),
        Case(
            {
                "levels": ("100 dB", "100 dB"),
                "sound_level": "105 dB",
                "sound_distance": "1 m",
                "one_metre": "1 m",
            },
            gives="-1.9897 dB",
            origin="computed: squared pressures of 2 Pa added twice",
        ),
    ),
    topic=("claims.sound_level",),
    forbidden=True,
    fails=CLAIMED,
    passes=CLAIMED.replace("sound_level: 110 dB", "sound_level: 102 dB"),
)
