"""Where mains, or more than may be touched, stand behind the source, whatever its name."""

from ...linter.check import Derived, Input, Way
from ..formulas.constants import DC_CLASS_1
from ..formulas.safety import ENERGY_CLASSES
from .ways import no, yes


def above_class_1(voltage: float, limit: float) -> str:
    """Whether a direct voltage is more than may be touched."""
    return "yes" if voltage > limit else "no"


DERIVED: tuple[Derived, ...] = (
    Derived(
        "mains_side",
        "word",
        "product",
        "whether a barrier to mains, or to more than 60 V, is needed",
        (
            Way(yes, {}, "yes", {"supply.source": "mains-converter"}),
            Way(no, {}, "no", {"supply.source": "battery"}),
            Way(
                above_class_1,
                {"voltage": Input("v_touch"), "limit": DC_CLASS_1},
                "yes if voltage is above limit",
                when={"supply.source": "dc-source"},
            ),
        ),
        sources=(ENERGY_CLASSES,),
    ),
    Derived(
        "mains_exposed",
        "word",
        "product",
        "whether mains, or more than 60 V, come in without a certified barrier",
        (
            Way(no, {}, "no", {"mains_side": "no"}),
            Way(no, {}, "no", {"supply.certified": "yes"}),
            Way(yes, {}, "yes", {"supply.certified": "no"}),
        ),
    ),
)
