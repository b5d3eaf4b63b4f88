"""The pictures of a design: what they name exists, and their numbers agree with a second method."""

from math import pi
from pathlib import Path

import numpy as np
import pytest

import ampreview.rules.pictures as folder
from ampreview.linter.check import Input
from ampreview.linter.evaluation.catalogue import load
from ampreview.linter.evaluation.engine import Assessment
from ampreview.linter.judging.drawn import Drawn
from ampreview.linter.judging.pictures import declared, pictures_of
from ampreview.linter.judging.review import review
from ampreview.linter.picture import Amount, Curves, Picture, Scale
from ampreview.linter.reading.loading import load_file, load_text
from ampreview.rules.formulas.conductors import trace_rise
from ampreview.rules.measurable import MEASURABLE
from ampreview.rules.pictures.supply_currents import trace_current

SAMPLES = Path(__file__).parents[2] / "sample_specs"
CATALOGUE = load()
PICTURES: list[Picture] = list(declared(CATALOGUE.packages))


@pytest.fixture(scope="module")
def run() -> Assessment:
    spec = load_file(SAMPLES / "choir-portable.amp.yaml").spec
    assert spec is not None
    return Assessment(spec, CATALOGUE, "prototype")


@pytest.fixture(scope="module")
def drawn(run: Assessment) -> dict[str, Drawn]:
    return {x.picture.title: x for x in pictures_of(run)}


def of(drawn: dict[str, Drawn], words: str) -> Drawn:
    return next(x for title, x in drawn.items() if words in title)


def amounts(picture: Picture) -> list[Amount]:
    if isinstance(picture, Scale):
        return [way for row in picture.rows for shown in row.shown for way in shown.ways]
    found = [x for axis in (picture.x, picture.y) for x in (axis.low, axis.high)]
    found += [x for span in picture.spans for x in (span.low, span.high)] + [picture.worst]
    ways = [way for x in (*picture.curves, *picture.marks) for way in x.ways]
    ways += [x for spot in picture.spots for x in (spot.x, spot.y)]
    return [x for x in (*found, *ways) if x is not None]


def measures(picture: Picture) -> list[str]:
    if isinstance(picture, Scale):
        return [shown.measures for row in picture.rows for shown in row.shown]
    return [x.measures for x in (*picture.marks, *picture.spots)]


def checks(picture: Picture) -> list[str]:
    if isinstance(picture, Curves):
        return list(picture.checks)
    return [name for row in picture.rows for name in row.checks]


def test_every_file_is_shown_once() -> None:
    files = {path.stem for path in Path(folder.__path__[0]).glob("*.py")}
    assert set(folder.ORDER) == files - {"__init__", "parts"}
    assert len({x.title for x in PICTURES}) == len(PICTURES) == len(folder.ORDER)
    assert all(x.title.endswith("?") for x in PICTURES)


def test_what_pictures_name_exists() -> None:
    known = {*CATALOGUE.schema.fields, *CATALOGUE.derived}
    for picture in PICTURES:
        assert not [name for name in checks(picture) if CATALOGUE.entry(name) is None]
        for amount in amounts(picture):
            paths = [x.path for x in amount.inputs.values() if isinstance(x, Input)]
            named = [x.removeprefix("all ").partition(":")[0] for x in (*paths, *amount.when)]
            assert set(named) <= known, (picture.title, set(named) - known)
        assert {x for x in measures(picture) if x} <= {x.figure for x in MEASURABLE}


def test_response_is_that_of_the_nodal_equations(run: Assessment, drawn: dict[str, Drawn]) -> None:
    """Second method: the admittance matrix of the ladder, solved by numpy."""
    line = next(x for x in of(drawn, "carrier").lines if x.label == "least load")
    names = ("l_total", "c_total", "load_low", "n_legs", "filter.inductor.dcr", "r_damper",
             "c_damper")  # fmt: skip
    nodes = (run.graph.resolve(name, "left") for name in names)
    l_1, c_1, load_, legs, dcr, r_d, c_d = (float(node.value()) for node in nodes)  # type: ignore[union-attr]
    for f, y in list(zip(line.x, line.y, strict=True))[::12]:
        s = 2j * pi * f
        series, damper = 1 / (s * l_1 + legs * dcr), s * c_d
        parallel = 1 / load_ + s * c_1
        matrix = np.array([[series + parallel + 1 / r_d, -1 / r_d], [-1 / r_d, 1 / r_d + damper]])
        voltage = np.linalg.solve(matrix, np.array([series, 0.0]))[0]
        assert y == pytest.approx(20 * np.log10(abs(voltage)), abs=1e-6)


def test_losses_add_up_and_give_the_efficiency(run: Assessment, drawn: dict[str, Drawn]) -> None:
    """What goes in and does not come out: the parts make the whole that the heat path takes."""
    rows = {row.label: row for row in of(drawn, "lost power").rows}
    rated = {
        label: next(x for x in row.points if x.kind == "second" or x.label == "always").nominal
        for label, row in rows.items()
        if "core" not in label.lower()
    }
    whole = rated.pop("All losses")
    assert sum(rated.values()) == pytest.approx(whole, rel=1e-6)
    line = of(drawn, "efficient").lines[0]
    assert line.y[-1] == pytest.approx(line.x[-1] / (line.x[-1] + whole), rel=1e-6)


def test_source_at_the_crest_balances_its_power(run: Assessment, drawn: dict[str, Drawn]) -> None:
    """P = V (V0 - V) / r at the lowest point of the curve, P that of the crest."""
    line = of(drawn, "battery hold").lines[0]
    names = ("v_source_low_at_most", "r_ahead", "p_source_crest")
    nodes = (run.graph.resolve(name, None) for name in names)
    v_open, r, power = (float(node.value()) for node in nodes)  # type: ignore[union-attr]
    v = min(line.y)
    assert v * (v_open - v) / r == pytest.approx(power, rel=2e-3)


def test_gap_between_the_switches_is_the_figure_of_its_check(
    run: Assessment, drawn: dict[str, Drawn]
) -> None:
    entry = CATALOGUE.entry("dead-time-margin")
    assert entry is not None
    span = of(drawn, "switch off").spans[0]
    assert span.high - span.low == pytest.approx(run.judge(entry, "left").evidence.figure)


def test_cone_moves_most_where_the_check_says(run: Assessment, drawn: dict[str, Drawn]) -> None:
    picture = of(drawn, "cone")
    low = next(x.value for x in picture.marks if x.axis == "x")
    peak = run.graph.resolve("x_peak", "left").value()  # type: ignore[union-attr]
    line = picture.lines[0]
    inside = [y for x, y in zip(line.x, line.y, strict=True) if x >= low]
    assert max(inside) == pytest.approx(peak, rel=5e-3)


def test_trace_current_heats_by_what_is_allowed() -> None:
    """Back through the chart of IPC-2221 that the check uses."""
    chart = ("outer", 0.048, 0.024, 25.4e-6**2, 1.0)
    current = trace_current(5e-3, 70e-6, *chart, 30.0)
    assert trace_rise(current, 5e-3, 70e-6, 0.048, 25.4e-6**2, 1.0) == pytest.approx(30.0)


def test_level_falls_as_sound_power_spreads(run: Assessment, drawn: dict[str, Drawn]) -> None:
    """Second method: the intensity at 1 m, thinned out over ever larger spheres; and the
    distance of the programme line to the rule at the nearest ear is the figure of the check."""
    picture = of(drawn, "loud")
    sine, music = picture.lines
    level = run.graph.resolve("level_max", None).value()  # type: ignore[union-attr]
    power = 4 * pi * 1e-12 * 10 ** (level / 10)
    for x, y in list(zip(sine.x, sine.y, strict=True))[::20]:
        assert 1e-12 * 10 ** (y / 10) == pytest.approx(power / (4 * pi * x**2), rel=1e-9)
    marks = {x.label: x.value for x in picture.marks}
    assert (marks["NIOSH: 8 h a day"], marks["NIOSH: 15 min a day"]) == (85.0, 100.0)
    entry = CATALOGUE.entry("hearing-exposure")
    assert entry is not None
    at_ear = np.interp(np.log(marks["nearest listener"]), np.log(music.x), music.y)
    figure = run.judge(entry, "product").evidence.nominal
    assert at_ear - marks["stated rule and time"] == pytest.approx(figure, abs=1e-6)
    assert (picture.spots[0].x, picture.spots[0].y) == (1.0, 103.0)


READINGS = """
measured:
  - {figure: p_loss_rated, place: left, value: 4 W, supply: 33.6 V, load: 4 ohm, power: 50 W}
  - {figure: v_overshoot, place: left, value: 5 V, supply: 33.6 V, load: 4 ohm, power: 50 W}
  - {figure: p_idle, place: left, value: 1.3 W, supply: 33.6 V, board: 1}
  - {figure: p_idle, place: left, value: 1.5 W, supply: 33.6 V, board: 2}
  - {figure: t_heatsink_rated, value: 48 degC, supply: 20 V, load: 4 ohm, power: 50 W,
     ambient: 25 degC}
"""


def test_what_was_measured_stands_beside_the_model() -> None:
    """Worked by hand: 50 W out of 54 W; 5 V on top of what stands across the open switch. A
    reading under other conditions (20 V) is not shown."""
    text = (SAMPLES / "choir-portable.amp.yaml").read_text("utf-8") + READINGS
    spec = load_text(text, "measured.amp.yaml").spec
    assert spec is not None
    found = review(spec)
    run = Assessment(found.spec, CATALOGUE, "prototype")
    pictures = pictures_of(run, found.measured)
    shown = {x.picture.title: x for x in pictures if "right" not in x.subjects}
    spot = of(shown, "efficient").spots[0]
    assert (spot.x, spot.y) == (50.0, pytest.approx(50 / 54))
    assert spot.low == pytest.approx(50 / (50 + 4.08))
    switch = next(x for x in of(shown, "voltage").rows if x.label == "Open switch")
    points = {x.label: x.nominal for x in switch.points}
    assert points["measured"] == pytest.approx(points["rail and pumping"] + 5.0)
    idle = next(x for x in of(shown, "lost power").rows if x.label.startswith("Idle"))
    read = {x.label: x.nominal for x in idle.points if x.kind == "measured"}
    assert read == {"measured, board 1": 1.3, "measured, board 2": 1.5}
    sink = next(x for x in of(shown, "hot").rows if x.label == "Heatsink")
    assert not [x for x in sink.points if x.kind == "measured"]


def test_silence_shows_no_picture() -> None:
    spec = load_file(SAMPLES / "classroom-sketch.amp.yaml").spec
    assert spec is not None
    titles = {x.picture.title for x in pictures_of(Assessment(spec, CATALOGUE, "concept"))}
    assert not any("cone" in title or "trace" in title for title in titles)
