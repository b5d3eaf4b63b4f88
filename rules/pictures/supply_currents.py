"""The current of the supply and what lies in its way: source, fuse, connector, lead, trace."""

from ...linter.check import COMMON_PRACTICE, Arguments, Constant, Input
from ...linter.picture import Amount, Row, Scale, Shown
from ..formulas.conductors import contact_current, trace_rise
from ..formulas.constants import (
    CHART_AREA,
    CHART_INNER,
    CHART_OUTER,
    CHART_RISE,
    CONTACT_RISE,
    LEAST_RISE,
)
from ..formulas.fuse import continuous_current, opening_current
from .parts import share, shown

CARRIED = shown("rated power, rms", "i_source_rms")
FUSE: Arguments = {
    "i_rated": Input("protection.fuse.i_rated"),
    "standard": Input("protection.fuse.standard"),
}


def trace_current(
    width: float,
    copper: float,
    layer: str,
    k_outer: float,
    k_inner: float,
    chart_area: float,
    chart_rise: float,
    allowed: float,
) -> float:
    """Current that heats the trace by the rise allowed: the rise of 1 A, scaled."""
    k = k_inner if layer == "inner" else k_outer
    of_one_ampere = trace_rise(1.0, width, copper, k, chart_area, chart_rise)
    return (allowed / of_one_ampere) ** 0.44


TRACE: Arguments = {
    "width": Input("wiring.trace.width"),
    "copper": Input("wiring.trace.copper"),
    "layer": Input("wiring.trace.layer"),
    "k_outer": CHART_OUTER,
    "k_inner": CHART_INNER,
    "chart_area": CHART_AREA,
    "chart_rise": CHART_RISE,
    "allowed": Constant("30 K", "rise allowed", COMMON_PRACTICE),
}
CONTACTS: Arguments = {
    "i_rated": Input("wiring.connector.i_rated"),
    "contacts": Input("wiring.connector.contacts"),
    "t_limit": Input("wiring.connector.t_max"),
    "t_air": Input("t_air_inside"),
    "rise_rated": CONTACT_RISE,
    "rise_least": LEAST_RISE,
}


def _when(shown_number: Shown, path: str) -> Shown:
    """A number that is told only where the part is described."""
    (way,) = shown_number.ways
    return Shown(
        shown_number.label, (Amount(way.inputs, way.figure, {path: "fitted"}),), shown_number.kind
    )


PICTURE = Scale(
    title="Can fuse, connector, lead and trace carry the supply current?",
    each="product",
    axis="current",
    unit="A",
    rows=(
        Row("Battery", (
            _when(CARRIED, "battery"),
            Shown("cells, continuous", (
                Amount({"value": Input("battery.cell.i_cont"), "part": Input("battery.parallel")},
                       share),), "limit"),
            shown("protection trips", "battery.protection.i_trip", "trip"),
        ), ("pack-current",)),
        Row("Fuse", (
            _when(CARRIED, "protection.fuse"),
            Shown("carries for good", (
                Amount({**FUSE, "k_ambient": Input("protection.fuse.k_ambient")},
                       continuous_current),), "limit"),
            Shown("opens for sure", (Amount(FUSE, opening_current),), "trip"),
        ), ("fuse-current",)),
        Row("Connector", (
            _when(CARRIED, "wiring.connector"),
            Shown("derated", (Amount(CONTACTS, contact_current),), "limit"),
        ), ("connector-current", "fuse-protects-connector")),
        Row("Supply lead", (
            _when(CARRIED, "wiring.supply_lead"),
            _when(shown("lasting overload", "i_lasting_lead", "second"), "wiring.supply_lead"),
            shown("rated", "i_lead_rated", "limit"),
        ), ("supply-lead-current", "fuse-protects-lead")),
        Row("Board trace", (
            _when(CARRIED, "wiring.trace"),
            Shown("for a rise of 30 K", (Amount(TRACE, trace_current),), "limit"),
        ), ("trace-current", "fuse-protects-trace")),
    ),
    note="Rated power of all channels. What lasts in an overload ends only where something"
    " opens: the fuse, the protection of the pack or the limit of the source.",
    logarithmic=True,
    value="rated power",
    second="overload",
)  # fmt: skip
