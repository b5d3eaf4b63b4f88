"""Pairs of statements of which one bounds the other.

Each quantity here is a bound that follows from what the spec states, and names the leaves
that cannot lie beyond it.  A spec that states both, and the two cross, contradicts itself: the
finding is stated-value-contradicts.  Whoever adds a field that physics bounds adds its pair.
"""

from ...linter.check import COMMON_PRACTICE, Constant, Derived, Input, Scope, Way, derivation
from ..formulas.maths import smaller
from ..formulas.pack import CELL_DATA
from .pack import LITHIUM, charge_over
from .rated import NO_LOSS
from .stage import CARRIER, DEAD_TIME, depth_limit
from .ways import as_stated

DEVICE = "output_stage.device"
CLOCKED = ("natural-sampling", "uniform-sampling")
CELL = "battery.cell"
CAPACITY = Input(f"{CELL}.capacity")
WITHIN = derivation("beyond half of its voltage lost inside, more current gives less power")
ONE_COIL = derivation("the modulus of a coil is not below its resistance; a quarter for networks")


def coil_at_most(z_rated: float, z_min: float, slack: float) -> float:
    """Coils have less direct-current resistance than impedance."""
    return smaller(z_rated, slack * z_min)


def impedance_at_most(z_rated: float, spread: float) -> float:
    """A rated impedance is named after the lowest one, not after the peak."""
    return spread * z_rated


def current_within(v_nominal: float, share: float, r_internal: float) -> float:
    """The current at which a cell loses a share of its voltage inside."""
    return share * v_nominal / r_internal


def efficiency_within(
    z_load: float, n_legs: float, r_ds_on: float, parallel: float, dcr: float, r_series: float
) -> float:
    """A divider of the load and the resistances that no design avoids, cold."""
    return z_load / (z_load + n_legs * (r_ds_on / parallel + dcr) + r_series)


def _fastest_charge(chemistry: tuple[str, ...], time: str) -> Way:
    """A whole capacity in the shortest time in which such cells are charged."""
    by = Constant(time, "charge of the fastest cells of the kind", CELL_DATA)
    return Way(
        charge_over,
        {"charge": CAPACITY, "by": by},
        "charge / by",
        when={"battery.chemistry": chemistry},
    )


def _pair(
    name: str,
    unit: str,
    meaning: str,
    bound: Input,
    why: str,
    above: tuple[str, ...] = (),
    below: tuple[str, ...] = (),
    each: Scope = "channel",
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
        sources=(derivation(why),),
    )


DERIVED: tuple[Derived, ...] = (
    _pair(
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
        sources=(COMMON_PRACTICE,),
    ),
    _pair(
        "linear_travel",
        "mm",
        "the linear travel",
        Input("loudspeaker.x_max"),
        "what the suspension survives is not less than what it follows",
        below=("loudspeaker.x_mech",),
    ),
    _pair(
        "limiter_crest",
        "V",
        "the crest that the limiter lets through",
        Input("limiter.v_peak"),
        "no wave has more rms than peak",
        above=("limiter.v_rms",),
    ),
    _pair(
        "supply_absolute",
        "V",
        "the absolute maximum of the part's supply",
        Input(f"{DEVICE}.v_supply_abs"),
        "no maker recommends what he forbids",
        above=(f"{DEVICE}.v_supply",),
    ),
    _pair(
        "ambient_hottest",
        "degC",
        "the hottest air outside",
        Input("environment.ambient:high", meaning="hottest air round the product"),
        "heat flows from the parts to the air outside, and only that way",
        below=("thermal.heatsink.t", "thermal.t_air_inside"),
        each="product",
    ),
    _pair(
        "pulse_possible",
        "s",
        "the dead time",
        DEAD_TIME,
        "in a pulse shorter than the dead time no switch turns on",
        below=("gate_drive.t_pulse_min",),
    ),
    _pair(
        "gate_charge_whole",
        "C",
        "the whole gate charge",
        Input(f"{DEVICE}.q_g"),
        "a part of the charge is not more than all of it",
        above=(f"{DEVICE}.q_gd", f"{DEVICE}.q_sw", f"{DEVICE}.q_g_th"),
    ),
    _pair(
        "plateau_stated",
        "V",
        "the plateau of the gate",
        Input(f"{DEVICE}.v_gs_pl"),
        "no channel carries the working current below its threshold",
        above=(f"{DEVICE}.v_gs_th",),
    ),
    Derived(
        "cell_current_possible",
        "A",
        "product",
        "the current at which a cell loses half of its voltage inside",
        (
            Way(
                current_within,
                {
                    "v_nominal": Input("v_cell_most"),
                    "share": Constant("0.5", "most power out of a source", WITHIN),
                    "r_internal": Input(f"{CELL}.r_internal"),
                },
                "share v_nominal / r_internal",
            ),
        ),
        bounds_from_above=(f"{CELL}.i_cont",),
        sources=(WITHIN,),
    ),
    Derived(
        "cell_charge_possible",
        "A",
        "product",
        "the charge current of the fastest cells of its kind",
        (
            _fastest_charge((*LITHIUM, "nimh"), "15 min"),
            _fastest_charge(("lead-acid-agm", "lead-acid-flooded"), "20 min"),
        ),
        bounds_from_above=(f"{CELL}.i_charge",),
        sources=(CELL_DATA,),
    ),
    _pair(
        "cell_full",
        "V",
        "the end of charge of the cell",
        Input(f"{CELL}.v_charge"),
        "a cell at rest, or on the mean of its discharge, is not above its end of charge",
        above=(f"{CELL}.v_nominal", f"{CELL}.v_oc_low"),
        each="product",
    ),
    _pair(
        "rail_reached",
        "V",
        "the highest voltage of the rail",
        Input("v_rail_high"),
        "an amplifier that stops above its own rail never starts",
        above=("protection.under_voltage.v_trip",),
        each="product",
    ),
    _pair(
        "source_reached",
        "V",
        "the highest voltage of the source",
        Input("v_source_high"),
        "a converter that stops above its own source never starts",
        above=("supply.v_lockout",),
        each="product",
    ),
    Derived(
        "efficiency_possible",
        "1",
        "channel",
        "the most that the resistances stated leave, cold",
        (
            Way(
                efficiency_within,
                {
                    "z_load": Input("z_load"),
                    "n_legs": Input("n_legs"),
                    "r_ds_on": Input(f"{DEVICE}.r_ds_on"),
                    "parallel": Input("output_stage.parallel"),
                    "dcr": Input("filter.inductor.dcr", default=NO_LOSS),
                    "r_series": Input("output_stage.r_series", default=NO_LOSS),
                },
                "z_load / (z_load + n_legs (r_ds_on/parallel + dcr) + r_series)",
            ),
        ),
        bounds_from_above=("output_stage.efficiency",),
        sources=(derivation("divider of load and path"),),
    ),
)
