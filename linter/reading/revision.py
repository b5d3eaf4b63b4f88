"""A spec out of the history of a git repository: ``HEAD:boards/main.amp.yaml``.

Git is run with a fixed list of arguments, without a shell, and only to print one file.  The
settings of a repository from outside may name programs; none of them is run: no pager, no hook,
no watcher, no conversion, and nothing is fetched that the repository lacks.
"""

import os
import re
import shutil
import subprocess
from pathlib import Path, PurePosixPath

from ..declare import load_schema
from .parts_file import NAME, PartsFile, PartsSource, parts_of
from .plain_text import MAX_BYTES
from .refusal import Refusal

HARMLESS = (
    "--no-pager", "--no-replace-objects", "-c", "core.fsmonitor=false",
    "-c", f"core.hooksPath={os.devnull}", "-c", "protocol.allow=never",
)  # fmt: skip
ALONE = {
    "LC_ALL": "C",
    "GIT_NO_LAZY_FETCH": "1",
    "GIT_ALLOW_PROTOCOL": "none",
    "GIT_OPTIONAL_LOCKS": "0",
    "GIT_TERMINAL_PROMPT": "0",
}

NOT_THERE = ("alid object name", "does not exist in", "not in '")

_REVISION = re.compile(r"(?![A-Za-z]:[\\/])(?P<revision>[^-:\s\0][^:\s\0]*):(?P<path>[^\0]+)")


class RevisionError(Exception):
    """A revision that cannot be read; the text says why."""


def split(text: str) -> tuple[str, str] | None:
    """Revision and path of ``REVISION:path``, or None for the name of a file.

    A file of exactly that name is taken as a file.

    >>> split("HEAD~2:main.amp.yaml")
    ('HEAD~2', 'main.amp.yaml')
    >>> split("main.amp.yaml") is None, split("C:/main.amp.yaml") is None
    (True, True)
    """
    found = _REVISION.fullmatch(text)
    if found is None or Path(text).exists():
        return None
    return found["revision"], found["path"]


def content_at(revision: str, path: str) -> bytes:
    """The file as it is in a revision; at most one byte more than a spec may have.

    The path counts from the top of the repository, or from this folder after ``./``.
    """
    git = shutil.which("git")
    if git is None or Path(git).parent.resolve() == Path.cwd():
        raise RevisionError("git is not installed, so no revision can be read")
    try:
        with subprocess.Popen(
            [git, *HARMLESS, "cat-file", "blob", f"{revision}:{path}"],
            stdin=subprocess.DEVNULL,
            stdout=subprocess.PIPE,
            stderr=subprocess.PIPE,
            env=os.environ | ALONE,
        ) as process:
            return _read(process, revision, path)
    except (OSError, ValueError) as error:
        raise RevisionError(f"git cannot be run: {error}") from None


def parts_at(revision: str, path: str) -> PartsSource:
    """The source of the parts file that a spec had in a revision: the nearest above it there."""

    def source() -> PartsFile | tuple[Refusal, ...] | None:
        folder = PurePosixPath(path).parent
        for above in (folder, *folder.parents):
            name = f"{'./' if path.startswith('./') else ''}{above / NAME}"
            try:
                content = content_at(revision, name)
            except RevisionError:
                continue
            return parts_of(content, f"{revision}:{name}", load_schema())
        return None

    return source


def top_folder(start: Path) -> Path | None:
    """The top folder of the repository that a folder is in."""
    whole = Path(os.path.normpath(start.absolute()))
    for folder in (whole, *whole.parents):
        if (folder / ".git").exists():
            return folder
    return None


def _read(process: "subprocess.Popen[bytes]", revision: str, path: str) -> bytes:
    assert process.stdout is not None
    assert process.stderr is not None
    content = process.stdout.read(MAX_BYTES + 1)
    if len(content) > MAX_BYTES:
        process.kill()
        return content
    said = process.stderr.read(4_000).decode("utf-8", "replace")
    if process.wait() == 0:
        return content
    raise RevisionError(_reason(said, revision, path))


def _reason(said: str, revision: str, path: str) -> str:
    """What git said, in one line, with what to do about it."""
    if "not a git repository" in said:
        return f"{revision}:{path} asks for a revision, but this folder is in no git repository"
    if any(words in said for words in NOT_THERE):
        return (
            f"git knows no {revision}:{path}: no such revision, or no such file in it; paths"
            f" count from the top of the repository, or from here as {revision}:./{path}"
        )
    line = " ".join(said.replace("fatal: ", "").split())
    return f"git cannot show {revision}:{path}: {line}"
