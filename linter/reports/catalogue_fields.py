"""The glossary: every field of the spec and every derived quantity, from the models alone."""

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass

from rich.console import Console
from rich.padding import Padding
from rich.table import Table
from rich.text import Text

from ..check import Assumption, Constant, Derived, Input, Source, Way
from ..declare import CHANNELS, Field, Schema
from ..evaluation.catalogue import Catalogue
from .form_text import GIVEN, LEANINGS
from .phrases import cited, escaped

GROUPED = ("section", "sections", "named sections")
WHOLE_FILE = "the file itself"
FIELD_HEADS = ("field", "unit", "meaning", "usual and given as", "default")
QUANTITY_HEADS = ("quantity", "unit", "meaning", "how it follows", "where it may be stated")
SILENT = "default: "
SCOPES = {"channel": "of each channel", "product": "of the product"}
HOW = (
    "Fields below a channel are given under channels.NAME. A field that is not stated is not"
    " assumed unless it has a default; what needs it is then open."
)


@dataclass(frozen=True, slots=True)
class Term:
    """One field or quantity; ``lines`` are printed one below the other."""

    name: str
    unit: str
    meaning: str
    first: tuple[str, ...] = ()
    second: tuple[str, ...] = ()

    @property
    def lines(self) -> tuple[str, ...]:
        """The notes, ways to a quantity each on a line, the rest joined."""
        apart = self.first and self.first[0].startswith("= ")
        first = self.first if apart else ("; ".join(self.first),)
        return tuple(line for line in (*first, "; ".join(self.second)) if line)


@dataclass(frozen=True, slots=True)
class FieldGroup:
    """Terms under one heading."""

    title: str
    about: str
    terms: tuple[Term, ...]


def field_groups(schema: Schema, wanted: Sequence[str]) -> list[FieldGroup]:
    """The fields by section, those asked for: a path takes in what lies below it."""
    groups: dict[str, list[Term]] = {}
    for path, field in schema.fields.items():
        if field.kind in GROUPED or not _is_asked(schema, path, wanted):
            continue
        section, _, name = path.rpartition(".")
        groups.setdefault(section or _root(schema, path), []).append(_field(name, field))
    return [
        FieldGroup(*_heading(schema, section), tuple(terms)) for section, terms in groups.items()
    ]


def is_field_path(schema: Schema, path: str) -> bool:
    """Whether there is a field or a section at a path."""
    return path in schema.fields or any(_is_asked(schema, known, [path]) for known in schema.fields)


def quantity_groups(catalogue: Catalogue, wanted: Sequence[str]) -> list[FieldGroup]:
    """The derived quantities by scope, in alphabetical order."""
    found = sorted(catalogue.derived.values(), key=lambda item: item.name.lower())
    chosen = [item for item in found if not wanted or item.name in wanted]
    groups = []
    for scope, title in SCOPES.items():
        terms = tuple(_quantity(item) for item in chosen if item.each == scope)
        if terms:
            groups.append(FieldGroup(f"Derived quantities {title}", "", terms))
    return groups


def print_fields(groups: Iterable[FieldGroup], console: Console) -> None:
    """Print terms for a person: the name, then what is known of it."""
    for group in groups:
        console.print(Text(group.title, style="bold underline"))
        if group.about:
            console.print(Padding(Text(group.about, style="italic"), (0, 0, 0, 2)))
        for term in group.terms:
            unit = f"  [{term.unit}]" if term.unit else ""
            console.print(Padding(Text.assemble((term.name, "bold"), unit), (0, 0, 0, 2)))
            _print_lines(term, console)
        console.print()


def field_markdown(groups: Iterable[FieldGroup]) -> str:
    """The fields as tables in Markdown."""
    return _markdown("Fields of the spec file", HOW, groups, FIELD_HEADS)


def quantity_markdown(groups: Iterable[FieldGroup]) -> str:
    """The derived quantities as tables in Markdown."""
    about = "The first way counts of which everything is known and whose words match."
    return _markdown("Derived quantities", about, groups, QUANTITY_HEADS)


def _print_lines(term: Term, console: Console) -> None:
    table = Table.grid(padding=(0, 1))
    table.add_column(ratio=1, overflow="fold")
    table.add_row(Text(term.meaning))
    for line in term.lines:
        table.add_row(Text(line, style="dim"))
    console.print(Padding(table, (0, 0, 0, 6)))


def _markdown(title: str, about: str, groups: Iterable[FieldGroup], heads: Sequence[str]) -> str:
    parts = [f"# {title}", escaped(about)]
    for group in groups:
        parts.append(f"## {escaped(group.title)}")
        if group.about:
            parts.append(escaped(group.about))
        rows = [_row(heads, str), _row(["---"] * len(heads), str)]
        for term in group.terms:
            cells = [term.name, term.unit, term.meaning]
            cells += ["; ".join(term.first), "; ".join(term.second).removeprefix(SILENT)]
            rows.append(_row(cells, escaped))
        parts.append("\n".join(rows))
    return "\n\n".join(parts) + "\n"


def _row(cells: Sequence[str], written: Callable[[str], str]) -> str:
    return f"| {' | '.join(written(cell) for cell in cells)} |"


def _is_asked(schema: Schema, path: str, wanted: Sequence[str]) -> bool:
    return not wanted or any(
        path == name
        or path.startswith((f"{name}.", f"{name}[]."))
        or (name == CHANNELS and schema.is_channel_path(path))
        for name in wanted
    )


def _root(schema: Schema, path: str) -> str:
    return CHANNELS if schema.is_channel_path(path) else ""


def _heading(schema: Schema, section: str) -> tuple[str, str]:
    """The title of a section and what it is about."""
    if not section:
        return WHOLE_FILE, ""
    field = schema.fields[section.removesuffix("[]")]
    where = "channels.NAME" if section == CHANNELS else section
    if schema.is_channel_path(section):
        where = f"channels.NAME.{section}"
    none = "; none if it is not in the product" if field.can_be_none else ""
    return where, f"{field.meaning.rstrip('.')}{none}"


def _field(name: str, field: Field) -> Term:
    unit = "" if field.unit in ("1", "word") else field.unit
    return Term(name, unit, field.meaning, tuple(_usage(field)), tuple(_silence(field)))


def _usage(field: Field) -> Iterator[str]:
    if field.words:
        yield f"one of {', '.join(field.words)}"
    if field.usual:
        high = f", its upper end {field.usual_high}" if field.usual_high else ""
        yield f"usually {field.usual}{high}"
    if field.possible:
        yield f"refused outside {field.possible}"
    if given := GIVEN.get(field.given):
        yield f"given as: {given}"
    if field.example and not field.words:
        yield f"example: {field.example}"
    if field.concerns:
        yield f"for {field.concerns.text}"


def _silence(field: Field) -> Iterator[str]:
    if field.default is not None:
        yield f"{SILENT}{_assumed(field.default)}"
    elif field.required:
        yield "has to be stated"


def _assumed(known: Assumption) -> str:
    """An assumption with its leaning and its basis."""
    value = "no limit" if known.value == float("inf") else known.value
    value = f"{value:g}" if isinstance(value, float) else value
    return f"{value}{LEANINGS.get(known.leaning, '')}: {_known(known.basis)}"


def _known(source: Source) -> str:
    """A basis without brackets in brackets."""
    text = f"{source.title}, {source.where}" if source.where else source.title
    text = text.removeprefix("convention of the spec file: ").removeprefix("bound: ")
    standing = {"from memory": "from memory", "quoted": "as quoted"}.get(source.kind)
    return f"{text}, {standing}" if standing else text


def _quantity(item: Derived) -> Term:
    unit = "" if item.unit in ("1", "word", "set") else item.unit
    stated = (f"may be stated as {item.stated_at}",) if item.stated_at else ()
    sources = "; ".join(cited(source) for source in item.sources)
    told = (f"source: {sources}",) if sources else ()
    return Term(item.name, unit, item.meaning, tuple(map(_way, item.ways)), stated + told)


def _is_other(name: str, item: Input | Constant) -> bool:
    """Whether a name in a formula is not that of the field or quantity behind it."""
    return isinstance(item, Constant) or item.path.rpartition(".")[2] != name


def _taken(item: Input | Constant) -> str:
    return item.value if isinstance(item, Constant) else item.path


def _way(way: Way) -> str:
    text = f"= {way.formula}"
    if way.when:
        words = (
            f"{path} is {allowed if isinstance(allowed, str) else ' or '.join(allowed)}"
            for path, allowed in way.when.items()
        )
        text += f", where {' and '.join(words)}"
    others = [
        f"{name} = {_taken(item)}" for name, item in way.inputs.items() if _is_other(name, item)
    ]
    if others:
        text += f"; {', '.join(others)}"
    if way.assumes:
        text += f"; assumed{LEANINGS.get(way.assumes.leaning, '')}: {_known(way.assumes.basis)}"
    return text
