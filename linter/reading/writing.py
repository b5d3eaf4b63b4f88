"""Writes a text file whole or not at all: the only place where the program writes a file.

Never over another one unless told to, never over what was read, and only to a plain file: a
link, a pipe and the like are refused.
"""

import os
import re
import stat
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import TextIO

_KEPT = re.compile(
    r"(?i)(con|prn|aux|nul|conin\$|conout\$|(com|lpt)[0-9\u00b9\u00b2\u00b3])[ .]*([.:].*)?"
)


class WritingError(Exception):
    """A file that was not written, and why."""


def write_text(path: Path, text: str, overwrite: bool = False, *inputs: Path | None) -> None:
    """Write a text in UTF-8; line ends stay as they are in it.

    inputs: the files that were read.
    """
    with written_as_it_comes(path, overwrite, *inputs) as stream:
        stream.write(text)


@contextmanager
def written_as_it_comes(
    path: Path, overwrite: bool = False, *inputs: Path | None
) -> Iterator[TextIO]:
    """A stream for a text that is written piece by piece.

    It goes to a new file beside the target, which then takes its place in one step, so that a
    reader never meets half a file.  The permissions of a file that is replaced are kept.
    inputs: the files that were read.
    """
    refuse_target(path, overwrite, *inputs)
    try:
        with _swapped_in(path.parent.resolve() / path.name) as stream:
            yield stream
    except OSError as error:
        raise _failed(path, error) from None


def refuse_target(path: Path, overwrite: bool, *inputs: Path | None) -> None:
    """Refuse what must not be written to; a long review need not be waited for to know."""
    if os.name == "nt" and kept_by_windows(path.name):
        raise WritingError(f"{path} is a name that Windows keeps for itself")
    try:
        mode = path.lstat().st_mode
    except FileNotFoundError:
        return
    except (OSError, ValueError) as error:
        raise _failed(path, error) from None
    if any(given is not None and _same(path, given) for given in inputs):
        raise WritingError(f"{path} is read by this command and would be lost")
    if stat.S_ISDIR(mode):
        raise WritingError(f"{path} is a folder")
    if stat.S_ISLNK(mode):
        raise WritingError(f"{path} is a link; name the file itself")
    if not stat.S_ISREG(mode):
        raise WritingError(f"{path} is a pipe or the like, no file")
    if not overwrite:
        raise WritingError(f"{path} exists already; --overwrite replaces it")


def kept_by_windows(name: str) -> bool:
    """Whether Windows keeps a name for itself, in whatever folder and with whatever ending.

    >>> kept_by_windows("nul.csv"), kept_by_windows("COM1"), kept_by_windows("console.csv")
    (True, True, False)
    """
    return _KEPT.fullmatch(name) is not None


def _same(path: Path, other: Path) -> bool:
    try:
        return path.samefile(other)
    except OSError:
        return False


def _failed(path: Path, error: OSError | ValueError) -> WritingError:
    reason = getattr(error, "strerror", None) or "not a file name"
    return WritingError(f"{path} cannot be written: {reason}")


@contextmanager
def _swapped_in(target: Path) -> Iterator[TextIO]:
    with (
        taking_its_place(target) as fresh,
        fresh.open("w", encoding="utf-8", newline="") as stream,
    ):
        yield stream
        stream.flush()
        os.fsync(stream.fileno())


@contextmanager
def taking_its_place(target: Path) -> Iterator[Path]:
    """A new file beside a target, which takes its place in one step if nothing fails meanwhile."""
    handle, name = tempfile.mkstemp(prefix=f".{target.name}.", dir=target.parent)
    os.close(handle)
    fresh = Path(name)
    try:
        yield fresh
        fresh.chmod(target.lstat().st_mode & 0o777 if target.exists() else 0o666 & ~_umask())
        fresh.replace(target)
    except BaseException:
        fresh.unlink(missing_ok=True)
        raise


def _umask() -> int:
    """The mask of the process; it can only be read by setting it."""
    mask = os.umask(0)
    os.umask(mask)
    return mask


def nowhere() -> TextIO:
    """A stream for what nobody reads."""
    return open(os.devnull, "w", encoding="utf-8")
