"""Parts files among the files of ``assess``: each judged by itself."""

from collections.abc import Iterable
from pathlib import Path

from ..commands import HELD, NOT_ASSESSED, RELEASED


def assess_parts(paths: Iterable[Path]) -> int:
    """Print the review of each parts file; the worst one decides the exit status."""
    from ..judging.parts_review import PartsReview, review_parts
    from ..reports.assess_text import print_refusals
    from ..reports.console import console
    from ..reports.parts_text import print_parts

    page, worst = console(), RELEASED
    for path in paths:
        found = review_parts(path)
        if isinstance(found, PartsReview):
            print_parts(found, page)
            worst = max(worst, HELD if found.holds else RELEASED)
        else:
            print_refusals(str(path), found, page)
            worst = NOT_ASSESSED
    return worst
