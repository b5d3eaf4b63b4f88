"""A cause in words: its headline, the parts that it is about, what was tried."""

from collections.abc import Mapping

from ..declare import local_path
from ..judging.review import Review
from ..quantities.quantity import Value, show
from .parts import Story
from .tried import section_of

WORD = 3


def headline(story: Story, review: Review) -> str:
    """The doubtful value, the value that explains several findings, or the gravest finding."""
    if story.suspect is not None:
        return _doubt(story, review)
    if story.same == "stress":
        return _overloaded(story, review)
    message = story.first.first.message
    others = len(story.grave) - 1
    if others < 1:
        return message
    if story.same:
        return f"{message}; {others} more about the {_place(story, review)}"
    return _size(story, review) or message


def parts(story: Story, review: Review) -> tuple[str, ...]:
    """The parts that a story is about, each once, that of its gravest fault first."""
    schema = review.spec.schema
    found: dict[str, None] = {}
    for path in sorted(story.about, key=lambda x: (x not in _leaves(story), x)):
        section = section_of(path) if "." in path else ""
        part = schema.part_of(
            path if path in schema.fields and schema.fields[path].part else section
        )
        found.setdefault(part or schema.fields["channels"].part)
    return tuple(found)


def note(story: Story, is_met: bool) -> str:
    """What was tried where nothing is proven, else why no change meets the gravest fault."""
    tried = [item for way in story.ways for item in way.tried]
    if not tried:
        return "" if is_met else story.first.first.advice.remedy_note
    of = len(story.faults)
    if of == 1:
        told = " or ".join(f"{x.in_words()} clears it" for x in tried)
        return f"not proven, tried on this finding alone: {told}"
    told = "; ".join(f"{x.in_words()} clears {len(x.ends)} of {of} checks" for x in tried)
    return f"not proven, tried on these findings alone: {told}"


def _leaves(story: Story) -> frozenset[str]:
    return frozenset(x for way in story.ways[:1] for x in way.turns)


def _doubt(story: Story, review: Review) -> str:
    """A doubtful value beside what is likely; the finding's own words where nothing is."""
    assert story.suspect is not None
    stated = review.spec.values.get(story.suspect.path)
    right = story.suspect.right
    if not isinstance(stated, Value) or right is None:
        return story.first.first.message
    likely = right["value"] if isinstance(right, Mapping) else right
    return f"{_named(story.suspect.path, review)} is {stated.text}; {likely} is likely"


def _size(story: Story, review: Review) -> str:
    """The one value that is not enough or too much; nothing where it is no number."""
    keys = [item for way in story.ways for item in way.turns.items()]
    counts = {review.spec.schema.field_of(path).kind == "count" for path, _ in keys}
    if counts == {True} and {direction for _, direction in keys} == {1}:
        part = review.spec.schema.part_of(section_of(keys[0][0]))
        message = story.first.first.message
        return f"{part.capitalize()} too small: {message[:1].lower()}{message[1:]}"
    if len(keys) != 1 or not keys[0][1]:
        return ""
    path, direction = keys[0]
    full = next((x for x in review.spec.values if local_path(x) == path), path)
    stated = review.spec.values.get(full)
    field = review.spec.schema.field_of(full)
    if not isinstance(stated, Value) or stated.form == "range" or field.kind == "count":
        return ""
    text = show(stated.nominal, field.unit) if stated.form == "line" else stated.text
    return f"{_named(full, review)} {text} is {'not enough' if direction > 0 else 'too much'}"


def _overloaded(story: Story, review: Review) -> str:
    """The parts that are rated too low for one stress, each with its rating."""
    found = story.first.first.evidence
    ratings = {local_path(x): review.spec.values.get(x) for x in review.spec.values}
    rated = [(path, ratings.get(path)) for way in story.ways for path in way.turns]
    texts, stress = [], 0.0
    for path, value in rated:
        if isinstance(value, Value):
            part = review.spec.schema.part_of(section_of(path))
            texts.append(f"{part} ({value.text})")
            if not stress and found.figure is not None:
                stress = found.figure * value.nominal
    unit = review.spec.schema.field_of(rated[0][0]).unit
    return f"Rated too low for {show(stress, unit)}: {', '.join(texts)}"


def _named(path: str, review: Review) -> str:
    """A value by its part and its name: ``Supply lead: area``."""
    local = local_path(path)
    part = review.spec.schema.part_of(section_of(path)) if "." in local else ""
    name = local.rpartition(".")[2]
    if all(len(word) >= WORD for word in name.split("_")):
        name = name.replace("_", " ")
    return f"{part.capitalize()}: {name}" if part else name.capitalize()


def _place(story: Story, review: Review) -> str:
    """The part or the block that a story is about, in words."""
    sections = [section_of(path) for path in sorted(story.about)]
    if story.same == "block":
        return review.spec.schema.part_of(sections[0].split(".")[0])
    return review.spec.schema.part_of(sections[0])
