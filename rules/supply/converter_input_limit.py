"""Source of a converter against the absolute maximum of its input.

A converter takes whatever its source gives: a full pack, a charger that lifts a lead-acid
battery to 14.7 V, the upper tolerance of an adapter. Its input transistor and its input
capacitor are rated for a voltage of their own, and a converter chosen by the nominal voltage
of the source, 12 V or 24 V, is often too small for the highest one.

Beyond the absolute maximum the input may break at once, and it breaks short: the source then
feeds the fault until the fuse opens. So that is critical. Above 0.9 of it is minor, as ringing
of the lead at switch-on comes on top (common practice, no source). Surges of a vehicle are
judged by surge-against-converter. What to do first: a converter with a higher input rating.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever, derivation
from ..hazards import SHORTED_STAGE

RATING = derivation("an absolute maximum rating is exceeded")


def figure(v_source: float, v_abs: float) -> float:
    return v_source / v_abs


SOURCE = """
supply:
  {source: dc-source, rails: single, converter: step-up, v_source: 11 V .. 15 V, v_source_abs: 14 V}
channels: {main: {rated_power: 20 W}}
"""

CHECK = Check(
    title="Source voltage vs. converter input rating",
    figure=figure,
    unit="1",
    each="product",
    stake="rating",
    formula="v_source / v_abs",
    sentence="Source reaches {v_source}; converter input rated {v_abs} ({figure:%}).",
    inputs={
        "v_source": Input("v_source_high"),
        "v_abs": Input("supply.v_source_abs"),
    },
    applies={"supply.converter": ("step-up", "step-down", "step-up-down")},
    limits=AtMost(critical="1", minor="0.9", basis={"critical": RATING, "minor": COMMON_PRACTICE}),
    levers=(Lever("supply.v_source_abs", ("20 V", "30 V", "40 V", "60 V", "80 V", "100 V")),),
    sources=(RATING,),
    cautions=(SHORTED_STAGE,),
    cases=(
        Case(
            {"v_source": "14.7 V", "v_abs": "12 V"},
            gives="1.225",
            origin="derived: lead-acid, 6 cells of 2.45 V on charge, over an input of 12 V",
        ),
        Case(
            {"v_source": "25.2 V", "v_abs": "40 V"},
            gives="0.63",
            origin="computed: 6 lithium cells of 4.2 V, 25.2 V, over 40 V",
        ),
    ),
    topic=("supply.v_source_abs",),
    fails=SOURCE,
    passes=SOURCE.replace("v_source_abs: 14 V", "v_source_abs: 30 V"),
)
