"""Sweeps: which values are tried, the table, going on after a stop, the region in words."""

import csv
import json
import math
import re
from collections import Counter
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from ampreview.linter.cli import main
from ampreview.linter.quantities.quantity import to_si
from ampreview.linter.reading.loading import Spec, load_text
from ampreview.linter.sweeping.axis import axis_of
from ampreview.linter.sweeping.grid import Draw, combinations
from ampreview.linter.sweeping.place import SweepError
from ampreview.linter.sweeping.region import boxes, in_words

BOARD = """amplifier_spec: 1
title: board
milestone: concept
environment: {ambient: 0 degC .. 35 degC}
supply: {v_rail: 24 V ± 5 %, bulk: {v_rated: 35 V}}
channels:
  left: &channel
    rated_power: 20 W
    rated_load: 8 ohm
    output_stage:
      topology: full-bridge
      devices: discrete
      device: {r_ds_on: {typ: 8 mohm, max: 12 mohm}}
    gate_drive: {dead_time: 50 ns ± 4 ns}
  right: *channel
"""
RAIL = "supply.v_rail=20 V..34 V:2 V"
RATED = "supply.bulk.v_rated=25 V,35 V"


def board() -> Spec:
    spec = load_text(BOARD, "board.amp.yaml").spec
    assert spec is not None
    return spec


def values(text: str, drawn: bool = False) -> list[dict[str, object]]:
    """What each choice writes into the spec, every one of which the spec must take."""
    spec = board()
    found = [dict(item.data) for item in axis_of(text, spec, drawn).choices]
    assert all(spec.with_values(item).spec for item in found)
    return found


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("rated_load=4 ohm..8 ohm:2 ohm", ["4 ohm", "6 ohm", "8 ohm"]),
        ("rated_load=4 ohm..7 ohm:2 ohm", ["4 ohm", "6 ohm"]),
        # IEC 60063, series E6: 1.0 1.5 2.2 3.3 4.7 6.8
        (
            "rated_load=2.2 ohm .. 10 ohm : E6",
            ["2.2 ohm", "3.3 ohm", "4.7 ohm", "6.8 ohm", "10 ohm"],
        ),
        ("rated_load=8 ohm, 4R7", ["8 ohm", "4.7 ohm"]),
        ("output_stage.devices=discrete,integrated", ["discrete", "integrated"]),
    ],
)
def test_values_are_those_written_in_every_channel(text: str, expected: list[str]) -> None:
    path = text.partition("=")[0]
    both = [{f"channels.{name}.{path}": item for name in ("left", "right")} for item in expected]
    assert values(text) == both


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("supply.v_rail=20 V..24 V:4 V", ["20 V ± 5 %", "24 V ± 5 %"]),
        ("supply.v_rail=20 V, 24 V ± 1 %", ["20 V", "24 V ± 1 %"]),
        ("channels.left.gate_drive.dead_time=20 ns", ["20 ns ± 4 ns"]),
        # 12 / 8 of the typical value stays the worst one
        (
            "channels.left.output_stage.device.r_ds_on=16 mohm",
            [{"typ": "16 mohm", "max": "24 mohm"}],
        ),
        ("environment.ambient=0 degC .. 35 degC, -10 degC .. 45 degC", None),
        (
            "channels.left.output_stage.device.r_ds_on={typ: 1 mohm, max: 2 mohm}, 3 mohm",
            [{"typ": "1 mohm", "max": "2 mohm"}, "3 mohm"],
        ),
    ],
)
def test_the_stated_spread_goes_along(text: str, expected: list[object] | None) -> None:
    path, _, rest = text.partition("=")
    wanted = expected or [item.strip() for item in rest.split(",")]
    found = values(text)
    if ", 24 V ± 1 %" in text:  # a plain number beside one with a spread keeps the stated one
        wanted[0] = "20 V ± 5 %"
    if "3 mohm" in text:
        wanted[1] = {"typ": "3 mohm", "max": "4.5 mohm"}
    assert found == [{path: item} for item in wanted]


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("suply.v_rail=1 V", "perhaps supply.v_rail"),
        ("v_rail=1 V", "perhaps supply.v_rail"),
        ("channels.mid.rated_load=4 ohm", "left, right"),
        ("supply=none", "a section"),
        ("title=a", "a text"),
        ("rated_load=4 V..8 V:1 V", "'V' is the unit of a voltage"),
        ("rated_load=4..8:1", "has no unit"),
        ("rated_load=8 ohm..4 ohm:1 ohm", "nothing lies between"),
        ("rated_load=4 ohm..8 ohm", "4 ohm..8 ohm:400 mohm"),
        ("rated_load=4 ohm..8 ohm:0 ohm", "above zero"),
        ("rated_load=4 ohm..8 ohm:1 nohm", "at most"),
        ("rated_load=4 ohm,,8 ohm", "missing between two commas"),
        ("rated_load=4 ohm,4 ohm", "twice"),
        ("rated_load=", "expected PATH"),
        ("output_stage.devices=valve", "expected one of"),
        ("rated_load={typ: 1 ohm}\nx: 1", "not"),
        ("gain=20 dB..30 dB:1 dB", "list them"),
        ("rated_load=4.9 ohm..5 ohm:E6", "no number of E6"),
    ],
)
def test_what_makes_no_sense_is_refused_with_what_would(text: str, told: str) -> None:
    with pytest.raises(SweepError, match=re.escape(told)):
        axis_of(text, board(), drawn=False)


def test_every_combination_comes_once_and_can_be_gone_on_with() -> None:
    axes = [axis_of(text, board(), drawn=False) for text in (RAIL, RATED, "rated_load=4 ohm,8 ohm")]
    found = [tuple(x.shown for x in item.choices) for item in combinations(axes, None)]
    assert len(set(found)) == len(found) == 8 * 2 * 2
    assert found[:3] == [("20", "25", "4"), ("20", "25", "8"), ("20", "35", "4")]
    rest = [tuple(x.shown for x in item.choices) for item in combinations(axes, None, 5)]
    assert rest == found[5:]


@pytest.mark.parametrize("pattern", ["random", "low-discrepancy"])
def test_drawn_values_lie_in_the_interval_and_repeat_with_the_seed(pattern: Any) -> None:
    """A Halton sequence fills each quarter alike: 64 points, 16 in each, give or take one."""
    axes = [axis_of(text, board(), drawn=True) for text in ("supply.v_rail=20 V..40 V", RATED)]
    found = [[item.choices for item in combinations(axes, Draw(64, pattern, 3))] for _ in "ab"]
    assert found[0] == found[1]
    rails = [choices[0].number or 0.0 for choices in found[0]]
    assert all(20.0 <= x < 40.0 for x in rails)
    assert {choices[1].shown for choices in found[0]} == {"25", "35"}
    if pattern == "low-discrepancy":
        quarters = Counter(math.floor((x - 20.0) / 5.0) for x in rails)
        assert all(abs(quarters[n] - 16) <= 1 for n in range(4))


def region(text: Callable[[float, float], bool]) -> list[str]:
    """The boxes in words where a condition on load and rail tells what is released."""
    axes = [
        axis_of("rated_load=2 ohm..8 ohm:1 ohm", board(), drawn=False),
        axis_of("supply.v_rail=20 V..40 V:2 V", board(), drawn=False),
    ]
    points = [tuple(x.number or 0.0 for x in item.choices) for item in combinations(axes, None)]
    found = boxes(points, [text(*point) for point in points], [True, True])
    known = [frozenset(some) for some in zip(*points, strict=True)]
    return [in_words(box, axes, known) for box in found]


def test_the_region_is_told_in_words() -> None:
    assert region(lambda load, rail: 3 <= load <= 6 and rail <= 30) == [
        "rated_load 3 Ω to 6 Ω while supply.v_rail at most 30 V"
    ]
    assert region(lambda load, rail: load >= 4) == [
        "rated_load at least 4 Ω, whatever supply.v_rail"
    ]
    assert region(lambda load, rail: load == 4 or rail == 26) == [
        "rated_load at 4 Ω, whatever supply.v_rail",
        "supply.v_rail at 26 V, whatever rated_load",
    ]


def test_no_box_holds_what_is_not_released() -> None:
    axes = [
        axis_of("rated_load=2 ohm..9 ohm:1 ohm", board(), drawn=False),
        axis_of("supply.v_rail=20 V..34 V:2 V", board(), drawn=False),
    ]
    points = [tuple(x.number or 0.0 for x in item.choices) for item in combinations(axes, None)]
    released = [hash((7, point)) % 3 > 0 for point in points]
    for box in boxes(points, released, [True, True]):
        assert box.inside
        assert all(released[number] for number in box.inside)


# The command


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    (tmp_path / "board.amp.yaml").write_text(BOARD, encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    return tmp_path


def sweep(*words: str, status: int = 1) -> None:
    assert main(["sweep", "board.amp.yaml", "--vary", RAIL, "--vary", RATED, *words]) == status


MARGIN = ("--margin", "bulk-capacitor-voltage")


def test_the_table_says_what_a_capacitor_may_have(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """By hand: 5 % above the rail, over the rating; beyond it the capacitor fails."""
    sweep(*MARGIN, "-o", "table.csv")
    rows = list(csv.DictReader((folder / "table.csv").open(encoding="utf-8")))
    assert len(rows) == 16
    for row in rows:
        rail, rated = float(row["supply.v_rail [V]"]), float(row["supply.bulk.v_rated [V]"])
        share = float(row["bulk-capacitor-voltage figure"])
        assert share == pytest.approx(1.05 * rail / rated, rel=1e-6)
        if share > 1.0:
            assert "bulk-capacitor-voltage" in row["held by"] and row["verdict"] == "held"
    told = capsys.readouterr().out
    assert "16 variants of board.amp.yaml" in told
    assert "each with the stated spread, ± 5 %" in told
    assert "Released for" in told


def test_jobs_and_kinds_of_table_give_the_same(folder: Path) -> None:
    sweep(*MARGIN, "-o", "one.jsonl")
    sweep(*MARGIN, "-o", "two.jsonl", "--jobs", "2")
    sweep(*MARGIN, "-o", "three.parquet")
    assert Path("one.jsonl").read_bytes() == Path("two.jsonl").read_bytes()
    parquet = pytest.importorskip("pyarrow.parquet")
    rows = [json.loads(line) for line in Path("one.jsonl").read_text().splitlines()]
    assert parquet.read_table("three.parquet").to_pylist() == rows
    assert not Path("three.parquet.rows").exists()


@pytest.mark.parametrize("name", ["table.csv", "table.jsonl"])
def test_a_killed_sweep_goes_on_from_its_file(folder: Path, name: str) -> None:
    path = folder / name
    sweep("-o", name)
    whole = path.read_bytes()
    for cut in (len(whole) // 2, whole.index(b"\n") + 1, 9, len(whole)):
        path.write_bytes(whole[:cut])
        sweep("-o", name)
        assert path.read_bytes() == whole


@pytest.mark.parametrize("name", ["table.csv", "table.jsonl"])
def test_another_table_is_not_gone_on_with(
    folder: Path, name: str, capsys: pytest.CaptureFixture[str]
) -> None:
    (folder / name).write_text("something else\n")
    sweep("-o", name, status=2)
    sweep("-o", name, "--overwrite")
    whole = (folder / name).read_bytes()
    sweep("-o", name, "--hold-at", "critical", status=2)
    assert (folder / name).read_bytes() == whole
    assert "--overwrite replaces it" in capsys.readouterr().err


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("--at-most", "15"), "16 variants; expected 15 at most"),
        (("--margin", "bulk-capacitor-voltag"), "bulk-capacitor-voltage"),
        (("--vary", "supply.v_rail=1 V,2 V"), "varied twice"),
        (("-o", "table.txt"), ".csv, .jsonl, .parquet"),
        (("--jobs", "0"), "at least 1"),
        (("--draw", "0"), "at least 1"),
    ],
)
def test_wrong_use_is_refused(
    folder: Path, words: tuple[str, ...], told: str, capsys: pytest.CaptureFixture[str]
) -> None:
    sweep(*words, status=2)
    out, err = capsys.readouterr()
    assert told in err
    assert out == ""


def test_the_table_alone_is_printed(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    sweep()
    out, err = capsys.readouterr()
    assert len(out.splitlines()) == 17 and out.startswith("variant,supply.v_rail [V],")
    assert "16 variants" in err


def test_volts_are_volts() -> None:
    """The number of an axis is the one of the spec in SI units."""
    (choice,) = axis_of("supply.v_rail=24000 mV", board(), drawn=False).choices
    assert (choice.number, choice.shown) == (to_si("24 V"), "24")
