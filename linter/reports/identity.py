"""What a signed report names: the exact texts and the exact rules that it rests on.

Hashes are SHA-256 in hexadecimal.  That of a spec is over the file's text in UTF-8, so
it equals the one of the file itself unless that begins with a byte order mark.  That of
a rules package is over the names and texts of its Python files, line ends as LF.
"""

import hashlib
import importlib.resources
from collections.abc import Iterator
from functools import cache
from importlib.resources.abc import Traversable

PROGRAM = "ampreview"


def program_version() -> str:
    """The version of this program as installed."""
    from importlib.metadata import PackageNotFoundError, version  # slow to import

    try:
        return version(PROGRAM)
    except PackageNotFoundError:
        return "not installed"


def text_hash(text: str) -> str:
    """SHA-256 of a text in UTF-8.

    >>> text_hash("abc")[:16]
    'ba7816bf8f01cfea'
    """
    return hashlib.sha256(text.encode("utf-8", "surrogatepass")).hexdigest()


@cache
def rules_hash(package: str) -> str:
    """SHA-256 over the rule files of a package: the version of the catalogue."""
    digest = hashlib.sha256()
    for name, content in sorted(_files(importlib.resources.files(package), "")):
        plain = content.replace(b"\r\n", b"\n")
        digest.update(f"{name}\0{len(plain)}\0".encode())
        digest.update(plain)
    return digest.hexdigest()


def _files(folder: Traversable, prefix: str) -> Iterator[tuple[str, bytes]]:
    for item in folder.iterdir():
        if item.is_dir() and item.name != "__pycache__":
            yield from _files(item, f"{prefix}{item.name}/")
        elif item.name.endswith(".py"):
            yield prefix + item.name, item.read_bytes()
