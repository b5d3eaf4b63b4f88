"""Bare loudspeaker terminals by the limit for any alternating voltage.

The allowance of 71 V rms holds for audio signals in equipment that is judged by the clause
for audio amplifiers.  Other rules, of installations, of vehicles and of toys, know only the
plain limit of 30 V rms, and so do many test houses at first sight.  Until the clause was read in
the standard itself, terminals above it deserve a note: minor.

The figure is the larger one of the summed ratios of one terminal against ground (60 V
direct, 30 V rms) and of the ratio of the pair.  An amplifier of 100 W into 8 ohm, 28.3 V rms,
stays just below; one of 120 W does not.  First fix: terminals with insulated caps, which
good ones have anyway.
"""

from ...linter.check import AtMost, Case, Check, Constant
from ..derived.access import TERMINALS
from ..formulas.constants import DC_CLASS_1
from ..formulas.safety import ENERGY_CLASSES, TOUCH_AC
from ..hazards import SHOCK
from .shock_class_outputs import FORMULA, figure

BRIDGE = """
supply: {source: dc-source, rails: single, v_rail: 52 V}
channels: {main: {output_stage: {topology: full-bridge}}}
safety: {output_terminals: bare}
"""

CHECK = Check(
    title="Bare loudspeaker terminal voltage vs. plain limit",
    figure=figure,
    unit="1",
    each="channel",
    stake="safety",
    formula=FORMULA,
    sentence="A bare terminal carries {v_terminal_ac} rms and {v_terminal_dc} DC to ground; limits"
    " {ac_limit} rms, {dc_limit} DC ({figure:%}).",
    inputs={
        **TERMINALS,
        "dc_limit": DC_CLASS_1,
        "ac_limit": Constant("30 V", "alternating voltage of class 1, rms", TOUCH_AC),
    },
    applies={"terminals_seen": "bare"},
    limits=AtMost(minor="1", basis={"minor": TOUCH_AC}),
    sources=(TOUCH_AC, ENERGY_CLASSES),
    cautions=(SHOCK,),
    cases=(
        Case(
            {"v_terminal_dc": "0 V", "v_terminal_ac": "28.284 V", "v_pair_ac": "28.284 V"},
            gives="0.942809",
            origin="published: 100 W into 8 ohm are 28.28 V rms",
        ),
        Case(
            {"v_terminal_dc": "24.85 V", "v_terminal_ac": "17.572 V", "v_pair_ac": "35.143 V"},
            gives="1.1714",
            origin="computed: simulated leg on 49.7 V: the pair, 35.14 V rms, decides",
        ),
    ),
    topic=("safety.output_terminals",),
    fails=BRIDGE,
    passes=BRIDGE.replace("52 V", "36 V"),
)
