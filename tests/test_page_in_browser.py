"""The page in a real browser: one headless Chromium, one page of a faulty design.

Skipped, and said so, where no browser or none of the tools is to be had.
"""

import io
import shutil
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from ampreview.linter.judging.review import review_file
from ampreview.linter.reports.assess_html import html_report

playwright = pytest.importorskip("playwright.sync_api", reason="playwright is not installed")
axe = pytest.importorskip("axe_playwright_python", reason="axe-core is not installed")
pypdf = pytest.importorskip("pypdf", reason="pypdf is not installed")

SAMPLE = Path(__file__).parent.parent / "sample_specs" / "bedside-lamp-faulty.amp.yaml"
BROWSER = shutil.which("chromium") or shutil.which("chromium-browser")
QUIET = ("--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
         "--disable-background-networking", "--disable-component-update", "--disable-sync",
         )  # fmt: skip
STOPS = 60


@pytest.fixture(scope="module")
def browser() -> Iterator[Any]:
    if BROWSER is None:
        pytest.skip("no Chromium on this machine: the page is not looked at in a browser")
    with playwright.sync_playwright() as started:
        found = started.chromium.launch(executable_path=BROWSER, args=list(QUIET))
        yield found
        found.close()


@pytest.fixture(scope="module")
def file(tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("page") / "review.html"
    path.write_text(html_report([(SAMPLE.name, review_file(SAMPLE))]), encoding="utf-8")
    return path


@pytest.fixture
def told() -> list[str]:
    """What the browser complains of, and what it asks for beside the page."""
    return []


@pytest.fixture
def page(browser: Any, file: Path, told: list[str]) -> Iterator[Any]:
    view = browser.new_page(viewport={"width": 1280, "height": 900})
    view.on("console", lambda message: told.append(message.text))
    view.on("pageerror", lambda error: told.append(str(error)))
    view.on("request", lambda asked: told.append(asked.url) if asked.url != file.as_uri() else None)
    view.goto(file.as_uri())
    yield view
    view.close()


def test_nothing_is_complained_of_and_nothing_loaded(page: Any, told: list[str]) -> None:
    page.wait_for_load_state("networkidle")
    assert [line for line in told if not line.startswith("data:,")] == []


@pytest.mark.parametrize("width", [360, 1280])
def test_page_does_not_scroll_sideways(page: Any, width: int) -> None:
    page.set_viewport_size({"width": width, "height": 800})
    page.evaluate("document.querySelectorAll('details').forEach(x => { x.open = true })")
    assert page.evaluate("document.documentElement.scrollWidth") <= width
    wide = page.evaluate(
        "[...document.querySelectorAll('h2, h3, h4, p, li, svg, dd')]"
        f".filter(x => x.getBoundingClientRect().right > {width} + 1).map(x => x.textContent)"
    )
    assert wide == []


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_axe_finds_nothing_serious(page: Any, scheme: str) -> None:
    """axe-core, the open checker of the WCAG rules; in the dark its rules of colour alone."""
    from axe_playwright_python.sync_playwright import Axe

    page.emulate_media(color_scheme=scheme)
    options: dict[str, Any] = {"resultTypes": ["violations"]}
    if scheme == "dark":
        options["runOnly"] = {"type": "rule", "values": ["color-contrast"]}
    found = Axe().run(page, options=options).response["violations"]
    grave = [(x["id"], x["nodes"][0]["html"][:200]) for x in found
             if x["impact"] in ("serious", "critical")]  # fmt: skip
    assert grave == []


def test_keyboard_reaches_links_and_numbers(page: Any) -> None:
    """By the tabulator alone: first the way past the head, then the numbers of each picture."""
    reached = []
    for _ in range(STOPS):
        page.keyboard.press("Tab")
        reached.append(page.evaluate("document.activeElement.textContent.trim()"))
    assert reached[0] == "To the verdict"
    assert {"Pictures", "Findings"} <= set(reached)
    first = page.locator("summary").first
    first.focus()
    page.keyboard.press("Enter")
    assert page.locator("details").first.get_attribute("open") is not None


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_print_has_the_verdict_on_one_page_and_pictures_on_the_next(page: Any, paper: str) -> None:
    pages = [x.extract_text() for x in pypdf.PdfReader(io.BytesIO(page.pdf(format=paper))).pages]
    assert all(text.strip() for text in pages), "an empty page"
    assert "Promises" in pages[0] and "Required before release" in pages[0]
    assert pages[1].strip().startswith("Pictures")
    findings = next(i for i, text in enumerate(pages) if text.strip().startswith("Findings"))
    assert findings in (3, 4)
    assert len(pages) <= findings + 20
