"""Rated power at the trough of the rail.

The crest of a loud bass note meets the rail at its lowest: all channels draw their peak
current at that moment, source resistance and what the capacitors cannot hold pull the rail
down, and the crest is cut off although the idle rail would carry it. The figure is the
load voltage that rated power needs, over what the rail allows at that trough and at the
largest modulation depth.

Above 1 the claimed power is not there at the lowest frequency of the band: major, as any
rated figure that fails somewhere in its range. The loss in switches, inductors and leads
is left out here, so that the rail alone is judged; the check of output power has it all.

First fix: source resistance, then rail voltage; capacitors help at a few hundred hertz,
hardly in the bass.
"""

from ...linter.check import AtMost, Case, Check, Input, Lever, derivation
from ..formulas.supply import CONSTANT_POWER, SHARED_RIPPLE


def figure(
    rated_power: float,
    z_load: float,
    m_max: float,
    n_legs: float,
    rail_count: float,
    v_trough: float,
) -> float:
    v_largest = n_legs * rail_count * v_trough / 2
    return (2 * rated_power * z_load) ** 0.5 / (m_max * v_largest)


CHECK = Check(
    title="Peak voltage at rated power vs. sagging rail",
    figure=figure,
    unit="1",
    each="channel",
    stake="performance",
    formula="root(2 rated_power z_load) / (m_max n_legs rail_count v_trough / 2)",
    sentence="{rated_power} into {z_load} needs {figure:% of} the peak voltage that a rail sagging"
    " to {v_trough} gives.",
    inputs={
        "rated_power": Input("rated_power"),
        "z_load": Input("z_load"),
        "m_max": Input("m_max"),
        "n_legs": Input("n_legs"),
        "rail_count": Input("rail_count"),
        "v_trough": Input("v_trough_promised"),
    },
    limits=AtMost(
        major="1", basis={"major": derivation("the crest of the rated sine does not fit the rail")}
    ),
    levers=(Lever("supply.r_source", "1 mohm"), Lever("rated_power", "1 W")),
    sources=(CONSTANT_POWER, SHARED_RIPPLE),
    cases=(
        Case(
            {
                "rated_power": "40 W",
                "z_load": "4 ohm",
                "m_max": 0.95,
                "n_legs": 2,
                "rail_count": 1,
                "v_trough": "19.27 V",
            },
            gives="0.97717",
            origin="computed: pack of 20.4 V and 0.12 ohm at 181.8 W, root finding gives 19.27 V",
        ),
        Case(
            {
                "rated_power": "40 W",
                "z_load": "8 ohm",
                "m_max": 1.0,
                "n_legs": 2,
                "rail_count": 1,
                "v_trough": "24 V",
            },
            gives="1.05409",
            origin="computed: 40 W claimed into 8 ohm from 24 V, whose square is 36 W; by hand",
        ),
        Case(
            {
                "rated_power": "100 W",
                "z_load": "4 ohm",
                "m_max": 0.95,
                "n_legs": 1,
                "rail_count": 2,
                "v_trough": "30 V",
            },
            gives="0.992431",
            origin="derived: half bridge between 30 V and -30 V: 28.28 V asked, 28.5 V there",
        ),
    ),
    topic=("supply.r_source", "battery.cell.r_internal", "supply.c_source", "supply.ripple"),
    fails="""
supply: {source: dc-source, rails: single, v_rail: 24 V, r_source: 400 mohm, bulk: {c: 2200 uF}}
channels:
  main:
    rated_power: 60 W
    rated_load: 4 ohm
    output_stage: {topology: full-bridge, efficiency: 90 %}
    modulator: {m_max: 95 %}
""",
    passes="""
supply: {source: dc-source, rails: single, v_rail: 30 V, r_source: 50 mohm, bulk: {c: 3300 uF}}
channels:
  main:
    rated_power: 80 W
    rated_load: 4 ohm
    output_stage: {topology: full-bridge, efficiency: 90 %}
    modulator: {m_max: 95 %}
""",
)
