"""Pairs of statements of which one bounds the other.

Each quantity here is a bound that follows from what the spec states, and names the leaves
that cannot lie beyond it.  A spec that states both, and the two cross, contradicts itself: the
finding is stated-value-contradicts.  Whoever adds a field that physics bounds adds its pair.
"""

from ...linter.check import COMMON_PRACTICE, Constant, Derived, Input, Scope, Stake, Way, derivation
from ..formulas.maths import smaller
from .stage import CARRIER, DEAD_TIME, depth_limit
from .ways import as_stated

DEVICE = "output_stage.device"
CLOCKED = ("natural-sampling", "uniform-sampling")
ONE_COIL = derivation("the modulus of a coil is not below its resistance; a quarter for networks")


def coil_at_most(z_rated: float, z_min: float, slack: float) -> float:
    """Coils have less direct-current resistance than impedance."""
    return smaller(z_rated, slack * z_min)


def impedance_at_most(z_rated: float, spread: float) -> float:
    """A rated impedance is named after the lowest one, not after the peak."""
    return spread * z_rated


def charge_at_least(c_oss: float, v_c_oss: float) -> float:
    """A capacitance that falls with voltage has taken more than its last value times voltage."""
    return c_oss * v_c_oss


def pair(
    name: str,
    unit: str,
    meaning: str,
    bound: Input,
    why: str,
    above: tuple[str, ...] = (),
    below: tuple[str, ...] = (),
    each: Scope = "channel",
    stake: Stake = "rating",
) -> Derived:
    """One stated value that bounds others as it stands."""
    return Derived(
        name,
        unit,
        each,
        meaning,
        (Way(as_stated, {"value": bound}, "value"),),
        bounds_from_above=above,
        bounds_from_below=below,
        bounds_stake=stake,
        sources=(derivation(why),),
    )


DERIVED: tuple[Derived, ...] = (
    pair(
        "r_ac_at_least",
        "ohm",
        "DC resistance of one inductor, the least that its winding has at any frequency",
        Input("dcr_stated"),
        "current crowds to the surface and never spreads beyond the whole section",
        below=("filter.inductor.r_ac",),
    ),
    Derived(
        "depth_possible",
        "1",
        "channel",
        "the depth at which the pulses become too short to pass",
        (
            Way(
                depth_limit,
                {"t_pulse_min": Input("t_pulse_min"), "carrier": CARRIER},
                "1 - 2 t_pulse_min carrier",
                when={"modulator.type": CLOCKED},
            ),
        ),
        bounds_from_above=("modulator.m_max",),
        sources=(derivation("duty (1 + m) / 2 leaves (1 - m) / 2 of a period"),),
    ),
    Derived(
        "r_e_at_most",
        "ohm",
        "channel",
        "the highest resistance of a coil with that impedance",
        (
            Way(
                coil_at_most,
                {
                    "z_rated": Input("loudspeaker.z_rated"),
                    "z_min": Input("loudspeaker.z_min"),
                    "slack": Constant("1.25", "a coil beside others in a network", ONE_COIL),
                },
                "smaller of z_rated and slack z_min",
            ),
            Way(
                as_stated,
                {"value": Input("loudspeaker.z_rated")},
                "value",
            ),
        ),
        bounds_from_above=("loudspeaker.r_e",),
        sources=(ONE_COIL,),
    ),
    Derived(
        "z_min_at_most",
        "ohm",
        "channel",
        "twice the rated impedance, which is named after the lowest one,",
        (
            Way(
                impedance_at_most,
                {
                    "z_rated": Input("loudspeaker.z_rated"),
                    "spread": Constant("2", "rated impedance named generously", COMMON_PRACTICE),
                },
                "spread z_rated",
            ),
        ),
        bounds_from_above=("loudspeaker.z_min",),
        bounds_by="practice",
        sources=(COMMON_PRACTICE,),
    ),
    pair(
        "linear_travel",
        "mm",
        "the linear travel",
        Input("loudspeaker.x_max"),
        "what the suspension survives is not less than what it follows",
        below=("loudspeaker.x_mech",),
    ),
    pair(
        "limiter_crest",
        "V",
        "the crest that the limiter lets through",
        Input("limiter.v_peak"),
        "no wave has more rms than peak",
        above=("limiter.v_rms",),
    ),
    pair(
        "supply_absolute",
        "V",
        "the absolute maximum of the part's supply",
        Input(f"{DEVICE}.v_supply_abs"),
        "no maker recommends what he forbids",
        above=(f"{DEVICE}.v_supply",),
    ),
    pair(
        "ambient_hottest",
        "degC",
        "the hottest air outside",
        Input("environment.ambient:high", meaning="hottest air round the product"),
        "heat flows from the parts to the air outside, and only that way",
        below=("thermal.heatsink.t", "thermal.t_air_inside"),
        each="product",
    ),
    pair(
        "pulse_possible",
        "s",
        "the dead time",
        DEAD_TIME,
        "in a pulse shorter than the dead time no switch turns on",
        below=("gate_drive.t_pulse_min",),
    ),
    Derived(
        "q_oss_least",
        "C",
        "channel",
        "c_oss times v_c_oss, which the charge up to there exceeds",
        (
            Way(
                charge_at_least,
                {"c_oss": Input(f"{DEVICE}.c_oss"), "v_c_oss": Input(f"{DEVICE}.v_c_oss")},
                "c_oss v_c_oss",
            ),
        ),
        bounds_from_below=(f"{DEVICE}.q_oss",),
        bounds_by="practice",
        sources=(derivation("the output capacitance falls with voltage; q is its integral"),),
    ),
    pair(
        "v_c_oss_possible",
        "V",
        "the rated voltage of the switch",
        Input(f"{DEVICE}.v_dss"),
        "no maker measures a switch beyond its rated voltage",
        above=(f"{DEVICE}.v_c_oss",),
    ),
    pair(
        "gate_drain_charge",
        "C",
        "the gate-drain charge",
        Input(f"{DEVICE}.q_gd"),
        "the switching charge is that of the plateau and what comes before it",
        below=(f"{DEVICE}.q_sw",),
    ),
    pair(
        "gate_charge_whole",
        "C",
        "the whole gate charge",
        Input(f"{DEVICE}.q_g"),
        "a part of the charge is not more than all of it",
        above=(f"{DEVICE}.q_gd", f"{DEVICE}.q_sw", f"{DEVICE}.q_g_th"),
    ),
    pair(
        "plateau_stated",
        "V",
        "the plateau of the gate",
        Input(f"{DEVICE}.v_gs_pl"),
        "no channel carries the working current below its threshold",
        above=(f"{DEVICE}.v_gs_th",),
    ),
    pair(
        "rail_of_rating",
        "V",
        "the highest voltage of the rail, for power that is promised at one voltage",
        Input("v_rail_high"),
        "no power is promised at a voltage that never comes",
        above=("claims.rated_supply",),
        each="product",
    ),
    pair(
        "rail_reached",
        "V",
        "the highest voltage of the rail",
        Input("v_rail_high"),
        "an amplifier that stops above its own rail never starts",
        above=("protection.under_voltage.v_trip",),
        each="product",
    ),
    pair(
        "source_reached",
        "V",
        "the highest voltage of the source",
        Input("v_source_high"),
        "a converter that stops above its own source never starts",
        above=("supply.v_lockout",),
        each="product",
    ),
)
