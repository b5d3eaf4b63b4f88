"""Whether something ends an overload before the supply trace burns off the board.

A board trace is quick to heat and thin, and the charts that it was sized with hold for the
rated current.  Its rise goes with the current to the power of 2.27, so a trace of 20 K at
the rating of the fuse reaches 40 K at the 1.35 times that a UL fuse passes for an hour, 50 K
at 1.5 times and 108 K at the 2.1 times of an IEC fuse.

The figure is the temperature of the narrowest trace at the largest current that lasts: the
sure opening current of the fuse, without a fuse the trip of the pack or the limit of the
source, without those the short-circuit current; in the air of the box.  Boards of usual
epoxy glass are rated 130 degC for good (from memory); above that they brown and delaminate:
major.  At 217 degC the solder flows and the copper lifts: critical.  The fit holds up to
about 100 K; above, it only says how far off it is. First fix: width, then thicker copper
or a second layer, then a smaller fuse.
"""

from ...linter.check import (
    AtMost,
    Case,
    Check,
    Input,
    Lever,
    from_memory,
)
from ..formulas.conductors import trace_rise
from ..formulas.constants import CHART_AREA, CHART_OUTER, CHART_RISE, TRACE_CHART
from ..formulas.fuse import FUSEOLOGY, IEC_FUSES
from ..hazards import CONDUCTOR

BOARD = from_memory("UL 796: usual rating of epoxy glass boards", "130 degC for good")
SOLDER = from_memory("melting point of tin-silver-copper solder", "217 degC")
CHART_CURRENT = {"outer": 1.0, "inner": 0.5}


def figure(
    i_lasting: float,
    t_air: float,
    width: float,
    copper: float,
    layer: str,
    chart_current: float,
    chart_area: float,
    chart_rise: float,
) -> float:
    chart = chart_current * CHART_CURRENT[layer]
    return t_air + trace_rise(i_lasting, width, copper, chart, chart_area, chart_rise)


CHECK = Check(
    title="Supply trace temperature at lasting overload",
    figure=figure,
    unit="degC",
    each="product",
    stake="safety",
    formula="t_air + chart_rise (i_lasting / (chart_current by layer"
    " (width copper / chart_area)^0.725))^(1/0.44)",
    sentence="A lasting overload of {i_lasting} heats the {width} trace ({copper}, {layer} layer)"
    " to {figure} (air {t_air}).",
    inputs={
        "i_lasting": Input("i_lasting"),
        "t_air": Input("t_air_inside", meaning="air round the board"),
        "width": Input("wiring.trace.width"),
        "copper": Input("wiring.trace.copper"),
        "layer": Input("wiring.trace.layer"),
        "chart_current": CHART_OUTER,
        "chart_area": CHART_AREA,
        "chart_rise": CHART_RISE,
    },
    applies={"fuse_seen": "yes"},
    limits=AtMost(
        critical="217 degC", major="130 degC", basis={"critical": SOLDER, "major": BOARD}
    ),
    levers=(Lever("wiring.trace.width", "0.5 mm"),),
    sources=(TRACE_CHART, FUSEOLOGY, IEC_FUSES),
    cautions=(CONDUCTOR,),
    cases=(
        Case(
            {
                "i_lasting": "0.884 A",
                "t_air": "25 degC",
                "width": "0.254 mm",
                "copper": "35 um",
                "layer": "outer",
            },
            gives="35 degC",
            origin="computed: IPC-2221 fit as quoted on public pages: 10 mil carry 0.884 A at 10 K",
            tolerance=1e-3,
        ),
        Case(
            {
                "i_lasting": "21 A",
                "t_air": "40 degC",
                "width": "4.724 mm",
                "copper": "35 um",
                "layer": "outer",
            },
            gives="148.0 degC",
            origin="computed: root of the chart fit, 20 K at 10 A are 108 K at 21 A",
            tolerance=1e-3,
        ),
    ),
    topic=("wiring.trace",),
    fails="""
supply: {source: dc-source, rails: single, v_rail: 24 V, converter: none}
thermal: {t_air_inside: 50 degC}
protection: {fuse: {i_rated: 10 A, standard: iec-60127}}
wiring: {trace: {width: 3 mm, copper: 35 um, layer: outer}}
channels: {main: {rated_power: 50 W}}
""",
    passes="""
supply: {source: dc-source, rails: single, v_rail: 24 V, converter: none}
thermal: {t_air_inside: 50 degC}
protection: {fuse: {i_rated: 10 A, standard: iec-60127}}
wiring: {trace: {width: 10 mm, copper: 70 um, layer: outer}}
channels: {main: {rated_power: 50 W}}
""",
)
