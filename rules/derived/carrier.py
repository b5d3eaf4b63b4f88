"""What the output filter leaves of the carrier: between the terminals, and on both together."""

from ...linter.check import Assumption, Derived, Input, Way, derivation
from ..formulas.lc import damped_gain, ladder_gain
from .response import CONNECTION, DAMPER, FILTER, LADDER, NO_DAMPER
from .ways import as_stated

NO_LOAD = float("inf")
CARRIER = Input("f_carrier_effective")
UNGROUNDED = {"filter_kind": "lc", "levels": "three-level", "grounded": "no"}


def gain_without_load(
    f: float, l_total: float, c_total: float, n_legs: float, dcr: float, l_2: float, c_2: float
) -> float:
    """Gain of one or two sections that nothing loads."""
    return ladder_gain(f, l_total, c_total, NO_LOAD, n_legs * dcr, n_legs * l_2, c_2)


def gain_into_load(
    f: float,
    load: float,
    l_total: float,
    c_total: float,
    n_legs: float,
    dcr: float,
    l_2: float,
    c_2: float,
    r_damper: float,
    c_damper: float,
) -> float:
    """Gain of one or two sections into a resistor, damper beside it."""
    far = (n_legs * l_2, c_2, r_damper, c_damper)
    return damped_gain(f, l_total, c_total, load, n_legs * dcr, *far)


def damper_to_ground(c: float, connection: str) -> float:
    """Only a damper at each terminal acts where both terminals move alike."""
    return c if connection == "each-terminal" else 0 * c


def common_mode(
    f: float,
    l_leg: float,
    c_ground: float,
    dcr: float,
    l_2: float,
    c_2: float,
    r_damper: float,
    c_damper: float,
) -> float:
    """Gain of ONE leg to ground where both legs move alike: no current in the load."""
    return damped_gain(f, l_leg, c_ground, NO_LOAD, dcr, l_2, c_2, r_damper, c_damper)


def as_bead() -> str:
    """Inductors that nothing leads to ground behind them act like beads."""
    return "bead"


CARRIER_GAIN = Derived(
    "carrier_gain",
    "1",
    "channel",
    "gain of the filter without load at the lowest carrier",
    (
        Way(
            gain_without_load,
            {"f": CARRIER, **FILTER},
            "gain at f of the ladder l_total with n_legs dcr, c_total, n_legs l_2, c_2",
        ),
    ),
    sources=(LADDER,),
)

CARRIER_GAIN_LOADED = Derived(
    "carrier_gain_loaded",
    "1",
    "channel",
    "gain of the filter into the highest rated load at the lowest carrier",
    (
        Way(
            gain_into_load,
            {"f": CARRIER, "load": Input("load_high"), **FILTER, **DAMPER},
            "gain at f of the ladder l_total with n_legs dcr, c_total, n_legs l_2, c_2 into load"
            " and, beside it, r_damper in series with c_damper",
        ),
    ),
    sources=(LADDER,),
)

C_DAMPER_GROUND = Derived(
    "c_damper_ground",
    "F",
    "channel",
    "capacitor of the damper from ONE terminal to ground, 0 F where there is none",
    (
        Way(
            damper_to_ground,
            {
                "c": Input("filter.damper.c", default=Assumption("0 F", "absent", NO_DAMPER)),
                "connection": CONNECTION,
            },
            "c, of connection across 0",
        ),
    ),
)

COMMON_MODE_GAIN = Derived(
    "common_mode_gain",
    "1",
    "channel",
    "gain of one leg of the filter to ground at the carrier, both legs together",
    (
        Way(
            common_mode,
            {
                "f": Input("modulator.carrier"),
                "l_leg": Input("filter.inductor.l"),
                "c_ground": Input("c_ground_leg"),
                "dcr": Input("filter.inductor.dcr"),
                "l_2": Input("l_second"),
                "c_2": Input(
                    "filter.second_stage.c_ground",
                    default=Assumption(
                        "0 F", "absent", derivation("not given: none to ground there")
                    ),
                ),
                "r_damper": Input(
                    "filter.damper.r", default=Assumption("1 ohm", "absent", NO_DAMPER)
                ),
                "c_damper": Input("c_damper_ground"),
            },
            "gain at f of the ladder l_leg with dcr, c_ground, l_2, c_2 and, at its end, r_damper"
            " in series with c_damper",
        ),
    ),
    sources=(derivation("half of a symmetrical bridge: its terminals move alike"), LADDER),
)

LEAD_FILTER = Derived(
    "lead_filter",
    "word",
    "channel",
    "what filters the lead, both of its wires together too; inductors alone act as a bead",
    (
        Way(as_bead, {}, "bead", when=UNGROUNDED),
        Way(as_stated, {"value": Input("filter_kind")}, "value"),
    ),
    sources=(
        derivation("the legs of a three-level bridge move alike at idle: only ground stops it"),
    ),
)

DERIVED: tuple[Derived, ...] = (
    CARRIER_GAIN,
    CARRIER_GAIN_LOADED,
    C_DAMPER_GROUND,
    COMMON_MODE_GAIN,
    LEAD_FILTER,
)
