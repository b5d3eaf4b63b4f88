"""Thermal feedback of the on-resistance: loop gain towards runaway.

A warm switch has more resistance, more resistance makes more heat, more heat makes it
warmer.  The loop gain is what one watt of heat comes back as: thermal resistance times
the slope of the loss with temperature.  At 1 there is no balance and the temperature runs
away; at 0.5 every error of the loss or of the heatsink comes out doubled.

The gain is taken where the stage plays a sine at rated power, or where the part ends its
heat if it would get there.  A stage with a balance below its trip does not run away, whatever
the gain would be beyond.  One without is switched off by its trip and nothing is destroyed: a
lasting sine need not be comfortable, so the finding is a remark then, and the trip itself is
judged elsewhere.  A rating for a time gives the loop no more than that time.

All channels on one heatsink feed each other, so the heatsink counts with the slopes of
all channels.  The resistance rises here as a power of the absolute temperature through
the printed values at 25 and 150 degC, as the curves of data sheets do; a straight line
through the same points would put the current of runaway a third too high.  Only the
conduction loss is taken to rise; recovery losses rise as well.

First fixes: more silicon (lower resistance), a better heatsink.  The check says nothing
about a stage whose temperature is held by switching losses alone: its gain is small.
"""

from ...linter.check import (
    COMMON_PRACTICE,
    AtMost,
    Case,
    Check,
    Input,
    Lever,
    Source,
    derivation,
)
from ..formulas.maths import smaller
from ..hazards import RUNAWAY

STOUT = Source(
    "R. Stout, Beyond the Data Sheet: Demystifying Thermal Runaway, Power Electronics Nov. 2007",
    "stable where the system takes up more heat for a kelvin than the device adds; no page given",
)


def figure(
    r_th_own: float,
    p_slope: float,
    r_th_shared: float,
    p_slopes: tuple[float, ...],
    heat_ended: str,
) -> float:
    """Loop gain of the thermal feedback; counted to one half where a trip switches off."""
    gain = r_th_own * p_slope + r_th_shared * sum(p_slopes[1:], p_slopes[0])
    return smaller(gain, 0.5) if heat_ended == "trip" else gain


_BASE = """
supply: {source: dc-source, rails: single, v_rail: 40 V}
channels:
  main:
    rated_power: 100 W
    rated_load: 4 ohm
    output_stage:
      topology: full-bridge
      devices: integrated
      p_idle: 1 W
      efficiency: 85 %
      device: {t_j_max: 150 degC, r_th_jc: 1 K/W, r_th_cs: 0 K/W, r_ds_on: RESISTANCE}
thermal:
  enclosure: none
  heatsink: {r_th_sa: SINK, place: outside}
protection: {over_temperature: none}
"""

CHECK = Check(
    title="Thermal runaway: heat fed back by the on-resistance",
    figure=figure,
    unit="1",
    each="channel",
    stake="safety",
    formula="r_th_own p_slope + r_th_shared (sum of p_slopes of all channels), at most 0.5"
    " where heat_ended is trip",
    sentence="Each watt of heat adds {figure} W through the on-resistance ({p_slope}; {r_th_own}"
    " own, {r_th_shared} shared).",
    inputs={
        "r_th_own": Input("r_th_loop"),
        "p_slope": Input("p_slope"),
        "r_th_shared": Input("r_th_loop_shared"),
        "p_slopes": Input("all p_slope"),
        "heat_ended": Input("heat_ended"),
    },
    limits=AtMost(
        critical="1",
        major="0.5",
        minor="0.3",
        basis={
            "critical": STOUT,
            "major": COMMON_PRACTICE,
            "minor": COMMON_PRACTICE,
        },
    ),
    levers=(
        Lever("output_stage.device.r_ds_on", "E24"),
        Lever("thermal.heatsink.r_th_sa",
              ("0.5 K/W", "1 K/W", "1.5 K/W", "2 K/W", "3 K/W", "4 K/W", "6 K/W", "8 K/W")),
    ),
    sources=(
        STOUT,
        derivation("derivative of the heat balance with respect to the junction temperature"),
        Source("normalised on-resistance curves of MOSFET data sheets", "no page given"),
    ),
    cautions=(RUNAWAY,),
    cases=(
        Case({"r_th_own": "40 K/W", "p_slope": "0.00768 W/K", "r_th_shared": "0 K/W",
              "p_slopes": ("0.00768 W/K",), "heat_ended": "nothing"}, gives="0.3072",
             origin="computed: 8 A, 20 mohm rising 0.6 % a kelvin, 40 K/W; perturbation of the "
             "solved balance gives 0.3072"),
        Case({"r_th_own": "2 K/W", "p_slope": "0.02 W/K", "r_th_shared": "10 K/W",
              "p_slopes": ("0.02 W/K", "0.01 W/K"), "heat_ended": "trip"}, gives="0.34",
             origin="computed: largest row of the 2 x 2 matrix of the coupled balance"),
        Case({"r_th_own": "40 K/W", "p_slope": "0.04 W/K", "r_th_shared": "0 K/W",
              "p_slopes": ("0.04 W/K",), "heat_ended": "trip"}, gives="0.5",
             origin="derived: 1.6 without the trip, which switches off instead"),
    ),
    fails=_BASE.replace("RESISTANCE", "100 mohm").replace("SINK", "20 K/W"),
    passes=_BASE.replace("RESISTANCE", "20 mohm").replace("SINK", "3 K/W"),
    topic=("output_stage.device.r_ds_on", "thermal.heatsink"),
)  # fmt: skip
