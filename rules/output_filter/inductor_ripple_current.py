"""Ripple current of the inductor against the audio current.

Ripple costs idle loss in switches, copper and core, adds to the peak that the core must
carry, and at small signals helps: it lets the legs commutate softly and hides the dead
time. A ripple as large as the audio peak at rated power means an inductor too small for
this stage, usually one bought for a smaller supply. Below that there is no harm in ripple
by itself; a two-level bridge with 10 uH at 400 kHz into 8 ohm always has 0.55 of it,
whatever the rail. The textbook window of 0.2 to 0.4 is a target for converters.

At 2 the ripple alone swings as far as the audio peak that trip and core are chosen for, and
its rms, a triangle's, is 0.58 of that peak where the full sine has 0.71: at idle, switches and
copper of a two-level stage lose two thirds of what they lose at full power. That is no
filter for this stage, so it is major whether or not trip and core are known; a maker's note
tells of a stage that trips on the ripple alone, with 1 uH at 384 kHz. What less ripple does to
idle heat, saturation and trip is judged where it hurts. Cure: a larger inductor or a higher
carrier.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever, Source, derivation


def figure(ripple_idle: float, i_rated_peak: float) -> float:
    """Ripple, peak to peak, over audio peak."""
    return ripple_idle / i_rated_peak


CHECK = Check(
    title="Inductor ripple vs. load peak current",
    figure=figure,
    unit="1",
    each="channel",
    stake="performance",
    formula="ripple_idle / i_rated_peak",
    sentence="Idle ripple {ripple_idle} peak to peak; load peak at rated power {i_rated_peak}"
    " ({figure:%}).",
    inputs={
        "ripple_idle": Input("ripple_idle"),
        "i_rated_peak": Input("i_rated_peak"),
    },
    applies={"filter_kind": "lc"},
    limits=AtMost(
        major="2",
        minor="1",
        basis={
            "major": derivation("the ripple alone swings to the audio peak on either side"),
            "minor": COMMON_PRACTICE,
        },
    ),
    levers=(
        Lever("filter.inductor.l", "E6"),
        Lever("modulator.carrier", "10 kHz", {"output_stage.devices": "discrete"}),
    ),
    sources=(
        Source("TI TPS54332 data sheet", "section 8.2.2.5: 0.2 to 0.4 of the output current"),
        derivation("volt-seconds: v_swing/(4 l carrier) for one leg"),
        Source(
            "TI SDAA430, June 2026",
            "section 2.3: ripple in 1 uH at 13 V trips the comparator; 0.84 A is printed,"
            " its own formula gives 8.5 A",
        ),
    ),
    cases=(
        Case(
            {"ripple_idle": "1.989 A", "i_rated_peak": "7.746 A"},
            gives="0.2568",
            origin="computed: by hand, IRAUDAMP7D: 35 V, 22 uH, 400 kHz, 120 W into 4 ohm",
        ),
        Case(
            {"ripple_idle": "1.433 A", "i_rated_peak": "2.866 A"},
            gives="0.5",
            origin="computed: switched circuit with 50 V, 22 uH, 0.68 uF, 400 kHz, 1.433 A",
        ),
    ),
    topic=("filter.inductor",),
    fails="""
supply: {source: dc-source, rails: single, v_rail: 24 V}
channels:
  main:
    rated_power: 5 W
    rated_load: 8 ohm
    output_stage: {topology: full-bridge}
    modulator: {levels: two-level, carrier: 400 kHz}
    filter: {inductor: {l: 4.7 uH}}
""",
    passes="""
supply: {source: dc-source, rails: single, v_rail: 24 V}
channels:
  main:
    rated_power: 25 W
    rated_load: 8 ohm
    output_stage: {topology: full-bridge}
    modulator: {levels: two-level, carrier: 400 kHz}
    filter: {inductor: {l: 10 uH}}
""",
)
