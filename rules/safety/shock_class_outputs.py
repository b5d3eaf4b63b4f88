"""Voltage of bare loudspeaker terminals: class 1 of audio signals.

The loudspeaker terminals are the part of an amplifier that is touched most.  For audio
signals the safety standards allow more than for other alternating voltage: 71 V rms for
equipment of ordinary users.  But one terminal of a bridge on a single rail also sits at
half the rail against ground all the time, and for a mixture the two ratios are added: half
the rail over 60 V, and the rms of one leg over 71 V, use the allowance up at a rail of 75 V,
not at the 100 V that the audio limit alone suggests.

The figure is the larger one of that sum for one terminal against ground and of the ratio
for the pair of terminals.  Above 1 bare terminals are beyond class 1: major, they have to be
insulated and marked.  The rail is taken as the crest of the largest sine, an upper bound.
First fix: insulated terminals that are also covered while plugging.
"""

from ...linter.check import AtMost, Case, Check, Constant, derivation
from ..derived.access import TERMINALS
from ..formulas.constants import DC_CLASS_1
from ..formulas.maths import larger
from ..formulas.safety import AUDIO_BEFORE, AUDIO_CLASSES, ENERGY_CLASSES, sum_of_ratios
from ..hazards import SHOCK, also


def figure(
    v_terminal_dc: float, v_terminal_ac: float, v_pair_ac: float, dc_limit: float, ac_limit: float
) -> float:
    """Voltage over a class: of one terminal against ground, or of the pair where that is more."""
    one = sum_of_ratios(v_terminal_dc, v_terminal_ac, dc_limit, ac_limit)
    return larger(one, v_pair_ac / ac_limit)


FORMULA = "larger of v_terminal_dc / dc_limit + v_terminal_ac / ac_limit and v_pair_ac / ac_limit"
BRIDGE = """
supply: {source: dc-source, rails: single, v_rail: 80 V}
channels: {main: {output_stage: {topology: full-bridge}}}
safety: {output_terminals: bare}
"""

CHECK = Check(
    title="Bare loudspeaker terminal voltage vs. class 1",
    figure=figure,
    unit="1",
    each="channel",
    stake="safety",
    formula=FORMULA,
    sentence="A bare terminal carries {v_terminal_ac} rms and {v_terminal_dc} DC to ground"
    " ({figure:% of} class 1).",
    inputs={
        **TERMINALS,
        "dc_limit": DC_CLASS_1,
        "ac_limit": Constant("71 V", "audio voltage of class 1, rms", AUDIO_CLASSES),
    },
    applies={"terminals_seen": "bare"},
    limits=AtMost(major="1", basis={"major": AUDIO_CLASSES}),
    sources=(
        AUDIO_CLASSES,
        AUDIO_BEFORE,
        ENERGY_CLASSES,
        derivation("an idle bridge is at half its rail"),
    ),
    cautions=(also(SHOCK, "Connect loudspeakers only with the amplifier off."),),
    cases=(
        Case(
            {"v_terminal_dc": "50.2 V", "v_terminal_ac": "35.496 V", "v_pair_ac": "70.994 V"},
            gives="1.336617",
            origin="computed: mean and rms of a simulated leg on 100.4 V, ratios added by hand",
        ),
        Case(
            {"v_terminal_dc": "0 V", "v_terminal_ac": "35.355 V", "v_pair_ac": "35.355 V"},
            gives="0.497965",
            origin="computed: IRAUDAMP7D-150, two rails of 50 V: a full sine of 35.36 V rms",
        ),
    ),
    topic=("safety.output_terminals",),
    asked_from="prototype",
    fails=BRIDGE,
    passes=BRIDGE.replace("80 V", "70 V"),
)
