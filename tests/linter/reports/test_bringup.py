"""The bring-up sheet as it is printed: what a person at the bench reads and fills in."""

from pathlib import Path

import pytest

from ampreview.linter.bringup_step import Amount, Line, Reading, Step
from ampreview.linter.check import Input
from ampreview.linter.cli import main
from ampreview.linter.evaluation.bringup_steps import step_faults
from ampreview.linter.evaluation.catalogue import load
from ampreview.linter.judging.bench import Band, in_digits

SAMPLES = Path(__file__).parents[3] / "sample_specs"
CHOIR = str(SAMPLES / "choir-portable.amp.yaml")
FOYER = str(SAMPLES / "foyer-proposal.amp.yaml")


def printed(capsys: pytest.CaptureFixture[str], *words: str) -> str:
    assert main(["bringup", *words]) == 0
    return capsys.readouterr().out


@pytest.mark.parametrize("width", ["80", "100"])
def test_the_sheet_fits_and_has_room_to_write(
    width: str, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("COLUMNS", width)
    page = printed(capsys, CHOIR)
    assert max(map(len, page.splitlines())) <= int(width)
    assert page.count("Initials ____") == 18
    assert "left:________" in page
    assert "Board no. ____" in page
    assert page.rstrip().endswith("An open item is not a pass.")
    assert "released at prototype" in page


def test_a_held_spec_says_what_comes_before_power(capsys: pytest.CaptureFixture[str]) -> None:
    page = " ".join(printed(capsys, FOYER).split())
    assert "DO NOT POWER UP. Critical findings of the review come first" in page
    assert "DO NOT MAKE THIS STEP, expected beyond its stop: Dead time" in page
    assert "Left out, so it can only be worse: p_core" in page


def test_the_same_as_markdown_in_a_file(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    target = tmp_path / "sheet.md"
    words = (CHOIR, "--report", "markdown", "-o", str(target))
    printed(capsys, *words)
    text = target.read_text("utf-8")
    assert text.startswith("# Bring-up sheet: Travelling choir's portable")
    assert "| Dead time between the gates, 50 % points | 41 .. 59 ns (50) | below 29 ns |" in text
    assert main(["bringup", *words]) == 2, "a sheet that somebody filled in is not lost"


def test_a_file_that_cannot_be_read_gives_no_sheet(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["bringup", "absent.amp.yaml"]) == 2
    assert "NOT ASSESSED" in capsys.readouterr().out


def number(x: float) -> float:
    return x


FAULTY = Step(
    title="A step with every fault",
    order=1,
    instrument="none",
    lines=(Line("Set {voltage}."),),
    hazards=(),
    readings=(
        Reading("a", "A", Amount("V", number, {"x": Input("supply.v_ral")})),
        Reading("b", "B", Amount("V", number, {"y": Input("v_rail_high")})),
        Reading("c", "C", check="no-such-check"),
    ),
    applies={"supply.sauce": "battery"},
)


def test_a_faulty_step_is_refused_with_each_fault() -> None:
    assert list(step_faults(FAULTY, load())) == [
        "hazards: each step tells at least one caution",
        "supply.sauce is unknown",
        "there is no check named no-such-check",
        "lines: Set {voltage}.: its names are not those of its amounts",
        "number: supply.v_ral is neither a field nor a derived quantity",
        "number: figure and inputs differ",
    ]


def test_which_end_of_a_band_counts() -> None:
    printed_least = Band(2.7, 2.2, 2.7, sides=frozenset({"min", "typ"}))
    assert printed_least.kind("band", "above") == "at least"
    assert (
        Band(2.7, 2.2, 3.0, sides=frozenset({"min", "typ", "max"})).kind("band", "above") == "band"
    )
    assert Band(2.7, 2.7, 2.7, sides=frozenset({"typ"})).kind("band", "above") == "band"
    assert in_digits(0.2739, 2, up=True) == 0.28
