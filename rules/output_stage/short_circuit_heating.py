"""Junction temperature while the protection keeps trying into a short circuit.

A protection that tries again by itself puts one short-circuit event into the device in
every retry interval, for as long as the short lasts: all night, if a lead is pinched.  The
average power of these tries must leave the junction cool enough.  A protection that
latches until the supply is switched has no such problem.

Each event is counted as V I t + L I^2 / 2 with the upper end of the trip and the whole of it
in one package, on the heatsink's temperature at programme; a package without a heatsink gives
it to the air in the box, through `r_th_ja`.  The events themselves are judged by
short-circuit-energy.  First fixes: a longer retry interval (half a second is usual), a latch
after a few tries.  25 K are kept because the heat of single pulses is not spread evenly
over the crystal.
"""

from ...linter.check import (
    COMMON_PRACTICE,
    Assumption,
    AtLeast,
    Case,
    Check,
    Input,
    Lever,
    derivation,
)
from ..hazards import FIRST_POWER_UP


def figure(
    t_j_max: float,
    t_heatsink: float,
    r_th: float,
    v_swing: float,
    i_trip: float,
    t_response: float,
    l: float,  # noqa: E741
    t_retry: float,
) -> float:
    """Distance of the junction from its limit while the protection retries."""
    energy = v_swing * i_trip * t_response + l * i_trip**2 / 2
    return t_j_max - t_heatsink - r_th * energy / t_retry


LATCHED = derivation("a protection that latches does not try again")

CHECK = Check(
    title="Junction temperature during short-circuit retries vs. limit",
    figure=figure,
    unit="K",
    each="channel",
    stake="rating",
    formula="t_j_max - t_heatsink - r_th (v_swing i_trip t_response + l i_trip^2 / 2) / t_retry",
    sentence="Retries into a short every {t_retry} heat the junction to {figure:+below|above} its"
    " {t_j_max} limit.",
    inputs={
        "t_j_max": Input("output_stage.device.t_j_max"),
        "t_heatsink": Input("t_sink_or_air"),
        "r_th": Input("r_th_to_sink"),
        "v_swing": Input("v_swing"),
        "i_trip": Input("output_stage.over_current.i_trip"),
        "t_response": Input("output_stage.over_current.t_response"),
        "l": Input("filter.inductor.l"),
        "t_retry": Input(
            "output_stage.over_current.t_retry", default=Assumption("1 Gs", "favourable", LATCHED)
        ),
    },
    limits=AtLeast(
        critical="0 K",
        minor="25 K",
        basis={
            "critical": derivation("absolute maximum rating of the device"),
            "minor": COMMON_PRACTICE,
        },
    ),
    levers=(Lever("output_stage.over_current.t_retry", "50 ms"),),
    sources=(LATCHED, derivation("mean power of repeated events through the thermal path")),
    cautions=(FIRST_POWER_UP,),
    cases=(
        Case(
            {
                "t_j_max": "150 degC",
                "t_heatsink": "80 degC",
                "r_th": "1.6 K/W",
                "v_swing": "25.2 V",
                "i_trip": "10 A",
                "t_response": "600 ns",
                "l": "10 uH",
                "t_retry": "500 ms",
            },
            "69.998 K",
            "computed: 0.651 mJ twice a second is 1.3 mW, thermal path summed by hand",
        ),
        Case(
            {
                "t_j_max": "150 degC",
                "t_heatsink": "80 degC",
                "r_th": "2 K/W",
                "v_swing": "100 V",
                "i_trip": "40 A",
                "t_response": "2 us",
                "l": "22 uH",
                "t_retry": "1 ms",
            },
            "18.8 K",
            "derived: 25.6 mJ a millisecond are 25.6 W",
        ),
    ),
    topic=("output_stage.over_current.t_retry",),
    asked_from="production",
    fails="""
supply: {source: dc-source, rails: split, v_rail: 50 V}
channels:
  main:
    output_stage:
      topology: half-bridge
      devices: discrete
      over_current: {i_trip: 40 A, t_response: 2 us, t_retry: 1 ms}
      device: {t_j_max: 150 degC, r_th_jc: 4 K/W}
    filter: {type: lc, inductor: {l: 22 uH}}
thermal: {heatsink: {t: 80 degC}}
""",
    passes="""
supply: {source: dc-source, rails: single, v_rail: 25 V}
channels:
  main:
    output_stage:
      topology: full-bridge
      devices: discrete
      over_current: {i_trip: 10 A, t_response: 600 ns, t_retry: 500 ms}
      device: {t_j_max: 150 degC, r_th_jc: 1.6 K/W}
    filter: {type: lc, inductor: {l: 10 uH}}
thermal: {heatsink: {t: 80 degC}}
""",
)
