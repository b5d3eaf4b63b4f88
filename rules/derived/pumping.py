"""How far returned energy lifts the rail."""

from ...linter.check import (
    COMMON_PRACTICE,
    Assumption,
    Derived,
    Input,
    Way,
    derivation,
    from_memory,
)
from ..formulas.constants import NO_LIMITER
from ..formulas.load import network_impedance
from ..formulas.pumping import (
    BRIDGE_PUMPING,
    HALF_BRIDGE_PUMPING,
    limited_by_trip,
    pumping_unless_sunk,
)
from .feed import constant, total
from .ways import as_stated, no, yes

ONE = Assumption(1.0, "absent", COMMON_PRACTICE)
NO_TRIP = Assumption(float("inf"), "absent", COMMON_PRACTICE)
USUAL_PHASE = Assumption(
    None, "adverse", from_memory("phase of loudspeakers near the low end of their band")
)
# Below its resonance a loudspeaker is nearly its coil resistance, and near it the modulus
# rises with the phase: 45 deg of the rated modulus at the lowest note overstates what a
# bridge gets back five times and more, so that silence must not be read as that.
RESISTIVE = Assumption(
    None, "favourable", derivation("bound: a load of pure resistance returns least")
)
COMES_OUT_LOW = Assumption(
    None, "adverse", derivation("bound: a sum of known terms; a measured idle power is higher")
)
ONE_PLAYS = Assumption(
    None, "favourable", derivation("bound: one channel plays, whichever way round it is")
)
_INPUTS = {
    "n_legs": Input("all n_legs"),
    "v": Input("all v_ideal"),
    "m_max": Input("all m_max"),
    "v_limiter": Input("all limiter.v_peak", default=NO_LIMITER),
    "phase": Input("all phase_returned"),
    "f": Input("all band_low"),
    "z": Input("all z_load"),
    "c": Input("c_pumped"),
    "channel_phase": Input("bass_of_channels"),
    "v_rail": Input("v_rail_high"),
    "rail_count": Input("rail_count"),
}
_FORMULA = (
    "held_rise(sum of channel_rise(n_legs, v, smaller(m_max, v_limiter / v), phase, f, z, c)"
    " by channel_phase, rail_count * v_rail)"
)


def one_plays() -> str:
    """Only the channel that pumps most plays."""
    return "alone"


def reactive(phase: float) -> str:
    """Whether a load with this phase gives energy back."""
    return "yes" if phase > 0 else "no"


def any_of(returns: tuple[str, ...]) -> str:
    """Whether the load of any channel gives energy back."""
    return "yes" if "yes" in returns else "no"


def nothing_returned(phase: tuple[float, ...], v_rail: float) -> float:
    """Rise by bridges whose loads have no phase."""
    return 0 * v_rail


DERIVED = (
    Derived(
        "bass_of_channels",
        "word",
        "product",
        "how the bass of several half bridges loads the rails",
        (
            Way(
                as_stated,
                {"value": Input("signal.channel_phase")},
                formula="value",
            ),
            Way(one_plays, {}, "alone", assumes=ONE_PLAYS),
        ),
    ),
    Derived(
        "phase_low",
        "deg",
        "channel",
        "phase of the load at the lowest frequency, magnitude",
        (
            constant("0 deg", {"loudspeaker": "none"}),
            constant("45 deg", {"output_stage.topology": "half-bridge"}, USUAL_PHASE),
            constant("0 deg", {}, RESISTIVE),
        ),
        stated_at="loudspeaker.phase",
        agree=float("inf"),
    ),
    Derived(
        "load_returns",
        "word",
        "channel",
        "whether the load gives energy back to a bridge: only with a phase",
        (
            Way(
                reactive,
                {"phase": Input("phase_low")},
                formula="yes if phase is above 0",
            ),
        ),
    ),
    Derived(
        "any_load_returns",
        "word",
        "product",
        "whether the load of any channel gives energy back",
        (
            Way(
                any_of,
                {"returns": Input("all load_returns")},
                formula="yes if among returns",
            ),
        ),
    ),
    Derived(
        "rail_pumps",
        "word",
        "product",
        "whether anything pumps the rail: half bridges do, bridges only with a reactive load",
        (
            Way(no, {}, formula="no", when={"source_sinks": "yes"}),
            Way(yes, {}, formula="yes", when={"rail_topologies": "half-bridge"}),
            Way(
                as_stated,
                {"value": Input("any_load_returns")},
                formula="value",
                when={"rail_topologies": "full-bridge"},
            ),
        ),
    ),
    Derived(
        "r_load_dc",
        "ohm",
        "channel",
        "DC resistance of the whole load",
        (
            Way(
                network_impedance,
                {
                    "z_one": Input("r_e"),
                    "series": Input("loudspeaker.series", default=ONE),
                    "parallel": Input("loudspeaker.parallel", default=ONE),
                },
                formula="z_one series / parallel",
            ),
            Way(
                as_stated,
                {"value": Input("z_load")},
                formula="value",
                when={"loudspeaker": "none"},
            ),
        ),
    ),
    Derived(
        "p_idle_drawn",
        "W",
        "channel",
        "idle power of the channel from all rails, which draws down a pumped rail",
        (
            Way(
                as_stated,
                {"value": Input("p_idle")},
                formula="value",
                assumes=COMES_OUT_LOW,
            ),
        ),
        stated_at="output_stage.p_idle",
        agree=float("inf"),
    ),
    Derived(
        "c_pumped",
        "F",
        "product",
        "capacitance of ONE rail that takes returned energy; the source's must be known"
        " where half bridges pump",
        (
            Way(
                as_stated,
                {"value": Input("c_rail")},
                formula="value",
                when={"rail_topologies": "full-bridge"},
            ),
            Way(
                total,
                {"bulk": Input("supply.bulk.c"), "source": Input("c_source_stated")},
                formula="bulk + source",
            ),
        ),
    ),
    Derived(
        "v_pumping",
        "V",
        "product",
        "rise of ONE rail by energy that the amplifier returns",
        (
            constant("0 V", {"source_sinks": "yes"}),
            Way(
                nothing_returned,
                {"phase": Input("all phase_low"), "v_rail": _INPUTS["v_rail"]},
                "0: with a phase of 0 a bridge returns nothing to v_rail",
                when={"rail_pumps": "no"},
            ),
            Way(
                pumping_unless_sunk,
                {**_INPUTS, "sinks": Input("source_sinks")},
                "0 if sinks is yes, else " + _FORMULA,
            ),
        ),
        sources=(HALF_BRIDGE_PUMPING, BRIDGE_PUMPING),
    ),
    Derived(
        "v_rail_peak",
        "V",
        "product",
        "ONE rail to ground, highest, pumped as far as the trip lets it",
        (
            Way(
                limited_by_trip,
                {
                    "v_rail": Input("v_rail_high"),
                    "rise": Input("v_pumping"),
                    "v_trip": Input("protection.over_voltage.v_trip", default=NO_TRIP),
                },
                formula="smaller of v_rail + rise and larger of v_rail, v_trip",
            ),
        ),
    ),
)
