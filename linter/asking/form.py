"""What a blank spec asks of a design: the fields of the models that concern it, as a tree."""

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass, field

from ..declare import CHANNELS, Designs, Field, Schema, Section
from ..declare.parts import part_kinds
from ..reading.format import DEVIATIONS_KEY, PARTS_KEY, SPEC_KEY, VERSION

MY_PART = "my-part"


@dataclass(frozen=True, slots=True)
class Design:
    """What is known of a design before its spec is written.

    words: of the fields that are asked first, by path; where one is missing it is not known.
    silence_tells: what is not known is what silence means, where it means something.
    """

    schema: Schema
    words: Mapping[str, str] = field(default_factory=dict)
    channels: tuple[str, ...] = ("main",)
    silence_tells: bool = False

    def filled_in(self, path: str) -> str:
        """What the form says at a path already."""
        return VERSION if path == SPEC_KEY else self.words.get(path, "")

    def rules_out(self, concerns: Designs | None) -> bool:
        """Whether a field with these concerns has no place in the design."""
        return concerns is not None and all(map(self._contradicts, concerns.when))

    def settles(self, concerns: Designs | None) -> bool:
        """Whether it is known that a field with these concerns has a place in the design."""
        return concerns is None or any(map(self._meets, concerns.when))

    def _word(self, path: str) -> str:
        if path == CHANNELS:
            return "several" if len(self.channels) > 1 else "one"
        known = self.schema.fields[path].default if self.silence_tells else None
        meant = known.value if known else None
        return self.words.get(path) or (meant if isinstance(meant, str) else "")

    def _contradicts(self, needed: Mapping[str, tuple[str, ...]]) -> bool:
        return any(self._word(path) not in ("", *words) for path, words in needed.items())

    def _meets(self, needed: Mapping[str, tuple[str, ...]]) -> bool:
        return all(self._word(path) in words for path, words in needed.items())


def asked_first(schema: Schema) -> Mapping[str, str]:
    """The words that decide what else is asked: their names, and the paths of their fields."""
    found = ((field.asked_first, path) for path, field in schema.fields.items())
    return {name: path for name, path in found if name}


@dataclass(frozen=True, slots=True)
class FormEntry:
    """One line of a form, with those below it.

    value: what is filled in.  only_for: the designs that it concerns where that is not
    known.  optional: to be commented out.  same_as: the channel that it repeats.
    """

    name: str
    field: Field
    value: str = ""
    below: tuple["FormEntry", ...] = ()
    only_for: str = ""
    optional: bool = False
    same_as: str = ""


def form(design: Design) -> tuple[FormEntry, ...]:
    """The blank spec of a design, in the order of the models."""
    return tuple(_entries(design.schema.root, "", design, None))


def pruned(
    entries: tuple[FormEntry, ...], wanted: Collection[str], prefix: str = ""
) -> tuple[FormEntry, ...]:
    """The part of a form that leads to some paths; a wanted section keeps all its lines."""
    return tuple(_kept(entries, wanted, prefix))


def _kept(
    entries: tuple[FormEntry, ...], wanted: Collection[str], prefix: str
) -> Iterator[FormEntry]:
    for entry in entries:
        path = f"{prefix}{entry.name}"
        if path in wanted:
            section = entry.field.kind == "section"
            yield FormEntry(entry.name, entry.field, "", entry.below, optional=section)
            continue
        below = pruned(entry.below, wanted, f"{path}.")
        if below:
            yield FormEntry(entry.name, entry.field, "", below)


def part_form(design: Design, kinds: Sequence[str]) -> tuple[FormEntry, ...]:
    """The blank parts file with one part of each kind, every value that it may have."""
    first = Field("text", "version of the format of a parts file", "word")
    groups = (_blank_part(design, kind) for kind in dict.fromkeys(kinds))
    return (FormEntry(PARTS_KEY, first, VERSION), *groups)


def _blank_part(design: Design, kind: str) -> FormEntry:
    section = design.schema.fields[part_kinds(design.schema)[kind]]
    assert section.model is not None
    values = tuple(_entries(section.model, "", design, section.concerns))
    own = Field("section", f"Name of your own; a spec says {kind}: {{part: {MY_PART}}}", "word")
    part = FormEntry(MY_PART, own, "", values)
    return FormEntry(kind, Field("section", section.meaning, "word"), "", (part,))


def deviation_form(schema: Schema) -> tuple[FormEntry, ...]:
    """The blank file of deviations."""
    known = schema.fields["deviations"]
    assert known.model is not None
    below = tuple(_entries(known.model, "deviations[].", Design(schema), None))
    first = Field("text", "version of the format of such a list", "word")
    listed = Field("sections", "One item for each permission", "word")
    head = FormEntry(DEVIATIONS_KEY, first, VERSION)
    return (head, FormEntry("deviations", listed, "", below))


def _entries(
    model: type[Section], prefix: str, design: Design, known: Designs | None
) -> Iterator[FormEntry]:
    for name, item in model.fields.items():
        path = f"{prefix}{name}"
        if design.rules_out(item.concerns):
            continue
        concerns = None if item.concerns in (None, known) else item.concerns
        only_for = "" if concerns is None or design.settles(concerns) else concerns.text
        if item.model is None:
            yield FormEntry(name, item, design.filled_in(path), (), only_for)
        elif item.kind == "named sections":
            yield FormEntry(name, item, "", tuple(_channels(item, design)))
        else:
            below = tuple(_entries(item.model, f"{path}.", design, item.concerns))
            optional = item.can_be_none or item.kind == "sections"
            if below:
                yield FormEntry(name, item, "", below, only_for, optional)


def _channels(field: Field, design: Design) -> Iterator[FormEntry]:
    first, *others = design.channels
    below = tuple(_entries(design.schema.channel, "", design, None))
    yield FormEntry(first, field, "", below)
    for name in others:
        yield FormEntry(name, field, same_as=first)
