"""The console that every report is printed on: plain text is plain text.

Neither markup nor emoji codes are read, so that text of a spec shows as it is written.
Where the stream is not a terminal, lines end with their last word.
"""

import re
import sys
from typing import Any, TextIO

from rich.console import Console

FILE_WIDTH = 100
"""Of a text report that is written to a file."""
BLANKS = re.compile(r"[ \t]+(?=\n)")


class Trimmed:
    """A stream that leaves out the blanks before line ends."""

    def __init__(self, stream: TextIO) -> None:
        self.stream = stream

    def write(self, text: str) -> int:
        """Write a text that holds whole lines."""
        self.stream.write(BLANKS.sub("", text))
        return len(text)

    def __getattr__(self, name: str) -> Any:
        return getattr(self.stream, name)


def console(stream: TextIO | None = None, width: int | None = None) -> Console:
    """A console on a stream, standard output if none is named."""
    file: Any = stream or sys.stdout
    if not file.isatty():
        file = Trimmed(file)
    return Console(file=file, width=width, highlight=False, markup=False, emoji=False)
