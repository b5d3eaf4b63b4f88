"""What a blank spec asks for at a milestone: what decides something there, no more."""

from collections.abc import Collection, Iterator
from dataclasses import replace

from ..check import Check, Milestone
from ..declare import Schema
from ..evaluation.catalogue import Catalogue
from ..evaluation.dependence import Dependences
from .form import FormEntry


def needed_at(milestone: Milestone, catalogue: Catalogue) -> frozenset[str]:
    """The fields that a spec should state at a milestone.

    At concept those that the schema names; at prototype what a hazard or destruction can depend
    on besides, without what has a usual value or is not in most products; then all.
    """
    schema = catalogue.schema
    if milestone == "concept":
        return schema.at_concept
    if milestone == "production":
        return frozenset(schema.fields)
    reach = Dependences(catalogue)
    grave = [x.name for x in catalogue.entries if is_grave(x.check)]
    found = frozenset[str]().union(*(reach[name].fields for name in grave))
    promised = {path for promise in catalogue.promises for path, _ in promise.told}
    silent = {path for path in found if _may_stay_silent(schema, path)}
    return found - silent | promised | schema.at_concept


def is_grave(check: Check) -> bool:
    """Whether a check can find a hazard, destruction, or what physics forbids."""
    return check.limits.critical is not None or check.stake == "safety" or check.forbidden


def _may_stay_silent(schema: Schema, path: str) -> bool:
    """Whether silence has a usual meaning: a usual value, or a part that is not there."""
    default = schema.fields[path].default
    if default is not None and default.leaning == "neutral":
        return True
    while path:
        default = schema.fields[path].default
        if default is not None and default.leaning == "absent":
            return True
        path = path.rpartition(".")[0].removesuffix("[]")
    return False


def only_needed(
    entries: tuple[FormEntry, ...], wanted: Collection[str], shown: bool = False
) -> tuple[FormEntry, ...]:
    """The part of a form that asks for some fields, with what is filled in already.

    shown: no section is commented out.
    """
    return tuple(_kept(entries, wanted, shown, ""))


def _kept(
    entries: tuple[FormEntry, ...], wanted: Collection[str], shown: bool, prefix: str
) -> Iterator[FormEntry]:
    for entry in entries:
        path = f"{prefix}{entry.name}"
        if entry.field.kind == "named sections":
            ahead = ""  # fields of a channel go without its name
        else:
            ahead = f"{path}[]." if entry.field.kind == "sections" else f"{path}."
        if entry.below:
            below = tuple(_kept(entry.below, wanted, shown, ahead))
            if below:
                yield replace(entry, below=below, optional=entry.optional and not shown)
        elif entry.value or entry.same_as or path in wanted:
            yield entry
