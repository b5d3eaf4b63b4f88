"""Standards that a product's paperwork cites: families by number, and what is withdrawn.

A list of words, no judgement of conformity: that is for a test house.
"""

import re

from ...linter.check import from_memory, quoted

WITHDRAWN_2020 = quoted(
    "EN 60065 and EN 60950-1 withdrawn 2020-12-20, replaced by EN 62368-1",
    "notices of Nemko and other laboratories",
)
REPLACED = from_memory("lists of harmonised standards of the European Union")
FAMILIES_BASIS = from_memory("lists of harmonised standards; 47 CFR 15; UN Manual of Tests 38.3")

WITHDRAWN = {
    r"60065": "IEC 62368-1",
    r"60950": "IEC 62368-1",
    r"(CISPR ?|EN ?550)13(?![0-9])": "CISPR 32",
    r"(CISPR ?|EN ?550)22(?![0-9])": "CISPR 32",
    r"(CISPR ?|EN ?550)20(?![0-9])": "CISPR 35",
    r"(CISPR ?|EN ?550)24(?![0-9])": "CISPR 35",
    r"62133(?!-[12])": "IEC 62133-1 or -2",
    r"1999/0?5/EC": "2014/53/EU",
    r"2004/108/EC": "2014/30/EU",
    r"2006/95/EC": "2014/35/EU",
    r"2006/66/EC": "(EU) 2023/1542",
    r"2001/95/EC": "(EU) 2023/988",
    r"2002/95/EC": "2011/65/EU",
}
"""Withdrawn or repealed texts as patterns, and what took their place."""

SAFETY = (r"62368",)
EMISSION = (
    *(r"CISPR ?32", r"55032", r"CISPR ?25", r"ICES-?0*3", r"301 ?489"),
    *(r"15 ?(SUBPART )?B", r"15\.10[79]", r"PART ?15(?! ?(SUBPART )?C)"),
)
RADIO = (
    *(r"300 ?328", r"300 ?220", r"300 ?440", r"301 ?893", r"RSS-?\d+"),
    *(r"15 ?(SUBPART )?C", r"15\.247"),
)
LITHIUM_TRANSPORT = (r"38\.3",)


def cites(standards: tuple[str, ...], family: tuple[str, ...]) -> int:
    """How many of the cited texts belong to a family of patterns.

    Units: standards [words], family [words]; returns [1].

    >>> cites(("IEC 62368-1", "EN 55032"), EMISSION)
    1
    """
    return sum(any(re.search(pattern, text.upper()) for pattern in family) for text in standards)


def withdrawn(standards: tuple[str, ...]) -> int:
    """How many of the cited texts are withdrawn or repealed.

    Units: standards [words]; returns [1].

    >>> withdrawn(("IEC 60065:2014", "EN 55032", "EN 55022"))
    2
    """
    return cites(standards, tuple(WITHDRAWN))
