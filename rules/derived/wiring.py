"""Resistance of leads, and the current that a supply lead stands."""

from ...linter.check import (
    Assumption,
    Constant,
    Derived,
    Input,
    Scope,
    Way,
    derivation,
    quoted,
)
from ..formulas.conductors import two_way_resistance, wire_current
from ..formulas.constants import COPPER_RESISTIVITY
from ..formulas.maths import smaller
from .ways import as_stated

NO_LENGTH = Assumption("0 m", "favourable", derivation("a lead of no length has no resistance"))
WIRE_TABLE = quoted(
    "Handbook of Electronic Tables and Formulas, chassis wiring", "as quoted by HyperPhysics"
)


def most_current(area: float, factor: float) -> float:
    """A chassis wire rises by some 35 K at its table's current, so by 140 K at twice that."""
    return factor * wire_current(area)


def tighter_current(i_rated: float, i_most: float) -> float:
    """A rating holds as far as the copper does."""
    return smaller(i_rated, i_most)


def guarded_current(i_rated: float, area: float) -> float:
    """Against an overload that lasts the copper counts, whatever its insulation bears."""
    return smaller(i_rated, wire_current(area))


COPPER_UNKNOWN = derivation("bound: copper as thick as the rating says; area tells")
HOTTEST = derivation(
    "heat goes with the square of the current: twice that of a chassis wire, some 35 K, is"
    " 140 K, which the hottest insulation of 200 degC just withstands"
)


def _thick(area: str) -> Assumption:
    """The largest usual cross-section, while none is stated."""
    return Assumption(area, "favourable", derivation("upper end of the usual range"))


def _lead(name: str, each: Scope, section: str, meaning: str, thick: str) -> Derived:
    return Derived(
        name,
        "mohm",
        each,
        meaning,
        ways=(
            Way(
                two_way_resistance,
                {
                    "resistivity": COPPER_RESISTIVITY,
                    "length": Input(f"{section}.length", default=NO_LENGTH),
                    "area": Input(f"{section}.area", default=_thick(thick)),
                },
                "2 resistivity length / area",
            ),
        ),
        sources=(derivation("Ohm's law, round trip, copper at 20 degC"),),
    )


_I_RATED = Input("wiring.supply_lead.i_rated")
_AREA = Input("wiring.supply_lead.area")
_BY_ONE = (
    Way(as_stated, {"value": _I_RATED}, "i_rated"),
    Way(
        wire_current,
        {"area": _AREA},
        "wire table at area",
        assumes=Assumption(None, "favourable", WIRE_TABLE),
    ),
)

DERIVED: tuple[Derived, ...] = (
    Derived(
        "i_lead_most",
        "A",
        "product",
        "current that the copper of the supply lead carries with the hottest insulation",
        ways=(
            Way(
                most_current,
                {
                    "area": _AREA,
                    "factor": Constant("2", "hottest insulation over chassis wire", HOTTEST),
                },
                "factor * wire table at area",
            ),
        ),
        sources=(WIRE_TABLE, HOTTEST),
    ),
    _lead("r_lead", "channel", "lead", "loudspeaker lead, round trip", "10 mm2"),
    _lead(
        "r_supply_lead",
        "product",
        "wiring.supply_lead",
        "lead from source to board, round trip",
        "49 mm2",
    ),
    Derived(
        "i_lead_rated",
        "A",
        "product",
        "current that the supply lead is rated for",
        ways=(
            Way(
                tighter_current,
                {"i_rated": _I_RATED, "i_most": Input("i_lead_most")},
                "smaller of i_rated and i_most",
            ),
            *_BY_ONE,
        ),
        sources=(WIRE_TABLE,),
    ),
    Derived(
        "i_lead_guarded",
        "A",
        "product",
        "current for which the supply lead is guarded: its rating, at most that of chassis wiring",
        ways=(
            Way(
                guarded_current,
                {"i_rated": _I_RATED, "area": _AREA},
                "smaller of i_rated and wire table at area",
            ),
            Way(
                as_stated,
                {"value": _I_RATED},
                "i_rated",
                assumes=Assumption(None, "favourable", COPPER_UNKNOWN),
            ),
            _BY_ONE[1],
        ),
        sources=(WIRE_TABLE,),
    ),
)
