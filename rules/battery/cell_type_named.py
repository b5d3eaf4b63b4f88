"""Type number of a cell that is said to exceed its chemistry.

Two words lift a limit that keeps cells from burning: ``made_for: high-voltage`` lets lithium-ion
be charged above 4.20 V, ``made_for: cold-charge`` lets it be charged below freezing. Such cells
exist, but most are not, and a common cell treated like one swells, plates lithium and burns.

The word alone proves nothing. So the type number of the cell has to go with it, in
``battery.cell.part``: somebody can then look up its data sheet, and whoever builds the pack
knows that no other cell may be fitted. Without one the question stays open, and it is one of
safety. A place-holder such as "tbd" names no cell and is critical.

First fix: write the type number of the cell, and keep its data sheet with the spec. Else leave
the word away; the limits of the chemistry then hold.
"""

from ...linter.check import AtMost, Case, Check, Input, derivation
from ..formulas.pack import HIGH_VOLTAGE
from ..hazards import CHARGING, also

NO_NAMES = ("", "-", "?", "n/a", "any", "generic", "none", "tba", "tbc", "tbd", "todo", "unknown")
WORD = derivation("a limit is the one that the maker of that cell prints")


def figure(part: str, made_for: str) -> float:
    return 1.0 if part.strip().lower() in NO_NAMES else 0.0


NAMED_CELLS = """
supply: {source: battery}
battery:
  {chemistry: li-ion, series: 4, cell: {v_charge: 4.35 V, made_for: high-voltage, part: XYZ123}}
channels:
  main: {rated_power: 40 W}
"""

CHECK = Check(
    title="Cell type number vs. stated cell type",
    figure=figure,
    unit="1",
    each="product",
    stake="safety",
    formula="1 where part names no cell that is made_for it, else 0",
    sentence="Cell stated as {made_for}; its type number is {part}.",
    inputs={
        "part": Input("battery.cell.part"),
        "made_for": Input("battery.cell.made_for"),
    },
    applies={
        "supply.source": "battery",
        "battery.cell.made_for": ("high-voltage", "cold-charge"),
    },
    limits=AtMost(critical="0", basis={"critical": WORD}),
    sources=(WORD, HIGH_VOLTAGE),
    cautions=(also(CHARGING, "Fit no other cell than the one named."),),
    cases=(
        Case(
            {"part": "tbd", "made_for": "cold-charge"},
            gives="1",
            origin="common practice: a place-holder is no type number",
        ),
        Case(
            {"part": "XYZ123", "made_for": "high-voltage"},
            gives="0",
            origin="derived: a cell is named",
        ),
    ),
    topic=("battery.cell.made_for",),
    fails=NAMED_CELLS.replace("XYZ123", "tbd"),
    passes=NAMED_CELLS,
)
