"""How hot a surface that people touch may be."""

ROOM = 25.0
"""Room in which surfaces are judged [degC]: the limits are not moved to hotter ambients
(discussion of the committee's members on the emc-pstc list, January 2020)."""

FIRST_LIMIT = {
    "over-1-min": {"metal": 48.0, "glass": 48.0, "plastic": 48.0, "wood": 48.0},
    "10-s-to-1-min": {"metal": 51.0, "glass": 56.0, "plastic": 60.0, "wood": 60.0},
    "1-to-10-s": {"metal": 60.0, "glass": 71.0, "plastic": 77.0, "wood": 107.0},
    "under-1-s": {"metal": 70.0, "glass": 85.0, "plastic": 94.0, "wood": 140.0},
}
"""Limit of class TS1 [degC] by longest touch and material: IEC 62368-1 table 38, from
memory; only the 77 of plastic and the span 48 .. 94 were seen quoted.  Class TS2 ends
10 K higher in every cell."""

SECOND_STEP = 10.0
"""TS2 over TS1 [K], from memory."""


def allowed_rise(touch: str, material: str, users: str) -> float:
    """Rise over a room of 25 degC that a surface may have, in K.

    touch, material, users: words of the spec.  Ordinary persons: class TS1; instructed
    and skilled persons may meet TS2.
    Units: touch [word], material [word], users [word]; returns [K].

    >>> allowed_rise("under-1-s", "metal", "ordinary")
    45.0
    """
    extra = 0.0 if users == "ordinary" else SECOND_STEP
    return FIRST_LIMIT[touch][material] - ROOM + extra
