"""Level at the ear over the stated time, where a notice is given and no rule claimed.

The level is that of the programme at the highest setting, without a pause, at the nearest ear.
Nearly every loudspeaker that stands within reach exceeds the rules that way: two channels of
25 W on a desk do, after a quarter of the stated time. A product that claims to keep a rule (the
spec states which one) is held to it by hearing-exposure. One that only says how long people
sit near it, and carries the notice, is told of it: minor.

Ten decibels above the rule a tenth of the time is allowed (NIOSH); neither pauses nor the usual
setting of the volume explain that away, so from there on it is major, notice or not. First
fixes: a limiter, a lower power, a mounting that keeps the ear away. Local law holds.
"""

from dataclasses import replace

from ...linter.check import AtMost, Case, Check, derivation
from ..formulas.acoustics import EXPOSURE_SOURCES
from .hearing_exposure import CHECK as CLAIMED
from .hearing_exposure import NEAR
from .hearing_exposure import figure as above_rule

RULE = "niosh"
WITH_NOTICE = NEAR.replace("exposure_rule: niosh", "hearing_notice: yes")


def figure(
    level_a: float,
    crest_factor: float,
    nearest_listener: float,
    exposure_time: float,
    one_metre: float,
    one_hour: float,
) -> float:
    return above_rule(
        level_a, crest_factor, nearest_listener, exposure_time, RULE, one_metre, one_hour
    )


def _case(case: Case) -> Case:
    """The same without a rule of its own."""
    return replace(
        case, inputs={name: x for name, x in case.inputs.items() if name != "exposure_rule"}
    )


CHECK: Check = replace(
    CLAIMED,
    title="Level at the ear vs. hearing limit, with a notice",
    figure=figure,
    formula=CLAIMED.formula.replace("exposure_rule", "NIOSH"),
    sentence=CLAIMED.sentence.replace("{exposure_rule:upper}", "NIOSH"),
    inputs={name: x for name, x in CLAIMED.inputs.items() if name != "exposure_rule"},
    applies={"hearing_rule_kept": "no"},
    limits=AtMost(
        major="10 dB",
        minor="0 dB",
        basis={
            "major": derivation("3 dB halve the time: 10 dB above, a tenth of it is allowed"),
            "minor": EXPOSURE_SOURCES[0],
        },
    ),
    cases=(
        _case(CLAIMED.cases[0]),
        Case(
            {**_case(CLAIMED.cases[0]).inputs, "exposure_time": "15 min"},
            gives="-6 dB",
            origin="published: NIOSH, 100 dBA for 15 min; programme of 94 dB",
            tolerance=0.001,
        ),
    ),
    fails=WITH_NOTICE,
    passes=WITH_NOTICE.replace("limiter: {v_rms: 20 V}", "limiter: {v_rms: 2 V}"),
)
