"""Every page for a browser: nothing of a spec becomes markup, and nothing is loaded."""

import re
from functools import cache
from html.parser import HTMLParser
from pathlib import Path

import pytest

from ampreview.linter.cli import main
from ampreview.linter.commands import report_option

SAMPLES = Path(__file__).parents[3] / "sample_specs"
CHOIR = str(SAMPLES / "choir-portable.amp.yaml")
FAULTY = str(SAMPLES / "choir-portable-faulty.amp.yaml")
COMMANDS = ("assess", "compare", "bringup", "worksheet")
HOSTILE = "<script>alert(1)</script> \"' onload=x & {{ 7*7 }}"
SPEC = f"""amplifier_spec: 1
title: "{HOSTILE.replace('"', chr(92) + '"')}"
revision: "</style><img src=x>"
milestone: concept
supply: {{source: dc-source, rails: single, v_rail: 24 V ± 5 %}}
channels:
  main:
    rated_power: 30 W
    rated_load: 8 ohm
    output_stage: {{topology: full-bridge, devices: integrated}}
"""


class Tags(HTMLParser):
    """Names of elements, ids and attributes of a page."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.names: set[str] = set()
        self.attributes: list[tuple[str, str | None]] = []
        self.feed(text)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.names.add(tag)
        self.attributes += attrs


@cache
def made(command: str, *words: str) -> str:
    """The page of a command, made once; of a file with itself where two are compared."""
    files = words if len(words) > 1 or command != "compare" else words * 2
    target = Path("page.html")
    main([command, *files, "--report", "page", "-o", str(target), "--overwrite"])
    return target.read_text("utf-8")


@pytest.fixture(autouse=True)
def _elsewhere(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)


@pytest.mark.parametrize("command", COMMANDS)
def test_nothing_of_a_spec_becomes_markup(command: str) -> None:
    path = Path("<b onclick=y>.amp.yaml")
    path.write_text(SPEC, encoding="utf-8")
    text = made(command, str(path))
    tags = Tags(text)
    assert not {"b", "script", "img", "iframe", "object", "form", "input"} & tags.names
    assert not [name for name, _ in tags.attributes if name.startswith("on")]
    assert "&lt;script&gt;alert(1)&lt;/script&gt;" in text and "{{ 7*7 }}" in text
    assert "&lt;/style&gt;&lt;img src=x&gt;" in text and "&lt;b onclick=y&gt;" in text
    assert text.count("</style>") == text.count("<style")


@pytest.mark.parametrize("command", COMMANDS)
def test_page_loads_nothing_and_names_everything_once(command: str) -> None:
    words = {"compare": (CHOIR, FAULTY), "worksheet": (CHOIR, "bus-pumping", "fuse-current")}
    page = made(command, *words.get(command, (FAULTY,)))
    tags = Tags(page)
    links = [v or "" for name, v in tags.attributes if name in ("src", "href", "xlink:href")]
    assert all(link.startswith(("#", "data:,")) for link in links)
    assert not re.findall(r"url\((?!#)|@import", page)
    names = [v for name, v in tags.attributes if name == "id"]
    assert len(names) == len(set(names))
    assert {link[1:] for link in links if link.startswith("#")} <= set(names)


@pytest.mark.parametrize("command", COMMANDS)
def test_missing_library_is_told_with_the_command(
    command: str, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(report_option, "PAGE_NEEDS", ("sys", "not_there_at_all"))
    files = [CHOIR] * (2 if command == "compare" else 1)
    assert main([command, *files, "--report", "page"]) == 2
    told = capsys.readouterr().err
    assert "-m pip install not_there_at_all" in told and "sys" not in told.split()


@pytest.mark.parametrize("command", COMMANDS)
def test_no_page_takes_the_place_of_a_spec(command: str) -> None:
    path = Path("mine.amp.yaml")
    path.write_text(SPEC, encoding="utf-8")
    files = [str(path)] * (2 if command == "compare" else 1)
    assert main([command, *files, "--report", "page", "-o", str(path), "--overwrite"]) == 2
    assert path.read_text("utf-8") == SPEC


def test_builds_are_drawn_where_they_are_asked_for() -> None:
    """The share on the page is that of the terminal, and what holds has its histogram."""
    words = (FAULTY, "--tolerance", "monte-carlo", "--builds", "300", "--remedies", "none")
    page = made("assess", *words)
    assert "0.0% of 300 builds miss no limit of major or graver (seed 1)." in page
    assert "How many builds miss the limits that hold the design?" in page
    assert "<td>Dead time vs. switching times (shoot-through)</td><td>left</td><td>100.0 %" in page
    assert "at least 10 ns" in page


def test_comparison_shows_both_revisions() -> None:
    """The numbers of the two files, as they stand there: 80 V and 40 V, 50 ns and 20 ns."""
    page = made("compare", CHOIR, FAULTY)
    plain = " ".join(re.sub(r"<[^>]+>", " ", page).split())
    assert "Worse" in plain and "released before, held now" in plain
    assert "rated 40 V (before 80 V)" in plain
    assert "50 ns ± 4 ns 20 ns ± 4 ns -60.0 %" in plain
    assert "thin, before: neither conducts, 22 ns" in plain
    assert "As before: Does the filter pass the audio band and stop the carrier?" in plain
    order = ["Side by side", "Margins", "Promises", "Changed in the spec", "New findings"]
    heads = [re.sub(r":.*", "", x) for x in re.findall(r"<h3>(.*?)</h3>", page)]
    assert heads[:5] == order


def test_comparison_of_a_file_with_itself_draws_nothing() -> None:
    page = made("compare", CHOIR)
    assert "Neither better nor worse" in page and "<svg role" not in page


def test_bringup_page_has_the_steps_of_the_text(capsys: pytest.CaptureFixture[str]) -> None:
    page = made("bringup", CHOIR)
    capsys.readouterr()
    main(["bringup", CHOIR])
    text = " ".join(capsys.readouterr().out.split())
    steps = re.findall(r'<h3><span class="number">(\d+)</span> (.*?)</h3>', page)
    assert len(steps) == 18
    assert all(f"{number} {title}".replace("&#39;", "'") in text for number, title in steps)
    assert page.count('<ul class="todo">') == 18
    assert "41 .. 59 ns (50)" in page and "Board no." in page
    assert 'class="caution of-warning"' in page


def test_worksheet_page_is_signed_and_says_what_the_text_says(
    capsys: pytest.CaptureFixture[str],
) -> None:
    page = made("worksheet", CHOIR, "bus-pumping")
    capsys.readouterr()
    main(["worksheet", CHOIR, "bus-pumping", "--report", "markdown"])
    rows = re.findall(r"^\| ([\w.-]+) ", capsys.readouterr().out.replace("\\", ""), re.M)
    cells = re.findall(r'<tr><td data-label="quantity">([\w.-]+)</td>', page)
    assert cells == [x for x in rows if x not in ("quantity", "---")]
    assert "Calculated by" in page and "Checked by" in page
