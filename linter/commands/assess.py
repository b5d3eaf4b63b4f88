"""``ampreview assess``: the review of one or more spec files."""

import argparse
import gc
import sys
from pathlib import Path
from typing import TYPE_CHECKING, TextIO

from ..commands import HELD, NOT_ASSESSED, RELEASED, refused
from .assess_use import wrong_use
from .criteria import inputs_of, term_arguments, terms_of
from .report_option import Report, report_arguments, reports_asked

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from rich.console import Console

    from ..judging.review import Outcome, Review


def arguments(parser: argparse.ArgumentParser) -> None:
    """What the command takes."""
    told = "a spec file, a parts file, or a folder: all *.amp.yaml below it"
    parser.add_argument("files", nargs="+", type=_named, metavar="FILE.amp.yaml", help=told)
    term_arguments(parser)
    shown = parser.add_mutually_exclusive_group()
    shown.add_argument(
        "--full",
        action="store_true",
        help="every finding, open item and margin, not one page; in sarif also what is met,"
        " in lines also what is open and does not hold",
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
    report_arguments(parser)
    parser.add_argument("--dated", action="store_true", help="give the day of the review")
    parser.add_argument(
        "--jobs", type=int, default=1, metavar="N", help="review several files at a time"
    )


def _named(text: str) -> Path:
    """A path; of an empty one, as an unset variable of a shell leaves it, nothing is reviewed."""
    if not text:
        raise argparse.ArgumentTypeError("an empty file name")
    return Path(text)


def run(options: argparse.Namespace) -> int:
    """Review each file in turn; the worst outcome decides the exit status."""
    from ..reading.folders import spec_files
    from ..reading.parts_file import is_parts_file
    from ..reading.writing import WritingError
    from .parts_files import assess_parts

    empty = [path for path in options.files if not spec_files([path])]
    if empty:
        return refused(f"no *.amp.yaml in the folder {empty[0]}")
    options.files = spec_files(options.files)
    wrong = wrong_use(options)
    if wrong:
        return refused(wrong)
    parts = [path for path in options.files if is_parts_file(path)]
    reports = reports_asked(options.report, options.output)
    if parts:
        options.files = tuple(path for path in options.files if path not in parts)
        status = assess_parts(parts, reports, options.overwrite)
        return max(status, run(options) if options.files else RELEASED)
    outcomes: Iterable[tuple[Path, Outcome]] = zip(options.files, _followed(options), strict=True)
    try:
        for report in reports:
            _refuse(report, options)
        outcomes = list(outcomes) if len(reports) > 1 else outcomes
        return max([_made(report, outcomes, options) for report in reports])
    except WritingError as error:
        return refused(str(error))


def _refuse(report: Report, options: argparse.Namespace) -> None:
    """Refuse a file that must not be written before anything is reviewed."""
    from ..reading.writing import refuse_target

    if report.target:
        refuse_target(report.target, options.overwrite, *_inputs(options))


def _inputs(options: argparse.Namespace) -> "tuple[Path | None, ...]":
    return (*options.files, *inputs_of(options, *options.files))


def _made(
    report: Report, outcomes: "Iterable[tuple[Path, Outcome]]", options: argparse.Namespace
) -> int:
    """Make one report, on the screen or in a file that is none of those read."""
    from ..reading.writing import written_as_it_comes

    if report.target is None:
        return _write(outcomes, report.kind, options, sys.stdout)
    with written_as_it_comes(report.target, options.overwrite, *_inputs(options)) as stream:
        return _write(outcomes, report.kind, options, stream)


def _followed(options: argparse.Namespace) -> "Iterator[Outcome]":
    """The reviews, with a bar where nothing else is written to the screen meanwhile."""
    from ..reports.progress import followed

    told = reports_asked(options.report, options.output)[0]
    streams = told.target is None and told.kind != "text" and sys.stdout.isatty()
    found = _outcomes(options)
    return found if streams else followed(found, "reviewing", len(options.files))


def _outcomes(options: argparse.Namespace) -> "Iterator[Outcome]":
    """The reviews in the order of the files, by several processes where that is asked."""
    from functools import partial

    from ..batch.many import review_many
    from ..batch.work import Order, review_item
    from ..finding import Severity

    hold_at = Severity(options.hold_at) if options.hold_at else None
    wanted, names = options.remedies, tuple(options.check)
    if options.quiet and not any(x.target for x in reports_asked(options.report, options.output)):
        wanted = "none"
    order = Order(options.milestone, hold_at, terms_of(options), wanted, names, whole=True)
    if options.jobs == 1 or len(options.files) == 1:
        for number, path in enumerate(options.files):
            yield review_item(path, order)
            if len(options.files) > 1:
                _tidy(number)
        return
    from concurrent.futures import ProcessPoolExecutor

    crew = partial(ProcessPoolExecutor, min(options.jobs, len(options.files)), initializer=_usual)
    with crew() as executor:
        for result in review_many(options.files, executor, order, fresh=crew):
            assert result.outcome is not None
            yield result.outcome


def _tidy(number: int) -> None:
    """Free what a review leaves behind; what the first one has loaded stays for all."""
    gc.collect()
    if number == 0:
        gc.freeze()


def _usual() -> None:
    """In a process of several reviews, garbage is collected as usual."""
    gc.set_threshold(700, 10, 10)


def _write(
    outcomes: "Iterable[tuple[Path, Outcome]]",
    kind: str,
    options: argparse.Namespace,
    stream: TextIO,
) -> int:
    """Write the report as the reviews come; the table of the text report stands before them."""
    if kind == "text":
        return _print_all(outcomes, options, stream)
    from ..reports.documents import document

    statuses: list[int] = []

    def told() -> "Iterator[tuple[str, Outcome]]":
        for path, outcome in outcomes:
            statuses.append(_status(outcome))
            yield str(path), outcome

    for piece in document(told(), kind, options.dated, options.full, _drawn(options)):
        stream.write(piece)
    return max(statuses)


def _print_all(
    outcomes: "Iterable[tuple[Path, Outcome]]", options: argparse.Namespace, stream: TextIO
) -> int:
    """Print a review; of several files a table first, then those that are not released."""
    from ..reports.assess_table import TableRow, print_table, row_of
    from ..reports.console import FILE_WIDTH, console

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
        if captured.get() and (status != RELEASED or options.full or options.check):
            texts.append(captured.get())
    if not options.quiet:
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
    elif options.quiet:
        return _status(outcome)
    elif options.check:
        print_checks(outcome, options.check, page)
    elif options.full:
        print_review(outcome, page, options.dated)
    else:
        print_page(outcome, page, options.dated)
    told = _print_tolerance(outcome, options, page) if isinstance(outcome, Review) else RELEASED
    return max(told, _status(outcome))


def _drawn(options: argparse.Namespace) -> tuple[int, int] | None:
    """Number and seed of the builds to draw, where they were asked for."""
    return (options.builds, options.seed) if options.tolerance == "monte-carlo" else None


def _status(outcome: "Outcome") -> int:
    if isinstance(outcome, tuple):
        return NOT_ASSESSED
    return RELEASED if outcome.verdict.released else HELD


def _print_tolerance(review: "Review", options: argparse.Namespace, page: "Console") -> int:
    """The view of the tolerances that was asked for; not having it is told by the status."""
    from ..judging.monte_carlo import NumpyMissingError, build_many
    from ..judging.root_sum_square import root_sum_squares
    from ..reports.progress import progress
    from ..reports.tolerance_text import print_root_sum_square, print_yield

    if options.tolerance == "root-sum-square":
        print_root_sum_square(root_sum_squares(review), page)
    elif options.tolerance == "monte-carlo":
        verdict, builds = review.verdict, options.builds
        given = (review.spec, review.catalogue, verdict.milestone, verdict.hold_at)
        try:
            with progress(f"{builds} builds"):
                found = build_many(*given, builds, options.seed)
            print_yield(found, page)
        except NumpyMissingError as error:
            return refused(str(error))
    return RELEASED
