"""What no part can be: bounds on statements about heatsinks, packages, switches and cores."""

from ...linter.check import (
    COMMON_PRACTICE,
    Assumption,
    Constant,
    Derived,
    Input,
    Scope,
    Source,
    Way,
    derivation,
    from_memory,
)
from .bounds import DEVICE
from .ways import as_stated

INDUCTOR = "filter.inductor"
HEATED = derivation("silicon, gallium nitride and silicon carbide conduct worse when hot")
IN_A_PLANE = derivation(
    "a source of 10 mm on a test board of 76 mm by 114 mm with 0.21 mm of copper, 24 W/(m2 K)"
    " from both faces: 4.8 K/W of area and 3.1 K/W of spreading"
)
STILL_AIR = Source("largest heatsinks without a fan, common practice", kind="common practice")
FANNED = Source(
    "fins in the fastest air of small fans, common practice, no source", kind="common practice"
)
LEG = derivation("a leg has an upper and a lower switch, and both lie in the part")
FLUX = from_memory("data sheets of magnetic materials", "saturation at 25 degC")
HALF_GONE = Assumption(
    "50 %", "favourable", derivation("the less inductance is left, the less flux there is")
)


def current_at_flux(
    flux_density: float, turns: float, a_e: float, inductance: float, drop: float
) -> float:
    """Current at which a core saturates; on the way the inductance falls by ``drop``."""
    return flux_density * turns * a_e / (inductance * (1 - drop / 2))


def share_of(share: float, r_th_sa: float) -> float:
    """A share of a thermal resistance."""
    return share * r_th_sa


def _at_flux(core: str, flux_density: str) -> Way:
    return Way(
        current_at_flux,
        {
            "flux_density": Constant(flux_density, f"saturation: {core or 'any core'}", FLUX),
            "turns": Input(f"{INDUCTOR}.turns"),
            "a_e": Input(f"{INDUCTOR}.a_e"),
            "inductance": Input(f"{INDUCTOR}.l:nominal"),
            "drop": Input(f"{INDUCTOR}.i_sat_drop", default=HALF_GONE),
        },
        "flux_density turns a_e / (inductance (1 - drop / 2))",
        when={f"{INDUCTOR}.core": core} if core else {},
    )


def _least(
    name: str, unit: str, meaning: str, least: str, why: Source, below: tuple[str, ...], each: Scope
) -> Derived:
    """A number that no design falls below."""
    return Derived(
        name,
        unit,
        each,
        meaning,
        (Way(as_stated, {"value": Constant(least, meaning, why)}, "value"),),
        bounds_from_below=below,
        bounds_by="practice" if why.kind == "common practice" else "physics",
        sources=(why,),
    )


def _most(
    name: str, unit: str, meaning: str, way: Way, above: tuple[str, ...], each: Scope
) -> Derived:
    """What no part of its kind exceeds, by common practice."""
    return Derived(
        name,
        unit,
        each,
        meaning,
        (way,),
        bounds_from_above=above,
        bounds_by="practice",
        sources=(COMMON_PRACTICE,),
    )


def _value(most: str, meaning: str) -> Way:
    return Way(as_stated, {"value": Constant(most, meaning, COMMON_PRACTICE)}, "value")


def slowest_melting(i_rated: float, slowest: float) -> float:
    """Melting integral of the slowest fuse of a rating."""
    return slowest * i_rated**2


def current_of_rise(rise: float, r_th: float, dcr: float) -> float:
    """Current that warms a winding by a rise through a thermal resistance."""
    return (rise / (r_th * dcr)) ** 0.5


DERIVED: tuple[Derived, ...] = (
    _least(
        "heated_resistance_least",
        "1",
        "the same resistance when hot as cold",
        "1",
        HEATED,
        (f"{DEVICE}.r_ds_on_hot_factor",),
        "channel",
    ),
    _least(
        "bare_package_least",
        "K/W",
        "the best that a board of a hand's size does in still air",
        "7.9 K/W",
        IN_A_PLANE,
        (f"{DEVICE}.r_th_ja", "gate_drive.regulator.r_th_ja"),
        "channel",
    ),
    _least(
        "heatsink_least",
        "K/W",
        "the best of the largest heatsinks in still air",
        "0.05 K/W",
        STILL_AIR,
        ("thermal.heatsink.r_th_sa",),
        "product",
    ),
    _most(
        "junction_most",
        "degC",
        "the hottest junction that data sheets of switches allow",
        _value("225 degC", "hottest junction of any switch"),
        (f"{DEVICE}.t_j_max",),
        "channel",
    ),
    _most(
        "contact_hottest",
        "degC",
        "the hottest contact of a power connector",
        _value("200 degC", "hottest contact of any connector"),
        ("wiring.connector.t_max",),
        "product",
    ),
    _most(
        "saturation_hot_most",
        "1",
        "the saturation current when cold: no core gains by heat",
        _value("1.05", "saturation when hot over cold"),
        (f"{INDUCTOR}.i_sat_hot_factor",),
        "channel",
    ),
    _most(
        "melting_most",
        "A2s",
        "what the slowest fuses of that rating let through, a hundred seconds of its square",
        Way(
            slowest_melting,
            {
                "i_rated": Input("protection.fuse.i_rated"),
                "slowest": Constant("100 s", "slowest fuses of any kind", COMMON_PRACTICE),
            },
            "slowest i_rated^2",
        ),
        ("protection.fuse.i2t",),
        "product",
    ),
    _most(
        "winding_current_most",
        "A",
        "the current of that rise in the largest chokes, of 1 K/W",
        Way(
            current_of_rise,
            {
                "rise": Input(f"{INDUCTOR}.rise_rated"),
                "r_th": Constant("1 K/W", "largest chokes to the air", COMMON_PRACTICE),
                "dcr": Input(f"{INDUCTOR}.dcr"),
            },
            "sqrt(rise / (r_th dcr))",
        ),
        (f"{INDUCTOR}.i_rms",),
        "channel",
    ),
    Derived(
        "fan_least",
        "K/W",
        "product",
        "a tenth of what the same heatsink has in still air",
        (
            Way(
                share_of,
                {
                    "share": Constant("0.1", "least share of still air that a fan leaves", FANNED),
                    "r_th_sa": Input("thermal.heatsink.r_th_sa"),
                },
                "share r_th_sa",
            ),
        ),
        bounds_from_below=("thermal.heatsink.fan.r_th_sa",),
        bounds_by="practice",
        sources=(FANNED,),
    ),
    Derived(
        "switches_least",
        "1",
        "channel",
        "a leg of an integrated stage is two switches",
        (
            Way(
                as_stated,
                {"value": Constant("2", "switches of one leg", LEG)},
                "value",
                when={"output_stage.devices": "integrated"},
            ),
        ),
        bounds_from_below=(f"{DEVICE}.switches_per_package",),
        sources=(LEG,),
    ),
    Derived(
        "saturation_possible",
        "A",
        "channel",
        "the current at which the core is full",
        (_at_flux("ferrite", "0.55 T"), _at_flux("", "1.6 T")),
        bounds_from_above=(f"{INDUCTOR}.i_sat",),
        sources=(FLUX,),
    ),
)
