"""Air round the supply connector against the highest temperature of the connector.

The temperature of a connector's data sheet holds for housing and contacts with all that heats
them, the air included.  Where the air alone is beyond it, no current is left to the contacts,
however few amperes they carry: no larger connector of the same plastic helps.  The springs of
the contacts relax, the resistance rises, and the housing creeps under its load.

Beyond the rating is major; 40 K beyond it housings soften within hours (common practice, no
source, as for a lasting overload).  The air is that of the programme in the hottest ambient.
First fixes: a connector of a hotter plastic, cooler air, a place at the wall of the box.
"""

from ...linter.check import COMMON_PRACTICE, AtLeast, Case, Check, Input, Lever, derivation
from ..hazards import CONDUCTOR


def figure(t_max: float, t_air: float) -> float:
    """How far the air stays below what the connector may reach."""
    return t_max - t_air


_BASE = """
thermal: {t_air_inside: 90 degC}
wiring: {connector: {i_rated: 10 A, contacts: 1, t_max: LIMIT}}
"""

CHECK = Check(
    title="Air at the supply connector vs. its temperature limit",
    figure=figure,
    unit="K",
    each="product",
    stake="safety",
    formula="t_max - t_air",
    sentence="Air round the supply connector reaches {t_air}, {figure:+below|above} the {t_max}"
    " limit of its contacts.",
    inputs={
        "t_max": Input("wiring.connector.t_max"),
        "t_air": Input("t_air_inside", meaning="air round the connector"),
    },
    applies={"connector_seen": "yes"},
    limits=AtLeast(
        critical="-40 K",
        major="0 K",
        basis={
            "critical": COMMON_PRACTICE,
            "major": derivation("the highest temperature of a connector is its rating"),
        },
    ),
    levers=(Lever("wiring.connector.t_max", ("105 degC", "125 degC", "150 degC")),),
    sources=(derivation("a contact is no cooler than the air round it"),),
    cautions=(CONDUCTOR,),
    cases=(
        Case(
            {"t_max": "85 degC", "t_air": "99 degC"},
            gives="-14 K",
            origin="computed: difference of two temperatures by hand",
        ),
        Case(
            {"t_max": "105 degC", "t_air": "55 degC"},
            gives="50 K",
            origin="computed: difference of two temperatures by hand",
        ),
    ),
    topic=("wiring.connector",),
    fails=_BASE.replace("LIMIT", "85 degC"),
    passes=_BASE.replace("LIMIT", "105 degC"),
)
