"""Peak power against the largest power that the pack can give.

A source with resistance cannot give more than a quarter of its open voltage squared over
that resistance. An amplifier takes constant power: when the voltage sags it draws more
current, the voltage sags further, and beyond that limit there is no voltage at which the
balance holds. The rail falls away until a lockout ends it, and a protection that is
too slow lets the cells deliver their short-circuit current meanwhile.

The figure is the power at the crest of the lowest note, all channels at rated power, over
that limit; both ends are taken adverse: low charge, aged and cold cells. Bulk capacitors
help only as far as their impedance is below the pack's, which in the bass it is not.

Above 1 the design cannot work in that state: critical. Cure: less power, more strings in
parallel, a higher cut-off charge, more cells in series.
"""

from ...linter.check import AtMost, Case, Check, Input, Lever, derivation
from ..formulas.supply import BRIDGE_CURRENT, CONSTANT_POWER
from ..hazards import CELLS


def figure(p_crest: float, r: float, v_open: float) -> float:
    return 4 * r * p_crest / v_open**2


CHECK = Check(
    title="Peak power vs. maximum power of the pack",
    figure=figure,
    unit="1",
    each="product",
    stake="safety",
    formula="4 r p_crest / v_open^2",
    sentence="Bass peaks need {p_crest}; the pack can deliver {p_crest:/figure} at most ({v_open},"
    " {r}).",
    inputs={
        "p_crest": Input("p_source_crest"),
        "r": Input("r_pack_known"),
        "v_open": Input("v_source_low_at_most"),
    },
    applies={"supply.source": "battery"},
    limits=AtMost(
        critical="1", basis={"critical": derivation("no real root of P = V (V0 - V) / r")}
    ),
    levers=(
        Lever("battery.parallel", "1", within=3),
        Lever("battery.series", "1", within=2),
        Lever("rated_power", "1 W"),
    ),
    sources=(CONSTANT_POWER, BRIDGE_CURRENT),
    cautions=(CELLS,),
    cases=(
        Case(
            {"p_crest": "181.8 W", "r": "0.120 ohm", "v_open": "20.4 V"},
            gives="0.209689",
            origin="computed: maximum of V (V0 - V) / r by search is 867.0 W; 181.8 / 867.0",
        ),
        Case(
            {"p_crest": "200 W", "r": "0.9 ohm", "v_open": "20.4 V"},
            gives="1.73010",
            origin="computed: maximum of V (V0 - V) / r by search is 115.6 W at 0.9 ohm",
        ),
    ),
    topic=("battery.cell.r_internal", "battery.cell.v_oc_low"),
    asked_from="prototype",
    fails="""
supply: {source: battery, rails: single}
battery: {chemistry: li-ion, series: 3, cell: {v_oc_low: 3.3 V, r_internal: 50 mohm .. 150 mohm}}
channels:
  main: {rated_power: 40 W, output_stage: {topology: full-bridge, efficiency: 88 %}}
""",
    passes="""
supply: {source: battery, rails: single}
battery:
  chemistry: li-ion
  series: 6
  parallel: 2
  cell: {v_oc_low: 3.4 V, r_internal: 28 mohm .. 84 mohm}
channels:
  main: {rated_power: 40 W, output_stage: {topology: full-bridge, efficiency: 88 %}}
""",
)
