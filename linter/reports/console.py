"""The console that every report is printed on: plain text is plain text.

Neither markup nor emoji codes are read, so that text of a spec shows as it is written.
"""

import sys
from typing import TextIO

from rich.console import Console


def console(stream: TextIO | None = None, width: int | None = None) -> Console:
    """A console on a stream, standard output if none is named."""
    return Console(
        file=stream or sys.stdout, width=width, highlight=False, markup=False, emoji=False
    )
