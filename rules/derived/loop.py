"""The feedback loop: its gain in the audio band, and whether the filter is inside it."""

from ...linter.check import Assumption, Constant, Derived, Input, Way, derivation
from ..formulas.constants import TEST_TONE
from ..formulas.modulation import loop_corner, loop_gain
from .ways import as_stated, no, yes

LOOP = {"modulator.feedback": ("before-filter", "after-filter")}
CROSSOVER = Input("modulator.loop_crossover")
ORDER = Input(
    "modulator.loop_order",
    default=Assumption(1.0, "adverse", derivation("one integrator at least")),
)
NO_ORDER = Constant("1", "slope near the crossover", derivation("one integrator left"))
LEAKY = derivation("an amplifier of one pole: modulus crossover / sqrt(f^2 + corner^2)")


def no_gain() -> float:
    """Open loop."""
    return 0.0


F_LOOP_FLAT = Derived(
    "f_loop_flat",
    "Hz",
    "channel",
    "frequency below which the loop gain is flat",
    ways=(
        Way(
            loop_corner,
            {
                "f": TEST_TONE,
                "gain": Input("modulator.loop_gain"),
                "crossover": CROSSOVER,
                "order": ORDER,
            },
            "sqrt((crossover / gain^(1/order))^2 - f^2), not below 0",
        ),
        Way(as_stated, {"value": Input("modulator.loop_corner")}, "value"),
    ),
    stated_at="modulator.loop_corner",
    agree=0.5,
    sources=(LEAKY,),
)

LOOP_GAIN_1K = Derived(
    "loop_gain_1k",
    "1",
    "channel",
    "loop gain at 1 kHz",
    ways=(
        Way(no_gain, {}, "0", when={"modulator.feedback": "none"}),
        Way(
            loop_gain,
            {
                "f": TEST_TONE,
                "crossover": CROSSOVER,
                "corner": Input("f_loop_flat"),
                "order": ORDER,
            },
            "(crossover / sqrt(f^2 + corner^2))^order",
            when=LOOP,
        ),
    ),
    stated_at="modulator.loop_gain",
    agree=0.5,
    sources=(LEAKY,),
)

LOOP_GAIN_TREBLE = Derived(
    "loop_gain_treble",
    "1",
    "channel",
    "loop gain at the top of the band, first order",
    ways=(
        Way(no_gain, {}, "0", when={"modulator.feedback": "none"}),
        Way(
            loop_gain,
            {
                "f": Input("band_high"),
                "crossover": CROSSOVER,
                "corner": Input("f_loop_flat"),
                "order": NO_ORDER,
            },
            "(crossover / sqrt(f^2 + corner^2))^order",
            when=LOOP,
        ),
    ),
    sources=(derivation("asymptote of the loop near its crossover: 20 dB per decade"), LEAKY),
)

FILTER_IN_LOOP = Derived(
    "filter_in_loop",
    "word",
    "channel",
    "whether the loop takes its signal behind the filter",
    ways=(
        Way(yes, {}, "yes", when={"modulator.feedback": "after-filter"}),
        Way(no, {}, "no", when={"modulator.feedback": ("none", "before-filter")}),
        Way(
            no,
            {},
            "no",
            assumes=Assumption(
                None, "adverse", derivation("a filter outside the loop gets no help from it")
            ),
        ),
    ),
)

DERIVED = (F_LOOP_FLAT, LOOP_GAIN_1K, LOOP_GAIN_TREBLE, FILTER_IN_LOOP)
