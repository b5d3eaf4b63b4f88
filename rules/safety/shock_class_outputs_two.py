"""Voltage of loudspeaker terminals: class 2 of audio signals.

Above class 1 terminals have to be insulated and carry the mark for dangerous voltage; above
class 2, 120 V rms of audio signal or 120 V of direct voltage, they must not be reachable at
all, and connectors that lock or need a tool are asked for.

The figure adds the ratios of direct and alternating voltage of one terminal against ground,
as in the check of class 1, and takes the pair of terminals where that is more.  Terminals
that are bare or merely insulated above 1 are critical.  First fix: locking connectors that
nothing can be put into.
"""

from ...linter.check import AtMost, Case, Check, Constant
from ..derived.access import TERMINALS
from ..formulas.constants import DC_CLASS_2
from ..formulas.safety import AUDIO_BEFORE, AUDIO_CLASSES, ENERGY_CLASSES
from ..hazards import SHOCK, also
from .shock_class_outputs import FORMULA, figure

BRIDGE = """
supply: {source: dc-source, rails: single, v_rail: 150 V}
channels: {main: {output_stage: {topology: full-bridge}}}
safety: {output_terminals: insulated}
"""

CHECK = Check(
    title="Loudspeaker terminal voltage vs. class 2",
    figure=figure,
    unit="1",
    each="channel",
    stake="safety",
    formula=FORMULA,
    sentence="A terminal carries {v_terminal_ac} rms and {v_terminal_dc} DC to ground ({figure:%"
    " of} class 2).",
    inputs={
        **TERMINALS,
        "dc_limit": DC_CLASS_2,
        "ac_limit": Constant("120 V", "audio voltage of class 2, rms", AUDIO_CLASSES),
    },
    applies={"terminals_seen": ("bare", "insulated")},
    limits=AtMost(critical="1", basis={"critical": AUDIO_CLASSES}),
    sources=(AUDIO_CLASSES, AUDIO_BEFORE, ENERGY_CLASSES),
    cautions=(also(SHOCK, "Such wiring is for licensed persons."),),
    cases=(
        Case(
            {"v_terminal_dc": "75 V", "v_terminal_ac": "53.033 V", "v_pair_ac": "106.066 V"},
            gives="1.066942",
            origin="computed: mean and rms of a simulated leg on 150 V, ratios added by hand",
        ),
        Case(
            {"v_terminal_dc": "0 V", "v_terminal_ac": "56.569 V", "v_pair_ac": "113.137 V"},
            gives="0.942809",
            origin="derived: bridge on two rails of 80 V: 113.1 V rms between the terminals",
        ),
    ),
    topic=("safety.output_terminals",),
    fails=BRIDGE,
    passes=BRIDGE.replace("150 V", "120 V"),
)
