"""The program ``ampreview``: arguments, reports, exit status."""

import argparse
import sys
from collections.abc import Sequence
from pathlib import Path

RELEASED, HELD, NOT_ASSESSED = 0, 1, 2


def main(arguments: Sequence[str] | None = None) -> int:
    """Run a command; the exit status is 0 released, 1 held, 2 could not assess."""
    options = _parser().parse_args(arguments)
    status: int = options.run(options)
    return status


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="ampreview",
        description="Design review of class-D audio amplifiers, run from their spec files.",
        epilog="Exit status: 0 released, 1 held, 2 could not assess.",
    )
    commands = parser.add_subparsers(required=True, metavar="COMMAND")
    _add_assess(commands)
    return parser


def _add_assess(commands: "argparse._SubParsersAction[argparse.ArgumentParser]") -> None:
    assess = commands.add_parser("assess", help="run the review on spec files")
    assess.add_argument("files", nargs="+", type=Path, metavar="FILE.amp.yaml")
    assess.add_argument(
        "--milestone",
        choices=("concept", "prototype", "production"),
        help="what the verdict is wanted for (default: what the spec says)",
    )
    assess.add_argument(
        "--hold-at",
        choices=("critical", "major", "minor"),
        help="mildest severity that holds (default: by milestone)",
    )
    assess.add_argument("--everything", action="store_true", help="list every met check as well")
    assess.set_defaults(run=_assess)


def _assess(options: argparse.Namespace) -> int:
    from rich.console import Console

    from .finding import Severity
    from .reports.terminal import print_refusals, print_review
    from .review import Review, review_file

    console = Console(file=sys.stdout, highlight=False)
    hold_at = Severity(options.hold_at) if options.hold_at else None
    worst = RELEASED
    for path in options.files:
        outcome = review_file(path, options.milestone, hold_at)
        if isinstance(outcome, Review):
            print_review(outcome, console, options.everything)
            worst = max(worst, RELEASED if outcome.verdict.released else HELD)
        else:
            print_refusals(str(path), outcome, console)
            worst = NOT_ASSESSED
    return worst
