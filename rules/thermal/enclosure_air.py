"""Air inside the box against the bulk capacitors.

Inside a closed box the air is not room air.  All heat that is not carried outside leaves
through the walls, by natural convection and radiation, and the inside air sits above the
wall by its own film.  The sun on a dark box alone adds 20 K or more.  Electrolytic
capacitors sit in that air: above their temperature rating they dry out and vent, and
they last twice as long for every 10 K that they stay below it.

The air is solved with the programme's heat at the hottest ambient, the sun and the
height above the sea; heat of the loudspeaker itself is not counted.  It is uncertain by a
fifth.  A vented box counts with half the rise.  The window of the battery is checked with
the battery.  First fixes: the heatsink outside, a larger or a vented box, shade.
"""

from ...linter.check import AtLeast, Case, Check, Input, Lever, Source, from_memory
from ..hazards import CAPACITOR


def figure(t_rated: float, t_air_inside: float) -> float:
    """How far the inside air stays below the rating of the capacitors."""
    return t_rated - t_air_inside


_BASE = """
supply: {bulk: {t_rated: 105 degC}}
environment: {ambient: 0 degC .. 40 degC}
thermal: {t_air_inside: AIR}
"""

CHECK = Check(
    title="Inside air vs. bulk capacitor temperature rating",
    figure=figure,
    unit="K",
    each="product",
    stake="safety",
    formula="t_rated - t_air_inside",
    sentence="Air inside reaches {t_air_inside}, {figure:+below|above} the {t_rated} rating of the"
    " bulk capacitors.",
    inputs={
        "t_rated": Input("supply.bulk.t_rated"),
        "t_air_inside": Input("t_air_inside"),
    },
    limits=AtLeast(
        critical="0 K",
        minor="20 K",
        basis={
            "critical": Source("temperature rating of the capacitor data sheet", "no page given"),
            "minor": Source("System Reliability Center part derating sheet",
                            "aluminium electrolytics: maximum temperature less 20 K"
                            "; no page given"),
        },
    ),
    levers=(Lever("supply.bulk.t_rated", ("85 degC", "105 degC", "125 degC")),),
    sources=(
        from_memory("McAdams, Heat Transmission: simplified correlations for air"),
        Source("Tamayol, McGregor, Bahrami, doi 10.1115/1.4007077",
               "radiation near half of the loss of a passive enclosure"),
    ),
    cautions=(CAPACITOR,),
    cases=(
        Case({"t_rated": "105 degC", "t_air_inside": "56.0 degC"}, gives="49.0 K",
             origin="computed: root finding for a box of 0.3 x 0.2 x 0.1 m, 15 W in 35 degC, "
             "gives 21.0 K above ambient"),
        Case({"t_rated": "85 degC", "t_air_inside": "90 degC"}, gives="-5 K",
             origin="computed: difference of two temperatures by hand"),
    ),
    fails=_BASE.replace("AIR", "92 degC"),
    passes=_BASE.replace("AIR", "60 degC"),
    topic=("supply.bulk.t_rated", "thermal.enclosure"),
    asked_from="production",
)  # fmt: skip
