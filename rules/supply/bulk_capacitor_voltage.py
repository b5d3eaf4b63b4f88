"""Highest rail against the rated voltage of the bulk capacitors.

The rated voltage of an electrolytic capacitor is an absolute limit: above it the oxide
forms further, the capacitor heats, gasses and vents. The rail counts at its highest: a full
pack, a source at the top of its tolerance, no load. The usual mistake is a parts list taken
over from a lower supply: a published board runs 16 V capacitors on 24 .. 30 V.

Above the rating is critical. Within a tenth of it is minor: the capacitor is used as its
maker allows, but a charger's overshoot or the rail's rise between load and idle has no room
(common practice, no source). Much more reserve than a factor of two buys nothing.
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
from ..hazards import CAPACITOR


def figure(v_rail: float, v_rated: float) -> float:
    return v_rail / v_rated


CHECK = Check(
    title="Highest rail vs. bulk capacitor rating",
    figure=figure,
    unit="1",
    each="product",
    stake="safety",
    formula="v_rail / v_rated",
    sentence="Rail up to {v_rail}; bulk capacitors rated {v_rated} ({figure:%}).",
    inputs={
        "v_rail": Input("v_rail_high"),
        "v_rated": Input("supply.bulk.v_rated"),
    },
    limits=AtMost(
        critical="1",
        minor="0.9",
        basis={
            "critical": derivation("rated voltage of a capacitor is absolute"),
            "minor": COMMON_PRACTICE,
        },
    ),
    levers=(
        Lever(
            "supply.bulk.v_rated",
            ("16 V", "25 V", "35 V", "50 V", "63 V", "80 V", "100 V", "160 V", "200 V", "250 V"),
        ),
    ),
    sources=(
        Source(
            "github.com/halfstudents/I-made-200Watt-Class-D-amplifier",
            "parts list of 2024-06-21: 470 uF 16 V; README: 7 to 30 V, at least 24 V advised",
        ),
    ),
    cautions=(CAPACITOR,),
    cases=(
        Case(
            {"v_rail": "30 V", "v_rated": "16 V"},
            gives="1.875",
            origin="published: halfstudents 200 W project, parts list: 16 V types; 30 V in its "
            "README",
        ),
        Case(
            {"v_rail": "35 V", "v_rated": "100 V"},
            gives="0.35",
            origin="published: IRAUDAMP7D manual, 470 uF 100 V on 35 V rails",
        ),
    ),
    topic=("supply.bulk",),
    asked_from="prototype",
    fails="""
supply: {source: dc-source, rails: single, v_rail: 24 V .. 30 V, bulk: {c: 470 uF, v_rated: 16 V}}
channels:
  main: {rated_power: 100 W}
""",
    passes="""
supply: {source: dc-source, rails: split, v_rail: 28 V .. 45 V, bulk: {c: 940 uF, v_rated: 100 V}}
channels:
  main: {rated_power: 100 W}
""",
)
