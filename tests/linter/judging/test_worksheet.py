"""Worksheets and handbook pages: every number that a second engineer needs, in order."""

import io
import re
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from ampreview.linter.check import (
    COMMON_PRACTICE,
    AtMost,
    Case,
    Check,
    Constant,
    Derived,
    Input,
    Source,
    Way,
    derivation,
)
from ampreview.linter.cli import main
from ampreview.linter.declare import load_schema
from ampreview.linter.evaluation.catalogue import Catalogue, Entry, load
from ampreview.linter.evaluation.engine import Assessment
from ampreview.linter.evaluation.wording import in_words
from ampreview.linter.judging.sheets import Sheet, sheets_of
from ampreview.linter.judging.worksheet import Worksheet, worksheet
from ampreview.linter.reading.loading import Spec, load_file, load_text
from ampreview.linter.reports.catalogue_text import print_entry
from ampreview.linter.reports.console import console
from ampreview.linter.reports.worksheet_text import (
    INITIALS,
    markdown,
    of_checks,
    of_sheets,
    print_blocks,
)

SAMPLES = Path(__file__).parents[3] / "sample_specs"

BOOK = Source("an invented handbook", "p. 1")
SWING = Derived(
    "v_swing",
    "V",
    "product",
    "swing of the switch node",
    (Way(lambda v: 2 * v, {"v": Input("supply.v_rail", "V", "rail")}, "2 v"),),
    sources=(derivation("both rails of a split supply"),),
)


def stress(v_swing: Any, v_dss: Any, share: Any) -> Any:
    return share * v_swing / v_dss


STRESS = Check(
    title="Swing against the rating",
    figure=stress,
    unit="%",
    each="channel",
    stake="rating",
    formula="share v_swing / v_dss",
    sentence="{v_swing} on {v_dss}",
    inputs={
        "v_swing": Input("v_swing", "V", "swing of the switch node"),
        "v_dss": Input("output_stage.device.v_dss", "V", "rating"),
        "share": Constant("1", "share of the swing", COMMON_PRACTICE),
    },
    limits=AtMost(major="90 %", minor="80 %", basis={"major": BOOK, "minor": COMMON_PRACTICE}),
    sources=(BOOK,),
    cases=(Case({"v_swing": "80 V", "v_dss": "100 V"}, "80 %", "published: an invented handbook"),),
    fails="\nsupply: {v_rail: 50 V}\n",
    passes="\nsupply: {v_rail: 5 V}\n",
)
ENTRY = Entry("swing-margin", "invented", "First words.\n\nWhy it matters.", STRESS, "invented.py")
CATALOGUE = Catalogue((ENTRY,), {"v_swing": SWING}, {"invented": "Invented checks"}, load_schema())
SPEC = (
    "amplifier_spec: 1\n"
    "title: A *bold* [red]title[/red]\n"
    "supply: {v_rail: 40 V ± 10 %}\n"
    "channels: {main: {output_stage: {device: {v_dss: 100 V}}}}\n"
)


def spec_of(text: str) -> Spec:
    loaded = load_text(text, "invented.amp.yaml")
    assert loaded.spec is not None, loaded.refusals
    return loaded.spec


def made(text: str = SPEC) -> Worksheet:
    return worksheet(Assessment(spec_of(text), CATALOGUE, "concept"), ENTRY, "main")


def printed(page: Worksheet, width: int) -> str:
    stream = io.StringIO()
    print_blocks(spec_of(SPEC), of_checks([page]), console(stream, width))
    return stream.getvalue()


def test_lines_come_leaves_first_with_both_values_and_places() -> None:
    """40 V ± 10 % give 80 V and 88 V of swing: 80 % and 88 % of 100 V."""
    lines = {line.symbol: line for line in made().lines}
    assert list(lines) == [
        "supply.v_rail",
        "v_swing",
        "channels.main.output_stage.device.v_dss",
        "swing-margin",
    ]
    rail, swing, figure = lines["supply.v_rail"], lines["v_swing"], lines["swing-margin"]
    assert (rail.kind, rail.formula, rail.nominal, rail.worst) == (
        "stated",
        "40 V ± 10 %",
        "40 V",
        "44 V",
    )
    assert rail.place is not None
    assert rail.place.line == 3
    assert (swing.kind, swing.formula, swing.worst) == ("derived", "2 v", "88 V")
    assert swing.sources == SWING.sources
    assert (figure.kind, figure.nominal, figure.worst) == ("figure", "80 %", "88 %")


def test_a_sheet_that_cannot_be_computed_says_what_is_missing() -> None:
    page = made("amplifier_spec: 1\nchannels: {main: {output_stage: {device: {v_dss: 9 V}}}}\n")
    assert page.lines == ()
    assert "supply.v_rail" in printed(page, 90)


def test_a_printed_sheet_has_result_limits_sources_and_room_to_sign() -> None:
    text = printed(made(), 120)
    for part in (
        "result: 88 %, at most 80 %",
        "margin -10.0 % of the limit, minor",
        "limits: major: above 90 %; an invented handbook, p. 1",
        "share v_swing / v_dss",
        "both rails of a split",
        "Checked by:",
    ):
        assert part in text, part


def test_markdown_shows_the_text_of_a_spec_as_it_is() -> None:
    text = markdown(spec_of(SPEC), of_checks([made()]))
    assert "invented.amp.yaml, SHA-256 " in text
    assert text.startswith("# Worksheets: A \\*bold\\* \\[red\\]title\\[/red\\]\n")
    assert "| supply.v\\_rail | 40 V ± 10 % | 40 V | 44 V | line 3 |" in text


def test_a_page_of_the_handbook_shows_the_whole_rule_file() -> None:
    stream = io.StringIO()
    print_entry(ENTRY, CATALOGUE, console(stream, 100))
    text = " ".join(stream.getvalue().split())
    for part in (
        "swing-margin Invented checks",
        "Why it matters.",
        "share v_swing / v_dss [%]",
        "output_stage.device.v_dss rating [V]",
        "share of the swing: 1; common practice, no source",
        "for each channel; rating: judged at the extreme corner",
        "minor: above 80 %; common practice, no source",
        "v_swing 80 V, v_dss 100 V: 80 % (published: an invented handbook)",
        "v_rail: 50 V",
    ):
        assert part in text, part


def test_every_page_of_the_catalogue_can_be_printed() -> None:
    catalogue = load()
    for entry in catalogue.entries:
        stream = io.StringIO()
        print_entry(entry, catalogue, console(stream, 80))
        text = stream.getvalue()
        assert entry.name in text
        assert max(map(len, text.splitlines())) <= 80


def test_an_unknown_check_is_told_with_its_neighbours(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["catalogue", "dead-time-margn"]) == 2
    assert "dead-time-margin" in capsys.readouterr().err


def test_the_worst_corner_of_a_sheet_gives_the_result() -> None:
    """Every check of two samples: the last row is the figure that the head states."""
    for name in ("choir-portable-faulty", "playhouse-subwoofer-faulty"):
        loaded = load_file(SAMPLES / f"{name}.amp.yaml")
        assert loaded.spec is not None
        run = Assessment(loaded.spec, load(), "prototype")
        for entry, subject in run.questions():
            page = worksheet(run, entry, subject)
            if page.lines:
                worst = in_words(page.finding.evidence.figure, entry.check.unit)
                assert page.lines[-1].worst == worst, (name, entry.name, subject)


def test_the_corner_names_what_matters_only_where_another_stands_at_its_worst() -> None:
    """40 V and 40 V, 10 % each: the second adds nothing until the first is beyond 42 V."""
    over = replace(
        STRESS,
        figure=lambda v, c: v + max(0.0, v + c - 86.0),
        unit="V",
        inputs={
            "v": Input("supply.v_rail", "V", "rail"),
            "c": Input("supply.bulk.v_rated", "V", "rating"),
        },
        limits=AtMost(major="45 V", basis={"major": STRESS.limits.basis["major"]}),
        each="product",
        sentence="{figure}",
    )
    entry = Entry("over", "invented", "Words.", over, "invented.py")
    text = "supply: {v_rail: 40 V ± 10 %, bulk: {v_rated: 40 V ± 10 %}}"
    loaded = load_text(f"amplifier_spec: 1\n{text}\n", "invented.amp.yaml")
    assert loaded.spec is not None
    page = worksheet(Assessment(loaded.spec, CATALOGUE, "concept"), entry, "product")
    assert page.finding.evidence.figure == pytest.approx(46.0)
    corner = {item.path: item.value for item in page.finding.evidence.corner}
    assert corner == pytest.approx({"supply.v_rail": 44.0, "supply.bulk.v_rated": 44.0})
    assert page.lines[-1].worst == "46 V"


def sheets(name: str, changes: dict[str, str] | None = None) -> tuple[Spec, tuple[Sheet, ...]]:
    """The sheets of a sample, as the command makes them."""
    loaded = load_file(SAMPLES / f"{name}.amp.yaml")
    assert loaded.spec is not None
    spec = loaded.spec.with_values(changes).spec if changes else loaded.spec
    assert spec is not None
    run = Assessment(spec, load(), "prototype")
    pages = [worksheet(run, entry, subject) for entry, subject in run.questions()]
    return spec, sheets_of([x for x in pages if x.finding.status != "not applicable"])


@pytest.mark.parametrize("name", ["foyer-proposal", "choir-portable-faulty"])
def test_a_check_on_a_sheet_takes_at_most_forty_lines(name: str) -> None:
    spec, found = sheets(name)
    for width in (80, 100):
        stream = io.StringIO()
        print_blocks(spec, of_sheets(found), console(stream, width))
        parts = stream.getvalue().split(f"   {INITIALS}\n")[1:]
        assert len(parts) == sum(len(sheet.pages) for sheet in found)
        assert max(part.partition("\n\n")[0].count("\n") + 2 for part in parts) <= 40


def test_a_sheet_has_each_quantity_once_and_equal_channels_share_it() -> None:
    """The sample's right channel repeats the left one line by line."""
    _, (product, channels) = sheets("foyer-proposal")
    assert product.subjects == ("product",)
    assert channels.subjects == ("left", "right")
    for sheet in (product, channels):
        names = [(line.symbol, line.formula, line.nominal) for line in sheet.common]
        assert len(names) == len(set(names))
        asked = {line.symbol for page in sheet.pages for line in page.lines[:-1]}
        assert {line.symbol for line in sheet.common} <= asked
        assert asked <= {symbol for line in sheet.common for symbol in _both(line.symbol)}


def _both(symbol: str) -> tuple[str, str]:
    return symbol, symbol.replace("channels.left.", "channels.right.")


def test_channels_that_differ_have_sheets_that_name_what_is_equal() -> None:
    _, found = sheets("choir-portable", {"channels.right.gate_drive.dead_time": "60 ns"})
    left, right = (sheet for sheet in found if sheet.subjects != ("product",))
    assert len(right.pages) < len(left.pages)
    assert set(right.alike) == {"left"}
    assert not {page.entry.name for page in right.pages} & set(right.alike["left"])


def test_what_is_solved_together_is_told_in_its_units() -> None:
    """Every bundle of the catalogue names its members; heat in W and temperatures in degC."""
    bundles = [x for x in load().derived.values() if x.unit == "set"]
    assert bundles
    assert all(x.parts for x in bundles)
    _, found = sheets("foyer-proposal")
    told = {line.symbol: line.nominal for sheet in found for line in sheet.common}
    assert re.search(r"switches [\d.]+ m?W, conduction [\d.]+ m?W", told["heat_programme"])
    assert re.search(r"t_junction [\d.]+ °C each", told["thermal_programme"])
    air = told["air_path"].split(", ")
    assert air[0] == f"t_ambient {told['environment.ambient']}"
    window = {x.nominal for x in found[0].common if x.symbol == "battery.charger.t_window"}
    assert window == {"-5 °C", "50 °C"}


def test_a_worksheet_counts_what_was_measured_as_the_review_does(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """An invented reading of 8.5 V stands in for the overshoot that the design leaves out."""
    board = Path(__file__).parents[2] / "published/designs/split-half-bridge-35v.amp.yaml"
    beside = tmp_path / "bench.yaml"
    at = "supply: 35 V, load: 4 ohm, power: 120 W, value: 8.5 V"
    items = [f"{{figure: v_overshoot, place: {name}, {at}}}" for name in ("left", "right")]
    beside.write_text(f"amplifier_measured: 1\nmeasured: [{', '.join(items)}]\n", "utf-8")
    given = ["worksheet", "--no-house", str(board), "device-voltage-ringing"]
    told = []
    for options in ([], ["--measured", str(beside)]):
        assert main([*given, *options]) == 0
        told.append("8.5 V" in capsys.readouterr().out)
    assert told == [False, True]
