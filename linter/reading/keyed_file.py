"""The list of deviations in a file of its own, beside the spec."""

from dataclasses import dataclass, replace
from pathlib import Path

from ..declare import load_schema
from .format import DEVIATIONS_KEY, SPEC_KEY, VERSION
from .loading import Deviation, Spec, spec_of
from .plain_text import content_of
from .refusal import Refusal
from .side_file import first_key, read_side_file, unknown_keys


@dataclass(frozen=True, slots=True)
class Permissions:
    """The deviations of a file of their own, and its text for the hash."""

    file: str
    text: str
    deviations: tuple[Deviation, ...]


def read_deviations(path: Path) -> Permissions | tuple[Refusal, ...]:
    """A file of deviations: the same list as a spec may hold, under its own first key."""
    kind = "a list of deviations"
    content = content_of(path, kind)
    if isinstance(content, Refusal):
        return (content,)
    document = read_side_file(content, str(path), DEVIATIONS_KEY, kind)
    refusals = [*document.refusals, *first_key(document, str(path), DEVIATIONS_KEY)]
    refusals += unknown_keys(document, "", (DEVIATIONS_KEY, "deviations"), "deviations:")
    if refusals or document.data is None:
        return tuple(refusals)
    items = document.data.get("deviations") or []
    data = {SPEC_KEY: VERSION, "deviations": items}
    loaded = spec_of(replace(document, data=data), str(path), load_schema())
    if not isinstance(loaded.spec, Spec):
        return loaded.refusals
    return Permissions(str(path), document.text, loaded.spec.deviations)
