"""Current of the filter capacitor across the load.

The capacitor carries two currents: the carrier's ripple, day and night, and the audio current
that grows with frequency. Film capacitors have been overloaded by treble at full level: 1 uF
takes 7.9 A from 50 V rms at 25 kHz. Music has little power at the top of the band; the
figure takes programme of the stated crest factor and puts all of it there, which is on the
safe side, and adds the ripple. Of the ripple the capacitor takes its share of the whole
capacitance, none of it in a three-level bridge whose capacitors to ground take it. Where the
data sheet gives no current, the limit follows from the loss factor of the dielectric and a
quarter of a watt, for the treble and for the carrier apart (a capacitor of constant loss
factor carries less at low frequencies): polyester then carries a ninth of what polypropylene
does. Cure: polypropylene, or several in parallel.
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
from ..formulas.capacitor import reactive_current
from ..formulas.constants import SINE_CREST


def figure(
    v_sine_max: float,
    crest_factor: float,
    crest_of_sine: float,
    band_high: float,
    c_across: float,
    c_total: float,
    ripple_idle: float,
    limit: float,
    limit_treble: float,
) -> float:
    """Rms of treble programme and ripple over the limit."""
    programme = 10 ** ((crest_of_sine - crest_factor) / 20) * v_sine_max
    audio = reactive_current(band_high, c_across, programme)
    ripple = ripple_idle / 12**0.5 * c_across / c_total
    return ((audio / limit_treble) ** 2 + (ripple / limit) ** 2) ** 0.5


CHECK = Check(
    title="Filter capacitor ripple current vs. rating",
    figure=figure,
    unit="1",
    each="channel",
    stake="rating",
    formula="sqrt((2 pi band_high c_across v_sine_max 10^((crest_of_sine - crest_factor)/20)"
    " / limit_treble)^2 + (ripple_idle/sqrt(12) c_across/c_total / limit)^2)",
    sentence="Capacitor across the load carries {figure:% of} its ripple rating ({limit_treble}"
    " treble, {limit} carrier; ripple {ripple_idle}).",
    inputs={
        "v_sine_max": Input("v_sine_max"),
        "crest_factor": Input("crest_tested"),
        "crest_of_sine": SINE_CREST,
        "band_high": Input("band_high"),
        "c_across": Input("c_across_working"),
        "c_total": Input("c_total"),
        "ripple_idle": Input(
            "ripple_idle", default=Assumption("0 A", "floor", derivation("audio current alone"))
        ),
        "limit": Input(
            "i_c_across_limit",
            default=Assumption(float("inf"), "floor", derivation("audio current alone")),
        ),
        "limit_treble": Input("i_c_across_limit_treble"),
    },
    applies={"filter_kind": "lc"},
    limits=AtMost(
        major="1",
        minor="0.7",
        basis={"major": derivation("the rated current of the part"), "minor": COMMON_PRACTICE},
    ),
    levers=(Lever("filter.c_across.i_rated", "0.5 A"),),
    sources=(
        derivation("reactive current and triangular ripple, mean squares added"),
        Source(
            "E. Mattingly, TPA3255_ClassD_PBTL, README and recorded sweeps",
            "filter capacitors: 6.4 ohm at 25 kHz, nearly 10 A at 50 V",
        ),
    ),
    cases=(
        Case(
            {
                "v_sine_max": "16.79 V",
                "crest_factor": "3.0103 dB",
                "band_high": "20 kHz",
                "c_across": "0.68 uF",
                "c_total": "0.68 uF",
                "ripple_idle": "0 A",
                "limit": "1.435 A",
                "limit_treble": "1.435 A",
            },
            gives="1",
            origin="computed: node equations with complex numbers, 1.435 A from a full sine",
        ),
        Case(
            {
                "v_sine_max": "50 V",
                "crest_factor": "3.0103 dB",
                "band_high": "25 kHz",
                "c_across": "1 uF",
                "c_total": "1 uF",
                "ripple_idle": "0 A",
                "limit": "7.8125 A",
                "limit_treble": "7.8125 A",
            },
            gives="1.0053",
            origin="published: E. Mattingly, README: 6.4 ohm at 25 kHz, 50 V, taken as rms: 7.8 A"
            " by hand, nearly 10 A there",
            tolerance=0.01,
        ),
    ),
    topic=("filter.c_across.dielectric", "filter.c_across.i_rated"),
    fails="""
supply: {source: dc-source, rails: split, v_rail: 50 V}
channels:
  main:
    rated_power: 250 W
    rated_load: 4 ohm
    output_stage: {topology: half-bridge}
    modulator: {carrier: 400 kHz}
    filter: {inductor: {l: 22 uH}, c_across: {c: 1 uF, i_rated: 1 A, dielectric: polyester}}
""",
    passes="""
supply: {source: dc-source, rails: split, v_rail: 35 V}
channels:
  main:
    rated_power: 120 W
    rated_load: 4 ohm
    output_stage: {topology: half-bridge}
    modulator: {carrier: 400 kHz}
    filter: {inductor: {l: 22 uH}, c_across: {c: 470 nF, dielectric: polypropylene}}
""",
)
