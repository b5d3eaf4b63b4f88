"""Operating point of the output stage: swing, depth, peak currents, node voltage, trip."""

from typing import Any

from ...linter.check import (
    COMMON_PRACTICE,
    Assumption,
    Constant,
    Derived,
    Input,
    Source,
    Way,
    derivation,
    from_memory,
)
from ..formulas.losses import hot_ratio, output_charge, output_charge_from_capacitance
from ..formulas.maths import clip, larger, smaller
from ..formulas.ringing import current_overshoot, snubber_share

CIRCUIT = derivation("follows from the circuit by Ohm's law")
NO_LIMITER = Assumption(float("inf"), "absent", derivation("without a limiter nothing holds the level"))
NO_TRIP = Assumption(float("inf"), "absent", derivation("without a trip nothing stops the rise"))
NO_SNUBBER = Assumption("0 F", "absent", derivation("without a snubber its capacitance is nil"))
UNKNOWN_RIPPLE = Assumption(
    "0 A", "floor", derivation("the current without its ripple is a lower bound")
)
UNKNOWN_PUMPING = Assumption(
    "0 V", "favourable", derivation("a rail that is not pumped stays where it is")
)


def one_leg() -> Any:
    """Legs of a half-bridge."""
    return 1.0


def two_legs() -> Any:
    """Legs of a full bridge."""
    return 2.0


def swing_single(v_rail_high: Any) -> Any:
    """A leg between one rail and ground swings that rail."""
    return v_rail_high


def swing_split(v_rail_high: Any) -> Any:
    """A leg between two rails swings both."""
    return 2 * v_rail_high


def ideal_peak(n_legs: Any, v_swing: Any) -> Any:
    """Largest peak at the load: half the swing from one leg, all of it from a bridge."""
    return n_legs * v_swing / 2


def sine_peak_current(rated_power: Any, z_load: Any) -> Any:
    """Peak current of a sine of a given power."""
    return (2 * rated_power / z_load) ** 0.5


def modulation_depth(rated_power: Any, z_load: Any, v_ideal: Any) -> Any:
    """Peak voltage of the rated sine over the largest that the rails allow."""
    return (2 * rated_power * z_load) ** 0.5 / v_ideal


def clipped_peak(m_max: Any, v_ideal: Any, v_peak: Any, z_load_min: Any) -> Any:
    """Largest load current: what modulator and limiter let through, into the lowest load."""
    return smaller(m_max * v_ideal, v_peak) / z_load_min


def crest_with_ripple(
    i_peak: Any, v_ideal: Any, z_load_min: Any, ripple_idle: Any, modulator: str
) -> Any:
    """Largest inductor and switch current: load current m a and half the ripple on it.

    A clocked carrier's ripple falls as 1 - m^2, so the sum is largest at the top of the
    modulation or, where the ripple exceeds the load current, inside.  A self-oscillating
    loop keeps its ripple at every depth.
    """
    full, half = v_ideal / z_load_min, ripple_idle / 2
    if modulator == "self-oscillating":
        return i_peak + half
    m = smaller(i_peak / full, full / larger(2 * half, full * 1e-6))
    return m * full + half * (1 - m * m)


def overshoot(
    i_leg_peak: Any,
    l_loop: Any,
    q_oss_swing: Any,
    v_swing: Any,
    parallel: Any,
    t_edge: Any,
    c_snubber: Any,
    c_least: Any,
) -> Any:
    """Estimated ringing above the rail, from loop inductance and output charge."""
    c = larger(parallel * q_oss_swing / v_swing, c_least)
    return current_overshoot(i_leg_peak, l_loop, c, t_edge) * snubber_share(c_snubber, c)


def overshoot_of_ramp(i_leg_peak: Any, l_loop: Any, t_edge: Any) -> Any:
    """Upper bound of the ringing where only the loop and the edge are known."""
    return 2 * l_loop * i_leg_peak / t_edge


def overshoot_share(v_swing: Any, share: Any) -> Any:
    """Ringing as a usual share of the swing."""
    return v_swing * share


def static_peak(v_swing: Any, v_rail_high: Any, v_pumping: Any, v_trip: Any) -> Any:
    """Highest voltage across a leg without ringing: swing and pumping of one rail.

    The trip stops pumping, it does not lower a source that lies above it.
    """
    return v_swing + smaller(v_pumping, larger(v_trip, v_rail_high) - v_rail_high)


def node_peak(v_static_peak: Any, v_overshoot: Any) -> Any:
    """Highest voltage across an open switch: leg voltage and ringing."""
    return v_static_peak + v_overshoot


def shortest_pulse(dead_time: Any, t_edge: Any, r: Any, q_g: Any, v_drv: Any, droop: Any) -> Any:
    """Shortest pulse: dead time and edge, or the refill of the bootstrap capacitor.

    In steady state the refill path loses q_g r / t; the pulse is long enough when that
    stays within a share ``droop`` of the gate supply.
    """
    return larger(dead_time + t_edge, q_g * r / (droop * v_drv))


def dead_time_alone(dead_time: Any) -> Any:
    """Shortest pulse where only the dead time is known."""
    return dead_time


def depth_limit(t_pulse_min: Any, carrier: Any) -> Any:
    """Depth at which the pulses become as short as the shortest that pass."""
    return clip(1 - 2 * t_pulse_min * carrier, 0.0, 1.0)


def full_depth() -> Any:
    """No limit of the depth."""
    return 1.0


def trip_hot(i_trip: Any, t: Any, hot_factor: Any, t_cold: Any, t_span: Any) -> Any:
    """A trip that senses the switch's own resistance falls as that rises."""
    return i_trip / hot_ratio(t, hot_factor, t_cold, t_span)


def as_stated(v_overshoot: Any) -> Any:
    """Ringing that the spec states."""
    return v_overshoot


def trip_as_printed(i_trip: Any) -> Any:
    """A trip that does not depend on the switch."""
    return i_trip


DEVICE = "output_stage.device"
T_COLD = Constant("298.15 K", "25 degC, for which resistance is printed", CIRCUIT)
T_SPAN = Constant("125 K", "from 25 degC to 150 degC, where the hot factor is printed", CIRCUIT)

V_SWING = Input("v_swing", "V", "swing of one switch node")
V_RAIL_HIGH = Input("v_rail_high", "V", "highest voltage of one rail")
V_PUMPING = Input(
    "v_pumping", "V", "rise of one rail by pumping", default=UNKNOWN_PUMPING
)
V_TRIP = Input(
    "protection.over_voltage.v_trip", "V", "over-voltage trip of a rail", default=NO_TRIP
)
I_LEG_PEAK = Input("i_leg_peak", "A", "largest current of a leg")
T_EDGE = Input("t_edge", "s", "edge of the switch node, 10 to 90 %")
L_LOOP = Input("output_stage.l_loop", "H", "power loop of one leg")
PARALLEL = Input("output_stage.parallel", "1", "devices in parallel as one switch")
C_SNUBBER = Input(
    "output_stage.snubber.c", "F", "snubber capacitor of the leg", default=NO_SNUBBER
)
DEAD_TIME = Input("gate_drive.dead_time", "s", "from off-command to the other's on-command")
CARRIER = Input("modulator.carrier", "Hz", "switching frequency of a leg")
I_TRIP = Input("output_stage.over_current.i_trip", "A", "load-current peak that trips")
HOT_FACTOR = Input(f"{DEVICE}.r_ds_on_hot_factor", "1", "on-resistance at 150 degC over 25 degC")

BASICS: tuple[Derived, ...] = (
    Derived(
        "n_legs", "1", "channel", "legs of one channel",
        (
            Way(one_leg, {}, "1", when={"output_stage.topology": "half-bridge"}),
            Way(two_legs, {}, "2", when={"output_stage.topology": "full-bridge"}),
        ),
        sources=(CIRCUIT,),
    ),
    Derived(
        "v_swing", "V", "channel", "swing of one switch node",
        (
            Way(swing_single, {"v_rail_high": V_RAIL_HIGH}, "v_rail_high",
                when={"supply.rails": "single"}),
            Way(swing_split, {"v_rail_high": V_RAIL_HIGH}, "2 v_rail_high",
                when={"supply.rails": "split"}),
        ),
        sources=(CIRCUIT,),
    ),
    Derived(
        "v_ideal", "V", "channel", "largest peak that the rails allow at the load",
        (Way(ideal_peak, {"n_legs": Input("n_legs", "1", "legs of the channel"),
                          "v_swing": V_SWING}, "n_legs v_swing / 2"),),
        sources=(CIRCUIT,),
    ),
    Derived(
        "i_rated_peak", "A", "channel", "peak load current at rated power",
        (Way(sine_peak_current,
             {"rated_power": Input("rated_power", "W", "rated sine power"),
              "z_load": Input("z_load", "ohm", "rated load")},
             "sqrt(2 rated_power / z_load)"),),
        sources=(CIRCUIT,),
    ),
    Derived(
        "depth_rated", "1", "channel", "modulation depth at rated power",
        (Way(modulation_depth,
             {"rated_power": Input("rated_power", "W", "rated sine power"),
              "z_load": Input("z_load", "ohm", "rated load"),
              "v_ideal": Input("v_ideal", "V", "largest peak that the rails allow")},
             "sqrt(2 rated_power z_load) / v_ideal"),),
        sources=(CIRCUIT,),
    ),
)

PULSES: tuple[Derived, ...] = (
    Derived(
        "t_pulse_min", "s", "channel", "shortest pulse that modulator and driver pass",
        (
            Way(shortest_pulse,
                {"dead_time": DEAD_TIME, "t_edge": T_EDGE,
                 "r": Input("gate_drive.bootstrap.r", "ohm", "refill path", default=Assumption(
                     "0 ohm", "favourable", COMMON_PRACTICE)),
                 "q_g": Input(f"{DEVICE}.q_g", "C", "gate charge", default=Assumption(
                     "0 C", "favourable", COMMON_PRACTICE)),
                 "v_drv": Input("gate_drive.v_drv", "V", "gate supply"),
                 "droop": Constant("10 %", "loss of gate supply allowed in the refill path",
                                   COMMON_PRACTICE)},
                "larger of dead_time + t_edge and q_g r / (droop v_drv)",
                when={"output_stage.devices": "discrete"}),
            Way(dead_time_alone, {"dead_time": DEAD_TIME}, "dead_time",
                when={"output_stage.devices": "discrete"},
                assumes=Assumption(None, "favourable", derivation(
                    "a pulse cannot be shorter than the dead time"))),
        ),
        stated_at="gate_drive.t_pulse_min", agree=float("inf"),
        sources=(derivation("charge balance of the bootstrap capacitor; dead time and edge"),),
    ),
    Derived(
        "m_max", "1", "channel", "largest modulation depth let through",
        (
            Way(full_depth, {}, "1", when={"modulator.type": "self-oscillating"},
                assumes=Assumption(None, "neutral", derivation(
                    "a self-oscillating loop slows down to nothing at full depth"))),
            Way(depth_limit,
                {"t_pulse_min": Input("t_pulse_min", "s", "shortest pulse"), "carrier": CARRIER},
                "1 - 2 t_pulse_min carrier"),
            Way(full_depth, {}, "1", assumes=Assumption(None, "neutral", derivation(
                "the depth cannot exceed 1; the shortest pulse is not known"))),
        ),
        stated_at="modulator.m_max", agree=float("inf"),
        sources=(derivation("duty (1 + m) / 2 leaves (1 - m) / 2 of a period"),),
    ),
)

CURRENTS: tuple[Derived, ...] = (
    Derived(
        "i_peak", "A", "channel", "largest load current, clipped into the lowest load",
        (Way(clipped_peak,
             {"m_max": Input("m_max", "1", "largest modulation depth"),
              "v_ideal": Input("v_ideal", "V", "largest peak that the rails allow"),
              "v_peak": Input("limiter.v_peak", "V", "level limiter, peak", default=NO_LIMITER),
              "z_load_min": Input("z_load_min", "ohm", "lowest load impedance")},
             "smaller of m_max v_ideal and v_peak, over z_load_min"),),
        sources=(CIRCUIT,),
    ),
    Derived(
        "i_leg_peak", "A", "channel", "largest current of a leg, ripple included",
        (Way(crest_with_ripple,
             {"i_peak": Input("i_peak", "A", "largest load current"),
              "v_ideal": Input("v_ideal", "V", "largest peak that the rails allow"),
              "z_load_min": Input("z_load_min", "ohm", "lowest load impedance"),
              "ripple_idle": Input("ripple_idle", "A", "inductor ripple without signal, peak "
                                   "to peak", default=UNKNOWN_RIPPLE),
              "modulator": Input("modulator.type", "word", "kind of modulator")},
             "largest of m v_ideal / z_load_min + ripple_idle (1 - m^2) / 2 up to "
             "m = i_peak z_load_min / v_ideal; self-oscillating modulator: "
             "i_peak + ripple_idle / 2"),),
        sources=(CIRCUIT,),
    ),
    Derived(
        "i_trip_hot", "A", "channel", "lowest load-current peak that trips",
        (
            Way(trip_hot,
                {"i_trip": I_TRIP, "t": Input("t_junction_rated", "degC", "junction, rated power"),
                 "hot_factor": HOT_FACTOR, "t_cold": T_COLD, "t_span": T_SPAN},
                "i_trip / (1 + (hot_factor - 1) (t - t_cold) / t_span)",
                when={"output_stage.over_current.sensing": "r-ds-on"}),
            Way(trip_hot,
                {"i_trip": I_TRIP,
                 "t": Constant("373.15 K", "usual junction temperature at work", COMMON_PRACTICE),
                 "hot_factor": HOT_FACTOR, "t_cold": T_COLD, "t_span": T_SPAN},
                "i_trip / (1 + (hot_factor - 1) (t - t_cold) / t_span)",
                when={"output_stage.over_current.sensing": "r-ds-on"},
                assumes=Assumption(None, "neutral", COMMON_PRACTICE)),
            Way(trip_as_printed, {"i_trip": I_TRIP}, "i_trip",
                when={"output_stage.over_current.sensing": ("shunt", "internal")}),
            Way(trip_as_printed, {"i_trip": I_TRIP}, "i_trip",
                assumes=Assumption(None, "favourable", derivation(
                    "a shunt does not change with the temperature of the switch"))),
        ),
        sources=(Source("IRAUDAMP7D reference design", "p. 24"),),
    ),
)

NODE: tuple[Derived, ...] = (
    Derived(
        "q_oss_swing", "C", "channel", "output charge of one device at the full swing",
        (
            Way(output_charge,
                {"q_oss": Input(f"{DEVICE}.q_oss", "C", "output charge"),
                 "v_data": Input(f"{DEVICE}.v_c_oss", "V", "drain voltage behind it"),
                 "v_swing": V_SWING},
                "q_oss sqrt(v_swing / v_data)"),
            Way(output_charge_from_capacitance,
                {"c_oss": Input(f"{DEVICE}.c_oss", "F", "output capacitance"),
                 "v_data": Input(f"{DEVICE}.v_c_oss", "V", "drain voltage behind it"),
                 "v_swing": V_SWING},
                "2 c_oss sqrt(v_data v_swing)"),
        ),
        sources=(derivation("integral of a junction capacitance falling as the square root"),),
    ),
    Derived(
        "v_overshoot", "V", "channel", "ringing above the rail at turn-off, full current",
        (
            Way(overshoot,
                {"i_leg_peak": I_LEG_PEAK, "l_loop": L_LOOP,
                 "q_oss_swing": Input("q_oss_swing", "C", "output charge at the swing"),
                 "v_swing": V_SWING, "parallel": PARALLEL, "t_edge": T_EDGE,
                 "c_snubber": C_SNUBBER,
                 "c_least": Constant("20 pF", "least output capacitance", COMMON_PRACTICE)},
                "smaller of i_leg_peak sqrt(l_loop / c) and 2 l_loop i_leg_peak / t_edge, "
                "c = parallel q_oss_swing / v_swing but not below c_least, over 1 + 0.43 c_snubber / c",
                assumes=Assumption(None, "neutral", derivation(
                    "undamped loop; measure the ringing"), placeholder=True)),
            Way(overshoot_of_ramp, {"i_leg_peak": I_LEG_PEAK, "l_loop": L_LOOP, "t_edge": T_EDGE},
                "2 l_loop i_leg_peak / t_edge",
                assumes=Assumption(None, "neutral", derivation(
                    "undamped loop; measure the ringing"), placeholder=True)),
            Way(overshoot_share,
                {"v_swing": V_SWING,
                 "share": Constant("25 %", "usual ringing over swing", COMMON_PRACTICE)},
                "share v_swing",
                assumes=Assumption(None, "neutral", COMMON_PRACTICE, placeholder=True)),
        ),
        stated_at="output_stage.v_overshoot", agree=float("inf"),
        sources=(derivation("step and ramp of current into the loop and the open switch"),
                 from_memory("20 to 30 % of the swing, rule of thumb")),
    ),
    Derived(
        "v_pin_overshoot", "V", "channel", "ringing above the rail at the pins of a part",
        (
            Way(as_stated,
                {"v_overshoot": Input("output_stage.v_overshoot", "V", "stated ringing")},
                "v_overshoot"),
            Way(overshoot_of_ramp, {"i_leg_peak": I_LEG_PEAK, "l_loop": L_LOOP, "t_edge": T_EDGE},
                "2 l_loop i_leg_peak / t_edge",
                assumes=Assumption(None, "neutral", derivation(
                    "undamped loop; measure the ringing"), placeholder=True)),
        ),
        sources=(derivation("ramp of current into the loop from part to local capacitor"),),
    ),
    Derived(
        "v_static_peak", "V", "channel", "voltage across a leg without ringing",
        (Way(static_peak,
             {"v_swing": V_SWING, "v_rail_high": V_RAIL_HIGH, "v_pumping": V_PUMPING,
              "v_trip": V_TRIP},
             "v_swing + smaller of v_pumping and v_trip - v_rail_high"),),
        sources=(derivation("one rail is pumped at a time; the trip stops pumping only"),),
    ),
    Derived(
        "v_node_peak", "V", "channel", "highest voltage across an open switch",
        (Way(node_peak,
             {"v_static_peak": Input("v_static_peak", "V", "voltage across the leg"),
              "v_overshoot": Input("v_overshoot", "V", "ringing above the rail")},
             "v_static_peak + v_overshoot"),),
        sources=(derivation("voltages in series across the open switch"),),
    ),
)

DERIVED: tuple[Derived, ...] = BASICS + PULSES + CURRENTS + NODE
