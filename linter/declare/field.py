"""How a field of the spec is declared: unit, meaning, usual range, default, as data.

The sections of the spec are classes whose fields are declared with the functions below, one
field a line where it fits; the core of pydantic validates data against them.  The glossary, the
JSON Schema, the blank form, the prefix-slip finding and the assumptions of the engine all read
the same ``Field`` objects.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from types import MappingProxyType
from typing import ClassVar, Literal, NoReturn, Self

from pydantic_core import CoreSchema, SchemaValidator, core_schema

from ..check import COMMON_PRACTICE, Assumption, Source, derivation
from .accept import schema_of
from .usual import bounds

Kind = Literal[
    "quantity", "count", "word", "text", "flag", "list", "section", "sections", "named sections"
]
Promise = Literal["", "higher", "lower", "wider", "stated", "limit"]
Nature = Literal["", "part", "setting", "topology", "use", "claim", "outcome"]


@dataclass(frozen=True, slots=True, eq=False)
class Designs:
    """The designs that a field concerns.

    text: as a reader would say it.  when: alternatives, each of word-valued paths and the
    words of which each must have one; the path ``channels`` has the word one or several.
    """

    text: str
    when: tuple[Mapping[str, tuple[str, ...]], ...]


@dataclass(frozen=True, slots=True)
class Field:
    """What is known of one field.

    unit: unit that the field is shown in; decides the dimension.  ``degC`` is a
        temperature, ``K`` a difference; ``%`` a share; ``V/V`` a gain; ``dB`` a level.
    usual: ``low .. high`` as text with units; outside it the program asks whether a
        prefix slipped.  ``0 or low .. high`` allows zero beside it.
    possible: range beyond which a value is refused, where physics or a standard sets one;
        else that of the unit, else a thousand million times beyond the usual range.
    also: ranges of other kinds of design, with ``or`` between them (common practice, no
        source; the kind stands beside each): no slip, but not what silence may be.
    also_in: the designs that these ranges are kept for, where a spec tells them.
    usual_high: the usual range of the upper end, where it has one of its own.
    given: how data sheets and designers state it: line, typ, max, tol, range, value.
    concerns: designs for which it matters; None: all of them.
    part: the part that a section describes, in the words of those who make or sell it.
    promise: where the paperwork promises the buyer something with it, which way it promises
        more: ``higher`` (of words the later one), ``lower``, a ``wider`` range, or that it
        is ``stated`` at all; or a ``limit`` of another promise: higher promises more, and
        silence most of all.
    beats_sum: where a figure that is stated replaces what a sum gives: an estimate of it acquits
        nobody from prototype on.
    nature: what kind of thing it is, where that differs from its section's; see ``Section``.
    called: what else the trade writes, with what it means here (``2 oz``: ``70 um``).
    asked_first: name under which a blank spec asks for this word ahead of the others.
    default: what silence means, if anything.
    example: text that would be accepted.
    model: the class of a section.
    """

    kind: Kind
    meaning: str
    unit: str = "1"
    usual: str = ""
    usual_high: str = ""
    given: str = "value"
    concerns: Designs | None = None
    words: tuple[str, ...] = ()
    default: Assumption | None = None
    example: str = ""
    zero: bool = False
    can_be_none: bool = False
    required: bool = False
    model: "type[Section] | None" = None
    possible: str = ""
    also: str = ""
    also_in: Designs | None = None
    part: str = ""
    promise: Promise = ""
    asked_first: str = ""
    beats_sum: bool = False
    nature: Nature = ""
    called: Mapping[str, str] = field(default_factory=dict, compare=False)

    @property
    def expected(self) -> str:
        """What is usually stated here, in words."""
        return f"usually {self.usual}" if self.usual else "with its unit"


@dataclass(frozen=True, slots=True)
class Borne:
    """What a part on a board bears: a value, and ratings by their unit, as names of fields."""

    value: str
    ratings: Mapping[str, str] = field(default_factory=dict)


class Section:
    """A section of the spec: read once, never changed, unknown keys refused.

    fields: what may stand in it, by name, as its class declares it.
    voluntary: what is not stated is not claimed, so that nothing is asked for.
    guards: it guards the product, so that taking it away is a loss.
    nature: what kind of thing its fields are, and so how they can be changed: a value or
        rating of a ``part`` that is bought or made, a ``setting`` that is adjusted, the
        ``topology``, the ``use`` that the product is made for, a ``claim``, or an ``outcome``:
        what is measured, or follows from all the others.  A use and an outcome are no
        designer's choice; a claim can only be lowered.
    trade_words: of a root model, words of the trade with the fields that they lead to.
    at_concept: of a root model, the fields that a concept is asked for.
    borne: of a root model, what parts bear by the class letter of their designator, or where
        a field is named with it, by that field.
    """

    __slots__ = (
        "__dict__",
        "__pydantic_extra__",
        "__pydantic_fields_set__",
        "__pydantic_private__",
    )

    fields: ClassVar[Mapping[str, Field]] = MappingProxyType({})
    _validator: ClassVar[SchemaValidator]
    voluntary: ClassVar[bool] = False
    guards: ClassVar[bool] = False
    nature: ClassVar[Nature] = "part"
    trade_words: ClassVar[Mapping[str, tuple[str, ...]]] = {}
    at_concept: ClassVar[frozenset[str]] = frozenset()
    borne: ClassVar[Mapping[str, Borne]] = {}

    def __init_subclass__(cls) -> None:
        own = {name: item for name, item in vars(cls).items() if isinstance(item, Field)}
        cls.fields = {**cls.fields, **own}

    def __setattr__(self, name: str, value: object) -> NoReturn:
        raise AttributeError(f"{name}: a section is read once and never changed")

    @classmethod
    def model_validate(cls, data: object) -> Self:
        """The section that plain data state; pydantic's ``ValidationError`` where they cannot."""
        if "_validator" not in vars(cls):
            cls._validator = SchemaValidator(core_schema_of(cls))
        found: Self = cls._validator.validate_python(data)
        return found


def core_schema_of(section: type[Section]) -> CoreSchema:
    """What the core of pydantic runs for a section; a field that is not required may be silent."""
    fields = {}
    for name, item in section.fields.items():
        inside = schema_of(item, core_schema_of(item.model) if item.model else None)
        if not item.required:
            inside = core_schema.with_default_schema(inside, default=None)
        fields[name] = core_schema.model_field(inside)
    inner = core_schema.model_fields_schema(fields, extra_behavior="forbid")
    return core_schema.model_schema(section, inner)


def usual_bounds(field: Field, upper_end: bool = False) -> tuple[float, float] | None:
    """The usual range of a field in SI, or of the upper end of its range."""
    text = (field.usual_high or field.usual) if upper_end else field.usual
    return bounds(text, field.unit) if text else None


def is_of_another_kind(field: Field, low: float, high: float) -> bool:
    """Whether a value from ``low`` to ``high`` is usual in another kind of design."""
    others = field.also.split(" or ") if field.also else []
    ranges = [bounds(text, field.unit) for text in others]
    return any(least <= high and low <= most for least, most in ranges)


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
