"""Notice about hearing where the product can be too loud.

Eighty-five decibels (A) is what NIOSH allows for a working day and where the
European directive asks employers to act.  A product whose programme exceeds it at the
nearest listener needs words about it in the manual or on the product.  Nearly every
hi-fi amplifier does; that is no reason to change the amplifier, so this is minor, and it
does not concern a product that carries the notice.

The programme lies below the largest sine by its crest factor.  A-weighting is that of the
top of the band where it lies below 1 kHz, else none.  Wording and place of the notice follow
from local law.
"""

from ...linter.check import AtMost, Case, Check, Input, Lever, Source
from ..formulas.acoustics import EXPOSURE_SOURCES, ONE_METRE, distance_loss, programme_drop
from ..hazards import HEARING

ACTION = Source("Directive 2003/10/EC, article 3", "upper action value 85 dB(A)")


def figure(level_a: float, crest_factor: float, nearest_listener: float, one_metre: float) -> float:
    return level_a - programme_drop(crest_factor) - distance_loss(nearest_listener, one_metre)


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
safety: {nearest_listener: 1 m, hearing_notice: no}
"""

CHECK = Check(
    title="Programme level without a hearing notice",
    figure=figure,
    unit="dB",
    each="product",
    stake="safety",
    formula="level_a - (crest_factor - 3.01) - 20 log10(nearest_listener / one_metre)",
    sentence="Programme level {figure} at {nearest_listener}; no hearing notice on the product.",
    inputs={
        "level_a": Input("level_a"),
        "crest_factor": Input("signal.crest_factor"),
        "nearest_listener": Input("safety.nearest_listener"),
        "one_metre": ONE_METRE,
    },
    applies={"safety.hearing_notice": "no"},
    limits=AtMost(minor="85 dB", basis={"minor": ACTION}),
    levers=(Lever("safety.hearing_notice", ("yes",)),),
    sources=(ACTION, *EXPOSURE_SOURCES),
    cautions=(HEARING,),
    cases=(
        Case(
            {
                "level_a": "108 dB",
                "crest_factor": "12 dB",
                "nearest_listener": "2 m",
                "one_metre": "1 m",
            },
            gives="92.990 dB",
            origin="computed: sound power of 12.6 W at 88 dB for 1 W, spread over 2 m",
        ),
        Case(
            {
                "level_a": "88 dB",
                "crest_factor": "3.0103 dB",
                "nearest_listener": "1 m",
                "one_metre": "1 m",
            },
            gives="88 dB",
            origin="derived: a sine is a programme with the crest factor of a sine",
        ),
    ),
    topic=("safety.hearing_notice",),
    asked_from="production",
    fails=NEAR,
    passes=NEAR.replace("limiter: {v_rms: 20 V}", "limiter: {v_rms: 2 V}"),
)
