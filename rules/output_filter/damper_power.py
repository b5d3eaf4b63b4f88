"""Power of the damper's resistor.

The series R-C at the output takes audio power that grows with the square of the frequency: 10
ohm and 100 nF burn half a watt from a 17.7 V sine at 20 kHz. In music the treble is weak and
an eighth of the sine power is ample; but a test tone, an ultrasonic input or a feedback howl
holds full level, and one-watt resistors have been burnt that way (35 V at 13 kHz: 0.9 W in a
resistor of 1 W). So the programme of the stated crest factor, all of it at the top of the
band, may take half of the rating, which is what resistors near hot parts are derated to; for
continuous tones state a crest factor of 3.01 dB. Where the usual programme takes more than an
eighth, a full sine at the top of the band overloads it: a reminder only, working boards are
laid out so. The carrier that the filter leaves is added, at its largest: milliwatts at 400 kHz
and 100 nF, but more than the programme where a slow two-level bridge meets a damper of some
microfarads. Cure: a smaller capacitor, a larger resistor body, a fuse resistor.
"""

from ...linter.check import (
    Assumption,
    AtMost,
    Case,
    Check,
    Input,
    Lever,
    Source,
    derivation,
)
from ..formulas.capacitor import series_rc_power
from ..formulas.constants import SINE_CREST
from ..hazards import RESISTOR


def figure(
    v_sine_max: float,
    crest_factor: float,
    crest_of_sine: float,
    band_high: float,
    damper_r: float,
    damper_c: float,
    connection: str,
    n_legs: float,
    p_carrier: float,
    p_rated: float,
) -> float:
    """Heat from programme at the top of the band and from the carrier over the rating."""
    programme = 10 ** ((crest_of_sine - crest_factor) / 20) * v_sine_max
    share = n_legs if connection == "each-terminal" else 1
    p_audio = series_rc_power(programme / share, band_high, damper_r, damper_c)
    return (p_audio + p_carrier) / p_rated


CHECK = Check(
    title="Damper resistor power vs. rating",
    figure=figure,
    unit="1",
    each="channel",
    stake="rating",
    formula="((v x)^2 damper_r / (1 + (x damper_r)^2) + p_carrier) / p_rated,"
    " v = v_sine_max 10^((crest_of_sine - crest_factor)/20), x = 2 pi band_high damper_c;"
    " connection each-terminal: v over n_legs",
    sentence="Damper resistor dissipates {p_rated:*figure}; rated {p_rated} ({crest_factor} crest"
    " factor at {band_high}, {p_carrier} from the carrier).",
    inputs={
        "v_sine_max": Input("v_sine_max"),
        "crest_factor": Input("crest_tested"),
        "crest_of_sine": SINE_CREST,
        "band_high": Input("band_high"),
        "damper_r": Input("filter.damper.r"),
        "damper_c": Input("filter.damper.c"),
        "connection": Input("filter.damper.connection"),
        "n_legs": Input("n_legs"),
        "p_carrier": Input(
            "p_damper_carrier",
            default=Assumption(
                "0 W", "favourable", derivation("bound: filter or carrier not known")
            ),
        ),
        "p_rated": Input("filter.damper.p_rated"),
    },
    limits=AtMost(
        major="0.5",
        minor="0.125",
        basis={
            "major": Source(
                "R. MacLachlan, ILEMT laboratory notebook",
                "0.9 W overloaded a resistor of 1 W; half is common practice",
            ),
            "minor": derivation("a sine at the top of the band overloads it"),
        },
    ),
    levers=(Lever("filter.damper.p_rated", ("0.5 W", "1 W", "2 W", "3 W", "5 W")),),
    cautions=(RESISTOR,),
    sources=(
        derivation("current of a series R-C"),
        Source("R. MacLachlan, ILEMT laboratory notebook", "10 Dec 2020: 10 ohm, 1 W overloaded"),
    ),
    cases=(
        Case(
            {
                "v_sine_max": "35 V",
                "crest_factor": "3.0103 dB",
                "band_high": "13.5 kHz",
                "damper_r": "40 ohm",
                "damper_c": "100 nF",
                "connection": "across",
                "n_legs": 1.0,
                "p_carrier": "0 W",
                "p_rated": "3.2 W",
            },
            gives="1.0",
            origin="published: ILEMT notebook, about 3 W with 40 ohm at the high tone",
            tolerance=0.03,
        ),
        Case(
            {
                "v_sine_max": "17.68 V",
                "crest_factor": "3.0103 dB",
                "band_high": "20 kHz",
                "damper_r": "10 ohm",
                "damper_c": "100 nF",
                "connection": "across",
                "n_legs": 1.0,
                "p_carrier": "0 W",
                "p_rated": "0.4859 W",
            },
            gives="1.0",
            origin="computed: node equations with complex numbers",
        ),
        Case(
            {
                "v_sine_max": "17.68 V",
                "crest_factor": "3.0103 dB",
                "band_high": "20 kHz",
                "damper_r": "10 ohm",
                "damper_c": "100 nF",
                "connection": "across",
                "n_legs": 1.0,
                "p_carrier": "0.4859 W",
                "p_rated": "0.9718 W",
            },
            gives="1.0",
            origin="derived: as much from the carrier again, twice the rating",
        ),
        Case(
            {
                "v_sine_max": "30 V",
                "crest_factor": "6.0206 dB",
                "crest_of_sine": "3.0103 dB",
                "band_high": "20 kHz",
                "damper_r": "15 ohm",
                "damper_c": "47 nF",
                "connection": "each-terminal",
                "n_legs": 2.0,
                "p_carrier": "0.1 W",
                "p_rated": "0.158407 W",
            },
            gives="1.0",
            origin="computed: impedance of one of two dampers on 10.61 V, 58.407 mW, and 0.1 W",
        ),
    ),
    topic=("filter.damper",),
    fails="""
supply: {source: dc-source, rails: split, v_rail: 50 V}
channels:
  main:
    output_stage: {topology: half-bridge}
    modulator: {type: self-oscillating}
    filter: {damper: {r: 10 ohm, c: 100 nF, p_rated: 1 W}}
""",
    passes="""
supply: {source: dc-source, rails: split, v_rail: 20 V}
channels:
  main:
    output_stage: {topology: half-bridge}
    modulator: {type: self-oscillating}
    filter: {damper: {r: 10 ohm, c: 100 nF, p_rated: 1 W}}
""",
)
