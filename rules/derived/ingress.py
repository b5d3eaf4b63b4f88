"""Dust and water: what the box is claimed to keep out, and what that leaves on the board."""

from ...linter.check import (
    Assumption,
    Derived,
    Input,
    Source,
    Way,
    from_memory,
    quoted,
)
from ..formulas.safety import NO_CODE, ip_digits
from .ways import as_stated, no

OUTDOOR = {"environment.place": "outdoor"}
CODE = Input("environment.ip_code")
DEGREES = Assumption(None, "neutral", from_memory("IEC 60664-1: degree 2 in rooms, 3 outdoors"))
WET = quoted(
    "IEC TC74, 74/585/NP, equipment installed outdoors, table 2",
    "as quoted on the mailing list emc-pstc, message 18619: IPX4 gives degree 3 inside, IP54"
    " degree 2",
)
BOXED = Assumption(None, "neutral", WET)


def outdoors() -> float:
    """Dust and rain."""
    return 3.0


def outdoors_in_a_box(ip_code: str) -> float:
    """A box that keeps dust and splashes out, IP54 or better, is a room of its own."""
    solids, water = ip_digits(ip_code)
    return 2.0 if solids >= 5 and water >= 4 else 3.0


def indoors() -> float:
    """Dust, now and then damp."""
    return 2.0


def claimed(ip_code: str) -> str:
    """A code is stated, whatever it says."""
    return "no" if ip_code == NO_CODE else "yes"


def nothing() -> str:
    """Nothing is claimed."""
    return NO_CODE


def _product(
    name: str,
    unit: str,
    meaning: str,
    *ways: Way,
    stated_at: str | None = None,
    sources: tuple[Source, ...] = (),
) -> Derived:
    return Derived(name, unit, "product", meaning, ways, stated_at, sources=sources)


DERIVED: tuple[Derived, ...] = (
    _product(
        "pollution_degree",
        "1",
        "degree at the board after IEC 60664-1",
        Way(
            outdoors_in_a_box,
            {"ip_code": CODE},
            "3, 2 where both digits of ip_code are 5 and 4 or more",
            when=OUTDOOR,
            assumes=BOXED,
        ),
        Way(outdoors, {}, "3", when=OUTDOOR, assumes=DEGREES),
        Way(indoors, {}, "2", assumes=DEGREES),
        stated_at="environment.pollution_degree",
    ),
    _product(
        "ip_claim",
        "word",
        "whether protection by the enclosure is claimed at all",
        Way(claimed, {"ip_code": CODE}, "yes, unless ip_code is none"),
        Way(no, {}, "no"),
    ),
    _product(
        "ip_in_rain",
        "word",
        "code that keeps the rain out; nothing is claimed of vents, or of no box",
        Way(as_stated, {"value": CODE}, "value"),
        Way(nothing, {}, NO_CODE, when={"thermal.enclosure": "none"}),
        Way(nothing, {}, NO_CODE, when={"thermal.enclosure.openings": "vented"}),
    ),
)
