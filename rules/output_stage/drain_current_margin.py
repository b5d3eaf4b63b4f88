"""Continuous drain current of one device against its rating at the hot case.

A drain current rating is printed for a case held at 25 degC, which no amplifier has. At a hot
case less temperature rise is left, and the current allowed falls as its square root. Over an
audio period each switch of a leg carries the current half of the time: the rms of a device is
half the peak of the sine, plus its part of the ripple.

The figure takes the rated sine and the heatsink's temperature (80 degC where the spec tells
no heatsink: published stages run their cases at 75 to 85 degC at full power; at 100 degC a
much copied 250 W board would fail by 2 %). It is seldom the limit: a device that stays cool
enough passes by far, so a failure here means a much too small device or a misread load. First
fixes: a larger device, devices in parallel, a cooler case. A military factor of 0.8,
printed for the average current at the maximum junction temperature, counts as minor, here of
the rms; that of 0.6 is not applied: a much copied 250 W board would fail it.
"""

from ...linter.check import (
    Assumption,
    AtMost,
    Case,
    Check,
    Input,
    Lever,
    Source,
    derivation,
)
from ..formulas.constants import LEAST_RISE, PRINTED_AT
from ..formulas.maths import larger
from ..hazards import FIRST_POWER_UP


def figure(
    i_rated_peak: float,
    ripple: float,
    parallel: float,
    i_d: float,
    t_j_max: float,
    t_case: float,
    t_cold: float,
    t_least: float,
) -> float:
    """Rms current of one device over its rating at the hot case."""
    rms = (i_rated_peak**2 / 4 + ripple**2 / 24) ** 0.5 / parallel
    left = larger(t_j_max - t_case, t_least)
    return rms / (i_d * (left / larger(t_j_max - t_cold, t_least)) ** 0.5)


USUAL_CASE = Source(
    "International Rectifier, IRAUDAMP7D reference design, rev. 2.9; TPA3221 data sheet SLASEE9B",
    "p. 5: case at 80 degC with 2 x 120 W; p. 9: data at a case of 75 degC",
)
HEAT = derivation("I^2 R through a fixed thermal resistance: current goes as the root of the rise")

CHECK = Check(
    title="Drain current vs. rating at the hot case",
    figure=figure,
    unit="%",
    each="channel",
    stake="rating",
    formula="sqrt(i_rated_peak^2 / 4 + ripple^2 / 24) / parallel / "
    "(i_d sqrt((t_j_max - t_case) / (t_j_max - t_cold))), both rises at least t_least",
    sentence="Drain current is {figure:% of} the hot rating ({i_rated_peak} peak; {i_d} at 25 °C,"
    " case at {t_case}).",
    inputs={
        "i_rated_peak": Input("i_rated_peak"),
        "ripple": Input(
            "ripple_idle",
            default=Assumption("0 A", "floor", derivation("current without its ripple")),
        ),
        "parallel": Input("output_stage.parallel"),
        "i_d": Input("output_stage.device.i_d"),
        "t_j_max": Input("output_stage.device.t_j_max"),
        "t_case": Input(
            "t_heatsink",
            meaning="heatsink, taken for the case",
            default=Assumption("80 degC", "neutral", USUAL_CASE, placeholder=True),
        ),
        "t_cold": PRINTED_AT,
        "t_least": LEAST_RISE,
    },
    applies={"output_stage.devices": "discrete"},
    limits=AtMost(
        critical="100 %",
        minor="80 %",
        basis={
            "critical": derivation("absolute maximum rating of the device"),
            "minor": Source(
                "MIL-DTL-917", "table XIX, p. 60: average drain current 0.8 of the rating at most"
            ),
        },
    ),
    levers=(
        Lever(
            "output_stage.device.i_d",
            ("10 A", "15 A", "20 A", "30 A", "40 A", "60 A", "80 A", "100 A"),
        ),
        Lever("output_stage.parallel", ("2", "3", "4")),
    ),
    sources=(HEAT, derivation("each switch of a leg carries a sine half of the time")),
    cautions=(FIRST_POWER_UP,),
    cases=(
        Case(
            {
                "i_rated_peak": "12.5 A",
                "ripple": "0 A",
                "parallel": 1.0,
                "i_d": "18 A",
                "t_j_max": "175 degC",
                "t_case": "100 degC",
            },
            "49.1 %",
            "published: IRFB4020 data sheet PD-97195, p. 1: 18 A at 25 degC, 13 A (here 12.7 A) "
            "at 100 degC; peak assumed, its rms integrated numerically",
        ),
        Case(
            {
                "i_rated_peak": "5 A",
                "ripple": "2.841 A",
                "parallel": 1.0,
                "i_d": "10 A",
                "t_j_max": "150 degC",
                "t_case": "25 degC",
            },
            "25.66 %",
            "derived: root of 25/4 + 2.841^2/24 is 2.566 A",
        ),
        Case(
            {
                "i_rated_peak": "20 A",
                "ripple": "6 A",
                "parallel": 2.0,
                "i_d": "10 A",
                "t_j_max": "175 degC",
                "t_case": "100 degC",
            },
            gives="71.24 %",
            origin="derived: root of 400/4 + 36/24 is 10.075 A, half in each device of 7.071 A",
        ),
    ),
    topic=("output_stage.device.i_d",),
    asked_from="prototype",
    fails="""
supply: {source: dc-source, rails: split, v_rail: 35 V}
channels:
  main:
    rated_power: 120 W
    rated_load: 4 ohm
    output_stage:
      topology: half-bridge
      devices: discrete
      device: {i_d: 4 A, t_j_max: 150 degC}
    modulator: {type: self-oscillating, carrier: 400 kHz}
    filter: {type: lc, inductor: {l: 22 uH}, c_across: {c: 0.47 uF}, c_ground: none}
thermal: {heatsink: {t: 80 degC}}
""",
    passes="""
supply: {source: dc-source, rails: split, v_rail: 35 V}
channels:
  main:
    rated_power: 120 W
    rated_load: 4 ohm
    output_stage:
      topology: half-bridge
      devices: discrete
      device: {i_d: 11 A, t_j_max: 150 degC}
    modulator: {type: self-oscillating, carrier: 400 kHz}
    filter: {type: lc, inductor: {l: 22 uH}, c_across: {c: 0.47 uF}, c_ground: none}
thermal: {heatsink: {t: 80 degC}}
""",
)
