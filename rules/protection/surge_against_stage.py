"""What a surge of the vehicle leaves for the power stage.

The supply of a vehicle is no battery alone: a load thrown off lets the alternator overshoot
to several times its voltage for tenths of a second, with an ohm or so behind it.  Without a
suppressor all of it reaches the terminals; with one, its clamping voltage at the printed
peak current does, which lies half as high again as the stand-off voltage.

The figure is that voltage over what the stage survives: the absolute maximum of an
integrated part, the rating of the switches otherwise.  Above 1 is critical, as it is a
rating and the surge is sure to come one day; above 0.9 is minor.  It is judged in vehicles
and where nothing converts the supply first.  Many systems clamp the surge centrally: where
no surge is stated the clamped load dump of the standard is taken, 35 V in a 12 V system and
58 V in a 24 V system, which flatters; without that clamp it is 79 V and more.  First fix:
a suppressor with less clamping voltage, or a stage that withstands more.
"""

from ...linter.check import (
    COMMON_PRACTICE,
    AtMost,
    Case,
    Check,
    Input,
    Lever,
    derivation,
    from_memory,
)
from ..derived.surge import LOAD_DUMP as CLAMPED
from ..hazards import SHORTED_STAGE

RATING = derivation("an absolute maximum rating is exceeded")
LOAD_DUMP = from_memory("ISO 16750-2 and ISO 7637-2", "load dump of vehicles")


def figure(v_surge: float, v_withstand: float) -> float:
    return v_surge / v_withstand


VEHICLE = """
environment: {place: vehicle}
supply:
  {source: dc-source, rails: single, converter: none, v_rail: 13.8 V, surge: {v: 60 V, r: 2 ohm}}
channels:
  main:
    output_stage: {topology: full-bridge, devices: integrated, device: {v_supply_abs: 40 V}}
protection: {surge: {v_rwm: 28 V, v_clamp: 45.4 V, i_pp: 13.2 A}}
"""

CHECK = Check(
    title="Supply surge vs. power stage rating",
    figure=figure,
    unit="1",
    each="channel",
    stake="rating",
    formula="v_surge / v_withstand",
    sentence="Supply surge {v_surge} at the power stage; rated {v_withstand} ({figure:%}).",
    inputs={
        "v_surge": Input("v_surge"),
        "v_withstand": Input("v_withstand"),
    },
    limits=AtMost(critical="1", minor="0.9", basis={"critical": RATING, "minor": COMMON_PRACTICE}),
    levers=(Lever("protection.surge.v_clamp", "1 V"),),
    sources=(RATING, LOAD_DUMP, CLAMPED),
    cautions=(SHORTED_STAGE,),
    cases=(
        Case(
            {"v_surge": "45.4 V", "v_withstand": "40 V"},
            gives="1.135",
            origin="from memory: data sheet of a 600 W suppressor of 28 V stand-off, 13.2 A",
        ),
        Case(
            {"v_surge": "42.1 V", "v_withstand": "69 V"},
            gives="0.610145",
            origin="published: TPA3255, 69 V as its extreme (e2e.ti.com thread 1440241); 42.1 V of"
            " a 26 V type from memory",
        ),
    ),
    topic=("supply.surge.v", "protection.surge.v_rwm", "environment.place"),
    asked_from="prototype",
    fails=VEHICLE,
    passes=VEHICLE.replace("v_supply_abs: 40 V", "v_supply_abs: 69 V"),
)
