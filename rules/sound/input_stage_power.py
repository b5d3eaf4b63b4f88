"""Clip level of the input stage against the level of rated power.

What the input stage clips never reaches the power stage: below the peak of the rated sine the
rated power is on paper only, whatever the rail allows.

What to do first: move gain from ahead of the input stage to behind it, or give that stage
a higher supply.
"""

from ...linter.check import AtLeast, Case, Check, Input, Lever, derivation
from ..formulas.acoustics import decibel
from ..formulas.load import sine_voltage


def figure(v_in_max: float, gain: float, rated_power: float, z_load: float) -> float:
    return decibel(v_in_max * gain / sine_voltage(rated_power, z_load))


SPEC = """
signal: {v_in_max: 0.9 V}
channels:
  main: {rated_power: 50 W, rated_load: 8 ohm, gain: 20 V/V}
"""

CHECK = Check(
    title="Input clip level vs. level for rated power",
    figure=figure,
    unit="dB",
    each="channel",
    stake="performance",
    formula="20 log10(v_in_max gain / (rated_power z_load)^0.5)",
    sentence="Input stage clips at {v_in_max}, {figure:+above|below} the level for rated power"
    " ({rated_power} into {z_load}) at gain {gain}.",
    inputs={
        "v_in_max": Input("signal.v_in_max"),
        "gain": Input("gain"),
        "rated_power": Input("rated_power"),
        "z_load": Input("z_load"),
    },
    limits=AtLeast(major="0 dB", basis={"major": derivation("below 0 dB rated power is clipped")}),
    levers=(Lever("gain", "1 V/V"),),
    sources=(derivation("gain times level at the input is the output voltage"),),
    cases=(
        Case(
            {"v_in_max": "2 V", "gain": "10 V/V", "rated_power": "50 W", "z_load": "8 ohm"},
            gives="0 dB",
            origin="computed: by hand, 50 W in 8 ohm are 20 V",
        ),
        Case(
            {"v_in_max": "0.7746 V", "gain": "20 V/V", "rated_power": "100 W", "z_load": "8 ohm"},
            gives="-5.23 dB",
            origin="computed: by levels, 0 dBu and 26.02 dB against 31.25 dBu of 28.28 V",
        ),
    ),
    topic=("signal.v_in_max",),
    fails=SPEC,
    passes=SPEC.replace("0.9 V", "1.1 V"),
)
