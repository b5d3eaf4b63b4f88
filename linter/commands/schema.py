"""``ampreview schema``: a JSON Schema of the spec file, for editors."""

import argparse
import sys
from pathlib import Path

from ..commands import NOT_ASSESSED, RELEASED


def arguments(parser: argparse.ArgumentParser) -> None:
    """What the command takes."""
    parser.add_argument("-o", "--output", type=Path, help="where to write it (default: print it)")
    parser.add_argument("--overwrite", action="store_true", help="replace a file that is there")


def run(options: argparse.Namespace) -> int:
    """Print the schema, or write it to a file."""
    import json

    from ..asking.json_schema import json_schema
    from ..declare import load_schema
    from ..reading.writing import WritingError, write_text

    text = json.dumps(json_schema(load_schema()), indent=2, ensure_ascii=False) + "\n"
    if options.output is None:
        sys.stdout.write(text)
        return RELEASED
    try:
        write_text(options.output, text, options.overwrite)
    except WritingError as error:
        print(f"ampreview: {error}", file=sys.stderr)
        return NOT_ASSESSED
    print(f"Written to {options.output}")
    return RELEASED
