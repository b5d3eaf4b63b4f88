"""Standards in the paperwork that are no longer in force.

A certificate to a withdrawn standard sells nothing new: EN 60065 and EN 60950-1 went out on
20 December 2020 and EN 62368-1 came, the emission standards EN 55013 and EN 55022 for
EN 55032, EN 55020 and EN 55024 for EN 55035.  Directives were repealed
likewise.  An old citation mostly shows that a file was copied from an older product.

The figure counts the citations that are withdrawn or repealed.  Any is minor; only a test
house can say what a product needs.  First fix: cite the successor, and check that the test
was made to it.
"""

from ...linter.check import AtMost, Case, Check, Input
from ..formulas.paperwork import REPLACED, WITHDRAWN_2020, withdrawn


def figure(standards: tuple[str, ...]) -> float:
    return float(withdrawn(standards))


OLD = """
claims: {standards: [IEC 60065, EN 55032]}
channels: {main: {rated_power: 50 W}}
"""

CHECK = Check(
    title="Withdrawn standards cited",
    figure=figure,
    unit="1",
    each="product",
    stake="performance",
    formula="number of standards that are withdrawn",
    sentence="{figure:?No withdrawn standard cited|Withdrawn or repealed standard cited}"
    " ({standards}).",
    inputs={"standards": Input("claims.standards")},
    limits=AtMost(minor="0", basis={"minor": WITHDRAWN_2020}),
    otherwise="the standard that replaces the withdrawn one",
    sources=(WITHDRAWN_2020, REPLACED),
    cases=(
        Case(
            {"standards": ("IEC 60065", "EN 60950-1:2006", "EN 55032")},
            gives="2",
            origin="published: Nemko, status of replacing the safety standards: both end on "
            "2020-12-20",
        ),
        Case(
            {"standards": ("IEC 62368-1", "IEC 62133-2", "UN 38.3", "EN 55032")},
            gives="0",
            origin="from memory: all four in force in 2025",
        ),
    ),
    topic=("claims.standards",),
    fails=OLD,
    passes=OLD.replace("IEC 60065", "IEC 62368-1"),
)
