"""Speed of the air in the port of a vented box.

Fast air in a port whistles, chuffs and loses output.  At the tuning the port does nearly
all the work: it moves about ``q_l`` times the volume that the cone moves there, so a speed
reckoned from the cone's small excursion at the tuning, or from its linear travel, is
several times too low.  Here the speed follows from the volume that the whole box moves,
searched over the band for the largest sine, high-pass included.

17 m/s is the cautious limit (5 % of the speed of sound), 34 m/s the hard one.  Speech and
most music stay far below the sine of full power, so a minor is common in small boxes and
a flared port forgives it.  What to do first: a larger port (and longer, for the same
tuning), or a lower limiter.
"""

from collections.abc import Mapping

from ...linter.check import AtMost, Case, Check, Input, Lever, Source, from_memory
from ..derived.excursion import BAND, BOX, DRIVER, HIGH_PASS, VENT
from ..formulas.driver import (
    SMALL_VENTED,
    VENTED_DERIVED,
    largest_in_bass,
    port_speed,
)
from ..formulas.maths import clip

VENT_NOTE = Source(
    "R. H. Small, Vented-Box Loudspeaker Systems, 1973, guidance on vent area",
    "5 % of the speed of sound",
    kind="from memory",
)
HARD_LIMIT = from_memory("guidance on vents of loudspeaker boxes", "10 % of the speed of sound")


def figure(
    x_free: float,
    f_s: float,
    q_ts: float,
    v_as: float,
    v_b: float,
    f_b: float,
    q_l: float,
    s_d: float,
    port_area: float,
    f_high_pass: float,
    order: float,
    band_low: float,
    band_high: float,
) -> float:
    alpha = v_as / v_b
    tuning = clip(f_b, band_low, band_high)

    def speed(f: float) -> float:
        return port_speed(f, x_free, s_d, port_area, f_s, q_ts, alpha, f_b, q_l)

    return largest_in_bass(
        speed, f_s, alpha, f_high_pass, order, band_low, band_high, also=[tuning]
    )


SMALL_PORT = """
supply: {source: dc-source, rails: single, v_rail: 32 V, r_source: 20 mohm, bulk: {c: 4700 uF}}
channels:
  main:
    rated_power: 50 W
    rated_load: 8 ohm
    band: 40 Hz .. 5 kHz
    output_stage: {topology: full-bridge, devices: integrated, efficiency: 90 %,
      r_series: 50 mohm, device: {r_ds_on: 60 mohm}}
    gate_drive: {dead_time: 5 ns, t_pulse_min: 50 ns}
    modulator: {type: natural-sampling, carrier: 400 kHz, m_max: 95 %}
    filter: {type: lc, inductor: {l: 10 uH, dcr: 15 mohm}}
    limiter: {v_rms: 15 V}
    loudspeaker: {z_rated: 8 ohm, r_e: 6 ohm, f_s: 45 Hz, q_ms: 4, q_es: 0.45, v_as: 20 L,
      s_d: 137 cm2, high_pass: {f: 42 Hz, order: 2},
      enclosure: {type: vented, v_b: 12 L, f_b: 50 Hz, q_l: 7, port_area: 12 cm2}}
"""
NODAL = "computed: nodal solution of cone, box, leak and port (50 mm bore)"
_CASE: Mapping[str, str | float] = {
    "x_free": "22.560 mm",
    "f_s": "40 Hz",
    "q_ts": 0.3827,
    "v_as": "1.414 L",
    "v_b": "1 L",
    "f_b": "40 Hz",
    "q_l": 7,
    "s_d": "137 cm2",
    "port_area": "19.635 cm2",
    "f_high_pass": "0 Hz",
    "order": 1,
    "band_low": "40 Hz",
    "band_high": "40.001 Hz",
}

CHECK = Check(
    title="Air speed in the port",
    figure=figure,
    unit="m/s",
    each="channel",
    stake="performance",
    formula="largest over the band of high_pass 2 pi f s_d x_free / (port_area abs(D)), D ="
    " (1 + s Ts/q_ts + s^2 Ts^2)(1 + s Tb/q_l + s^2 Tb^2) + (v_as/v_b) s^2 Tb^2, Ts from f_s,"
    " Tb from f_b, f between band_low and band_high, high_pass from f_high_pass and order",
    sentence="Port air speed {figure} at the largest sine ({port_area}, tuned to {f_b}).",
    inputs={
        **DRIVER,
        "q_ts": Input("q_ts"),
        **BOX,
        **VENT,
        "s_d": Input("loudspeaker.s_d"),
        "port_area": Input("loudspeaker.enclosure.port_area"),
        **HIGH_PASS,
        **BAND,
    },
    applies={"loudspeaker.enclosure.type": "vented"},
    limits=AtMost(major="34 m/s", minor="17 m/s", basis={"major": HARD_LIMIT, "minor": VENT_NOTE}),
    levers=(
        Lever("loudspeaker.enclosure.port_area", "1 cm2"),
        Lever("limiter.v_rms", "0.5 V"),
    ),
    sources=(SMALL_VENTED, VENTED_DERIVED),
    cases=(
        Case(
            _CASE,
            gives="22.135 m/s",
            origin=f"{NODAL}, cone 5 mm peak at the worst frequency above the tuning, at 40 Hz",
        ),
        Case(
            {**_CASE, "band_low": "20 Hz", "band_high": "200 Hz"},
            gives="24.575 m/s",
            origin=f"{NODAL}, the same from 20 Hz on, fastest at 32 Hz",
        ),
    ),
    topic=("loudspeaker.enclosure.port_area",),
    peaks_inside=("loudspeaker.f_s", "loudspeaker.enclosure.f_b"),
    fails=SMALL_PORT,
    passes=SMALL_PORT.replace("port_area: 12 cm2", "port_area: 90 cm2"),
)
