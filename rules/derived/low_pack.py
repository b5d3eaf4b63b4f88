"""The lowest voltage of a pack as what draws current from it may take it: at most the full one.

Where the low voltage is not known the full one bounds it. More voltage is less current and
more room for a sag, so such a figure can fail a check and never pass one. It must not reach
what fails on a high voltage (power at the loudspeaker, fault power, excursion): these take
``v_source_low``.
"""

from ...linter.check import Assumption, Derived, Input, Way, derivation
from ..formulas.pack import SERIES_PARALLEL
from .feed import one_of
from .pack import product
from .ways import as_stated

FULL = Assumption(None, "floor", derivation("bound: a low cell has at most the voltage of a full"))

DERIVED = (
    Derived(
        "v_cell_low_at_most",
        "V",
        "product",
        "one cell at rest at low charge, or full where that is not known",
        (
            one_of("battery.cell.v_oc_low"),
            Way(
                as_stated,
                {"value": Input("v_cell_full")},
                formula="value",
                assumes=FULL,
            ),
        ),
        stated_at="battery.cell.v_oc_low",
        agree=float("inf"),
    ),
    Derived(
        "v_source_low_at_most",
        "V",
        "product",
        "lowest voltage of the source at rest; that of a full pack where it is not known",
        (
            Way(
                product,
                {"count": Input("battery.series"), "value": Input("v_cell_low_at_most")},
                formula="count * value",
                when={"supply.source": "battery"},
            ),
            one_of("v_source_low"),
        ),
        stated_at="supply.v_source",
        agree=float("inf"),
        sources=(SERIES_PARALLEL,),
    ),
    Derived(
        "r_pack_known",
        "ohm",
        "product",
        "resistance of the pack with protection and lead, or of the rail that it is, if known",
        (
            one_of("r_rail_known", feed="pack"),
            one_of("r_pack", feed="converter"),
        ),
        sources=(SERIES_PARALLEL,),
    ),
)
