"""How the rail is fed: from the pack, a source or a converter; its voltages and capacity.

Quantities of the supply at rest.  What the amplifier draws stands in ``supply.py``.
"""

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
from ..formulas.maths import smaller
from .ways import as_stated, no, yes

STIFF = Assumption("0 ohm", "favourable", derivation("bound: a source without resistance"))
NO_OTHER_C = Assumption("0 F", "neutral", COMMON_PRACTICE)


def feed_word(source: str, converter: str) -> str:
    """Who feeds the rail: ``pack``, ``source`` or ``converter``."""
    if converter != "none":
        return "converter"
    return "pack" if source == "battery" else "source"


def topologies_word(topologies: tuple[str, ...]) -> str:
    """Whether any channel is a half bridge, which loads the rails one after the other."""
    return "half-bridge" if "half-bridge" in topologies else "full-bridge"


def total(bulk: float, source: float) -> float:
    """Capacitors side by side."""
    return bulk + source


def unknown() -> str:
    """Nothing is stated."""
    return "unknown"


def tighter_power(p_max: float, i_max: float, v_rail: float, rail_count: float) -> float:
    """The smaller of a stated power and that of a stated current."""
    return smaller(p_max, power_of_rails(i_max, v_rail, rail_count))


def times(value: float, factor: float) -> float:
    """A number of times a value."""
    return value * factor


def power_of_rails(i_max: float, v_rail: float, rail_count: float) -> float:
    """Power of equal rails with the same current."""
    return i_max * v_rail * rail_count


def one_of(path: str, **when: str | tuple[str, ...]) -> Way:
    """A way that takes one value as it is; ``when``: the word of ``rail_feed``."""
    words = {"rail_feed": when["feed"]} if when else {}
    return Way(as_stated, {"value": Input(path)}, formula="value", when=words)


def constant(
    value: str, when: dict[str, str | tuple[str, ...]], assumes: Assumption | None = None
) -> Way:
    """A way that always gives the same value."""
    meaning = "follows from the kind of supply"
    basis = assumes.basis if assumes else Source(meaning, kind="derived")
    return Way(
        as_stated,
        {"value": Constant(value, meaning, basis)},
        formula="value",
        when=when,
        assumes=assumes,
    )


def _source_voltage(name: str, pack: str, meaning: str) -> Derived:
    ways = (
        Way(
            as_stated,
            {"value": Input(pack)},
            formula="value",
            when={"supply.source": "battery"},
        ),
        one_of("supply.v_rail", feed=("source", "pack")),
    )
    return _compared(name, meaning, ways, "supply.v_source")


def _rail_voltage(name: str, source: str, meaning: str) -> Derived:
    way = one_of(source, feed=("pack", "source"))
    return _compared(name, meaning, (way,), "supply.v_rail")


def _compared(name: str, meaning: str, ways: tuple[Way, ...], path: str) -> Derived:
    """A voltage that may be stated as well; usual cells differ by a tenth from full to full."""
    return Derived(name, "V", "product", meaning, ways, stated_at=path, assumed_within=1.15)


_P_MAX = Input("supply.p_max")
_CURRENT = {
    "i_max": Input("supply.i_max"),
    "v_rail": Input("v_rail_low"),
    "rail_count": Input("rail_count"),
}

DERIVED = (
    Derived(
        "rail_feed",
        "word",
        "product",
        "who feeds the rail: pack, source or converter",
        (
            Way(
                feed_word,
                {"source": Input("supply.source"), "converter": Input("supply.converter")},
                formula="converter if there is one, else by source",
            ),
        ),
    ),
    Derived(
        "rail_count",
        "1",
        "product",
        "rails that share the power",
        (
            constant("1", {"supply.rails": "single"}),
            constant("2", {"supply.rails": "split"}),
            constant(
                "1",
                {"supply.source": "battery"},
                Assumption(None, "neutral", COMMON_PRACTICE),
            ),
        ),
    ),
    Derived(
        "rail_topologies",
        "word",
        "product",
        "half-bridge where any channel is one, else full-bridge",
        (
            Way(
                topologies_word,
                {"topologies": Input("all output_stage.topology")},
                formula="half-bridge if among topologies",
            ),
        ),
    ),
    Derived(
        "source_sinks",
        "word",
        "product",
        "whether the source takes returned current back without rising",
        (
            Way(
                no,
                {},
                formula="no: a series diode blocks what returns",
                when={
                    "rail_feed": ("pack", "source"),
                    "protection.reverse_polarity.method": "schottky",
                },
            ),
            Way(
                no,
                {},
                formula="no: no rectifier gives back to the mains",
                when={"supply.source": "mains-converter"},
            ),
            Way(
                yes,
                {},
                formula="yes: a pack takes it back",
                when={"rail_feed": "pack", "sinking_stated": "unknown"},
            ),
            one_of("supply.sinks_current"),
        ),
    ),
    Derived(
        "sinking_stated",
        "word",
        "product",
        "what is stated of returned current, or unknown",
        (Way(unknown, {}, formula="unknown"),),
        stated_at="supply.sinks_current",
    ),
    _source_voltage("v_source_high", "v_pack_full", "highest voltage of the source at rest"),
    _source_voltage("v_source_low", "v_pack_low", "lowest voltage of the source at rest"),
    _rail_voltage("v_rail_high", "v_source_high", "ONE rail to ground, idle, highest"),
    _rail_voltage("v_rail_low", "v_source_low", "ONE rail to ground, idle, lowest"),
    Derived(
        "r_rail",
        "ohm",
        "product",
        "resistance of the source at ONE rail",
        (
            one_of("r_pack", feed="pack"),
            constant("0 ohm", {}, STIFF),
        ),
        stated_at="supply.r_source",
    ),
    Derived(
        "r_rail_known",
        "ohm",
        "product",
        "resistance of the source at ONE rail, only if known",
        (one_of("r_pack", feed="pack"),),
        stated_at="supply.r_source",
        agree=0.0,
    ),
    Derived(
        "c_source_stated",
        "F",
        "product",
        "output capacitance of the source, only if known",
        (constant("0 F", {"rail_feed": "pack"}),),
        stated_at="supply.c_source",
        agree=0.0,
    ),
    Derived(
        "c_rail",
        "F",
        "product",
        "all capacitance from ONE rail to ground",
        (
            one_of("supply.bulk.c", feed="pack"),
            Way(
                total,
                {
                    "bulk": Input("supply.bulk.c"),
                    "source": Input("supply.c_source", default=NO_OTHER_C),
                },
                formula="bulk + source",
            ),
        ),
    ),
    Derived(
        "p_supply_max",
        "W",
        "product",
        "largest continuous power that source or converter gives, all rails",
        (
            Way(
                tighter_power,
                {"p_max": _P_MAX, **_CURRENT},
                formula="smaller of p_max and i_max * v_rail * rail_count",
            ),
            Way(as_stated, {"value": _P_MAX}, formula="value"),
            Way(power_of_rails, _CURRENT, formula="i_max * v_rail * rail_count"),
        ),
    ),
    Derived(
        "p_supply_peak",
        "W",
        "product",
        "largest power that source or converter gives for some milliseconds, all rails",
        (
            Way(
                times,
                {
                    "value": Input("p_supply_max"),
                    "factor": Constant("1.5", "usual short overload of a supply", COMMON_PRACTICE),
                },
                formula="value * factor",
                assumes=Assumption(None, "favourable", COMMON_PRACTICE),
            ),
        ),
        stated_at="supply.p_peak",
        agree=float("inf"),
    ),
)
