"""Cone excursion over the band against the linear travel.

At the bottom of its band a loudspeaker is limited by travel, not by heat: every octave
down asks for four times the excursion.  In a sealed box the excursion levels off below
the box resonance; in a vented box it has a notch at the tuning and then grows to the value
of a driver without box, because the box no longer holds the cone.

The figure is the peak excursion for the largest sine that the channel puts on the driver,
at the worst frequency of its band, high-pass included, over the linear travel one way.
Small-signal model: compression of motor and suspension at large travel makes the true
value smaller.  A passive radiator is a port with a spring: at its own resonance it lets the
cone go.  Where its compliance is not stated, the cone moves at least as the milder of a port and a
wall would let it (within 3 %, for the leak): more than the limit is a finding, less is open.
A capacitor ahead of the loudspeaker, or at the output of a half-bridge on a single supply, is part
of the model: it takes voltage and damping, and below the resonance the cone may move half as much
again. A horn is not modelled: its measured
excursion is asked for (`x_peak`).

What to do first: a high-pass (a second order 12 dB an octave), or a lower limiter.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever, derivation
from ..formulas.driver import SMALL_CLOSED, SMALL_VENTED

MATRIX = "computed: electro-mechanical matrix of coil, motor, suspension and box"


def figure(x_peak: float, x_max: float) -> float:
    return x_peak / x_max


BOXED = """
supply: {source: dc-source, rails: single, v_rail: 32 V, r_source: 20 mohm, bulk: {c: 4700 uF}}
channels:
  main:
    rated_power: 50 W
    rated_load: 8 ohm
    band: 40 Hz .. 5 kHz
    output_stage: {topology: full-bridge, devices: integrated, efficiency: 90 %,
      r_series: 50 mohm, device: {r_ds_on: 60 mohm}}
    gate_drive: {dead_time: 5 ns, t_pulse_min: 50 ns}
    modulator: {type: natural-sampling, carrier: 400 kHz, m_max: 95 %}
    filter: {type: lc, inductor: {l: 10 uH, dcr: 15 mohm}}
    limiter: {v_rms: 20 V}
    loudspeaker: {z_rated: 8 ohm, r_e: 6 ohm, f_s: 45 Hz, q_ms: 4, q_es: 0.45, v_as: 20 L,
      s_d: 137 cm2, x_max: 6 mm, high_pass: none, enclosure: {type: sealed, v_b: 10 L}}
"""

CHECK = Check(
    title="Cone excursion vs. linear travel",
    figure=figure,
    unit="1",
    each="channel",
    stake="performance",
    formula="x_peak / x_max",
    sentence="Peak cone excursion {x_peak}; linear travel {x_max} ({figure:%}).",
    inputs={
        "x_peak": Input("x_peak"),
        "x_max": Input("loudspeaker.x_max"),
    },
    applies={
        "loudspeaker.enclosure.type": ("sealed", "vented", "passive-radiator", "open", "horn"),
        "travel_stated": "yes",
    },
    limits=AtMost(
        major="1.5", minor="1", basis={"major": COMMON_PRACTICE, "minor": COMMON_PRACTICE}
    ),
    levers=(
        Lever("limiter.v_rms", "0.5 V"),
        Lever("loudspeaker.high_pass.f", "1 Hz"),
    ),
    sources=(
        SMALL_CLOSED,
        SMALL_VENTED,
        derivation("excursion from the electro-mechanical model, searched over the band"),
    ),
    cases=(
        Case({"x_peak": "9.048 mm", "x_max": "6 mm"}, gives="1.508", origin=f"{MATRIX}, 40 Hz"),
        Case({"x_peak": "9.398 mm", "x_max": "6 mm"}, gives="1.5663", origin=f"{MATRIX}, 5 Hz"),
    ),
    topic=("loudspeaker.x_max",),
    peaks_inside=(
        "loudspeaker.f_s",
        "loudspeaker.enclosure.f_b",
        "loudspeaker.enclosure.v_ap",
        "loudspeaker.c_series.c",
    ),
    fails=BOXED,
    passes=BOXED.replace("v_rms: 20 V", "v_rms: 12 V"),
)
