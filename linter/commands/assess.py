"""``ampreview assess``: the review of one or more spec files."""

import argparse
import io
import sys
from pathlib import Path
from typing import TYPE_CHECKING, TextIO

from ..commands import HELD, NOT_ASSESSED, RELEASED
from .criteria import term_arguments, terms_of

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from rich.console import Console

    from ..judging.review import Outcome, Review

FILE_WIDTH = 100


def arguments(parser: argparse.ArgumentParser) -> None:
    """What the command takes."""
    parser.add_argument("files", nargs="+", type=Path, metavar="FILE.amp.yaml")
    term_arguments(parser)
    shown = parser.add_mutually_exclusive_group()
    shown.add_argument(
        "--full", action="store_true", help="every finding, open item and margin, not one page"
    )
    shown.add_argument(
        "--check", action="append", default=[], metavar="NAME", help="the answers of a check alone"
    )
    parser.add_argument(
        "--tolerance",
        choices=("worst-case", "root-sum-square", "monte-carlo"),
        default="worst-case",
        help="show another view of the tolerances beside the worst case",
    )
    parser.add_argument("--builds", type=int, default=100_000, help="builds of monte-carlo")
    parser.add_argument("--seed", type=int, default=1, help="seed of monte-carlo")
    parser.add_argument(
        "--remedies",
        choices=("all", "holding", "none"),
        default="holding",
        help="findings for which proven changes are looked for (default: those that hold)",
    )
    parser.add_argument(
        "--report",
        choices=("text", "markdown", "json", "sarif"),
        default="text",
        help="kind of report (default: text); several files make one document",
    )
    parser.add_argument("-o", "--output", type=Path, metavar="FILE", help="write the report there")
    parser.add_argument("--dated", action="store_true", help="give the day of the review")
    parser.add_argument(
        "--jobs", type=int, default=1, metavar="N", help="review several files at a time"
    )


def run(options: argparse.Namespace) -> int:
    """Review each file in turn; the worst outcome decides the exit status."""
    from ..reading.parts_file import is_parts_file

    wrong = _wrong_use(options)
    if wrong:
        print(f"ampreview: {wrong}", file=sys.stderr)
        return NOT_ASSESSED
    if any(map(is_parts_file, options.files)):
        return _assess_parts(options)
    outcomes = zip(options.files, _outcomes(options), strict=True)
    if options.output is None:
        return _write(outcomes, options, sys.stdout)
    text = io.StringIO()
    status = _write(outcomes, options, text)
    try:
        options.output.write_text(text.getvalue(), encoding="utf-8", newline="\n")
    except OSError as error:
        reason = error.strerror or error
        print(f"ampreview: {options.output} cannot be written: {reason}", file=sys.stderr)
        return NOT_ASSESSED
    return status


def _assess_parts(options: argparse.Namespace) -> int:
    """Review the parts files among the files, then the others as usual."""
    from ..judging.parts_review import PartsReview, review_parts
    from ..reading.parts_file import is_parts_file
    from ..reports.assess_text import print_refusals
    from ..reports.console import console
    from ..reports.parts_text import print_parts

    page, statuses = console(), []
    for path in (item for item in options.files if is_parts_file(item)):
        found = review_parts(path)
        if isinstance(found, PartsReview):
            print_parts(found, page)
            statuses.append(HELD if found.holds else RELEASED)
        else:
            print_refusals(str(path), found, page)
            statuses.append(NOT_ASSESSED)
    options.files = [path for path in options.files if not is_parts_file(path)]
    return max(*statuses, run(options) if options.files else RELEASED)


def _wrong_use(options: argparse.Namespace) -> str:
    """What cannot be done as asked, or nothing."""
    for name, least in (("jobs", 1), ("builds", 1), ("seed", 0)):
        if getattr(options, name) < least:
            return f"--{name} {getattr(options, name)}: at least {least}"
    if options.tolerance != "worst-case" and options.report != "text":
        return f"--tolerance {options.tolerance} goes with the text report, not {options.report}"
    if options.check and (wrong := _wrong_check(options)):
        return wrong
    if options.output is None:
        return ""
    given = [*options.files, options.deviations, options.house]
    if any(path and path.absolute() == options.output.absolute() for path in given):
        return f"--output {options.output} would overwrite what is to be assessed"
    return ""


def _wrong_check(options: argparse.Namespace) -> str:
    """What is wrong with the names of checks, or nothing."""
    from ..evaluation.catalogue import load
    from ..judging.consistency import BUILT_IN
    from .catalogue import unknown_check

    if options.report != "text":
        return f"--check goes with the text report, not with {options.report}"
    known = [*(entry.name for entry in load().entries), *BUILT_IN]
    return next((unknown_check(x, known) for x in options.check if x not in known), "")


def _outcomes(options: argparse.Namespace) -> "Iterator[Outcome]":
    """The reviews in the order of the files, by several processes where that is asked."""
    from ..batch import Order, review_many
    from ..finding import Severity

    hold_at = Severity(options.hold_at) if options.hold_at else None
    wanted, names = options.remedies, tuple(options.check)
    order = Order(options.milestone, hold_at, terms_of(options), wanted, names)
    if options.jobs == 1 or len(options.files) == 1:
        yield from review_many(options.files, None, order)
        return
    from concurrent.futures import ProcessPoolExecutor

    with ProcessPoolExecutor(min(options.jobs, len(options.files))) as executor:
        yield from review_many(options.files, executor, order)


def _write(
    outcomes: "Iterable[tuple[Path, Outcome]]", options: argparse.Namespace, stream: TextIO
) -> int:
    """Write the report: text and JSON as the reviews come, the other kinds as one piece."""
    if options.report == "text":
        return _print_all(outcomes, options, stream)
    statuses: list[int] = []

    def told() -> "Iterator[tuple[str, Outcome]]":
        for path, outcome in outcomes:
            statuses.append(_status(outcome))
            yield str(path), outcome

    for piece in _document(told(), options):
        stream.write(piece)
    return max(statuses)


def _print_all(
    outcomes: "Iterable[tuple[Path, Outcome]]", options: argparse.Namespace, stream: TextIO
) -> int:
    """Print a review; of several files a table first, then those that are not released."""
    from ..reports.assess_table import TableRow, print_table, row_of
    from ..reports.console import console

    page = console(stream, None if stream is sys.stdout else FILE_WIDTH)
    if len(options.files) == 1:
        return max(_print_one(path, outcome, options, page) for path, outcome in outcomes)
    rows: list[TableRow] = []
    texts, worst = [], RELEASED
    for path, outcome in outcomes:
        with page.capture() as captured:
            status = _print_one(path, outcome, options, page)
        rows.append(row_of(str(path), outcome))
        worst = max(worst, status)
        if status != RELEASED or options.full or options.check:
            texts.append(captured.get())
    print_table(rows, page)
    for text in texts:
        page.rule(style="dim")
        page.file.write(text)
    return worst


def _print_one(path: Path, outcome: "Outcome", options: argparse.Namespace, page: "Console") -> int:
    """Print one review as it was asked for, and give its status."""
    from ..judging.review import Review
    from ..reports.assess_page import print_page
    from ..reports.assess_text import print_checks, print_refusals, print_review

    if not isinstance(outcome, Review):
        print_refusals(str(path), outcome, page)
    elif options.check:
        print_checks(outcome, options.check, page)
    elif options.full:
        print_review(outcome, page, options.dated)
    else:
        print_page(outcome, page, options.dated)
    told = _print_tolerance(outcome, options, page) if isinstance(outcome, Review) else RELEASED
    return max(told, _status(outcome))


def _document(
    outcomes: "Iterator[tuple[str, Outcome]]", options: argparse.Namespace
) -> "Iterable[str]":
    """All reviews as one text of the kind asked for, in pieces."""
    if options.report == "json":
        from ..reports.assess_json import json_pieces

        return json_pieces(outcomes, options.dated)
    if options.report == "sarif":
        from ..reports.assess_sarif import sarif_report

        return [sarif_report(list(outcomes), options.dated)]
    from ..reports.assess_markdown import markdown_report

    return [markdown_report(list(outcomes), options.dated)]


def _status(outcome: "Outcome") -> int:
    if isinstance(outcome, tuple):
        return NOT_ASSESSED
    return RELEASED if outcome.verdict.released else HELD


def _print_tolerance(review: "Review", options: argparse.Namespace, page: "Console") -> int:
    """The view of the tolerances that was asked for; not having it is told by the status."""
    from ..judging.monte_carlo import NumpyMissingError, build_many
    from ..judging.root_sum_square import root_sum_squares
    from ..reports.tolerance_text import print_root_sum_square, print_yield

    if options.tolerance == "root-sum-square":
        print_root_sum_square(root_sum_squares(review), page)
    elif options.tolerance == "monte-carlo":
        verdict, builds = review.verdict, options.builds
        given = (review.spec, review.catalogue, verdict.milestone, verdict.hold_at)
        try:
            print_yield(build_many(*given, builds, options.seed), page)
        except NumpyMissingError as error:
            print(f"ampreview: {error}", file=sys.stderr)
            return NOT_ASSESSED
    return RELEASED
