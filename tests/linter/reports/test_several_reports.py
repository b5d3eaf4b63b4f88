"""Folders as arguments, several reports of one run, blank files beside a spec."""

import json
from pathlib import Path

import pytest

from ampreview.linter.cli import main
from ampreview.linter.judging.house import House
from ampreview.linter.judging.house_file import read_house
from ampreview.linter.reading.folders import spec_files
from ampreview.linter.reading.keyed_file import Permissions, read_deviations

SKETCH = "amplifier_spec: 1\ntitle: sketch\nsupply: {rails: single, v_rail: 24 V}\n"


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
