"""Ripple of the rail and ripple current of its capacitors."""

from ...linter.check import COMMON_PRACTICE, Assumption, Constant, Derived, Input, Way
from ..formulas.bulk import CARRIER_RIPPLE, bulk_current
from ..formulas.maths import PI, smaller
from ..formulas.supply import (
    BRIDGE_CURRENT,
    SHARED_RIPPLE,
    lowest,
    programme_share,
    rail_ripple,
    source_share,
    stored_energy,
)
from .ways import as_stated, yes

SHARED_CLOCK = Assumption("yes", "adverse", COMMON_PRACTICE)


def first_current(v_rail: float, r: float) -> float:
    """Current into empty capacitors."""
    return v_rail / r


def current_through_lead(v_rail: float, r: float, r_lead: float) -> float:
    """The same through a supply lead."""
    return v_rail / (r + r_lead)


def weaker(a: float, b: float) -> float:
    """The smaller of two ratings."""
    return smaller(a, b)


def more_than(c: float, v_rail: float, rail_count: float, most: float) -> str:
    """Whether empty capacitors take more energy than contacts bear."""
    return "yes" if rail_count * stored_energy(v_rail, c) > most else "no"


def ripple_at_rated_power(
    rated_power: tuple[float, ...],
    rail_count: float,
    r: float,
    c: float,
    f: tuple[float, ...],
    p_signal: float,
    v_rail: float,
) -> float:
    """Ripple of ONE rail with all channels at rated power, their losses left out."""
    power = sum(rated_power[1:], rated_power[0]) / rail_count
    low = lowest(f)
    return rail_ripple(
        v_rail, r, power * source_share(r, c, 2 * low), p_signal, 2 * PI * low * r * c
    )


def at_rated(
    n_legs: tuple[float, ...],
    levels: tuple[str, ...],
    i_peak: tuple[float, ...],
    depth: tuple[float, ...],
    locked: tuple[str, ...],
    r: float,
    c: float,
    f: tuple[float, ...],
) -> float:
    """Ripple current with all channels at rated power."""
    return bulk_current(n_legs, levels, i_peak, depth, locked, r, c, f, 1.0)


def at_programme(
    n_legs: tuple[float, ...],
    levels: tuple[str, ...],
    i_peak: tuple[float, ...],
    depth: tuple[float, ...],
    locked: tuple[str, ...],
    r: float,
    c: float,
    f: tuple[float, ...],
    crest_factor: float,
) -> float:
    """Ripple current with all channels at programme level."""
    share = programme_share(crest_factor)
    return bulk_current(n_legs, levels, i_peak, depth, locked, r, c, f, share)


UNLIMITED: dict[str, str | tuple[str, ...]] = {
    "protection.inrush": "none",
    "rail_feed": ("pack", "source"),
}
_I_SURGE = Input("protection.inrush.i_surge")
_I_CONTACT = Input("wiring.connector.i_surge")
_INPUTS = {
    "n_legs": Input("all n_legs"),
    "levels": Input("all levels"),
    "i_peak": Input("all i_rated_peak"),
    "depth": Input("all depth_rated"),
    "locked": Input("all modulator.locked", default=SHARED_CLOCK),
    "r": Input("r_rail"),
    "c": Input("c_rail"),
    "f": Input("all band_low"),
}
_FORMULA = (
    "root of audio part (i_peak, depth by n_legs, share of the capacitors from r, c, f)"
    " squared and carrier part (levels; straight when locked) squared"
)

DERIVED = (
    Derived(
        "v_rail_ripple",
        "V",
        "product",
        "ripple of ONE rail at the lowest note, all channels at rated power, peak to peak",
        (
            Way(
                ripple_at_rated_power,
                {
                    "rated_power": Input("all rated_power"),
                    "rail_count": Input("rail_count"),
                    "r": Input("r_rail_known"),
                    "c": Input("c_rail"),
                    "f": Input("all band_low"),
                    "p_signal": Input("p_rail_signal"),
                    "v_rail": Input("v_rail_low"),
                },
                "r / v_rail times peak to peak of p_signal at f less the sum of rated_power /"
                " rail_count * source_share(r, c, 2 f) at 2 f, phases by 2 pi f r c",
            ),
        ),
        sources=(SHARED_RIPPLE,),
    ),
    Derived(
        "i_bulk_rated",
        "A",
        "product",
        "ripple current of the bulk capacitors of ONE rail, rated power, rms",
        (Way(at_rated, _INPUTS, _FORMULA),),
        sources=(BRIDGE_CURRENT, CARRIER_RIPPLE),
    ),
    Derived(
        "i_bulk_programme",
        "A",
        "product",
        "ripple current of the bulk capacitors of ONE rail, programme level, rms",
        (
            Way(
                at_programme,
                {
                    **_INPUTS,
                    "crest_factor": Input("crest_tested"),
                },
                _FORMULA + ", rated power scaled by crest_factor",
            ),
        ),
        sources=(BRIDGE_CURRENT, CARRIER_RIPPLE),
    ),
    Derived(
        "i_inrush",
        "A",
        "product",
        "largest current while the bulk capacitors of ONE rail are charged",
        (
            Way(
                as_stated,
                {"value": Input("protection.inrush.i_limit")},
                formula="value",
            ),
            Way(
                first_current,
                {"v_rail": Input("v_rail_high"), "r": Input("protection.inrush.r")},
                formula="v_rail / r",
            ),
            Way(
                as_stated,
                {"value": Input("i_source_limit")},
                formula="value",
                when={**UNLIMITED, "source_self_limits": "yes"},
            ),
            Way(
                current_through_lead,
                {
                    "v_rail": Input("v_rail_high"),
                    "r": Input("r_short"),
                    "r_lead": Input("r_supply_lead"),
                },
                formula="v_rail / (r + r_lead)",
                when={**UNLIMITED, "source_self_limits": "no"},
            ),
        ),
    ),
    Derived(
        "i_surge_path",
        "A",
        "product",
        "weakest surge current rating in the path of the source",
        (
            Way(weaker, {"a": _I_SURGE, "b": _I_CONTACT}, formula="smaller of a and b"),
            Way(as_stated, {"value": _I_SURGE}, formula="value"),
            Way(as_stated, {"value": _I_CONTACT}, formula="value"),
        ),
    ),
    Derived(
        "inrush_judged",
        "word",
        "product",
        "whether the charging current is judged: limited, or more than contacts withstand",
        (
            Way(yes, {}, formula="yes: limited", when={"protection.inrush": "fitted"}),
            Way(
                more_than,
                {
                    "c": Input("supply.bulk.c:nominal", meaning="bulk capacitors of ONE rail"),
                    "v_rail": Input("v_rail_high"),
                    "rail_count": Input("rail_count"),
                    "most": Constant("0.35 J", "energy that contacts bear", COMMON_PRACTICE),
                },
                formula="yes if rail_count c v_rail^2 / 2 is above most",
                when={"rail_feed": ("pack", "source")},
            ),
        ),
    ),
)
