"""Current of the supply lead against what its insulation withstands.

A lead heats with the rms current.  With a sine on a bridge the source current swings
between zero and twice its mean, and its rms is 1.22 times the mean: meters and power
budgets show the mean.  On a lithium pack an undersized lead burns before the fuse opens,
so the lead must carry what the fuse lets through; that is checked with the fuse.

Without a rating the current of one wire in free air is taken from a published table by
copper area; in a bundle or a tight box a wire carries much less, so this flatters.  Wiring
in buildings follows the local code and its licensed trade, not this table.  First fixes:
more copper, a heat-resistant insulation, two leads.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever, derivation
from ..derived.wiring import WIRE_TABLE
from ..formulas.conductors import LEAD_SIZES
from ..hazards import CONDUCTOR


def figure(i_source: float, i_rated: float) -> float:
    """Current over what the lead stands."""
    return i_source / i_rated


_BASE = """
supply: {source: dc-source, rails: single, v_rail: 40 V}
channels:
  main:
    rated_power: 100 W
    rated_load: 4 ohm
    output_stage: {topology: full-bridge, devices: integrated, p_idle: 1 W, efficiency: 85 %}
wiring: {supply_lead: {length: 0.5 m, i_rated: RATING}}
"""

CHECK = Check(
    title="Supply lead current vs. rating",
    figure=figure,
    unit="%",
    each="product",
    stake="safety",
    formula="i_source / i_rated",
    sentence="Supply lead carries {i_source} rms; rated {i_rated} ({figure:%}).",
    inputs={
        "i_source": Input("i_source_rms"),
        "i_rated": Input("i_lead_rated"),
    },
    limits=AtMost(
        critical="100 %",
        minor="80 %",
        basis={"critical": derivation("what a rating means"), "minor": COMMON_PRACTICE},
    ),
    levers=(Lever("wiring.supply_lead.area", LEAD_SIZES),),
    sources=(WIRE_TABLE,),
    cautions=(CONDUCTOR,),
    cases=(
        Case({"i_source": "5.722 A", "i_rated": "22 A"}, gives="26.009 %",
             origin="computed: HyperPhysics, AWG 16 as chassis wire, 22 A; 5.722 A is 1.2247 "
             "times the mean of a bridge drawing 4.672 A"),
        Case({"i_source": "12 A", "i_rated": "11 A"}, gives="109.09 %",
             origin="computed: HyperPhysics, AWG 20 as chassis wire, 11 A; 12 A assumed"),
    ),
    fails=_BASE.replace("RATING", "3 A"),
    passes=_BASE.replace("RATING", "18 A"),
    topic=("wiring.supply_lead",),
)  # fmt: skip
