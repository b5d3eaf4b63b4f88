"""The spec file as models: what may stand in it, in which unit, and what silence means."""

from .amplifier import Amplifier
from .field import Field
from .walk import (
    FIELDS,
    field_of,
    field_path,
    is_channel_path,
    keys_of,
    local_path,
    subject_of,
    usual_bounds,
)

__all__ = [
    "FIELDS",
    "Amplifier",
    "Field",
    "field_of",
    "field_path",
    "is_channel_path",
    "keys_of",
    "local_path",
    "subject_of",
    "usual_bounds",
]
