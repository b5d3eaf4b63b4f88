"""Voltage across an open switch, without ringing, against its rating.

An open switch of a leg carries the whole swing of the node: one rail of a single supply,
both rails of a split one.  The two classic slips are to compare with one rail of a split
supply, and to compare with the nominal rail: the highest rail counts, with the rise that a
half-bridge pumps into it where the supply cannot take current back.  An over-voltage trip
ends the pumping, since a stage that is off pumps nothing, but it does not lower a
source that is itself too high.

Ringing is left to device-voltage-ringing, because it is mostly an estimate and this
figure is not.  First fix: the next rating up (40, 60, 80, 100, 150, 200, 250 V); then a
lower trip, more rail capacitance, or a bridge.  Limits: beyond 100 % the part is outside
its absolute rating; 80 % is the advice of device makers; 90 % is the point where a usual
ringing of 10 to 30 % must go over.  Stricter space and military factors are not applied:
they would refuse boards that have run for years.  On silicon the rating itself falls by
about a tenth from 25 to -40 degC, which the minor limit leaves room for.
"""

from ...linter.check import (
    COMMON_PRACTICE,
    AtMost,
    Case,
    Check,
    Input,
    Lever,
    Source,
    derivation,
)
from ..hazards import FIRST_POWER_UP


def figure(v_static_peak: float, v_dss: float) -> float:
    """Highest voltage across an open switch over its rating."""
    return v_static_peak / v_dss


CHECK = Check(
    title="Switch voltage vs. rating",
    figure=figure,
    unit="%",
    each="channel",
    stake="rating",
    formula="v_static_peak / v_dss",
    sentence="Open switch sees {v_static_peak}; rated {v_dss} ({figure:%}).",
    inputs={
        "v_static_peak": Input("v_static_peak"),
        "v_dss": Input("output_stage.device.v_dss"),
    },
    applies={"output_stage.devices": "discrete"},
    limits=AtMost(
        critical="100 %",
        major="90 %",
        minor="80 %",
        basis={
            "critical": derivation("absolute maximum rating of the device"),
            "major": COMMON_PRACTICE,
            "minor": Source(
                "Renesas knowledge base, Can you explain further about the data sheet, 2007",
                "use within 80 % of the drain-source rating advised",
            ),
        },
    ),
    levers=(
        Lever(
            "output_stage.device.v_dss",
            ("40 V", "60 V", "80 V", "100 V", "150 V", "200 V", "250 V", "300 V", "500 V"),
        ),
    ),
    sources=(
        derivation("voltages in series across the open switch of a leg"),
        Source(
            "IRAUDAMP4 reference design RD-0617, International Rectifier",
            "p. 18: shuts down above 40 V between ground and -B",
        ),
    ),
    cautions=(FIRST_POWER_UP,),
    cases=(
        Case(
            {"v_static_peak": "80 V", "v_dss": "100 V"},
            "80 %",
            "computed: IRAUDAMP4 manual p. 18, rails tripped above 40 V each; the device's "
            "100 V from memory",
        ),
        Case(
            {"v_static_peak": "114 V", "v_dss": "150 V"},
            "76 %",
            "derived: rails of 50 V + 10 %, both in series, and 4 V of pumping",
        ),
    ),
    topic=("output_stage.device",),
    asked_from="prototype",
    fails="""
supply: {source: dc-source, rails: split, v_rail: 52 V, sinks_current: yes}
channels:
  main:
    output_stage: {topology: half-bridge, devices: discrete, device: {v_dss: 100 V}}
""",
    passes="""
supply: {source: dc-source, rails: split, v_rail: 35 V, sinks_current: yes}
channels:
  main:
    output_stage: {topology: half-bridge, devices: discrete, device: {v_dss: 100 V}}
""",
)
