"""The spec files of a folder and all below it."""

import os
from collections.abc import Iterable, Iterator
from pathlib import Path

from .parts_file import SPEC_ENDING


def spec_files(paths: Iterable[Path]) -> tuple[Path, ...]:
    """The files named, and in place of each folder its spec files; none twice."""
    found = (item for path in paths for item in (_below(path) if path.is_dir() else [path]))
    return tuple(dict.fromkeys(found))


def _below(folder: Path) -> Iterator[Path]:
    """The spec files below a folder in the order of their names; hidden folders are left out."""
    for above, folders, files in os.walk(folder):
        folders[:] = sorted(name for name in folders if not name.startswith("."))
        names = (name for name in sorted(files) if not name.startswith("."))
        yield from (Path(above) / name for name in names if name.endswith(SPEC_ENDING))
