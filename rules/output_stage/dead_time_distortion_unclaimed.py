"""Distortion that dead time causes, where no distortion is claimed.

Physics and figure are those of dead-time-distortion.  Where the spec claims no distortion, or
rates its power at more than 1 %, nobody has promised less than that: more than 1 % at 1 kHz is
what good practice avoids, a minor that asks for the claim.  Small integrated parts with long fixed
dead times and no feedback work that way.  More than 10 % is major all the same: it is the most at
which powers are rated, and here it comes from every tone, clipped or not.  First fixes: less dead
time, a lower carrier, loop gain at the third harmonic; or the claim that the product can keep.
"""

from dataclasses import replace

from ...linter.check import COMMON_PRACTICE, AtMost, Check, derivation
from .dead_time_distortion import CHECK as CLAIMED
from .dead_time_distortion import figure

CHECK: Check = replace(
    CLAIMED,
    title="Distortion from dead time vs. 1 %, none claimed",
    figure=figure,
    sentence="Dead time {t_dead_distortion} makes {thd:*figure} distortion at 1 kHz ({carrier}"
    " carrier); good practice {thd}, none claimed.",
    applies={"dead_time_judged": "yes", "thd_claimed": "no"},
    limits=AtMost(
        major="1000 %",
        minor="100 %",
        basis={
            "major": derivation("10 % of distortion, the most at which powers are rated"),
            "minor": COMMON_PRACTICE,
        },
    ),
    levers=CLAIMED.levers[:3],
    fails=CLAIMED.fails.replace("claims: {thd: 0.1 %}", "").replace("45 ns", "95 ns"),
    passes=CLAIMED.passes.replace("claims: {thd: 0.1 %}", ""),
)
