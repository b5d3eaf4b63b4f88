"""What a source connected the wrong way round meets."""

from ...linter.check import Derived, Input, Way, quoted
from .ways import as_stated

METHOD = "protection.reverse_polarity.method"
REVERSED = quoted(
    "ISO 16750-2:2023, contents as listed by its sellers", "4.7 reversed voltage: a test of its own"
)


def reversible() -> str:
    """Either way round."""
    return "reversible"


def fitted() -> str:
    """It blocks."""
    return "fitted"


def none() -> str:
    """Nothing blocks."""
    return "none"


def without_its_fuse() -> str:
    """A shunt diode carries the short-circuit current until it opens itself."""
    return "without its fuse"


SHUNT = "shunt-diode-and-fuse"

DERIVED: tuple[Derived, ...] = (
    Derived(
        "source_connection",
        "word",
        "product",
        "how the source meets the product",
        (
            Way(
                as_stated,
                {"value": Input("battery.connection")},
                "value",
                when={"supply.source": "battery"},
            ),
            Way(
                reversible,
                {},
                "reversible",
                {"environment.place": "vehicle", "supply.source": "dc-source"},
            ),
        ),
        sources=(REVERSED,),
    ),
    Derived(
        "polarity_block",
        "word",
        "product",
        "whether a part blocks a reversed source",
        (
            Way(none, {}, "none", {"protection.reverse_polarity": "none"}),
            Way(fitted, {}, "fitted", {METHOD: ("schottky", "p-channel", "n-channel")}),
            Way(fitted, {}, "fitted", {METHOD: SHUNT, "protection.fuse": "fitted"}),
            Way(without_its_fuse, {}, "without", {METHOD: SHUNT, "protection.fuse": "none"}),
        ),
    ),
)
