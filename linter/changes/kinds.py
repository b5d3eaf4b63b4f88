"""What kind of change a remedy is, as an engineer would rank it."""

from collections.abc import Mapping
from typing import get_args

from ..check import Lever
from ..declare import Schema, local_path
from ..evaluation.catalogue import Catalogue
from ..finding import Remedy, RemedyKind

Preference = tuple[bool, bool, bool, int, int, int, int, float]
CHEAP: tuple[RemedyKind, ...] = ("slip", "value")
ORDER: tuple[RemedyKind, ...] = get_args(RemedyKind)


def kind_of(schema: Schema, lever: Lever, path: str) -> RemedyKind:
    """The kind of a change of one lever: by what its field is, and by what can be bought."""
    nature = schema.nature_of(path)
    if nature == "claim":
        return "promise"
    if nature == "topology":
        return "design"
    preferred = isinstance(lever.stock, str) and lever.stock.startswith("E")
    return "value" if nature == "setting" or preferred else "part"


def promises_in(catalogue: Catalogue) -> frozenset[str]:
    """The checks of what is promised: those that a lowered claim would meet."""
    return frozenset(
        entry.name
        for entry in catalogue.entries
        if any(catalogue.schema.nature_of(x.path) == "claim" for x in entry.check.levers)
    )


def graver(one: RemedyKind, other: RemedyKind) -> RemedyKind:
    """The later one in the order in which changes are proposed."""
    return max(one, other, key=ORDER.index)


def preference(remedy: Remedy, change: float, promises: frozenset[str]) -> Preference:
    """What is proposed first: a cure, then the milder kind, then the fewer new concerns.

    A promise lowered comes last, even after what only eases the finding.  A promise that is
    broken already does not count as a concern, since it has to be lowered anyway; but a mere
    value that breaks it further comes after another part.
    """
    guesses = [x for _, x in remedy.values if isinstance(x, Mapping) and "from" in x]
    return (
        remedy.kind == "promise",
        bool(remedy.lacks) or remedy.left is not None,
        takes_from(remedy, promises),
        ORDER.index(remedy.kind),
        len(remedy.appeared) + len(remedy.opened),
        sum(label.partition(" ")[0] not in promises for label in remedy.worsened),
        len(guesses),
        change,
    )


def takes_from(remedy: Remedy, promises: frozenset[str]) -> bool:
    """Whether a mere value breaks a promise further that is broken already."""
    worse = any(label.partition(" ")[0] in promises for label in remedy.worsened)
    return worse and remedy.kind in CHEAP


def promised(path: str) -> str:
    """A claim in words: ``run time``."""
    return local_path(path).rpartition(".")[2].replace("_", " ")
