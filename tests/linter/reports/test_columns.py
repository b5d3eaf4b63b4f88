"""Tables at a terminal of any width: no name is broken, nothing is lost, no line is too long."""

import io
import re
from functools import cache
from pathlib import Path

import pytest

from ampreview.linter.evaluation.engine import Assessment
from ampreview.linter.judging.compare import compare
from ampreview.linter.judging.review import Review, review_file
from ampreview.linter.judging.root_sum_square import root_sum_squares
from ampreview.linter.judging.worksheet import worksheet
from ampreview.linter.reports.columns import fitted, print_columns
from ampreview.linter.reports.compare_text import print_comparison
from ampreview.linter.reports.console import console
from ampreview.linter.reports.tolerance_text import print_root_sum_square
from ampreview.linter.reports.worksheet_text import of_checks, print_blocks

SAMPLES = Path(__file__).parents[3] / "sample_specs"
WIDTHS = (60, 72, 84, 96, 110, 160)
HEADS = ("check", "of", "limit")


@cache
def reviewed(name: str) -> Review:
    done = review_file(SAMPLES / f"{name}.amp.yaml")
    assert isinstance(done, Review)
    return done


def shown(width: int, *rows: tuple[str, ...], heads: tuple[str, ...] = HEADS) -> str:
    stream = io.StringIO()
    print_columns(heads, rows, console(stream, width), plain=("of",))
    return stream.getvalue()


def test_columns_where_there_is_room() -> None:
    assert shown(40, ("dead-time", "left", "20 ns")).splitlines() == [
        " check      of    limit",
        " dead-time  left  20 ns",
    ]


def test_rows_below_each_other_where_there_is_none() -> None:
    text = shown(30, ("loudspeaker-clipped-power", "left", "at most 150 W"))
    assert text.splitlines() == [" ▪ loudspeaker-clipped-power:", " left; limit at most 150 W"]


def test_no_rows_no_table() -> None:
    assert shown(80) == ""


def test_the_widest_column_gives_way_first() -> None:
    rows = [("short", "a text that is a good deal longer than the other one")]
    assert fitted(rows, 30) == [5, 21]


@pytest.mark.parametrize("width", WIDTHS)
def test_checks_and_subjects_stay_whole(width: int) -> None:
    stream = io.StringIO()
    rows = root_sum_squares(reviewed("choir-portable"))
    print_root_sum_square(rows, console(stream, width))
    text = stream.getvalue()
    assert max(map(len, text.splitlines())) <= width
    for finding, _ in rows:
        assert all(word in text for word in re.split(r"[\s/-]+", finding.title))


@pytest.mark.parametrize("width", WIDTHS)
def test_an_edit_is_told_once_for_channels_that_are_alike(width: int) -> None:
    stream = io.StringIO()
    found = compare(reviewed("choir-portable"), reviewed("choir-portable-faulty"))
    print_comparison(found, console(stream, width))
    text = stream.getvalue()
    assert max(map(len, text.splitlines())) <= width
    changes = text.partition("CHANGED")[2].partition("NEW FINDINGS")[0]
    assert changes.count("v_dss") == 1
    assert "channels." not in changes


@pytest.mark.parametrize("width", WIDTHS)
def test_a_worksheet_loses_nothing_at_any_width(width: int) -> None:
    done = reviewed("choir-portable")
    run = Assessment(done.spec, done.catalogue, "prototype")
    entry = done.catalogue.entry("junction-temperature-margin")
    assert entry is not None
    page = worksheet(run, entry, "left")
    stream = io.StringIO()
    blocks = of_checks([page, worksheet(run, entry, "right")])
    print_blocks(done.spec, blocks, console(stream, width))
    text = stream.getvalue()
    assert max(map(len, text.splitlines())) <= width
    assert text.count("Checked by") == 1
    assert "left and right" in text
    for line in page.lines:
        for part in line.nominal.split(", "):  # of a bundle each member's number with its unit
            assert " ".join(part.removesuffix(" each").split()[-2:]) in " ".join(text.split())
        last = line.symbol.rpartition(".")[2]
        assert any(last in row for row in text.splitlines()), line.symbol
