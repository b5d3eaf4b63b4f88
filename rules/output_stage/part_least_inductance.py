"""Filter inductance left at the trip current against the minimum of its data sheet.

An integrated stage with over-current protection needs time between crossing the threshold
and switching off.  Its maker therefore asks for a least inductance, not at rest but at the
trip current: an inductor that saturates below it lets the current run away before the part
can act.

Saturation is bent, not a step: between zero and the printed current the inductance is taken
as l / (1 + k (i / i_sat)^2), with k so that the printed loss appears at the printed
current, hot.  Where the loss that defines i_sat is not stated, 30 % is taken.  A trip
above the saturation current is no fault by itself: a 10 A inductor that loses 25 % of 10 uH
leaves 7.5 uH at a trip of 10 A, where the part asks for 5 uH.  First fixes: an inductor
with more saturation current, or more inductance.
"""

from ...linter.check import (
    COMMON_PRACTICE,
    Assumption,
    AtLeast,
    Case,
    Check,
    Input,
    Lever,
    Source,
    derivation,
)
from ..formulas.ringing import inductance_at


def figure(l: float, i_trip: float, i_sat: float, drop: float, l_min: float) -> float:  # noqa: E741
    """Inductance left at the trip current over the least that the part asks for."""
    return inductance_at(l, i_trip, i_sat, drop) / l_min


ASKED = Source(
    "TPA3221 data sheet SLASEE9B", "p. 6: least inductance at the trip current, 5 uH of 10 uH"
)
STATED = derivation("the least inductance that the part's data sheet states is the limit itself")

CHECK = Check(
    title="Inductance at the trip current vs. data-sheet minimum",
    figure=figure,
    unit="%",
    each="channel",
    stake="rating",
    formula="l / (1 + drop / (1 - drop) (i_trip / i_sat)^2) / l_min",
    sentence="Inductance {l_min:*figure} at the {i_trip} trip ({l}, saturates by {drop} at"
    " {i_sat}); data-sheet minimum {l_min} ({figure:%}).",
    inputs={
        "l": Input("filter.inductor.l"),
        "i_trip": Input("output_stage.over_current.i_trip"),
        "i_sat": Input("i_sat_hot"),
        "drop": Input(
            "filter.inductor.i_sat_drop", default=Assumption("30 %", "adverse", COMMON_PRACTICE)
        ),
        "l_min": Input("output_stage.device.l_min"),
    },
    applies={"output_stage.devices": "integrated", "filter_kind": "lc"},
    limits=AtLeast(major="100 %", minor="110 %", basis={"major": STATED, "minor": COMMON_PRACTICE}),
    levers=(Lever("filter.inductor.l", "E6"), Lever("filter.inductor.i_sat", "1 A")),
    sources=(ASKED, derivation("rational curve through rest and the printed point")),
    cases=(
        Case(
            {"l": "10 uH", "i_trip": "10 A", "i_sat": "11 A", "drop": "25 %", "l_min": "5 uH"},
            "156.8 %",
            "computed: 7.840 uH by hand; Sagami 7W14A, 10 uH less 25 % at 11 A, with the "
            "TPA3221's trip of 10 A and 5 uH",
        ),
        Case(
            {"l": "10 uH", "i_trip": "10 A", "i_sat": "5 A", "drop": "25 %", "l_min": "5 uH"},
            "85.71 %",
            "derived: twice the saturation current, 4.286 uH left",
        ),
    ),
    topic=("output_stage.device.l_min",),
    asked_from="production",
    fails="""
channels:
  main:
    output_stage: {devices: integrated, over_current: {i_trip: 10 A}, device: {l_min: 5 uH}}
    filter: {type: lc, inductor: {l: 6.8 uH, i_sat: 6 A, i_sat_drop: 30 %, core: ferrite,
      i_rms: 5 A, rise_rated: 40 K, i_sat_hot_factor: 0.8}}
""",
    passes="""
channels:
  main:
    output_stage: {devices: integrated, over_current: {i_trip: 10 A}, device: {l_min: 5 uH}}
    filter: {type: lc, inductor: {l: 10 uH, i_sat: 12 A, i_sat_drop: 25 %, core: powder,
      i_rms: 7 A, rise_rated: 40 K, i_sat_hot_factor: 1.0}}
""",
)
