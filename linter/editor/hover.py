"""What a field is, in Markdown: meaning, unit, usual range, default, words, who uses it."""

from collections.abc import Iterator, Mapping
from functools import cache

from ..asking.json_schema import described
from ..check import Input
from ..declare import Field
from ..evaluation.catalogue import load
from ..evaluation.dependence import Dependences
from ..reports.phrases import escaped
from .lookup import Found, words_at

MOST_NAMED = 8


def told_of(found: Found) -> str:
    """The text about a field."""
    return "\n\n".join(_paragraphs(found))


def _paragraphs(found: Found) -> Iterator[str]:
    field = found.field
    yield f"**{escaped(found.path)}**"
    yield escaped(described(field))
    words = words_at(found)
    if words:
        yield f"one of: {escaped(', '.join(words))}"
    if field.default is not None:
        yield f"default: {escaped(_default(field))}"
    if field.example and not words:
        yield f"example: `{field.example}`"
    yield from _used(found.path)


def _default(field: Field) -> str:
    assert field.default is not None
    leaning = field.default.leaning
    return f"{field.default.value}" + ("" if leaning == "absent" else f" ({leaning})")


def _used(path: str) -> Iterator[str]:
    """The checks that take a field in themselves, then how many it reaches through others."""
    named_by, reached_by = users_of_fields()
    direct, reached = named_by.get(path, []), reached_by.get(path, 0)
    if direct:
        named = "\n".join(f"- {escaped(title)}" for title in direct[:MOST_NAMED])
        more = len(direct) - MOST_NAMED
        yield f"used by\n\n{named}" + (f"\n- and {more} more" if more > 0 else "")
    others = reached - len(direct)
    if others > 0:
        beside = "further checks use" if direct else "checks use"
        yield f"{others} {beside} it through what follows from it"


@cache
def users_of_fields() -> tuple[Mapping[str, list[str]], Mapping[str, int]]:
    """By field: the titles of the checks that have it as input, and how many it can reach."""
    direct: dict[str, list[str]] = {}
    reached: dict[str, int] = {}
    catalogue = load()
    dependences = Dependences(catalogue)
    for entry in catalogue.entries:
        inputs = [x for x in entry.check.inputs.values() if isinstance(x, Input)]
        for path in dict.fromkeys(x.path.removeprefix("all ").partition(":")[0] for x in inputs):
            direct.setdefault(path, []).append(entry.check.title)
        for path in dependences[entry.name].fields:
            reached[path] = reached.get(path, 0) + 1
    return direct, reached
