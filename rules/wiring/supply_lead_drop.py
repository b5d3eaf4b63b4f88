"""Voltage lost in the supply lead at the crest of the music.

Current makes a round trip, so the length counts twice.  The drop takes from the rail at
the very moment when the peak needs it: the amplifier clips earlier, its under-voltage
lockout comes closer, and channels talk to each other through the common lead.

The crest of in-phase sines is taken, at the source's lowest voltage.  Copper counts at
20 degC; a warm lead drops a tenth more, stranded wire 2 to 5 % more.  First fixes: a
shorter lead, more copper, capacitors at the amplifier.  The resistance of connectors and
fuses comes on top and is not counted.
"""

from ...linter.check import (
    COMMON_PRACTICE,
    AtMost,
    Case,
    Check,
    Input,
    Lever,
    Source,
    derivation,
)
from ..formulas.conductors import LEAD_SIZES, two_way_resistance
from ..formulas.constants import COPPER_RESISTIVITY


def figure(
    length: float, area: float, resistivity: float, i_source_peak: float, v_source: float
) -> float:
    """Drop over the source's voltage."""
    return two_way_resistance(resistivity, length, area) * i_source_peak / v_source


_BASE = """
supply: {source: dc-source, rails: single, v_rail: 40 V}
channels:
  main:
    rated_power: 100 W
    rated_load: 4 ohm
    output_stage: {topology: full-bridge, devices: integrated, p_idle: 1 W, efficiency: 85 %}
wiring: {supply_lead: {length: LENGTH, area: 0.5 mm2}}
"""

CHECK = Check(
    title="Supply lead voltage drop vs. source voltage",
    figure=figure,
    unit="%",
    each="product",
    stake="performance",
    formula="2 resistivity length / area i_source_peak / v_source",
    sentence="Supply lead drops {v_source:*figure} at {i_source_peak} ({length} of {area}, round"
    " trip), {figure} of {v_source}.",
    inputs={
        "length": Input("wiring.supply_lead.length"),
        "area": Input("wiring.supply_lead.area"),
        "resistivity": COPPER_RESISTIVITY,
        "i_source_peak": Input("i_source_peak"),
        "v_source": Input("v_source_low_at_most"),
    },
    limits=AtMost(
        major="29 %",
        minor="2 %",
        basis={
            "major": derivation("0.71 squared: half of the power at the crest is lost"),
            "minor": COMMON_PRACTICE,
        },
    ),
    levers=(
        Lever("wiring.supply_lead.area", LEAD_SIZES),
        Lever("wiring.supply_lead.length", "0.1 m"),
    ),
    sources=(Source("cirris.com, wire resistance table", "AWG 16: 0.4016 ohm in 100 ft"),),
    cases=(
        Case({
                "length": "0.4 m",
                "area": "1.309 mm2",
                "resistivity": "1.724e-8 ohm m",
                "i_source_peak": "9.44 A",
                "v_source": "20.4 V",
            },
             gives="0.48755 %",
             origin="published: cirris.com wire table, AWG 16: 0.4016 ohm in 100 ft, 13.18 mohm/m; "
                    "0.4 m, 9.44 A and 20.4 V assumed: 99.5 mV, 0.488 % by hand"),
        Case({
                "length": "5 m",
                "area": "1.724 mm2",
                "resistivity": "1.724e-8 ohm m",
                "i_source_peak": "10 A",
                "v_source": "20 V",
            }, gives="5 %",
             origin="computed: Ohm's law by hand, 1 V of 20 V"),
    ),
    fails=_BASE.replace("LENGTH", "5 m"),
    passes=_BASE.replace("LENGTH", "0.5 m"),
    topic=("wiring.supply_lead",),
)  # fmt: skip
