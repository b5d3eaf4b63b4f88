"""An emission standard among those that the paperwork cites.

A class-D amplifier switches amperes within nanoseconds, hundreds of thousands of times a
second: it is a radio-frequency source by nature.  Every market that the spec can name asks
for a limit: EN 55032 (CISPR 32) in the European Union and the United Kingdom, 47 CFR 15
subpart B in the United States from 9 kHz of clock on, ICES-003 in Canada, CISPR 25 in
vehicles, EN 301 489 where a radio is inside.

The figure counts the citations of that family.  None is minor; whether the product passes
shows in the chamber only.  First fix: a pre-compliance scan with the real leads attached.
"""

from ...linter.check import AtLeast, Case, Check, Input
from ..formulas.paperwork import EMISSION, FAMILIES_BASIS, cites


def figure(standards: tuple[str, ...]) -> float:
    return float(cites(standards, EMISSION))


LISTED = """
claims: {standards: [IEC 62368-1]}
channels: {main: {rated_power: 50 W}}
"""

CHECK = Check(
    title="Emission standard cited",
    figure=figure,
    unit="1",
    each="product",
    stake="performance",
    formula="number of standards that set limits of emission",
    sentence="{figure:?No emission standard cited|Emission standard cited} ({standards}).",
    inputs={"standards": Input("claims.standards")},
    limits=AtLeast(minor="1", basis={"minor": FAMILIES_BASIS}),
    otherwise="a standard on emission among those cited, and the test behind it",
    sources=(FAMILIES_BASIS,),
    cases=(
        Case(
            {"standards": ("IEC 62368-1", "47 CFR 15 subpart B")},
            gives="1",
            origin="from memory: subpart B stands for 15.107 and 15.109",
        ),
        Case(
            {"standards": ("IEC 62368-1",)},
            gives="0",
            origin="from memory: IEC 62368-1 is about safety",
        ),
    ),
    topic=("claims.standards",),
    asked_from="production",
    fails=LISTED,
    passes=LISTED.replace("IEC 62368-1", "IEC 62368-1, CISPR 32"),
)
