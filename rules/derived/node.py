"""Voltage at the switch node: output charge, ringing, pumping, the peak of it all."""

from ...linter.check import (
    COMMON_PRACTICE,
    Assumption,
    Constant,
    Derived,
    Input,
    Way,
    derivation,
    from_memory,
)
from ..formulas.constants import LEAST_C_OSS
from ..formulas.losses import (
    capacitance_at,
    capacitance_of_charge,
    output_charge,
    output_charge_from_capacitance,
)
from ..formulas.maths import choose, larger, smaller
from ..formulas.ringing import current_overshoot, snubber_share
from .ways import as_stated


def ringing_capacitance(c_oss: float, v_data: float, q_oss: float, v_swing: float) -> float:
    """Small-signal capacitance at the swing, as printed or else from the charge."""
    return choose(
        c_oss > 0 * c_oss,
        capacitance_at(c_oss, v_data, v_swing),
        capacitance_of_charge(q_oss, v_swing),
    )


def overshoot(
    i_leg_peak: float,
    l_loop: float,
    c_oss_swing: float,
    parallel: float,
    t_edge: float,
    c_snubber: float,
    c_least: float,
) -> float:
    """Estimated ringing above the rail, from loop inductance and output capacitance."""
    c = larger(parallel * c_oss_swing, c_least)
    return current_overshoot(i_leg_peak, l_loop, c, t_edge) * snubber_share(c_snubber, c)


def overshoot_of_ramp(i_leg_peak: float, l_loop: float, t_edge: float) -> float:
    """Upper bound of the ringing where only the loop and the edge are known."""
    return 2 * l_loop * i_leg_peak / t_edge


def pin_overshoot(
    i_leg_peak: float, l_loop: float, t_edge: float, v_static_peak: float, v_recommended: float
) -> float:
    """Ringing at the pins of a part; within its recommended supply the least that a ramp leaves.

    A maker recommends a supply with the edges of the part on a board laid out as printed, so
    that what the undamped bound adds is covered by the distance to the absolute maximum.
    """
    least = l_loop * i_leg_peak / t_edge
    return choose(v_static_peak > v_recommended, 2 * least, least)


def overshoot_share(v_swing: float, share: float) -> float:
    """Ringing as a usual share of the swing."""
    return v_swing * share


def static_peak(v_swing: float, v_rail_high: float, v_pumping: float, v_trip: float) -> float:
    """Highest voltage across a leg without ringing: swing and pumping of one rail.

    The trip stops pumping, it does not lower a source that lies above it.
    """
    return v_swing + smaller(v_pumping, larger(v_trip, v_rail_high) - v_rail_high)


def node_peak(v_static_peak: float, v_overshoot: float) -> float:
    """Highest voltage across an open switch: leg voltage and ringing."""
    return v_static_peak + v_overshoot


DEVICE = "output_stage.device"
V_SWING = Input("v_swing")
V_RAIL_HIGH = Input("v_rail_high")
T_EDGE = Input("t_edge")
NO_TRIP = Assumption(float("inf"), "absent", derivation("without a trip nothing stops the rise"))
NO_SNUBBER = Assumption("0 F", "absent", derivation("without a snubber its capacitance is nil"))
UNKNOWN_PUMPING = Assumption(
    "0 V", "floor", derivation("a rail that is not pumped stays where it is")
)
V_PUMPING = Input("v_pumping", default=UNKNOWN_PUMPING)
V_TRIP = Input("protection.over_voltage.v_trip", default=NO_TRIP)
I_LEG_PEAK = Input("i_leg_peak")
L_LOOP = Input("output_stage.l_loop")
PARALLEL = Input("output_stage.parallel")
C_SNUBBER = Input("output_stage.snubber.c", default=NO_SNUBBER)

DERIVED: tuple[Derived, ...] = (
    Derived(
        "q_oss_swing",
        "C",
        "channel",
        "output charge of one device at the full swing",
        (
            Way(
                output_charge,
                {
                    "q_oss": Input(f"{DEVICE}.q_oss"),
                    "v_data": Input(f"{DEVICE}.v_c_oss"),
                    "v_swing": V_SWING,
                },
                "q_oss sqrt(v_swing / v_data)",
            ),
            Way(
                output_charge_from_capacitance,
                {
                    "c_oss": Input(f"{DEVICE}.c_oss"),
                    "v_data": Input(f"{DEVICE}.v_c_oss"),
                    "v_swing": V_SWING,
                },
                "2 c_oss sqrt(v_data v_swing)",
            ),
        ),
        sources=(derivation("integral of a junction capacitance falling as the square root"),),
    ),
    Derived(
        "c_oss_swing",
        "F",
        "channel",
        "output capacitance of one device at the full swing, small signal: what rings",
        (
            Way(
                ringing_capacitance,
                {
                    "c_oss": Input(f"{DEVICE}.c_oss"),
                    "v_data": Input(f"{DEVICE}.v_c_oss"),
                    "q_oss": Input("q_oss_swing"),
                    "v_swing": V_SWING,
                },
                "c_oss sqrt(v_data / v_swing), without c_oss: q_oss / (2 v_swing)",
            ),
        ),
        sources=(derivation("a junction capacitance falling as the square root; its charge"),),
    ),
    Derived(
        "v_overshoot",
        "V",
        "channel",
        "ringing above the rail at turn-off, full current",
        (
            Way(
                overshoot,
                {
                    "i_leg_peak": I_LEG_PEAK,
                    "l_loop": L_LOOP,
                    "c_oss_swing": Input("c_oss_swing"),
                    "parallel": PARALLEL,
                    "t_edge": T_EDGE,
                    "c_snubber": C_SNUBBER,
                    "c_least": LEAST_C_OSS,
                },
                "smaller of i_leg_peak sqrt(l_loop / c) and 2 l_loop i_leg_peak / t_edge, "
                "c = parallel c_oss_swing but not below c_least, "
                "over 1 + 0.43 c_snubber / c",
                assumes=Assumption(
                    None,
                    "neutral",
                    derivation("undamped loop; measure the ringing"),
                    placeholder=True,
                ),
            ),
            Way(
                overshoot_of_ramp,
                {"i_leg_peak": I_LEG_PEAK, "l_loop": L_LOOP, "t_edge": T_EDGE},
                "2 l_loop i_leg_peak / t_edge",
                assumes=Assumption(
                    None,
                    "neutral",
                    derivation("undamped loop; measure the ringing"),
                    placeholder=True,
                ),
            ),
            Way(
                overshoot_share,
                {
                    "v_swing": V_SWING,
                    "share": Constant("25 %", "usual ringing over swing", COMMON_PRACTICE),
                },
                "share v_swing",
                assumes=Assumption(None, "neutral", COMMON_PRACTICE, placeholder=True),
            ),
        ),
        stated_at="output_stage.v_overshoot",
        agree=float("inf"),
        least_share=0.5,
        sources=(
            derivation("a ramp of current leaves L I / t at least, half of the undamped peak"),
            derivation("step and ramp of current into the loop and the open switch"),
            from_memory("20 to 30 % of the swing, rule of thumb"),
        ),
    ),
    Derived(
        "v_pin_overshoot",
        "V",
        "channel",
        "ringing above the rail at the pins of a part",
        (
            Way(
                as_stated,
                {"value": Input("output_stage.v_overshoot")},
                "value",
            ),
            Way(
                pin_overshoot,
                {
                    "i_leg_peak": I_LEG_PEAK,
                    "l_loop": L_LOOP,
                    "t_edge": T_EDGE,
                    "v_static_peak": Input("v_static_peak"),
                    "v_recommended": Input(f"{DEVICE}.v_supply:high"),
                },
                "l_loop i_leg_peak / t_edge, twice that where v_static_peak exceeds v_recommended",
                when={"output_stage.devices": "integrated"},
                assumes=Assumption(
                    None,
                    "neutral",
                    derivation("ramp of current into the loop; measure the ringing"),
                    placeholder=True,
                ),
            ),
            Way(
                overshoot_of_ramp,
                {"i_leg_peak": I_LEG_PEAK, "l_loop": L_LOOP, "t_edge": T_EDGE},
                "2 l_loop i_leg_peak / t_edge",
                assumes=Assumption(
                    None,
                    "neutral",
                    derivation("undamped loop; measure the ringing"),
                    placeholder=True,
                ),
            ),
        ),
        sources=(derivation("ramp of current into the loop from part to local capacitor"),),
    ),
    Derived(
        "v_static_peak",
        "V",
        "channel",
        "voltage across a leg without ringing",
        (
            Way(
                static_peak,
                {
                    "v_swing": V_SWING,
                    "v_rail_high": V_RAIL_HIGH,
                    "v_pumping": V_PUMPING,
                    "v_trip": V_TRIP,
                },
                "v_swing + smaller of v_pumping and v_trip - v_rail_high",
            ),
        ),
        sources=(derivation("one rail is pumped at a time; the trip stops pumping only"),),
    ),
    Derived(
        "v_node_peak",
        "V",
        "channel",
        "highest voltage across an open switch",
        (
            Way(
                node_peak,
                {"v_static_peak": Input("v_static_peak"), "v_overshoot": Input("v_overshoot")},
                "v_static_peak + v_overshoot",
            ),
        ),
        sources=(derivation("voltages in series across the open switch"),),
    ),
)
