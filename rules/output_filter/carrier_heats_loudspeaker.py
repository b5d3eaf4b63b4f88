"""Heat of the carrier residual in the voice coil.

The residual heats the voice coil day and night, also with no music. A voice coil that is
still resistive at the carrier (tweeters with copper rings, small full-range units) takes
the whole of it; a coil with inductance takes less. More than a tenth of the power rating
as idle heat is a fault of the filter, more than the whole rating burns the unit. The
rating of the weakest unit on the channel is meant. Where no coil inductance is stated the
coil counts as a resistor, which is the worst case. Typical full filters leave milliwatts:
a finding here means that the filter is missing, mis-sized or at the wrong end of a prefix.
"""

from ...linter.check import (
    COMMON_PRACTICE,
    Assumption,
    AtMost,
    Case,
    Check,
    Input,
    Lever,
    Source,
    derivation,
)
from ..formulas.lc import ladder_gain
from ..formulas.maths import PI
from ..formulas.modulation import carrier_fundamental
from ..hazards import COIL


def figure(
    v_swing: float,
    levels: str,
    f_carrier_effective: float,
    l_total: float,
    c_total: float,
    n_legs: float,
    dcr: float,
    l_2: float,
    c_2: float,
    z_load: float,
    l_e: float,
    series: float,
    parallel: float,
    p_rated: float,
) -> float:
    """Power of the residual in all coils over their power rating."""
    coil = z_load + 2j * PI * f_carrier_effective * l_e * series / parallel
    gain = ladder_gain(f_carrier_effective, l_total, c_total, coil, n_legs * dcr, n_legs * l_2, c_2)
    current = carrier_fundamental(v_swing, n_legs, levels) * gain / abs(coil)
    return current**2 * z_load / (p_rated * series * parallel)


CHECK = Check(
    title="Carrier power in the loudspeaker vs. rating",
    figure=figure,
    unit="%",
    each="channel",
    stake="safety",
    formula="(sqrt(2)/pi v_swing, times n_legs for levels two-level, times the gain of the"
    " ladder l_total with n_legs dcr, c_total, n_legs l_2, c_2, coil over abs(coil))^2 z_load"
    " / (p_rated series parallel), coil = z_load + 2 pi j f_carrier_effective l_e"
    " series/parallel",
    sentence="Carrier at {f_carrier_effective} puts {p_rated:*figure} into the voice coil; rated"
    " {p_rated} ({figure:%}).",
    inputs={
        "v_swing": Input("v_swing"),
        "levels": Input("levels"),
        "f_carrier_effective": Input("f_carrier_effective"),
        "l_total": Input("l_total"),
        "c_total": Input("c_total"),
        "n_legs": Input("n_legs"),
        "dcr": Input("filter.inductor.dcr"),
        "l_2": Input("l_second"),
        "c_2": Input("c_second"),
        "z_load": Input("z_load"),
        "l_e": Input(
            "loudspeaker.l_e",
            default=Assumption("0 H", "adverse", derivation("a resistor takes the most heat")),
        ),
        "series": Input("loudspeaker.series"),
        "parallel": Input("loudspeaker.parallel"),
        "p_rated": Input("loudspeaker.p_rated"),
    },
    applies={"filter_kind": "lc", "loudspeaker.piezo": "none", "line": "none"},
    limits=AtMost(
        critical="100 %",
        major="10 %",
        basis={
            "critical": derivation("the residual alone reaches the power rating of the unit"),
            "major": COMMON_PRACTICE,
        },
    ),
    levers=(Lever("filter.inductor.l", "E6"), Lever("filter.c_across.c", "E6")),
    sources=(
        derivation("current of the residual in resistance and inductance of the coil"),
        Source(
            "J. Estefania Vilumbrales, thesis, Universidad de Cantabria, 2017",
            "annexes p. 12: 560 pF in the filter; that it leaves volts of carrier is computed",
        ),
    ),
    cautions=(COIL,),
    cases=(
        Case(
            {
                "v_swing": "50 V",
                "levels": "two-level",
                "f_carrier_effective": "400 kHz",
                "l_total": "22 uH",
                "c_total": "0.68 uF",
                "n_legs": 1.0,
                "dcr": "0 ohm",
                "l_2": "0 H",
                "c_2": "0 F",
                "z_load": "8 ohm",
                "l_e": "0 H",
                "series": 1.0,
                "parallel": 1.0,
                "p_rated": "7.206 mW",
            },
            gives="100 %",
            origin="computed: switched waveform by FFT, 7.206 mW in 8 ohm",
        ),
        Case(
            {
                "v_swing": "50 V",
                "levels": "two-level",
                "f_carrier_effective": "400 kHz",
                "l_total": "22 uH",
                "c_total": "0.68 uF",
                "n_legs": 1.0,
                "dcr": "0 ohm",
                "l_2": "0 H",
                "c_2": "0 F",
                "z_load": "8 ohm",
                "l_e": "0 H",
                "series": 2.0,
                "parallel": 2.0,
                "p_rated": "7.206 mW",
            },
            gives="25 %",
            origin="derived: four units share the same heat",
        ),
        Case(
            {
                "v_swing": "24 V",
                "levels": "two-level",
                "f_carrier_effective": "300 kHz",
                "l_total": "3 uH",
                "c_total": "0.22 uF",
                "n_legs": 2.0,
                "dcr": "500 mohm",
                "l_2": "0 H",
                "c_2": "0 F",
                "z_load": "8 ohm",
                "l_e": "20 uH",
                "series": 2.0,
                "parallel": 1.0,
                "p_rated": "0.182587 W",
            },
            gives="100 %",
            origin="computed: node equations of both legs, 21.61 V, 0.36517 W in two units",
        ),
    ),
    topic=("filter.inductor", "filter.c_across"),
    fails="""
supply: {source: dc-source, rails: single, v_rail: 70 V}
channels:
  main:
    rated_load: 5 ohm
    output_stage: {topology: full-bridge}
    modulator: {levels: two-level, carrier: 60 kHz}
    filter: {inductor: {l: 15 uH}, c_across: {c: 10 nF, dielectric: polypropylene}}
    loudspeaker: {z_rated: 5 ohm, p_rated: 20 W, l_e: 20 uH}
""",
    passes="""
supply: {source: dc-source, rails: split, v_rail: 35 V}
channels:
  main:
    rated_load: 4 ohm
    output_stage: {topology: half-bridge}
    modulator: {carrier: 400 kHz}
    filter: {inductor: {l: 22 uH}, c_across: {c: 470 nF, dielectric: polypropylene}}
    loudspeaker: {z_rated: 4 ohm, p_rated: 20 W, l_e: 0.05 mH}
""",
)
