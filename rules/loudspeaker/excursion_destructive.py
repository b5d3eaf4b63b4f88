"""Cone excursion over the band against the travel that destroys the driver.

Beyond the destructive travel the coil former strikes the back plate or the suspension
tears.  One loud note is enough.  Same model as for the linear travel; it leaves out the
stiffening of the suspension, so a driver may survive a little more than the figure says,
which is no reason to rely on it.

What to do first: a high-pass ahead of a vented box, a voltage limit for a sealed one.
"""

from ...linter.check import AtMost, Case, Check, Input, Lever, derivation
from ..formulas.driver import SMALL_CLOSED, SMALL_VENTED
from ..hazards import LOUDSPEAKER_LOST

MATRIX = "computed: electro-mechanical matrix of coil, motor, suspension and box"


def figure(x_peak: float, x_mech: float) -> float:
    return x_peak / x_mech


BOXED = """
supply: {source: dc-source, rails: single, v_rail: 32 V, r_source: 20 mohm, bulk: {c: 4700 uF}}
channels:
  main:
    rated_power: 50 W
    rated_load: 8 ohm
    band: 20 Hz .. 5 kHz
    output_stage: {topology: full-bridge, devices: integrated, efficiency: 90 %,
      r_series: 50 mohm, device: {r_ds_on: 60 mohm}}
    gate_drive: {dead_time: 5 ns, t_pulse_min: 50 ns}
    modulator: {type: natural-sampling, carrier: 400 kHz, m_max: 95 %}
    filter: {type: lc, inductor: {l: 10 uH, dcr: 15 mohm}}
    limiter: {v_rms: 20 V}
    loudspeaker: {z_rated: 8 ohm, r_e: 6 ohm, f_s: 45 Hz, q_ms: 4, q_es: 0.45, v_as: 20 L,
      s_d: 137 cm2, x_mech: 12 mm, high_pass: none,
      enclosure: {type: vented, v_b: 12 L, f_b: 50 Hz, q_l: 7}}
"""

CHECK = Check(
    title="Cone excursion vs. mechanical limit",
    figure=figure,
    unit="1",
    each="channel",
    stake="rating",
    formula="x_peak / x_mech",
    sentence="Peak cone excursion {x_peak}; mechanical limit {x_mech} ({figure:%}).",
    inputs={
        "x_peak": Input("x_peak"),
        "x_mech": Input("loudspeaker.x_mech"),
    },
    applies={
        "loudspeaker.enclosure.type": ("sealed", "vented", "passive-radiator", "open", "horn"),
        "travel_stated": "yes",
    },
    limits=AtMost(
        critical="1",
        basis={"critical": derivation("the coil strikes or the suspension tears")},
    ),
    levers=(
        Lever("limiter.v_rms", "0.5 V"),
        Lever("loudspeaker.high_pass.f", "1 Hz"),
    ),
    sources=(SMALL_CLOSED, SMALL_VENTED),
    cautions=(LOUDSPEAKER_LOST,),
    cases=(
        Case({"x_peak": "9.398 mm", "x_mech": "12 mm"}, gives="0.78317", origin=f"{MATRIX}, 5 Hz"),
        Case(
            {"x_peak": "28.20 mm", "x_mech": "12 mm"},
            gives="2.35",
            origin=f"{MATRIX} without a box, 1 mHz",
        ),
    ),
    topic=("loudspeaker.x_max", "loudspeaker.x_mech"),
    peaks_inside=(
        "loudspeaker.f_s",
        "loudspeaker.enclosure.f_b",
        "loudspeaker.enclosure.v_ap",
        "loudspeaker.c_series.c",
    ),
    fails=BOXED,
    passes=BOXED.replace("high_pass: none", "high_pass: {f: 45 Hz, order: 4}"),
)
