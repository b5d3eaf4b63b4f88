"""The two ends of ranges that are pairs of numbers: audio band and rated loads.

Unlike a tolerance, such a range is not searched for a worst corner: a check says which
of the two ends it means.
"""

from ...linter.check import Derived, Input, Way
from .ways import as_stated


def _end(name: str, unit: str, path: str, meaning: str, fall_back: tuple[Way, ...] = ()) -> Derived:
    way = Way(as_stated, {"value": Input(path, unit, meaning)}, formula=path.partition(":")[0])
    return Derived(name, unit, "channel", meaning, (way, *fall_back))


_NETWORK = Way(
    as_stated,
    {"value": Input("z_load", "ohm", "load of the channel")},
    formula="z_load",
)

DERIVED = (
    _end("band_low", "Hz", "band:low", "lowest audio frequency of the channel"),
    _end("band_high", "Hz", "band:high", "highest audio frequency of the channel"),
    _end("load_low", "ohm", "load_range:low", "lowest rated load", (_NETWORK,)),
    _end("load_high", "ohm", "load_range:high", "highest rated load", (_NETWORK,)),
)
