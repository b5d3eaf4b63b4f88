"""``ampreview bringup``: the sheet for the first power-up of a board."""

import argparse
from pathlib import Path

from ..commands import NOT_ASSESSED, RELEASED, print_or_write
from .criteria import inputs_of, term_arguments, terms_of


def arguments(parser: argparse.ArgumentParser) -> None:
    """What the command takes."""
    parser.add_argument("file", type=Path, metavar="FILE.amp.yaml")
    term_arguments(parser)
    parser.add_argument(
        "--report",
        choices=("text", "markdown"),
        default="text",
        help="kind of report (default: text)",
    )
    parser.add_argument("-o", "--output", type=Path, metavar="FILE", help="write the sheet there")
    parser.add_argument("--overwrite", action="store_true", help="replace a file that is there")


def run(options: argparse.Namespace) -> int:
    """Print the sheet of a spec, whatever its verdict; the sheet tells what must be cleared."""
    import io

    from ..evaluation.engine import Assessment
    from ..finding import Severity
    from ..judging.bringup import sheet_of
    from ..judging.review import Review, review_file
    from ..reports.assess_text import print_refusals
    from ..reports.bringup_markdown import sheet_markdown
    from ..reports.bringup_text import print_sheet
    from ..reports.console import console

    hold_at = Severity(options.hold_at) if options.hold_at else None
    review = review_file(options.file, options.milestone, hold_at, terms_of(options))
    if not isinstance(review, Review):
        print_refusals(str(options.file), review, console())
        return NOT_ASSESSED
    inputs = (options.file, *inputs_of(options, options.file))
    steps = sheet_of(Assessment(review.spec, review.catalogue, review.verdict.milestone))
    if options.report == "markdown":
        told = sheet_markdown(review, steps)
        return print_or_write(told, options.output, options.overwrite, *inputs)
    if options.output is None:
        print_sheet(review, steps, console())
        return RELEASED
    text = io.StringIO()
    print_sheet(review, steps, console(text, WIDTH))
    return print_or_write(text.getvalue(), options.output, options.overwrite, *inputs)


WIDTH = 100
"""Of a sheet that is written to a file."""
