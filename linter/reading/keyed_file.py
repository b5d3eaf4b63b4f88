"""Lists of a spec in files of their own beside it: deviations, measurements."""

from dataclasses import dataclass, replace
from pathlib import Path

from ..declare import load_schema
from .format import DEVIATIONS_KEY, MEASURED_KEY, SPEC_KEY, VERSION
from .loading import Deviation, Measurement, Spec, spec_of
from .plain_text import content_of
from .refusal import Refusal
from .side_file import first_key, read_side_file, unknown_keys


@dataclass(frozen=True, slots=True)
class Permissions:
    """The deviations of a file of their own, and its text for the hash."""

    file: str
    text: str
    deviations: tuple[Deviation, ...]


@dataclass(frozen=True, slots=True)
class Measured:
    """The measurements of a file of their own, and its text for the hash."""

    file: str
    text: str
    measurements: tuple[Measurement, ...]


def read_deviations(path: Path) -> Permissions | tuple[Refusal, ...]:
    """A file of deviations: the same list as a spec may hold, under its own first key."""
    found = _read_list(path, DEVIATIONS_KEY, "deviations", "a list of deviations")
    if isinstance(found, tuple):
        return found
    return Permissions(str(path), found.text, found.deviations)


def read_measured(path: Path) -> Measured | tuple[Refusal, ...]:
    """A file of measurements: the same list as a spec may hold, under its own first key."""
    found = _read_list(path, MEASURED_KEY, "measured", "a list of measurements")
    if isinstance(found, tuple):
        return found
    return Measured(str(path), found.text, found.measurements)


def _read_list(path: Path, key: str, name: str, kind: str) -> Spec | tuple[Refusal, ...]:
    """A file that holds one list of a spec alone, as a spec that states nothing else."""
    content = content_of(path, kind)
    if isinstance(content, Refusal):
        return (content,)
    document = read_side_file(content, str(path), key, kind)
    refusals = [*document.refusals, *first_key(document, str(path), key)]
    refusals += [] if refusals else unknown_keys(document, "", (key, name), f"{name}:")
    if refusals or document.data is None:
        return tuple(refusals)
    items = document.data.get(name) or []
    data = {SPEC_KEY: VERSION, name: items}
    loaded = spec_of(replace(document, data=data), str(path), load_schema())
    if not isinstance(loaded.spec, Spec):
        return loaded.refusals
    return loaded.spec
