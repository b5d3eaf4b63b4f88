"""Power of the channel against the power rating of its loudspeaker.

A rating in watts means little without its method.  A noise rating (AES, IEC, EIA) is the
long-term power of noise whose peaks lie 6 dB above its rms value; a programme rating is
printed as twice that, a peak rating as four times.  So all are first brought to the noise
rating.  A rating without a method is taken as a noise rating, which flatters the design.

The figure is the power of the largest sine in ONE loudspeaker, at its own rated impedance,
over that rating.  Makers themselves advise an amplifier of twice the noise rating for
music that is never clipped, so up to 2 nothing is said.  Beyond 4 the sine alone exceeds
the peak power of the rating signal.  A long-term limiter at or below the rating settles
the matter, whatever the rail allows.  What clipping adds is another check.

What to do first: set the long-term limiter to the square root of rating times impedance.
"""

from ...linter.check import AtMost, Case, Check, Input, Source
from ..formulas.load import PEAKS_OF_NOISE, RATING_KINDS
from ..hazards import LOUDSPEAKER_LOST

NOISE_TEST = Source(
    "AES2-1984, as quoted in diyAudio thread 311404 and by B&C Speakers",
    "two hours of noise with a crest factor of 2; power from the rms voltage",
    kind="quoted",
)


def figure(v_driver_rms: float, z_driver: float, p_driver_noise: float) -> float:
    return v_driver_rms**2 / (z_driver * p_driver_noise)


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
    title="Sine power per loudspeaker vs. noise rating",
    figure=figure,
    unit="1",
    each="channel",
    stake="performance",
    formula="v_driver_rms^2 / (z_driver p_driver_noise)",
    sentence="Sine power {p_driver_noise:*figure} per loudspeaker ({v_driver_rms} rms,"
    " {z_driver}); noise rating counted {p_driver_noise} ({figure:%}).",
    inputs={
        "v_driver_rms": Input("v_driver_rms"),
        "z_driver": Input("z_driver"),
        "p_driver_noise": Input("p_driver_noise"),
    },
    applies={"loudspeaker.piezo": "none", "tapped": "no"},
    limits=AtMost(major="4", minor="2", basis={"major": PEAKS_OF_NOISE, "minor": RATING_KINDS}),
    sources=(RATING_KINDS, NOISE_TEST),
    cautions=(LOUDSPEAKER_LOST,),
    cases=(
        Case(
            {"v_driver_rms": "27.39 V", "z_driver": "6 ohm", "p_driver_noise": "125 W"},
            gives="1",
            origin="computed: 125 W in 6 ohm are 27.39 V, Ohm's law by hand",
        ),
        Case(
            {"v_driver_rms": "56.57 V", "z_driver": "8 ohm", "p_driver_noise": "100 W"},
            gives="4",
            origin="computed: 400 W in 8 ohm are 56.57 V, by hand; against 100 W",
        ),
    ),
    topic=("loudspeaker.p_rated",),
    fails=LOADED,
    passes=LOADED.replace("limiter: none", "limiter: {v_rms: 10.5 V}"),
)
