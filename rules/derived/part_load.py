"""How much of its loss a channel of stated efficiency has at a part of its power."""

from ...linter.check import (
    Assumption,
    Constant,
    Derived,
    Input,
    Source,
    Way,
    derivation,
    from_memory,
)
from ..formulas.constants import SINE_CREST
from ..formulas.dissipation import efficiency_loss, programme_share
from ..formulas.efficiency import knots_of, loss_above_idle
from ..formulas.maths import larger, smaller
from .ways import as_stated, left_out

POWERS = "output_stage.efficiency_curve[].power"
EFFICIENCIES = "output_stage.efficiency_curve[].efficiency"
ONE_EIGHTH = from_memory("IEC 62368-1 Annex E", "one eighth of the unclipped power, at least")
CURVE_PAIR = Source(
    "International Rectifier, IRAUDAMP7D reference design, rev. 2.9; TPA3221 data sheet SLASEE9B",
    "figs. 14 to 19; figs. 6 to 8: efficiency against power; the power "
    "0.82 is fitted to these two alone",
)
LAW = derivation("a constant, a term that goes with the current and one with its square")
ALL_SQUARE = derivation("all of it with the square of the current: no other law leaves less")
LEAST = Assumption(None, "floor", ALL_SQUARE)
EXPONENT = Constant("0.82", "exponent of the loss above idle", CURVE_PAIR)
SQUARE = Constant("1", "exponent of a loss with the square of the current", ALL_SQUARE)


def no_milder(crest_factor: float, one_eighth: float) -> float:
    """A programme of less power does not make the test of heat any milder."""
    return smaller(crest_factor, one_eighth)


def efficiency_on_curve(
    rated_power: float, powers: tuple[float, ...], efficiencies: tuple[float, ...], p_idle: float
) -> float:
    """Efficiency at rated power from the points of a curve."""
    knots = knots_of(powers, efficiencies, p_idle)
    return rated_power / (rated_power + p_idle + loss_above_idle(rated_power, knots))


def of_curve(
    rated_power: float,
    efficiency: float,
    p_idle: float,
    powers: tuple[float, ...],
    efficiencies: tuple[float, ...],
    part: float,
) -> float:
    """Loss above idle at a part of the rated power, from the curve and the rated point."""
    knots = knots_of((*powers, rated_power), (*efficiencies, efficiency), p_idle)
    return loss_above_idle(part * rated_power, knots)


def of_exponent(
    rated_power: float, efficiency: float, p_idle: float, part: float, exponent: float
) -> float:
    """The same where only the rated point is known: a power law, by the look of two curves."""
    loss = efficiency_loss(rated_power, efficiency) - p_idle
    return larger(loss, 0.0 * loss) * part**exponent


CREST = Input("signal.crest_factor")
IDLE = Input("p_idle", default=left_out("0 W", "idle loss"))
POWER = Input("rated_power")
EFFICIENCY = Input("efficiency_rated")
_CURVE = {"powers": Input(POWERS), "efficiencies": Input(EFFICIENCIES)}


def _part(name: str, crest: str, meaning: str) -> Derived:
    """Share of the power of a sine that just does not clip."""
    return Derived(
        name,
        "1",
        "product",
        meaning,
        (
            Way(
                programme_share,
                {"crest_factor": Input(crest), "crest_of_sine": SINE_CREST},
                "10^((crest_of_sine - crest_factor)/10)",
            ),
        ),
        sources=(derivation("power goes with the square of the rms voltage"),),
    )


def _above_idle(name: str, part: str, meaning: str, within: str) -> Derived:
    """Loss of a channel of stated efficiency beyond its idle loss.

    within: between the two ends of ``LAW``, all of it with the square of the current and all of
    it with the current, exponents 1 and 0.5 in place of 0.82, at the smallest part.
    """
    shape = Assumption(None, "neutral", CURVE_PAIR, placeholder=True, within=within)
    known: dict[str, Input | Constant] = {
        "rated_power": POWER,
        "efficiency": EFFICIENCY,
        "p_idle": IDLE,
        "part": Input(part),
    }
    return Derived(
        name,
        "W",
        "channel",
        f"loss above idle of a channel of stated efficiency, {meaning}",
        (
            Way(
                of_curve,
                {**known, **_CURVE},
                "loss above p_idle at part rated_power on the curve of powers and efficiencies and"
                " efficiency: straight between points, b sqrt(p) + c p below the lowest one",
            ),
            Way(
                of_exponent,
                {**known, "exponent": EXPONENT},
                "(rated_power (1/efficiency - 1) - p_idle) part^exponent",
                assumes=shape,
            ),
            Way(
                of_exponent,
                {**known, "exponent": SQUARE},
                "(rated_power (1/efficiency - 1) - p_idle) part^exponent",
                assumes=LEAST,
            ),
        ),
        sources=(LAW, CURVE_PAIR),
    )


DERIVED: tuple[Derived, ...] = (
    Derived(
        "crest_tested",
        "dB",
        "product",
        "crest factor of the programme, but not above that of one eighth of the power",
        (
            Way(
                no_milder,
                {
                    "crest_factor": CREST,
                    "one_eighth": Constant(
                        "12.0412 dB", "one eighth of the power of a sine", ONE_EIGHTH
                    ),
                },
                "smaller of crest_factor and one_eighth",
            ),
        ),
        sources=(ONE_EIGHTH,),
    ),
    _part("part_programme", "signal.crest_factor", "power of the programme over that of a sine"),
    _part("part_tested", "crest_tested", "the same, one eighth at least"),
    Derived(
        "efficiency_rated",
        "%",
        "channel",
        "efficiency of the channel at rated power",
        (
            Way(as_stated, {"value": Input("output_stage.efficiency")}, "value"),
            Way(
                efficiency_on_curve,
                {"rated_power": POWER, **_CURVE, "p_idle": IDLE},
                "on the curve of powers and efficiencies at rated_power, above p_idle",
                when={"output_stage.efficiency_curve": "fitted"},
            ),
        ),
        sources=(LAW,),
    ),
    # a crest factor of 20 dB leaves 1/50 of the power of the sine; the test of heat 1/8
    _above_idle(
        "p_above_idle_programme", "part_programme", "while the programme plays", "0.49 .. 3.5"
    ),
    _above_idle(
        "p_above_idle_tested", "part_tested", "at the programme of the test of heat", "0.68 .. 2"
    ),
)
