"""The stored tables of RESULTS.md, for the tests that print them."""

from collections.abc import Callable
from pathlib import Path

import pytest

RESULTS = Path(__file__).with_name("RESULTS.md")
ANEW = "not what the data give now: run `python -m tests.published.results`, read the difference"


@pytest.fixture
def same_as_stored() -> Callable[[str], None]:
    """Compare a section, from its heading on, with the stored one, word by word."""

    def compare(section: str) -> None:
        heading = section.splitlines()[0]
        for stored in RESULTS.read_text(encoding="utf-8").split("\n## ")[1:]:
            if f"## {stored}".startswith(f"{heading}\n"):
                printed = f"{section}\n".splitlines()
                assert f"## {stored}".rstrip("\n").splitlines() == printed, f"{RESULTS}: {ANEW}"
                return
        pytest.fail(f"{RESULTS} has no section {heading!r}: {ANEW}")

    return compare
