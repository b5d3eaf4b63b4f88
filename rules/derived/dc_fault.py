"""Direct voltage in the voice coil while a switch is shorted: its heat, and what stands against it.

Something may end it for good: a converter at its limit, a fuse at the current that is sure to
open it, a pack at its trip.  What is not stated to end anything is no bound.
"""

from ...linter.check import Assumption, Derived, Input, Way, Words, derivation
from ..formulas.fuse import opening_current
from ..formulas.maths import larger, smaller
from .load import PARALLEL, SERIES
from .ways import as_stated, no, yes

SHORTED = derivation("one switch shorted: a leg is at its rail")
ENDED = derivation("conservation of energy: a load takes no more than its source gives for good")
NOTHING_ENDS_IT = Assumption(
    float("inf"), "absent", derivation("what is not stated to limit a fault does not limit it")
)
AT_BEST = Assumption(
    None, "favourable", derivation("at best the detector sees the output and outlives the fault")
)
TOPOLOGY = "output_stage.topology"
DETECTOR = "protection.dc_detector"
SENSES = f"{DETECTOR}.senses"
INDEPENDENT = f"{DETECTOR}.independent"
AT_OUTPUT = ("filtered-output", "timed-output")


def endless() -> float:
    """Nothing ends it."""
    return float("inf")


def at_rail(p_limited: float, i_fused: float, i_pack: float, v_fault: float) -> float:
    """The tightest of three limits [W]; fuse and pack carry the current of the rail."""
    return smaller(p_limited, smaller(i_fused, i_pack) * v_fault)


def ahead_of_converter(
    p_limited: float, i_fused: float, i_pack: float, v_fault: float, v_source: float
) -> float:
    """The same where fuse and pack may carry the current of the source."""
    return at_rail(p_limited, i_fused, i_pack, larger(v_fault, v_source))


def coil_power(v_fault: float, series: float, r_e: float) -> float:
    """Heat in ONE voice coil under direct voltage; leads and source left out: upper bound."""
    return (v_fault / series) ** 2 / r_e


def coil_heat(
    v_fault: float, series: float, parallel: float, r_e: float, p_lasting: float
) -> float:
    """The same, no more than the share of ONE coil in what the source gives for good."""
    return smaller(coil_power(v_fault, series, r_e), p_lasting / (series * parallel))


def tested() -> str:
    """The loudspeakers were run on the fault."""
    return "single-fault-test"


def detection() -> str:
    """The stage sees direct voltage at its output, outlives the fault, and goes off."""
    return "detection"


def none() -> str:
    """Nothing that is stated acts on this fault."""
    return "none"


def _guard() -> tuple[Way, ...]:
    bridge = {DETECTOR: "fitted", TOPOLOGY: "full-bridge"}
    return (
        Way(tested, {}, "single-fault-test", {"safety.dc_fault_test": "yes"}),
        Way(none, {}, "none", {DETECTOR: "none"}),
        Way(none, {}, "none", {DETECTOR: "fitted", TOPOLOGY: "half-bridge"}),
        Way(none, {}, "none", {**bridge, SENSES: ("duty", "oscillation")}),
        Way(none, {}, "none", {**bridge, INDEPENDENT: "no"}),
        Way(detection, {}, "detection", {**bridge, SENSES: AT_OUTPUT, INDEPENDENT: "yes"}),
        Way(detection, {}, "detection", bridge, assumes=AT_BEST),
    )


def _product(name: str, unit: str, meaning: str, *ways: Way) -> Derived:
    return Derived(name, unit, "product", meaning, ways, sources=(ENDED,))


def _never(when: dict[str, Words] | None = None) -> Way:
    return Way(endless, {}, "no limit is stated", when or {}, assumes=NOTHING_ENDS_IT)


_LIMITS = {
    "p_limited": Input("p_source_limited"),
    "i_fused": Input("i_fused"),
    "i_pack": Input("i_pack_trip"),
}
_V_FAULT = Input("v_ideal", meaning="direct voltage at the load, upper bound")

DERIVED: tuple[Derived, ...] = (
    _product(
        "source_known_to_limit",
        "word",
        "whether it is known that the source limits a fault for good",
        Way(yes, {}, "yes", {"source_self_limits": "yes"}),
        Way(no, {}, "no"),
    ),
    _product(
        "p_source_limited",
        "W",
        "power at which the source limits a fault for good",
        Way(as_stated, {"value": Input("p_supply_max")}, "value", {"source_known_to_limit": "yes"}),
        _never({"source_known_to_limit": "no"}),
    ),
    _product(
        "i_fused",
        "A",
        "current that is sure to open the fuse",
        Way(
            opening_current,
            {
                "i_rated": Input("protection.fuse.i_rated"),
                "standard": Input("protection.fuse.standard"),
            },
            "1.35 (UL) or 2.1 (IEC) i_rated",
            {"protection.fuse": "fitted"},
        ),
        _never(),
    ),
    _product(
        "i_pack_trip",
        "A",
        "current above which the pack cuts off",
        Way(
            as_stated,
            {"value": Input("battery.protection.i_trip")},
            "value",
            {"supply.source": "battery", "battery.protection": "fitted"},
        ),
        _never(),
    ),
    Derived(
        "p_dc_lasting",
        "W",
        "channel",
        "power that the source gives for good while a shorted switch holds an output at its rail",
        (
            Way(
                at_rail,
                {**_LIMITS, "v_fault": _V_FAULT},
                "smaller of p_limited and v_fault times the smaller of i_fused and i_pack",
                {"rail_feed": ("pack", "source")},
            ),
            Way(
                ahead_of_converter,
                {**_LIMITS, "v_fault": _V_FAULT, "v_source": Input("v_source_high")},
                "smaller of p_limited and the larger of v_fault and v_source times the smaller of"
                " i_fused and i_pack",
                {"rail_feed": "converter"},
            ),
            Way(as_stated, {"value": Input("p_source_limited")}, "value"),
        ),
        sources=(ENDED,),
    ),
    Derived(
        "p_dc_fault",
        "W",
        "channel",
        "heat in ONE voice coil while a shorted switch holds the output at its rail",
        (
            Way(
                coil_heat,
                {
                    "v_fault": _V_FAULT,
                    "series": SERIES,
                    "parallel": PARALLEL,
                    "r_e": Input("r_e"),
                    "p_lasting": Input("p_dc_lasting"),
                },
                "smaller of (v_fault / series)^2 / r_e and p_lasting / (series parallel)",
                {"dc_reaches_load": "yes"},
            ),
        ),
        sources=(SHORTED, ENDED),
    ),
    Derived(
        "dc_fault_guard",
        "word",
        "channel",
        "the one safeguard that is stated against a shorted switch, beside a cut-off",
        _guard(),
        sources=(derivation("with both legs off a shorted switch of a bridge has no way back"),),
    ),
    Derived(
        "dc_one_safeguard",
        "word",
        "channel",
        "whether one safeguard is known against a shorted switch and no cut-off; others ask",
        (
            Way(no, {}, "no: it is cut off", {"dc_cut_off": "yes"}),
            Way(yes, {}, "yes", {"dc_fault_guard": ("detection", "single-fault-test")}),
            Way(no, {}, "no"),
        ),
    ),
)
