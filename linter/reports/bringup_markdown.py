"""The bring-up sheet as Markdown."""

from collections.abc import Iterator

from ..judging.bringup import SheetStep
from ..judging.review import Review
from .bringup_words import (
    BOARD,
    HEADS,
    NOTES,
    SIGNED,
    blanks,
    expected,
    lacking,
    leaning,
    standing,
    stop,
    title_of,
    whose,
)
from .identity import text_hash
from .markdown import markdown_table
from .phrases import escaped
from .verdict import DISCLAIMER


def sheet_markdown(review: Review, steps: tuple[SheetStep, ...]) -> str:
    """The sheet as one Markdown text."""
    spec = review.spec
    parts = [
        f"# {escaped(title_of(review))}",
        escaped(f"{spec.file}, SHA-256 {text_hash(spec.text)}"),
        escaped(BOARD),
        f"**{escaped(standing(review))}**",
        *map(escaped, NOTES),
    ]
    for step in steps:
        parts += _step(step)
    return "\n\n".join([*parts, escaped(DISCLAIMER)]) + "\n"


def _step(step: SheetStep) -> Iterator[str]:
    yield f"## {step.number}. {escaped(step.title)}"
    for caution in step.cautions:
        yield f"> **{caution.signal}** {escaped(caution.text)}"
    yield f"With: {escaped(step.instrument)}"
    yield "\n".join(f"- [ ] {escaped(line)}" for line in step.lines)
    if step.figures:
        rows = [(whose(step, x), expected(x), stop(x), blanks(x)) for x in step.figures]
        yield markdown_table(HEADS, rows)
    yield from (escaped(note) for note in (lacking(step), leaning(step)) if note)
    yield escaped(SIGNED)
