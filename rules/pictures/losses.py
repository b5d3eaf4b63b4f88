"""Where the power of a channel goes that does not come out."""

from ...linter.check import Arguments, Input
from ...linter.picture import Amount, Row, Scale, Shown
from .parts import shown

DISCRETE = {"output_stage.devices": "discrete"}
CONDUCTION: Arguments = {
    "n_legs": Input("n_legs"),
    "parallel": Input("output_stage.parallel"),
    "i_rated_peak": Input("i_rated_peak"),
    "r_ds_on": Input("r_ds_on_hot"),
}
PART: Arguments = {"part": Input("part_programme")}


def conduction(n_legs: float, parallel: float, i_rated_peak: float, r_ds_on: float) -> float:
    """One switch of each leg carries the load current at a time, a sine."""
    return n_legs * r_ds_on / parallel * i_rated_peak**2 / 2


def conduction_programme(
    n_legs: float, parallel: float, i_rated_peak: float, r_ds_on: float, part: float
) -> float:
    """The same goes with the power; the resistance is left as hot."""
    return part * conduction(n_legs, parallel, i_rated_peak, r_ds_on)


def copper_programme(p_inductor: float, part: float) -> float:
    """Copper loss goes with the power."""
    return part * p_inductor


PICTURE = Scale(
    title="Where does the lost power of a channel go?",
    each="channel",
    axis="power",
    unit="W",
    rows=(
        Row("All losses", (
            shown("rated power", "p_loss_rated", "second"),
            shown("programme", "p_loss_programme"),
        )),
        Row("Idle: charges and ripple", (shown("always", "p_idle"),)),
        Row("Conduction of the switches, hot", (
            Shown("rated power", (Amount(CONDUCTION, conduction, DISCRETE),), "second"),
            Shown("programme", (Amount({**CONDUCTION, **PART}, conduction_programme, DISCRETE),)),
        )),
        Row("Switching that grows with load", (
            Shown("rated power", (Amount({"value": Input("p_switching")}, when=DISCRETE),),
                  "second"),
            Shown("programme", (Amount({"value": Input("p_switching_programme")},
                                       when=DISCRETE),)),
        )),
        Row("Copper of the inductors", (
            shown("rated power", "p_inductor", "second"),
            Shown("programme", (Amount({"p_inductor": Input("p_inductor"), **PART},
                                       copper_programme),)),
        )),
        Row("Core of the inductors (within idle)", (shown("largest ripple", "p_core"),)),
    ),
    note="The range of each part is its own: they are not all at their ends together.",
    bars=True,
    least=3,
    value="programme",
    second="rated power",
)  # fmt: skip
