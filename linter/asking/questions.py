"""What to ask for: the gaps behind open answers, by part, the most useful first.

A question counts as often as open answers lack it.  Channels that state the same of a part
are asked once.
"""

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from ..declare import CHANNELS, Field, Schema, field_path, local_path
from ..finding import Finding, Missing, Status
from ..judging.review import Review
from ..quantities.quantity import Value
from ..reading.by_path import steps_of
from ..reading.loading import Spec
from .form import Design, FormEntry, form, pruned

PRODUCT_PART = "product as a whole"


@dataclass(frozen=True, slots=True)
class SupplierQuestion:
    """One quantity to ask for.

    paths: where the answer belongs, one for each channel that it holds for.  with_it:
    names of unstated fields that make the condition.  needed_for: titles of the checks.
    unlocks: open answers that lack it; alone: those that lack nothing else.  so_far: what is
    stated instead of a sound value.
    """

    paths: tuple[str, ...]
    field: Field
    with_it: tuple[str, ...]
    needed_for: tuple[str, ...]
    unlocks: int
    alone: int
    so_far: str = ""

    @property
    def local(self) -> str:
        """The path as seen from its channel."""
        return local_path(self.paths[0])


@dataclass(frozen=True, slots=True)
class QuestionGroup:
    """The questions about one part.

    type_number: of the part, if the spec has one; unlocks: open answers that lack
    something of it.
    """

    part: str
    channels: tuple[str, ...]
    type_number: str
    questions: tuple[SupplierQuestion, ...]
    unlocks: int


def groups_of(review: Review) -> tuple[QuestionGroup, ...]:
    """The questions that a review leaves open, the most useful part first.

    What is accepted as open by a deviation is not asked.
    """
    opened = tuple(item for item in review.findings if asks(item) and not item.permitted)
    spec = review.spec.as_stated()
    merged: dict[tuple[str, ...], list[Missing]] = {}
    for missing in dict.fromkeys(item for finding in opened for item in finding.advice.missing):
        if _field(spec.schema, missing.path) is not None:
            merged.setdefault(alike_paths(spec, missing.path), []).append(missing)
    questions = [_question(spec, paths, opened) for paths in merged]
    places = {item.paths: _place(review, item, opened) for item in questions}
    parts: dict[tuple[str, tuple[str, ...], str], list[SupplierQuestion]] = {}
    for question in questions:
        parts.setdefault(part_of(spec, question.paths, question.field), []).append(question)
    groups = []
    for key, members in parts.items():
        members.sort(key=lambda x: (places[x.paths], -x.unlocks, -x.alone, x.local))
        first = places[members[0].paths]
        groups.append((first, _group(*key, members, opened)))
    groups.sort(key=lambda x: (x[0], -x[1].unlocks, x[1].part, x[1].channels))
    return tuple(group for _, group in groups)


def _place(review: Review, question: SupplierQuestion, opened: Sequence[Finding]) -> int:
    """What every review starts from is asked first, then, at concept, what a concept is asked."""
    first = [gap.path for x in opened if x.holds_always for gap in x.advice.missing]
    if question.paths[0] in first:
        return first.index(question.paths[0])
    first_values = review.spec.schema.at_concept
    at_concept = review.verdict.milestone == "concept"
    is_next = at_concept and field_path(question.paths[0]) in first_values
    return len(first) if is_next else len(first) + 1


def asks(finding: Finding) -> bool:
    """Whether an answer is open, or hangs on a word that another check asks for."""
    if finding.status is Status.OPEN:
        return True
    return finding.status is Status.NOT_APPLICABLE and bool(finding.advice.missing)


def blank_form(review: Review, groups: Iterable[QuestionGroup]) -> tuple[FormEntry, ...]:
    """The questions as a form, to be filled in and merged into the spec."""
    wanted = {
        re.sub(r"\[\d*\].*", "", path)
        for group in groups
        for question in group.questions
        for path in question.paths
    }
    spec = review.spec.as_stated()
    whole = form(Design(spec.schema))
    found: list[FormEntry] = []
    for entry in whole:
        if entry.name != CHANNELS:
            found += (entry,) if entry.value else pruned((entry,), wanted)
            continue
        channels = tuple(_channel_forms(spec, entry, wanted))
        if channels:
            found.append(FormEntry(CHANNELS, entry.field, "", channels))
    return tuple(found)


def _channel_forms(spec: Spec, entry: FormEntry, wanted: set[str]) -> Iterator[FormEntry]:
    """A form for each channel; a later one that is asked the same repeats the first."""
    first: tuple[str, set[str]] | None = None
    for name in spec.channels:
        asked = {path for path in wanted if path.startswith(f"{CHANNELS}.{name}.")}
        local = {local_path(path) for path in asked}
        if not asked:
            continue
        if (
            first
            and local == first[1]
            and all(
                name in _channels(alike_paths(spec, f"{CHANNELS}.{first[0]}.{path}"), spec.schema)
                for path in local
            )
        ):
            yield FormEntry(name, entry.field, same_as=first[0])
            continue
        below = pruned(entry.below[0].below, local)
        yield FormEntry(name, entry.field, "", below)
        first = first or (name, local)


def part_of(spec: Spec, paths: tuple[str, ...], field: Field) -> tuple[str, tuple[str, ...], str]:
    """The part that some paths belong to, in words, its channels, and its type number."""
    channels = _channels(paths, spec.schema)
    section = _section(local_path(paths[0]), field)
    prefix = f"{CHANNELS}.{channels[0]}." if channels else ""
    number = spec.values.get(f"{prefix}{section}.part", "")
    return _part(spec.schema, section, bool(channels)), channels, str(number)


def _question(spec: Spec, paths: tuple[str, ...], opened: Sequence[Finding]) -> SupplierQuestion:
    asking = [item for item in opened if any(gap.path in paths for gap in item.advice.missing)]
    alone = [item for item in asking if all(gap.path in paths for gap in item.advice.missing)]
    return SupplierQuestion(
        paths,
        spec.schema.field_of(paths[0]),
        tuple(_conditions(spec, paths[0])),
        tuple(dict.fromkeys(item.title for item in asking)),
        len(asking),
        len(alone),
        so_far(spec, paths[0]),
    )


def so_far(spec: Spec, path: str) -> str:
    """What is stated already where more is asked for; empty where nothing is."""
    stated = spec.values.get(path)
    if not isinstance(stated, Value):
        return ""
    return f"{'estimated' if stated.provenance == 'estimate' else 'typical'} so far"


def _group(
    part: str,
    channels: tuple[str, ...],
    type_number: str,
    members: list[SupplierQuestion],
    opened: Sequence[Finding],
) -> QuestionGroup:
    paths = {path for question in members for path in question.paths}
    asking = [item for item in opened if any(gap.path in paths for gap in item.advice.missing)]
    return QuestionGroup(part, channels, type_number, tuple(members), len(asking))


def alike_paths(spec: Spec, path: str) -> tuple[str, ...]:
    """The same path in every channel that states the same of that part."""
    if not path.startswith(f"{CHANNELS}."):
        return (path,)
    own, local = path.split(".")[1], local_path(path)
    mine = _around(spec, own, local)
    return tuple(
        f"{CHANNELS}.{name}.{local}"
        for name in spec.channels or (own,)
        if name == own or _around(spec, name, local) == mine
    )


def _around(spec: Spec, channel: str, local: str) -> tuple[int, Any]:
    """The innermost section on the way to a path that states anything, and what it states."""
    data: Any = spec.data.get(CHANNELS, {}).get(channel)
    depth = 0
    for step in steps_of(local)[:-1]:
        inner = data.get(step) if isinstance(data, Mapping) else None
        if not isinstance(inner, Mapping):
            break
        data, depth = inner, depth + 1
    return depth, data


def _conditions(spec: Spec, path: str) -> Iterator[str]:
    """Unstated fields of the section that say under which condition the value holds."""
    fields = spec.schema.fields
    section, _, name = local_path(path).rpartition(".")
    for other in fields if section else ():
        above, _, short = other.rpartition(".")
        full = f"{path.removesuffix(name)}{short}"
        if above != section or short == name or full in spec.values:
            continue
        if _names(spec.schema.field_of(path), short) or _names(fields[other], name):
            yield short


def _names(field: Field, name: str) -> bool:
    """Whether a meaning names another field ahead of what it says about silence."""
    about = re.split(r"[;(]", field.meaning)[0]
    return "_" in name and bool(re.search(rf"\b{re.escape(name)}\b", about))


def _field(schema: Schema, path: str) -> Field | None:
    try:
        return schema.field_of(path)
    except KeyError:
        return None


def _section(local: str, field: Field) -> str:
    """The section that a path belongs to; a section that is asked for is its own."""
    return local if field.kind == "section" else re.sub(r"\[.*", "", local.rpartition(".")[0])


def _part(schema: Schema, section: str, of_channel: bool) -> str:
    ratings = schema.part_of(CHANNELS) if of_channel else PRODUCT_PART
    return schema.part_of(section) or ratings


def _channels(paths: tuple[str, ...], schema: Schema) -> tuple[str, ...]:
    return tuple(path.split(".")[1] for path in paths if schema.is_channel_path(path))
