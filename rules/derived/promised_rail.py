"""Power at the supply at which it is promised, where the paperwork says at which.

A car amplifier is rated at 14.4 V, a battery product at the nominal voltage of its pack; both run
lower and higher than that. Where nothing is stated the power is promised over the whole range.
What a part bears is judged over the whole range in any case. A converter or a mains supply holds
its rail whatever feeds it, so that a rating at one voltage changes nothing there.
"""

from dataclasses import replace

from ...linter.check import Derived, Input, Scope, Way, derivation, quoted
from ..formulas.supply import loaded_voltage
from .output import M_MAX, N_LEGS, R_PATH, clip_onset, half_of_single, whole_of_split
from .rated import MOST, MOST_TEXT, most_power
from .supply import unloaded
from .ways import as_stated, no

RATED_AT = quoted(
    "ANSI/CTA-2006, as told on a page of a maker, kenwood.eu",
    "amplifiers of vehicles: power into 4 ohm at 14.4 V and 1 % distortion",
)
STATED = {"supply_rated": "yes"}
SILENT = {"supply_rated": "no"}
V_RATED = Input("claims.rated_supply")
R_KNOWN = Input("r_rail_known")
P_CREST = Input("p_rail_crest")
LOADED = "(v_open + root(v_open^2 - 4 r p)) / 2"


def rated_at(v: float) -> str:
    """A supply is stated for the rating, whatever it is."""
    return "yes"


def _promised(name: str, unit: str, each: Scope, meaning: str, base: str, *ways: Way) -> Derived:
    """A quantity at the stated supply by ``ways``, else ``base``: that of the whole range."""
    at_rated = tuple(replace(way, when={**way.when, **STATED}) for way in ways)
    whole = Way(as_stated, {"value": Input(base)}, "value", SILENT)
    return Derived(name, unit, each, meaning, (whole, *at_rated), sources=(RATED_AT,))


def _ideal(name: str, meaning: str, base: str, v_rail: str) -> Derived:
    inputs = {"n_legs": N_LEGS, "v_rail_loaded": Input(v_rail)}
    return _promised(
        name,
        "V",
        "channel",
        meaning,
        base,
        Way(half_of_single, inputs, "n_legs v_rail_loaded / 2", {"supply.rails": "single"}),
        Way(whole_of_split, inputs, "n_legs v_rail_loaded", {"supply.rails": "split"}),
    )


DERIVED: tuple[Derived, ...] = (
    Derived(
        "supply_rated",
        "word",
        "product",
        "whether power is promised at one voltage of a supply that is the rail itself",
        (
            Way(
                rated_at,
                {"v": V_RATED},
                "yes, since v is stated",
                {"rail_feed": ("pack", "source"), "supply.source": ("battery", "dc-source")},
            ),
            Way(no, {}, "no"),
        ),
        sources=(derivation("a converter holds its rail whatever feeds it"),),
    ),
    _promised(
        "v_rail_promised",
        "V",
        "product",
        "ONE rail to ground, idle, where rated power is promised",
        "v_rail_low",
        Way(as_stated, {"value": V_RATED}, "value"),
    ),
    _promised(
        "v_loaded_promised",
        "V",
        "product",
        "the same at the crest of the lowest note, all channels at rated power",
        "v_rail_loaded",
        Way(
            unloaded,
            {"v_open": V_RATED, "r": Input("r_rail")},
            "v_open: without r nothing sags",
            {"source_sags": "no"},
        ),
        Way(loaded_voltage, {"v_open": V_RATED, "r": Input("r_rail"), "p": P_CREST}, LOADED),
    ),
    _promised(
        "v_trough_promised",
        "V",
        "product",
        "the same; only where the source's resistance is known",
        "v_rail_trough",
        Way(loaded_voltage, {"v_open": V_RATED, "r": R_KNOWN, "p": P_CREST}, LOADED),
    ),
    _ideal(
        "v_open_promised",
        "load peak that the idle rail allows where rated power is promised",
        "v_ideal",
        "v_rail_promised",
    ),
    _ideal(
        "v_ideal_promised",
        "load peak that the loaded rail allows where rated power is promised",
        "v_ideal_loaded",
        "v_loaded_promised",
    ),
    _promised(
        "p_sine_promised",
        "W",
        "channel",
        "largest clean sine where rated power is promised, less what known resistances take, cold",
        "p_sine_ideal",
        Way(most_power, {**MOST, "v_ideal": Input("v_open_promised")}, MOST_TEXT),
    ),
    _promised(
        "p_out_promised",
        "W",
        "channel",
        "sine power at the onset of clipping where it is promised; what is not given takes nothing",
        "p_out_max",
        *clip_onset(M_MAX, R_PATH, Input("v_ideal_promised")),
    ),
    _promised(
        "p_usual_promised",
        "W",
        "channel",
        "the same, typical where values are not given",
        "p_out_usual",
        *clip_onset(Input("depth_usual"), Input("r_drop"), Input("v_ideal_promised")),
    ),
)
