"""Level at the ear over the stated time, against a rule for hearing.

Hearing loss does not hurt and does not heal.  The rules trade level for time: 85 dB(A) for
eight hours and 3 dB for every half of it (NIOSH), 90 dB(A) and 5 dB (OSHA, the United
States' legal limit), 87 dB(A) by energy (European Union), 80 dB(A) for 40 hours a week by
energy (World Health Organization, leisure; 75 for children).

The figure is the programme level of all channels at the nearest listener, above what the
stated rule allows for the stated time.  For a channel whose band ends below 1 kHz the
A-weighting of that end is counted, the most that any sound of the band can have; for all
others 1 kHz is taken for it, so bass-heavy programme is less than the figure says.  Overtones
of distortion above the band are left out.  The programme lies below the largest sine by its
crest factor.  Only a design that states an exposure time is judged: it claims that use.  With
a notice and without a stated rule, hearing-exposure-with-notice answers instead.
Three decibels of margin are asked for, half the allowed time.

The rules here are summaries.  Local law and the advice of an occupational hygienist hold.
"""

from ...linter.check import (
    COMMON_PRACTICE,
    AtMost,
    Case,
    Check,
    Input,
    Lever,
)
from ..formulas.acoustics import (
    EXPOSURE_SOURCES,
    ONE_METRE,
    allowed_level,
    distance_loss,
    programme_drop,
)
from ..formulas.constants import ONE_HOUR
from ..hazards import HEARING


def figure(
    level_a: float,
    crest_factor: float,
    nearest_listener: float,
    exposure_time: float,
    exposure_rule: str,
    one_metre: float,
    one_hour: float,
) -> float:
    programme = level_a - programme_drop(crest_factor)
    at_ear = programme - distance_loss(nearest_listener, one_metre)
    return at_ear - allowed_level(exposure_time, exposure_rule, one_hour)


NEAR = """
signal: {crest_factor: 12 dB}
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
safety: {nearest_listener: 1 m, exposure_time: 4 h, exposure_rule: niosh}
"""
_CASE: dict[str, str | float] = {
    "level_a": "103.03 dB",
    "crest_factor": "12.04 dB",
    "nearest_listener": "1 m",
    "exposure_time": "2 h",
    "exposure_rule": "niosh",
    "one_metre": "1 m",
    "one_hour": "1 h",
}

CHECK = Check(
    title="Level at the ear vs. hearing limit",
    figure=figure,
    unit="dB",
    each="product",
    stake="safety",
    formula="level_a - (crest_factor - 3.01) - 20 log10(nearest_listener / one_metre)"
    " - level that exposure_rule allows for exposure_time (in units of one_hour)",
    sentence="Programme level is {figure:+above|below} the {exposure_rule:upper} limit for"
    " {exposure_time} a day at {nearest_listener} (sine {level_a} at 1 m).",
    inputs={
        "level_a": Input("level_a"),
        "crest_factor": Input("signal.crest_factor"),
        "nearest_listener": Input("safety.nearest_listener"),
        "exposure_time": Input("safety.exposure_time"),
        "exposure_rule": Input("safety.exposure_rule"),
        "one_metre": ONE_METRE,
        "one_hour": ONE_HOUR,
    },
    limits=AtMost(
        major="0 dB",
        minor="-3 dB",
        basis={"major": EXPOSURE_SOURCES[0], "minor": COMMON_PRACTICE},
    ),
    levers=(Lever("limiter.v_rms", "0.5 V"),),
    otherwise="a lower level at the ear: less power, or a mounting that keeps listeners away",
    sources=EXPOSURE_SOURCES,
    cautions=(HEARING,),
    cases=(
        Case(
            _CASE,
            gives="3 dB",
            origin="published: NIOSH, 91 dBA for 2 h; programme of 94 dB, sine 9.03 dB above it",
        ),
        Case(
            {**_CASE, "exposure_rule": "osha", "exposure_time": "0.5 h"},
            gives="-16 dB",
            origin="published: 29 CFR 1910.95 table G-16, 110 dBA for half an hour",
        ),
    ),
    applies={"hearing_rule_kept": "yes"},
    topic=("safety.exposure_time",),
    fails=NEAR,
    passes=NEAR.replace("limiter: {v_rms: 20 V}", "limiter: {v_rms: 2 V}"),
)
