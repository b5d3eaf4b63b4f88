"""``ampreview bom``: does the bill of materials agree with the spec."""

import argparse
from pathlib import Path
from typing import TYPE_CHECKING

from ..commands import HELD, NOT_ASSESSED, RELEASED, print_or_write, refused
from .criteria import parts_argument

if TYPE_CHECKING:
    from ..judging.bom import BomComparison

REPORTS = ("text", "markdown", "json")
COLUMNS = ("reference", "value", "tolerance", "voltage", "power", "quantity")


def arguments(parser: argparse.ArgumentParser) -> None:
    """What the command takes."""
    parser.add_argument("file", type=Path, metavar="FILE.amp.yaml")
    parser.add_argument("table", type=Path, metavar="BOM.csv")
    for name in COLUMNS:
        parser.add_argument(
            f"--{name}", default="", metavar="HEAD", help=f"head of the column of the {name}"
        )
    parser.add_argument("--delimiter", default="", metavar="SIGN", help="sign between the columns")
    parser.add_argument("--encoding", default="", help="of the table (default: found out)")
    parts_argument(parser)
    parser.add_argument(
        "--report", choices=REPORTS, default="text", help="kind of report (default: text)"
    )
    parser.add_argument("-o", "--output", type=Path, metavar="FILE", help="write the report there")
    parser.add_argument("--overwrite", action="store_true", help="replace a file that is there")


def run(options: argparse.Namespace) -> int:
    """Compare, print; the status is 0 where all agrees and 1 where something does not."""
    from ..judging.bom import compare_bom
    from ..reading.bom_file import Bom, Layout, read_bom
    from ..reading.loading import load_file
    from ..reports.assess_text import print_refusals
    from ..reports.bom_text import print_bom
    from ..reports.console import console

    page = console()
    loaded = load_file(options.file, parts=options.parts)
    if loaded.spec is None:
        print_refusals(str(options.file), loaded.refusals, page)
        return NOT_ASSESSED
    if not loaded.spec.references:
        problem = f"{options.file} names no reference designators"
        hint = "write `ref: C3, C5-C8` into the section of a part"
        return refused(f"{problem}: {hint}")
    columns = {name: getattr(options, name) for name in COLUMNS}
    delimiter = {"tab": "\t", "\\t": "\t"}.get(options.delimiter, options.delimiter)
    bom = read_bom(options.table, Layout(delimiter, options.encoding, columns))
    if not isinstance(bom, Bom):
        print_refusals(str(options.table), (bom,), page)
        return NOT_ASSESSED
    found = compare_bom(loaded.spec, bom)
    status = HELD if found.findings else RELEASED
    if options.report == "text" and options.output is None:
        print_bom(found, page)
        return status
    parts = Path(loaded.spec.parts.file) if loaded.spec.parts else None
    inputs = (options.file, options.table, parts)
    text = _told(found, options)
    return print_or_write(text, options.output, options.overwrite, *inputs) or status


def _told(found: "BomComparison", options: argparse.Namespace) -> str:
    """The report of the kind asked for, as a text for a file."""
    import io

    from ..reports.bom_json import bom_json
    from ..reports.bom_markdown import bom_markdown
    from ..reports.bom_text import print_bom
    from ..reports.console import FILE_WIDTH, console

    if options.report == "text":
        text = io.StringIO()
        print_bom(found, console(text, FILE_WIDTH))
        return text.getvalue()
    return bom_json(found) if options.report == "json" else bom_markdown(found)
