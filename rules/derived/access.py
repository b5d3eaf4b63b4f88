"""Direct voltage on the loudspeaker after a fault, and what hands can reach."""

from collections.abc import Callable

from ...linter.check import (
    COMMON_PRACTICE,
    Assumption,
    Constant,
    Derived,
    Input,
    Source,
    Way,
    derivation,
)
from ..formulas.constants import DC_CLASS_1
from ..formulas.maths import larger
from ..formulas.safety import AUDIO_CLASSES, ENERGY_CLASSES
from .dc_fault import SHORTED
from .ways import as_stated, no, yes

UNKNOWN_SOURCE = Assumption("0 V", "favourable", derivation("bound: no voltage ahead of the rail"))
BARE = Assumption("bare", "adverse", derivation("bound: nothing between the part and the hand"))
ENDLESS = Assumption(None, "adverse", derivation("bound: the charge stays for good"))
TERMINALS = {
    "v_terminal_dc": Input("v_terminal_dc"),
    "v_terminal_ac": Input("v_terminal_ac"),
    "v_pair_ac": Input("v_pair_ac"),
}
CLASS_1_PEAK = Constant("42.4 V", "peak of 30 V rms", ENERGY_CLASSES)


def across_parts(v_rail: float, rail_count: float, v_source: float) -> float:
    """Largest direct voltage between two parts that one person can touch."""
    return larger(v_rail * rail_count, v_source)


def shared(voltage: float, rail_count: float) -> float:
    """The part of a rating that one of the rails may use."""
    return voltage / rail_count


def half(v_swing: float) -> float:
    """Each terminal of a bridge on one rail stands at half of it."""
    return v_swing / 2


def nothing(v_swing: float) -> float:
    """Two rails, or a capacitor in series: no direct voltage at the terminals."""
    return 0 * v_swing


def sine_of_leg(v_swing: float) -> float:
    """Rms of the largest sine that one leg can make."""
    return v_swing / 8**0.5


def pair(v_ideal: float) -> float:
    """Rms of the largest sine between the terminals."""
    return v_ideal / 2**0.5


def bare() -> str:
    """Nothing in between."""
    return "bare"


def rated(i_rated: float) -> str:
    """A ripple rating is stated, whatever it says."""
    return "yes"


def electrolytic(c: float, film: float) -> str:
    """Capacitors up to some tens of microfarads have little loss for their current."""
    return "yes" if c > film else "no"


def endless() -> float:
    """A capacitance that keeps its voltage for good."""
    return float("inf")


def harmless(voltage: float, limit: float) -> str:
    """``yes`` up to four fifths of a limit, so that no usual tolerance crosses it."""
    return "yes" if voltage <= 0.8 * limit else "no"


def _product(
    name: str, unit: str, meaning: str, *ways: Way, stated_at: str | None = None
) -> Derived:
    return Derived(name, unit, "product", meaning, ways, stated_at)


def _channel(
    name: str, unit: str, meaning: str, *ways: Way, sources: tuple[Source, ...] = ()
) -> Derived:
    return Derived(name, unit, "channel", meaning, ways, sources=sources)


def _if(figure: Callable[[], str], when: dict[str, str]) -> Way:
    """A way that says a word of its own."""
    return Way(figure, {}, figure.__name__, dict(when))


_RAILS = Input("rail_count")
_SWING = {"v_swing": Input("v_swing")}
_TOPOLOGY = "output_stage.topology"

DERIVED: tuple[Derived, ...] = (
    _product(
        "v_touch",
        "V",
        "largest direct voltage between parts of the supply that one person can touch",
        Way(
            across_parts,
            {
                "v_rail": Input("v_rail_high"),
                "rail_count": _RAILS,
                "v_source": Input("v_source_high", default=UNKNOWN_SOURCE),
            },
            "larger of v_rail * rail_count and v_source",
        ),
    ),
    _product(
        "rail_harmless",
        "word",
        "yes where all rails together lie well below 60 V",
        Way(
            harmless,
            {"voltage": Input("v_touch"), "limit": DC_CLASS_1},
            "voltage up to 0.8 limit",
        ),
    ),
    _product(
        "access_seen",
        "word",
        "how the rails are kept from hands; bare where it does not matter",
        Way(as_stated, {"value": Input("safety.rail_access")}, "value"),
        Way(bare, {}, "bare", {"rail_harmless": "yes"}, assumes=BARE),
    ),
    _product(
        "c_discharged",
        "F",
        "capacitance of ONE rail that the resistor discharges, where it matters",
        Way(as_stated, {"value": Input("c_rail")}, "value"),
        Way(endless, {}, "without a resistor any capacitance", {"protection.bleeder": "none"}),
        Way(endless, {}, "endless", {"rail_harmless": "yes"}, assumes=ENDLESS),
    ),
    _channel(
        "dc_reaches_load",
        "word",
        "whether a shorted switch puts direct voltage on the loudspeaker",
        _if(no, {"loudspeaker.c_series": "fitted", "line": "none"}),
        _if(no, {"loudspeaker.piezo": "fitted", "line": "none"}),
        _if(yes, {_TOPOLOGY: "full-bridge"}),
        _if(yes, {_TOPOLOGY: "half-bridge", "supply.rails": "split"}),
        _if(no, {_TOPOLOGY: "half-bridge", "supply.rails": "single"}),
        _if(no, {_TOPOLOGY: "half-bridge", "supply.source": "battery"}),
        sources=(SHORTED,),
    ),
    _channel(
        "c_series_heats",
        "word",
        "whether ripple may overheat the series capacitor; film has a rating only if one is stated",
        Way(rated, {"i_rated": Input("loudspeaker.c_series.i_rated")}, "yes with a rating"),
        Way(
            electrolytic,
            {
                "c": Input("loudspeaker.c_series.c"),
                "film": Constant("47 uF", "largest of film in a crossover", COMMON_PRACTICE),
            },
            "yes where c is above film",
        ),
    ),
    Derived(
        "detector_independent",
        "word",
        "product",
        "whether the detector works with a shorted switch; muting never does",
        (
            Way(
                as_stated,
                {"value": Input("protection.dc_detector.independent")},
                "value",
            ),
            _if(no, {"protection.dc_detector.action": "mute"}),
        ),
        sources=(SHORTED,),
    ),
    _channel(
        "v_terminal_dc",
        "V",
        "direct voltage of one loudspeaker terminal against ground while all is well",
        Way(nothing, _SWING, "0 v_swing", {_TOPOLOGY: "half-bridge"}),
        Way(nothing, _SWING, "0 v_swing", {"supply.rails": "split"}),
        Way(half, _SWING, "v_swing / 2", {_TOPOLOGY: "full-bridge"}),
    ),
    _channel(
        "v_terminal_ac",
        "V",
        "alternating voltage of one terminal against ground, largest sine, rms",
        Way(sine_of_leg, _SWING, "v_swing / (2 root 2)"),
    ),
    _channel(
        "v_pair_ac",
        "V",
        "alternating voltage between the terminals, largest sine, rms",
        Way(
            pair,
            {"v_ideal": Input("v_ideal")},
            "v_ideal / root 2",
        ),
    ),
    _channel(
        "terminals_seen",
        "word",
        "how the loudspeaker terminals are; bare where it does not matter",
        Way(
            as_stated,
            {"value": Input("safety.output_terminals")},
            "value",
        ),
        Way(bare, {}, "bare", {"output_harmless": "yes"}, assumes=BARE),
    ),
    _channel(
        "output_harmless",
        "word",
        "yes where the output lies well below 30 V rms",
        Way(
            harmless,
            {"voltage": Input("v_ideal"), "limit": CLASS_1_PEAK},
            "voltage up to 0.8 limit",
        ),
        sources=(AUDIO_CLASSES,),
    ),
    _channel(
        "v_withstand",
        "V",
        "highest rail that the power stage survives",
        Way(
            shared,
            {"voltage": Input("output_stage.device.v_supply_abs"), "rail_count": _RAILS},
            "voltage / rail_count",
            when={"output_stage.devices": "integrated"},
        ),
        Way(
            shared,
            {"voltage": Input("output_stage.device.v_dss"), "rail_count": _RAILS},
            "voltage / rail_count",
            when={"output_stage.devices": "discrete"},
        ),
    ),
)
