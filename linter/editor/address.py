"""Addresses of documents: which of them are files of this machine."""

import os
from pathlib import Path
from typing import Literal
from urllib.parse import urlsplit
from urllib.request import url2pathname

from ..judging.house import NAME as HOUSE
from ..reading.parts_file import NAME as PARTS
from ..reading.parts_file import SPEC_ENDING

Kind = Literal["spec", "parts", "house"]


def kind_of(uri: str) -> Kind | None:
    """What a document is, by its name; None for what is none of ours."""
    name = urlsplit(uri).path.rpartition("/")[2]
    kinds: dict[str, Kind] = {PARTS: "parts", HOUSE: "house"}
    return "spec" if name.endswith(SPEC_ENDING) else kinds.get(name)


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
