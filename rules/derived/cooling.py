"""The paths of the heat: package, heatsink, trip."""

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
from ..formulas.enclosure import convection_factor
from ..formulas.heat import Sink, forced_share
from .ways import as_stated, left_out

DEVICE = "output_stage.device"
ALTITUDE = Input("environment.altitude")
SHARE = Input("package_share")
N_LEGS = Input("n_legs")
PARALLEL = Input("output_stage.parallel")
BLOWN = Source(
    "HS Marston, extrusions: forced air cooling, correction graph", "web page: 0.435 at 2 m/s"
)
PLATE = derivation("laminar flat plate: heat transfer goes as the root of the air speed")
JESD51_2 = from_memory("JESD51-2: psi times all heat of the package is the step to top or board")
SILENT = Assumption("not given", "absent", COMMON_PRACTICE)


def one() -> float:
    """An integrated part that holds its whole channel."""
    return 1.0


def share_of_package(switches: float, n_legs: float, parallel: float) -> float:
    """Switches in one package over all switches of the channel."""
    return switches / (2 * n_legs * parallel)


def share_of_switch(n_legs: float, parallel: float) -> float:
    """One switch over all switches of the channel."""
    return 1 / (2 * n_legs * parallel)


def fitted() -> str:
    """A heatsink is there."""
    return "fitted"


def over_sink(share: float, r_th_jc: float, r_th_cs: float) -> float:
    """Junction over heatsink for one watt in the channel."""
    return share * (r_th_jc + r_th_cs)


def over_case(share: float, r_th_jc: float) -> float:
    """Junction over case for one watt in the channel."""
    return share * r_th_jc


def over_air(share: float, r_th_ja: float) -> float:
    """Junction over inside air for one watt in the channel."""
    return share * r_th_ja


def sink_resistance(r_th_sa: float, count: float, altitude: float) -> float:
    """Equal heatsinks share the heat; thin air carries less of it."""
    return r_th_sa / count / convection_factor(altitude)


def blown_resistance(
    r_th_sa: float,
    air_speed: float,
    count: float,
    altitude: float,
    at_reference: float,
    v_reference: float,
) -> float:
    """The same in moving air, by what is printed at one speed and the laminar plate."""
    blown = forced_share(air_speed, at_reference, v_reference)
    return sink_resistance(r_th_sa * blown, count, altitude)


def nothing(t: float) -> float:
    """A heatsink of known temperature needs no resistance."""
    return 0.0 * t


def held(r_sink: float, t: float, place: str) -> Sink:
    """Heatsinks of known temperature."""
    return Sink(r_sink, t, place == "outside")


def solved(r_sink: float, place: str) -> Sink:
    """Heatsinks whose temperature is to be found."""
    return Sink(r_sink, None, place == "outside")


def no_sink() -> Sink:
    """The packages give their heat to the inside air."""
    return Sink(0.0, None, False)


_JC = Input(f"{DEVICE}.r_th_jc")
_CS = Input(f"{DEVICE}.r_th_cs", default=left_out("0 K/W", "step from case to heatsink"))
_JA = Input(f"{DEVICE}.r_th_ja")
_SA = Input("thermal.heatsink.r_th_sa")
_COUNT = {"count": Input("thermal.heatsink.count"), "altitude": ALTITUDE}
_PLACE = Input("thermal.heatsink.place")
_SINK = Input("r_sink")

DERIVED: tuple[Derived, ...] = (
    Derived(
        "package_share",
        "1",
        "channel",
        "part of the heat of the switches in one package",
        (
            Way(
                share_of_package,
                {
                    "switches": Input(f"{DEVICE}.switches_per_package"),
                    "n_legs": N_LEGS,
                    "parallel": PARALLEL,
                },
                "switches / (2 n_legs parallel)",
            ),
            Way(
                share_of_switch,
                {"n_legs": N_LEGS, "parallel": PARALLEL},
                "1 / (2 n_legs parallel): one switch in a package",
                when={"output_stage.devices": "discrete"},
            ),
            Way(
                one,
                {},
                "1: the part holds its channel",
                when={"output_stage.devices": "integrated"},
            ),
        ),
        sources=(derivation("all switches of a channel carry the same heat over a sine"),),
    ),
    Derived(
        "heatsink",
        "word",
        "product",
        "whether the packages sit on a heatsink",
        (
            Way(
                as_stated,
                {"value": Input("thermal.heatsink")},
                "value",
            ),
            Way(
                fitted,
                {},
                "fitted: the trip is sensed there, and nothing is said against it",
                when={"protection.over_temperature.at": "heatsink"},
            ),
            Way(as_stated, {"value": Input("thermal.heatsink", default=SILENT)}, "value"),
        ),
    ),
    Derived(
        "over_temperature",
        "word",
        "product",
        "whether an over-temperature trip is described",
        (
            Way(
                as_stated,
                {"value": Input("protection.over_temperature", default=SILENT)},
                "value",
            ),
        ),
    ),
    Derived(
        "r_th_own",
        "K/W",
        "channel",
        "junction over heatsink, or over inside air, for one watt in the channel's switches",
        (
            Way(
                over_sink,
                {"share": SHARE, "r_th_jc": _JC, "r_th_cs": _CS},
                "share (r_th_jc + r_th_cs)",
                when={"heatsink": "fitted"},
            ),
            Way(
                over_air,
                {"share": SHARE, "r_th_ja": _JA},
                "share r_th_ja",
                when={"heatsink": ("none", "not given")},
            ),
        ),
        sources=(derivation("thermal resistances in series; packages in parallel"),),
    ),
    Derived(
        "r_th_package",
        "K/W",
        "channel",
        "junction over case for one watt in the channel's switches",
        (Way(over_case, {"share": SHARE, "r_th_jc": _JC}, "share r_th_jc"),),
        sources=(derivation("packages in parallel"),),
    ),
    Derived(
        "r_th_to_top",
        "K/W",
        "channel",
        "junction over the top of its package for one watt in the channel's switches",
        (
            Way(
                over_case,
                {"share": SHARE, "r_th_jc": Input(f"{DEVICE}.psi_jt")},
                "share r_th_jc",
            ),
        ),
        sources=(JESD51_2,),
    ),
    Derived(
        "r_th_to_board",
        "K/W",
        "channel",
        "junction over the board beside its package for one watt in the channel's switches",
        (
            Way(
                over_case,
                {"share": SHARE, "r_th_jc": Input(f"{DEVICE}.psi_jb")},
                "share r_th_jc",
            ),
        ),
        sources=(JESD51_2,),
    ),
    Derived(
        "r_sink",
        "K/W",
        "product",
        "all heatsinks together to the air round them",
        (
            Way(
                sink_resistance,
                {"r_th_sa": Input("thermal.heatsink.fan.r_th_sa"), **_COUNT},
                "r_th_sa / (count sqrt(density at altitude over that at sea level))",
            ),
            Way(
                blown_resistance,
                {
                    "r_th_sa": _SA,
                    "air_speed": Input("thermal.heatsink.fan.air_speed"),
                    **_COUNT,
                    "at_reference": Constant("0.435", "of still air, at 2 m/s", BLOWN),
                    "v_reference": Constant("2 m/s", "air speed of that share", BLOWN),
                },
                "r_th_sa at_reference sqrt(v_reference / air_speed), at most r_th_sa,"
                " / (count sqrt(density at altitude over that at sea level))",
                assumes=Assumption(None, "neutral", PLATE),
            ),
            Way(
                sink_resistance,
                {"r_th_sa": _SA, **_COUNT},
                "r_th_sa / (count sqrt(density at altitude over that at sea level))",
            ),
            Way(
                nothing,
                {"t": Input("thermal.heatsink.t")},
                "0, since t is known",
            ),
        ),
        sources=(
            from_memory("ISO 2533, standard atmosphere"),
            derivation("natural convection goes as the square root of the density"),
        ),
    ),
    Derived(
        "sink_path",
        "set",
        "product",
        "where the packages give their heat",
        (
            Way(
                held,
                {"r_sink": _SINK, "place": _PLACE, "t": Input("thermal.heatsink.t")},
                "t; place; r_sink not used",
                when={"heatsink": "fitted"},
            ),
            Way(
                solved,
                {"r_sink": _SINK, "place": _PLACE},
                "r_sink; place",
                when={"heatsink": "fitted"},
            ),
            Way(
                no_sink,
                {},
                "0: packages in the inside air",
                when={"heatsink": ("none", "not given")},
            ),
        ),
        parts={"r": "K/W", "t_held": "degC"},
    ),
)
