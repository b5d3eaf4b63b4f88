"""The reports that a command is asked for: kinds, each to the screen or to a file."""

import argparse
import io
import os
import re
import sys
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from importlib.util import find_spec
from pathlib import Path
from typing import TYPE_CHECKING

from ..commands import RELEASED, print_or_write

if TYPE_CHECKING:
    from rich.console import Console

KINDS = ("text", "page", "markdown", "json", "json-lines", "sarif", "junit", "lines")
PAGE_NEEDS = ("jinja2", "matplotlib")
DOCUMENTS = ("text", "markdown", "page")
FILE_WIDTH = 100
INSTALL = (sys.executable, "-m", "pip", "install")


@dataclass(frozen=True, slots=True)
class Report:
    """A kind of report, and the file that it goes to; None for the screen."""

    kind: str
    target: Path | None = None


def report_arguments(parser: argparse.ArgumentParser) -> None:
    """The options on the reports."""
    parser.add_argument(
        "--report",
        action="append",
        default=[],
        type=_report,
        metavar="KIND[=FILE]",
        help=f"{', '.join(KINDS)} (default: text); with =FILE it goes to a file, beside the others",
    )
    parser.add_argument("-o", "--output", type=Path, metavar="FILE", help="write the report there")
    parser.add_argument("--overwrite", action="store_true", help="replace a file that is there")


def document_arguments(parser: argparse.ArgumentParser) -> None:
    """The options of a command that makes one text: its kind, and the file that it goes to."""
    parser.add_argument(
        "--report", choices=DOCUMENTS, default=DOCUMENTS[0], help="kind of report (default: text)"
    )
    parser.add_argument("-o", "--output", type=Path, metavar="FILE", help="write the report there")
    parser.add_argument("--overwrite", action="store_true", help="replace a file that is there")


def document(
    options: argparse.Namespace,
    printed: "Callable[[Console], None]",
    markdown: Callable[[], str],
    page: Callable[[], str],
    *inputs: Path | None,
) -> int:
    """Make the kind that is asked for, on the screen or in a file; gives the exit status."""
    from ..reports.console import console

    if options.report != "text":
        made = page() if options.report == "page" else markdown()
        return print_or_write(made, options.output, options.overwrite, *inputs)
    if options.output is None:
        printed(console())
        return RELEASED
    text = io.StringIO()
    printed(console(text, FILE_WIDTH))
    return print_or_write(text.getvalue(), options.output, options.overwrite, *inputs)


def reports_asked(asked: Sequence[Report], output: Path | None) -> tuple[Report, ...]:
    """The reports to make: those with files of their own, and one for the screen or ``-o``."""
    named = tuple(report for report in asked if report.target)
    kind = next((report.kind for report in asked if not report.target), "text")
    return (Report(kind, output), *named)


def wrong_reports(asked: Sequence[Report], output: Path | None) -> str:
    """What cannot be done as asked, or nothing."""
    if sum(report.target is None for report in asked) > 1:
        return "two reports for one place: give all but one a file, --report KIND=FILE"
    named = [report.target for report in reports_asked(asked, output) if report.target]
    targets = [os.path.normpath(target.absolute()) for target in named]
    twice = next((path for path in targets if targets.count(path) > 1), None)
    return f"two reports would go to {twice}" if twice else ""


def _report(text: str) -> Report:
    kind, named, file = text.partition("=")
    if kind not in KINDS:
        raise argparse.ArgumentTypeError(f"{kind!r} is none of {', '.join(KINDS)}")
    if named and not file:
        raise argparse.ArgumentTypeError(f"no file behind {text}")
    return Report(kind, Path(file) if file else None)


def page_missing(kind: str = "page") -> str:
    """What a page needs and is not installed, with the command that installs it; or nothing."""
    missing = [name for name in PAGE_NEEDS if kind == "page" and find_spec(name) is None]
    if not missing:
        return ""
    return f"--report page needs {' and '.join(missing)}: {install_command(*missing)}"


def install_command(*packages: str) -> str:
    """What installs packages beside this program, as typed into a shell."""
    return " ".join(
        f"'{part}'" if re.search(r"[ <>]", part) else part for part in (*INSTALL, *packages)
    )
