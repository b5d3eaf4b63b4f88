"""Current of the filter capacitors to ground.

Each capacitor from a terminal of the bridge to ground carries the treble at half the load's
voltage and the carrier's ripple of its own leg. In a three-level bridge it takes the whole
ripple, because at idle both terminals move alike and nothing flows between them. In a two-level
bridge they move oppositely, and a capacitor across the load, seen from one terminal as twice
its value to the middle, takes its part; in a half bridge it simply lies beside. Programme of the
stated crest factor is put entirely at the top of the band, which is on the safe side. Where the
data sheet gives no current, the limit follows from the loss factor of the dielectric and a
quarter of a watt, for the treble and for the carrier apart (a capacitor of constant loss factor
carries less at low frequencies). Cure: a dielectric of lower loss, or a smaller capacitor to
ground and a larger one across.
"""

from ...linter.check import (
    COMMON_PRACTICE,
    Assumption,
    AtMost,
    Case,
    Check,
    Input,
    Lever,
    derivation,
)
from ..formulas.capacitor import reactive_current
from ..formulas.constants import SINE_CREST


def figure(
    v_sine_max: float,
    crest_factor: float,
    crest_of_sine: float,
    band_high: float,
    c_ground: float,
    c_across: float,
    n_legs: float,
    levels: str,
    ripple_idle: float,
    limit: float,
    limit_treble: float,
) -> float:
    """Rms of treble programme and of the part of the ripple over the limit."""
    programme = 10 ** ((crest_of_sine - crest_factor) / 20) * v_sine_max / n_legs
    audio = reactive_current(band_high, c_ground, programme)
    alike = levels == "three-level" and n_legs > 1
    part = 1.0 if alike else c_ground / (c_ground + n_legs * c_across)
    return ((audio / limit_treble) ** 2 + (part * ripple_idle) ** 2 / 12 / limit**2) ** 0.5


CHECK = Check(
    title="Ripple current of capacitors to ground vs. rating",
    figure=figure,
    unit="1",
    each="channel",
    stake="rating",
    formula="sqrt((2 pi band_high c_ground v_sine_max/n_legs"
    " 10^((crest_of_sine - crest_factor)/20) / limit_treble)^2 + (part ripple_idle)^2/12"
    " / limit^2), part = c_ground / (c_ground + n_legs c_across), 1 in a bridge of levels"
    " three-level",
    sentence="Each capacitor to ground carries {figure:% of} its ripple rating ({limit_treble}"
    " treble, {limit} carrier; ripple {ripple_idle}).",
    inputs={
        "v_sine_max": Input("v_sine_max"),
        "crest_factor": Input("crest_tested"),
        "crest_of_sine": SINE_CREST,
        "band_high": Input("band_high"),
        "c_ground": Input("c_ground_working"),
        "c_across": Input(
            "c_across_working",
            default=Assumption("0 F", "absent", derivation("without it nothing shares the ripple")),
        ),
        "n_legs": Input("n_legs"),
        "levels": Input(
            "modulator.levels",
            default=Assumption(
                "three-level", "adverse", derivation("then they take the whole ripple")
            ),
        ),
        "ripple_idle": Input(
            "ripple_idle", default=Assumption("0 A", "floor", derivation("audio current alone"))
        ),
        "limit": Input(
            "i_c_ground_limit",
            default=Assumption(float("inf"), "floor", derivation("audio current alone")),
        ),
        "limit_treble": Input("i_c_ground_limit_treble"),
    },
    applies={"filter_kind": "lc", "filter.c_ground": "fitted"},
    limits=AtMost(
        major="1",
        minor="0.7",
        basis={"major": derivation("the rated current of the part"), "minor": COMMON_PRACTICE},
    ),
    levers=(Lever("filter.c_ground.i_rated", "0.5 A"),),
    sources=(derivation("reactive current and triangular ripple, mean squares added"),),
    cases=(
        Case(
            {
                "v_sine_max": "33.58 V",
                "crest_factor": "3.0103 dB",
                "band_high": "20 kHz",
                "c_ground": "0.68 uF",
                "c_across": "0 F",
                "n_legs": 2.0,
                "levels": "three-level",
                "ripple_idle": "0 A",
                "limit": "1.435 A",
                "limit_treble": "1.435 A",
            },
            gives="1",
            origin="computed: node equations with complex numbers, 1.435 A from a full sine",
        ),
        Case(
            {
                "v_sine_max": "20 V",
                "crest_factor": "43 dB",
                "band_high": "20 kHz",
                "c_ground": "0.68 uF",
                "c_across": "0 F",
                "n_legs": 2.0,
                "levels": "three-level",
                "ripple_idle": "1.433 A",
                "limit": "0.4137 A",
                "limit_treble": "0.4137 A",
            },
            gives="1",
            origin="computed: switched circuit in time, 0.4137 A rms of ripple",
            tolerance=2e-3,
        ),
        Case(
            {
                "v_sine_max": "20 V",
                "crest_factor": "60 dB",
                "band_high": "20 kHz",
                "c_ground": "0.47 uF",
                "c_across": "1.5 uF",
                "n_legs": 2.0,
                "levels": "two-level",
                "ripple_idle": "2.34 A",
                "limit": "2 A",
                "limit_treble": "2 A",
            },
            gives="0.04574",
            origin="derived: 0.47 / (0.47 + 3) of 0.6755 A rms, by hand",
            tolerance=3e-3,
        ),
    ),
    topic=("filter.c_ground.dielectric", "filter.c_ground.i_rated"),
    fails="""
supply: {source: dc-source, rails: single, v_rail: 48 V}
channels:
  main:
    rated_power: 200 W
    rated_load: 4 ohm
    output_stage: {topology: full-bridge}
    modulator: {carrier: 300 kHz}
    filter: {inductor: {l: 10 uH}, c_ground: {c: 680 nF, i_rated: 0.8 A}}
""",
    passes="""
supply: {source: dc-source, rails: single, v_rail: 24 V}
channels:
  main:
    rated_power: 50 W
    rated_load: 4 ohm
    output_stage: {topology: full-bridge}
    modulator: {carrier: 400 kHz}
    filter: {inductor: {l: 10 uH}, c_ground: {c: 680 nF, i_rated: 2 A}}
""",
)
