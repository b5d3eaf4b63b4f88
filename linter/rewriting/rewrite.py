"""Changed values written back into the text of a spec, everything else left as it is.

A printer of YAML would lay the whole file out anew.  Here only the characters that change
are touched, so that comments, order, anchors, quotes and spacing are kept and the
difference is as small as the change.  The events of ruamel's parser tell where things
stand.  A change at one path never moves another: what several channels share through an
alias or a merge key is edited once where all of them change, else overridden where one
does.  The result is read back and compared before it is given out.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from ..reading.by_path import steps_of
from ..reading.loading import Spec
from ..reading.source import events, read
from .splice import (
    Part,
    insert,
    merged,
    open_alias,
    override,
    own,
    remark,
    remark_above,
    replace,
    value_start,
)
from .yaml_text import ONE_VALUE, in_style_of

MOST_EDITS = 2_000
USUAL_STEP = 2

Steps = tuple[str | int, ...]


class RewriteError(Exception):
    """A change that cannot be written into this text without moving something else."""


@dataclass(frozen=True, slots=True)
class Change:
    """A new value for a path, as plain data, and why it changes."""

    data: Any
    why: str = ""


def rewritten(spec: Spec, changes: Mapping[str, Change]) -> str:
    """The text of a spec with some values changed or added, without what was measured.

    Raises RewriteError where the text cannot take them, or where the spec refuses them.
    """
    spec = spec.as_stated()
    wanted = {path: _in_style(spec, path, change.data) for path, change in changes.items()}
    loaded = spec.with_values(wanted)
    if loaded.spec is None:
        refusal = loaded.refusals[0]
        raise RewriteError(f"{refusal.place.path}: {refusal.problem}")
    changed = loaded.spec
    text = _reached(spec.text, changed.data if changed.written is None else changed.written)
    for path, change in changes.items():
        if change.why:
            text = _remarked(text, tuple(steps_of(path)), change.why)
    return text


def parts_of(text: str) -> Part:
    """The parts of a readable text, the whole file's mapping first."""
    stack: list[Part] = []
    anchors: dict[str, Part] = {}
    root: Part | None = None
    for event in events(text):
        kind = type(event).__name__
        if kind in ("MappingEndEvent", "SequenceEndEvent"):
            part = stack.pop()
            part.end = _end(part, event, text)
            continue
        new = _part(event, kind, text, anchors)
        if new is None:
            continue
        if stack:
            _attach(stack[-1], new, text)
        root = root or new
        if new.kind in ("mapping", "list"):
            stack.append(new)
    if root is None or root.kind != "mapping":
        raise RewriteError("the file has no spec")
    return root


def _part(event: Any, kind: str, text: str, anchors: dict[str, Part]) -> Part | None:
    if kind not in ("ScalarEvent", "AliasEvent", "MappingStartEvent", "SequenceStartEvent"):
        return None
    start, end, column = event.start_mark.index, event.end_mark.index, event.start_mark.column
    if kind == "AliasEvent":
        return Part("alias", start, end, column, event.anchor, target=anchors[event.anchor])
    if kind == "ScalarEvent":
        end = start + len(text[start:end].rstrip())
        part = Part("scalar", start, end, column, event.value, bool(event.implicit[0]))
    else:
        shape: Any = "mapping" if kind == "MappingStartEvent" else "list"
        part = Part(shape, start, end, column, brackets=bool(event.flow_style))
    part.anchor = event.anchor
    if event.anchor is not None:
        anchors[event.anchor] = part
    return part


def _attach(above: Part, new: Part, text: str) -> None:
    """Add a part; a value that is not there stands behind the colon of its key."""
    is_value = above.kind == "mapping" and len(above.items) % 2
    if is_value and new.kind == "scalar" and new.plain and not new.text and not new.anchor:
        new.start = new.end = _behind_colon(text, above.items[-1])
    above.items.append(new)


def _behind_colon(text: str, key: Part) -> int:
    """Where the value of a key would begin; a lone key in brackets has no colon."""
    rest = text[key.end :]
    return value_start(text, key) if rest.lstrip().startswith(":") else key.end


def _end(part: Part, event: Any, text: str) -> int:
    if part.brackets or not part.items:
        return int(event.end_mark.index)
    return part.items[-1].end


def _in_style(spec: Spec, path: str, data: Any) -> Any:
    field = spec.schema.field_of(path)
    if field.kind not in ("quantity", "count"):
        return data
    return in_style_of(_at(spec.data, tuple(steps_of(path))), data, field.unit)


def _reached(text: str, goal: Any) -> str:
    """The text edited until it says what ``goal`` says, and nothing else."""
    for _ in range(MOST_EDITS):
        wrong = list(_differences(goal, _data(text), ()))
        if not wrong:
            return text
        root = parts_of(text)
        steps = min(wrong, key=lambda item: _crossings(root, item))
        edited = _edited(text, root, steps, goal)
        if edited == text:
            break
        text = edited
    raise RewriteError("the file is laid out in a way that this change cannot be written into")


def _data(text: str) -> Mapping[str, Any]:
    document = read(text, "")
    if document.data is None or document.refusals:
        raise RewriteError("the change would make the file unreadable")
    return document.data


def _differences(goal: Any, now: Any, at: Steps) -> Iterator[Steps]:
    """The topmost paths at which two trees say something else; a blank says nothing."""
    both = isinstance(goal, Mapping) and isinstance(now, Mapping)
    if both and (goal.keys() == now.keys() or not (goal.keys() | now.keys()) <= ONE_VALUE):
        for key in {**goal, **now}:
            yield from _differences(goal.get(key), now.get(key), (*at, key))
    elif isinstance(goal, list) and isinstance(now, list) and len(goal) == len(now):
        for number, (wanted, found) in enumerate(zip(goal, now, strict=True)):
            yield from _differences(wanted, found, (*at, number))
    elif goal != now and not (_silent(goal) and _silent(now)):
        yield at


def _silent(data: Any) -> bool:
    """Whether a tree states nothing at all."""
    if isinstance(data, Mapping):
        return all(_silent(item) for item in data.values())
    return data is None


def _at(data: Any, steps: Steps) -> Any:
    for step in steps:
        if isinstance(step, int):
            data = data[step] if isinstance(data, list) and step < len(data) else None
        else:
            data = data.get(step) if isinstance(data, Mapping) else None
    return data


def _below(part: Part, step: str | int) -> tuple[Part, bool] | None:
    """The part below, and whether a merge leads to it."""
    if isinstance(step, int):
        return (part.items[step], False) if part.kind == "list" else None
    if part.kind != "mapping":
        return None
    found = own(part, step)
    if found:
        return found[1], False
    through = merged(part, step)
    return (through[1], True) if through else None


def _crossings(root: Part, steps: Steps) -> int:
    """How many aliases and merges lie on the way: none for text that the path owns."""
    part, count = root, 0
    for step in steps:
        found = _below(part, step)
        if found is None:
            return count
        below, through = found
        count += through + (below.kind == "alias")
        part = below.behind
    return count


def _edited(text: str, root: Part, steps: Steps, goal: Any) -> str:
    """One edit on the way to what ``goal`` says at a path."""
    part, inside = root, False
    for depth, step in enumerate(steps, 1):
        inside = inside or part.brackets
        wanted = _at(goal, steps[:depth])
        last = depth == len(steps)
        key: Part | None = None
        if isinstance(step, int):
            below = part.items[step]
        else:
            found = own(part, step)
            if found is None:
                return _added(text, part, step, wanted, last, _step(root))
            key, below = found
        if not last and below.kind == "alias" and _is_section(below.behind, wanted):
            indent = None if inside or key is None else key.column + _step(root)
            return open_alias(text, key, below, indent)
        if last or below.kind in ("scalar", "alias"):
            return replace(text, key, below, wanted, inside)
        part = below
    return text


def _added(text: str, mapping: Part, name: str, wanted: Any, last: bool, step: int) -> str:
    """A key that the mapping does not hold itself: a section it merges is merged below."""
    provider = merged(mapping, name)
    if provider and not last and _is_section(provider[1].behind, wanted):
        return override(text, mapping, name, provider, step)
    return insert(text, mapping, name, wanted, step)


def _is_section(part: Part, wanted: Any) -> bool:
    """Whether a part holds keys of its own, unlike a quantity written as a mapping."""
    return part.kind == "mapping" and not (
        isinstance(wanted, Mapping) and wanted.keys() <= ONE_VALUE
    )


def _step(root: Part) -> int:
    """The indent of one level, as the file has it."""
    for _, value in root.pairs():
        if value.kind == "mapping" and not value.brackets and value.items[0].column > 0:
            return value.items[0].column
    return USUAL_STEP


def _remarked(text: str, steps: Steps, why: str) -> str:
    """The text with a reason behind a value, or above it where no comment can follow."""
    part, inside = parts_of(text), False
    key: Part | None = None
    for step in steps:
        found = _below(part, step)
        if found is None:
            return text
        inside = inside or part.brackets
        entry = own(part, step) if isinstance(step, str) else None
        key, part = entry[0] if entry else None, found[0].behind
    place = part if part.brackets or part.kind == "scalar" or key is None else key
    note = f"{steps[-1]} {why}" if inside else why
    if note in text[place.end :].partition("\n")[0]:
        return text
    before = _data(text)
    for write in (remark, remark_above):
        commented = write(text, place, note)
        try:
            if _data(commented) == before:
                return commented
        except RewriteError:
            continue
    return text
