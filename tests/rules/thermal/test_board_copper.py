"""Board copper by finite differences, and beside the values that makers print."""

import numpy as np
import pytest
from scipy import special
from scipy.linalg import solve_banded

from ampreview.rules.formulas.fin import (
    bessel_i,
    bessel_k,
    copper_resistance,
    rim_ratio,
    sheet_resistance,
)
from ampreview.rules.thermal.board_copper_cooling import CHECK

VIA = 0.0236e-6
PLAIN = (VIA, 1.6e-3, 390.0, 0.3, 15.0)


@pytest.mark.parametrize("x", [0.01, 0.1, 1.0, 3.0, 5.0])
def test_bessel_functions_against_scipy(x: float) -> None:
    """Power series against the library."""
    assert bessel_i(0, x) == pytest.approx(special.i0(x), rel=1e-9)
    assert bessel_i(1, x) == pytest.approx(special.i1(x), rel=1e-9)
    assert bessel_k(0, x) == pytest.approx(special.k0(x), rel=1e-7)
    assert bessel_k(1, x) == pytest.approx(special.k1(x), rel=1e-7)


@pytest.mark.parametrize("x", [0.05, 0.5, 2.9, 3.1, 8.0, 30.0])
def test_rim_of_an_endless_sheet_against_scipy(x: float) -> None:
    assert rim_ratio(x) == pytest.approx(special.k1(x) / special.k0(x), rel=2e-3)


def by_differences(
    rim: float, end: float, sheet: float, bare: float, film: float, faces: int = 2
) -> float:
    """Rings of copper up to the rim and of bare board up to the end, as a ladder; pad 3 mm."""
    pad, cells = 3e-3, 6000
    edges = np.linspace(pad, end, cells + 1)
    middle = (edges[1:] + edges[:-1]) / 2
    step = edges[1] - edges[0]
    conducting = np.where(edges[1:-1] < rim, sheet, bare)
    along = conducting * 2 * np.pi * edges[1:-1] / step
    matrix = np.zeros((3, cells))
    matrix[1] = faces * film * 2 * np.pi * middle * step
    matrix[1, :-1] += along
    matrix[1, 1:] += along
    matrix[0, 1:] = -along
    matrix[2, :-1] = -along
    flow = np.zeros(cells)
    flow[0] = 1.0
    first = solve_banded((1, 1), matrix, flow)[0]
    return float(first + np.log(middle[0] / pad) / (2 * np.pi * sheet))


@pytest.mark.parametrize(("rim", "expected"), [(25e-3, 41.98), (80e-3, 27.32)])
def test_sheet_with_nothing_beyond(rim: float, expected: float) -> None:
    """Pad radius 3 mm, 35 um, 10 W/m2K a face."""
    found = by_differences(rim, rim, 390.0 * 35e-6, 1e-12, 10.0)
    assert found == pytest.approx(expected, rel=2e-3)
    circle = (np.pi * rim**2, np.pi * 3e-3**2)
    sheet = sheet_resistance(*circle, 390.0 * 35e-6, 1e-12, 2, 10.0)
    assert sheet == pytest.approx(found, rel=2e-3)


@pytest.mark.parametrize("rim", [8e-3, 13.8e-3, 40e-3])
@pytest.mark.parametrize("faces", [1, 2])
def test_sheet_on_a_bare_board(rim: float, faces: int) -> None:
    sheet, bare = 390.0 * 35e-6, 0.3 * 1.6e-3
    found = by_differences(rim, 0.1, sheet, bare, 15.0, faces)
    circle = (np.pi * rim**2, np.pi * 3e-3**2)
    assert sheet_resistance(*circle, sheet, bare, faces, 15.0) == pytest.approx(found, rel=5e-3)


def coupled(rim: float, sheet: float, vias: float) -> float:
    """Two sheets ring by ring, joined by vias under the pad and by resin everywhere else."""
    pad, cells, film = 3e-3, 400, 15.0
    edges = np.linspace(pad, rim, cells + 1)
    middle = (edges[1:] + edges[:-1]) / 2
    step = edges[1] - edges[0]
    ring = 2 * np.pi * middle * step
    matrix = np.zeros((2 * cells, 2 * cells))
    for layer in (0, cells):
        for number in range(cells):
            matrix[layer + number, layer + number] += film * ring[number]
        for number in range(cells - 1):
            along = sheet * 2 * np.pi * edges[number + 1] / step
            for i, j in ((number, number + 1), (number + 1, number)):
                matrix[layer + i, layer + i] += along
                matrix[layer + i, layer + j] -= along
    for number in range(cells):
        across = 0.3 * ring[number] / 1.6e-3
        if number == 0:
            across += (vias * VIA * 390.0 + 0.3 * np.pi * pad**2) / 1.6e-3
        for i, j in ((number, cells + number), (cells + number, number)):
            matrix[i, i] += across
            matrix[i, j] -= across
    flow = np.zeros(2 * cells)
    flow[0] = 1.0
    return float(np.linalg.solve(matrix, flow)[0])


@pytest.mark.parametrize("vias", [0, 4, 16, 100])
@pytest.mark.parametrize("rim", [14e-3, 25e-3])
def test_two_layers_joined_ring_by_ring(rim: float, vias: int) -> None:
    """What joins the layers is taken for one step: from below, by a sixth at most."""
    circle = (np.pi * rim**2, np.pi * 3e-3**2)
    found = copper_resistance(*circle, 35e-6, 2, vias, VIA, 1.6e-3, 390.0, 0.3, 15.0)
    bare_beyond = sheet_resistance(*circle, 0.0273, 0.3 * 1.6e-3, 2, 15.0)
    cut = sheet_resistance(*circle, 0.0273, 1e-12, 2, 15.0)
    whole = coupled(rim, 390.0 * 35e-6, vias) * bare_beyond / cut
    assert 0.83 < found / whole < 1.06


# copper area, pad, layers, thickness, vias, printed junction to ambient in still air, source
PUBLISHED = (
    (600, 30, 1, 35, 0, 68.0, "Infineon SOT223-4-2 package and thermal information"),
    (300, 20, 1, 35, 0, 81.2, "the same"),
    (1290, 80, 1, 35, 0, 54.7, "LMH6321 SNOSAL8C table 1, 1 x 2 in below, 2 W"),
    (1290, 80, 2, 35, 0, 32.1, "the same, top and bottom"),
    (2581, 80, 2, 35, 0, 22.0, "the same, 2 x 2 in"),
    (5161, 80, 2, 35, 0, 17.2, "the same, 2 x 4 in"),
    (2500, 80, 2, 35, 0, 23.0, "TL1963A-Q1 SLVSA79A table 4, 2500 mm2 on both sides"),
    (800, 20, 2, 70, 16, 34.1, "VNQ5E050MK-E Doc ID 16374 table 14, 8 cm2, one channel on"),
    (200, 20, 2, 70, 16, 42.1, "the same, 2 cm2"),
    (900, 25, 2, 35, 16, 24.0, "STA559BW Doc ID 18190 p. 63, STA333ML Doc ID 13177 p. 17"),
    (
        645,
        80,
        1,
        70,
        0,
        18.0,
        "International Rectifier AN-994 table 1, D2-Pak, 1 sq in, copper face below",
    ),
    (645, 40, 1, 70, 0, 20.2, "the same, D-Pak"),
)
NOT_SEEN = ((600, 30, 1, 35, 0, 38.0, "boards of 6 cm2 that an earlier bound condemned"),)


def ratio(row: tuple[float, float, int, float, int, float, str]) -> float:
    area, pad, layers, copper, vias, printed, _ = row
    sheet = copper_resistance(area * 1e-6, pad * 1e-6, copper * 1e-6, layers, vias, *PLAIN)
    return float(printed / sheet)


@pytest.mark.parametrize("row", PUBLISHED + NOT_SEEN, ids=lambda row: f"{row[0]} mm2 {row[5]}")
def test_no_printed_value_is_condemned(
    row: tuple[float, float, int, float, int, float, str],
) -> None:
    """Pads are estimates from the package; traces and other copper help some of them."""
    assert 0.4 < ratio(row) < 2.0
    assert CHECK.limits.major == "0.4"


def test_a_board_whose_two_layers_are_printed_is_not_called_tight() -> None:
    assert CHECK.limits.minor and float(CHECK.limits.minor) < ratio(PUBLISHED[9])


def test_sheets_of_which_the_whole_board_is_known_lie_above_the_sheet() -> None:
    """Makers who print the copper and leave the rest bare: 1.05 to 1.9 times."""
    assert all(1.05 < ratio(row) < 1.9 for row in PUBLISHED[:8])


def test_more_copper_is_never_worse() -> None:
    base = (600e-6, 30e-6, 35e-6, 1.0, 0.0)
    here = copper_resistance(*base, *PLAIN)
    for number, factor in ((0, 1.3), (1, 1.3), (2, 2.0), (3, 2.0), (3, 4.0)):
        better = [x * factor if i == number else x for i, x in enumerate(base)]
        assert copper_resistance(*better, *PLAIN) <= here
    some = copper_resistance(*base[:3], 4.0, 4.0, *PLAIN)
    assert copper_resistance(*base[:3], 4.0, 40.0, *PLAIN) < some


def test_copper_far_away_takes_no_more_heat() -> None:
    """An endless sheet: K0 over K1 at the pad (the radial fin of endless radius, derivation)."""
    pad = np.pi * 3e-3**2
    sheet, film = 390.0 * 35e-6, 15.0
    x = 3e-3 * (2 * film / sheet) ** 0.5
    endless = special.k0(x) / special.k1(x) / (2 * np.pi * sheet * x)
    for radius in (0.2, 0.4, 1.0, 1e6):
        found = sheet_resistance(np.pi * radius**2, pad, sheet, 0.3 * 1.6e-3, 2, film)
        assert found == pytest.approx(endless, rel=1e-6)
    assert 0.0 < sheet_resistance(9e6, 8e6, sheet, 0.3 * 1.6e-3, 2, film) < 1e-3
