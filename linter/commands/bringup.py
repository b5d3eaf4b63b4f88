"""``ampreview bringup``: the sheet for the first power-up of a board."""

import argparse
from pathlib import Path

from ..commands import NOT_ASSESSED, refused
from .criteria import inputs_of, term_arguments, terms_of
from .report_option import document, document_arguments, page_missing


def arguments(parser: argparse.ArgumentParser) -> None:
    """What the command takes."""
    parser.add_argument("file", type=Path, metavar="FILE.amp.yaml")
    term_arguments(parser)
    document_arguments(parser)


def run(options: argparse.Namespace) -> int:
    """Print the sheet of a spec, whatever its verdict; the sheet tells what must be cleared."""
    from ..evaluation.engine import Assessment
    from ..finding import Severity
    from ..judging.bringup import sheet_of
    from ..judging.review import Review, review_file
    from ..reports.assess_text import print_refusals
    from ..reports.bringup_markdown import sheet_markdown
    from ..reports.bringup_text import print_sheet
    from ..reports.console import console

    if page_missing(options.report):
        return refused(page_missing(options.report))
    hold_at = Severity(options.hold_at) if options.hold_at else None
    review = review_file(options.file, options.milestone, hold_at, terms_of(options))
    if not isinstance(review, Review):
        print_refusals(str(options.file), review, console())
        return NOT_ASSESSED
    steps = sheet_of(Assessment(review.spec, review.catalogue, review.verdict.milestone))

    def page() -> str:
        from ..reports.bringup_html import sheet_html

        return sheet_html(review, steps)

    return document(
        options,
        lambda screen: print_sheet(review, steps, screen),
        lambda: sheet_markdown(review, steps),
        page,
        options.file,
        *inputs_of(options, options.file),
    )
