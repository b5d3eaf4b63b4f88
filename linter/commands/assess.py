"""``ampreview assess``: the review of one or more spec files."""

import argparse
import sys
from pathlib import Path
from typing import TYPE_CHECKING

from . import HELD, NOT_ASSESSED, RELEASED

if TYPE_CHECKING:
    from rich.console import Console

    from ..review import Review


def arguments(parser: argparse.ArgumentParser) -> None:
    """What the command takes."""
    parser.add_argument("files", nargs="+", type=Path, metavar="FILE.amp.yaml")
    parser.add_argument(
        "--milestone",
        choices=("concept", "prototype", "production"),
        help="what the verdict is wanted for (default: what the spec says)",
    )
    parser.add_argument(
        "--hold-at",
        choices=("critical", "major", "minor"),
        help="mildest severity that holds (default: by milestone)",
    )
    parser.add_argument("--everything", action="store_true", help="list every check, met or not")
    parser.add_argument(
        "--tolerance",
        choices=("worst-case", "root-sum-square", "monte-carlo"),
        default="worst-case",
        help="show another view of the tolerances beside the worst case",
    )
    parser.add_argument("--builds", type=int, default=100_000, help="builds of monte-carlo")
    parser.add_argument("--seed", type=int, default=1, help="seed of monte-carlo")
    parser.add_argument("--no-remedies", action="store_true", help="do not look for changes")


def run(options: argparse.Namespace) -> int:
    """Review each file in turn; the worst outcome decides the exit status."""
    from rich.console import Console

    from ..finding import Severity
    from ..remedy import with_remedies
    from ..reports.terminal import print_refusals, print_review
    from ..review import Review, review_file

    console = Console(file=sys.stdout, highlight=False)
    hold_at = Severity(options.hold_at) if options.hold_at else None
    worst = RELEASED
    for number, path in enumerate(options.files):
        if number:
            console.rule(style="dim")
        outcome = review_file(path, options.milestone, hold_at)
        if isinstance(outcome, Review):
            advised = outcome if options.no_remedies else with_remedies(outcome)
            print_review(advised, console, options.everything)
            _print_spread(outcome, options, console)
            worst = max(worst, RELEASED if outcome.verdict.released else HELD)
        else:
            print_refusals(str(path), outcome, console)
            worst = NOT_ASSESSED
    return worst


def _print_spread(review: "Review", options: argparse.Namespace, console: "Console") -> None:
    """The view of the tolerances that was asked for."""
    from ..builds import NumpyMissingError, build_many
    from ..reports.spread import print_root_sum_square, print_yield
    from ..spread import root_sum_squares

    if options.tolerance == "root-sum-square":
        print_root_sum_square(root_sum_squares(review), console)
    elif options.tolerance == "monte-carlo":
        verdict, builds = review.verdict, max(options.builds, 1)
        given = (review.spec, review.catalogue, verdict.milestone, verdict.hold_at)
        try:
            print_yield(build_many(*given, builds, options.seed), console)
        except NumpyMissingError as error:
            print(f"ampreview: {error}", file=sys.stderr)
