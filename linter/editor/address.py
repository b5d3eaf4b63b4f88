"""Addresses of documents: which of them are files of this machine."""

import os
from pathlib import Path
from urllib.parse import urlsplit
from urllib.request import url2pathname

from ..reading.parts_file import SPEC_ENDING


def is_spec(uri: str) -> bool:
    """Whether a document is called like a spec."""
    return urlsplit(uri).path.endswith(SPEC_ENDING)


def path_of(uri: str) -> Path | None:
    """The file that an address names; None for what is no file of this machine.

    >>> path_of("untitled:x.amp.yaml"), path_of("file://elsewhere/x.amp.yaml")
    (None, None)
    """
    parts = urlsplit(uri)
    if parts.scheme != "file" or parts.netloc not in ("", "localhost"):
        return None
    path = url2pathname(parts.path)
    return None if "\0" in path or path.startswith(("//", "\\\\")) else Path(path)


def address_of(file: str) -> str:
    """The address of a file."""
    return Path(os.path.abspath(file)).as_uri()
