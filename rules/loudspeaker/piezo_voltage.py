"""Voltage at a piezo transducer against its rating.

A piezo transducer takes hardly any power, so that none is printed; it takes a voltage.  Beyond it
the ceramic loses its polarisation or cracks, and the loudspeaker is dead for good.  The drive of
a stage is the same at every frequency, and a horn tweeter of 20 V on a stage of 50 V rails lives
only while nobody plays loud.

The figure is the largest sine at the load, shared by those in series, over the rating of one.  A
limiter counts.  First fixes: a limiter, a divider of two resistors ahead of the transducer, two
in series.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever, derivation
from ..hazards import LOUDSPEAKER_LOST


def figure(v_load_rms: float, series: float, v_rated: float) -> float:
    """Voltage at one transducer over its rating."""
    return v_load_rms / series / v_rated


HORN = """
supply: {source: dc-source, rails: single, v_rail: 32 V, r_source: 20 mohm, bulk: {c: 4700 uF}}
channels:
  main:
    rated_power: 50 W
    rated_load: 8 ohm
    rated_thd: 1 %
    limiter: {v_rms: LIMIT}
    output_stage: {topology: full-bridge, devices: integrated, efficiency: 90 %,
      r_series: 50 mohm, device: {r_ds_on: 60 mohm}}
    gate_drive: {dead_time: 5 ns, t_pulse_min: 50 ns}
    modulator: {type: natural-sampling, carrier: 400 kHz, m_max: 95 %}
    filter: {type: lc, inductor: {l: 10 uH, dcr: 15 mohm}}
    loudspeaker: {piezo: {c: 150 nF, r_series: 22 ohm, v_rated: 15 V}}
"""

CHECK = Check(
    title="Voltage at the piezo transducer vs. rating",
    figure=figure,
    unit="1",
    each="channel",
    stake="rating",
    formula="v_load_rms / series / v_rated",
    sentence="Piezo transducer gets {v_rated:*figure}; rated {v_rated} ({figure:%}).",
    inputs={
        "v_load_rms": Input("v_load_rms"),
        "series": Input("loudspeaker.series"),
        "v_rated": Input("loudspeaker.piezo.v_rated"),
    },
    applies={"loudspeaker.piezo": "fitted"},
    limits=AtMost(
        critical="1",
        minor="0.9",
        basis={
            "critical": derivation("highest voltage that the transducer is rated for"),
            "minor": COMMON_PRACTICE,
        },
    ),
    levers=(Lever("limiter.v_rms", "0.5 V"), Lever("loudspeaker.series", ("1", "2", "3"))),
    sources=(derivation("equal capacitors in series share the voltage"),),
    cautions=(LOUDSPEAKER_LOST,),
    cases=(
        Case(
            {"v_load_rms": "28.28 V", "series": 1, "v_rated": "20 V"},
            gives="1.414",
            origin="derived: 100 W into 8 ohm are 28.28 V",
        ),
        Case(
            {"v_load_rms": "28.28 V", "series": 2, "v_rated": "20 V"},
            gives="0.707",
            origin="computed: divider of two equal impedances, nodal solution",
        ),
    ),
    topic=("loudspeaker.piezo",),
    asked_from="prototype",
    fails=HORN.replace("LIMIT", "20 V"),
    passes=HORN.replace("LIMIT", "10 V"),
)
