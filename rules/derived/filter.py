"""Output filter: kind, inductance and capacitance as the load sees them, corner, Q."""

from ...linter.check import (
    COMMON_PRACTICE,
    Assumption,
    Derived,
    Input,
    Source,
    Way,
    derivation,
)
from ..formulas.lc import corner
from .ways import as_stated

NO_LOSS = Assumption("100 %", "favourable", COMMON_PRACTICE)
CLASS_2_LOSS = Assumption("60 %", "neutral", COMMON_PRACTICE)
STABLE = ("polypropylene", "polyester", "ceramic-class-1")
N_LEGS = Input("n_legs")
L = Input("filter.inductor.l")
L_TOTAL = Input("l_total")
C_TOTAL = Input("c_total")
R_PATH_AT_MOST = Input(  # of a filter that rings: more resistance damps it more
    "r_path",
    default=Assumption(
        "0.5 ohm", "favourable", derivation("more would cost a tenth of the power into 4 ohm")
    ),
)
GROUNDED = {"filter.c_ground": "fitted"}
NOTHING_ACROSS = Input("filter.c_across.c", default=Assumption("0 F", "neutral", COMMON_PRACTICE))
NOT_GROUNDED = {"filter.c_ground": "none"}
GROUNDED_ALONE = {
    "output_stage.topology": "full-bridge",
    "c_across_seen": "none",
    **GROUNDED,
}


def kind_of_inductor(l_leg: float) -> str:
    """An inductor is stated: an L-C filter."""
    return "lc"


def in_line(n_legs: float, l_leg: float) -> float:
    """Both inductors of a full bridge are in series with the load."""
    return n_legs * l_leg


def working(c: float, retention: float) -> float:
    """What is left at the working voltage."""
    return c * retention


def across_and_ground(c_across: float, c_ground: float, n_legs: float) -> float:
    """The capacitors to ground of a full bridge are in series as the load sees them."""
    return c_across + c_ground / n_legs


def ground_only(c_ground: float, n_legs: float) -> float:
    """Nothing lies across the load itself."""
    return c_ground / n_legs


def fitted() -> str:
    """Something is stated of the part."""
    return "fitted"


def none() -> str:
    """The part is stated as none, or nothing is said of it."""
    return "none"


def silent() -> str:
    """Nothing is said of the dielectric."""
    return "not given"


def _dielectric(which: str, text: str) -> Derived:
    """A word that is never missing: the capacitance is asked for first."""
    stated = Input(f"filter.{which}.dielectric")
    return Derived(
        f"{which}_dielectric",
        "word",
        "channel",
        f"dielectric of the {text}, or the words not given",
        ways=(Way(as_stated, {"value": stated}, "value"), Way(silent, {}, "silent")),
    )


def _working(which: str, text: str) -> Derived:
    c = Input(f"filter.{which}.c")
    retention = f"filter.{which}.bias_retention"
    return Derived(
        f"{which}_working",
        "F",
        "channel",
        f"{text}, at its working voltage",
        ways=(
            Way(as_stated, {"value": c}, "value", when={f"{which}_dielectric": STABLE}),
            Way(
                working,
                {"c": c, "retention": Input(retention, default=CLASS_2_LOSS)},
                "c retention",
                when={f"{which}_dielectric": "ceramic-class-2"},
            ),
            Way(
                working,
                {"c": c, "retention": Input(retention, default=NO_LOSS)},
                "c retention",
            ),
        ),
        sources=(
            Source(
                "KEMET, Why that 47 uF capacitor drops to 37 uF, 30 uF, or lower",
                "web page, opening paragraph",
            ),
        ),
    )


def _sum_ways(across: Input, ground: Input) -> tuple[Way, ...]:
    """A bridge with capacitors to ground that is silent on one across the load has none.

    It is the common form. One across would help against the carrier and hurt the treble,
    so the assumption can err either way.
    """
    both = {"c_across": across, "c_ground": ground, "n_legs": N_LEGS}
    return (
        Way(across_and_ground, both, "c_across + c_ground / n_legs", when=GROUNDED),
        Way(as_stated, {"value": across}, "value", when=NOT_GROUNDED),
        Way(
            ground_only,
            {"c_ground": ground, "n_legs": N_LEGS},
            "c_ground / n_legs",
            when={"filter.c_across": "none", **GROUNDED},
        ),
        Way(
            across_and_ground,
            {**both, "c_across": NOTHING_ACROSS},
            "c_across + c_ground / n_legs",
            when=GROUNDED_ALONE,
        ),
    )


FILTER_KIND = Derived(
    "filter_kind",
    "word",
    "channel",
    "what lies between the switch node and the load",
    ways=(
        Way(as_stated, {"value": Input("filter.type")}, "value"),
        Way(kind_of_inductor, {"l_leg": L}, "lc, because l_leg is stated"),
    ),
)

L_TOTAL_ = Derived(
    "l_total",
    "H",
    "channel",
    "inductance in line with the load",
    ways=(Way(in_line, {"n_legs": N_LEGS, "l_leg": L}, "n_legs l_leg"),),
    sources=(Source("TPA005D02 evaluation module guide", "p. 3-9: half of the load a side"),),
)

C_ACROSS_SEEN = Derived(
    "c_across_seen",
    "word",
    "channel",
    "whether anything is stated of a capacitor across the load",
    ways=(Way(fitted, {}, "fitted", when={"filter.c_across": "fitted"}), Way(none, {}, "none")),
)

C_TOTAL_ = Derived(
    "c_total",
    "F",
    "channel",
    "capacitance across the load, at the working voltage",
    ways=_sum_ways(
        Input("c_across_working"),
        Input("c_ground_working"),
    ),
    sources=(Source("TPA005D02 evaluation module guide", "p. 3-9: half of the load a side"),),
)

C_TOTAL_UNBIASED = Derived(
    "c_total_unbiased",
    "F",
    "channel",
    "capacitance across the load, as printed on the parts",
    ways=_sum_ways(
        Input("filter.c_across.c"),
        Input("filter.c_ground.c"),
    ),
)

F_CORNER = Derived(
    "f_corner",
    "Hz",
    "channel",
    "undamped corner of the output filter",
    ways=(Way(corner, {"l_1": L_TOTAL, "c_1": C_TOTAL}, "1 / (2 pi sqrt(l_1 c_1))"),),
    stated_at="filter.corner",
    agree=0.1,
    sources=(Source("MAX4295 data sheet", "p. 11"),),
)

DERIVED = (
    FILTER_KIND,
    C_ACROSS_SEEN,
    _dielectric("c_across", "capacitor across the load"),
    _dielectric("c_ground", "capacitor from each terminal to ground"),
    _working("c_across", "capacitor across the load"),
    _working("c_ground", "capacitor from each terminal to ground"),
    L_TOTAL_,
    C_TOTAL_,
    C_TOTAL_UNBIASED,
    F_CORNER,
)
