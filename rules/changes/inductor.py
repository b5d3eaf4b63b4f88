"""Another inductance on the same core, with the resistance and saturation that follow.

On a given core and gap the inductance goes with the square of the turns.  The same window holds
more turns of thinner wire, so the resistance goes with the square of the turns as well, that is
with the inductance; the flux of a given current goes with the turns, so the saturation current
falls with their number, and with it the root of the inductance.  What is written is a guess at
a part that nobody has chosen yet.
"""

from ...linter.check import Input, derivation
from ...linter.design_change import DesignChange, Follow

SAME_CORE = derivation("same core and window: L ~ N^2, resistance ~ N^2, saturation ~ 1/N")


def with_the_inductance(was: float, l_was: float, l_now: float) -> float:
    """What goes with the square of the turns."""
    return was * l_now / l_was


def against_the_turns(was: float, l_was: float, l_now: float) -> float:
    """What goes with one over the turns."""
    return was * (l_was / l_now) ** 0.5


def with_the_turns(was: float, l_was: float, l_now: float) -> float:
    """What goes with the turns."""
    return was * (l_now / l_was) ** 0.5


def _rewound(name: str, law: object) -> Follow:
    path = f"filter.inductor.{name}"
    return Follow(
        path,
        law,  # type: ignore[arg-type]
        {
            "was": Input(f"before {path}"),
            "l_was": Input("before filter.inductor.l:nominal"),
            "l_now": Input("filter.inductor.l:nominal"),
        },
        guess=True,
    )


def crest_with_headroom(i_crest: float, factor: float) -> float:
    """Saturation current at 25 degC for the hot crest, with a tenth to spare."""
    return 1.1 * i_crest / factor


SATURATION = Follow(
    "filter.inductor.i_sat",
    crest_with_headroom,
    {"i_crest": Input("i_inductor_crest"), "factor": Input("i_sat_factor")},
    "1 A",
    "up",
    guess=True,
)

CHANGE = DesignChange(
    title="another inductance on the same core",
    moves=("filter.inductor.l",),
    kind="part",
    follows=(
        _rewound("dcr", with_the_inductance),
        _rewound("i_sat", against_the_turns),
        _rewound("i_rms", against_the_turns),
        _rewound("turns", with_the_turns),
    ),
    sources=(SAME_CORE,),
)
