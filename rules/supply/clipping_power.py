"""Power of the clipped output against the source.

A sine driven far into clipping becomes a square wave, which carries twice the power of the
largest unclipped sine. Nothing but a limiter, the source or the loudspeaker stops it. If
the source cannot give it, it sags or trips: a sudden cut at full volume. The figure is the
clipped output of all channels, without losses, over the continuous power of the source; a
limiter that is stated caps it by its peak and by its rms level.

Only minor: a supply that gives way under a square wave often protects the loudspeaker, and
few supplies are made for it. But know it: with a current limit that latches, one shout
into the microphone silences the product. The loudspeaker's side is judged apart.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever, Source
from ..formulas.constants import NO_LIMITER
from ..formulas.maths import smaller


def figure(
    p_out_max: tuple[float, ...],
    z_load: tuple[float, ...],
    v_peak: tuple[float, ...],
    v_rms: tuple[float, ...],
    p_supply_max: float,
) -> float:
    clipped = [
        smaller(2 * p, smaller(peak, rms) ** 2 / z)
        for p, z, peak, rms in zip(p_out_max, z_load, v_peak, v_rms, strict=True)
    ]
    return sum(clipped[1:], clipped[0]) / p_supply_max


CHECK = Check(
    title="Power drawn in clipping vs. source power",
    figure=figure,
    unit="1",
    each="product",
    stake="performance",
    formula="sum of smaller(2 p_out_max, smaller(v_peak, v_rms)^2 / z_load) / p_supply_max",
    sentence="In hard clipping the channels ({p_out_max} at onset) draw {p_supply_max:*figure};"
    " source maximum {p_supply_max} ({figure:%}).",
    inputs={
        "p_out_max": Input("all p_out_max"),
        "z_load": Input("all z_load"),
        "v_peak": Input("all limiter.v_peak", default=NO_LIMITER),
        "v_rms": Input("all limiter.v_rms", default=NO_LIMITER),
        "p_supply_max": Input("p_supply_max"),
    },
    applies={"rail_feed": ("source", "converter")},
    limits=AtMost(minor="1", basis={"minor": COMMON_PRACTICE}),
    levers=(Lever("limiter.v_rms", "0.5 V"), Lever("supply.p_max", "10 W")),
    sources=(
        Source(
            "audiomisc.co.uk, clipping",
            "web page; harmonics of a clipped 100 W amplifier: 162, 18, 6.5, 3 W",
        ),
    ),
    cases=(
        Case(
            {
                "p_out_max": ("100 W",),
                "z_load": ("8 ohm",),
                "v_peak": ("1e9 V",),
                "v_rms": ("1e9 V",),
                "p_supply_max": "150 W",
            },
            gives="1.33333",
            origin="published: audiomisc.co.uk, 162, 18, 6.5, 3 W and so on from 100 W: 200 W by "
            "hand; source of 150 W assumed",
        ),
        Case(
            {
                "p_out_max": ("100 W",),
                "z_load": ("8 ohm",),
                "v_peak": ("1e9 V",),
                "v_rms": ("28.2843 V",),
                "p_supply_max": "150 W",
            },
            gives="0.66667",
            origin="derived: a limiter at the rms of 100 W into 8 ohm holds 100 W",
        ),
    ),
    topic=("limiter",),
    fails="""
supply:
  source: dc-source
  rails: single
  v_rail: 24 V
  r_source: 10 mohm
  p_max: 80 W
  bulk: {c: 2200 uF}
channels:
  main:
    rated_power: 50 W
    rated_load: 4 ohm
    output_stage:
      {topology: full-bridge, devices: integrated, efficiency: 88 %, device: {r_ds_on: 80 mohm}}
    modulator: {carrier: 400 kHz, m_max: 95 %}
    filter: {type: lc, inductor: {l: 10 uH, dcr: 20 mohm}}
    limiter: none
""",
    passes="""
supply:
  source: dc-source
  rails: single
  v_rail: 24 V
  r_source: 10 mohm
  p_max: 80 W
  bulk: {c: 2200 uF}
channels:
  main:
    rated_power: 50 W
    rated_load: 4 ohm
    output_stage:
      {topology: full-bridge, devices: integrated, efficiency: 88 %, device: {r_ds_on: 80 mohm}}
    modulator: {carrier: 400 kHz, m_max: 95 %}
    filter: {type: lc, inductor: {l: 10 uH, dcr: 20 mohm}}
    limiter: {v_rms: 14.5 V}
""",
)
