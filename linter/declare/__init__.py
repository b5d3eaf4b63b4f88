"""How a spec is declared: fields and sections in words, and the schema that they make."""

from ..quantities.value import Value
from .accept import spelled
from .field import (
    Borne,
    Designs,
    Field,
    Nature,
    Section,
    absent,
    adverse,
    favourable,
    is_of_another_kind,
    usual_bounds,
    usually,
)
from .kinds import count, flag, listed, quantity, section, text, word
from .paths import (
    CHANNELS,
    PRODUCT,
    field_path,
    local_path,
    sections_above,
    subject_of,
    without_channel,
)
from .schema import Schema, load_schema

__all__ = [
    "CHANNELS",
    "PRODUCT",
    "Borne",
    "Designs",
    "Field",
    "Nature",
    "Schema",
    "Section",
    "Value",
    "absent",
    "adverse",
    "count",
    "favourable",
    "field_path",
    "flag",
    "is_of_another_kind",
    "listed",
    "load_schema",
    "local_path",
    "quantity",
    "section",
    "sections_above",
    "spelled",
    "subject_of",
    "text",
    "usual_bounds",
    "usually",
    "without_channel",
    "word",
]
