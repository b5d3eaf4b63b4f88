"""The review as a page for a browser: its order and its words."""

import re
from pathlib import Path

import pytest
from markupsafe import escape

from ampreview.linter.changes.causes import causes_of
from ampreview.linter.changes.stages import with_remedies
from ampreview.linter.cli import main
from ampreview.linter.judging.review import Review, review_file
from ampreview.linter.reports.assess_html import html_report
from ampreview.linter.reports.assess_page import page_lines
from ampreview.linter.reports.cause_words import cause_words

ROOT = Path(__file__).parents[3]
FOYER = ROOT / "sample_specs" / "foyer-proposal.amp.yaml"


@pytest.fixture(scope="module")
def foyer() -> Review:
    outcome = review_file(FOYER)
    assert isinstance(outcome, Review)
    return outcome


@pytest.fixture(scope="module")
def page(foyer: Review) -> str:
    return html_report([("foyer", foyer)])


def test_page_tells_what_the_terminal_tells_in_its_order(page: str, foyer: Review) -> None:
    heads = [re.sub(r":.*", "", x) for x in re.findall(r"<h3>(.*?)</h3>", page)]
    order = ["Promises", "Required before release", "Open, required before release", "Pictures"]
    assert heads[:6] == [*order, "Findings", "Open"]
    screen = "\n".join(line.plain for line in page_lines(foyer, 300))
    causes = re.findall(r"^ +(?:critical|major) +(.+?)(?: \(\d+ findings\))?$", screen, re.M)
    at = [page.index(re.sub("'", "&#39;", cause)) for cause in causes]
    assert len(at) >= 4 and at == sorted(at)


def test_pictures_have_real_text_and_their_numbers(page: str) -> None:
    pictures = re.findall(r'<svg role="img".*?</svg>', page, re.S)
    assert len(pictures) >= 9
    assert all("<text" in x for x in pictures)
    assert page.count("<summary>Numbers") == len(pictures)
    assert not re.findall(r"#0[1-9]0[1-9]0[1-9]", page)


def test_a_file_that_cannot_be_read_is_told(tmp_path: Path) -> None:
    path = tmp_path / "bad.amp.yaml"
    path.write_text("amplifier_spec: 1\nsupply: {v_rail: 24}\n", encoding="utf-8")
    target = tmp_path / "page.html"
    assert main(["assess", str(path), "--report", "page", "-o", str(target)]) == 2
    assert "Not assessed" in target.read_text("utf-8")


def test_changes_are_told_in_words() -> None:
    found = review_file(FOYER.with_name("bedside-lamp-faulty.amp.yaml"))
    assert isinstance(found, Review)
    advised = with_remedies(found)
    text = " ".join(html_report([("lamp", advised)]).split())
    told = [x.together[-1] for x in cause_words(advised, causes_of(advised)) if x.together]
    assert told
    for change in told:
        assert f'<span class="label">change</span> {escape(change)}' in text
