"""Writes a text file whole or not at all, and never over another one unless told to."""

import os
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import TextIO


class WritingError(Exception):
    """A file that was not written, and why."""


def write_text(path: Path, text: str, overwrite: bool = False) -> None:
    """Write a text in UTF-8; line ends stay as they are in it."""
    with written_as_it_comes(path, overwrite) as stream:
        stream.write(text)


@contextmanager
def written_as_it_comes(path: Path, overwrite: bool = False) -> Iterator[TextIO]:
    """A stream for a text that is written piece by piece.

    It goes to a new file beside the target, which then takes its place in one step, so that a
    reader never meets half a file.  A link is followed, the permissions of a file that is
    replaced are kept.
    """
    if path.exists() and not overwrite:
        raise WritingError(f"{path} exists already; --overwrite replaces it")
    if path.is_dir():
        raise WritingError(f"{path} is a folder")
    target = path.resolve()
    try:
        with _swapped_in(target) as stream:
            yield stream
    except OSError as error:
        raise WritingError(f"{path} cannot be written: {error.strerror or error}") from None


@contextmanager
def _swapped_in(target: Path) -> Iterator[TextIO]:
    handle, name = tempfile.mkstemp(prefix=f".{target.name}.", dir=target.parent)
    fresh = Path(name)
    try:
        with os.fdopen(handle, "w", encoding="utf-8", newline="") as stream:
            yield stream
            stream.flush()
            os.fsync(stream.fileno())
        fresh.chmod(target.stat().st_mode & 0o777 if target.exists() else 0o666 & ~_umask())
        fresh.replace(target)
    except BaseException:
        fresh.unlink(missing_ok=True)
        raise


def _umask() -> int:
    """The mask of the process; it can only be read by setting it."""
    mask = os.umask(0)
    os.umask(mask)
    return mask
