"""Paths of the spec: every field by its path.

Fields of a channel stand under paths without ``channels.<name>.``, and items of a list
under ``[]``: ``filter.inductor.l``, ``output_stage.device.foster[].r``.
"""

import re
from collections.abc import Iterator, Mapping
from types import MappingProxyType

from pydantic import BaseModel

from . import usual
from .amplifier import Amplifier
from .channel import Channel
from .field import Field, declared

CHANNELS = "channels"
_CHANNEL = re.compile(rf"{CHANNELS}\.[^.]+\.")
_NUMBER = re.compile(r"\[\d+\]")


def _below(model: type[BaseModel], prefix: str) -> Iterator[tuple[str, Field]]:
    """Every field of a model and of the models inside it, with its path."""
    for name, info in model.model_fields.items():
        path, field = prefix + name, declared(info)
        yield path, field
        if field.model is not None and field.kind != "named sections":
            yield from _below(field.model, f"{path}[]." if field.kind == "sections" else f"{path}.")


FIELDS: Mapping[str, Field] = MappingProxyType(dict([*_below(Amplifier, ""), *_below(Channel, "")]))


def field_path(path: str) -> str:
    """A path as ``FIELDS`` has it: without the channel's name, without item numbers.

    >>> field_path("channels.left.output_stage.device.foster[0].r")
    'output_stage.device.foster[].r'
    """
    return _NUMBER.sub("[]", _CHANNEL.sub("", path, count=1))


def local_path(path: str) -> str:
    """A path as seen from its channel.

    >>> local_path("channels.left.filter.inductor.l")
    'filter.inductor.l'
    """
    return _CHANNEL.sub("", path, count=1)


def subject_of(path: str) -> str:
    """The channel that a path of a spec belongs to, else ``product``.

    >>> subject_of("channels.left.filter.inductor.l"), subject_of("supply.v_rail")
    ('left', 'product')
    """
    return path.split(".")[1] if _CHANNEL.match(path) else "product"


def field_of(path: str) -> Field:
    """The field at a path of a spec; ``KeyError`` where there is none."""
    return FIELDS[field_path(path)]


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
    field = FIELDS.get(field_path(path).removesuffix("[]"))
    if field is None or field.model is None or path == CHANNELS:
        return ()
    return tuple(field.model.model_fields)


def usual_bounds(field: Field, upper_end: bool = False) -> tuple[float, float] | None:
    """The usual range of a field in SI, or of the upper end of its range."""
    text = (field.usual_high or field.usual) if upper_end else field.usual
    return usual.bounds(text, field.unit) if text else None
