"""The transport test among the papers of a product with lithium cells.

Lithium cells may not be handed to any carrier, by road, sea or air, unless their type has
passed the tests of the UN Manual, section 38.3, and the maker hands out the summary of that
test on demand.  It holds for the pack as built into the product, not only for the cell.  In
the European Union Regulation (EU) 2023/1542 comes on top for every battery, built in or not.

The figure counts the citations of UN 38.3.  None is minor here, for a list may be short;
without the test the product cannot be shipped.  First fix: ask the pack's maker for the
test summary before the first pack travels.
"""

from ...linter.check import AtLeast, Case, Check, Input
from ..formulas.paperwork import FAMILIES_BASIS, LITHIUM_TRANSPORT, cites
from ..hazards import TRANSPORT


def figure(standards: tuple[str, ...]) -> float:
    return float(cites(standards, LITHIUM_TRANSPORT))


LISTED = """
supply: {source: battery}
battery: {chemistry: li-ion, series: 6}
claims: {standards: [IEC 62368-1, EN 55032]}
channels: {main: {rated_power: 50 W}}
"""

CHECK = Check(
    title="Lithium transport test cited",
    figure=figure,
    unit="1",
    each="product",
    stake="performance",
    formula="number of standards that are UN 38.3",
    sentence="{figure:?No lithium transport test (UN 38.3) cited|Lithium transport test (UN 38.3)"
    " cited} ({standards}).",
    inputs={"standards": Input("claims.standards")},
    applies={"supply.source": "battery", "battery.chemistry": ("li-ion", "lfp")},
    limits=AtLeast(minor="1", basis={"minor": FAMILIES_BASIS}),
    otherwise="the transport test of the cells, and the report that names it",
    sources=(FAMILIES_BASIS,),
    cautions=(TRANSPORT,),
    cases=(
        Case(
            {"standards": ("IEC 62133-2", "UN 38.3")},
            gives="1",
            origin="from memory: UN Manual of Tests and Criteria, section 38.3",
        ),
        Case(
            {"standards": ("IEC 62133-2",)},
            gives="0",
            origin="from memory: IEC 62133-2 is about use, not transport",
        ),
    ),
    topic=("claims.standards",),
    asked_from="production",
    fails=LISTED,
    passes=LISTED.replace("EN 55032", "UN 38.3"),
)
