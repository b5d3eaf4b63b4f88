"""Paths of the spec: every field by its path, and what one spec states at which path.

Fields of a channel stand under paths without ``channels.<name>.``, and items of a list
under ``[]``: ``filter.inductor.l``, ``output_stage.device.foster[].r``.
"""

import re
from collections.abc import Iterator, Mapping
from functools import cache
from types import MappingProxyType
from typing import Any

from pydantic import BaseModel

from ..quantity import Value
from . import usual
from .amplifier import Amplifier
from .channel import Channel
from .field import Field, declared

CHANNELS = "channels"
_CHANNEL = re.compile(rf"{CHANNELS}\.[^.]+\.")
_NUMBER = re.compile(r"\[\d+\]")


@cache
def _declared_by(model: type[BaseModel]) -> Mapping[str, Field]:
    """The fields of one model by their names."""
    return {name: declared(info) for name, info in model.model_fields.items()}


def _below(model: type[BaseModel], prefix: str) -> Iterator[tuple[str, Field]]:
    """Every field of a model and of the models inside it, with its path."""
    for name, field in _declared_by(model).items():
        path = prefix + name
        yield path, field
        if field.model is not None and field.kind != "named sections":
            yield from _below(field.model, f"{path}[]." if field.kind == "sections" else f"{path}.")


FIELDS: Mapping[str, Field] = MappingProxyType(
    dict([*_below(Amplifier, ""), *_below(Channel, "")])
)


def relative(path: str) -> str:
    """A path as ``FIELDS`` has it: without the channel's name, without item numbers."""
    return _NUMBER.sub("[]", _CHANNEL.sub("", path, count=1))


def field_of(path: str) -> Field:
    """The field at a path of a spec; ``KeyError`` where there is none."""
    return FIELDS[relative(path)]


def is_channel_path(path: str) -> bool:
    """Whether a path belongs to a channel, its name left out or not."""
    first = path.partition(".")[0].partition("[")[0]
    return bool(_CHANNEL.match(path)) or first in Channel.model_fields


def keys_of(path: str) -> tuple[str, ...]:
    """The keys that a section may hold; ``""`` is the whole file."""
    if not path:
        return tuple(Amplifier.model_fields)
    if re.fullmatch(rf"{CHANNELS}\.[^.]+", path):
        return tuple(Channel.model_fields)
    field = FIELDS.get(relative(path).removesuffix("[]"))
    if field is None or field.model is None or path == CHANNELS:
        return ()
    return tuple(field.model.model_fields)


def usual_bounds(field: Field, upper_end: bool = False) -> tuple[float, float] | None:
    """The usual range of a field in SI, or of the upper end of its range."""
    text = (field.usual_high or field.usual) if upper_end else field.usual
    return usual.bounds(text, field.unit) if text else None


def entries(spec: BaseModel, prefix: str = "") -> Iterator[tuple[str, Field, Any]]:
    """Every path that a spec mentions, with its field and what stands there.

    A section comes before what it holds; so do a list, and the mapping of the channels.
    """
    for name, field in _declared_by(type(spec)).items():
        item = getattr(spec, name)
        if item is None:
            continue
        path = prefix + name
        yield path, field, item
        if isinstance(item, BaseModel):
            yield from entries(item, f"{path}.")
        elif field.kind == "sections":
            for number, inner in enumerate(item):
                yield from entries(inner, f"{path}[{number}].")
        elif field.kind == "named sections":
            for key, inner in item.items():
                yield from entries(inner, f"{path}.{key}.")


def flatten(spec: Amplifier) -> Iterator[tuple[str, Value | str | tuple[str, ...]]]:
    """Every stated value of a spec with its path."""
    return ((path, item) for path, field, item in entries(spec) if field.model is None)


def stated_sections(spec: Amplifier) -> Iterator[tuple[str, str]]:
    """Every section that a spec mentions: ``fitted`` with its path, or ``none``."""
    for path, field, item in entries(spec):
        if field.kind == "section":
            yield path, "none" if item == "none" else "fitted"


def list_lengths(spec: Amplifier) -> Iterator[tuple[str, int]]:
    """Every list of sections that a spec holds, with the number of its items."""
    return ((path, len(item)) for path, field, item in entries(spec) if field.kind == "sections")
