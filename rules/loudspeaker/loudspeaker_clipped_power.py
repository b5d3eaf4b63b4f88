"""Power of the clipped channel against the power rating of its loudspeaker.

An amplifier driven into clipping gives more than its sine power: a sine cut off at the
clip level tends to a square wave, which has twice the power.  Nothing but a limiter (or a
supply that gives up) stops it, and the coil sees it for as long as someone leaves the
control turned up.  The figure takes that square wave, or what the limiters let through:
the long-term limiter bounds the rms voltage, the peak limiter the crest.  Where neither
clip onset nor a rated power is known, the sine that touches the rails is taken: no stage
gives more, so a pass counts and a failure leans on it.

Limits: a sine equal to the noise rating makes 2 when clipped, the usual proportion.  Four
is the sine of twice the rating, which makers advise for music that is NOT clipped, driven
into clipping: the coil then has to withstand for long what the rating signal reaches only in
its peaks.  At five the coil, some 150 K warmer than the room at its rating, would have to
get 750 K warmer: it burns.  (Physics would call 4 destruction as well; but a channel at
exactly twice the rating would then be condemned by the tolerance of its rail.)

What to do first: a long-term limiter at the square root of rating times impedance.
"""

from ...linter.check import (
    AtMost,
    Case,
    Check,
    Input,
    derivation,
)
from ..derived.load import SERIES
from ..formulas.constants import NO_LIMITER
from ..formulas.load import CLIPPED_SINE, PEAKS_OF_NOISE, RATING_KINDS
from ..formulas.maths import smaller
from ..hazards import COIL

BURNS = derivation("five times the rise of 150 K at the rating: beyond any glue and wire enamel")


def figure(
    v_clip_rms: float,
    limiter_rms: float,
    limiter_peak: float,
    series: float,
    z_driver: float,
    p_driver_noise: float,
) -> float:
    v_square = smaller(smaller(2**0.5 * v_clip_rms, limiter_peak), limiter_rms)
    return (v_square / series) ** 2 / (z_driver * p_driver_noise)


LOADED = """
supply: {source: dc-source, rails: single, v_rail: 36 V, r_source: 20 mohm, bulk: {c: 4700 uF}}
channels:
  main:
    rated_power: 100 W
    rated_load: 4 ohm
    output_stage: {topology: full-bridge, devices: integrated, efficiency: 90 %,
      r_series: 50 mohm, device: {r_ds_on: 60 mohm}}
    gate_drive: {dead_time: 5 ns, t_pulse_min: 50 ns}
    modulator: {type: natural-sampling, carrier: 400 kHz, m_max: 95 %}
    filter: {type: lc, inductor: {l: 10 uH, dcr: 15 mohm}}
    limiter: none
    loudspeaker: {z_rated: 4 ohm, p_rated: 30 W, rating_method: aes2-1984}
"""

CHECK = Check(
    title="Clipped power per loudspeaker vs. noise rating",
    figure=figure,
    unit="1",
    each="channel",
    stake="safety",
    formula="(smallest of 2^0.5 v_clip_rms, limiter_rms, limiter_peak / series)^2"
    " / (z_driver p_driver_noise)",
    sentence="In hard clipping each loudspeaker takes {p_driver_noise:*figure} ({z_driver},"
    " {v_clip_rms} rms at clip onset); noise rating counted {p_driver_noise} ({figure:%}).",
    inputs={
        "v_clip_rms": Input("v_clip_rms"),
        "limiter_rms": Input("limiter.v_rms", default=NO_LIMITER),
        "limiter_peak": Input("limiter.v_peak", default=NO_LIMITER),
        "series": SERIES,
        "z_driver": Input("z_driver"),
        "p_driver_noise": Input("p_driver_noise"),
    },
    applies={"loudspeaker.piezo": "none", "tapped": "no"},
    limits=AtMost(
        critical="5",
        major="4",
        minor="2",
        basis={"critical": BURNS, "major": PEAKS_OF_NOISE, "minor": CLIPPED_SINE},
    ),
    sources=(CLIPPED_SINE, RATING_KINDS),
    cautions=(COIL,),
    cases=(
        Case(
            {
                "v_clip_rms": "28.284 V",
                "limiter_rms": "1000 V",
                "limiter_peak": "1000 V",
                "series": 1,
                "z_driver": "8 ohm",
                "p_driver_noise": "50 W",
            },
            gives="4",
            origin="computed: Fourier sum of a sine clipped without bound, 100 W on 50 W",
        ),
        Case(
            {
                "v_clip_rms": "56.57 V",
                "limiter_rms": "27.39 V",
                "limiter_peak": "1000 V",
                "series": 1,
                "z_driver": "6 ohm",
                "p_driver_noise": "125 W",
            },
            gives="1",
            origin="computed: 125 W in 6 ohm are 27.39 V, Ohm's law by hand",
        ),
        Case(
            {
                "v_clip_rms": "28.284 V",
                "limiter_rms": "1000 V",
                "limiter_peak": "30 V",
                "series": 2,
                "z_driver": "8 ohm",
                "p_driver_noise": "25 W",
            },
            gives="1.125",
            origin="derived: 30 V over two units in series, 28.125 W in each",
        ),
    ),
    topic=("loudspeaker",),
    fails=LOADED,
    passes=LOADED.replace("limiter: none", "limiter: {v_rms: 10.5 V}"),
)
