"""Data flows one way: a room imports only from the rooms above its own.

``ROOMS`` goes from what all build on to what is asked for by name.  A room is a folder of the
linter, or single modules that stand beside the folders; a new module needs no entry here.  The
rules know the vocabulary alone; the linter names them by string.
"""

import ast
import re
from collections.abc import Iterator
from graphlib import CycleError, TopologicalSorter
from pathlib import Path

import pytest

import ampreview.linter
import ampreview.rules
from ampreview.linter.declare import load_schema

LINTER = Path(next(iter(ampreview.linter.__path__)))
RULES = Path(next(iter(ampreview.rules.__path__)))
ROOMS: tuple[tuple[str, ...], ...] = (
    ("bringup_step", "check", "design_change", "finding", "measurable", "picture"),
    ("quantities",),
    ("declare",),
    ("reading",),
    ("evaluation",),
    ("judging",),
    ("changes",),
    ("rewriting",),
    ("asking",),
    ("batch",),
    ("sweeping",),
    ("reports",),
    ("editor",),
    ("commands",),
    ("cli", "__main__"),
)
ROW = {name: number for number, names in enumerate(ROOMS) for name in names}
VOCABULARY = (
    "ampreview.linter.check",
    "ampreview.linter.declare",
    "ampreview.linter.design_change",
    "ampreview.linter.picture",
)
WORDS_OF = {
    "bringup": (VOCABULARY[0], "ampreview.linter.bringup_step"),
    "changes": (VOCABULARY[0], VOCABULARY[2]),
    "spec": VOCABULARY[:2],
    "pictures": (VOCABULARY[0], "ampreview.linter.picture"),
    "measurable.py": ("ampreview.linter.measurable",),
    "shown.py": (VOCABULARY[0], "ampreview.linter.measurable"),
}
# Names of sections that are plain English or belong to the language of rules as well.
PLAIN_ENGLISH = {"line", "cell", "lead", "safety", "signal", "spacing", "thermal"}
ONLY_HERE = {
    "ruamel": {"reading"},
    "rich": {"reports", "commands"},
    "jinja2": {"reports"},
    "lsprotocol": {"editor"},
    "pygls": {"editor"},
    "matplotlib": {"reports"},
}
# The format's own words: the first key of a file, and what every kind of product has.
FORMAT_WORDS = {
    "amplifier_spec",
    "channels",
    "check",
    "deviations",
    "measured",
    "milestone",
    "permitted_by",
    "place",
    "reason",
    "revision",
    "title",
    "until",
    "up_to",
}


def modules(root: Path) -> list[Path]:
    return [path for path in sorted(root.rglob("*.py")) if path != root / "__init__.py"]


def imported(path: Path, package: str) -> Iterator[str]:
    """Dotted names that a file imports, relative ones made absolute."""
    parts = package.split(".")
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            base = parts[: len(parts) - node.level + 1] if node.level else []
            stem = [*base, *(node.module.split(".") if node.module else [])]
            yield ".".join(stem)
            if node.level and not node.module:
                yield from (".".join([*stem, alias.name]) for alias in node.names)


def package_of(path: Path, root: Path, name: str) -> str:
    return ".".join([name, *path.relative_to(root).parent.parts])


def top(dotted: str, prefix: str) -> str | None:
    """The module or folder of the linter that a dotted name leads to."""
    rest = dotted.removeprefix(prefix + ".")
    return rest.split(".")[0] if rest != dotted else None


def test_a_room_imports_only_from_rooms_above_its_own() -> None:
    for path in modules(LINTER):
        imports_from_above(path)


def imports_from_above(path: Path) -> None:
    own = path.relative_to(LINTER).parts[0].removesuffix(".py")
    assert own in ROW, f"{own} is no room of this test's table"
    for name in imported(path, package_of(path, LINTER, "ampreview.linter")):
        assert not name.startswith("ampreview.rules"), f"{path.name} imports {name}"
        other = top(name, "ampreview.linter")
        if other is not None and other != own:
            assert ROW[other] <= ROW[own], f"{path.name} imports {name}, a room below its own"
        library = name.split(".")[0]
        if library in ONLY_HERE:
            assert own in ONLY_HERE[library], f"{path.name} imports {library}"


def test_no_modules_import_each_other_in_a_circle() -> None:
    graph: dict[str, set[str]] = {}
    for root, package in ((LINTER, "ampreview.linter"), (RULES, "ampreview.rules")):
        for path in modules(root):
            name = ".".join([package_of(path, root, package), path.stem])
            name = name.removesuffix(".__init__")
            graph[name] = set(imported(path, package_of(path, root, package))) - {name}
    graph["ampreview.linter.declare.accept"].discard("ampreview.linter.declare.field")  # types
    known = {name: below & graph.keys() for name, below in graph.items()}
    try:
        TopologicalSorter(known).prepare()
    except CycleError as error:
        pytest.fail(" imports ".join(reversed(error.args[1])))


def test_the_linter_holds_no_field_name() -> None:
    """No path of the spec, no field name of several words, no name of a section."""
    fields = load_schema().fields
    names = {path.rpartition(".")[2] for path in fields} - FORMAT_WORDS
    sections = {path.rpartition(".")[2] for path, field in fields.items() if field.model}
    sections -= FORMAT_WORDS | PLAIN_ENGLISH
    telling = {name for name in names if "_" in name} | sections | {"amplifier", "rail"}
    for path in modules(LINTER):
        for number, line in enumerate(path.read_text("utf-8").splitlines(), 1):
            words = set(re.findall(r"[A-Za-z_0-9]+", line))
            assert not words & telling, f"{path}:{number}: {sorted(words & telling)}"


def test_the_rules_know_only_the_data_types_of_a_check() -> None:
    for path in modules(RULES):
        knows_only_data_types(path)


def knows_only_data_types(path: Path) -> None:
    folder = path.relative_to(RULES).parts[0]
    for name in imported(path, package_of(path, RULES, "ampreview.rules")):
        if name.startswith("ampreview.linter"):
            allowed = WORDS_OF.get(folder, VOCABULARY[:1])
            assert name in allowed, f"{path.name} imports {name}"
        other = top(name, "ampreview.rules")
        if folder == "formulas":
            assert other in (None, "formulas"), f"{path.name} imports {name}"
        elif folder == "spec":
            assert other in (None, "spec"), f"{path.name} imports {name}"
        elif folder == "derived":
            assert other in (None, "formulas", "derived"), f"{path.name} imports {name}"
        else:
            below = (None, "formulas", "derived", "hazards", "shown", folder)
            assert other in below, f"{path.name} imports {name}"
        assert name.split(".")[0] not in ("pydantic", "pint", "ruamel", "rich"), path.name


def test_files_and_functions_stay_short() -> None:
    """300 lines a file, 40 lines a function, docstrings and signatures not counted."""
    for root in (LINTER, RULES):
        for path in modules(root):
            text = path.read_text(encoding="utf-8")
            assert text.count("\n") <= 300, f"{path} has {text.count(chr(10))} lines"
            for node in ast.walk(ast.parse(text)):
                if isinstance(node, ast.FunctionDef):
                    first = node.body[0]
                    documented = ast.get_docstring(node) is not None and len(node.body) > 1
                    start = node.body[1].lineno if documented else first.lineno
                    length = (node.end_lineno or start) - start + 1
                    assert length <= 40, f"{path}: {node.name} has {length} lines"
