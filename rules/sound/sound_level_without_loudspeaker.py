"""A claimed sound level of a product that has no loudspeaker.

An amplifier that is sold without loudspeakers makes no sound of its own.  How loud it gets is a
matter of what somebody connects: between a small loudspeaker of 80 dB and a horn of 115 dB, for
the same 2.83 V, lies a factor of three thousand in power.  A level in its papers is
then a promise that nobody can keep or check.

The figure counts the channels, where none of them has a loudspeaker.  Any is major.  First
fix: take the level out of the claims, or describe the loudspeaker with which it is meant.
"""

from ...linter.check import AtMost, Case, Check, Input, derivation
from ..derived.line import UNSAID

SILENT = derivation("without a loudspeaker there is no sound")


def figure(loudspeakers: tuple[str, ...], sound_level: float) -> float:
    """Channels of which the claim says something that they have not."""
    bare = loudspeakers.count("none")
    return float(bare if bare == len(loudspeakers) else 0) + 0.0 * sound_level


BARE = """
channels: {main: {rated_power: 50 W, rated_load: 8 ohm, loudspeaker: none}}
claims: {sound_level: 104 dB, sound_distance: 1 m}
"""

CHECK = Check(
    title="Claimed sound level vs. loudspeaker fitted",
    figure=figure,
    unit="1",
    each="product",
    stake="performance",
    formula="number of loudspeakers where all are none and sound_level is claimed",
    sentence="Sound level {sound_level} is claimed of a product with {figure:?a|no} loudspeaker.",
    inputs={
        "loudspeakers": Input("all loudspeaker", default=UNSAID),
        "sound_level": Input("claims.sound_level"),
    },
    limits=AtMost(major="0", basis={"major": SILENT}),
    sources=(SILENT,),
    cases=(
        Case(
            {"loudspeakers": ("none", "none"), "sound_level": "104 dB"},
            gives="2",
            origin="derived: two channels, each without a loudspeaker",
        ),
        Case(
            {"loudspeakers": ("fitted",), "sound_level": "104 dB"},
            gives="0",
            origin="common practice: a loudspeaker with its amplifier",
        ),
    ),
    topic=("claims.sound_level",),
    fails=BARE,
    passes=BARE.replace("loudspeaker: none", "loudspeaker: {z_rated: 8 ohm}"),
)
