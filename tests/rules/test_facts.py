"""Each fact of the rules stands in one place, and a published one says where it was read.

Unit and meaning of an input are those of the field or the derived quantity behind its path;
a rule file repeats neither.  A constant of several rules stands in ``formulas/constants.py``.
"""

import ast
import dataclasses
import importlib
import pkgutil
import re
from collections.abc import Iterator, Mapping
from pathlib import Path
from types import ModuleType

from ampreview import rules
from ampreview.linter.check import Arguments, Input, Source
from ampreview.linter.evaluation.catalogue import Catalogue, load

CATALOGUE: Catalogue = load()


def _modules() -> Iterator[ModuleType]:
    for info in pkgutil.walk_packages(rules.__path__, f"{rules.__name__}."):
        if not info.ispkg:
            yield importlib.import_module(info.name)


def _written(module: ModuleType) -> Iterator[Input]:
    """The inputs of a module as its file has them, before the catalogue fills them in."""
    check = getattr(module, "CHECK", None)
    found = [check.inputs] if check else []
    found += [way.inputs for item in getattr(module, "DERIVED", ()) for way in item.ways]
    for inputs in found:
        yield from (item for item in inputs.values() if isinstance(item, Input))


def _all_inputs() -> list[Arguments]:
    found = [entry.check.inputs for entry in CATALOGUE.entries]
    return found + [way.inputs for item in CATALOGUE.derived.values() for way in item.ways]


def _told(path: str) -> tuple[str, str]:
    name = path.removeprefix("all ").partition(":")[0]
    known = CATALOGUE.schema.fields.get(name) or CATALOGUE.derived.get(name)
    return (known.unit, known.meaning) if known else ("", "")


def test_no_input_repeats_its_field() -> None:
    for module in _modules():
        for item in _written(module):
            unit, meaning = _told(item.path)
            told = f"{module.__name__}, {item.path}: the field says it"
            assert item.unit != unit or not unit, told
            assert item.meaning != meaning or not meaning, told


LOCATOR = re.compile(
    r"\b(pp?\. ?\d|pages?\b|tables?\b|figures?\b|figs?\. ?\d|sections?\b|clauses?\b|articles?\b"
    r"|annex\b|chapters?\b|equations?\b|sheet \d|\d+\.\d+\.\d+|doi\b)"
    r"|\b(abstract|register|notebook|entry \d|threads?|note|knowledge base|a0057|README)\b"
    r"|reddit|\w+\.com\b",
    re.IGNORECASE,
)
"""A place in a text (page, table, figure, clause), or a text of one page on the web."""


def _sources(item: object) -> Iterator[Source]:
    """Every source inside a check or a derived quantity."""
    if isinstance(item, Source):
        yield item
    elif isinstance(item, Mapping):
        yield from (source for value in item.values() for source in _sources(value))
    elif isinstance(item, tuple):
        yield from (source for value in item for source in _sources(value))
    elif dataclasses.is_dataclass(item):
        for field in dataclasses.fields(item):
            yield from _sources(getattr(item, field.name))


def test_a_published_source_says_where() -> None:
    owners = (*(entry.check for entry in CATALOGUE.entries), *CATALOGUE.derived.values())
    found = {source for owner in owners for source in _sources(owner) if source.kind == "published"}
    assert found
    told = sorted(f"{source.title}, {source.where}" for source in found)
    vague = [text for text in told if not LOCATOR.search(text)]
    assert not vague, "no page, table or section, nor 'no page given'"


def test_no_constant_is_written_in_two_files() -> None:
    found: dict[tuple[str, str], Path] = {}
    for file in sorted(Path(rules.__path__[0]).rglob("*.py")):
        for call in ast.walk(ast.parse(file.read_text("utf-8"))):
            if isinstance(call, ast.Call) and ast.unparse(call.func) == "Constant":
                value, meaning = ast.unparse(call.args[0]), ast.unparse(call.args[1])
                first = found.setdefault((value, meaning), file)
                assert first == file, f"{value}, {meaning}: see formulas/constants.py"


def test_the_catalogue_fills_in_every_unit_and_meaning() -> None:
    for inputs in _all_inputs():
        for item in inputs.values():
            if isinstance(item, Input):
                assert item.unit, item.path
                assert item.meaning, item.path
                unit, meaning = _told(item.path)
                assert item.unit == unit or _is_own(item.path, "unit", item.unit)
                assert meaning.startswith(item.meaning) or _is_own(
                    item.path, "meaning", item.meaning
                )


def _is_own(path: str, what: str, text: str) -> bool:
    """Whether some rule file gives this unit or meaning itself, or the program does."""
    written = (item for module in _modules() for item in _written(module) if item.path == path)
    return path.startswith("channel_") or any(getattr(item, what) == text for item in written)
