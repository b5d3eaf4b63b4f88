"""The bring-up sheet as pages to print, fill in at the bench and sign."""

from ..check import Caution
from ..declare import PRODUCT
from ..evaluation.bringup_steps import notes_of
from ..finding import Severity
from ..judging.bringup import SheetStep
from ..judging.review import Review
from .bringup_words import (
    HEADS,
    NOTE,
    beyond,
    expected,
    lacking,
    leaning,
    standing,
    stop,
    throughout,
    whose,
)
from .html_page import html_page, which_file
from .identity import text_hash

SIGNATORIES = ("Measured by", "Checked by")


def sheet_html(review: Review, steps: tuple[SheetStep, ...]) -> str:
    """The sheet as one page for a browser and for paper."""
    spec = review.spec
    often = throughout(steps)
    return html_page(
        "bringup.html",
        title=spec.title or spec.file,
        revision=spec.revision,
        file=spec.file,
        digest=text_hash(spec.text),
        which=which_file(spec.file, spec.text),
        standing=standing(review),
        is_stopped=any(x.severity is Severity.CRITICAL for x in review.failing()),
        notes=(NOTE, *notes_of(review.catalogue)),
        often=often,
        heads=HEADS,
        steps=[_step(step, often) for step in steps],
        signatories=SIGNATORIES,
    )


def _step(step: SheetStep, often: tuple[Caution, ...]) -> dict[str, object]:
    return {
        "number": step.number,
        "title": step.title,
        "beyond": beyond(step),
        "cautions": [x for x in step.cautions if x not in often],
        "instrument": step.instrument,
        "lines": step.lines,
        "readings": [
            (
                (whose(step, x), expected(x), stop(x)),
                [name if name != PRODUCT else "" for name in x.subjects],
            )
            for x in step.figures
        ],
        "notes": [text for text in (lacking(step), leaning(step)) if text],
    }
