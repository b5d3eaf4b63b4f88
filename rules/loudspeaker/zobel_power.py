"""Heat in the resistor of the impedance correction.

At the top of the band the capacitor is nearly a short and the resistor has the whole
voltage of the amplifier across it.  With music there is little power so high; with a test
tone there is all of it, and a resistor that was chosen for music burns.

The figure is the power of the largest sine at the top of the band over the resistor's
rating.  Above 1 a test with a continuous high tone overloads it (minor: music does not);
above 8 even one eighth of the sine power, the trade's measure of loud programme, does.
What to do first: a larger resistor, or a smaller capacitor if the coil allows it.
"""

from ...linter.check import AtMost, Case, Check, Input, Lever, Source, derivation
from ..formulas.load import series_arm_power
from ..hazards import RESISTOR

NOTEBOOK = Source(
    "R. MacLachlan, laboratory notebook, 10 Dec 2020",
    "10 ohm 1 W overloaded by continuous high tones; 40 ohm and 100 nF take about 3 W",
)
ONE_EIGHTH = Source(
    "IEC 60065, decision sheet DSH 289: one eighth of the non-clipped output power",
    "normal operation; no page given",
)


def figure(v_driver_rms: float, band_high: float, r: float, c: float, p_rated: float) -> float:
    return series_arm_power(v_driver_rms, band_high, r, c) / p_rated


ARM = """
supply: {source: dc-source, rails: single, v_rail: 32 V, r_source: 20 mohm, bulk: {c: 4700 uF}}
channels:
  main:
    rated_power: 50 W
    rated_load: 8 ohm
    band: 40 Hz .. 20 kHz
    output_stage: {topology: full-bridge, devices: integrated, efficiency: 90 %,
      r_series: 50 mohm, device: {r_ds_on: 60 mohm}}
    gate_drive: {dead_time: 5 ns, t_pulse_min: 50 ns}
    modulator: {type: natural-sampling, carrier: 400 kHz, m_max: 95 %}
    filter: {type: lc, inductor: {l: 10 uH, dcr: 15 mohm}}
    limiter: {v_rms: 20 V}
    loudspeaker: {z_rated: 8 ohm, zobel: {r: 8.2 ohm, c: 27 uF, p_rated: 5 W}}
"""

CHECK = Check(
    title="Zobel resistor power vs. rating",
    figure=figure,
    unit="1",
    each="channel",
    stake="performance",
    formula="v_driver_rms^2 u^2 / (r p_rated (1 + u^2)), u = 2 pi band_high r c",
    sentence="Zobel resistor {r} dissipates {p_rated:*figure} ({v_driver_rms} at {band_high});"
    " rated {p_rated} ({figure:%}).",
    inputs={
        "v_driver_rms": Input("v_driver_rms"),
        "band_high": Input("band_high"),
        "r": Input("loudspeaker.zobel.r"),
        "c": Input("loudspeaker.zobel.c"),
        "p_rated": Input("loudspeaker.zobel.p_rated"),
    },
    limits=AtMost(major="8", minor="1", basis={"major": ONE_EIGHTH, "minor": NOTEBOOK}),
    levers=(Lever("loudspeaker.zobel.p_rated", ("5 W", "10 W", "20 W", "50 W")),),
    sources=(NOTEBOOK, derivation("complex divider of resistor and capacitor")),
    cautions=(RESISTOR,),
    cases=(
        Case(
            {
                "v_driver_rms": "35 V",
                "band_high": "13.5 kHz",
                "r": "40 ohm",
                "c": "100 nF",
                "p_rated": "1 W",
            },
            gives="3.16",
            tolerance=0.01,
            origin="published: about 3 W, R. MacLachlan, laboratory notebook, 10 Dec 2020",
        ),
        Case(
            {
                "v_driver_rms": "28.284 V",
                "band_high": "20 kHz",
                "r": "10 ohm",
                "c": "100 nF",
                "p_rated": "1 W",
            },
            gives="1.2437",
            origin="computed: complex nodal solution",
        ),
    ),
    topic=("loudspeaker.zobel",),
    fails=ARM,
    passes=ARM.replace("p_rated: 5 W", "p_rated: 50 W"),
)
