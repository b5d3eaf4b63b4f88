"""The page for a browser: its order, its words, and that a spec can put nothing into it."""

import re
from html.parser import HTMLParser
from pathlib import Path

import pytest
from markupsafe import escape

from ampreview.linter.changes.causes import causes_of
from ampreview.linter.changes.stages import with_remedies
from ampreview.linter.cli import main
from ampreview.linter.commands import report_option
from ampreview.linter.judging.review import Review, review_file
from ampreview.linter.reports.assess_html import html_report
from ampreview.linter.reports.assess_page import page_lines
from ampreview.linter.reports.cause_words import cause_words

ROOT = Path(__file__).parents[3]
FOYER = ROOT / "sample_specs" / "foyer-proposal.amp.yaml"
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


@pytest.fixture(scope="module")
def foyer() -> Review:
    outcome = review_file(FOYER)
    assert isinstance(outcome, Review)
    return outcome


@pytest.fixture(scope="module")
def page(foyer: Review) -> str:
    return html_report([("foyer", foyer)])


def test_nothing_of_a_spec_becomes_markup(tmp_path: Path) -> None:
    path = tmp_path / "hostile.amp.yaml"
    path.write_text(SPEC, encoding="utf-8")
    outcome = review_file(path)
    assert isinstance(outcome, Review), outcome
    text = html_report([(str(path), outcome)])
    tags = Tags(text)
    assert not {"script", "img", "iframe", "object"} & tags.names
    assert not [name for name, _ in tags.attributes if name.startswith("on")]
    assert "&lt;script&gt;alert(1)&lt;/script&gt;" in text and "{{ 7*7 }}" in text


def test_page_loads_nothing_and_names_everything_once(page: str) -> None:
    tags = Tags(page)
    links = [v or "" for name, v in tags.attributes if name in ("src", "href", "xlink:href")]
    assert all(link.startswith(("#", "data:,")) for link in links)
    assert not re.findall(r"url\((?!#)|@import", page)
    names = [v for name, v in tags.attributes if name == "id"]
    assert len(names) == len(set(names))
    assert {link[1:] for link in links if link.startswith("#")} <= set(names)


def test_page_tells_what_the_terminal_tells_in_its_order(page: str, foyer: Review) -> None:
    heads = [re.sub(r":.*", "", x) for x in re.findall(r"<h3>(.*?)</h3>", page)]
    order = ["Promises", "Required before release", "Open, required before release", "Pictures"]
    assert heads[:6] == [*order, "Findings", "Open"]
    screen = "\n".join(line.plain for line in page_lines(foyer, 300))
    causes = re.findall(r"^ +\d+ (?:critical|major) +(.+?)(?: \(\d+ findings\))?$", screen, re.M)
    at = [page.index(re.sub("'", "&#39;", cause)) for cause in causes]
    assert len(at) >= 4 and at == sorted(at)


def test_pictures_have_real_text_and_their_numbers(page: str) -> None:
    pictures = re.findall(r"<svg.*?</svg>", page, re.S)
    assert len(pictures) >= 9
    assert all("<text" in x and 'role="img"' in x for x in pictures)
    assert page.count("<summary>Numbers") == len(pictures)
    assert not re.findall(r"#0[1-9]0[1-9]0[1-9]", page)


def test_a_file_that_cannot_be_read_is_told(tmp_path: Path) -> None:
    path = tmp_path / "bad.amp.yaml"
    path.write_text("amplifier_spec: 1\nsupply: {v_rail: 24}\n", encoding="utf-8")
    target = tmp_path / "page.html"
    assert main(["assess", str(path), "--report", "page", "-o", str(target)]) == 2
    assert "Not assessed" in target.read_text("utf-8")


def test_missing_library_is_told_with_the_command(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(report_option, "PAGE_NEEDS", ("jinja2", "not_there_at_all"))
    assert main(["assess", str(FOYER), "--report", "page"]) == 2
    told = capsys.readouterr().err
    assert "-m pip install not_there_at_all" in told and "jinja2" not in told


def test_changes_are_told_in_words() -> None:
    found = review_file(FOYER.with_name("bedside-lamp-faulty.amp.yaml"))
    assert isinstance(found, Review)
    advised = with_remedies(found)
    text = " ".join(html_report([("lamp", advised)]).split())
    told = [x.together[-1] for x in cause_words(advised, causes_of(advised)) if x.together]
    assert told
    for change in told:
        assert f'<span class="label">change</span> {escape(change)}' in text
