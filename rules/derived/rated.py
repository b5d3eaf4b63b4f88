"""The distortion of a rating, and between what it may lie where nobody states it."""

from ...linter.check import COMMON_PRACTICE, Assumption, Input

THD = Input("rated_thd", "%", "distortion at the rated power")
THD_MOST = Input(
    "rated_thd",
    "%",
    "the same; silent: the highest at which powers are usually printed",
    Assumption("10 %", "favourable", COMMON_PRACTICE),
)
