"""What no product can promise: bounds of efficiency, sensitivity, programme and source.

Conservation of energy and the square law of sound bound what the paperwork may say; such a
statement holds at every milestone.
"""

from ...linter.check import (
    COMMON_PRACTICE,
    Constant,
    Derived,
    Input,
    Way,
    derivation,
    from_memory,
)
from ..formulas.acoustics import V_SENSITIVITY, power_decibel
from ..formulas.maths import larger
from .bounds import DEVICE
from .part_load import EFFICIENCIES
from .rated import NO_LOSS
from .ways import as_stated, left_out

STAGE_EFFICIENCY = ("output_stage.efficiency", EFFICIENCIES)
SENSITIVITY = ("loudspeaker.sensitivity",)
FULL_SPHERE = derivation("1 W over a sphere of 12.57 m2 is 79.6 mW/m2, 109.0 dB re 1 pW/m2")
HALF_SPACE = derivation("all of 1 W into half a sphere: twice the intensity of a whole one")
NARROWEST = from_memory("data sheets of horns", "directivity index of narrow ones, 12 dB")
PEAKIEST = from_memory("crest factors of programme", "20 dB of undamped classical music")
DIRECT = ("sealed", "vented", "passive-radiator", "open")
ENERGY = derivation("conservation of energy over a period of a sine at rated power")


def largest(values: tuple[float, ...]) -> float:
    """The largest of several."""
    found = values[0]
    for value in values[1:]:
        found = larger(found, value)
    return found


def level_of_all(level: float, index: float, power: float, one_watt: float) -> float:
    """Level [dB] at 1 m of a radiator that turns all of its power into sound."""
    return level + index + power_decibel(power / one_watt)


def power_in(v: float, z: float) -> float:
    """Power of a voltage in a rated impedance."""
    return v**2 / z


def at_either(v: float, z: float, one_watt: float) -> float:
    """The larger of both drives for which sensitivities are printed."""
    return larger(power_in(v, z), one_watt)


def efficiency_within(
    z_load: float, n_legs: float, r_ds_on: float, parallel: float, dcr: float, r_series: float
) -> float:
    """A divider of the load and the resistances that no design avoids, cold."""
    return z_load / (z_load + n_legs * (r_ds_on / parallel + dcr) + r_series)


def share_of(z_network: float, share: float) -> float:
    """A share of what the loudspeakers have together."""
    return share * z_network


V, Z = V_SENSITIVITY, Input("loudspeaker.z_rated")
ONE_WATT = Constant("1 W", "drive of the sensitivity", derivation("1 W, as its basis says"))
SPHERE = Constant("109 dB", "all of 1 W into a whole sphere, at 1 m", FULL_SPHERE)


def _level(index: Constant, *boxes: str) -> tuple[Way, ...]:
    return (
        Way(
            level_of_all,
            {
                "level": SPHERE,
                "index": index,
                "power": Input("p_sensitivity"),
                "one_watt": ONE_WATT,
            },
            "level + index + 10 log10(power / one_watt)",
            when={"loudspeaker.enclosure.type": boxes} if boxes else {},
        ),
    )


DERIVED: tuple[Derived, ...] = (
    Derived(
        "p_sensitivity",
        "W",
        "channel",
        "power of the drive for which the sensitivity is printed, at most",
        (
            Way(
                as_stated,
                {"value": ONE_WATT},
                "value",
                when={"loudspeaker.sensitivity_basis": "1-watt"},
            ),
            Way(
                power_in,
                {"v": V, "z": Z},
                "v^2 / z",
                when={"loudspeaker.sensitivity_basis": "2.83-volt"},
            ),
            Way(
                at_either, {"v": V, "z": Z, "one_watt": ONE_WATT}, "larger of v^2 / z and one_watt"
            ),
        ),
    ),
    Derived(
        "sensitivity_of_cone",
        "dB",
        "channel",
        "the level of a cone that turns all of its drive into sound, into half a space,",
        _level(Constant("3 dB", "half a space", HALF_SPACE), *DIRECT),
        bounds_from_above=SENSITIVITY,
        bounds_always=True,
        sources=(HALF_SPACE,),
    ),
    Derived(
        "sensitivity_of_any",
        "dB",
        "channel",
        "the level of a narrow horn that turns all of its drive into sound",
        _level(Constant("12 dB", "directivity index of a narrow horn", NARROWEST)),
        bounds_from_above=SENSITIVITY,
        bounds_always=True,
        sources=(FULL_SPHERE, NARROWEST),
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
                    "dcr": Input("filter.inductor.dcr", default=left_out("0 ohm", "coils")),
                    "r_series": Input("output_stage.r_series", default=NO_LOSS),
                },
                "z_load / (z_load + n_legs (r_ds_on/parallel + dcr) + r_series)",
            ),
        ),
        bounds_from_above=STAGE_EFFICIENCY,
        bounds_always=True,
        sources=(derivation("divider of load and path"),),
    ),
    Derived(
        "efficiency_possible_whole",
        "%",
        "product",
        "the most that the resistances of the best channel leave, cold",
        (Way(largest, {"values": Input("all efficiency_possible")}, "largest of values"),),
        sources=(derivation("a product is no better than its best channel"),),
    ),
    Derived(
        "efficiency_of_best",
        "1",
        "product",
        "the best efficiency that such amplifiers have been measured with",
        (
            Way(
                as_stated,
                {"value": Constant("98.5 %", "best measured efficiency", COMMON_PRACTICE)},
                "value",
            ),
        ),
        bounds_from_above=("claims.efficiency", *STAGE_EFFICIENCY),
        bounds_by="practice",
        bounds_always=True,
        sources=(COMMON_PRACTICE,),
    ),
    Derived(
        "crest_most",
        "dB",
        "product",
        "the highest crest factor of any programme",
        (
            Way(
                as_stated,
                {"value": Constant("30 dB", "ten decibels above music undamped", PEAKIEST)},
                "value",
            ),
        ),
        bounds_from_above=("signal.crest_factor",),
        bounds_always=True,
        sources=(PEAKIEST,),
    ),
    Derived(
        "crest_least",
        "dB",
        "product",
        "the crest factor of a square wave",
        (
            Way(
                as_stated,
                {"value": Constant("0 dB", "peak over rms", derivation("rms is not above peak"))},
                "value",
            ),
        ),
        bounds_from_below=("signal.crest_factor:low",),
        sources=(derivation("rms is not above peak"),),
    ),
    Derived(
        "rated_power_largest",
        "W",
        "product",
        "the rated power of one channel alone",
        (Way(largest, {"values": Input("all rated_power")}, "largest of values"),),
        bounds_from_below=("supply.p_peak",),
        bounds_always=True,
        sources=(ENERGY,),
    ),
    Derived(
        "continuous_power",
        "W",
        "product",
        "the continuous power of the source",
        (Way(as_stated, {"value": Input("supply.p_max")}, "value"),),
        bounds_from_below=("supply.p_peak",),
        sources=(derivation("what lasts can be given for some milliseconds"),),
    ),
    Derived(
        "rated_load_least",
        "ohm",
        "channel",
        "a quarter of what the loudspeakers of the channel have together",
        (
            Way(
                share_of,
                {
                    "z_network": Input("z_network"),
                    "share": Constant("0.25", "rated load below the one fitted", COMMON_PRACTICE),
                },
                "share z_network",
            ),
        ),
        bounds_from_below=("rated_load",),
        bounds_by="practice",
        sources=(COMMON_PRACTICE,),
    ),
)
