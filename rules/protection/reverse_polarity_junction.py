"""Junction temperature of the part that blocks a reversed source.

The whole supply current runs through it.  A Schottky diode drops its forward voltage: heat
is that voltage times the mean current.  A transistor is a resistance: heat is its resistance
times the square of the rms current, a fraction of the diode's.

Few of these parts sit on a heatsink.  On board copper a data sheet promises 165 K/W for a
small package on its footprint, 50 K/W for a large one, and 18 K/W where the whole back of the
board is copper.  So 2 W take a good board and 8 W are beyond any: without a stated thermal
resistance the check is judged over that range.  A part on a heatsink has its resistance stated.

As at the stage, rated power of all channels is taken in the steady state; music gives less.
The absolute maximum makes it more than a remark, and missed by more than the estimate may
err it is critical.  First fix: a transistor in place of the diode, or of less resistance.
"""

from ...linter.check import (
    COMMON_PRACTICE,
    AtLeast,
    Case,
    Check,
    Input,
    Lever,
    Source,
    derivation,
)
from ..hazards import STAGE_LOST


def figure(t_j_max: float, t_air: float, r_th_ja: float, p_blocking: float) -> float:
    """Distance of the junction from its limit."""
    return t_j_max - t_air - r_th_ja * p_blocking


DIODE = """
supply: {source: dc-source, rails: single, v_rail: 24 V, r_source: 50 mohm, bulk: {c: 470 uF}}
channels:
  main:
    rated_power: 100 W
    rated_load: 4 ohm
    band: 60 Hz .. 16 kHz
    output_stage: {topology: full-bridge, devices: integrated, efficiency: 88 %}
thermal: {t_air_inside: 50 degC}
protection:
  reverse_polarity: {method: schottky, v_f: 0.45 V, r_th_ja: 50 K/W, t_j_max: 150 degC}
"""

CHECK = Check(
    title="Junction temperature of the reverse-polarity part vs. limit",
    figure=figure,
    unit="K",
    each="product",
    stake="rating",
    formula="t_j_max - t_air - r_th_ja p_blocking",
    sentence="Reverse-polarity part ({p_blocking} at rated power, {r_th_ja}, air {t_air}) runs"
    " {figure:+below|above} its junction limit of {t_j_max}.",
    inputs={
        "t_j_max": Input("protection.reverse_polarity.t_j_max"),
        "t_air": Input("t_air_inside"),
        "r_th_ja": Input("protection.reverse_polarity.r_th_ja"),
        "p_blocking": Input("p_blocking"),
    },
    applies={"supply.source": ("battery", "dc-source")},
    limits=AtLeast(
        critical="-10 K",
        major="0 K",
        minor="25 K",
        basis={
            "critical": derivation(
                "absolute maximum, missed by more than the 20 % that heat and resistance of an"
                " estimate are uncertain"
            ),
            "major": derivation(
                "the absolute maximum that the part's data sheet states is the limit itself"
            ),
            "minor": COMMON_PRACTICE,
        },
    ),
    levers=(Lever("protection.reverse_polarity.r_on", "1 mohm"),),
    sources=(
        derivation("a drop times the mean current, a resistance times the squared rms"),
        Source(
            "MJB18004D2T4 data sheet, onsemi",
            "p. 12: 50 K/W for a D2PAK on its footprint, almost half of it on much copper",
        ),
        Source(
            "International Rectifier AN-994",
            "table 1, 1 sq in in front of a full copper back: D2-Pak 18.0 K/W typical",
        ),
    ),
    cautions=(STAGE_LOST,),
    cases=(
        Case(
            {
                "t_j_max": "150 degC",
                "t_air": "25 degC",
                "r_th_ja": "50 K/W",
                "p_blocking": "2.5 W",
            },
            gives="0 K",
            origin="published: MJB18004D2T4 data sheet, p. 12: 2.5 W at 50 K/W from 25 degC",
        ),
        Case(
            {
                "t_j_max": "175 degC",
                "t_air": "60 degC",
                "r_th_ja": "75 K/W",
                "p_blocking": "2.061 W",
            },
            gives="-39.575 K",
            origin="computed: 0.45 V at a mean of 4.580 A, averaged over a period by quadrature,"
            " in a D-Pak on its footprint",
        ),
    ),
    topic=("protection.reverse_polarity",),
    asked_from="prototype",
    fails=DIODE,
    passes=DIODE.replace("method: schottky, v_f: 0.45 V", "method: p-channel, r_on: 6 mohm"),
)
