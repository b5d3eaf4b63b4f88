"""The two ends of ranges that are pairs of numbers: audio band and rated loads.

Unlike a tolerance, such a range is not searched for a worst corner: a check says which
of the two ends it means.
"""

from ...linter.check import Assumption, Derived, Input, Way, derivation
from .ways import as_stated

NOT_STATED = Assumption(0.0, "absent", derivation("no audio band is claimed"))
NO_RESPONSE = Assumption("0 dB", "absent", derivation("no deviation of the response is claimed"))


def claimed(band: float) -> str:
    """Whether a band is claimed: a band that is not stated counts 0 Hz here."""
    return "yes" if band > 0 else "no"


def response_claimed(response: float) -> str:
    """Whether a deviation is claimed: one that is not stated counts 0 dB here."""
    return "yes" if response > 0 else "no"


def _end(name: str, unit: str, path: str, meaning: str, fall_back: tuple[Way, ...] = ()) -> Derived:
    way = Way(as_stated, {"value": Input(path)}, formula=path.partition(":")[0])
    return Derived(name, unit, "channel", meaning, (way, *fall_back))


_NETWORK = Way(
    as_stated,
    {"value": Input("z_load")},
    formula="z_load",
)

DERIVED = (
    Derived(
        "band_claimed",
        "word",
        "channel",
        "whether the spec claims an audio band",
        (Way(claimed, {"band": Input("band", default=NOT_STATED)}, "band above 0"),),
    ),
    Derived(
        "response_claimed",
        "word",
        "channel",
        "whether the spec claims how level the response is",
        (
            Way(
                response_claimed,
                {"response": Input("claims.response", default=NO_RESPONSE)},
                "response above 0 dB",
            ),
        ),
    ),
    _end("band_low", "Hz", "band:low", "lowest audio frequency of the channel"),
    _end("band_high", "Hz", "band:high", "highest audio frequency of the channel"),
    _end("load_low", "ohm", "load_range:low", "lowest rated load", (_NETWORK,)),
    _end("load_high", "ohm", "load_range:high", "highest rated load", (_NETWORK,)),
)
