"""Bootstrap capacitor of an integrated stage against the value of its data sheet.

Inside an integrated stage the bootstrap diode, the gate charge and the shortest low pulse
are fixed, so the maker asks for one value of the external capacitor.  Much less, and the
upper switch is driven too weakly towards the end of a long pulse; much more, and the
capacitor does not fill in the time given, at start-up or after clipping.

The figure is how far the fitted value is from the one asked for, whichever is larger on
top, tolerance included; class 2 ceramics that lose capacitance at working voltage count
too.  It is a comparison with the data sheet and with nothing else.  First fix: the value
asked for, in X7R with a rating of twice its working voltage.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever, Source
from ..formulas.maths import larger


def figure(c: float, c_bootstrap: float) -> float:
    """Ratio of the capacitor fitted and asked for, whichever is larger on top."""
    return larger(c / c_bootstrap, c_bootstrap / c)


CHECK = Check(
    title="Bootstrap capacitor vs. data-sheet value",
    figure=figure,
    unit="1",
    each="channel",
    stake="rating",
    formula="larger of c / c_bootstrap and c_bootstrap / c",
    sentence="Bootstrap capacitor {c}; the data sheet specifies {c_bootstrap} (factor {figure}).",
    inputs={
        "c": Input("gate_drive.bootstrap.c"),
        "c_bootstrap": Input("output_stage.device.c_bootstrap"),
    },
    applies={"output_stage.devices": "integrated"},
    limits=AtMost(
        major="3", minor="1.5", basis={"major": COMMON_PRACTICE, "minor": COMMON_PRACTICE}
    ),
    levers=(Lever("gate_drive.bootstrap.c", "E6"),),
    sources=(Source("TPA3221 data sheet SLASEE9B", "p. 15: 33 nF bootstrap capacitor"),),
    cases=(
        Case(
            {"c": "33 nF", "c_bootstrap": "33 nF"},
            "1",
            "published: TPA3221 data sheet SLASEE9B, capacitor as asked for",
        ),
        Case(
            {"c": "220 nF", "c_bootstrap": "33 nF"},
            "6.667",
            "derived: a capacitor of another part's data sheet",
        ),
        Case(
            {"c": "3.3 nF", "c_bootstrap": "33 nF"},
            gives="10",
            origin="derived: a slipped prefix, a tenth of what is asked for",
        ),
    ),
    topic=("output_stage.device.c_bootstrap", "gate_drive.bootstrap.c"),
    peaks_inside=("gate_drive.bootstrap.c",),
    fails="""
channels:
  main:
    output_stage: {devices: integrated, device: {c_bootstrap: 33 nF}}
    gate_drive: {bootstrap: {c: 220 nF}}
""",
    passes="""
channels:
  main:
    output_stage: {devices: integrated, device: {c_bootstrap: 33 nF}}
    gate_drive: {bootstrap: {c: 33 nF ± 10 %}}
""",
)
