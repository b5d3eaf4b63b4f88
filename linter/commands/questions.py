"""``ampreview questions``: what to ask the supplier about a spec with gaps."""

import argparse
import sys
from pathlib import Path
from typing import TYPE_CHECKING

from ..commands import NOT_ASSESSED, RELEASED
from .criteria import term_arguments, terms_of

if TYPE_CHECKING:
    from rich.console import Console

    from ..judging.review import Review


def arguments(parser: argparse.ArgumentParser) -> None:
    """What the command takes."""
    parser.add_argument("file", type=Path, metavar="FILE.amp.yaml")
    term_arguments(parser)
    parser.add_argument(
        "--requirements",
        action="store_true",
        help="what the missing values must be, part by part: the list of parts to choose",
    )
    shape = parser.add_mutually_exclusive_group()
    shape.add_argument("--markdown", action="store_true", help="as Markdown, to be sent")
    shape.add_argument(
        "--blank",
        type=Path,
        metavar="ANSWERS.amp.yaml",
        help="write a form for the answers; `ampreview amend --answers` takes it in",
    )
    parser.add_argument("--overwrite", action="store_true", help="replace a file that is there")


def run(options: argparse.Namespace) -> int:
    """Print the questions, or write the blank form."""
    from ..asking.questions import groups_of
    from ..finding import Severity
    from ..judging.review import Review, review_file
    from ..reading.writing import WritingError, write_text
    from ..reports.assess_text import print_refusals
    from ..reports.console import console
    from ..reports.questions_text import blank_text, markdown, print_questions

    hold_at = Severity(options.hold_at) if options.hold_at else None
    page = console()
    review = review_file(options.file, options.milestone, hold_at, terms_of(options))
    if not isinstance(review, Review):
        print_refusals(str(options.file), review, page)
        return NOT_ASSESSED
    if options.requirements:
        return _requirements(review, options.markdown, page)
    groups = groups_of(review)
    if options.markdown:
        sys.stdout.write(markdown(review, groups))
    elif options.blank:
        try:
            write_text(options.blank, blank_text(review, groups), options.overwrite)
        except WritingError as error:
            print(f"ampreview: {error}", file=sys.stderr)
            return NOT_ASSESSED
        print(f"Written to {options.blank}")
    else:
        print_questions(review, groups, page)
    return RELEASED


def _requirements(review: "Review", as_markdown: bool, page: "Console") -> int:
    from ..asking.requirements import requirements_of
    from ..reports.requirements_text import markdown, print_requirements

    parts = requirements_of(review)
    if as_markdown:
        sys.stdout.write(markdown(review, parts))
    else:
        print_requirements(review, parts, page)
    return RELEASED
