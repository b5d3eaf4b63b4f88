"""Surge current against the peak current of the suppressor.

The clamping voltage holds up to the printed peak current, which is rated for a pulse of a
millisecond.  What flows is the surge less the clamping voltage over the resistance behind
it.  Above the rating the suppressor is destroyed, mostly as a short, and the fuse of the
vehicle opens, or not.

Above 1 is critical.  Below it the pulse may still last too long: the load dump of a vehicle
takes a hundred milliseconds, a hundred times the test pulse, and that energy is not judged
here; ask the maker's curve of power against time.  First fix: a suppressor of more power.
"""

from ...linter.check import AtMost, Case, Check, Input, Lever, derivation, from_memory
from ..formulas.maths import larger
from ..hazards import SHORTED_STAGE

RATING = derivation("the peak current of a suppressor is an absolute limit")
PULSE = from_memory("data sheets of suppressors", "rated with a 10/1000 us pulse")


def figure(v_surge: float, v_clamp: float, r: float, i_pp: float) -> float:
    return larger(v_surge - v_clamp, 0 * v_clamp) / r / i_pp


VEHICLE = """
environment: {place: vehicle}
supply: {source: dc-source, rails: single, v_rail: 13.8 V, surge: {v: 87 V, r: 1.5 ohm}}
protection: {surge: {v_rwm: 26 V, v_clamp: 42 V, i_pp: 14 A}}
channels: {main: {rated_power: 20 W}}
"""

CHECK = Check(
    title="Suppressor surge current vs. rating",
    figure=figure,
    unit="1",
    each="product",
    stake="safety",
    formula="(v_surge - v_clamp) / r / i_pp",
    sentence="Surge of {v_surge} behind {r} drives {i_pp:*figure} into the suppressor (clamping at"
    " {v_clamp}); rated {i_pp} ({figure:%}).",
    inputs={
        "v_surge": Input("supply.surge.v"),
        "v_clamp": Input("protection.surge.v_clamp"),
        "r": Input("supply.surge.r"),
        "i_pp": Input("protection.surge.i_pp"),
    },
    limits=AtMost(critical="1", basis={"critical": RATING}),
    levers=(Lever("protection.surge.i_pp", "5 A"),),
    sources=(RATING, PULSE, derivation("Ohm's law: surge less clamping voltage")),
    cautions=(SHORTED_STAGE,),
    cases=(
        Case(
            {"v_surge": "60 V", "v_clamp": "45.4 V", "r": "2 ohm", "i_pp": "13.2 A"},
            gives="0.553030",
            origin="computed: nodal solution: 7.300 A; 600 W suppressor of 28 V",
        ),
        Case(
            {"v_surge": "30 V", "v_clamp": "45.4 V", "r": "2 ohm", "i_pp": "13.2 A"},
            gives="0",
            origin="derived: a surge below the clamping voltage drives nothing",
        ),
    ),
    topic=("supply.surge", "protection.surge.i_pp"),
    fails=VEHICLE,
    passes=VEHICLE.replace("i_pp: 14 A", "i_pp: 70 A"),
)
