"""Stand-off voltage of the surge suppressor against the highest supply voltage.

Below its stand-off voltage a suppressor leaks microamperes; above it it conducts, and a
few watts are enough to destroy it, mostly as a short.  It has to withstand the highest voltage
that is there for good: end of charge, alternator, tolerance of the source, not the nominal
one.

Below that voltage is major: it conducts while the pack is charged.  Below 0.9 of it the
supply lies above the breakdown, 1.11 times the stand-off voltage (from memory), and the
suppressor burns: critical.  Less than 5 % above is
minor, as the stand-off voltage falls in the cold.  First fix: the next higher type, and
then the clamping voltage against the parts behind it.
"""

from ...linter.check import (
    COMMON_PRACTICE,
    AtLeast,
    Case,
    Check,
    Input,
    Lever,
    derivation,
    from_memory,
)
from ..hazards import SHORTED_STAGE

STANDOFF = derivation("stand-off: highest voltage without conduction")
BREAKDOWN = from_memory("data sheets of suppressors", "breakdown from 1.11 of stand-off")
STEPS = ("12 V", "15 V", "18 V", "20 V", "24 V", "26 V", "28 V", "30 V", "33 V", "36 V", "40 V")


def figure(v_rwm: float, v_source_high: float) -> float:
    return v_rwm / v_source_high


PACK = """
supply: {source: battery, converter: none}
battery: {chemistry: li-ion, series: 6, cell: {v_charge: 4.2 V}}
protection: {surge: {v_rwm: 24 V, v_clamp: 38.9 V, i_pp: 15.4 A}}
channels: {main: {rated_power: 20 W}}
"""

CHECK = Check(
    title="Suppressor stand-off voltage vs. supply voltage",
    figure=figure,
    unit="1",
    each="product",
    stake="safety",
    formula="v_rwm / v_source_high",
    sentence="Suppressor stand-off voltage {v_rwm}; highest supply voltage {v_source_high}"
    " ({figure:%}).",
    inputs={
        "v_rwm": Input("protection.surge.v_rwm"),
        "v_source_high": Input("v_source_high"),
    },
    limits=AtLeast(
        critical="0.9",
        major="1",
        minor="1.05",
        basis={"critical": BREAKDOWN, "major": STANDOFF, "minor": COMMON_PRACTICE},
    ),
    levers=(Lever("protection.surge.v_rwm", STEPS),),
    sources=(
        STANDOFF,
        COMMON_PRACTICE,
    ),
    cautions=(SHORTED_STAGE,),
    cases=(
        Case(
            {"v_rwm": "24 V", "v_source_high": "25.2 V"},
            gives="0.952381",
            origin="derived: a 24 V type on six lithium cells at 4.2 V",
        ),
        Case(
            {"v_rwm": "26 V", "v_source_high": "14.4 V"},
            gives="1.805556",
            origin="published: utilitiesbunker.com, 14.4 V a lead-acid block; a 26 V type assumed",
        ),
    ),
    topic=("protection.surge",),
    fails=PACK,
    passes=PACK.replace("v_rwm: 24 V", "v_rwm: 28 V"),
)
