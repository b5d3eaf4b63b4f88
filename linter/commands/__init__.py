"""The commands of the program, one module each; only the one asked for is imported.

Each module has ``arguments(parser)``, which declares what the command takes, and
``run(options)``, which gives the exit status.
"""

import sys
from pathlib import Path

RELEASED, HELD, NOT_ASSESSED = 0, 1, 2


def print_or_write(text: str, target: Path | None, overwrite: bool) -> int:
    """Print a text, or write it to a file; gives the exit status."""
    from ..reading.writing import WritingError, write_text

    if target is None:
        sys.stdout.write(text)
        return RELEASED
    try:
        write_text(target, text, overwrite)
    except WritingError as error:
        print(f"ampreview: {error}", file=sys.stderr)
        return NOT_ASSESSED
    print(f"Written to {target}")
    return RELEASED
