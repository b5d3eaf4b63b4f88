"""Shift of the cone by the steady offset.

A direct voltage pushes the coil out of the middle of its gap by Bl V / R_e times the
compliance.  That share of the linear travel is lost on one side and makes even-order
distortion.  A tenth of the linear travel is the usual allowance.

Compliant, large woofers with a strong motor are the sensitive ones.  Behind a capacitor
there is no shift.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever, derivation
from ..formulas.acoustics import AIR_DENSITY, SOUND_SPEED
from ..formulas.driver import compliance


def figure(
    dc_offset: float,
    bl: float,
    v_as: float,
    s_d: float,
    r_e: float,
    x_max: float,
    air_density: float,
    sound_speed: float,
) -> float:
    c_ms = compliance(v_as, s_d, air_density, sound_speed)
    return dc_offset * bl * c_ms / (r_e * x_max)


CHECK = Check(
    title="Cone shift by DC offset vs. linear travel",
    figure=figure,
    unit="1",
    each="channel",
    stake="performance",
    formula="dc_offset bl c_ms / (r_e x_max), c_ms = v_as / (air_density sound_speed^2 s_d^2)",
    sentence="DC offset {dc_offset} shifts the cone by {x_max:*figure}; linear travel {x_max}"
    " ({figure:%}).",
    inputs={
        "dc_offset": Input("dc_offset"),
        "bl": Input("loudspeaker.bl"),
        "v_as": Input("loudspeaker.v_as"),
        "s_d": Input("loudspeaker.s_d"),
        "r_e": Input("r_e"),
        "x_max": Input("loudspeaker.x_max"),
        "air_density": AIR_DENSITY,
        "sound_speed": SOUND_SPEED,
    },
    applies={"loudspeaker.c_series": "none", "travel_stated": "yes"},
    limits=AtMost(minor="0.1", basis={"minor": COMMON_PRACTICE}),
    levers=(Lever("dc_offset", "5 mV"),),
    sources=(derivation("force Bl V / Re on the spring 1 / Cms"),),
    cases=(
        Case(
            {
                "dc_offset": "0.3254 V",
                "bl": "8.2 T m",
                "v_as": "35.32 L",
                "s_d": "137 cm2",
                "r_e": "5.5 ohm",
                "x_max": "6.5 mm",
                "air_density": "1.18 kg/m3",
                "sound_speed": "345 m/s",
            },
            gives="0.1",
            origin="computed: force on the spring by hand, a tenth of 6.5 mm, 1.34 mm/N, 8.2 T m,"
            " 5.5 ohm",
        ),
        Case(
            {
                "dc_offset": "1 V",
                "bl": "7.8839 T m",
                "v_as": "20 L",
                "s_d": "137 cm2",
                "r_e": "6 ohm",
                "x_max": "6 mm",
                "air_density": "1.18 kg/m3",
                "sound_speed": "345 m/s",
            },
            gives="0.16615",
            origin="computed: electro-mechanical matrix at 1 mHz (45 Hz, Qes 0.45, 20 L)",
        ),
    ),
    topic=("loudspeaker.bl",),
    fails="""
channels:
  main:
    dc_offset: 400 mV
    loudspeaker: {z_rated: 6 ohm, r_e: 5.5 ohm, bl: 8.2 T m, v_as: 35.3 L, s_d: 137 cm2,
      x_max: 6.5 mm}
""",
    passes="""
channels:
  main:
    dc_offset: 30 mV
    loudspeaker: {z_rated: 6 ohm, r_e: 5.5 ohm, bl: 8.2 T m, v_as: 35.3 L, s_d: 137 cm2,
      x_max: 6.5 mm}
""",
)
