"""The bring-up sheet as Markdown."""

from collections.abc import Iterator

from ..check import Caution
from ..evaluation.bringup_steps import notes_of
from ..judging.bringup import SheetStep
from ..judging.review import Review
from .bringup_words import (
    BOARD,
    HEADS,
    NOTE,
    SIGNED,
    beyond,
    blanks,
    expected,
    lacking,
    leaning,
    standing,
    stop,
    throughout,
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
        *map(escaped, (NOTE, *notes_of(review.catalogue))),
    ]
    often = throughout(steps)
    parts += ["In every step:"] if often else []
    parts += _cautions(often)
    for step in steps:
        parts += _step(step, often)
    return "\n\n".join([*parts, escaped(DISCLAIMER)]) + "\n"


def _step(step: SheetStep, often: tuple[Caution, ...]) -> Iterator[str]:
    yield f"## {step.number}. {escaped(step.title)}"
    if beyond(step):
        yield f"**{escaped(beyond(step))}**"
    yield from _cautions(tuple(x for x in step.cautions if x not in often))
    yield f"With: {escaped(step.instrument)}"
    yield "\n".join(f"- [ ] {escaped(line)}" for line in step.lines)
    if step.figures:
        rows = [(whose(step, x), expected(x), stop(x), blanks(x)) for x in step.figures]
        yield markdown_table(HEADS, rows)
    yield from (escaped(note) for note in (lacking(step), leaning(step)) if note)
    yield escaped(SIGNED)


def _cautions(cautions: tuple[Caution, ...]) -> Iterator[str]:
    for caution in cautions:
        yield f"> **{caution.signal}** {escaped(caution.text)}"
