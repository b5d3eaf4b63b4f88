"""The schema: every field of a spec by its path, built once from the root model."""

import importlib
from collections.abc import Callable, Iterator, Mapping
from functools import cache
from types import MappingProxyType

from .field import Field, Nature, Section
from .paths import CHANNELS, field_path, is_below_channel


class Schema:
    """The fields of a spec, channel fields without the channel's name.

    root: the model of a whole file; channel: that of one of its named sections; fields:
    every field by its path; voluntary: the paths of what is claimed or not; guards: those of
    what guards the product; trade_words: words of the trade with the fields that they lead to;
    at_concept: the fields that a concept is asked for; borne: what parts with a reference
    designator state; title: what such files are, in words.
    """

    def __init__(self, root: type[Section], title: str) -> None:
        self.root = root
        self.title = title
        named = root.fields[CHANNELS].model
        assert named is not None, f"{CHANNELS} of the root model holds named sections"
        self.channel = named
        found = dict([*_below(root, ""), *_below(named, "")])
        self.fields: Mapping[str, Field] = MappingProxyType(found)
        self.trade_words = root.trade_words
        self.at_concept = root.at_concept
        self.borne = root.borne
        self.voluntary = frozenset(path for path in found if self._is_claim(path))
        self.guards = frozenset(path for path in found if self._is_guard(path))

    def __reduce__(self) -> tuple[Callable[..., "Schema"], tuple[type[Section], str]]:
        return schema_of, (self.root, self.title)

    def field_of(self, path: str) -> Field:
        """The field at a path of a spec; ``KeyError`` where there is none."""
        return self.fields[field_path(path)]

    def is_channel_path(self, path: str) -> bool:
        """Whether a path belongs to a channel, its name left out or not."""
        first = path.partition(".")[0].partition("[")[0]
        return is_below_channel(path) or first in self.channel.fields

    def _is_claim(self, path: str) -> bool:
        above = self.fields.get(path.rpartition(".")[0])
        return getattr(above.model if above else None, "voluntary", False)

    def _is_guard(self, path: str) -> bool:
        """Whether a path is a section that guards the product, or lies in one."""
        while path:
            model = self.fields[path].model if path in self.fields else None
            if getattr(model, "guards", False):
                return True
            path = path.rpartition(".")[0]
        return False

    def nature_of(self, path: str) -> Nature:
        """What kind of thing a field is: its own word, a claim where it promises, its section's."""
        path = field_path(path)
        field = self.fields[path]
        above = self.fields.get(path.rpartition(".")[0])
        model = above.model if above else self.channel if self.is_channel_path(path) else self.root
        return field.nature or ("claim" if field.promise else getattr(model, "nature", "part"))

    def one_channel(self) -> str:
        """What a file with one channel may look like there."""
        first = next(iter(self.channel.fields))
        return f"{CHANNELS}: {{main: {{{first}: {self.fields[first].example}}}}}"

    def part_of(self, section: str) -> str:
        """The part that a section describes, in words; that of the nearest section above."""
        while section:
            field = self.fields[field_path(section).removesuffix("[]")]
            if field.part:
                return field.part
            section = section.rpartition(".")[0]
        return ""


@cache
def schema_of(root: type[Section], title: str) -> Schema:
    """The schema of a root model, built once."""
    return Schema(root, title)


def load_schema(package: str = "ampreview.rules") -> Schema:
    """The schema that a rules package declares in its ``spec``."""
    spec = importlib.import_module(f"{package}.spec")
    return schema_of(spec.ROOT, spec.TITLE)


def _below(model: type[Section], prefix: str) -> Iterator[tuple[str, Field]]:
    """Every field of a model and of the models inside it, with its path."""
    for name, field in model.fields.items():
        path = prefix + name
        yield path, field
        if field.model is not None and field.kind != "named sections":
            yield from _below(field.model, f"{path}[]." if field.kind == "sections" else f"{path}.")
