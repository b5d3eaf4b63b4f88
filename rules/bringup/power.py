"""Power at the distortion of the rating, into a dummy load that takes it for good."""

from ...linter.bringup_step import Amount, Hazard, Line, Reading, Step
from ...linter.check import COMMON_PRACTICE, Constant, Input
from ..derived.bench import THD
from ..formulas.bench import dummy_inductance, dummy_power
from .shared import (
    BRIDGE,
    BY_LICENCE,
    CHARGED,
    PACK,
    ROOM,
    SHOCK,
    nominal,
    power_drawn,
    quantity,
    set_to,
    supply_at,
)

TWICE = Constant("2", "a stage clipped to a square wave gives twice its sine", COMMON_PRACTICE)
TENTH = Constant("10 %", "reactance over resistance of a dummy load", COMMON_PRACTICE)
ONSET = Input("p_out_usual")


def _inductance(f: str) -> Amount:
    inputs: dict[str, Input | Constant] = {"r": Input("z_load"), "f": Input(f), "share": TENTH}
    return Amount("H", dummy_inductance, inputs, "lowest", 2)


LOAD = "Dummy load {r}, rated {p}, at most {l} (non-inductive), in free air."
COIL = (
    "Dummy load {r}, rated {p}, with the {l} of the voice coil in series: a stage without filter"
    " needs it."
)
RATING = Amount("W", dummy_power, {"p_onset": ONSET, "thd": THD, "reserve": TWICE}, "highest", 2)

STEP = Step(
    title="Power at 1 % distortion",
    order=150,
    instrument=(
        "distortion meter with a 20 kHz low-pass ahead of it (the carrier upsets it); true-rms"
        " voltmeter; meter in the supply lead"
    ),
    bench=(*ROOM, *supply_at("v_source_low", PACK, "bottom")),
    lines=(
        Line(
            "Bench supply in place of the pack, at its low charge: {v}; limit above {i}.",
            {
                "v": set_to("v_source_low", "bottom"),
                "i": quantity("i_source_peak", "A").at("highest"),
            },
            applies=PACK,
        ),
        Line(
            LOAD,
            {"r": nominal("z_load", "ohm"), "p": RATING, "l": _inductance("f_corner")},
            applies={"filter_kind": "lc"},
            each="channel",
        ),
        Line(
            LOAD,
            {"r": nominal("z_load", "ohm"), "p": RATING, "l": _inductance("band_high")},
            applies={"filter_kind": "bead"},
            each="channel",
        ),
        Line(
            COIL,
            {"r": nominal("z_load", "ohm"), "p": RATING, "l": nominal("loudspeaker.l_e", "H")},
            applies={"filter_kind": "filterless"},
            each="channel",
        ),
        Line(
            "Limiter out of the way, or the reading ends at {v} rms.",
            {"v": nominal("limiter.v_rms", "V")},
            each="channel",
        ),
        BRIDGE,
        Line("Sine, 1 kHz or the middle of a narrower band; all channels driven; raise to 1 %."),
        Line("Seconds, not minutes: heat has its own step."),
    ),
    hazards=(
        Hazard("loudspeaker-power-match"),
        Hazard("junction-temperature-margin"),
        Hazard("shock-class-outputs", {"rail_harmless": "no"}),
        BY_LICENCE,
        CHARGED,
        SHOCK,
    ),
    readings=(
        Reading(
            "power-at-one-percent",
            "Power into the dummy load at 1 %",
            quantity("p_at_one_percent", "W"),
            harms=False,
            each="channel",
            stop="below",
            limit=quantity("rated_power", "W"),
        ),
        Reading(
            "node-peak-loaded",
            "Node, peak with ringing, at that power",
            quantity("v_node_peak", "V"),
            each="channel",
            kind="at most",
            limit=quantity("v_leg_absolute", "V"),
        ),
        Reading(
            "edge-time",
            "Edge of the node, 10 to 90 %, at that power",
            quantity("t_edge", "ns"),
            each="channel",
        ),
        *power_drawn("supply-power", "Power from the supply, all channels at rated power", "rated"),
    ),
)
