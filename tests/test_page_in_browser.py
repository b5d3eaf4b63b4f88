"""The pages in a real browser: one headless Chromium, each page of a faulty design.

Skipped, and said so, where no browser or none of the tools is to be had.
"""

import io
import shutil
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from ampreview.linter.cli import main

playwright = pytest.importorskip("playwright.sync_api", reason="playwright is not installed")
axe = pytest.importorskip("axe_playwright_python", reason="axe-core is not installed")
pypdf = pytest.importorskip("pypdf", reason="pypdf is not installed")

SAMPLES = Path(__file__).parent.parent / "sample_specs"
FAULTY = str(SAMPLES / "bedside-lamp-faulty.amp.yaml")
BARE = ("--remedies", "none")
PAGES = {
    "assess": ["assess", FAULTY, "--tolerance", "monte-carlo", "--builds", "500", *BARE],
    "compare": ["compare", str(SAMPLES / "bedside-lamp.amp.yaml"), FAULTY],
    "bringup": ["bringup", FAULTY],
    "worksheet": ["worksheet", FAULTY, "inductor-saturation"],
}
FIRST = {
    "assess": "To the verdict",
    "compare": "To the outcome",
    "bringup": "To the first step",
    "worksheet": "To the first sheet",
}
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


@pytest.fixture(scope="module", params=PAGES)
def kind(request: pytest.FixtureRequest) -> str:
    """The command whose page is looked at."""
    return str(request.param)


@pytest.fixture(scope="module")
def file(kind: str, tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("page") / f"{kind}.html"
    assert main([*PAGES[kind], "--report", "page", "-o", str(path)]) in (0, 1)
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
def test_axe_finds_nothing_serious(page: Any, kind: str, scheme: str) -> None:
    """axe-core, the open checker of the WCAG rules; in the dark its rules of colour alone."""
    from axe_playwright_python.sync_playwright import Axe

    if (kind, scheme) == ("worksheet", "dark"):
        pytest.skip("it has no colours of its own")
    page.emulate_media(color_scheme=scheme)
    options: dict[str, Any] = {"resultTypes": ["violations"]}
    if scheme == "dark":
        options["runOnly"] = {"type": "rule", "values": ["color-contrast"]}
    found = Axe().run(page, options=options).response["violations"]
    grave = [(x["id"], x["nodes"][0]["html"][:200]) for x in found
             if x["impact"] in ("serious", "critical")]  # fmt: skip
    assert grave == []


def test_keyboard_reaches_links_and_numbers(page: Any, kind: str) -> None:
    """By the tabulator alone: first the way past the head, then links, tables and numbers."""
    reached = []
    for _ in range(STOPS):
        page.keyboard.press("Tab")
        reached.append(page.evaluate("document.activeElement.textContent.trim()"))
    assert reached[0] == FIRST[kind]
    links = page.evaluate("[...document.querySelectorAll('nav a')].map(x => x.textContent.trim())")
    assert set(links) <= set(reached)
    if kind in ("assess", "compare"):
        page.locator("summary").first.focus()
        page.keyboard.press("Enter")
        assert page.locator("details").first.get_attribute("open") is not None


def printed(page: Any, paper: str) -> list[str]:
    """The text of each printed page; each says which of how many it is."""
    found = pypdf.PdfReader(io.BytesIO(page.pdf(format=paper))).pages
    texts = [x.extract_text() for x in found]
    numbers = [f"{number} / {len(texts)}" for number in range(1, len(texts) + 1)]
    assert all(number in text for number, text in zip(numbers, texts, strict=True))
    plain = [text.replace(number, "").strip() for number, text in zip(numbers, texts, strict=True)]
    assert all(plain), "an empty page"
    return plain


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_prints_to_the_expected_pages(page: Any, kind: str, paper: str) -> None:
    """The verdict on the first page, pictures on the next; the head of a sheet on every one."""
    pages = printed(page, paper)
    if kind == "assess":
        assert "Promises" in pages[0] and "Required before release" in pages[0]
        assert pages[1].startswith("Pictures")
        findings = next(i for i, text in enumerate(pages) if text.startswith("Findings"))
        assert findings in (3, 4)
        assert len(pages) <= findings + 20
    elif kind == "compare":
        assert "Worse" in pages[0] and "Changed in the spec" in pages[0]
        assert 3 <= len(pages) <= 5
    else:
        head, least, most = {
            "bringup": ("Bring-up sheet", 5, 8),
            "worksheet": ("Worksheets", 2, 4),
        }[kind]
        assert all(head in text[:40] for text in pages)
        assert least <= len(pages) <= most
