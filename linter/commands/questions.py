"""``ampreview questions``: the letter to the supplier of a spec with gaps and faults."""

import argparse
import sys
from pathlib import Path
from typing import TYPE_CHECKING

from ..commands import NOT_ASSESSED, RELEASED, print_or_write, refused
from .criteria import inputs_of, term_arguments, terms_of

if TYPE_CHECKING:
    from ..judging.review import Review


def arguments(parser: argparse.ArgumentParser) -> None:
    """What the command takes."""
    parser.add_argument("file", type=Path, metavar="FILE.amp.yaml")
    term_arguments(parser)
    what = parser.add_mutually_exclusive_group()
    what.add_argument("--all", action="store_true", help="the whole letter, not one page of it")
    what.add_argument(
        "--requirements",
        action="store_true",
        help="what the missing values must be, part by part: the list of parts to choose",
    )
    what.add_argument(
        "--blank",
        type=Path,
        metavar="YAML",
        help="write a form (.amp.yaml) for the answers; `ampreview amend --answers` takes it in",
    )
    what.add_argument(
        "--table",
        type=Path,
        metavar="CSV",
        help="the same as a table (.csv) with a column for the answers",
    )
    parser.add_argument(
        "--limits",
        type=Path,
        metavar="FILE",
        help="write what to look up before production, as records for the house file",
    )
    parser.add_argument("--markdown", action="store_true", help="as Markdown")
    parser.add_argument("--overwrite", action="store_true", help="replace a file that is there")


def run(options: argparse.Namespace) -> int:
    """Print the letter or the requirements, or write a form or a table for the answers."""
    from ..finding import Severity
    from ..judging.review import Review, review_file
    from ..reports.assess_text import print_refusals
    from ..reports.console import console

    if options.limits and (options.all or options.requirements or options.blank or options.table):
        return refused("--limits writes a file of its own: give it alone")
    hold_at = Severity(options.hold_at) if options.hold_at else None
    review = review_file(options.file, options.milestone, hold_at, terms_of(options))
    if not isinstance(review, Review):
        print_refusals(str(options.file), review, console())
        return NOT_ASSESSED
    if options.blank or options.table:
        return _write_form(review, options)
    if options.limits:
        from ..reports.lookup_text import NOTHING, lookup_text

        inputs = (options.file, *inputs_of(options, options.file))
        text = lookup_text(review)
        if not text:
            print(NOTHING)
            return 0
        return print_or_write(text, options.limits, options.overwrite, *inputs)
    if options.requirements:
        return _print_requirements(review, options.markdown)
    return _print_letter(review, options)


def _print_letter(review: "Review", options: argparse.Namespace) -> int:
    from ..asking.letter import letter_of
    from ..changes.causes import causes_of
    from ..reports.console import console
    from ..reports.letter_text import WIDTH, letter_markdown, letter_text

    letter = letter_of(review, causes_of(review))
    if options.markdown:
        sys.stdout.write(letter_markdown(review, letter, options.all))
    else:
        width = min(WIDTH, console().width)
        sys.stdout.write(letter_text(review, letter, options.all, width))
    return RELEASED


def _print_requirements(review: "Review", as_markdown: bool) -> int:
    from ..asking.requirements import requirements_of
    from ..reports.console import console
    from ..reports.requirements_text import markdown, print_requirements

    parts = requirements_of(review)
    if as_markdown:
        sys.stdout.write(markdown(review, parts))
    else:
        print_requirements(review, parts, console())
    return RELEASED


def _write_form(review: "Review", options: argparse.Namespace) -> int:
    from ..asking.letter import letter_of
    from ..asking.questions import groups_of
    from ..reports.letter_text import answers_table
    from ..reports.questions_text import blank_text

    if options.table:
        text = answers_table(letter_of(review, ()))
    else:
        text = blank_text(review, groups_of(review))
    inputs = (options.file, *inputs_of(options, options.file))
    return print_or_write(text, options.table or options.blank, options.overwrite, *inputs)
