"""What a blank spec asks of a design: the fields of the models that concern it, as a tree."""

from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass

from pydantic import BaseModel

from .spec import Amplifier, Field
from .spec.channel import Channel
from .spec.field import declared

CHANNELS = "channels"
# What a field concerns, and the words of a design that rule it out.
RULED_OUT: Mapping[str, Mapping[str, tuple[str, ...]]] = {
    "battery-powered designs": {"source": ("dc-source", "mains-converter")},
    "lead-acid batteries": {"source": ("dc-source", "mains-converter")},
    "designs with a converter ahead of the rail": {"source": ("mains-converter",)},
    "mains converters": {"source": ("battery", "dc-source")},
    "discrete devices": {"devices": ("integrated",)},
    "integrated stages": {"devices": ("discrete",)},
    "LC filters": {"filter": ("bead", "filterless")},
    "bead filters": {"filter": ("lc", "filterless")},
    "bead filters and filterless stages": {"filter": ("lc",)},
    "full bridges": {"topology": ("half-bridge",)},
    "half bridges on a split supply": {"topology": ("full-bridge",), "rails": ("single",)},
    "half bridges on a single supply": {"topology": ("full-bridge",), "rails": ("split",)},
}
SETTLING = ("designs with a converter ahead of the rail", "lead-acid batteries")


@dataclass(frozen=True, slots=True)
class Design:
    """What is known of a design before its spec is written; empty: not said."""

    topology: str = ""
    rails: str = ""
    devices: str = ""
    source: str = ""
    filter: str = ""
    milestone: str = ""
    channels: tuple[str, ...] = ("main",)

    def stated(self) -> dict[str, str]:
        """The fields that this fills in, channel fields without the channel."""
        found = {
            "amplifier_spec": "1",
            "milestone": self.milestone,
            "supply.source": self.source,
            "supply.rails": self.rails,
            "output_stage.topology": self.topology,
            "output_stage.devices": self.devices,
            "filter.type": self.filter,
        }
        return {path: word for path, word in found.items() if word}

    def rules_out(self, concerns: str) -> bool:
        """Whether a field with these concerns has no place in the design."""
        words = RULED_OUT.get(concerns, {})
        return any(getattr(self, name) in out for name, out in words.items())

    def settles(self, concerns: str) -> bool:
        """Whether it is known that a field with these concerns has a place in the design."""
        words = RULED_OUT.get(concerns)
        if concerns == "all":
            return True
        if words is None or concerns in SETTLING:
            return False
        return all(getattr(self, name) for name in words) and not self.rules_out(concerns)


@dataclass(frozen=True, slots=True)
class Entry:
    """One line of a form, with those below it.

    value: what is filled in.  only_for: the designs that it concerns where that is not
    known.  optional: to be commented out.  same_as: the channel that it repeats.
    """

    name: str
    field: Field
    value: str = ""
    below: tuple["Entry", ...] = ()
    only_for: str = ""
    optional: bool = False
    same_as: str = ""


def form(design: Design) -> tuple[Entry, ...]:
    """The blank spec of a design, in the order of the models."""
    return tuple(_entries(Amplifier, "", design, "all"))


def pruned(
    entries: tuple[Entry, ...], wanted: Collection[str], prefix: str = ""
) -> tuple[Entry, ...]:
    """The part of a form that leads to some paths; a wanted section keeps all its lines."""
    return tuple(_kept(entries, wanted, prefix))


def _kept(entries: tuple[Entry, ...], wanted: Collection[str], prefix: str) -> Iterator[Entry]:
    for entry in entries:
        path = f"{prefix}{entry.name}"
        if path in wanted:
            section = entry.field.kind == "section"
            yield Entry(entry.name, entry.field, "", entry.below, optional=section)
            continue
        below = pruned(entry.below, wanted, f"{path}.")
        if below:
            yield Entry(entry.name, entry.field, "", below)


def _entries(model: type[BaseModel], prefix: str, design: Design, known: str) -> Iterator[Entry]:
    for name, info in model.model_fields.items():
        field, path = declared(info), f"{prefix}{name}"
        if design.rules_out(field.concerns):
            continue
        only_for = (
            "" if field.concerns == known or design.settles(field.concerns) else field.concerns
        )
        if field.model is None:
            yield Entry(name, field, design.stated().get(path, ""), (), only_for)
        elif field.kind == "named sections":
            yield Entry(name, field, "", tuple(_channels(field, design)))
        else:
            below = tuple(_entries(field.model, f"{path}.", design, field.concerns))
            optional = field.can_be_none or field.kind == "sections"
            if below:
                yield Entry(name, field, "", below, only_for, optional)


def _channels(field: Field, design: Design) -> Iterator[Entry]:
    first, *others = design.channels
    below = tuple(_entries(Channel, "", design, "all"))
    yield Entry(first, field, "", below)
    for name in others:
        yield Entry(name, field, same_as=first)
