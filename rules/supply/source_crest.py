"""Crest of the lowest note at rated power against the short-time power of the source.

A sine on a bridge draws its power in humps at twice its frequency, from nothing to twice the
mean; a half-bridge on one rail draws still more of it in one half of the period. A source
that can give the mean may limit or trip at each hump of a bass note. The bulk capacitors help
with the energy that they give while the rail sags by a tenth.

The figure takes the half of a hump that lies above the mean, a quarter of the period of the
lowest note: mean power and 2/pi of the swing, against the peak power of the source and what
the capacitors add over that time. Where the source states no peak power, one and a half times
its continuous power is taken, which flatters a supply with a hard limit. Above 1 is major: the
rated power cannot be played in the bass.

First fix: a source with a stated peak power, more capacitance, or a higher low end of the
band. The pack that is the rail itself is judged by its own checks.
"""

from ...linter.check import (
    COMMON_PRACTICE,
    AtMost,
    Case,
    Check,
    Constant,
    Input,
    Lever,
    derivation,
)
from ..derived.power import NO_BULK
from ..formulas.maths import PI
from ..formulas.supply import BRIDGE_CURRENT, lowest

HUMP = derivation(
    "mean of a cosine over its positive half is 2/pi, over the middle half 2 root 2/pi"
)


def figure(
    p_in: float,
    p_auxiliary: float,
    p_signal: float,
    rail_count: float,
    p_peak: float,
    c_rail: float,
    v_rail: float,
    sag: float,
    f: tuple[float, ...],
) -> float:
    one_way = p_signal if rail_count < 1.5 else 0 * p_signal
    hump = p_in + 2 / PI * ((p_in - p_auxiliary) + 2**0.5 * one_way)
    energy = rail_count * c_rail * v_rail**2 * (1 - (1 - sag) ** 2) / 2
    return hump / (p_peak + 4 * lowest(f) * energy)


SUPPLY = """
supply:
  {source: dc-source, rails: single, v_rail: 30 V, p_max: 110 W, bulk: {c: 1000 uF}}
channels:
  main:
    rated_power: 100 W
    rated_load: 4 ohm
    band: 40 Hz .. 20 kHz
    output_stage: {topology: full-bridge, devices: integrated, efficiency: 88 %}
"""

CHECK = Check(
    title="Bass peak power vs. source peak power",
    figure=figure,
    unit="1",
    each="product",
    stake="performance",
    formula="(p_in + 2/pi (p_in - p_auxiliary + root 2 p_signal on one rail)) / (p_peak + 4 f"
    " rail_count c_rail v_rail^2 (1 - (1 - sag)^2) / 2)",
    sentence="Bass at {f} takes {figure:% of} what the source ({p_peak} peak) and {c_rail} give"
    " (mean input {p_in}).",
    inputs={
        "p_in": Input("p_in_rated"),
        "p_auxiliary": Input("supply.p_auxiliary"),
        "p_signal": Input("p_rail_signal"),
        "rail_count": Input("rail_count"),
        "p_peak": Input("p_supply_peak"),
        "c_rail": Input("c_rail", default=NO_BULK),
        "v_rail": Input("v_rail_low"),
        "sag": Constant("10 %", "sag of the rail that is accepted", COMMON_PRACTICE),
        "f": Input("all band_low"),
    },
    applies={"rail_feed": ("source", "converter")},
    limits=AtMost(
        major="1", basis={"major": derivation("conservation of energy over half a hump")}
    ),
    levers=(Lever("supply.p_peak", "10 W"), Lever("supply.bulk.c", "E6")),
    sources=(BRIDGE_CURRENT, HUMP),
    cases=(
        Case(
            {
                "p_in": "100 W",
                "p_auxiliary": "0 W",
                "p_signal": "0 W",
                "rail_count": 1,
                "p_peak": "120 W",
                "c_rail": "0 F",
                "v_rail": "30 V",
                "f": ("40 Hz",),
            },
            gives="1.363850",
            origin="computed: quadrature of 1 - cos 2x over its upper half: 1.63662 times the mean",
        ),
        Case(
            {
                "p_in": "100 W",
                "p_auxiliary": "0 W",
                "p_signal": "0 W",
                "rail_count": 1,
                "p_peak": "120 W",
                "c_rail": "10 mF",
                "v_rail": "30 V",
                "f": ("40 Hz",),
            },
            gives="0.637053",
            origin="computed: 0.855 J in 6.25 ms are 136.8 W more, energy balance by hand",
        ),
        Case(
            {
                "p_in": "100 W",
                "p_auxiliary": "0 W",
                "p_signal": "20 W",
                "rail_count": 2,
                "p_peak": "120 W",
                "c_rail": "10 mF",
                "v_rail": "30 V",
                "f": ("40 Hz",),
            },
            gives="0.415808",
            origin="computed: two rails store 1.71 J, 273.6 W over 6.25 ms, energy balance by hand",
        ),
    ),
    topic=("supply.i_max", "supply.p_max", "supply.p_peak"),
    fails=SUPPLY.replace("p_max: 110 W", "p_max: 110 W, p_peak: 110 W"),
    passes=SUPPLY.replace("c: 1000 uF", "c: 10 mF"),
)
