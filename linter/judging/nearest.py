"""Names that may be meant by one that is not known."""

from collections.abc import Sequence
from difflib import get_close_matches


def near(name: str, known: Sequence[str]) -> str:
    """A hint at the known names that come nearest, or nothing."""
    found = get_close_matches(name, known, 2, 0.6)
    return f"; did you mean {' or '.join(found)}?" if found else ""
