"""Gap on the board beside rail and switch node against the peak voltage there.

The voltage that a gap sees is the peak of the switch node, with pumping and ringing, not
the rail of the data sheet.  That often moves a 25 V design into the row of the table that
starts at 31 V, where bare outer layers need six times the gap.

The table is that for function, to keep the board alive.  It does not make a barrier
against shock: insulation for safety follows other standards and is not computed here;
behind mains, or more than 60 V without a certified barrier, nothing is judged.
Solder mask is often counted as a permanent coating; that is a decision of the project, so
say `outer-coated` if you make it.  Above 3050 m bare outer layers need more.  All values
of the table are from memory, and copies on the web contradict one another.  First
fixes: distance, coating, less ringing.
"""

from ...linter.check import (
    COMMON_PRACTICE,
    AtLeast,
    Case,
    Check,
    Constant,
    Input,
    Lever,
    from_memory,
)
from ..formulas.conductors import spacing_needed
from ..formulas.constants import TABLE_MILLIMETRE, TABLE_VOLT
from ..hazards import INSULATION

IPC = from_memory("IPC-2221 table 6-1")


def figure(
    gap: float,
    v_peak: float,
    surface: str,
    altitude: float,
    volt: float,
    millimetre: float,
    high: float,
) -> float:
    """Gap over what the table asks for."""
    return gap / spacing_needed(v_peak, surface, altitude, volt, millimetre, high)


_BASE = """
supply: {source: dc-source, rails: single, v_rail: 40 V}
channels:
  main:
    rated_power: 100 W
    rated_load: 4 ohm
    output_stage: {topology: full-bridge, devices: integrated, v_overshoot: 6 V}
environment: {altitude: 500 m}
wiring: {spacing: {gap: GAP, surface: outer-bare}}
"""

_UNITS = {"volt": "1 V", "millimetre": "1 mm", "high": "3050 m"}

CHECK = Check(
    title="Gap at rail and switch node vs. spacing table",
    figure=figure,
    unit="1",
    each="channel",
    stake="rating",
    formula="gap / (table at v_peak / volt, surface, altitude above high) millimetre",
    sentence="Gap {gap} ({surface:words}); the spacing table needs {gap:/figure} at {v_peak}"
    " ({figure:%}).",
    inputs={
        "gap": Input("wiring.spacing.gap"),
        "v_peak": Input("v_node_peak"),
        "surface": Input("wiring.spacing.surface"),
        "altitude": Input("environment.altitude"),
        "volt": TABLE_VOLT,
        "millimetre": TABLE_MILLIMETRE,
        "high": Constant("3050 m", "height that divides two columns", IPC),
    },
    applies={"mains_exposed": "no"},
    limits=AtLeast(major="1", basis={"major": IPC}),
    levers=(Lever("wiring.spacing.gap", "0.05 mm"),),
    sources=(IPC, COMMON_PRACTICE),
    cautions=(INSULATION,),
    cases=(
        Case({"gap": "0.3 mm", "v_peak": "35 V", "surface": "outer-bare", "altitude": "500 m"}
             | _UNITS, gives="0.5",
             origin="from memory: row 31 to 50 V, bare outer layer, 0.6 mm"),
        Case({"gap": "0.3 mm", "v_peak": "25.2 V", "surface": "outer-bare", "altitude": "500 m"}
             | _UNITS, gives="3",
             origin="from memory: row 16 to 30 V, bare outer layer, 0.1 mm"),
        Case({"gap": "1.5 mm", "v_peak": "80 V", "surface": "outer-bare", "altitude": "4000 m"}
             | _UNITS, gives="1",
             origin="from memory: row 51 to 100 V, above 3050 m, 1.5 mm"),
    ),
    fails=_BASE.replace("GAP", "0.2 mm"),
    passes=_BASE.replace("GAP", "0.8 mm"),
    topic=("wiring.spacing.gap",),
)  # fmt: skip
