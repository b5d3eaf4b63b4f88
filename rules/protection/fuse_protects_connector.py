"""Whether something ends an overload before the supply connector overheats.

A contact heats with the square of its current.  Its rating holds for a rise of 30 K, so at
1.35 times the rating it rises by 55 K, and at 2.1 times by 132 K: a fuse of the contact's
own rating after IEC 60127 lets the housing melt before it opens.

The figure is the temperature that the contacts reach at the largest current that lasts (the
sure opening current of the fuse; without a fuse the trip of the pack or the limit of the
source, without those the short-circuit current), in the air of the box, above the highest
temperature of the connector.  Above 0 K the housing is beyond its rating, in a fault and
for half an hour at most: minor.  40 K above it housings creep and contacts lose their
force: major.  100 K above it they soften and char: critical.  Both are common practice
without a source.  Of several contacts in parallel one is not counted, as they share
unequally.  First fix: more contacts, or a smaller fuse.
"""

from ...linter.check import (
    COMMON_PRACTICE,
    AtMost,
    Case,
    Check,
    Input,
    Lever,
    derivation,
)
from ..formulas.constants import CONTACT_RISE
from ..formulas.fuse import FUSEOLOGY, IEC_FUSES
from ..formulas.maths import larger
from ..hazards import CONDUCTOR


def figure(
    i_lasting: float, i_contact: float, contacts: float, t_air: float, t_max: float, rise: float
) -> float:
    load = i_lasting / (i_contact * larger(contacts - 1, 1.0))
    return t_air - t_max + rise * load**2


CHECK = Check(
    title="Supply connector temperature at lasting overload vs. limit",
    figure=figure,
    unit="K",
    each="product",
    stake="safety",
    formula="t_air - t_max + rise (i_lasting / i_contact of all contacts but one)^2",
    sentence="A lasting overload of {i_lasting} heats the connector ({i_contact} contacts) to"
    " {figure:+above|below} its {t_max} limit.",
    inputs={
        "i_lasting": Input("i_lasting"),
        "i_contact": Input("wiring.connector.i_rated"),
        "contacts": Input("wiring.connector.contacts"),
        "t_air": Input("t_air_inside", meaning="air round the connector"),
        "t_max": Input("wiring.connector.t_max"),
        "rise": CONTACT_RISE,
    },
    applies={"fuse_seen": "yes", "connector_seen": "yes"},
    limits=AtMost(
        critical="100 K",
        major="40 K",
        minor="0 K",
        basis={
            "critical": COMMON_PRACTICE,
            "major": COMMON_PRACTICE,
            "minor": derivation("the highest temperature of a connector is its rating"),
        },
    ),
    levers=(Lever("wiring.connector.contacts", ("1", "2", "3", "4")),),
    sources=(
        derivation("heat of a contact: current squared times resistance"),
        FUSEOLOGY,
        IEC_FUSES,
    ),
    cautions=(CONDUCTOR,),
    cases=(
        Case(
            {
                "i_lasting": "31.5 A",
                "i_contact": "15 A",
                "contacts": 1.0,
                "t_air": "40 degC",
                "t_max": "105 degC",
            },
            gives="67.3 K",
            origin="derived: 30 K times 2.1 squared is 132.3 K over 40 degC, 172.3 degC",
        ),
        Case(
            {
                "i_lasting": "13.5 A",
                "i_contact": "10 A",
                "contacts": 2.0,
                "t_air": "40 degC",
                "t_max": "105 degC",
            },
            gives="-10.325 K",
            origin="computed: 30 K at 10 A by energy balance, 54.675 K at 13.5 A",
        ),
    ),
    topic=("wiring.connector",),
    fails="""
supply: {source: dc-source, rails: single, v_rail: 24 V, converter: none}
thermal: {t_air_inside: 50 degC}
protection: {fuse: {i_rated: 16 A, standard: iec-60127}}
wiring: {connector: {i_rated: 15 A, contacts: 1, t_max: 105 degC}}
channels: {main: {rated_power: 50 W}}
""",
    passes="""
supply: {source: dc-source, rails: single, v_rail: 24 V, converter: none}
thermal: {t_air_inside: 50 degC}
protection: {fuse: {i_rated: 8 A, standard: iec-60127}}
wiring: {connector: {i_rated: 15 A, contacts: 1, t_max: 105 degC}}
channels: {main: {rated_power: 50 W}}
""",
)
