"""Surges of a vehicle's supply: what is stated, else what the standard tests with."""

from ...linter.check import Assumption, Constant, Derived, Input, Way, derivation, quoted
from ..formulas.maths import choose, smaller
from .ways import as_stated

LOAD_DUMP = quoted(
    "ISO 16750-2, load dump, as quoted in the IT6000C power supply manual, Itech",
    "test B, clamped centrally: 35 V in 12 V systems, typically 58 V in 24 V systems;"
    " test A, not clamped: 79 to 101 V and 151 to 202 V",
)
HALF_WAY = derivation("half-way from 12 V to 24 V")
CLAMPED = Assumption(None, "favourable", LOAD_DUMP)
VEHICLE = {"environment.place": "vehicle"}


def by_system(v_source: float, v_between: float, v_12: float, v_24: float) -> float:
    """Clamped load dump of a 12 V or a 24 V system, told apart by the voltage at rest."""
    return choose(v_source > v_between, v_24, v_12)


def clamped(v_clamp: float, v_surge: float) -> float:
    """What a suppressor lets pass, never more than arrives."""
    return smaller(v_clamp, v_surge)


def _usual(**when: str | tuple[str, ...]) -> Way:
    """The surge of the vehicle's system where none is stated."""
    words = {name.replace("__", "."): word for name, word in when.items()}
    return Way(
        by_system,
        {
            "v_source": Input("v_source_high"),
            "v_between": Constant("18 V", "between 12 V and 24 V systems", HALF_WAY),
            "v_12": Constant("35 V", "clamped load dump, 12 V system", LOAD_DUMP),
            "v_24": Constant("58 V", "clamped load dump, 24 V system", LOAD_DUMP),
        },
        "v_12, above v_between v_24, by v_source",
        when={**VEHICLE, **words},
        assumes=CLAMPED,
    )


_OPEN = Input("v_surge_open")

DERIVED: tuple[Derived, ...] = (
    Derived(
        "v_surge_open",
        "V",
        "product",
        "surge of the vehicle with nothing connected, peak",
        (
            Way(
                as_stated,
                {"value": Input("supply.surge.v")},
                "value",
                when=VEHICLE,
            ),
            _usual(supply__source="dc-source"),
            _usual(battery__chemistry=("lead-acid-agm", "lead-acid-flooded")),
        ),
        sources=(LOAD_DUMP,),
    ),
    Derived(
        "v_surge_usual",
        "V",
        "product",
        "the clamped load dump with which the standard tests such a system",
        (
            _usual(supply__source="dc-source"),
            _usual(battery__chemistry=("lead-acid-agm", "lead-acid-flooded")),
        ),
        bounds_from_below=("supply.surge.v",),
        bounds_by="practice",
        sources=(LOAD_DUMP,),
    ),
    Derived(
        "v_surge_terminal",
        "V",
        "product",
        "what a surge of the vehicle leaves at the terminals",
        (
            Way(
                clamped,
                {"v_clamp": Input("protection.surge.v_clamp"), "v_surge": _OPEN},
                "smaller of v_clamp and v_surge",
                when={"protection.surge": "fitted"},
            ),
            Way(as_stated, {"value": _OPEN}, "value", when={"protection.surge": "none"}),
        ),
    ),
    Derived(
        "v_surge",
        "V",
        "product",
        "the same where the stage hangs on the terminals",
        (
            Way(
                as_stated,
                {"value": Input("v_surge_terminal")},
                "value",
                when={"supply.converter": "none"},
            ),
        ),
    ),
)
