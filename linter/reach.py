"""Which fields a quantity or a check can depend on, whatever a spec states.

What one spec makes of a name uses the leaves on the way that was taken.  Another value of a
word, or of a number that a word is computed from, can lead to another way; so what a change
can alter is known only from all ways together.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from .check import Arguments, Check, Derived, Input
from .spec import FIELDS


@dataclass(frozen=True, slots=True)
class Reach:
    """Fields as ``FIELDS`` names them.

    fields: all that some way takes in or asks for.  deciding: those on which it depends
    which way is taken, or whether there is one.
    """

    fields: frozenset[str]
    deciding: frozenset[str]


class Reaches:
    """The reach of every name, found once for a set of derived quantities."""

    def __init__(self, derived: Mapping[str, Derived]) -> None:
        self._derived = derived
        self._known: dict[str, Reach] = {}

    def of_check(self, name: str, check: Check) -> Reach:
        """The reach of a check's answer, with the topics that make it speak up."""
        if name not in self._known:
            names = (*_taken(check.inputs), *check.topic)
            self._known[name] = self._united(check.applies, names)
        return self._known[name]

    def of(self, name: str) -> Reach:
        """The reach of a field, a section or a derived quantity."""
        if name not in self._known:
            self._known[name] = self._united((), (name,))
        return self._known[name]

    def _united(self, words: Iterable[str], names: Iterable[str]) -> Reach:
        below = self._below({_plain(path) for path in (*words, *names)})
        asked = {path for name in below for path in self._asked(name)}
        deciding = self._below({_plain(path) for path in (*words, *asked)})
        return Reach(frozenset(below & FIELDS.keys()), frozenset(deciding & FIELDS.keys()))

    def _below(self, names: set[str]) -> set[str]:
        """These names and all that their ways lead to."""
        found: set[str] = set()
        ahead = set(names)
        while ahead:
            name = ahead.pop()
            found.add(name)
            ahead |= {_plain(path) for path in self._next(name)} - found
        return found

    def _next(self, name: str) -> Iterator[str]:
        quantity = self._derived.get(name)
        if quantity is not None:
            yield from self._asked(name)
            yield from (path for way in quantity.ways for path in _taken(way.inputs))
            if quantity.stated_at:
                yield quantity.stated_at

    def _asked(self, name: str) -> Iterator[str]:
        quantity = self._derived.get(name)
        yield from (path for way in (quantity.ways if quantity else ()) for path in way.when)


def _taken(inputs: Arguments) -> tuple[str, ...]:
    return tuple(item.path for item in inputs.values() if isinstance(item, Input))


def _plain(path: str) -> str:
    """A path without ``all`` before it and ``:low`` behind it."""
    return path.removeprefix("all ").partition(":")[0]
