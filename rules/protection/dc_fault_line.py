"""Direct voltage on the transformers of a constant-voltage line after a fault.

Loudspeakers on a line of 70 V or 100 V hang on transformers, and a transformer passes no direct
voltage: no voice coil burns when a switch of a bridge or of a split-supply stage fails as a
short. The windings do. To direct voltage a transformer is the resistance of its wire, which is a
small part of its rated impedance, and its core is saturated at once.

The figure is the least heat in the windings: the direct voltage squared over the rated
impedance of the line (the true resistance is lower and the heat larger), but no more than the
source gives for good, as for voice coils. Up to 15 W a fault may burn for good without starting
a fire (class 1 of IEC 62368-1); above it is major, above 100 W, where a fire spreads at once,
critical. It is nothing where a detector cuts off load or supply and works with a shorted
switch. First fix: a detector that takes the supply away, or a relay ahead of the line.
"""

from ...linter.check import AtMost, Case, Check, Input, derivation
from ..formulas.maths import smaller
from ..formulas.safety import IGNITION, SAFE_POWER
from ..hazards import LINE_TRANSFORMER, also


def figure(v_fault: float, z_line: float, p_lasting: float, dc_cut_off: str) -> float:
    """Least heat in the windings."""
    least = smaller(v_fault**2 / z_line, p_lasting)
    return 0 * least if dc_cut_off == "yes" else least


HALL = """
supply: {source: dc-source, rails: split, v_rail: 80 V}
channels:
  hall:
    output_stage: {topology: half-bridge, devices: discrete}
    line: {v_line: 50 V, p_tap: 100 W}
    loudspeaker: none
protection: {dc_detector: WHAT}
"""

CHECK = Check(
    title="DC fault power in the line transformers vs. fire limit",
    figure=figure,
    unit="W",
    each="channel",
    stake="safety",
    formula="smaller of v_fault^2 / z_line and p_lasting, 0 where dc_cut_off is yes",
    sentence="A shorted switch leaves {v_fault} DC and at least {figure} in the line transformers;"
    " cut off by a detector: {dc_cut_off}.",
    inputs={
        "v_fault": Input("v_ideal", meaning="direct voltage at the line, upper bound"),
        "z_line": Input("z_line"),
        "p_lasting": Input("p_dc_lasting"),
        "dc_cut_off": Input("dc_cut_off"),
    },
    applies={"dc_reaches_load": "yes", "line": "fitted"},
    limits=AtMost(
        critical="100 W", major="15 W", basis={"critical": IGNITION, "major": SAFE_POWER}
    ),
    sources=(
        derivation("one switch shorted: the output sits at its rail"),
        derivation("a winding's resistance is less than the impedance that it is rated for"),
        SAFE_POWER,
        IGNITION,
    ),
    cautions=(also(LINE_TRANSFORMER, "A fuse does not protect it for sure."),),
    cases=(
        Case(
            {"v_fault": "80 V", "z_line": "25 ohm", "p_lasting": "400 W", "dc_cut_off": "no"},
            gives="256 W",
            origin="computed: node of 80 V on 25 ohm",
        ),
        Case(
            {"v_fault": "80 V", "z_line": "25 ohm", "p_lasting": "90 W", "dc_cut_off": "no"},
            gives="90 W",
            origin="derived: a source of 90 W gives no more",
        ),
        Case(
            {"v_fault": "80 V", "z_line": "25 ohm", "p_lasting": "400 W", "dc_cut_off": "yes"},
            gives="0 W",
            origin="derived: nothing is left once the supply is gone",
        ),
    ),
    topic=("protection.dc_detector",),
    asked_from="prototype",
    fails=HALL.replace("WHAT", "none"),
    passes=HALL.replace("WHAT", "{action: remove-supply, independent: yes}"),
)
