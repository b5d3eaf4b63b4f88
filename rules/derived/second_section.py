"""Second section of the filter, and capacitors to ground of either section."""

from dataclasses import replace

from ...linter.check import Assumption, Derived, Input, Source, Way, derivation
from ..formulas.lc import two_section_lower
from .filter import GROUNDED, N_LEGS, NOT_GROUNDED, NOTHING_ACROSS, across_and_ground
from .ways import as_stated, no, yes

SECOND = "filter.second_stage"
C_2 = Input(f"{SECOND}.c")
C_2_GROUND = Input(f"{SECOND}.c_ground")
NO_CAPACITOR = Assumption(
    "0 F", "absent", derivation("a second section may have its capacitor at one place alone")
)


def no_inductance() -> float:
    """No second section, in henry."""
    return 0.0


def no_capacitance() -> float:
    """No such capacitor, in farad."""
    return 0.0


def yes_stated(c_ground: float) -> str:
    """A capacitor to ground is stated, whatever its value."""
    return "yes"


def lower_mode(l_1: float, c_1: float, n_legs: float, l_2: float, c_2: float) -> float:
    """Lower natural frequency of both sections, in hertz."""
    return two_section_lower(l_1, c_1, n_legs * l_2, c_2)


L_SECOND = Derived(
    "l_second",
    "H",
    "channel",
    "inductor of the second section in ONE leg, 0 H where there is no second section",
    ways=(
        Way(no_inductance, {}, "0", when={SECOND: "none"}),
        Way(as_stated, {"value": Input(f"{SECOND}.l")}, "value"),
    ),
)

C_SECOND = Derived(
    "c_second",
    "F",
    "channel",
    "capacitance of the second section across the load, 0 F where there is none",
    ways=(
        Way(no_capacitance, {}, "0", when={SECOND: "none"}),
        Way(
            across_and_ground,
            {
                "c_across": C_2,
                "c_ground": replace(C_2_GROUND, default=NO_CAPACITOR),
                "n_legs": N_LEGS,
            },
            "c_across + c_ground / n_legs",
        ),
        Way(
            across_and_ground,
            {
                "c_across": replace(C_2, default=NOTHING_ACROSS.default),
                "c_ground": C_2_GROUND,
                "n_legs": N_LEGS,
            },
            "c_across + c_ground / n_legs",
        ),
    ),
    sources=(Source("TPA005D02 evaluation module guide", "p. 3-9: half of the load a side"),),
)

C_GROUND_LEG = Derived(
    "c_ground_leg",
    "F",
    "channel",
    "capacitor from ONE terminal to ground at the first section, 0 F where there is none",
    ways=(
        Way(as_stated, {"value": Input("c_ground_working")}, "value", when=GROUNDED),
        Way(no_capacitance, {}, "0", when=NOT_GROUNDED),
    ),
)

GROUNDED_WORD = Derived(
    "grounded",
    "word",
    "channel",
    "whether the filter has capacitors from its terminals to ground",
    ways=(
        Way(yes, {}, "yes", when=GROUNDED),
        Way(yes_stated, {"c_ground": C_2_GROUND}, "yes where c_ground is stated"),
        Way(no, {}, "no"),
    ),
)

F_CORNER_LOWEST = Derived(
    "f_corner_lowest",
    "Hz",
    "channel",
    "corner of the output filter; of two sections their lower natural frequency",
    ways=(
        Way(as_stated, {"value": Input("f_corner")}, "value", when={SECOND: "none"}),
        Way(
            lower_mode,
            {
                "l_1": Input("l_total"),
                "c_1": Input("c_total"),
                "n_legs": N_LEGS,
                "l_2": Input("l_second"),
                "c_2": Input("c_second"),
            },
            "sqrt(2 / (a + sqrt(a^2 - 4 b))) / (2 pi), a = l_1 (c_1 + c_2) + n_legs l_2 c_2,"
            " b = l_1 c_1 n_legs l_2 c_2",
        ),
    ),
    sources=(derivation("Kirchhoff's laws: natural frequencies of the lossless ladder"),),
)

DERIVED = (L_SECOND, C_SECOND, C_GROUND_LEG, GROUNDED_WORD, F_CORNER_LOWEST)
