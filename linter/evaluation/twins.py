"""Channels that state the same: what is computed for one of them holds for the others.

Exchange two channels that state the same, and the spec is the same.  So a check answers alike
for both, each channel named in place of the other, and a figure over all channels moves alike
with the same leaf of each.
"""

import re
from collections.abc import Callable, Iterable, Mapping
from dataclasses import replace
from functools import cache, cached_property, lru_cache, partial
from typing import NamedTuple, TypeVar

from ..declare import CHANNELS
from ..finding import Assumed, CornerValue, Finding, Missing, Place
from ..reading.loading import Spec

P = TypeVar("P", CornerValue, Assumed, Missing)

_CHANNEL = re.compile(rf"(?<![\w.]){CHANNELS}\.([\w-]+)")


class Leaf(NamedTuple):
    """A leaf of a channel: the group of channels that state the same, the channel, the field."""

    group: str
    channel: str
    field: str


class Twins:
    """Which channels of a spec state the same; a group is named after its first channel."""

    def __init__(self, spec: Spec) -> None:
        self.spec = spec
        self._renaming: dict[str, Callable[[str], str]] = {}

    @cached_property
    def groups(self) -> Mapping[str, tuple[str, ...]]:
        """The channels of each group with more than one, each group behind every one of them."""
        if len(self.spec.channels) < 2:
            return {}
        found: dict[object, list[str]] = {}
        for name, stated in self._stated().items():
            found.setdefault(frozenset(stated), []).append(name)
        return {name: tuple(group) for group in found.values() if group[1:] for name in group}

    def _stated(self) -> Mapping[str, list[object]]:
        """What each channel says, by the paths of its fields."""
        spec = self.spec
        said: dict[str, list[object]] = {name: [] for name in spec.channels}
        kinds: tuple[Iterable[tuple[str, object]], ...] = (
            spec.values.items(),
            spec.lists.items(),
            ((path, "none") for path in spec.none),
            ((path, "fitted") for path in spec.sections),
        )
        for number, items in enumerate(kinds):
            for path, value in items:
                found = _CHANNEL.match(path)
                if found:
                    text = getattr(value, "text", "")  # values are alike however written
                    said[found[1]].append((number, path[found.end() :], value, text))
        return said

    def first(self, subject: str) -> str:
        """The channel whose answers stand for those of a subject: mostly the subject itself."""
        group = self.groups.get(subject)
        return group[0] if group else subject

    def leaves(self, paths: Iterable[str], own: str | None) -> Mapping[str, Leaf]:
        """The leaves of channels that state the same; ``own`` is alike to no other."""
        if not self.groups:
            return {}
        found: dict[str, Leaf] = {}
        for path in paths:
            match = _CHANNEL.match(path)
            name = match[1] if match else ""
            if match and name != own and name in self.groups:
                found[path] = Leaf(self.groups[name][0], name, path[match.end() :])
        return found

    def carried(self, found: Finding, subject: str) -> Finding | None:
        """The answer for the first channel of a group as the answer for another one.

        None where it tells of other channels of the group: these stand in their own order.
        """
        if self._tells_of_others(found):
            return None
        named = self._names(subject)
        place, related = self._places(found, named)
        evidence, advice = found.evidence, found.advice
        if evidence.leaves or evidence.assumed or evidence.corner:
            evidence = replace(
                evidence,
                corner=_at_other_paths(evidence.corner, named),
                assumed=_at_other_paths(evidence.assumed, named),
                leaves=frozenset(map(named, evidence.leaves)),
            )
        if advice.missing:
            advice = replace(advice, missing=_at_other_paths(advice.missing, named))
        return replace(
            found,
            subject=subject,
            message=named(found.message),
            place=place,
            related=related,
            evidence=evidence,
            advice=advice,
        )

    def _tells_of_others(self, found: Finding) -> bool:
        others = {name for name in self.groups[found.subject] if name != found.subject}
        assumed = (item.path for item in found.evidence.assumed)
        missing = (item.path for item in found.advice.missing)
        texts = (found.message, *assumed, *missing)
        named = (match for text in texts for match in _CHANNEL.finditer(text))
        return any(match[1] in others for match in named)

    def _places(
        self, found: Finding, named: Callable[[str], str]
    ) -> tuple[Place | None, tuple[Place, ...]]:
        """Where the other channel states what the answer points to."""
        if found.place is None or found.evidence.figure is None:
            return found.place and self.spec.place(named(found.place.path)), ()
        paths = dict.fromkeys(named(item.path) for item in (found.place, *found.related))
        pointed = [place for path in paths for place in self.spec.places.get(path, ())]
        return pointed[0], tuple(pointed[1:6])

    def _names(self, subject: str) -> Callable[[str], str]:
        """Renames the channels of a text: the first is the subject, the others keep their order."""
        if subject not in self._renaming:
            group = self.groups[subject]
            others = [sorted(name for name in group if name != own) for own in (group[0], subject)]
            names = {group[0]: subject, **dict(zip(*others, strict=True))}
            self._renaming[subject] = cache(partial(_renamed, names))
        return self._renaming[subject]


def _at_other_paths(items: tuple[P, ...], named: Callable[[str], str]) -> tuple[P, ...]:
    """What stands at paths, at those of another channel."""
    paths = [named(item.path) for item in items]
    return tuple(
        [x if x.path == to else replace(x, path=to) for x, to in zip(items, paths, strict=True)]
    )


def _renamed(names: Mapping[str, str], text: str) -> str:
    return _CHANNEL.sub(lambda found: f"{CHANNELS}.{names.get(found[1], found[1])}", text)


@lru_cache(maxsize=4096)
def own_first(path: str, channel: str | None) -> tuple[str, bool, str]:
    """Sorts the paths of the channel at hand before those of other channels."""
    found = _CHANNEL.match(path)
    return (path, False, "") if found is None else (CHANNELS, found[1] != channel, path)
