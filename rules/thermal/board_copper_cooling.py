"""Claimed cooling by board copper against what copper can do.

Copper on a board is thin.  It spreads heat for about 25 mm and then the air has taken it
up: doubling an area beyond 40 mm buys next to nothing.  A junction-to-ambient figure from
the maker's large multilayer test board is therefore often taken for a small board.

The bound here is a round sheet of that area with the package in the middle, 35 um unless
stated, both faces in air at 10 W/(m2 K) each, radiation included.  No single layer does
better; inner planes, for which there is no field, can halve it, so half the bound is still
believed possible and only marked: with planes the minor stands until the cooling is measured
and may then be let pass as a deviation.  Junction to case and vias come on top.  First
cures: a heatsink, more layers with vias, a smaller claim (measure it).
"""

from ...linter.check import COMMON_PRACTICE, AtLeast, Case, Check, Constant, Input, derivation
from ..formulas.fin import copper_resistance


def figure(
    r_th_ja: float, area: float, pad_area: float, copper: float, conductivity: float, film: float
) -> float:
    """Claimed resistance over the least that this copper allows."""
    return r_th_ja / copper_resistance(area, pad_area, copper, conductivity, film)


_BASE = """
channels:
  main:
    output_stage: {device: {r_th_ja: CLAIM}}
thermal: {board_copper: {area: 1000 mm2, pad_area: 30 mm2}}
"""

CHECK = Check(
    title="Claimed cooling against what the board's copper gives",
    figure=figure,
    unit="1",
    each="channel",
    stake="performance",
    formula="r_th_ja / fin(area, pad_area, copper, conductivity, film of each face)",
    sentence="The stated {r_th_ja} are {figure} times the least that one layer, {area} of {copper}"
    " copper round a pad of {pad_area}, allows; inner planes may halve it.",
    inputs={
        "r_th_ja": Input("output_stage.device.r_th_ja"),
        "area": Input("thermal.board_copper.area"),
        "pad_area": Input("thermal.board_copper.pad_area"),
        "copper": Input("wiring.trace.copper"),
        "conductivity": Constant("390 W/m/K", "of copper foil", COMMON_PRACTICE),
        "film": Constant("10 W/m2/K", "one face to air, with radiation", COMMON_PRACTICE),
    },
    limits=AtLeast(
        major="0.5",
        minor="1",
        basis={
            "major": derivation("two planes of the same area halve a fin at most"),
            "minor": derivation("radial fin with insulated rim: best shape of one layer"),
        },
    ),
    sources=(derivation("radial fin by Bessel functions; finite differences in the tests"),),
    cases=(
        Case({"r_th_ja": "41.98 K/W", "area": "1963.5 mm2", "pad_area": "28.274 mm2",
              "copper": "35 um", "conductivity": "390 W/m/K", "film": "10 W/m2/K"}, gives="1",
             origin="computed: finite differences, radius 3 to 25 mm, 41.98 K/W"),
        Case({"r_th_ja": "54.64 K/W", "area": "20106 mm2", "pad_area": "28.274 mm2",
              "copper": "35 um", "conductivity": "390 W/m/K", "film": "10 W/m2/K"}, gives="2",
             origin="computed: finite differences, radius 3 to 80 mm, 27.32 K/W"),
    ),
    fails=_BASE.replace("CLAIM", "20 K/W"),
    passes=_BASE.replace("CLAIM", "75 K/W"),
    applies={"heatsink": ("none", "silent")},
    topic=("thermal.board_copper.area",),
)  # fmt: skip
