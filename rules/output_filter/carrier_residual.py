"""Carrier left at the loudspeaker.

What passes the filter is an ultrasonic sine at the terminals: it heats tweeters, disturbs
test instruments and radiates from the lead. It is judged against the largest sine that the
rails allow. Reference boards with 0.5 to 0.8 V on 35 to 50 V rails are at 2 to 2.5 % and
are normal; at the worst corner of their parts they reach 3 %. A vendor's own filter for a
half bridge leaves 5 % in the middle and 7 % at the lowest carrier of its part, and is sold.

Nothing breaks at one figure: heat grows with its square. 8 % hold 0.64 % of the full sine's
power, all the time: a twentieth of what music of 12 dB crest puts in, but half of what such
music leaves to a tweeter that gets a tenth of it (from memory), and 0.8 W in 10 ohm across
the 4 ohm output of a 300 W stage. That is where a filter is wrong for its carrier (major). A
coil's inductance keeps most of it away from the loudspeaker; that heat, and radiation, have
their own checks. From 5 to 8 % the radiated carrier rises by 4 dB, no more than a lead half
as long again. A two-level stage is worst at idle, a three-level bridge at half
modulation and at twice the carrier. A self-oscillating stage leaves nearly twice as much
at two thirds of the swing, because it slows down. The load is the highest rated one as a
resistor, as distortion and noise are measured: near its corner the filter without load would
show many times what the rated load leaves. A voice coil is an inductor at the carrier and
damps less; carrier-attenuation is computed without load for that. The carrier that moves both
terminals of a three-level bridge together is judged by common-mode-attenuation.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever, Source, derivation
from ..formulas.modulation import carrier_fundamental


def figure(
    v_swing: float, v_ideal: float, levels: str, n_legs: float, carrier_gain: float, load: float
) -> float:
    """Residual over the largest sine, both rms, across the load that carrier_gain is for."""
    share = carrier_fundamental(v_swing, n_legs, levels) * carrier_gain / (v_ideal / 2**0.5)
    return share * (load / load)


CHECK = Check(
    title="Carrier residual at the loudspeaker",
    figure=figure,
    unit="%",
    each="channel",
    stake="performance",
    formula="sqrt(2)/pi v_swing, times n_legs for levels two-level, times carrier_gain into load"
    " over v_ideal/sqrt(2)",
    sentence="Carrier residual is {figure} of a full-scale sine into {load} ({levels} drive,"
    " filter passes {carrier_gain}).",
    inputs={
        "v_swing": Input("v_swing"),
        "v_ideal": Input("v_ideal"),
        "levels": Input("levels"),
        "n_legs": Input("n_legs"),
        "carrier_gain": Input("carrier_gain_loaded", unit="%"),
        "load": Input("load_high"),
    },
    applies={"filter_kind": "lc"},
    limits=AtMost(
        major="8 %",
        minor="3 %",
        basis={
            "major": derivation(
                "a filter that a data sheet recommends, TPA3121D2 SLOS537A, table 4, leaves "
                "7.0 % in 8 ohm at the lowest carrier of its part: that much is sold"
            ),
            "minor": COMMON_PRACTICE,
        },
    ),
    levers=(
        Lever("filter.inductor.l", "E6"),
        Lever("filter.c_across.c", "E6"),
        Lever("filter.c_ground.c", "E6", {"output_stage.topology": "full-bridge"}),
        Lever("modulator.carrier", "10 kHz", {"output_stage.devices": "discrete"}),
    ),
    sources=(
        derivation("Fourier series of the pulse train: 2 v_swing/pi sin(pi D) for one leg"),
        Source(
            "International Rectifier, IRAUDAMP7D reference design, rev. 2.9",
            "p. 4: 400 kHz, 35 V and 50 V; p. 21, fig. 25: 0.47 uF; p. 33: 22 uH",
        ),
        Source(
            "TPA3121D2 data sheet SLOS537A",
            "p. 4: 250 kHz up; p. 15, table 4: 33 uH, 220 nF for 8 ohm",
        ),
    ),
    cases=(
        Case(
            {
                "v_swing": "50 V",
                "v_ideal": "25 V",
                "levels": "two-level",
                "n_legs": 1.0,
                "carrier_gain": "1.06957 %",
                "load": "1 kohm",
            },
            gives="1.3618 %",
            origin="computed: switched waveform by FFT, node equations without load, 0.2407 V",
        ),
        Case(
            {
                "v_swing": "24 V",
                "v_ideal": "24 V",
                "levels": "two-level",
                "n_legs": 2.0,
                "carrier_gain": "1.17779 %",
                "load": "1 kohm",
            },
            gives="1.4996 %",
            origin="computed: difference of two opposite legs by FFT, node equations, 0.2545 V",
        ),
    ),
    topic=("filter.inductor", "filter.c_across", "filter.c_ground"),
    fails="""
supply: {source: dc-source, rails: single, v_rail: 24 V}
channels:
  main:
    rated_load: 4 ohm
    output_stage: {topology: half-bridge}
    modulator: {carrier: 150 kHz}
    filter: {inductor: {l: 16.5 uH}, c_across: {c: 1.1 uF, dielectric: polypropylene}}
""",
    passes="""
supply: {source: dc-source, rails: split, v_rail: 35 V}
channels:
  main:
    rated_load: 4 ohm
    output_stage: {topology: half-bridge}
    modulator: {type: self-oscillating, carrier: 400 kHz}
    filter: {inductor: {l: 22 uH}, c_across: {c: 470 nF, dielectric: polypropylene}}
""",
)
