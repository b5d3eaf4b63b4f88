"""How a field of the spec is declared: unit, meaning, usual range, default, as data.

The sections of the spec are pydantic models whose fields are declared with the
functions below, one field a line where it fits.  The glossary, the JSON Schema, the
blank form, the prefix-slip finding and the assumptions of the engine all read the same
``Field`` objects.
"""

from dataclasses import dataclass
from typing import Any, Literal

from pydantic import BaseModel, ConfigDict, GetCoreSchemaHandler
from pydantic.fields import FieldInfo
from pydantic_core import CoreSchema, PydanticUndefined

from ..check import COMMON_PRACTICE, Assumption, Source, derivation
from .accept import schema_of
from .usual import middle

Kind = Literal[
    "quantity", "count", "word", "text", "flag", "list", "section", "sections", "named sections"
]
NotFitted = Literal["none"]


@dataclass(frozen=True, slots=True)
class Field:
    """What is known of one field.

    unit: unit that the field is shown in; decides the dimension.  ``degC`` is a
        temperature, ``K`` a difference; ``%`` a share; ``V/V`` a gain; ``dB`` a level.
    usual: ``low .. high`` as text with units; outside it the program asks whether a
        prefix slipped.  ``0 or low .. high`` allows zero beside it.
    possible: range beyond which a value is refused, where physics or a standard sets one;
        else that of the unit, else a thousand million times beyond the usual range.
    usual_high: the usual range of the upper end, where it has one of its own.
    given: how data sheets and designers state it: line, typ, max, tol, range, value.
    concerns: designs for which it matters, as a reader would say it.
    default: what silence means, if anything.
    example: text that would be accepted.
    model: the pydantic model of a section.
    """

    kind: Kind
    meaning: str
    unit: str = "1"
    usual: str = ""
    usual_high: str = ""
    given: str = "value"
    concerns: str = "all"
    words: tuple[str, ...] = ()
    default: Assumption | None = None
    example: str = ""
    zero: bool = False
    can_be_none: bool = False
    required: bool = False
    model: type[BaseModel] | None = None
    possible: str = ""

    @property
    def expected(self) -> str:
        """What is usually stated here, in words."""
        return f"usually {self.usual}" if self.usual else "with its unit"

    def __get_pydantic_core_schema__(
        self, source: Any, handler: GetCoreSchemaHandler
    ) -> CoreSchema:
        """Lets pydantic accept what ``accept`` accepts for this field."""
        return schema_of(self, handler)


def declared(info: FieldInfo) -> Field:
    """The ``Field`` behind a pydantic field."""
    return next(item for item in info.metadata if isinstance(item, Field))


def spec_field(field: Field) -> Any:
    """A pydantic field that carries ``field``; optional unless the field is required."""
    info = FieldInfo(default=PydanticUndefined if field.required else None)
    info.metadata = [field]
    return info


class Section(BaseModel):
    """A section of the spec: read once, never changed, unknown keys refused."""

    model_config = ConfigDict(frozen=True, extra="forbid", defer_build=True)


# Defaults

SILENCE = Source("convention of the spec file: what is not mentioned", kind="common practice")
BEST = derivation("bound: the best that can be")
WORST = derivation("bound: the worst that can be")


def absent(value: str | float = "none") -> Assumption:
    """Silence means that the thing is not in the product, or not done."""
    return Assumption(value, "absent", SILENCE)


def favourable(value: str | float, basis: Source = BEST) -> Assumption:
    """Silence is read in favour of the design."""
    return Assumption(value, "favourable", basis)


def adverse(value: str | float, basis: Source = WORST) -> Assumption:
    """Silence is read as the worst case."""
    return Assumption(value, "adverse", basis)


def usually(value: str | float, basis: Source = COMMON_PRACTICE) -> Assumption:
    """Silence is read as what the trade usually does; it may err either way."""
    return Assumption(value, "neutral", basis)


# Fields


def quantity(
    unit: str,
    meaning: str,
    usual: str = "",
    *,
    usual_high: str = "",
    given: str = "value",
    concerns: str = "all",
    default: Assumption | None = None,
    example: str = "",
    possible: str = "",
) -> Any:
    """A number with a unit (``1``: a bare number that need not be whole)."""
    return spec_field(
        Field(
            "quantity",
            meaning,
            unit,
            usual,
            usual_high,
            given,
            concerns,
            default=default,
            example=example or middle(usual),
            zero=usual.startswith("0 "),
            possible=possible,
        )
    )


def count(
    meaning: str,
    usual: str,
    *,
    concerns: str = "all",
    default: Assumption | None = None,
    example: str = "2",
    required: bool = False,
    possible: str = "",
) -> Any:
    """A whole number without a unit."""
    return spec_field(
        Field(
            "count",
            meaning,
            usual=usual,
            given="count",
            concerns=concerns,
            default=default,
            example=example,
            zero=usual.startswith("0 "),
            required=required,
            possible=possible,
        )
    )


def word(
    words: tuple[str, ...],
    meaning: str,
    *,
    concerns: str = "all",
    default: Assumption | None = None,
) -> Any:
    """One of the given words."""
    return spec_field(
        Field(
            "word",
            meaning,
            "word",
            given="word",
            concerns=concerns,
            words=words,
            default=default,
            example=words[0],
        )
    )


def flag(meaning: str, *, concerns: str = "all", default: Assumption | None = None) -> Any:
    """The word yes or the word no."""
    return spec_field(
        Field(
            "flag",
            meaning,
            "word",
            given="word",
            concerns=concerns,
            words=("yes", "no"),
            default=default,
            example="yes",
        )
    )


def text(meaning: str, *, example: str, concerns: str = "all", required: bool = False) -> Any:
    """Free text."""
    return spec_field(
        Field(
            "text",
            meaning,
            "word",
            given="text",
            concerns=concerns,
            example=example,
            required=required,
        )
    )


def listed(
    meaning: str, *, example: str, words: tuple[str, ...] = (), concerns: str = "all"
) -> Any:
    """A list of words, or of texts where no words are given."""
    return spec_field(
        Field(
            "list",
            meaning,
            "word",
            given="list" if words else "text",
            concerns=concerns,
            words=words,
            example=example,
        )
    )


def section(
    model: type[BaseModel],
    *,
    can_be_none: bool = False,
    meaning: str = "",
    concerns: str = "all",
    default: Assumption | None = None,
    kind: Kind = "section",
) -> Any:
    """A section; without a meaning of its own, the first line of the model's docstring.

    kind: ``sections`` for a list of them, ``named sections`` for a mapping from names.
    """
    return spec_field(
        Field(
            kind,
            meaning or (model.__doc__ or "").split("\n", 1)[0],
            "word",
            given="section",
            concerns=concerns,
            default=default,
            can_be_none=can_be_none,
            model=model,
        )
    )
