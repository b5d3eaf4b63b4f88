"""The distortion of a rating, and between what it may lie where nobody states it."""

from ...linter.check import COMMON_PRACTICE, Assumption, Input

THD = Input("rated_thd")
THD_MOST = Input("rated_thd", default=Assumption("10 %", "favourable", COMMON_PRACTICE))
