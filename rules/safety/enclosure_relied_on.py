"""Statements that rely on an enclosure, where the spec says that there is none.

`none` says that the product has no box. Rails that an enclosure keeps from hands, an enclosure
that contains a fire and a code of protection against dust and water then mean nothing, although
the checks of shock, fire and dirt take them at their word.

The figure counts such statements. Any is major: the design has no box and needs one, or has
one that the spec leaves out, with the air inside it. A board that is sold to be built into a box
of another maker says so where it is used: `rail_access: bare`, and its box is judged there.
First fix: describe the enclosure, or take back what relies on it.
"""

from ...linter.check import Assumption, AtMost, Case, Check, Input, derivation
from ..hazards import ARC, SHOCK, also

NOTHING = derivation("what is not there keeps nobody off and nothing in or out")


def figure(rail_access: str, fire_enclosure: str, ip_claim: str) -> float:
    """Number of statements that need a box."""
    fire, code = float(fire_enclosure == "yes"), float(ip_claim == "yes")
    return float(rail_access == "enclosed") + fire + code


BARE = """
safety: {rail_access: enclosed}
thermal: {enclosure: BOX}
channels: {main: {rated_power: 50 W}}
"""

CHECK = Check(
    title="Enclosure none vs. what relies on one",
    figure=figure,
    unit="1",
    each="product",
    stake="safety",
    formula="number of: rail_access is enclosed, fire_enclosure is yes, ip_claim is yes",
    sentence="No enclosure; statements that rely on one: {figure:?none|#}"
    " (rails: {rail_access}; fire enclosure: {fire_enclosure}; code claimed: {ip_claim}).",
    inputs={
        "rail_access": Input(
            "safety.rail_access", default=Assumption("not given", "absent", NOTHING)
        ),
        "fire_enclosure": Input(
            "safety.fire_enclosure", default=Assumption("not given", "absent", NOTHING)
        ),
        "ip_claim": Input("ip_claim"),
    },
    applies={"thermal.enclosure": "none"},
    limits=AtMost(major="0", basis={"major": NOTHING}),
    sources=(NOTHING,),
    cautions=(
        also(SHOCK, "Keep an open board out of reach of all but skilled persons."),
        ARC,
    ),
    cases=(
        Case(
            {"rail_access": "enclosed", "fire_enclosure": "yes", "ip_claim": "no"},
            gives="2",
            origin="derived: rails behind a box and a fire inside it, without a box",
        ),
        Case(
            {"rail_access": "bare", "fire_enclosure": "not given", "ip_claim": "no"},
            gives="0",
            origin="common practice: an open board among other parts",
        ),
    ),
    permissible=False,
    topic=("thermal.enclosure",),
    fails=BARE.replace("BOX", "none"),
    passes=BARE.replace("BOX", "none").replace("enclosed", "bare"),
)
