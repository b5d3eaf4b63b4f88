"""Bus pumping by a steady offset at the output.

A half bridge that holds a steady voltage at its load returns current into the opposite
rail without pause: |V| / (2 R) times (1 - |V| / V rail). At audio frequencies the rail
relaxes in the next half cycle; here nothing draws it down but the rail's own load. If the
returned current is larger than what idling stages and bleeder take from the rail, the
rail climbs until a trip, a clamp or a part gives way. A few millivolts of offset do not
matter; volts do: a published log of half bridges into coils tells of an offset of up to 2 V,
of a rail that climbs until the over-voltage trip cycles, and of clamps that carry 1 A in vain.

It matters only for half bridges on a split supply whose source cannot sink. Offsets of all
half bridges are added as if they had the same sign. A source that is not known to sink is
taken not to. An idle power that is not stated is added up from switch data and comes out low,
so that a pass counts and a finding names it. First fix: remove the offset, then a bleeder.

A ratio of 1 is the balance itself. Half of it is kept as margin, since idle currents are
typical values: common practice, no source.
"""

from ...linter.check import (
    COMMON_PRACTICE,
    Assumption,
    AtMost,
    Case,
    Check,
    Constant,
    Input,
    Lever,
    Source,
    derivation,
)
from ..formulas.pumping import offset_current


def figure(
    n_legs: tuple[float, ...],
    v_dc: tuple[float, ...],
    r_load: tuple[float, ...],
    p_idle: tuple[float, ...],
    v_rail: float,
    r_bleeder: float,
    r_leak: float,
    sinks: str,
) -> float:
    kept = 0 if sinks == "yes" else 1
    returned = [
        kept * offset_current(v, r, v_rail) * (2 - n)
        for n, v, r in zip(n_legs, v_dc, r_load, strict=True)
    ]
    drawn = sum(p_idle[1:], p_idle[0]) / (2 * v_rail) + v_rail / r_bleeder + v_rail / r_leak
    return sum(returned[1:], returned[0]) / drawn


CHECK = Check(
    title="Current returned by DC offset vs. idle current of the rail",
    figure=figure,
    unit="1",
    each="product",
    stake="rating",
    formula="sum of v_dc / (2 r_load) (1 - v_dc / v_rail) over half bridges (n_legs 1),"
    " over sum of p_idle / (2 v_rail) + v_rail / r_bleeder + v_rail / r_leak;"
    " 0 if sinks is yes",
    sentence="DC offset ({v_dc}) returns {figure:% of} the idle current drawn from a {v_rail}"
    " rail.",
    inputs={
        "n_legs": Input("all n_legs"),
        "v_dc": Input("all dc_offset"),
        "r_load": Input("all r_load_dc"),
        "p_idle": Input("all p_idle_drawn"),
        "v_rail": Input("v_rail_low"),
        "r_bleeder": Input(
            "protection.bleeder.r", default=Assumption(float("inf"), "absent", COMMON_PRACTICE)
        ),
        "r_leak": Constant("1e12 ohm", "insulation across ONE rail", COMMON_PRACTICE),
        "sinks": Input("source_sinks"),
    },
    applies={
        "supply.rails": "split",
        "rail_topologies": "half-bridge",
        "source_sinks": "no",
    },
    limits=AtMost(
        major="1",
        minor="0.5",
        basis={
            "major": derivation("more is returned than drawn: the rail climbs without end"),
            "minor": COMMON_PRACTICE,
        },
    ),
    levers=(Lever("protection.bleeder.r", "E12"),),
    sources=(
        derivation("mean of i (1 - m) / 2 at constant m, checked by a switched simulation"),
        Source(
            "R. MacLachlan, ILEMT laboratory notebook",
            "27 June 2019: offset up to 0.45 V, rail from 75 V to 90 V, clamps "
            "carry 1 A and do not hold it; 22 Aug 2019: offset up to 2 V, "
            "removed together with the pumping",
        ),
        Source("diyclassd.com, pumping", "offset above 200 mV may pump the rail"),
    ),
    cases=(
        Case(
            {
                "n_legs": (1,),
                "v_dc": ("2 V",),
                "r_load": ("1 ohm",),
                "p_idle": ("15 W",),
                "v_rail": "75 V",
                "r_bleeder": "175 ohm",
                "sinks": "no",
            },
            gives="1.84144",
            origin="derived: half bridge returns 0.9733 A; 0.5286 A are drawn",
        ),
        Case(
            {
                "n_legs": (1, 1),
                "v_dc": ("20 mV", "20 mV"),
                "r_load": ("3.2 ohm", "3.2 ohm"),
                "p_idle": ("2.4 W", "2.4 W"),
                "v_rail": "35 V",
                "r_bleeder": "1e12 ohm",
                "sinks": "no",
            },
            gives="0.091095",
            origin="computed: IRAUDAMP7D rev. 2.9: 35 V rails, 20 mV, fig. 15 read toward no "
            "output: 4.8 W, taken for two channels; 3.2 ohm assumed",
        ),
        Case(
            {
                "n_legs": (1, 2),
                "v_dc": ("2 V", "2 V"),
                "r_load": ("1 ohm", "1 ohm"),
                "p_idle": ("15 W", "15 W"),
                "v_rail": "75 V",
                "r_bleeder": "175 ohm",
                "sinks": "no",
            },
            gives="1.54848",
            origin="derived: half bridge returns 0.9733 A, bridge none; 0.6286 A are drawn",
        ),
    ),
    topic=("all dc_offset", "supply.sinks_current"),
    fails="""
supply: {source: dc-source, rails: split, v_rail: 75 V, sinks_current: no}
channels:
  main:
    rated_load: 4 ohm
    dc_offset: 2 V
    output_stage: {topology: half-bridge, p_idle: 5 W}
    loudspeaker: {r_e: 1 ohm}
protection: {bleeder: {r: 175 ohm}}
""",
    passes="""
supply: {source: dc-source, rails: split, v_rail: 35 V, sinks_current: no}
channels:
  main:
    rated_load: 4 ohm
    dc_offset: 20 mV
    output_stage: {topology: half-bridge, p_idle: 2.4 W}
    loudspeaker: {r_e: 3.2 ohm}
""",
)
