"""Pack voltage at the bass crest against the protection's cut-off.

The protection circuit of a pack disconnects when the voltage falls below its cut-off, to
save the cells. If the crest of a bass note does that, the whole product goes dark, and many
protections stay off until the charger is plugged in. So the sagging voltage must stay above
the cut-off at the lowest charge for which full power is promised, also behind a converter,
which draws more current the lower the pack is.

The figure takes the voltage behind protection and leads, a little lower than what the
protection sees, and the cut-off at the top of its tolerance. A cut-off of single cells
counts times the cells in series. Below it is major. Delays of the protection are not
counted: some bridge a crest of milliseconds.
"""

from ...linter.check import AtLeast, Case, Check, Input, Lever, derivation
from ..formulas.supply import BRIDGE_CURRENT, CONSTANT_POWER


def figure(v_loaded: float, v_cutoff: float) -> float:
    return v_loaded / v_cutoff


CHECK = Check(
    title="Pack voltage under load vs. protection cut-off",
    figure=figure,
    unit="1",
    each="product",
    stake="rating",
    formula="v_loaded / v_cutoff",
    sentence="Bass peaks pull a low pack down to {v_loaded}; protection cut-off {v_cutoff}"
    " ({figure:%}).",
    inputs={
        "v_loaded": Input("v_source_loaded"),
        "v_cutoff": Input("battery.protection.v_cutoff"),
    },
    applies={"supply.source": "battery"},
    limits=AtLeast(
        major="1", basis={"major": derivation("below the cut-off the pack is disconnected")}
    ),
    levers=(
        Lever("battery.parallel", "1", within=3),
        Lever("battery.protection.v_cutoff", "0.1 V"),
    ),
    sources=(CONSTANT_POWER, BRIDGE_CURRENT),
    cases=(
        Case(
            {"v_loaded": "19.27 V", "v_cutoff": "16.8 V"},
            gives="1.147024",
            origin="computed: 20.4 V, 0.12 ohm, 181.8 W by root finding, 19.27 V",
        ),
        Case(
            {"v_loaded": "16.50 V", "v_cutoff": "17.4 V"},
            gives="0.948276",
            origin="computed: 20.4 V, 0.36 ohm, 178.8 W by root finding, 16.50 V",
        ),
    ),
    topic=("battery.protection.v_cutoff",),
    fails="""
supply: {source: battery, rails: single}
battery:
  chemistry: li-ion
  series: 6
  cell: {v_oc_low: 3.2 V, r_internal: 40 mohm .. 110 mohm}
  protection: {v_cutoff: {min: 16.2 V, typ: 16.8 V, max: 17.4 V}}
channels:
  main: {rated_power: 80 W, output_stage: {topology: full-bridge, efficiency: 88 %}}
""",
    passes="""
supply: {source: battery, rails: single}
battery:
  chemistry: li-ion
  series: 6
  parallel: 3
  cell: {v_oc_low: 3.4 V, r_internal: 28 mohm .. 60 mohm}
  protection: {v_cutoff: {min: 16.2 V, typ: 16.8 V, max: 17.4 V}}
channels:
  main: {rated_power: 80 W, output_stage: {topology: full-bridge, efficiency: 88 %}}
""",
)
