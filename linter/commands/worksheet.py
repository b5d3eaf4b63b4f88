"""``ampreview worksheet``: every number of one check, or of all."""

import argparse
import sys
from pathlib import Path

from . import NOT_ASSESSED, RELEASED


def arguments(parser: argparse.ArgumentParser) -> None:
    """What the command takes."""
    parser.add_argument("file", type=Path, metavar="FILE.amp.yaml")
    parser.add_argument("check", nargs="*", help="names of checks (default: all that concern it)")
    parser.add_argument("--markdown", action="store_true", help="as Markdown")
    parser.add_argument("--milestone", choices=("concept", "prototype", "production"))


def run(options: argparse.Namespace) -> int:
    """Print the worksheets of the checks named, for each channel that they concern."""
    from ..catalogue import load
    from ..engine import Assessment
    from ..finding import Status
    from ..loading import load_file
    from ..reports.console import console
    from ..reports.sheets import markdown, print_sheet
    from ..reports.terminal import print_refusals
    from ..worksheet import sheet
    from .catalogue import unknown_check

    page = console()
    loaded = load_file(options.file)
    if loaded.spec is None:
        print_refusals(str(options.file), loaded.refusals, page)
        return NOT_ASSESSED
    catalogue = load()
    known = [entry.name for entry in catalogue.entries]
    for name in options.check:
        if name not in known:
            print(f"ampreview: {unknown_check(name, known)}", file=sys.stderr)
            return NOT_ASSESSED
    assessment = Assessment(loaded.spec, catalogue, options.milestone or loaded.spec.milestone)
    sheets = [
        sheet(assessment, entry, subject)
        for entry in catalogue.entries
        if not options.check or entry.name in options.check
        for subject in assessment.subjects(entry.check)
    ]
    if not options.check:
        sheets = [item for item in sheets if item.finding.status is not Status.NOT_APPLICABLE]
    if options.markdown:
        sys.stdout.write(markdown(sheets, loaded.spec.title or str(options.file)))
    else:
        for item in sheets:
            print_sheet(item, page)
    return RELEASED
