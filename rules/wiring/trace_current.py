"""Heating of the trace that carries the source current.

A narrow trace is a heater.  The charts of IPC-2221 give the rise of a trace alone in still
air; half as much copper carries far less than half the current, and an inner layer half of
an outer one.  IPC-2152 has wider data and allows more beside planes; the older charts are
the careful ones.

What heats is the rms current, and a bridge that plays a sine draws 1.22 times its mean.
The rated sine on all channels is taken: it lasts as long as somebody lets it.  The rise
adds to air that is warm already, and above about 100 K the laminate leaves its glass
transition behind.  First fixes: width, thicker copper, a pour, both outer layers.
"""

from ...linter.check import (
    COMMON_PRACTICE,
    AtMost,
    Case,
    Check,
    Input,
    Lever,
)
from ..formulas.conductors import trace_rise
from ..formulas.constants import CHART_AREA, CHART_INNER, CHART_OUTER, CHART_RISE, TRACE_CHART
from ..hazards import CONDUCTOR


def figure(
    i_source: float,
    width: float,
    copper: float,
    layer: str,
    k_outer: float,
    k_inner: float,
    chart_area: float,
    chart_rise: float,
) -> float:
    """Rise of the trace over the air round it."""
    k = k_inner if layer == "inner" else k_outer
    return trace_rise(i_source, width, copper, k, chart_area, chart_rise)


_BASE = """
supply: {source: dc-source, rails: single, v_rail: 40 V}
channels:
  main:
    rated_power: 100 W
    rated_load: 4 ohm
    output_stage: {topology: full-bridge, devices: integrated, p_idle: 1 W, efficiency: 85 %}
wiring: {trace: {width: WIDTH, copper: 35 um, layer: outer}}
"""

_CHART = {
    "k_outer": "0.048 A", "k_inner": "0.024 A", "chart_area": "6.4516e-10 m2",
    "chart_rise": "1 K",
}  # fmt: skip

CHECK = Check(
    title="Supply trace temperature rise",
    figure=figure,
    unit="K",
    each="product",
    stake="safety",
    formula="chart_rise (i_source / (k (width copper / chart_area)^0.725))^(1/0.44), "
    "k = k_outer or k_inner by layer",
    sentence="Supply trace {width} wide ({copper}, {layer} layer) heats by {figure} at {i_source}.",
    inputs={
        "i_source": Input("i_source_rms"),
        "width": Input("wiring.trace.width"),
        "copper": Input("wiring.trace.copper"),
        "layer": Input("wiring.trace.layer"),
        "k_outer": CHART_OUTER,
        "k_inner": CHART_INNER,
        "chart_area": CHART_AREA,
        "chart_rise": CHART_RISE,
    },
    limits=AtMost(
        critical="100 K",
        major="30 K",
        minor="20 K",
        basis={"critical": COMMON_PRACTICE, "major": COMMON_PRACTICE, "minor": COMMON_PRACTICE},
    ),
    levers=(
        Lever("wiring.trace.width", "0.5 mm"),
    ),
    sources=(TRACE_CHART,),
    cautions=(CONDUCTOR,),
    cases=(
        Case({"i_source": "0.884 A", "width": "0.254 mm", "copper": "35.0 um",
              "layer": "outer"} | _CHART, gives="10 K",
             origin="computed: IPC-2221 fit as quoted on public pages, by hand: 10 mil, 1 oz, "
             "10 K, 0.884 A", tolerance=0.01),
        Case({"i_source": "5 A", "width": "4.724 mm", "copper": "35.0 um",
              "layer": "inner"} | _CHART, gives="20 K",
             origin="computed: root finding for the width of an inner trace at 5 A and 20 K",
             tolerance=0.005),
    ),
    fails=_BASE.replace("WIDTH", "0.4 mm"),
    passes=_BASE.replace("WIDTH", "5 mm"),
    topic=("wiring.trace",),
)  # fmt: skip
