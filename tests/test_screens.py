"""Every screen as it is stored: read by eye when it changes, and in plain English.

``python tests/screens/stored.py`` writes them anew.
"""

from pathlib import Path

import pytest

from .screens.stored import SCREENS, Screen, printed, stored
from .test_words import stumbling

EACH = pytest.mark.parametrize("screen", SCREENS, ids=[x.name for x in SCREENS])
PAGE, COLUMNS = 60, 80
AS_IN_THE_FILE = ("form", "amend", "catalogue-check")  # lines of a spec, up to 100 characters
RAW = {r"(?<![-\w])unknown(?![-\w])": "not given", r"\binf\b": "without limit", r"\bnan\b": "none"}


@EACH
def test_a_screen_is_as_stored(screen: Screen) -> None:
    assert printed(screen) == stored(screen).read_text("utf-8")


@EACH
def test_a_screen_speaks_plainly_and_keeps_its_width(screen: Screen) -> None:
    text = stored(screen).read_text("utf-8")
    assert not stumbling(text)
    if not screen.name.startswith("catalogue"):  # the rules' own prose
        assert not stumbling(text, RAW)
    if screen.name not in AS_IN_THE_FILE:
        assert max(map(len, text.splitlines())) <= COLUMNS


def test_a_page_is_a_page() -> None:
    pages = [x for x in SCREENS if x.name.startswith("page")]
    assert len(pages) == 3
    assert all(stored(x).read_text("utf-8").count("\n") <= PAGE for x in pages)


def test_no_screen_is_stored_that_nobody_prints() -> None:
    files = {path.name for path in (Path(__file__).parent / "screens").glob("*.txt")}
    assert files == {stored(screen).name for screen in SCREENS}
