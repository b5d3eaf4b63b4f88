"""Current that a filter capacitor may carry, at the carrier and in the treble."""

from ...linter.check import (
    COMMON_PRACTICE,
    Assumption,
    Constant,
    Derived,
    Input,
    Source,
    Way,
    from_memory,
)
from ..formulas.capacitor import current_at_loss
from .ways import as_stated

MAKERS_TABLE = Source("CEE, Technicalities of film capacitors", "table: loss factor at 100 kHz")
METAL = from_memory("makers' loss factors of polypropylene, which rise tenfold towards 100 kHz")
LOSS_FACTORS = (
    ("polypropylene", "0.0002", MAKERS_TABLE),
    ("polyester", "0.017", MAKERS_TABLE),
    ("ceramic-class-1", "0.001", from_memory("data sheets of class-1 capacitors")),
    ("ceramic-class-2", "0.025", from_memory("data sheets of class-2 capacitors")),
)


def _ways(which: str, frequency: Input) -> tuple[Way, ...]:
    shared: dict[str, Input | Constant] = {
        "p": Constant("0.25 W", "heat that a small capacitor gets rid of", COMMON_PRACTICE),
        "f": frequency,
        "c": Input(f"filter.{which}.c"),
        "r_metal": Constant("5 mohm", "metal layers and leads of a small capacitor", METAL),
    }
    text = "sqrt(p / (tan_delta / (2 pi f c) + r_metal))"
    stated = Input(f"filter.{which}.i_rated")
    loss = Input(f"filter.{which}.tan_delta")
    found = [
        Way(as_stated, {"value": stated}, "value"),
        Way(
            current_at_loss,
            {**shared, "tan_delta": loss},
            text,
            assumes=Assumption(None, "neutral", COMMON_PRACTICE),
        ),
    ]
    for dielectric, factor, basis in LOSS_FACTORS:
        usual = Constant(factor, f"loss factor of {dielectric}", basis)
        found.append(
            Way(
                current_at_loss,
                {**shared, "tan_delta": usual},
                text,
                when={f"filter.{which}.dielectric": dielectric},
                assumes=Assumption(None, "neutral", basis),
            )
        )
    return tuple(found)


CARRIER = Input("f_carrier_effective")
TREBLE = Input("band_high")

DERIVED = tuple(
    Derived(
        f"i_{which}_limit{at}",
        "A",
        "channel",
        f"current that {part} may carry at {where}, rms",
        _ways(which, frequency),
        sources=(MAKERS_TABLE,),
    )
    for which, part in (
        ("c_across", "the capacitor across the load"),
        ("c_ground", "one capacitor to ground"),
    )
    for at, frequency, where in (
        ("", CARRIER, "the lowest carrier frequency"),
        ("_treble", TREBLE, "the highest audio frequency of the channel"),
    )
)
