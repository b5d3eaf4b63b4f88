"""The measurements at a terminal."""

from rich.text import Text

from ..judging.review import Review
from .lines import hanging
from .measured_words import STYLES, measured_rows

BRIEF, MOST_LINES = 3, 3
"""Explanations and lines of one measurement where room is short."""


def measured_lines(review: Review, width: int, most: int = 0) -> list[Text]:
    """What was measured, a block each; at most so many lines, 0 for all in full."""
    rows = measured_rows(review, BRIEF) if most else measured_rows(review)
    if not rows:
        return []
    size = max(len(row.answer) for row in rows) + 2
    blocks = [
        hanging(
            row.answer.ljust(size),
            f"{row.what}: {row.text}",
            width,
            (STYLES.get(row.answer, ""), ""),
            MOST_LINES if most else 0,
        )
        for row in rows
    ]
    lines = [Text(), *hanging("", "Measured", width, ("", "bold"))]
    shown = 0
    while shown < len(blocks) and (not most or len(lines) + len(blocks[shown]) <= most - 1):
        lines += blocks[shown]
        shown += 1
    left = len(blocks) - shown
    return [*lines, Text(f" and {left} more: --full", "dim")] if left else lines
