"""How far the supply sags under the music, and the current of the source."""

from ...linter.check import Derived, Input, Source, Way
from ..formulas.supply import (
    BRIDGE_CURRENT,
    CONSTANT_POWER,
    loaded_current,
    loaded_voltage,
    source_current_rms,
)
from .feed import STIFF, constant, one_of
from .power import DIRECT, crest_inputs
from .ways import as_stated, left_out, no

_R = Input("r_rail")
_V_SOURCE = Input("v_source_low_at_most")
_R_AHEAD = Input("r_ahead")


def sags(r: float) -> str:
    """Whether a source with this resistance sags under load."""
    return "yes" if r > 0 else "no"


def unloaded(v_open: float, r: float) -> float:
    """A source without resistance holds its voltage, whatever is taken from it."""
    return v_open


def _product(
    name: str, unit: str, meaning: str, *ways: Way, sources: tuple[Source, ...] = ()
) -> Derived:
    return Derived(name, unit, "product", meaning, ways, sources=sources)


DERIVED = (
    _product(
        "r_ahead",
        "ohm",
        "resistance between the source at rest and the rail or the converter",
        one_of("r_rail", feed=DIRECT),
        Way(
            as_stated,
            {"value": Input("r_pack")},
            "value",
            when={"supply.source": "battery"},
        ),
        constant(
            "0 ohm",
            {"rail_feed": "converter", "supply.source": "battery"},
            left_out("0 ohm", "resistance of the pack"),
        ),
        constant("0 ohm", {"rail_feed": "converter"}, STIFF),
    ),
    _product(
        "source_sags",
        "word",
        "whether a resistance of the source at the rail is known that is not 0",
        Way(sags, {"r": Input("supply.r_source:high", meaning="stated")}, "yes if r is above 0"),
        Way(
            sags,
            {"r": Input("r_rail_known")},
            "yes if r is above 0",
        ),
        Way(no, {}, "no"),
    ),
    _product(
        "v_rail_loaded",
        "V",
        "ONE rail at the crest of the lowest note, all channels at rated power",
        Way(
            unloaded,
            {"v_open": Input("v_rail_low"), "r": _R},
            "v_open: without r nothing sags",
            when={"source_sags": "no"},
        ),
        Way(
            loaded_voltage,
            {"v_open": Input("v_rail_low"), "r": _R, "p": Input("p_rail_crest")},
            "(v_open + root(v_open^2 - 4 r p)) / 2",
        ),
        sources=(CONSTANT_POWER,),
    ),
    _product(
        "v_rail_trough",
        "V",
        "ONE rail at the crest of the lowest note; only where the source's resistance is known",
        Way(
            loaded_voltage,
            {"v_open": Input("v_rail_low"), "r": Input("r_rail_known"), "p": Input("p_rail_crest")},
            "(v_open + root(v_open^2 - 4 r p)) / 2",
        ),
        sources=(CONSTANT_POWER,),
    ),
    _product(
        "v_rail_least",
        "V",
        "ONE rail at its lowest: at the crest of the lowest note, else as stated",
        Way(as_stated, {"value": Input("v_rail_trough")}, "value"),
        Way(as_stated, {"value": Input("v_rail_low")}, "value"),
    ),
    _product(
        "v_source_loaded",
        "V",
        "the source at the crest of the lowest note, all channels at rated power",
        Way(
            loaded_voltage,
            {"v_open": _V_SOURCE, "r": _R_AHEAD, "p": Input("p_source_crest")},
            "(v_open + root(v_open^2 - 4 r p)) / 2",
        ),
        sources=(CONSTANT_POWER,),
    ),
    _product(
        "i_source_peak",
        "A",
        "current of the source at the crest of the lowest note, all channels at rated power",
        Way(
            loaded_current,
            {"v_open": _V_SOURCE, "r": _R_AHEAD, "p": Input("p_source_crest")},
            "p / loaded_voltage(v_open, r, p)",
        ),
        sources=(CONSTANT_POWER, BRIDGE_CURRENT),
    ),
    _product(
        "i_source_rms",
        "A",
        "rms current of the source, all channels at rated power",
        Way(
            source_current_rms,
            {"v_open": _V_SOURCE, "r": _R_AHEAD, **crest_inputs("source")},
            "root of the mean of (p / loaded_voltage(v_open, r, p))^2 over a period,"
            " p = p_mean - p_double cos 2x + p_signal sin x",
        ),
        sources=(CONSTANT_POWER, BRIDGE_CURRENT),
    ),
    _product(
        "i_source_programme",
        "A",
        "mean current of the source at programme level",
        Way(
            loaded_current,
            {"v_open": _V_SOURCE, "r": _R_AHEAD, "p": Input("p_source_programme")},
            "p / loaded_voltage(v_open, r, p)",
        ),
        sources=(CONSTANT_POWER,),
    ),
)
