"""Which fields a quantity or a check can depend on, whatever a spec states.

What one spec makes of a name uses the leaves on the way that was taken.  Another value of a
word, or of a number that a word is computed from, can lead to another way; so what a change
can alter is known only from all ways together.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from ..check import Arguments, Input
from .catalogue import Catalogue

NOTHING: frozenset[str] = frozenset()


@dataclass(frozen=True, slots=True)
class Dependence:
    """Fields as the schema names them.

    fields: all that some way takes in or asks for.  deciding: those on which it depends
    which way is taken, or whether there is one.
    """

    fields: frozenset[str]
    deciding: frozenset[str]


class Dependences:
    """The reach of every check and every derived quantity of a catalogue."""

    def __init__(self, catalogue: Catalogue) -> None:
        self._fields = catalogue.schema.fields.keys()
        self._asked: dict[str, frozenset[str]] = {}
        self._next: dict[str, frozenset[str]] = {}
        for name, quantity in catalogue.derived.items():
            ways = quantity.ways
            self._asked[name] = frozenset(_plain(path) for way in ways for path in way.when)
            takes = self._asked[name].union(*(taken(way.inputs) for way in ways))
            self._next[name] = takes | {quantity.stated_at} if quantity.stated_at else takes
        for entry in catalogue.entries:  # with the topics that make a check speak up
            check = entry.check
            self._asked[entry.name] = words = frozenset(map(_plain, check.applies))
            self._next[entry.name] = words.union(taken(check.inputs), map(_plain, check.topic))
        self._takers: dict[str, list[str]] = {}
        for name, takes in self._next.items():
            for path in takes:
                self._takers.setdefault(path, []).append(name)
        self._led: dict[tuple[frozenset[str], bool], frozenset[str]] = {}

    def __getitem__(self, name: str) -> Dependence:
        """The reach of a check or of a derived quantity."""
        below = _reached({name}, self._next)
        asked = NOTHING.union(*(self._asked.get(x, NOTHING) for x in below))
        return Dependence(below & self._fields, _reached(asked, self._next) & self._fields)

    def led_by(self, fields: frozenset[str], deciding: bool = False) -> frozenset[str]:
        """The names that can depend on one of these fields, the fields among them.

        deciding: only those whose way depends on it.
        """
        key = (fields, deciding)
        if key not in self._led:
            found = _reached(fields, self._takers)
            if deciding:
                led = {name for name, asked in self._asked.items() if not asked.isdisjoint(found)}
                found = _reached(led, self._takers)
            self._led[key] = found
        return self._led[key]


def _reached(names: Iterable[str], ways: Mapping[str, Iterable[str]]) -> frozenset[str]:
    """Names and all that ways lead to from there; they may lead in a circle."""
    found: set[str] = set()
    ahead = set(names)
    while ahead:
        at = ahead.pop()
        found.add(at)
        ahead.update(x for x in ways.get(at, ()) if x not in found)
    return frozenset(found)


def taken(inputs: Arguments) -> frozenset[str]:
    """The names that arguments lead to."""
    return frozenset(_plain(x.path) for x in inputs.values() if isinstance(x, Input))


def _plain(path: str) -> str:
    """A path without ``all`` before it and ``:low`` behind it."""
    return path.removeprefix("all ").partition(":")[0]
