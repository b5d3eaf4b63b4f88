"""How a value of the spec is accepted: text to Value, word, flag, list or section.

Each refusal carries what is wrong, what was expected and an example, so that the
loader can print all three beside the place in the file.
"""

import re
from collections.abc import Callable, Mapping
from typing import TYPE_CHECKING, Any

from pydantic_core import CoreSchema, PydanticCustomError, core_schema

from ..quantities.quantity import QuantityError, Value, parse, show
from .usual import POSSIBLE, limits

if TYPE_CHECKING:
    from .field import Field

YES_NO = {"yes": "yes", "no": "no", "true": "yes", "false": "no"}
NAME_LENGTH = 60


def refusal(field: "Field", problem: str, expected: str, example: str = "") -> PydanticCustomError:
    """The error that a value behind ``field`` is refused with."""
    return PydanticCustomError(
        "count" if field.kind == "count" else "quantity" if field.kind == "quantity" else "entry",
        "{problem}; expected {expected}, for example {example}",
        {"problem": problem, "expected": expected, "example": example or field.example},
    )


def spelled(text: str) -> str:
    """A text without what the trade spells in several ways: capitals, gaps, dashes, Greek.

    >>> spelled("AWG 18"), spelled("Full-bridge"), spelled("θJA")
    ('awg18', 'fullbridge', 'thetaja')
    """
    plain = re.sub(r"[\s_-]+", "", text.casefold())
    return plain.replace("θ", "theta").replace("ψ", "psi")


def meant(field: "Field", data: Any) -> Any:
    """What a word or a size of the trade means here; anything else as it is."""
    if not isinstance(data, str) or data in field.words or not (field.called or field.words):
        return data
    known = {spelled(name): text for name, text in field.called.items()}
    known |= {spelled(name): name for name in field.words}
    return known.get(spelled(data), data)


def quantity(field: "Field") -> Callable[[Any], Value]:
    """Accepts a number with a unit; refuses what cannot be, such as a negative resistance."""
    signed = field.unit in ("degC", "dB")

    def accept(data: Any) -> Value:
        try:
            value = parse(meant(field, data), field.unit)
        except QuantityError as error:
            raise refusal(field, error.problem, error.expected, error.example) from None
        if not signed and value.lo <= 0:
            refuse_sign(field, value)
        refuse_impossible(field, value)
        return value

    return accept


def refuse_sign(field: "Field", value: Value) -> None:
    """Refuses a figure that is below zero, or zero where the usual range shows no zero."""
    if value.lo < 0:
        raise refusal(field, "the value reaches below zero", f"a magnitude, {field.expected}")
    if not field.zero:
        raise refusal(field, "zero is not possible here", f"more than zero, {field.expected}")


def refuse_impossible(field: "Field", value: Value) -> None:
    """Refuses what no slip of a prefix explains, so that no formula meets absurd numbers."""
    low, high = limits(field.usual, field.usual_high, field.possible, field.unit)
    if value.hi > high:
        raise refusal(field, "the value is larger than can be", _within(field, low, high))
    if value.lo < low and not (field.zero and value.lo == 0.0):
        raise refusal(field, "the value is smaller than can be", _within(field, low, high))


def _within(field: "Field", low: float, high: float) -> str:
    if field.possible or field.unit in POSSIBLE:
        return f"{show(low, field.unit)} .. {show(high, field.unit)}"
    return field.expected.replace("usually", "a value of the order of")


def count(field: "Field") -> Callable[[Any], Value]:
    """Accepts a whole number without unit and without tolerance."""
    expected = f"a whole number, {field.expected}"

    def accept(data: Any) -> Value:
        try:
            value = parse(data, field.unit)
        except QuantityError as error:
            raise refusal(field, error.problem, expected) from None
        if value.lo != value.hi or value.lo % 1:
            raise refusal(field, "this is counted, not measured", expected)
        if value.lo < 0 or (value.lo == 0 and not field.zero):
            raise refusal(field, "the count is too small", expected)
        refuse_impossible(field, value)
        return value

    return accept


def word(field: "Field") -> Callable[[Any], str]:
    """Accepts one of the field's words."""
    expected = "one of " + ", ".join(field.words)

    def accept(data: Any) -> str:
        if not isinstance(data, str):
            raise refusal(field, "this is not a word", expected)
        found = str(meant(field, data))
        if found not in field.words:
            raise refusal(field, f"'{data[:40]}' is not known here", expected)
        return found

    return accept


def flag(field: "Field") -> Callable[[Any], str]:
    """Accepts yes or no, as text; true and false say the same."""

    def accept(data: Any) -> str:
        answer = YES_NO.get(data) if isinstance(data, str) else None
        if answer is None:
            raise refusal(field, "this is neither yes nor no", "yes or no")
        return answer

    return accept


def text(field: "Field") -> Callable[[Any], str]:
    """Accepts any text that is not empty."""

    def accept(data: Any) -> str:
        if not isinstance(data, str) or not data.strip():
            raise refusal(field, "there is no text", "text")
        return data

    return accept


def listed(field: "Field") -> Callable[[Any], tuple[str, ...]]:
    """Accepts a list of words, or of texts where the field names no words; one may stand alone."""
    member = word(field) if field.words else text(field)

    def accept(data: Any) -> tuple[str, ...]:
        if isinstance(data, str) and data and "," not in data:
            return (member(data),)
        if not isinstance(data, (list, tuple)):
            raise refusal(field, "this is not a list", "a list in square brackets")
        return tuple(member(item) for item in data)

    return accept


def section(field: "Field", inside: CoreSchema) -> CoreSchema:
    """Accepts the keys of a section, or ``none`` where the section may be left out."""
    expected = "the keys of a section, indented below its name"
    if field.can_be_none:
        expected += ", or the word none if it is not in the product"

    def accept(data: Any, inner: core_schema.ValidatorFunctionWrapHandler) -> Any:
        if data == "none" and field.can_be_none:
            return "none"
        if not isinstance(data, Mapping):
            raise refusal(field, "this is not a section", expected)
        return inner(data)

    return core_schema.no_info_wrap_validator_function(accept, inside)


def sections(field: "Field", inside: CoreSchema) -> CoreSchema:
    """Accepts a list of sections."""

    def accept(data: Any) -> Any:
        if not isinstance(data, (list, tuple)):
            raise refusal(field, "this is not a list", "a list of sections, each after a dash")
        return data

    items = core_schema.tuple_variable_schema(section(field, inside))
    return core_schema.no_info_before_validator_function(accept, items)


def named_sections(field: "Field", inside: CoreSchema) -> CoreSchema:
    """Accepts sections under names of the reader's choice."""

    def accept(data: Any) -> Any:
        if not isinstance(data, Mapping):
            raise refusal(field, "this is not a section", "names, each with a section below it")
        for name in data:
            refuse_name(field, name)
        return data

    items = core_schema.dict_schema(core_schema.str_schema(), section(field, inside))
    return core_schema.no_info_before_validator_function(accept, items)


def refuse_name(field: "Field", name: Any) -> None:
    """Refuses a name that could not stand in a path, or that means the whole product."""
    expected = f"a name of letters, digits, - and _, at most {NAME_LENGTH}"
    if not isinstance(name, str) or not re.fullmatch(r"[\w-]+", name) or len(name) > NAME_LENGTH:
        raise refusal(field, "this cannot be a name", expected)
    if name == "product":
        raise refusal(field, "'product' means the whole product", expected)


PLAIN: Mapping[str, Callable[["Field"], Callable[[Any], Any]]] = {
    "quantity": quantity,
    "count": count,
    "word": word,
    "flag": flag,
    "text": text,
    "list": listed,
}
GROUPED: Mapping[str, Callable[["Field", CoreSchema], CoreSchema]] = {
    "section": section,
    "sections": sections,
    "named sections": named_sections,
}


def schema_of(field: "Field", inside: CoreSchema | None) -> CoreSchema:
    """What pydantic runs for ``field``; a key with nothing behind it is silent.

    inside: the same for the section that the field holds.
    """
    if inside is None:
        schema: CoreSchema = core_schema.no_info_plain_validator_function(PLAIN[field.kind](field))
    else:
        schema = GROUPED[field.kind](field, inside)
    return schema if field.required else core_schema.nullable_schema(schema)
