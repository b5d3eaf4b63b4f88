"""``ampreview schema``: a JSON Schema of a kind of file, for editors and for programs."""

import argparse
from pathlib import Path
from typing import Any

from ..commands import print_or_write

KINDS = ("spec", "parts", "house", "deviations", "measured", "report", "report-line")


def arguments(parser: argparse.ArgumentParser) -> None:
    """What the command takes."""
    parser.add_argument(
        "--of",
        choices=KINDS,
        default="spec",
        metavar="KIND",
        help=f"the kind of file: {', '.join(KINDS)} (default: spec); report and report-line are"
        " those of assess --report json and json-lines",
    )
    parser.add_argument("-o", "--output", type=Path, help="where to write it (default: print it)")
    parser.add_argument("--overwrite", action="store_true", help="replace a file that is there")


def run(options: argparse.Namespace) -> int:
    """Print the schema, or write it to a file."""
    import json

    from ..asking.json_schema import json_schema, list_schema, parts_schema
    from ..declare import load_schema
    from ..reading.format import DEVIATIONS_KEY, MEASURED_KEY

    schemas = {
        "spec": lambda: json_schema(load_schema()),
        "parts": lambda: parts_schema(load_schema()),
        "deviations": lambda: list_schema(load_schema(), DEVIATIONS_KEY, "deviations"),
        "measured": lambda: list_schema(load_schema(), MEASURED_KEY, "measured"),
    }
    made = schemas[options.of]() if options.of in schemas else _beside(options.of)
    text = json.dumps(made, indent=2, ensure_ascii=False) + "\n"
    return print_or_write(text, options.output, options.overwrite)


def _beside(kind: str) -> "dict[str, Any]":
    """The schema of a file that is no part of a spec; what reads such files is imported for it."""
    from ..asking.side_schemas import house_schema, line_schema, report_schema

    made = {"house": house_schema, "report": report_schema, "report-line": line_schema}
    return made[kind]()
