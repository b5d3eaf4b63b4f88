"""The spec file as models: what may stand in it, in which unit, and what silence means."""

from .amplifier import Amplifier
from .field import Field
from .walk import (
    FIELDS,
    entries,
    field_of,
    flatten,
    is_channel_path,
    keys_of,
    list_lengths,
    relative,
    stated_sections,
    usual_bounds,
)

__all__ = [
    "FIELDS",
    "Amplifier",
    "Field",
    "entries",
    "field_of",
    "flatten",
    "is_channel_path",
    "keys_of",
    "list_lengths",
    "relative",
    "stated_sections",
    "usual_bounds",
]
