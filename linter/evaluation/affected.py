"""What a change of stated values can alter, and what it leaves as it is."""

from ..declare import CHANNELS, Schema, field_path
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
        fields = NOTHING.union(*(_other_fields(before, after, path) for path in touched))
        self._led = dependences.led_by(fields, deciding=all(_alike(*pair) for pair in values))

    def alters(self, name: str, used: frozenset[str] = NOTHING) -> bool:
        """Whether a check, a quantity or a leaf that used these leaves can come out otherwise.

        Another number alters what used it, and what it may lead another way.  A word or a
        new leaf alters all that can reach it, a section that comes or goes what can reach any
        of its fields.
        """
        return name in self._led or not used.isdisjoint(self.touched)


def _other_fields(before: Spec, after: Spec, path: str) -> frozenset[str]:
    """The fields that state something else, or are asked for otherwise, by a change of one."""
    root = _root(before, after, path)
    if root == CHANNELS or root.rpartition(".")[0] == CHANNELS:
        return frozenset(before.schema.fields)
    return _below(before.schema, field_path(root))


def _root(before: Spec, after: Spec, path: str) -> str:
    """The highest section that comes or goes with a path; the path itself where none does."""
    if path in before.values and path in after.values:
        return path
    steps = path.partition("[")[0].split(".")
    above = (".".join(steps[:end]) for end in range(1, len(steps) + 1))
    return next((at for at in above if _kind(before, at) != _kind(after, at)), path)


def _kind(spec: Spec, path: str) -> tuple[bool, bool, bool, int]:
    """What a spec says of a section: that it is there, states something, is none, or how many."""
    states = any(stated.startswith(f"{path}.") for stated in spec.values)
    return path in spec.sections, states, path in spec.none, spec.lists.get(path, 0)


def _below(schema: Schema, path: str) -> frozenset[str]:
    """A field, and if it is a section all fields in it."""
    inside = (f"{path}.", f"{path}[]")
    return frozenset({path, *(field for field in schema.fields if field.startswith(inside))})


def _alike(old: object, new: object) -> bool:
    """Whether two values are numbers that the graph resolves in the same way."""
    if not isinstance(old, Value) or not isinstance(new, Value):
        return False
    return (old.form, old.sides, old.provenance) == (new.form, new.sides, new.provenance)
