"""What a change of stated values can alter, and what it leaves as it is."""

from ..declare import field_path
from ..quantities.quantity import Value
from ..reading.loading import Spec
from .dependence import NOTHING, Dependences


class Affected:
    """Other values for some leaves of a spec.

    touched: their full paths.
    """

    def __init__(
        self, dependences: Dependences, before: Spec, after: Spec, touched: frozenset[str]
    ) -> None:
        self.touched = touched
        values = [(before.values.get(path), after.values.get(path)) for path in touched]
        self._local = all(_fits_in(before, after, path) for path in touched)
        fields = frozenset(field_path(path) for path in touched)
        self._led = dependences.led_by(fields, deciding=all(_alike(*pair) for pair in values))

    def alters(self, name: str, used: frozenset[str] = NOTHING) -> bool:
        """Whether a check, a quantity or a leaf that used these leaves can come out otherwise.

        Another number alters what used it, and what it may lead another way.  A word or a
        new leaf alters all that can reach it, a new section anything.
        """
        return not self._local or name in self._led or not used.isdisjoint(self.touched)


def _fits_in(before: Spec, after: Spec, path: str) -> bool:
    """Whether a leaf is stated, or comes new into a section that states something."""
    if path not in after.values:
        return False
    section = path.rpartition(".")[0]
    return path in before.values or (
        "[" not in path and section != "" and any(_parent(x) == section for x in before.values)
    )


def _parent(path: str) -> str:
    return path.rpartition(".")[0]


def _alike(old: object, new: object) -> bool:
    """Whether two values are numbers that the graph resolves in the same way."""
    if not isinstance(old, Value) or not isinstance(new, Value):
        return False
    return (old.form, old.sides, old.provenance) == (new.form, new.sides, new.provenance)
