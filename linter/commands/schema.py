"""``ampreview schema``: a JSON Schema of the spec file, for editors."""

import argparse
from pathlib import Path

from ..commands import print_or_write


def arguments(parser: argparse.ArgumentParser) -> None:
    """What the command takes."""
    parser.add_argument("-o", "--output", type=Path, help="where to write it (default: print it)")
    parser.add_argument("--overwrite", action="store_true", help="replace a file that is there")


def run(options: argparse.Namespace) -> int:
    """Print the schema, or write it to a file."""
    import json

    from ..asking.json_schema import json_schema
    from ..declare import load_schema

    text = json.dumps(json_schema(load_schema()), indent=2, ensure_ascii=False) + "\n"
    return print_or_write(text, options.output, options.overwrite)
