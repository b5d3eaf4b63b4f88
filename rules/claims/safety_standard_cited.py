"""A safety standard among those that the paperwork cites.

Audio equipment is judged to IEC 62368-1 and its national versions nearly everywhere: as a
harmonised standard for mains voltage in the European Union and the United Kingdom, through
a test laboratory's mark in the United States and Canada, and as the yardstick of general
product safety for what runs on a battery.  A list of standards without it has a hole where
the next buyer or authority looks first.

The figure counts the citations that belong to it.  None is minor: the list may be short and
the work done.  This review lists; it does not judge conformity, which is a test house's
trade.  First fix: cite the edition that was tested to.
"""

from ...linter.check import AtLeast, Case, Check, Input
from ..formulas.paperwork import FAMILIES_BASIS, SAFETY, cites


def figure(standards: tuple[str, ...]) -> float:
    return float(cites(standards, SAFETY))


LISTED = """
claims: {standards: [EN 55032, UN 38.3]}
channels: {main: {rated_power: 50 W}}
"""

CHECK = Check(
    title="Safety standard cited",
    figure=figure,
    unit="1",
    each="product",
    stake="performance",
    formula="number of standards that are IEC 62368-1 or a version of it",
    sentence="{figure:?No safety standard cited|Safety standard cited} ({standards}).",
    inputs={"standards": Input("claims.standards")},
    limits=AtLeast(minor="1", basis={"minor": FAMILIES_BASIS}),
    otherwise="a current safety standard among those cited, and the test behind it",
    sources=(FAMILIES_BASIS,),
    cases=(
        Case(
            {"standards": ("UL 62368-1", "EN 55032")},
            gives="1",
            origin="from memory: UL 62368-1 is the version of the United States",
        ),
        Case(
            {"standards": ("EN 55032",)},
            gives="0",
            origin="from memory: EN 55032 is about emission",
        ),
    ),
    topic=("claims.standards",),
    asked_from="production",
    fails=LISTED,
    passes=LISTED.replace("UN 38.3", "EN IEC 62368-1"),
)
