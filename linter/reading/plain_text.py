"""From the bytes of a file to text that is safe to parse, or refusals with places.

What is refused: more than a megabyte, anything but UTF-8, control characters, unusual
line ends (they would make line numbers ambiguous) and characters that turn the
direction of writing or are tags (they make a line read otherwise than it is parsed).
"""

import os
import re
import stat
from pathlib import Path

from ..finding import Place
from .refusal import Refusal

MAX_BYTES = 1_000_000
MAX_REPORTED = 5

_UNFIT = re.compile(
    "[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u061c\u200e\u200f\u2028\u2029\u202a-\u202e\u2066-\u2069"
    "\ud800-\udfff\ufeff\ufffe\uffff\U000e0000-\U000e007f]"
)
_BREAK = re.compile("\r\n|\r|\n")
_AS_UTF_8 = "text stored as UTF-8"


def decode(content: str | bytes, file: str) -> tuple[str, tuple[Refusal, ...]]:
    """The text of a file without byte order mark; empty text where it cannot be had."""
    if len(content) > MAX_BYTES:
        problem = f"the file is larger than {MAX_BYTES // 1000} kB"
        return "", (Refusal(Place(file, 1, 1), problem, "a spec of a few hundred lines"),)
    try:
        text = content.decode("utf-8") if isinstance(content, bytes) else content
    except UnicodeDecodeError as error:
        return "", (_not_utf_8(error.object, error.start, file),)
    text = text.removeprefix("\ufeff")
    return text, unfit_characters(text, file)


def unfit_characters(text: str, file: str) -> tuple[Refusal, ...]:
    """Refusals of the first few characters that have no business in a spec."""
    found = list(_UNFIT.finditer(text))
    refusals = [
        Refusal(
            place_of(text, match.start(), file),
            f"{describe(match.group())} in the text",
            "printable text, spaces and plain line ends",
        )
        for match in found[:MAX_REPORTED]
    ]
    if len(found) > MAX_REPORTED:
        place = place_of(text, found[MAX_REPORTED].start(), file)
        more = f"{len(found) - MAX_REPORTED} more such characters from here on"
        refusals.append(Refusal(place, more, "a text file"))
    return tuple(refusals)


def unfit(text: str) -> str | None:
    """The first unfit character of a value, or None."""
    match = _UNFIT.search(text)
    return match.group() if match else None


def describe(character: str) -> str:
    """An unprintable character by its number, as in ``character U+0000``."""
    return f"character U+{ord(character):04X}"


def lines_of(text: str) -> list[str]:
    """The lines of the text, broken where a YAML parser breaks them."""
    return _BREAK.split(text)


def place_of(text: str, index: int, file: str) -> Place:
    """Line and column, from 1, of the character at ``index``."""
    before = lines_of(text[:index])
    return Place(file, len(before), len(before[-1]) + 1)


def _not_utf_8(content: bytes, start: int, file: str) -> Refusal:
    """Say which byte is not UTF-8, and what it would be in the usual other encodings."""
    before = content[:start].decode("utf-8").removeprefix("\ufeff")
    place = place_of(before, len(before), file)
    if content.startswith((b"\xff\xfe", b"\xfe\xff")):
        return Refusal(place, "the file is stored as UTF-16", _AS_UTF_8)
    byte = content[start]
    known = {0xB1: "±", 0xB0: "°", 0xB5: "µ", 0xB2: "²", 0xB3: "³"}
    reading = f", {known[byte]} in Latin-1" if byte in known else ""
    return Refusal(place, f"byte 0x{byte:02X} is not UTF-8{reading}", _AS_UTF_8)


def content_of(path: str | Path, expected: str) -> bytes | Refusal:
    """The bytes of a file, one more than a spec may have at most, or why there are none.

    A pipe or the like may never end, and is not waited for.
    """
    try:
        with open(path, "rb", opener=_without_waiting) as stream:
            is_file = stat.S_ISREG(os.fstat(stream.fileno()).st_mode)
            content: bytes | None = stream.read(MAX_BYTES + 1) if is_file else None
            if content is not None:  # a file of the kernel may have nothing yet
                return content
            reason = "it is a pipe or the like, no file"
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or "not a file name"
    return Refusal(Place(str(path), 1, 1), f"the file cannot be opened: {reason}", expected)


def _without_waiting(path: str, flags: int) -> int:
    return os.open(path, flags | getattr(os, "O_NONBLOCK", 0) | getattr(os, "O_NOCTTY", 0))
