"""What a fault can do at the source: short-circuit current, power, inrush, surge."""

from ...linter.check import Assumption, Constant, Derived, Input, Source, Way, derivation
from ..formulas.fuse import charging_i2t, prospective_current, steady_charging_i2t
from ..formulas.pack import pack_resistance
from ..formulas.safety import available_power
from .ways import as_stated

DIRECT = {"rail_feed": ("pack", "source")}
SHORT_AT_PACK = derivation("Ohm's law: a short at the terminals of the source, nothing else in it")
NO_SWITCH = Assumption(
    "0 ohm", "adverse", derivation("bound: without its switches a pack gives more")
)
FILTERED = Assumption(
    "filtered-output", "favourable", derivation("a low-pass lets more bass pass than a timer")
)
NO_LEAD = Constant("0 ohm", "a fault next to the source", SHORT_AT_PACK)


def times(voltage: float, count: float) -> float:
    """Voltage across several equal rails in series."""
    return voltage * count


def heat_of_drop(v_f: float, p_source: float, v_source: float) -> float:
    """A constant drop at the mean current."""
    return v_f * p_source / v_source


def heat_of_resistance(r_on: float, i_rms: float) -> float:
    """A resistance at the rms current."""
    return r_on * i_rms**2


def _product(
    name: str, unit: str, meaning: str, *ways: Way, sources: tuple[Source, ...] = ()
) -> Derived:
    return Derived(name, unit, "product", meaning, ways, sources=sources)


_R_STATED = Way(as_stated, {"value": Input("supply.r_source")}, "value")
_V_HIGH = Input("v_source_high")
_R_SHORT = Input("r_short")
_RAILS = Input("rail_count")
_BULK = Input("supply.bulk.c")
_RAIL_HIGH = Input("v_rail_high")

DERIVED: tuple[Derived, ...] = (
    _product(
        "v_across_fuse",
        "V",
        "direct voltage that an opening fuse has to break",
        Way(as_stated, {"value": _V_HIGH}, "value", when={"rail_feed": "converter"}),
        Way(times, {"voltage": _V_HIGH, "count": _RAILS}, "voltage * count", when=DIRECT),
        sources=(derivation("a shoot-through lies across all rails at once"),),
    ),
    _product(
        "detector_senses",
        "word",
        "what the detector of direct voltage looks at",
        Way(
            as_stated,
            {"value": Input("protection.dc_detector.senses", default=FILTERED)},
            "value",
        ),
    ),
    _product(
        "r_short",
        "ohm",
        "resistance of the source alone, into a short at its terminals",
        Way(
            pack_resistance,
            {
                "series": Input("battery.series"),
                "parallel": Input("battery.parallel"),
                "r_cell": Input("battery.cell.r_internal"),
                "r_protection": Input("battery.protection.r", default=NO_SWITCH),
                "r_lead": NO_LEAD,
            },
            "series / parallel * r_cell + r_protection",
            when={"supply.source": "battery"},
        ),
        _R_STATED,
        sources=(SHORT_AT_PACK,),
    ),
    _product(
        "i_short",
        "A",
        "prospective short-circuit current of the source",
        Way(prospective_current, {"v": _V_HIGH, "r": _R_SHORT}, "v / r"),
        sources=(SHORT_AT_PACK,),
    ),
    _product(
        "p_fault",
        "W",
        "largest power that the source gives to a fault",
        Way(
            available_power,
            {"v": _V_HIGH, "r": _R_SHORT},
            "v^2 / (4 r)",
            when={"supply.source": "battery"},
        ),
        Way(
            as_stated,
            {"value": Input("p_supply_max")},
            "value",
            when={"supply.source": ("dc-source", "mains-converter")},
        ),
        Way(available_power, {"v": _V_HIGH, "r": _R_SHORT}, "v^2 / (4 r)"),
        sources=(derivation("power matching: a fault as large as the source's resistance"),),
    ),
    _product(
        "r_charging",
        "ohm",
        "resistance through which the empty capacitors are charged",
        Way(as_stated, {"value": Input("protection.inrush.r")}, "value"),
        Way(as_stated, {"value": _R_SHORT}, "value"),
    ),
    _product(
        "i2t_charging",
        "A2s",
        "I2t of the charging current of one rail at switch-on",
        Way(
            steady_charging_i2t,
            {"c": _BULK, "v": _RAIL_HIGH, "i": Input("protection.inrush.i_limit")},
            "i c v",
        ),
        Way(
            charging_i2t,
            {"c": _BULK, "v": _RAIL_HIGH, "r": Input("r_charging")},
            "c v^2 / (2 r)",
        ),
        sources=(derivation("integral of the squared current over the charging"),),
    ),
    _product(
        "p_blocking",
        "W",
        "heat of the part that blocks a reversed source, at rated power",
        Way(
            heat_of_drop,
            {
                "v_f": Input("protection.reverse_polarity.v_f"),
                "p_source": Input("p_source_rated"),
                "v_source": Input("v_source_low_at_most"),
            },
            "v_f * p_source / v_source",
            when={"protection.reverse_polarity.method": "schottky"},
        ),
        Way(
            heat_of_resistance,
            {"r_on": Input("protection.reverse_polarity.r_on"), "i_rms": Input("i_source_rms")},
            "r_on * i_rms^2",
            when={"protection.reverse_polarity.method": ("p-channel", "n-channel")},
        ),
        sources=(derivation("Joule heat of a drop and of a resistance"),),
    ),
)
