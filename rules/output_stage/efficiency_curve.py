"""Loss against power along a stated efficiency curve.

What a stage loses grows with its output power: conduction with the square of the current,
switching with the current, and nothing becomes smaller.  Where a point of a curve loses less
than a point of less power, or less than the stage loses without signal, one of the two is
wrong: the power of both channels beside the efficiency of one, peak for mean power, an
efficiency of the bare stage beside one of the whole board, or a slip of a digit.

The figure is the largest such excess of a loss over that of more power.  A graph can be
read to about a point of efficiency, and at 90 % a point is a tenth of the loss: two points
that are read badly differ by a fifth, and beyond that it is major, since run time and heat
follow from the curve.  A twentieth is more than a printed table leaves.  First fix: read
the graph of the loss itself, if there is one, and state whose power it is.
"""

from ...linter.check import (
    COMMON_PRACTICE,
    Assumption,
    AtMost,
    Case,
    Check,
    Input,
    derivation,
)
from ..formulas.efficiency import largest_fall


def figure(
    powers: tuple[float, ...],
    efficiencies: tuple[float, ...],
    rated_power: float,
    efficiency: float,
    p_idle: float,
) -> float:
    """Largest excess of a loss over the loss at more power, the rated point among them."""
    return largest_fall((*powers, rated_power), (*efficiencies, efficiency), p_idle)


GROWS = derivation("every term of the loss grows with the current, or is constant")
READING = derivation("one point of efficiency read too low and one too high, at 90 %")
NOT_STATED = Assumption("0 W", "absent", derivation("an idle loss that is not stated"))
CURVE = "output_stage.efficiency_curve"

CHECK = Check(
    title="Efficiency curve: loss vs. power",
    figure=figure,
    unit="%",
    each="channel",
    stake="performance",
    formula="largest of loss over loss at more power, less 1; loss = p (1/efficiency - 1) over"
    " powers with efficiencies and rated_power with efficiency; p_idle at no power",
    sentence="{figure:?Loss rises with power|A lower power loses # more than a higher one} in the"
    " efficiency curve ({efficiencies} at {powers}, {efficiency} at {rated_power}).",
    inputs={
        "powers": Input(f"{CURVE}[].power"),
        "efficiencies": Input(f"{CURVE}[].efficiency"),
        "rated_power": Input("rated_power"),
        "efficiency": Input("efficiency_rated"),
        "p_idle": Input("output_stage.p_idle", default=NOT_STATED),
    },
    applies={CURVE: "fitted"},
    limits=AtMost(major="20 %", minor="5 %", basis={"major": READING, "minor": COMMON_PRACTICE}),
    sources=(GROWS, READING),
    cases=(
        Case(
            {
                "powers": ("20 W", "50 W", "100 W"),
                "efficiencies": ("78.4 %", "81.43 %", "82.65 %"),
                "rated_power": "200 W",
                "efficiency": "85.6 %",
                "p_idle": "0.37 W",
            },
            gives="0 %",
            origin="published: TPA3221 data sheet SLASEE9B, fig. 9, 4 ohm: 5.52, 11.4, 21.0, 33.7 W"
            " lost at 20, 50, 100, 200 W of two channels, here one; efficiencies by hand",
        ),
        Case(
            {
                "powers": ("50 W", "100 W"),
                "efficiencies": ("81.43 %", "91.43 %"),
                "rated_power": "200 W",
                "efficiency": "85.6 %",
                "p_idle": "0.37 W",
            },
            gives="21.65 %",
            origin="derived: 11.40 W at 50 W, 9.373 W at 100 W with a slip of ten points",
        ),
    ),
    topic=(CURVE,),
    fails="""
channels:
  main:
    rated_power: 50 W
    output_stage:
      efficiency: 88 %
      efficiency_curve: [{power: 10 W, efficiency: 50 %}, {power: 25 W, efficiency: 85 %}]
""",
    passes="""
channels:
  main:
    rated_power: 50 W
    output_stage:
      efficiency: 88 %
      efficiency_curve: [{power: 10 W, efficiency: 78 %}, {power: 25 W, efficiency: 85 %}]
""",
)
