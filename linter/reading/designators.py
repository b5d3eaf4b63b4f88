"""Reference designators as a spec names them: ``C3, C7``, ``C3-C6``, ``C1 + C2``.

Each group of a list bears the stated value; designators joined by ``+`` bear it together.
"""

import re
from typing import Any

MOST = 1000
EXAMPLE = "C3, C5-C8"
EXPECTED = "reference designators: several with commas, a range C3-C6, C1 + C2 for a sum"

Group = tuple[str, ...]

_ONE = re.compile(r"([A-Za-z][A-Za-z_]*)([0-9]{1,6})([A-Za-z]?)")
_RANGE = re.compile(
    r"([A-Za-z][A-Za-z_]*)([0-9]{1,6})\s*(?:-|–|\.\.\.?)\s*([A-Za-z_]*)([0-9]{1,6})"
)


def designators(data: Any) -> tuple[Group, ...] | None:
    """The groups of designators in a text or a list of texts; None where it is none.

    >>> designators("C1 + C2, R3-R5")
    (('C1', 'C2'), ('R3',), ('R4',), ('R5',))
    """
    texts = data if isinstance(data, list) else [data]
    groups: list[Group] = []
    count = 0
    for text in texts:
        for piece in re.split(r"[,;]", text) if isinstance(text, str) else [""]:
            found = _groups(piece.strip())
            count += sum(map(len, found))
            if not found or count > MOST:
                return None
            groups += found
    return tuple(groups)


def _groups(text: str) -> list[Group]:
    if "+" in text:
        pieces = [_names(piece.strip()) for piece in text.split("+")]
        return [tuple(name for names in pieces for name in names)] if all(pieces) else []
    return [(name,) for name in _names(text)]


def _names(text: str) -> list[str]:
    """The designators of one piece: itself, or all of a range; an empty name where it is none.

    >>> _names("C9-11"), _names("C")
    (['C9', 'C10', 'C11'], [])
    """
    if _ONE.fullmatch(text):
        return [text.upper()]
    match = _RANGE.fullmatch(text)
    if match is None or match[3].upper() not in ("", match[1].upper()):
        return []
    first, last = int(match[2]), int(match[4])
    if not first <= last <= first + MOST:
        return []
    return [f"{match[1].upper()}{number}" for number in range(first, last + 1)]
