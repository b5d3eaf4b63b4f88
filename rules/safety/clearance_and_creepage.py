"""Distance between rails and switch nodes on the board, for functional insulation.

Dirt and damp make paths along the surface of a board, and a path that carries current
burns deeper.  How much surface a voltage needs depends on the dirt (pollution degree 1 to 3
of IEC 60664-1), on the material, and through the air on the altitude.  A conformal coating
counts as degree 1; solder resist does not count.

The figure is the smallest gap over the larger one of creepage and clearance, at the direct
voltage across all rails.  Only insulation that keeps the amplifier working is judged, hence
minor: a shorter distance is accepted where a test shows that a short there does no harm.
Insulation from the mains or between people and more than 60 V is not computed here; it is
a matter of a certified supply and of licensed practice; without one nothing is judged here.
First fix: a slot or a coating.
"""

from ...linter.check import AtLeast, Case, Check, Input, Lever, derivation
from ..formulas.constants import TABLE_METRE, TABLE_MILLIMETRE, TABLE_VOLT
from ..formulas.safety import CLEARANCE, CREEPAGE, gap_needed
from ..hazards import INSULATION

UNIT = derivation("unit of the table")


def figure(
    gap: float,
    v_rail: float,
    rail_count: float,
    degree: float,
    surface: str,
    altitude: float,
    volt: float,
    metre: float,
    millimetre: float,
) -> float:
    voltage = v_rail * rail_count
    return gap / gap_needed(voltage, degree, surface, altitude, volt, metre, millimetre)


BOARD = """
environment: {place: outdoor, altitude: 300 m}
supply: {source: dc-source, rails: single, converter: none, v_rail: 24 V}
wiring: {spacing: {gap: 0.8 mm, surface: outer-bare}}
channels: {main: {rated_power: 50 W}}
"""

CHECK = Check(
    title="Clearance and creepage vs. IEC 60664-1 (functional insulation)",
    figure=figure,
    unit="1",
    each="product",
    stake="rating",
    formula="gap / larger of creepage (v_rail rail_count / volt, degree, surface) and clearance"
    " (degree, altitude / metre), in millimetre",
    sentence="Smallest gap {gap}; functional insulation needs {gap:/figure}"
    " ({rail_count:rail|rails} of {v_rail}, pollution degree {degree}, {surface:words}).",
    inputs={
        "gap": Input("wiring.spacing.gap"),
        "v_rail": Input("v_rail_high"),
        "rail_count": Input("rail_count", meaning="rails in series across the gap"),
        "degree": Input("pollution_degree"),
        "surface": Input("wiring.spacing.surface"),
        "altitude": Input("environment.altitude"),
        "volt": TABLE_VOLT,
        "metre": TABLE_METRE,
        "millimetre": TABLE_MILLIMETRE,
    },
    applies={"mains_exposed": "no"},
    limits=AtLeast(minor="1", basis={"minor": CREEPAGE}),
    levers=(Lever("wiring.spacing.gap", "0.05 mm"),),
    sources=(CREEPAGE, CLEARANCE),
    cautions=(INSULATION,),
    cases=(
        Case(
            {
                "gap": "0.8 mm",
                "v_rail": "50 V",
                "rail_count": 2.0,
                "degree": 2.0,
                "surface": "outer-bare",
                "altitude": "300 m",
            },
            gives="5",
            origin="published: IEC 60664-1 table F.4 as quoted by WAGO: 100 V, degree 2, 0.16 mm",
        ),
        Case(
            {
                "gap": "0.8 mm",
                "v_rail": "25 V",
                "rail_count": 1.0,
                "degree": 3.0,
                "surface": "outer-bare",
                "altitude": "5000 m",
            },
            gives="0.64",
            origin="published: IEC 60664-1 table F.4 as quoted by WAGO: 25 V, degree 3, 1.25 mm, "
            "above 0.8 mm x 1.48 of air",
        ),
    ),
    topic=("wiring.spacing.gap",),
    fails=BOARD,
    passes=BOARD.replace("outer-bare", "assembly-coated"),
)
