"""The names that a program may import, and that importing them costs nothing before use."""

import importlib
import subprocess
import sys
from pathlib import Path

import pytest

import ampreview.linter as library

ROOT = Path(__file__).parents[1]
SAMPLE = "sample_specs/choir-portable.amp.yaml"
HEAVY = ("pydantic", "pint", "ruamel.yaml", "rich", "numpy")


@pytest.mark.parametrize("name", library.__all__)
def test_every_name_leads_to_what_its_module_defines(name: str) -> None:
    thing = getattr(library, name)
    assert thing.__module__.startswith("ampreview.linter.")
    assert thing.__doc__
    assert name in dir(library)


def test_names_stay_when_the_modules_are_imported() -> None:
    before = {name: getattr(library, name) for name in library.__all__}
    for module in ("judging.review", "finding", "reading.loading", "evaluation.catalogue"):
        importlib.import_module(f"ampreview.linter.{module}")
    assert {name: getattr(library, name) for name in library.__all__} == before


def test_an_unknown_name_is_an_attribute_error() -> None:
    with pytest.raises(AttributeError, match="no attribute 'reviews'"):
        _ = library.reviews


@pytest.mark.parametrize("name", ["ampreview.linter", "ampreview.linter.cli"])
def test_importing_imports_nothing_heavy(name: str) -> None:
    code = f"import sys, {name}; print([m for m in {HEAVY!r} if m in sys.modules])"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"


@pytest.mark.parametrize(
    ("words", "needed"),
    [
        (["--help"], set()),
        (["assess", "--help"], set()),
        (["schema"], set()),
        (["form"], {"ruamel.yaml"}),
        (["catalogue"], {"rich", "ruamel.yaml"}),
        (["assess", "--remedies", "none", SAMPLE], {"rich", "ruamel.yaml"}),
    ],
    ids=lambda words: " ".join(words) if isinstance(words, list) else "",
)
def test_a_command_imports_only_what_it_needs(words: list[str], needed: set[str]) -> None:
    """Data are validated by the core of pydantic alone; a house file may be near, which is YAML;
    lists are laid out by rich.  Units that a spec mostly has stand in a table instead of pint."""
    code = (
        "import io, sys, contextlib\nfrom ampreview.linter.cli import main\n"
        "with contextlib.redirect_stdout(io.StringIO()), contextlib.suppress(SystemExit):\n"
        f"    main({words!r})\n"
        f"print(*[m for m in {HEAVY!r} if m in sys.modules])"
    )
    done = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, check=True, cwd=ROOT
    )
    assert set(done.stdout.split()) == needed
