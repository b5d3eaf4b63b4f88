"""How a field of the spec is declared: unit, meaning, usual range, default, as data.

The sections of the spec are pydantic models whose fields are declared with the
functions below.  The glossary, the JSON Schema, the blank form, the prefix-slip
finding and the assumptions of the engine all read the same ``Field`` objects.
"""

from dataclasses import dataclass
from typing import Any, Literal

from pydantic.fields import FieldInfo
from pydantic_core import PydanticUndefined

from ..check import Assumption

Kind = Literal["quantity", "count", "word", "text", "flag", "list", "section", "sections"]


@dataclass(frozen=True, slots=True)
class Field:
    """What is known of one field.

    unit: unit that the field is shown in; decides the dimension.  ``degC`` is a
        temperature, ``K`` a difference; ``%`` a share; ``V/V`` a gain; ``dB`` a level.
    usual: ``low .. high`` as text with units; outside it the program asks whether a
        prefix slipped.  ``0 or low .. high`` allows zero beside it.
    given: how data sheets and designers state it: line, typ, max, tol, range, value.
    concerns: designs for which it matters, as a reader would say it.
    default: what silence means, if anything.
    example: text that would be accepted.
    """

    kind: Kind
    meaning: str
    unit: str = "1"
    usual: str = ""
    given: str = "value"
    concerns: str = "all"
    words: tuple[str, ...] = ()
    default: Assumption | None = None
    example: str = ""
    zero: bool = False
    can_be_none: bool = False
    required: bool = False


def declared(info: FieldInfo) -> Field:
    """The ``Field`` behind a pydantic field."""
    return next(item for item in info.metadata if isinstance(item, Field))


def spec_field(field: Field) -> Any:
    """A pydantic field that carries ``field``; optional unless the field is required."""
    info = FieldInfo(default=PydanticUndefined if field.required else None)
    info.metadata = [field]
    return info
