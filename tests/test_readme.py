"""What the README shows is what the program does."""

import re
import textwrap
from pathlib import Path

import pytest

from ampreview.linter.cli import COMMANDS, main
from ampreview.linter.evaluation.catalogue import load
from ampreview.linter.reading.loading import load_text

ROOT = Path(__file__).parents[1]
README = (ROOT / "README.md").read_text(encoding="utf-8")
BLOCKS = [
    textwrap.dedent(block).strip("\n")
    for block in re.findall(r"(?:^(?: {4}.*)?\n)+", README, re.MULTILINE)
    if block.strip()
]


def block(start: str) -> str:
    return next(text for text in BLOCKS if text.lstrip().startswith(start))


def test_the_spec_shown_is_accepted() -> None:
    loaded = load_text(block("amplifier_spec: 1"), "README.md")
    assert loaded.refusals == ()


def test_the_deviation_shown_is_accepted_and_names_a_check() -> None:
    loaded = load_text("amplifier_spec: 1\n" + block("deviations:"), "README.md")
    assert loaded.spec is not None, loaded.refusals
    (deviation,) = loaded.spec.deviations
    assert load().entry(deviation.check) is not None


def test_every_command_is_named_and_every_name_is_a_command() -> None:
    table = README.split("## Commands")[1].split("###")[0]
    named = {
        word
        for cell in re.findall(r"^\| (`[^|]+)\|", table, re.MULTILINE)
        for word in re.findall(r"`(\w+)", cell)
    }
    assert named == set(COMMANDS)


def without_places(line: str) -> str:
    """A line of a report without the numbers of lines, which move with every edit of a sample."""
    text = line.strip()
    return re.sub(r"\d+", "#", text) if text.startswith("location") else text


def test_the_excerpt_is_what_the_program_prints(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("COLUMNS", "92")
    monkeypatch.chdir(ROOT)
    sample = "sample_specs/choir-portable-faulty.amp.yaml"
    assert sample in README
    assert main(["assess", sample]) == 1
    printed = {without_places(line) for line in capsys.readouterr().out.splitlines()}
    for line in block("HELD").splitlines():
        assert without_places(line) in printed


def test_the_excerpt_counts_no_answers() -> None:
    """A count would change with every check that is added."""
    assert not re.search(r"\d+ (critical|major|minor|open|meets?)\b", README)


def test_both_commands_stand_in_the_readme() -> None:
    setup = "python3 -m venv .venv && .venv/bin/pip install"
    assert f"{setup} . && .venv/bin/ampreview assess sample_specs/" in README
    assert f"{setup} '.[dev]' && .venv/bin/python -m pytest -q -n 2" in README
    assert "python -m pytest -q -n 2" in (ROOT / ".ci" / "run").read_text(encoding="utf-8")
