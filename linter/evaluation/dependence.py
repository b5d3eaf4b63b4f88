"""Which fields a quantity or a check can depend on, whatever a spec states.

What one spec makes of a name uses the leaves on the way that was taken.  Another value of a
word, or of a number that a word is computed from, can lead to another way; so what a change
can alter is known only from all ways together.
"""

from collections.abc import Iterable
from dataclasses import dataclass

from ..check import Arguments, Check, Input
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
        ways = {name: quantity.ways for name, quantity in catalogue.derived.items()}
        self._asked = {
            name: frozenset(_plain(path) for way in found for path in way.when)
            for name, found in ways.items()
        }
        self._next = {
            name: self._asked[name].union(*(taken(way.inputs) for way in found))
            for name, found in ways.items()
        }
        for name, quantity in catalogue.derived.items():
            if quantity.stated_at:
                self._next[name] |= {quantity.stated_at}
        self._all_below: dict[str, frozenset[str]] = {}
        self._dependences = {name: self._dependence({name}, NOTHING) for name in ways}
        for entry in catalogue.entries:
            self._dependences[entry.name] = self._of_check(entry.check)
        self._led: dict[tuple[frozenset[str], bool], frozenset[str]] = {}

    def __getitem__(self, name: str) -> Dependence:
        """The reach of a check or of a derived quantity."""
        return self._dependences[name]

    def led_by(self, fields: frozenset[str], deciding: bool = False) -> frozenset[str]:
        """The names that can depend on one of these fields, the fields among them.

        deciding: only those whose way depends on it.
        """
        key = (fields, deciding)
        if key not in self._led:
            found = {
                name
                for name, reach in self._dependences.items()
                if not (reach.deciding if deciding else reach.fields).isdisjoint(fields)
            }
            self._led[key] = frozenset(found) if deciding else fields.union(found)
        return self._led[key]

    def _of_check(self, check: Check) -> Dependence:
        """With the topics that make a check speak up."""
        words = frozenset(_plain(path) for path in check.applies)
        names = {*taken(check.inputs), *map(_plain, check.topic)}
        return self._dependence(words | names, words)

    def _dependence(self, names: Iterable[str], words: frozenset[str]) -> Dependence:
        below = self._united(names)
        asked = words.union(*(self._asked.get(name, NOTHING) for name in below))
        return Dependence(below & self._fields, self._united(asked) & self._fields)

    def _united(self, names: Iterable[str]) -> frozenset[str]:
        return NOTHING.union(*(self._below(name) for name in names))

    def _below(self, name: str) -> frozenset[str]:
        """A name and all that its ways lead to; they may lead in a circle."""
        if name not in self._all_below:
            found: set[str] = set()
            ahead = {name}
            while ahead:
                at = ahead.pop()
                found.add(at)
                ahead |= self._next.get(at, NOTHING) - found
            self._all_below[name] = frozenset(found)
        return self._all_below[name]


def taken(inputs: Arguments) -> frozenset[str]:
    """The names that arguments lead to."""
    return frozenset(_plain(x.path) for x in inputs.values() if isinstance(x, Input))


def _plain(path: str) -> str:
    """A path without ``all`` before it and ``:low`` behind it."""
    return path.removeprefix("all ").partition(":")[0]
