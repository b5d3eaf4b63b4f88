"""What no filter capacitor can be: bounds on what is stated of it, by its dielectric."""

from ...linter.check import Constant, Derived, Source, Way, from_memory
from .ways import as_stated

PARTS = ("c_across", "c_ground")
CLASS_2 = "ceramic-class-2"
BIASED = Source("data sheets of class 2 ceramics, common practice", kind="common practice")
LOSSES = from_memory("data sheets of film and ceramic capacitors", "loss factor at 100 kHz")
LEAST_LOSS = {
    CLASS_2: "0.004",
    "polyester": "0.003",
}


def _retention(which: str) -> Derived:
    most = Constant("97 %", "capacitance left at any working voltage: class 2", BIASED)
    return Derived(
        f"{which}_retention_most",
        "1",
        "channel",
        "what a class 2 ceramic keeps at any working voltage",
        (
            Way(
                as_stated,
                {"value": most},
                "value",
                when={f"filter.{which}.dielectric": CLASS_2},
            ),
        ),
        bounds_from_above=(f"filter.{which}.bias_retention",),
        bounds_by="practice",
        sources=(BIASED,),
    )


def _loss(which: str) -> Derived:
    return Derived(
        f"{which}_loss_least",
        "1",
        "channel",
        "the loss factor of the best of its dielectric",
        tuple(
            Way(
                as_stated,
                {"value": Constant(least, f"least loss factor: {dielectric}", LOSSES)},
                "value",
                when={f"filter.{which}.dielectric": dielectric},
            )
            for dielectric, least in LEAST_LOSS.items()
        ),
        bounds_from_below=(f"filter.{which}.tan_delta",),
        bounds_by="practice",
        sources=(LOSSES,),
    )


DERIVED: tuple[Derived, ...] = tuple(
    bound(which) for which in PARTS for bound in (_retention, _loss)
)
