"""Claimed cooling by board copper against what copper can do.

Copper on a board is thin.  It spreads heat for about 25 mm and then the air has taken it
up: doubling an area beyond 40 mm buys next to nothing.  A junction-to-ambient figure from
the maker's large multilayer test board is therefore often taken for a small board.

The reference is a round sheet of that area with the package in the middle, on a large bare
board of 1.6 mm that spreads the heat a little further, 35 um unless stated, both faces in air.
More layers conduct as their copper does, behind vias and resin.  Each face gives off
15 W/(m2 K): natural convection from an upright sheet of 40 mm, 50 K above its air (8.4),
and radiation (6.9).  Where the number of layers is not given, four are believed.

Published boards lie at 1.06 to 1.9 times this sheet where nothing else helps, and at 0.47 to
0.8 where traces, pins or other copper of the board do; what stays below 0.4 is found on none
that was seen.  Junction to case comes on top.  First fixes: a heatsink, more layers with
vias, moving air, a smaller claim (measure it).
"""

from ...linter.check import (
    COMMON_PRACTICE,
    Assumption,
    AtLeast,
    Case,
    Check,
    Constant,
    Input,
    Source,
    derivation,
)
from ..formulas.fin import copper_resistance


def figure(
    r_th_ja: float,
    area: float,
    pad_area: float,
    copper: float,
    layers: float,
    vias: float,
    via: float,
    board: float,
    conductivity: float,
    resin: float,
    film: float,
) -> float:
    """Claimed resistance over that of this copper by itself."""
    return r_th_ja / copper_resistance(
        area, pad_area, copper, layers, vias, via, board, conductivity, resin, film
    )


_BASE = """
channels:
  main:
    output_stage: {device: {r_th_ja: CLAIM}}
thermal: {board_copper: {area: 1000 mm2, pad_area: 30 mm2, layers: 2, vias: 16}}
"""

FILM = derivation("1.42 (50 K / 40 mm)^0.25 of an upright plate and 4 0.9 sigma (323 K)^3")
PUBLISHED = Source(
    "International Rectifier AN-994",
    "table 1: D2-Pak on one square inch of 70 um: 18 K/W typical, by our sum 0.47 of this sheet; "
    "section I: a full copper face of 4.75 x 4.5 in below helps",
)
_COPPER = {"via": "0.0236 mm2", "board": "1.6 mm", "conductivity": "390 W/m/K",
           "resin": "0.3 W/m/K", "film": "15 W/m2/K", "copper": "35 um"}  # fmt: skip

CHECK = Check(
    title="Stated thermal resistance vs. board copper",
    figure=figure,
    unit="1",
    each="channel",
    stake="performance",
    formula="r_th_ja / sheet(area, pad_area, copper, layers, vias, via, board, conductivity,"
    " resin, film of each face)",
    sentence="Stated {r_th_ja}; {layers} layers of {area} ({copper}, {vias} vias, pad {pad_area})"
    " reach {r_th_ja:/figure}.",
    inputs={
        "r_th_ja": Input("output_stage.device.r_th_ja"),
        "area": Input("thermal.board_copper.area"),
        "pad_area": Input("thermal.board_copper.pad_area"),
        "copper": Input("wiring.trace.copper"),
        "layers": Input(
            "thermal.board_copper.layers",
            default=Assumption(4.0, "favourable", COMMON_PRACTICE),
        ),
        "vias": Input(
            "thermal.board_copper.vias",
            default=Assumption(100.0, "favourable", COMMON_PRACTICE),
        ),
        "via": Constant("0.0236 mm2", "copper of a via, drill 0.3 mm, 25 um", COMMON_PRACTICE),
        "board": Constant("1.6 mm", "thickness of the board", COMMON_PRACTICE),
        "conductivity": Constant("390 W/m/K", "of copper foil", COMMON_PRACTICE),
        "resin": Constant("0.3 W/m/K", "of glass and resin", COMMON_PRACTICE),
        "film": Constant("15 W/m2/K", "one face to air, with radiation", FILM),
    },
    limits=AtLeast(
        major="0.4",
        minor="0.7",
        basis={
            "major": PUBLISHED,
            "minor": Source("STA559BW data sheet Doc ID 18190",
                            "p. 63: 24 K/W, 2 areas of 3 x 3 cm and 16 vias; "
                            "computed: 0.72 of two sheets of 35 um"),
        },
    ),
    sources=(
        derivation("radial fin by Bessel functions; finite differences in the tests"),
        Source("LMH6321 data sheet SNOSAL8C, table 1", "54.7 to 17.2 K/W, 1 and 2 layers of 35 um"),
        Source("Infineon, SOT223-4-2 package and thermal information",
               "diagram, no page given: 81.2 and 68 K/W, 300 and 600 mm2, one layer of 35 um"),
        PUBLISHED,
    ),
    cases=(
        Case({"r_th_ja": "46.9 K/W", "area": "600 mm2", "pad_area": "30 mm2", "layers": 1.0,
              "vias": 0.0, **_COPPER}, gives="1",
             origin="computed: finite differences, copper to 13.8 mm and board to 80 mm, 46.9 K/W",
             tolerance=0.01),
        Case({"r_th_ja": "32.1 K/W", "area": "1290.3 mm2", "pad_area": "80 mm2", "layers": 2.0,
              "vias": 4.0, **_COPPER}, gives="1.28",
             origin="published: LMH6321 data sheet, 1 x 2 in top and bottom, 32.1 K/W at 2 W; "
             "pad and vias assumed",
             tolerance=0.03),
    ),
    fails=_BASE.replace("CLAIM", "9 K/W"),
    passes=_BASE.replace("CLAIM", "75 K/W"),
    applies={"heatsink": ("none", "not given")},
    topic=("thermal.board_copper.area",),
)  # fmt: skip
