"""Folders as arguments, several reports of one run, blank files beside a spec."""

import json
from pathlib import Path

import pytest

from ampreview.linter.cli import main
from ampreview.linter.judging.house import House
from ampreview.linter.judging.house_file import read_house
from ampreview.linter.reading.folders import spec_files
from ampreview.linter.reading.keyed_file import (
    Measured,
    Permissions,
    read_deviations,
    read_measured,
)
from ampreview.rules.measurable import MEASURABLE

SKETCH = """amplifier_spec: 1
title: sketch
supply: {rails: single, v_rail: 24 V}
channels: {main: {rated_power: 20 W, rated_load: 8 ohm}}
"""


@pytest.fixture
def boards(tmp_path: Path) -> Path:
    for name in (
        "b/two.amp.yaml",
        "a/one.amp.yaml",
        ".git/no.amp.yaml",
        "a/.no.amp.yaml",
        "x.yaml",
    ):
        path = tmp_path / name
        path.parent.mkdir(exist_ok=True)
        path.write_text(SKETCH, "utf-8")
    return tmp_path


def test_a_folder_stands_for_its_spec_files_in_order_and_none_twice(boards: Path) -> None:
    one, two = boards / "a/one.amp.yaml", boards / "b/two.amp.yaml"
    assert spec_files([boards]) == (one, two)
    assert spec_files([two, boards]) == (two, one)
    assert spec_files([boards / "none.amp.yaml"]) == (boards / "none.amp.yaml",)


def test_several_reports_of_one_run(boards: Path, capsys: pytest.CaptureFixture[str]) -> None:
    marks, log = boards / "r.md", boards / "r.sarif"
    asked = ["--report", f"markdown={marks}", "--report", f"sarif={log}"]
    assert main(["assess", "--remedies", "none", *asked, str(boards)]) == 0
    assert "2 files: 2 released" in capsys.readouterr().out
    assert "two.amp.yaml" in marks.read_text("utf-8")
    results = json.loads(log.read_text("utf-8"))["runs"][0]["results"]
    assert {item["kind"] for item in results} <= {"fail", "open"}
    assert results
    assert main(["assess", *asked, str(boards)]) == 2
    assert "exists already" in capsys.readouterr().err


@pytest.mark.parametrize(
    ("arguments", "says"),
    [
        (["--report", "json", "--report", "text"], "give all but one a file"),
        (["--report", "json=r", "--report", "text=r"], "two reports would go to"),
        (["--report", "json=r", "--report", "text=a/../r"], "two reports would go to"),
        (["--report", "json", "--check", "x"], "--check goes with the text report"),
    ],
)
def test_reports_that_cannot_be(
    boards: Path, arguments: list[str], says: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["assess", *arguments, str(boards)]) == 2
    assert says in capsys.readouterr().err


def test_a_folder_without_specs_is_said(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["assess", str(tmp_path)]) == 2
    assert "no *.amp.yaml in the folder" in capsys.readouterr().err


def test_blank_files_beside_a_spec_can_be_read(tmp_path: Path) -> None:
    house, permissions = tmp_path / "house.ampreview.yaml", tmp_path / "deviations.yaml"
    assert main(["form", "--house", "-o", str(house)]) == 0
    assert main(["form", "--deviations", "-o", str(permissions)]) == 0
    assert isinstance(read_house(house), House)
    found = read_deviations(permissions)
    assert isinstance(found, Permissions), found
    assert found.deviations == ()


def test_a_blank_list_of_measurements_names_every_figure_with_its_conditions(
    tmp_path: Path,
) -> None:
    blank = tmp_path / "measured.yaml"
    assert main(["form", "--measured", "-o", str(blank)]) == 0
    found = read_measured(blank)
    assert isinstance(found, Measured), found
    assert found.measurements == ()
    text = blank.read_text("utf-8").replace("  #- ", "  - ").replace("value: ", "value: 1 W")
    blank.write_text(text, encoding="utf-8")
    found = read_measured(blank)
    assert isinstance(found, Measured), found
    assert [item.figure for item in found.measurements] == [item.figure for item in MEASURABLE]
    assert "figure: p_idle, place: , value: 1 W, supply: , board:" in text


@pytest.mark.parametrize(
    ("first", "given", "says"),
    [
        ("amplifier_measured: 1", [], "this is a list of measurements, not a spec"),
        ("amplifier_house: 1", ["--measured"], "this is a house file, not a list of measurements"),
        ("amplifier_deviations: 1", ["--parts"], "this is a list of deviations, not a parts file"),
        ("amplifier_spec: 1", ["--house"], "this is a spec, not a house file"),
    ],
)
def test_a_file_of_another_kind_is_told_by_its_name_and_its_use(
    boards: Path, first: str, given: list[str], says: str, capsys: pytest.CaptureFixture[str]
) -> None:
    file = boards / "file.yaml"
    file.write_text(f"{first}\n", encoding="utf-8")
    spec = [str(boards / "a/one.amp.yaml")] if given else []
    assert main(["assess", *given, str(file), *spec]) == 2
    told = " ".join(capsys.readouterr().out.split())
    assert says in told
    assert told.count("▪") == 1
