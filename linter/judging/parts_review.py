"""A parts file reviewed by itself: what contradicts in each part, and what checks would want."""

from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from ..check import Milestone
from ..declare import CHANNELS, Designs, Schema, field_path
from ..declare.parts import PART_KEY, part_kinds
from ..evaluation.catalogue import Catalogue, load
from ..evaluation.dependence import Dependences
from ..evaluation.engine import Assessment
from ..finding import Finding, Severity
from ..reading.format import SPEC_KEY, VERSION
from ..reading.loading import Spec, spec_of
from ..reading.parts_file import PartsFile, read_parts
from ..reading.refusal import Refusal, in_order
from ..reading.source import Document
from ..reading.unfold import placed
from .consistency import built_in_findings

STAGE: Milestone = "production"


@dataclass(frozen=True, slots=True)
class Wanted:
    """A value that a part does not state, and how many checks can use it.

    grave: how many of them can find a hazard or destruction; only_for: the designs that the
    value concerns, where these are fewer than those of the part.
    """

    name: str
    unit: str
    checks: int
    grave: int
    only_for: str = ""


@dataclass(frozen=True, slots=True)
class PartReview:
    """One part: the findings on its values, and the values that are wanted."""

    kind: str
    name: str
    stated: int
    findings: tuple[Finding, ...]
    wanted: tuple[Wanted, ...]


@dataclass(frozen=True, slots=True)
class PartsReview:
    """All parts of a file."""

    file: PartsFile
    parts: tuple[PartReview, ...]

    @property
    def holds(self) -> bool:
        """Whether a value of a part cannot be as it is stated."""
        findings = (finding for part in self.parts for finding in part.findings)
        return any(item.severity in (Severity.CRITICAL, Severity.MAJOR) for item in findings)


def review_parts(
    path: Path, catalogue: Catalogue | None = None
) -> PartsReview | tuple[Refusal, ...]:
    """Review a parts file, or say why it cannot be read."""
    catalogue = catalogue or load()
    file = read_parts(path, catalogue.schema)
    return file if isinstance(file, tuple) else reviewed(file, catalogue)


def reviewed(file: PartsFile, catalogue: Catalogue) -> PartsReview | tuple[Refusal, ...]:
    """Review a parts file that has been read, or say why its values cannot be."""
    uses, found = _uses(catalogue), []
    refusals: list[Refusal] = []
    for kind, section in part_kinds(catalogue.schema).items():
        for name in file.names(kind):
            spec = _alone(file, kind, name, section, catalogue.schema)
            if isinstance(spec, Spec):
                found.append(_reviewed(spec, (kind, name), section, catalogue, uses))
            else:
                refusals += spec
    return in_order(refusals) if refusals else PartsReview(file, tuple(found))


def _alone(
    file: PartsFile, kind: str, name: str, section: str, schema: Schema
) -> Spec | tuple[Refusal, ...]:
    """A spec that states the values of one part and nothing else."""
    full = f"{CHANNELS}.{name}.{section}" if schema.is_channel_path(section) else section
    data: Any = dict(file.values(kind, name))
    for step in reversed(full.split(".")):
        data = {step: data}
    places, keys = placed(file.places(kind, name), full, ())
    document = Document({SPEC_KEY: VERSION, **data}, places, keys, (), file.text)
    loaded = spec_of(document, file.file, schema)
    return loaded.spec or loaded.refusals


def _reviewed(
    spec: Spec,
    called: tuple[str, str],
    section: str,
    catalogue: Catalogue,
    uses: Mapping[str, tuple[int, int]],
) -> PartReview:
    graph = Assessment(spec, catalogue, STAGE).graph
    stated = {field_path(path) for path in (*spec.values, *spec.none, *spec.lists)}
    findings = built_in_findings(spec, graph)
    wanted = tuple(_wanted(catalogue.schema, section, stated, uses))
    return PartReview(*called, len(spec.values) - 1, findings, wanted)


def _wanted(
    schema: Schema, section: str, stated: set[str], uses: Mapping[str, tuple[int, int]]
) -> Iterator[Wanted]:
    """The values below a section that a check can use, without those of parts left out."""
    design = _design(schema, stated)
    for path, known in schema.fields.items():
        inner = path.removeprefix(f"{section}.")
        optional = "." in inner and not any(x.startswith(path.rpartition(".")[0]) for x in stated)
        if inner in (path, PART_KEY) or known.model or path in stated or optional:
            continue
        checks, grave = uses.get(path, (0, 0))
        if checks and not _contradicts(known.concerns, design):
            own = known.concerns is not schema.fields[section].concerns
            text = known.concerns.text if known.concerns and own else ""
            yield Wanted(inner, known.unit, checks, grave, text)


def _design(schema: Schema, stated: set[str]) -> Mapping[str, set[str]]:
    """The words of a design that the stated values of a part leave open: what it is made for."""
    found: dict[str, set[str]] = {}
    for path in sorted(stated & schema.fields.keys()):
        concerns = schema.fields[path].concerns
        if concerns is not None and len(concerns.when) == 1:
            for name, words in concerns.when[0].items():
                found[name] = found.get(name, set(words)) & set(words)
    return found


def _contradicts(concerns: Designs | None, design: Mapping[str, set[str]]) -> bool:
    """Whether a value has no place in any design that a part is made for."""
    return concerns is not None and not any(
        all(design.get(name, set(words)) & set(words) for name, words in when.items())
        for when in concerns.when
    )


def _uses(catalogue: Catalogue) -> Mapping[str, tuple[int, int]]:
    """How many checks can use each field, and how many of these are grave."""
    reach = Dependences(catalogue)
    total: Counter[str] = Counter()
    grave: Counter[str] = Counter()
    for entry in catalogue.entries:
        fields = reach[entry.name].fields
        total.update(fields)
        if entry.check.limits.critical is not None or entry.check.stake == "safety":
            grave.update(fields)
    return {path: (count, grave[path]) for path, count in total.items()}
