"""Enclosure protection of a product that is used outdoors, against rain.

Outdoors it rains, and what keeps the water out is the box.  Drops on a live board leave a film
that conducts: traces corrode, a pack discharges over its own board and can heat up, a trip
reads what is not there.  Creepage for pollution degree 3 helps against damp, not against water.

The figure is the second digit of the code of IEC 60529.  Splashes from all sides are 4, which a
box for outdoors needs to have no worse than degree 3 inside; 3 is rain up to 60 degrees from
the vertical: minor.  Below that the rain comes in: major.  A code that cannot be read counts
for nothing, as do air holes or a missing box of which no code is claimed.  A product that
goes in when it rains says `place: indoor`.  First fix: louvres, a seal, a tighter box.
"""

from ...linter.check import AtLeast, Case, Check, Input
from ..derived.ingress import OUTDOOR, WET
from ..formulas.safety import IP_CODE, ip_digits
from ..hazards import SHORTED_STAGE, also


def figure(ip_code: str) -> float:
    """The digit for water."""
    return float(ip_digits(ip_code)[1])


BOX = """
environment: {place: outdoor, ip_code: CODE}
channels: {main: {rated_power: 50 W}}
"""

CHECK = Check(
    title="Enclosure protection outdoors vs. rain",
    figure=figure,
    unit="1",
    each="product",
    stake="safety",
    formula="second digit of ip_code",
    sentence="Used outdoors with enclosure protection {ip_code}; rain takes IPX3 at least, IPX4"
    " by good practice.",
    inputs={"ip_code": Input("ip_in_rain")},
    applies=OUTDOOR,
    limits=AtLeast(major="3", minor="4", basis={"major": IP_CODE, "minor": WET}),
    sources=(IP_CODE, WET),
    cautions=(also(SHORTED_STAGE, "Water on a live board shorts it: keep it dry in tests."),),
    cases=(
        Case({"ip_code": "IP20"}, gives="0", origin="from memory: IEC 60529: no claim on water"),
        Case({"ip_code": "IP44"}, gives="4", origin="from memory: IEC 60529: splashing water"),
    ),
    topic=("environment.ip_code",),
    asked_from="prototype",
    fails=BOX.replace("CODE", "IP20"),
    passes=BOX.replace("CODE", "IP44"),
)
