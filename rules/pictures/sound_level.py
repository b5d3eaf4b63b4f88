"""Sound level over the distance: the largest sine, the programme, and what the ear may bear.

Levels and rules are those of the checks of the claimed level and of the exposure; the free
field falls by 6 dB a doubling of the distance.
"""

from ...linter.check import Arguments, Constant, Input
from ...linter.picture import Amount, Axis, Curve, Curves, Mark, Spot
from ..formulas.acoustics import (
    EXPOSURE_SOURCES,
    ONE_METRE,
    allowed_level,
    distance_loss,
    programme_drop,
)
from ..formulas.constants import ONE_HOUR
from ..formulas.maths import larger, smaller
from .parts import of

RULE = "niosh"
PLACES: Arguments = {
    "listener": Input("safety.nearest_listener"),
    "claimed": Input("claims.sound_distance"),
}


def sine(x: float, level_max: float, one_metre: float) -> float:
    """Level of all channels at a distance x."""
    return level_max - distance_loss(x, one_metre)


def programme(x: float, level_a: float, crest_factor: float, one_metre: float) -> float:
    """A-weighted level at most of the programme whose peaks are those of that sine."""
    return level_a - programme_drop(crest_factor) - distance_loss(x, one_metre)


def near(listener: float, claimed: float) -> float:
    """Half the smaller of both distances."""
    return smaller(listener, claimed) / 2


def far(listener: float, claimed: float) -> float:
    """Ten times the larger of both distances."""
    return 10 * larger(listener, claimed)


def allowed(exposure_time: float, exposure_rule: str, one_hour: float) -> float:
    """What the stated rule allows for the stated time."""
    return allowed_level(exposure_time, exposure_rule, one_hour)


def by_niosh(time: float, one_hour: float) -> float:
    """What NIOSH allows for a time a day."""
    return allowed_level(time, RULE, one_hour)


def _known(label: str, time: str) -> Mark:
    constant = Constant(time, "time a day", EXPOSURE_SOURCES[0])
    return Mark(label, "y", (Amount({"time": constant, "one_hour": ONE_HOUR}, by_niosh),), "trip")


STATED: Arguments = {
    "exposure_time": Input("safety.exposure_time"),
    "exposure_rule": Input("safety.exposure_rule"),
    "one_hour": ONE_HOUR,
}

PICTURE = Curves(
    title="How loud is it, and how long may an ear stay there?",
    each="product",
    x=Axis("distance", "m", Amount(PLACES, near), Amount(PLACES, far), logarithmic=True),
    y=Axis("sound level, free field; programme in dB(A)", "dB"),
    curves=(
        Curve("largest sine", (
            Amount({"level_max": Input("level_max"), "one_metre": ONE_METRE}, sine),)),
        Curve("programme", (
            Amount({"level_a": Input("level_a"), "crest_factor": Input("signal.crest_factor"),
                    "one_metre": ONE_METRE}, programme),)),
    ),
    marks=(
        _known("NIOSH: 8 h a day", "8 h"),
        _known("NIOSH: 15 min a day", "15 min"),
        Mark("stated rule and time", "y", (Amount(STATED, allowed),)),
        Mark("nearest listener", "x", (of("safety.nearest_listener"),), "second"),
    ),
    spots=(Spot("claimed", of("claims.sound_distance"), of("claims.sound_level"), "claim"),),
    note="All channels at their largest sine, powers added; rooms fall less, and close to the box"
    " it is less. The lines of the rules count for the programme, at the highest setting without a"
    " pause.",
    checks=("target-sound-level", "level-beyond-drivers", "hearing-exposure",
            "hearing-exposure-with-notice"),
)  # fmt: skip
