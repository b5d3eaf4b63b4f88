"""Air round the cells against their window for discharge.

The pack shares the box with the amplifier and, outdoors, with the sun. Its hottest air
must stay below the temperature up to which its cells may be discharged, mostly 60 degrees
for lithium-ion. Above that cells age in weeks, and a good protection disconnects them. The
cells warm themselves by the current in their resistance, which is not counted here.

A vehicle's battery lies outside the product and is left out.

Hotter than the window is major; from 20 K above it, 80 degrees for most lithium cells, cells
go on to heat themselves: critical, as in a charge. Less than 5 K below it is minor, which is
about what cells in a pack add by themselves at a moderate load (common practice, no source).
Cure: a wall between pack and heatsink, air holes, shade, or cells of a higher rating.
"""

from ...linter.check import COMMON_PRACTICE, AtLeast, Case, Check, Input, derivation
from ..formulas.pack import CELL_DATA, SELF_HEATING
from ..hazards import CELLS


def figure(t_high: float, t_air: float) -> float:
    return t_high - t_air


CHECK = Check(
    title="Air temperature at the cells vs. discharge limit",
    figure=figure,
    unit="K",
    each="product",
    stake="safety",
    formula="t_high - t_air",
    sentence="Air around the cells reaches {t_air}, {figure:+below|above} their discharge limit of"
    " {t_high}.",
    inputs={
        "t_high": Input("t_discharge_high"),
        "t_air": Input("t_air_inside"),
    },
    applies={"supply.source": "battery", "environment.place": ("indoor", "outdoor")},
    limits=AtLeast(
        critical="-20 K",
        major="0 K",
        minor="5 K",
        basis={
            "critical": SELF_HEATING,
            "major": derivation("outside the maker's window nothing is assured"),
            "minor": COMMON_PRACTICE,
        },
    ),
    sources=(CELL_DATA, SELF_HEATING),
    cautions=(CELLS,),
    cases=(
        Case(
            {"t_high": "60 degC", "t_air": "56 degC"},
            gives="4 K",
            origin="computed: sealed box, 21 K above 35 degrees by a heat balance of its walls",
        ),
        Case(
            {"t_high": "60 degC", "t_air": "65 degC"},
            gives="-5 K",
            origin="from memory: lithium-ion cells are mostly rated up to 60 degrees",
        ),
    ),
    topic=("battery.cell.t_discharge", "thermal.t_air_inside"),
    fails="""
supply: {source: battery}
battery: {chemistry: li-ion, cell: {t_discharge: -20 degC .. 60 degC}}
channels:
  main: {rated_power: 40 W}
thermal: {t_air_inside: 66 degC}
""",
    passes="""
supply: {source: battery}
battery: {chemistry: li-ion, cell: {t_discharge: -20 degC .. 60 degC}}
channels:
  main: {rated_power: 40 W}
thermal: {t_air_inside: 48 degC}
""",
)
