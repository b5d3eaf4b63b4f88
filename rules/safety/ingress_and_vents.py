"""A claim of enclosure protection against air holes.

Air holes let heat out and dust and water in.  The first digit of the code of IEC 60529
counts solids: from 5 on no dust may enter in harmful amount.  The second counts water: from 5
on it withstands jets.  Neither goes with open holes for cooling air; splashes (4) and falling
drops can be kept out by louvres, and a membrane that levels the pressure is no air hole.

The figure counts the digits that air holes contradict.  Any is major: the claim fails or
the heat stays inside.  First fix: close the box and work out the air inside, or claim less.
"""

from ...linter.check import Assumption, AtMost, Case, Check, Input, Lever, derivation
from ..formulas.safety import IP_CODE, ip_digits

DUST, JETS = 5, 5
CLOSED = Assumption("sealed", "favourable", derivation("bound: a closed box contradicts no code"))


def figure(ip_code: str, openings: str) -> float:
    solids, water = ip_digits(ip_code)
    return float(openings == "vented") * (float(solids >= DUST) + float(water >= JETS))


BOX = """
environment: {ip_code: IP54}
thermal: {enclosure: {width: 320 mm, height: 260 mm, depth: 180 mm, openings: vented}}
channels: {main: {rated_power: 50 W}}
"""

CHECK = Check(
    title="Enclosure protection code vs. vents",
    figure=figure,
    unit="1",
    each="product",
    stake="performance",
    formula="number of digits of ip_code from 5 on, where openings are vented",
    sentence="The enclosure is {openings}; {ip_code} {figure:?allows that|does not allow that}.",
    inputs={
        "ip_code": Input("environment.ip_code"),
        "openings": Input("thermal.enclosure.openings", default=CLOSED),
    },
    limits=AtMost(major="0", basis={"major": IP_CODE}),
    levers=(Lever("thermal.enclosure.openings", ("sealed",)),),
    sources=(IP_CODE,),
    cases=(
        Case(
            {"ip_code": "IP54", "openings": "vented"},
            gives="1",
            origin="from memory: IEC 60529: 5 keeps harmful dust out, 4 splashes",
        ),
        Case(
            {"ip_code": "IP67", "openings": "sealed"},
            gives="0",
            origin="derived: a closed box has no air holes",
        ),
    ),
    applies={"ip_claim": "yes"},
    topic=("thermal.enclosure.openings",),
    fails=BOX,
    passes=BOX.replace("IP54", "IP24"),
)
