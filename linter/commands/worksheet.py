"""``ampreview worksheet``: every number of some checks, or a sheet a subject for all."""

import argparse
from pathlib import Path
from typing import TYPE_CHECKING

from ..commands import NOT_ASSESSED, refused
from .criteria import house_arguments, measured_argument, parts_argument
from .report_option import document, document_arguments, page_missing

if TYPE_CHECKING:
    from ..evaluation.catalogue import Catalogue
    from ..judging.worksheet import Worksheet
    from ..reading.loading import Spec
    from ..reports.worksheet_text import Block


def arguments(parser: argparse.ArgumentParser) -> None:
    """What the command takes."""
    parser.add_argument("file", type=Path, metavar="FILE.amp.yaml")
    parser.add_argument("check", nargs="*", help="names of checks (default: all that concern it)")
    document_arguments(parser)
    parser.add_argument("--milestone", choices=("concept", "prototype", "production"))
    measured_argument(parser)
    house_arguments(parser)
    parts_argument(parser)


def run(options: argparse.Namespace) -> int:
    """Print the worksheets of the checks named, for each channel that they concern."""
    from ..judging.criteria import Terms, criteria_for
    from ..judging.sheets import sheets_of
    from ..reading.loading import load_file
    from ..reports.assess_text import print_refusals
    from ..reports.console import console
    from ..reports.worksheet_text import of_checks, of_house, of_sheets
    from .catalogue import unknown_check

    if page_missing(options.report):
        return refused(page_missing(options.report))
    page = console()
    loaded = load_file(options.file, parts=options.parts)
    if loaded.spec is None:
        print_refusals(str(options.file), loaded.refusals, page)
        return NOT_ASSESSED
    terms = Terms(house=options.house, no_house=options.no_house, measured=options.measured)
    criteria = criteria_for(options.file, terms)
    if isinstance(criteria, tuple):
        print_refusals(str(options.file), criteria, page)
        return NOT_ASSESSED
    catalogue, spec = criteria.catalogue, criteria.applied(loaded.spec)
    known = [entry.name for entry in catalogue.entries]
    for name in options.check:
        if name not in known:
            return refused(unknown_check(name, known))
    pages = _pages(spec, catalogue, options)
    found = of_checks(pages) if options.check else of_sheets(sheets_of(pages))
    blocks = (*of_house(criteria.house), *found)
    return _give(spec, blocks, options)


def _give(spec: "Spec", blocks: "tuple[Block, ...]", options: argparse.Namespace) -> int:
    """Print the sheets, or write them to a file that is none of those read."""
    from ..reports.worksheet_text import markdown, print_blocks

    def page() -> str:
        from ..reports.worksheet_html import worksheet_html

        return worksheet_html(spec, blocks)

    return document(
        options,
        lambda screen: print_blocks(spec, blocks, screen),
        lambda: markdown(spec, blocks),
        page,
        options.file,
        options.house,
        options.parts,
        options.measured,
    )


def _pages(spec: "Spec", catalogue: "Catalogue", options: argparse.Namespace) -> "list[Worksheet]":
    """The checks asked for; without names all that concern the design."""
    from ..evaluation.engine import Assessment
    from ..finding import Status
    from ..judging.worksheet import worksheet

    assessment = Assessment(spec, catalogue, options.milestone or spec.milestone)
    pages = [
        worksheet(assessment, entry, subject)
        for entry in catalogue.entries
        if not options.check or entry.name in options.check
        for subject in assessment.subjects(entry.check)
    ]
    if options.check:
        return pages
    return [item for item in pages if item.finding.status is not Status.NOT_APPLICABLE]
