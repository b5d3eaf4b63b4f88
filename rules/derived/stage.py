"""Operating point of the output stage: swing, depth, pulses, peak currents, trip."""

from ...linter.check import COMMON_PRACTICE, Assumption, Constant, Derived, Input, Way, derivation
from ..formulas.maths import clip, larger

CIRCUIT = derivation("follows from the circuit by Ohm's law")


def one_leg() -> float:
    """Legs of a half-bridge."""
    return 1.0


def two_legs() -> float:
    """Legs of a full bridge."""
    return 2.0


def swing_single(v_rail_high: float) -> float:
    """A leg between one rail and ground swings that rail."""
    return v_rail_high


def swing_split(v_rail_high: float) -> float:
    """A leg between two rails swings both."""
    return 2 * v_rail_high


def ideal_peak(n_legs: float, v_swing: float) -> float:
    """Largest peak at the load: half the swing from one leg, all of it from a bridge."""
    return n_legs * v_swing / 2


def sine_peak_current(rated_power: float, z_load: float) -> float:
    """Peak current of a sine of a given power."""
    return (2 * rated_power / z_load) ** 0.5


def modulation_depth(rated_power: float, z_load: float, v_ideal: float) -> float:
    """Peak voltage of the rated sine over the largest that the rails allow."""
    return (2 * rated_power * z_load) ** 0.5 / v_ideal


def shortest_pulse(
    dead_time: float, t_edge: float, r: float, q_g: float, v_drv: float, droop: float
) -> float:
    """Shortest pulse: dead time and edge, or the refill of the bootstrap capacitor.

    In steady state the refill path loses q_g r / t; the pulse is long enough when that
    stays within a share ``droop`` of the gate supply.
    """
    return larger(dead_time + t_edge, q_g * r / (droop * v_drv))


def dead_time_alone(dead_time: float) -> float:
    """Shortest pulse where only the dead time is known."""
    return dead_time


def depth_limit(t_pulse_min: float, carrier: float) -> float:
    """Depth at which the pulses become as short as the shortest that pass.

    At least a thousandth: what divides by it then shows that no depth is left.
    """
    return clip(1 - 2 * t_pulse_min * carrier, 1e-3, 1.0)


def full_depth() -> float:
    """No limit of the depth."""
    return 1.0


DEVICE = "output_stage.device"
V_SWING = Input("v_swing")
V_RAIL_HIGH = Input("v_rail_high")
T_EDGE = Input("t_edge")
DEAD_TIME = Input("gate_drive.dead_time")
CARRIER = Input("modulator.carrier")


BASICS: tuple[Derived, ...] = (
    Derived(
        "n_legs",
        "1",
        "channel",
        "legs of one channel",
        (
            Way(one_leg, {}, "1", when={"output_stage.topology": "half-bridge"}),
            Way(two_legs, {}, "2", when={"output_stage.topology": "full-bridge"}),
        ),
        sources=(CIRCUIT,),
    ),
    Derived(
        "v_swing",
        "V",
        "channel",
        "swing of one switch node",
        (
            Way(
                swing_single,
                {"v_rail_high": V_RAIL_HIGH},
                "v_rail_high",
                when={"supply.rails": "single"},
            ),
            Way(
                swing_split,
                {"v_rail_high": V_RAIL_HIGH},
                "2 v_rail_high",
                when={"supply.rails": "split"},
            ),
        ),
        sources=(CIRCUIT,),
    ),
    Derived(
        "v_ideal",
        "V",
        "channel",
        "largest peak that the rails allow at the load",
        (
            Way(
                ideal_peak,
                {"n_legs": Input("n_legs"), "v_swing": V_SWING},
                "n_legs v_swing / 2",
            ),
        ),
        sources=(CIRCUIT,),
    ),
    Derived(
        "i_rated_peak",
        "A",
        "channel",
        "peak load current at rated power",
        (
            Way(
                sine_peak_current,
                {"rated_power": Input("rated_power"), "z_load": Input("z_load")},
                "sqrt(2 rated_power / z_load)",
            ),
        ),
        sources=(CIRCUIT,),
    ),
    Derived(
        "depth_rated",
        "1",
        "channel",
        "modulation depth at rated power",
        (
            Way(
                modulation_depth,
                {
                    "rated_power": Input("rated_power"),
                    "z_load": Input("z_load"),
                    "v_ideal": Input("v_ideal"),
                },
                "sqrt(2 rated_power z_load) / v_ideal",
            ),
        ),
        sources=(CIRCUIT,),
    ),
)


PULSES: tuple[Derived, ...] = (
    Derived(
        "t_pulse_min",
        "s",
        "channel",
        "shortest pulse that modulator and driver pass",
        (
            Way(
                shortest_pulse,
                {
                    "dead_time": DEAD_TIME,
                    "t_edge": T_EDGE,
                    "r": Input(
                        "gate_drive.bootstrap.r",
                        default=Assumption("0 ohm", "favourable", COMMON_PRACTICE),
                    ),
                    "q_g": Input(
                        f"{DEVICE}.q_g", default=Assumption("0 C", "favourable", COMMON_PRACTICE)
                    ),
                    "v_drv": Input("gate_drive.v_drv"),
                    "droop": Constant(
                        "10 %", "loss of gate supply allowed in the refill path", COMMON_PRACTICE
                    ),
                },
                "larger of dead_time + t_edge and q_g r / (droop v_drv)",
                when={"output_stage.devices": "discrete"},
            ),
            Way(
                dead_time_alone,
                {"dead_time": DEAD_TIME},
                "dead_time",
                when={"output_stage.devices": "discrete"},
                assumes=Assumption(
                    None, "favourable", derivation("a pulse cannot be shorter than the dead time")
                ),
            ),
        ),
        stated_at="gate_drive.t_pulse_min",
        agree=float("inf"),
        sources=(derivation("charge balance of the bootstrap capacitor; dead time and edge"),),
    ),
    Derived(
        "m_max",
        "1",
        "channel",
        "largest modulation depth let through",
        (
            Way(
                full_depth,
                {},
                "1",
                when={"modulator.type": "self-oscillating"},
                assumes=Assumption(
                    None,
                    "favourable",
                    derivation("a self-oscillating loop slows down to nothing at full depth"),
                ),
            ),
            Way(
                depth_limit,
                {"t_pulse_min": Input("t_pulse_min"), "carrier": CARRIER},
                "1 - 2 t_pulse_min carrier",
            ),
            Way(
                full_depth,
                {},
                "1",
                assumes=Assumption(
                    None,
                    "favourable",
                    derivation("the depth cannot exceed 1; the shortest pulse is not known"),
                ),
            ),
        ),
        stated_at="modulator.m_max",
        agree=float("inf"),
        sources=(derivation("duty (1 + m) / 2 leaves (1 - m) / 2 of a period"),),
    ),
)


DERIVED: tuple[Derived, ...] = BASICS + PULSES
