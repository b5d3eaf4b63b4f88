"""Over-temperature trip against the junction limit, wherever it is sensed.

A sensor on the heatsink sees the heatsink.  The junction sits above it by its own heat
times junction-to-case and case-to-heatsink resistance, and that difference does not
depend on the size of the heatsink.  A trip that looks cautious at the heatsink can
therefore come too late for the junction, most of all with small insulated packages.

A sensor on the case lacks the step from case to heatsink only.  One on the board sees less
than the case, by how much nobody can compute: the junction is then at least as far above the
trip as above its case, which can fail the check and never pass it, until `below_junction`
tells how far the sensor stayed below the junction on the bench.

The junction is taken at the upper end of the trip's tolerance and at rated sine power on
the channel. A trip built into an integrated stage senses the junction and is its maker's
affair, even where it is printed above the absolute maximum; it is not judged here. How the
heat divides between switches, inductors and resistors is rarely known to better than a
fifth, which at a rise of 50 K is 10 K: only beyond that is it called critical, so that
boards which work are not condemned. First fixes: a lower trip, less resistance between
junction and heatsink (thinner insulator, larger package), two devices in parallel.
"""

from ...linter.check import (
    COMMON_PRACTICE,
    AtLeast,
    Case,
    Check,
    Input,
    Lever,
    Source,
    derivation,
)
from ..hazards import RUNAWAY


def figure(t_j_max: float, t_junction_trip: float) -> float:
    """Distance of the junction from its limit when the trip acts."""
    return t_j_max - t_junction_trip


_BASE = """
supply: {source: dc-source, rails: single, v_rail: 40 V}
channels:
  main:
    rated_power: 100 W
    rated_load: 4 ohm
    output_stage:
      topology: full-bridge
      devices: integrated
      p_idle: 1 W
      efficiency: 85 %
      device: {t_j_max: 150 degC, r_th_jc: 1.5 K/W, r_th_cs: 0.5 K/W}
protection: {over_temperature: {t_trip: TRIP, at: heatsink}}
"""

CHECK = Check(
    title="Junction temperature at the over-temperature trip vs. limit",
    figure=figure,
    unit="K",
    each="channel",
    stake="safety",
    formula="t_j_max - t_junction_trip",
    sentence="Junction at {t_junction_trip} when the over-temperature trip acts,"
    " {figure:+below|above} its {t_j_max} limit.",
    inputs={
        "t_j_max": Input("output_stage.device.t_j_max"),
        "t_junction_trip": Input("t_junction_trip"),
    },
    applies={"protection.over_temperature.at": ("heatsink", "case", "board")},
    limits=AtLeast(
        critical="-10 K",
        major="0 K",
        minor="5 K",
        basis={
            "critical": derivation("absolute maximum, missed by more than the 20 % that heat"
                                   " and resistance of an estimate are uncertain"),
            "major": Source("absolute maximum of the device data sheet", "no page given"),
            "minor": COMMON_PRACTICE,
        },
    ),
    levers=(Lever("protection.over_temperature.t_trip", "5 K"),),
    sources=(
        Source("IRAUDAMP7D reference design rev 2.9", "trip at 100 degC, heatsink; no page given"),
        derivation("junction over case, heatsink or board: heat times thermal resistance"),
    ),
    cautions=(RUNAWAY,),
    cases=(
        Case({"t_j_max": "150 degC", "t_junction_trip": "144.7 degC"}, gives="5.3 K",
             origin="computed: by hand, 100 degC + 7.1 K/W x 6.3 W a package (IRAUDAMP7D)"),
        Case({"t_j_max": "150 degC", "t_junction_trip": "95.2 degC"}, gives="54.8 K",
             origin="computed: nodal solution, 85 degC heatsink, 6 W through 1.7 K/W"),
    ),
    fails=_BASE.replace("TRIP", "120 degC"),
    passes=_BASE.replace("TRIP", "85 degC ± 4 K"),
    topic=("protection.over_temperature",),
)  # fmt: skip
