"""Where the part that a section names stands in the parts file."""

import re

from ..declare import Schema
from ..declare.parts import PART_KEY
from ..finding import Place
from ..reading.parts_file import PartsFile
from .completion import names_for
from .spot import Spot

_VALUE = re.compile(r""""(?P<double>[^"]*)"|'(?P<single>[^']*)'|(?P<plain>[^,{}\[\]#]+)""")


def part_place(schema: Schema, line: str, spot: Spot, parts: PartsFile) -> Place | None:
    """The entry of the part whose name is pointed at; None where there is none."""
    section, _, last = spot.path.rpartition(".")
    found = _VALUE.match(line, spot.start)
    if last != PART_KEY or not section or found is None:
        return None
    wanted = next(x for x in found.groups() if x is not None).strip()
    kinds = (kind for name, kind in names_for(schema, section, parts) if name == wanted)
    kind = next(kinds, None)
    return parts.document.key_places[f"{kind}.{wanted}"] if kind else None
