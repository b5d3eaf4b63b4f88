"""The commands of the program, one module each; only the one asked for is imported.

Each module has ``arguments(parser)``, which declares what the command takes, and
``run(options)``, which gives the exit status.
"""

import sys
from pathlib import Path

RELEASED, HELD, NOT_ASSESSED = 0, 1, 2


def print_or_write(text: str, target: Path | None, overwrite: bool, *inputs: Path | None) -> int:
    """Print a text, or write it to a file that is none of the inputs; gives the exit status."""
    if target is None:
        sys.stdout.write(text)
        return RELEASED
    from ..reading.writing import WritingError, write_text
    from ..reports.phrases import clean

    try:
        write_text(target, text, overwrite, *inputs)
    except WritingError as error:
        return refused(str(error))
    print(f"Written to {clean(str(target))}")
    return RELEASED


def refused(text: str) -> int:
    """Say on standard error why nothing is judged or written; gives the exit status."""
    from ..reports.phrases import clean

    print(f"ampreview: {clean(text)}", file=sys.stderr)
    return NOT_ASSESSED
