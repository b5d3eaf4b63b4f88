"""Current of the supply connector against its derated rating.

The rating of a contact holds for a rise of 30 K.  In warm air less rise is left to the
highest temperature of the connector, and as the heat goes with the square of the current,
the current may only go with the root of that rise.  Contacts in parallel do not share
evenly: of several, one is not counted.  In air beyond that temperature nothing is left.

IEC 60512-5-2 lets 80 % of the measured curve be used.  Whether a printed rating is the
curve or its 80 % is rarely said; so from 80 % on the check remarks, at 100 % it objects,
and at 125 % even the better reading is exceeded.  The rms of a rated sine is taken.
First fixes: more contacts, a larger connector, a place in cooler air.
"""

from collections.abc import Mapping

from ...linter.check import (
    AtMost,
    Case,
    Check,
    Input,
    Lever,
    Source,
    derivation,
)
from ..formulas.conductors import contact_current
from ..formulas.constants import CONTACT_RISE, LEAST_RISE
from ..hazards import CONDUCTOR


def figure(
    i_source: float,
    i_rated: float,
    contacts: float,
    t_max: float,
    t_air: float,
    rise: float,
    least: float,
) -> float:
    """Current over what the contacts of a pole may carry."""
    return i_source / contact_current(i_rated, contacts, t_max, t_air, rise, least)


_BASE = """
supply: {source: dc-source, rails: single, v_rail: 40 V}
channels:
  main:
    rated_power: 100 W
    rated_load: 4 ohm
    output_stage: {topology: full-bridge, devices: integrated, p_idle: 1 W, efficiency: 85 %}
thermal: {t_air_inside: 50 degC}
wiring: {connector: {i_rated: RATING, contacts: 1, t_max: 105 degC}}
"""

_RISE: Mapping[str, str | float] = {"rise": "30 K", "least": "1 uK"}

CHECK = Check(
    title="Supply connector current vs. derated rating",
    figure=figure,
    unit="%",
    each="product",
    stake="safety",
    formula="i_source / (i_rated (contacts - 1, at least 1) sqrt((t_max - t_air) / rise)), "
    "root not above 1, difference not below least",
    sentence="Supply connector carries {i_source} rms; derated limit {i_source:/figure}"
    " ({contacts:contact|contacts} of {i_rated}, air {t_air}).",
    inputs={
        "i_source": Input("i_source_rms"),
        "i_rated": Input("wiring.connector.i_rated"),
        "contacts": Input("wiring.connector.contacts"),
        "t_max": Input("wiring.connector.t_max"),
        "t_air": Input("t_air_inside", meaning="air round the connector"),
        "rise": CONTACT_RISE,
        "least": LEAST_RISE,
    },
    limits=AtMost(
        critical="125 %",
        major="100 %",
        minor="80 %",
        basis={
            "critical": derivation("1 over the 80 % of IEC 60512-5-2"),
            "major": derivation("the rating that the connector's data sheet states is the"
                                " limit itself"),
            "minor": Source("ERNI derating sheets after IEC 60512-5-2",
                            "2008: derating curve is 0.8 of the base curve; no page given"),
        },
    ),
    levers=(
        Lever("wiring.connector.contacts", "1"),
        Lever("wiring.connector.i_rated", "1 A"),
    ),
    sources=(
        Source("ERNI derating sheets after IEC 60512-5-2",
               "sheet of the Ermet Powermodule with 3 contacts, 2008: 15.8 A "
               "measured, 12.64 A allowed; no page given"),
        derivation("heat of a contact goes with the square of its current"),
    ),
    cautions=(CONDUCTOR,),
    cases=(
        Case({"i_source": "12.64 A", "i_rated": "15.8 A", "contacts": 1.0, "t_max": "85 degC",
              "t_air": "55 degC", **_RISE}, gives="80 %",
             origin="published: ERNI Ermet Powermodule, 15.8 A derated to 12.64 A"),
        Case({"i_source": "2.1213 A", "i_rated": "3 A", "contacts": 1.0, "t_max": "85 degC",
              "t_air": "70 degC", **_RISE}, gives="100 %",
             origin="computed: by hand, half the rise carries 1/sqrt(2) of the current"),
        Case({"i_source": "6 A", "i_rated": "3 A", "contacts": 4.0, "t_max": "105 degC",
              "t_air": "40 degC", **_RISE}, gives="66.667 %",
             origin="computed: by hand, three of four contacts counted, 9 A"),
    ),
    fails=_BASE.replace("RATING", "3 A"),
    passes=_BASE.replace("RATING", "10 A"),
    topic=("wiring.connector",),
)  # fmt: skip
