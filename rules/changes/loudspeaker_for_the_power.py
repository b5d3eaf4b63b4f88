"""A loudspeaker for the rated power, with a limiter that keeps to it.

The limiter lets the rated power through and no more; the loudspeaker is rated for that power
as noise.  One without the other does not do: driven into clipping an amplifier gives up to
twice its sine power.  Which loudspeaker that is changes cone, sensitivity and box: a guess
until one is chosen.
"""

from ...linter.check import COMMON_PRACTICE, Input, derivation
from ...linter.design_change import DesignChange, Follow


def sine(p: float, r: float) -> float:
    """Root-mean-square voltage of the rated power."""
    return (p * r) ** 0.5


def peak(p: float, r: float) -> float:
    """Its peak."""
    return (2 * p * r) ** 0.5


def rating_needed(was: float, p_noise: float, p: float, series: float, parallel: float) -> float:
    """Rating by the same method at which the noise rating is the rated power of one."""
    return was * p / (series * parallel) / p_noise


CHANGE = DesignChange(
    title="a loudspeaker for the rated power, with a limiter that keeps to it",
    kind="part",
    helps=("loudspeaker-clipped-power", "loudspeaker-power-match"),
    follows=(
        Follow(
            "limiter.v_rms",
            sine,
            {"p": Input("rated_power"), "r": Input("z_load")},
            "0.5 V",
            "up",
            new=True,
        ),
        Follow(
            "limiter.v_peak",
            peak,
            {"p": Input("rated_power"), "r": Input("z_load")},
            "0.5 V",
            "up",
            new=True,
        ),
        Follow(
            "loudspeaker.p_rated",
            rating_needed,
            {
                "was": Input("before loudspeaker.p_rated"),
                "p_noise": Input("before p_driver_noise"),
                "p": Input("rated_power"),
                "series": Input("loudspeaker.series"),
                "parallel": Input("loudspeaker.parallel"),
            },
            "10 W",
            "up",
            guess=True,
        ),
    ),
    sources=(derivation("P = U^2 / R, shared by equal loudspeakers"), COMMON_PRACTICE),
)
