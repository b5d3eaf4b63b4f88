"""Tables, parts files, measurements and sweeps when what is given is hostile or huge."""

import json
import os
import re
import time
from pathlib import Path

import pytest

from ampreview.linter.cli import main
from ampreview.linter.quantities.board_value import board_value, number, tolerance_of
from ampreview.linter.reading.loading import load_text
from ampreview.linter.sweeping.table import NEEDS_PYARROW

from .test_edges import FORGED, LINKS, PIPES, UNSEEN

BOARD = "board.amp.yaml"
SPEC = """amplifier_spec: 1
title: Invented
milestone: concept
supply: {source: dc-source, rails: single, v_rail: 24 V, bulk: BULK}
channels: {main: {rated_power: 20 W, rated_load: 8 ohm, output_stage: {topology: full-bridge}}}
"""
WITH_REF = SPEC.replace("BULK", "{ref: C1, c: 1 mF, v_rated: 50 V}")
WITH_PART = SPEC.replace("BULK", "{part: tall, v_rated: 50 V}")
PARTS = "parts.ampreview.yaml"
RAIL = "supply.v_rail=20 V,24 V"


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder to be in, with a spec of one capacitor."""
    monkeypatch.chdir(tmp_path)
    Path(BOARD).write_text(WITH_REF, encoding="utf-8")
    return tmp_path


def said(capsys: pytest.CaptureFixture[str]) -> str:
    """What was printed, on one line."""
    return " ".join("".join(capsys.readouterr()).split())


# Bills of materials


@pytest.mark.parametrize(
    ("rows", "told"),
    [
        ("C1-C1000 C1-C1000 C1-C1000,1 mF\n" * 40, "more than 100000 reference designators"),
        (f"C1,{'1' * 1001}\n", "the value has 1001 characters"),
        (f"{'C1 ' * 4000},1 mF\n", "the reference has 11999 characters"),
    ],
)
def test_a_table_larger_than_any_board_is_refused(
    folder: Path, capsys: pytest.CaptureFixture[str], rows: str, told: str
) -> None:
    Path("bom.csv").write_text(f"Reference,Value\n{rows}", encoding="utf-8")
    assert main(["bom", BOARD, "bom.csv"]) == 2
    assert told in said(capsys)


def test_a_report_on_a_table_does_not_grow_with_it(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    rows = "C1-C500,1 mF\n" * 100
    Path("bom.csv").write_text(f"Reference,Value\n{rows}", encoding="utf-8")
    assert main(["bom", BOARD, "bom.csv"]) == 1
    told = capsys.readouterr().out
    assert len(told.splitlines()) < 250
    assert "and 400 more" in told
    assert "C1 is listed 100 times" in told


@pytest.mark.parametrize(
    "sign", ["1", "1 ", "1k", "± ", "1,", "1.", "%", " ", "1±", "V", "1/", "-1"]
)
def test_no_cell_of_a_table_is_read_for_ever(sign: str) -> None:
    text, begin = (sign * 1000)[:1000], time.process_time()
    board_value(text, "F")
    tolerance_of(text)
    number(text, "V", bare=True)
    assert time.process_time() - begin < 1.0


def test_a_hostile_cell_is_shown_as_it_is(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    cell = f"{FORGED}\x1b[31m\u202e".replace('"', "'")
    Path("bom.csv").write_text(f'Reference,Value\n"C1 {cell}","{cell}"\n', encoding="utf-8")
    assert main(["bom", BOARD, "bom.csv"]) == 1
    told = capsys.readouterr().out
    assert not UNSEEN.search(told)
    assert not re.search(r"(?m)^\s*RELEASED", told)


def test_designators_are_counted_over_the_whole_spec() -> None:
    snubber = "{c: 1 nF, r: 1 ohm, ref: {c: C1-C1000, r: R1-R1000}}"
    names = ", ".join(f"c{n}: {{output_stage: {{snubber: {snubber}}}}}" for n in range(11))
    loaded = load_text(f"amplifier_spec: 1\nchannels: {{{names}}}\n", BOARD)
    assert [x.problem for x in loaded.refusals] == ["more than 20000 designators in all sections"]


# Parts files and measurements


@pytest.mark.parametrize(
    ("parts", "told"),
    [
        ("bulk: &kind {tall: *kind}", "used inside itself"),
        ("bulk: {tall: &self {c: 1 mF, <<: *self}}", "used inside itself"),
        ("bulk: {tall: {part: tall, c: 1 mF}}", "part"),
        (f"bulk: {{tall: {{c: {json.dumps(FORGED)}}}}}", "line 2, column 18"),
        (f"bulk: {{{json.dumps(FORGED)}: {{c: 1 mF}}}}", "the key"),
        (f"{json.dumps(FORGED)}: {{tall: {{c: 1 mF}}}}", "the key"),
        ("x: &x [1, 1]\ny: &y [*x, *x]\n" + "bulk: [" + "*y, " * 7000 + "1]", "more than"),
        ("x" * 1_000_001, "larger than 1000 kB"),
    ],
    ids=range(8),
)
def test_a_hostile_parts_file_is_refused(
    folder: Path, capsys: pytest.CaptureFixture[str], parts: str, told: str
) -> None:
    Path(BOARD).write_text(WITH_PART, encoding="utf-8")
    Path(PARTS).write_text(f"amplifier_parts: 1\n{parts}\n", encoding="utf-8")
    assert main(["assess", BOARD, "--remedies", "none"]) == 2
    text = "".join(capsys.readouterr())
    assert not UNSEEN.search(text)
    assert not re.search(r"(?m)^\s*RELEASED", text)
    assert told in " ".join(text.split())


@PIPES
@LINKS
@pytest.mark.parametrize("kind", ["pipe", "device", "folder", "loop"])
def test_what_is_no_file_passes_for_no_parts_file(
    folder: Path, capsys: pytest.CaptureFixture[str], kind: str
) -> None:
    Path(BOARD).write_text(WITH_PART, encoding="utf-8")
    if kind == "pipe":
        os.mkfifo(PARTS)
    elif kind == "folder":
        Path(PARTS).mkdir()
    else:
        Path(PARTS).symlink_to("/dev/zero" if kind == "device" else PARTS)
    assert main(["assess", BOARD]) == 2
    assert "there is no parts file" in said(capsys)
    assert main(["assess", BOARD, "--parts", PARTS]) == 2
    assert "cannot be opened" in said(capsys)


def test_a_parts_file_above_the_folder_is_told_with_its_way_and_its_hash(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    Path(PARTS).write_text("amplifier_parts: 1\nbulk: {tall: {c: 1 mF}}\n", encoding="utf-8")
    Path("one/two").mkdir(parents=True)
    Path(f"one/two/{BOARD}").write_text(WITH_PART, encoding="utf-8")
    assert main(["assess", f"one/two/{BOARD}", "--remedies", "none"]) == 0
    assert re.search(rf"parts file {PARTS} [0-9a-f]{{16}}", said(capsys))


def test_hostile_measurements_are_shown_as_they_are(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    keys = ("figure", "place", "value", "board", "date", "instrument")
    entry = dict.fromkeys(keys, re.sub("[^\x0a\x20-\x7e]", "", FORGED))
    Path("m.yaml").write_text(
        f"amplifier_measured: 1\nmeasured: [{json.dumps(entry)}]\n", encoding="utf-8"
    )
    for report in ("text", "markdown", "json", "page"):
        main(["assess", BOARD, "--remedies", "none", "--measured", "m.yaml", "--report", report])
        told = "".join(capsys.readouterr())
        assert not UNSEEN.search(told)
        assert not re.search(r"(?m)^[\s|>#*-]*RELEASED\s+at production: 99", told)


# Sweeps


@pytest.mark.parametrize(
    "words",
    [
        ["--vary", "supply.v_rail=1 V..2 V:1e-12 V"],
        ["--vary", "supply.v_rail=1 V..2 V:1 mV", "--vary", "rated_load=1 ohm..2 ohm:1 mohm"],
        ["--vary", "supply.v_rail=1 V..2 V", "--draw", "1000000000000"],
    ],
    ids=" ".join,
)
def test_a_sweep_without_end_is_refused_at_once(
    folder: Path, capsys: pytest.CaptureFixture[str], words: list[str]
) -> None:
    begin = time.process_time()
    assert main(["sweep", BOARD, *words]) == 2
    assert time.process_time() - begin < 2.0
    assert "at most" in said(capsys)


@pytest.mark.parametrize("path", ["title", "supply", "channels", "deviations[0].reason"])
def test_texts_and_sections_are_not_varied(
    folder: Path, capsys: pytest.CaptureFixture[str], path: str
) -> None:
    assert main(["sweep", BOARD, "--vary", f"{path}=a,b"]) == 2
    assert path in said(capsys)


@LINKS
@PIPES
def test_a_sweep_writes_over_nothing_that_is_not_its_own(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    os.mkfifo("pipe.csv")
    for ending in ("csv", "jsonl", "parquet"):
        Path(f"mine.{ending}").write_text("mine", encoding="utf-8")
        Path(f"link.{ending}").symlink_to(f"mine.{ending}")
        for name in (f"mine.{ending}", f"link.{ending}", f"gone/x.{ending}", "pipe.csv"):
            assert main(["sweep", BOARD, "--vary", RAIL, "-o", name]) == 2, name
            assert "itself failed" not in said(capsys)
        assert main(["sweep", BOARD, "--vary", RAIL, "-o", f"link.{ending}", "--overwrite"]) == 2
        assert Path(f"mine.{ending}").read_text(encoding="utf-8") == "mine"


@LINKS
def test_no_link_beside_a_table_is_followed(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    Path("mine").write_text("mine", encoding="utf-8")
    for name in (".out.parquet.new", "out.parquet.rows"):
        Path(name).symlink_to("mine")
    assert main(["sweep", BOARD, "--vary", RAIL, "-o", "out.parquet"]) == 2
    Path("out.parquet.rows").unlink()
    status = main(["sweep", BOARD, "--vary", RAIL, "-o", "out.parquet"])
    assert status == 0 or NEEDS_PYARROW[:20] in said(capsys)
    assert Path("mine").read_text(encoding="utf-8") == "mine"


def test_a_table_with_a_forged_verdict_is_not_gone_on_with(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["sweep", BOARD, "--vary", RAIL, "-o", "out.csv"]) == 0
    table = Path("out.csv").read_text(encoding="utf-8").replace("released", "x\x1b[31m")
    Path("out.csv").write_text(table, encoding="utf-8")
    capsys.readouterr()
    assert main(["sweep", BOARD, "--vary", RAIL, "-o", "out.csv"]) == 2
    assert "holds something else" in said(capsys)
