"""What ends a short circuit behind the source, and how much current flows until then."""

from collections.abc import Mapping

from ...linter.check import (
    Assumption,
    Constant,
    Derived,
    Input,
    Way,
    Words,
    derivation,
    from_memory,
)
from ..formulas.fuse import opening_current
from ..formulas.maths import choose
from .ways import as_stated, no, yes

ENDED = derivation("bound: something ends the fault")
CERTIFIED = from_memory(
    "IEC 62368-1, annex G", "certified supplies survive a lasting short circuit"
)
FUSE = {"protection.fuse": "fitted"}
NO_FUSE = {"protection.fuse": "none"}
BATTERY = {"supply.source": "battery"}
NOT_A_BATTERY = {"supply.source": ("dc-source", "mains-converter")}


def unbroken(p_fault: float, i_short: float, i_breaking: float) -> float:
    """Nothing where the pack's switches break the current, else all of the power."""
    return choose(i_short > i_breaking, p_fault, 0 * p_fault)


def limit_of_source(p_supply_max: float, v_rail: float, rail_count: float) -> float:
    """Current of ONE rail at which a source limits."""
    return p_supply_max / (v_rail * rail_count)


def _of(path: str, when: Mapping[str, Words]) -> Way:
    return Way(as_stated, {"value": Input(path)}, "value", when=when)


_OPENS = {
    "i_rated": Input("protection.fuse.i_rated"),
    "standard": Input("protection.fuse.standard"),
}
_P_FAULT = Input("p_fault")
_I_SHORT = Input("i_short")


def _lasting(
    name: str, meaning: str, fuse: Mapping[str, Words], *none: Mapping[str, Words]
) -> Derived:
    """The largest current that lasts until a fuse, a pack or a source ends it."""
    ways: list[Way] = [Way(opening_current, _OPENS, "1.35 (UL) or 2.1 (IEC) i_rated", when=fuse)]
    for missing in none:
        trips = {**missing, **BATTERY, "battery.protection": "fitted"}
        bare = {**missing, **BATTERY, "battery.protection": "none"}
        limits = {**missing, **NOT_A_BATTERY, "source_self_limits": "yes"}
        stiff = {**missing, **NOT_A_BATTERY, "source_self_limits": "no"}
        ways += [
            _of("battery.protection.i_trip", trips),
            _of("i_short", bare),
            _of("i_source_limit", limits),
            _of("i_short", stiff),
        ]
    return Derived(name, "A", "product", meaning, tuple(ways))


DERIVED: tuple[Derived, ...] = (
    Derived(
        "connector_seen",
        "word",
        "product",
        "whether a supply connector is described; connector-current asks else",
        (
            Way(yes, {}, "yes", when={"wiring.connector": "fitted"}),
            Way(no, {}, "no"),
        ),
    ),
    Derived(
        "fuse_seen",
        "word",
        "product",
        "whether the spec says if there is a fuse; unprotected-source-power asks else",
        (
            Way(yes, {}, "yes", when={"protection.fuse": ("fitted", "none")}),
            Way(no, {}, "no"),
        ),
    ),
    Derived(
        "source_self_limits",
        "word",
        "product",
        "whether the source by itself ends or limits a short circuit",
        (
            Way(no, {}, "no: a battery does not", when=BATTERY),
            Way(
                yes,
                {},
                "yes: certified",
                when={"supply.source": "mains-converter", "supply.certified": "yes"},
                assumes=Assumption(None, "neutral", CERTIFIED),
            ),
        ),
        stated_at="supply.self_limiting",
    ),
    Derived(
        "i_source_limit",
        "A",
        "product",
        "current of ONE rail at which the source limits",
        (
            Way(
                limit_of_source,
                {
                    "p_supply_max": Input("p_supply_max"),
                    "v_rail": Input("v_rail_low"),
                    "rail_count": Input("rail_count"),
                },
                "p_supply_max / (v_rail rail_count)",
            ),
        ),
    ),
    Derived(
        "p_unended",
        "W",
        "product",
        "power of a fault that neither fuse nor pack nor source ends",
        (
            Way(
                as_stated,
                {"value": Constant("0 W", "something ends the fault", ENDED)},
                "value",
                when=FUSE,
            ),
            _of("p_fault", {**NO_FUSE, **BATTERY, "battery.protection": "none"}),
            Way(
                unbroken,
                {
                    "p_fault": _P_FAULT,
                    "i_short": _I_SHORT,
                    "i_breaking": Input("battery.protection.i_breaking"),
                },
                "0 where i_breaking is i_short or more, else p_fault",
                when={**NO_FUSE, **BATTERY, "battery.protection": "fitted"},
            ),
            Way(
                as_stated,
                {"value": Constant("0 W", "something ends the fault", ENDED)},
                "value",
                when={**NO_FUSE, **NOT_A_BATTERY, "source_self_limits": "yes"},
            ),
            _of("p_fault", {**NO_FUSE, **NOT_A_BATTERY, "source_self_limits": "no"}),
        ),
    ),
    Derived(
        "i_to_break",
        "A",
        "product",
        "short-circuit current that a fuse at the source has to break",
        (
            _of("i_source_limit", {**NOT_A_BATTERY, "source_self_limits": "yes"}),
            _of("i_short", {}),
        ),
    ),
    _lasting("i_lasting", "largest current that lasts until something ends it", FUSE, NO_FUSE),
    _lasting(
        "i_lasting_lead",
        "the same in the lead from the source; a fuse on the board does not protect it",
        {**FUSE, "protection.fuse.place": "source"},
        {**FUSE, "protection.fuse.place": "board"},
        NO_FUSE,
    ),
)
