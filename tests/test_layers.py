"""Data flows one way: each module imports only from the layers below its own.

``LAYERS`` goes from the bottom to the top.  The rules know of the linter only the data
types of a check; the linter names the rules by string alone.
"""

import ast
from collections.abc import Iterator
from pathlib import Path

import pytest

import ampreview.linter
import ampreview.rules

LINTER = Path(next(iter(ampreview.linter.__path__)))
RULES = Path(next(iter(ampreview.rules.__path__)))
LAYERS: tuple[tuple[str, ...], ...] = (
    (
        "check",
        "effort",
        "identity",
        "units",
        "value",
        "writing",
    ),
    (
        "finding",
        "letter_code",
        "spelling",
    ),
    (
        "milestone",
        "refusal",
        "unreadable",
    ),
    (
        "flatten",
        "notation",
        "plain_text",
    ),
    (
        "quantity",
        "revision",
        "syntax",
    ),
    (
        "node",
        "source",
        "spec",
        "stock",
        "yaml_text",
    ),
    (
        "catalogue",
        "form",
        "schema",
        "splice",
        "threshold",
        "tolerance",
        "unknown_key",
    ),
    (
        "reach",
        "validation",
    ),
    ("loading",),
    (
        "change",
        "companion",
        "house",
        "leaves",
        "rewrite",
    ),
    ("graph",),
    (
        "consistency",
        "typical",
        "wording",
    ),
    (
        "answers",
        "deviation",
        "engine",
    ),
    (
        "builds",
        "house_file",
        "solve",
        "worksheet",
    ),
    (
        "conflict",
        "criteria",
    ),
    ("review",),
    (
        "comparison",
        "questions",
        "spread",
        "trial",
    ),
    ("remedy",),
    (
        "batch",
        "plan",
    ),
    ("amendment",),
    ("reports",),
    ("commands",),
    ("cli",),
    ("__main__",),
)
ROW = {name: number for number, names in enumerate(LAYERS) for name in names}
ONLY_HERE = {
    "ruamel": {"source", "rewrite"},
    "rich": {"reports", "commands"},
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


@pytest.mark.parametrize("path", modules(LINTER), ids=lambda p: str(p.relative_to(LINTER)))
def test_the_linter_imports_only_from_lower_layers(path: Path) -> None:
    own = path.relative_to(LINTER).parts[0].removesuffix(".py")
    assert own in ROW, f"{own} stands in no layer of this test's table"
    for name in imported(path, package_of(path, LINTER, "ampreview.linter")):
        assert not name.startswith("ampreview.rules"), f"{path.name} imports {name}"
        other = top(name, "ampreview.linter")
        if other is not None and other != own:
            assert ROW[other] < ROW[own], f"{path.name} imports {name}, a layer above it"
        library = name.split(".")[0]
        if library in ONLY_HERE:
            assert own in ONLY_HERE[library], f"{path.name} imports {library}"


@pytest.mark.parametrize("path", modules(RULES), ids=lambda p: str(p.relative_to(RULES)))
def test_the_rules_know_only_the_data_types_of_a_check(path: Path) -> None:
    folder = path.relative_to(RULES).parts[0]
    for name in imported(path, package_of(path, RULES, "ampreview.rules")):
        if name.startswith("ampreview.linter"):
            assert name == "ampreview.linter.check", f"{path.name} imports {name}"
        other = top(name, "ampreview.rules")
        if folder == "formulas":
            assert other in (None, "formulas"), f"{path.name} imports {name}"
        elif folder == "derived":
            assert other in (None, "formulas", "derived"), f"{path.name} imports {name}"
        else:
            allowed = (None, "formulas", "derived", folder)
            assert other in allowed, f"{path.name} imports {name}"
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
