"""Saturation of the transformers of a constant-voltage line at low frequencies.

The flux of a transformer is voltage over frequency.  One that takes 100 V at 60 Hz takes 50 V at
30 Hz; beyond that its core saturates and the winding is a short of a few ohms, many times in
every second of bass.  The amplifier trips or burns, and everything on the line is distorted.  So a
high-pass belongs ahead of every line, in the signal, before the power stage.

The figure is the largest voltage over frequency on the line against what the transformers take.
Without a high-pass that is the largest sine at the low end of the band.  Behind a Butterworth
high-pass of order n it is that voltage at the corner times 1, 0.71, 0.73 or 0.76 for order 1 to 4.
Steady voltage at the output saturates a core as well, and is judged as an offset.  First fixes: a
high-pass at the frequency that the transformers are rated from, better transformers.
"""

from ...linter.check import AtMost, Case, Check, Input, Lever, derivation
from .line_voltage import LINE


def figure(line_flux: float, f_full: float, v_line: float) -> float:
    """Flux on the line over that which the transformers take."""
    return line_flux * f_full / v_line


FULL = LINE.replace("RATIO}", "5, f_full: 60 Hz, high_pass: WHAT}")

CHECK = Check(
    title="Flux of the line transformers vs. saturation",
    figure=figure,
    unit="1",
    each="channel",
    stake="performance",
    formula="line_flux f_full / v_line",
    sentence="Line transformers carry {figure:% of} their flux limit ({v_line} from {f_full} up).",
    inputs={
        "line_flux": Input("line_flux"),
        "f_full": Input("line.f_full"),
        "v_line": Input("line.v_line"),
    },
    limits=AtMost(
        major="1.1",
        minor="1",
        basis={
            "major": derivation("a tenth beyond its rating the core saturates at every low note"),
            "minor": derivation("rating of the transformers"),
        },
    ),
    levers=(Lever("line.high_pass.f", "5 Hz"),),
    otherwise="a high-pass ahead of the line, or transformers rated from a lower frequency",
    sources=(derivation("flux of a core is the integral of its voltage"),),
    cases=(
        Case(
            {"line_flux": "5 V s", "f_full": "60 Hz", "v_line": "100 V"},
            gives="3",
            origin="derived: 100 V at 20 Hz on transformers for 100 V from 60 Hz on",
        ),
        Case(
            {"line_flux": "1.17851 V s", "f_full": "60 Hz", "v_line": "100 V"},
            gives="0.707107",
            origin="computed: second-order high-pass of 60 Hz, scanned from 1 Hz to 1 kHz",
        ),
    ),
    topic=("line",),
    asked_from="prototype",
    fails=FULL.replace("WHAT", "none"),
    passes=FULL.replace("WHAT", "{f: 65 Hz, order: 2}"),
)
