"""The kinds of fields that a section may have, one function each."""

from collections.abc import Mapping
from types import MappingProxyType
from typing import Any

from ..check import Assumption
from .field import Designs, Field, Kind, Nature, Promise, Section
from .usual import MOST_COUNTED, middle

NOTHING: Mapping[str, str] = MappingProxyType({})


def quantity(
    unit: str,
    meaning: str,
    usual: str = "",
    *,
    usual_high: str = "",
    given: str = "value",
    concerns: Designs | None = None,
    default: Assumption | None = None,
    example: str = "",
    possible: str = "",
    also: str = "",
    also_in: Designs | None = None,
    promise: Promise = "",
    beats_sum: bool = False,
    nature: Nature = "",
    called: Mapping[str, str] = NOTHING,
) -> Any:
    """A number with a unit (``1``: a bare number that need not be whole)."""
    return Field(
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
        also=also,
        also_in=also_in,
        promise=promise,
        beats_sum=beats_sum,
        nature=nature,
        called=called,
    )


def count(
    meaning: str,
    usual: str,
    *,
    concerns: Designs | None = None,
    default: Assumption | None = None,
    example: str = "2",
    required: bool = False,
    possible: str = "",
    nature: Nature = "",
) -> Any:
    """A whole number without a unit."""
    return Field(
        "count",
        meaning,
        usual=usual,
        given="count",
        concerns=concerns,
        default=default,
        example=example,
        zero=usual.startswith("0 "),
        required=required,
        possible=possible or f"{0 if usual.startswith('0 ') else 1} .. {MOST_COUNTED}",
        nature=nature,
    )


def word(
    words: tuple[str, ...],
    meaning: str,
    *,
    concerns: Designs | None = None,
    default: Assumption | None = None,
    asked_first: str = "",
    promise: Promise = "",
    nature: Nature = "",
    called: Mapping[str, str] = NOTHING,
) -> Any:
    """One of the given words."""
    return Field(
        "word",
        meaning,
        "word",
        given="word",
        concerns=concerns,
        words=words,
        default=default,
        example=words[0],
        asked_first=asked_first,
        promise=promise,
        nature=nature,
        called=called,
    )


def flag(
    meaning: str,
    *,
    concerns: Designs | None = None,
    default: Assumption | None = None,
    promise: Promise = "",
    nature: Nature = "",
) -> Any:
    """The word yes or the word no."""
    return Field(
        "flag",
        meaning,
        "word",
        given="word",
        concerns=concerns,
        words=("yes", "no"),
        default=default,
        example="yes",
        promise=promise,
        nature=nature,
    )


def text(
    meaning: str,
    *,
    example: str,
    concerns: Designs | None = None,
    required: bool = False,
    promise: Promise = "",
    nature: Nature = "",
) -> Any:
    """Free text."""
    return Field(
        "text",
        meaning,
        "word",
        given="text",
        concerns=concerns,
        example=example,
        required=required,
        promise=promise,
        nature=nature,
    )


def listed(
    meaning: str,
    *,
    example: str,
    words: tuple[str, ...] = (),
    concerns: Designs | None = None,
    promise: Promise = "",
    nature: Nature = "",
    called: Mapping[str, str] = NOTHING,
) -> Any:
    """A list of words, or of texts where no words are given."""
    return Field(
        "list",
        meaning,
        "word",
        given="list" if words else "text",
        concerns=concerns,
        words=words,
        example=example,
        promise=promise,
        nature=nature,
        called=called,
    )


def section(
    model: type[Section],
    *,
    can_be_none: bool = False,
    meaning: str = "",
    concerns: Designs | None = None,
    default: Assumption | None = None,
    kind: Kind = "section",
    part: str = "",
) -> Any:
    """A section; without a meaning of its own, the first line of the model's docstring.

    kind: ``sections`` for a list of them, ``named sections`` for a mapping from names.
    """
    return Field(
        kind,
        meaning or (model.__doc__ or "").split("\n", 1)[0],
        "word",
        given="section",
        concerns=concerns,
        default=default,
        can_be_none=can_be_none,
        model=model,
        part=part,
    )
