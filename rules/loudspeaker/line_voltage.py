"""Voltage of a constant-voltage line against what the stage can make.

Loudspeakers of an installed system hang on one line by transformers, and each takes the power
of its tap when the line carries its rated voltage: 100 V rms, or 70.7 V.  That is a sine of 141 V
peak, which a stage reaches only with rails of that height, with a bridge of half of it, or with a
transformer that steps its output up.  A stage of 28 V on a line of 100 V plays, with a twelfth
of the power at every tap.

The figure is the largest clean sine, times the ratio of the transformer ahead of the line, over
the rated voltage.  A tenth of the power is missing at 95 %.  Lines of that voltage are wired
by the rules for installations: local code and licensed practice hold.  First fixes: a transformer
of another ratio, a bridge, taps of a line of lower voltage.
"""

from ...linter.check import AtLeast, Case, Check, Input, Lever, derivation
from ..hazards import SHOCK, also


def figure(v_line_max: float, v_line: float) -> float:
    """Largest sine on the line over its rated voltage."""
    return v_line_max / v_line


LINE = """
supply: {source: dc-source, rails: single, v_rail: 32 V, r_source: 20 mohm, bulk: {c: 4700 uF}}
channels:
  main:
    rated_power: 50 W
    rated_load: 8 ohm
    rated_thd: 1 %
    output_stage: {topology: full-bridge, devices: integrated, efficiency: 90 %,
      r_series: 50 mohm, device: {r_ds_on: 60 mohm}}
    gate_drive: {dead_time: 5 ns, t_pulse_min: 50 ns}
    modulator: {type: natural-sampling, carrier: 400 kHz, m_max: 95 %}
    filter: {type: lc, inductor: {l: 10 uH, dcr: 15 mohm}}
    line: {v_line: 100 V, p_tap: 50 W, ratio: RATIO}
"""

CHECK = Check(
    title="Voltage of the loudspeaker line vs. rated line voltage",
    figure=figure,
    unit="1",
    each="channel",
    stake="performance",
    formula="v_line_max / v_line",
    sentence="Line gets {v_line_max} at most; rated line voltage {v_line} ({figure:%}).",
    inputs={"v_line_max": Input("v_line_max"), "v_line": Input("line.v_line")},
    limits=AtLeast(
        major="0.95",
        minor="1",
        basis={
            "major": derivation("0.95 squared: a tenth of the power of every tap is missing"),
            "minor": derivation("rated voltage of the line"),
        },
    ),
    otherwise="a bridge or higher rails, or a transformer ahead of the line",
    levers=(Lever("line.ratio", "0.5"),),
    sources=(derivation("a transformer multiplies the voltage by its ratio"),),
    cautions=(also(SHOCK, "Loudspeaker lines follow the local rules for installations."),),
    cases=(
        Case(
            {"v_line_max": "28.284 V", "v_line": "100 V"},
            gives="0.28284",
            origin="derived: 100 W into 8 ohm are 28.28 V, 8 % of the power of 100 V",
        ),
        Case(
            {"v_line_max": "70.711 V", "v_line": "70.711 V"},
            gives="1",
            origin="common practice: a sine of 100 V peak is the 70.7 V of the line",
        ),
    ),
    topic=("line",),
    fails=LINE.replace("RATIO", "2"),
    passes=LINE.replace("RATIO", "6"),
)
