"""Distortion that dead time causes, against the distortion claimed.

While the load current is larger than half the ripple, the current keeps its direction
through a whole period and holds the node on the wrong side during each dead time.  The
output then lacks a small square wave in the direction of the current: odd harmonics that do
not shrink with the level.  Below half the ripple the ripple itself turns the node over and
nothing is lost, so the distortion is worst just above that level, not at full power.

The figure is the distortion of a 1 kHz sine at rated power, harmonics to 19 kHz, each divided by
what the loop gain leaves of it. The gain of a real loop stops rising at some frequency: one that
is flat below 20 kHz has a twentieth of what a line of 20 dB per decade promises at 1 kHz. State
the gain at 1 kHz or the corner; where the spec gives none the check is met only if it would be
met with a flat gain as well. Where a three-level bridge has its capacitor only across the load
there is no ripple at idle and no clean range. A self-oscillating loop keeps its ripple but slows
down. Real output capacitance softens edges at small currents, so measured values are usually
lower. Not valid within a tenth of the level where current and half ripple are equal (it reads
high), nor when the dead time is more than a twentieth of depth over carrier. Where no distortion
is claimed, that of the rated power counts, up to 1 %; where neither is stated,
dead-time-distortion-unclaimed answers. First fixes: less dead time, a lower carrier, loop gain
at the third harmonic. The limits leave the rest of the claim to all other causes.
"""

from ...linter.check import (
    COMMON_PRACTICE,
    Assumption,
    AtMost,
    Case,
    Check,
    Input,
    Lever,
    Source,
    derivation,
)
from ..formulas.constants import TEST_TONE
from ..formulas.switching import dead_time_distortion


def figure(
    dead_time: float,
    t_dead_distortion: float,
    carrier: float,
    depth: float,
    ripple: float,
    z_load: float,
    v_ideal: float,
    loop_gain_1k: float,
    loop_order: float,
    f_loop_flat: float,
    tone: float,
    modulator: str,
    levels: str,
    c_ground: str,
    thd: float,
) -> float:
    """Distortion by dead time over the distortion claimed; dead_time must be stated."""
    time = t_dead_distortion + 0 * dead_time
    still = levels == "three-level" and c_ground == "none"
    clean = 0.0 if still else ripple * z_load / (2 * v_ideal)
    slows = modulator == "self-oscillating"
    flat = f_loop_flat / tone
    found = dead_time_distortion(
        depth, time * carrier, clean, loop_gain_1k, loop_order, slows, flat
    )
    return found / thd


CHECK = Check(
    title="Distortion from dead time vs. limit",
    figure=figure,
    unit="%",
    each="channel",
    stake="performance",
    formula="THD(t_dead_distortion carrier, depth, ripple z_load / (2 v_ideal), loop_gain_1k, "
    "loop_order, f_loop_flat / tone; modulator, levels, c_ground) / thd; t_dead_distortion follows"
    " from dead_time",
    sentence="Dead time {t_dead_distortion} makes {thd:*figure} distortion at 1 kHz ({carrier}"
    " carrier); limit {thd} ({figure:%}).",
    inputs={
        "dead_time": Input("gate_drive.dead_time"),
        "t_dead_distortion": Input("t_dead_distortion"),
        "carrier": Input("modulator.carrier"),
        "depth": Input("depth_rated"),
        "ripple": Input("ripple_idle"),
        "z_load": Input("z_load"),
        "v_ideal": Input("v_ideal"),
        "loop_gain_1k": Input("loop_gain_1k"),
        "loop_order": Input(
            "modulator.loop_order",
            default=Assumption(1.0, "adverse", derivation("the least slope of a loop")),
        ),
        "f_loop_flat": Input("f_loop_flat"),
        "tone": TEST_TONE,
        "modulator": Input("modulator.type"),
        "levels": Input("levels"),
        "c_ground": Input("filter.c_ground"),
        "thd": Input("thd_allowed"),
    },
    applies={"dead_time_judged": "yes", "thd_claimed": "yes"},
    limits=AtMost(
        major="100 %",
        minor="50 %",
        basis={"major": derivation("more than all that is allowed"), "minor": COMMON_PRACTICE},
    ),
    levers=(
        Lever("gate_drive.dead_time", "5 ns"),
        Lever("modulator.loop_crossover", "5 kHz"),
        Lever("modulator.carrier", "10 kHz", {"output_stage.devices": "discrete"}),
        Lever("claims.thd", "0.1 %"),
    ),
    sources=(
        derivation("Fourier sum of the error along a sine, with the clean range of the ripple"),
        Source("Electronics Letters 35 (12), 10 June 1999", "IEEE Xplore 788036, abstract"),
    ),
    cases=(
        Case(
            {
                "dead_time": "20 ns",
                "t_dead_distortion": "20 ns",
                "carrier": "400 kHz",
                "depth": 0.8,
                "ripple": "2.841 A",
                "z_load": "8 ohm",
                "v_ideal": "50 V",
                "loop_gain_1k": 0.0,
                "loop_order": 1.0,
                "f_loop_flat": "0 Hz",
                "modulator": "natural-sampling",
                "levels": "two-level",
                "c_ground": "none",
                "thd": "1 %",
            },
            "71.7 %",
            "computed: event-driven simulation of half-bridge, 22 uH and 0.47 uF into 8 ohm",
            tolerance=0.04,
        ),
        Case(
            {
                "dead_time": "20 ns",
                "t_dead_distortion": "20 ns",
                "carrier": "400 kHz",
                "depth": 0.4,
                "ripple": "0.71 A",
                "z_load": "8 ohm",
                "v_ideal": "50 V",
                "loop_gain_1k": 0.0,
                "loop_order": 1.0,
                "f_loop_flat": "0 Hz",
                "modulator": "natural-sampling",
                "levels": "three-level",
                "c_ground": "none",
                "thd": "1 %",
            },
            "240.6 %",
            "computed: event-driven simulation of a three-level bridge, capacitor across the load",
            tolerance=0.03,
        ),
    ),
    topic=("gate_drive",),
    fails="""
supply: {source: dc-source, rails: split, v_rail: 50 V}
channels:
  main:
    rated_power: 100 W
    rated_load: 8 ohm
    output_stage:
      topology: half-bridge
      devices: discrete
      device: {t_d_on: 10 ns, t_d_off: 15 ns}
    gate_drive: {dead_time: 45 ns}
    modulator: {type: natural-sampling, carrier: 400 kHz, feedback: none}
    filter: {type: lc, inductor: {l: 22 uH}, c_across: {c: 0.47 uF}, c_ground: none}
claims: {thd: 0.1 %}
""",
    passes="""
supply: {source: dc-source, rails: split, v_rail: 50 V}
channels:
  main:
    rated_power: 100 W
    rated_load: 8 ohm
    output_stage:
      topology: half-bridge
      devices: discrete
      device: {t_d_on: 10 ns, t_d_off: 15 ns}
    gate_drive: {dead_time: 25 ns}
    modulator: {type: natural-sampling, carrier: 400 kHz, feedback: before-filter,
      loop_crossover: 90 kHz, loop_order: 1, loop_corner: 100 Hz}
    filter: {type: lc, inductor: {l: 22 uH}, c_across: {c: 0.47 uF}, c_ground: none}
claims: {thd: 0.1 %}
""",
)
