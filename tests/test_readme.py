"""What the README shows is what the program does."""

import re
import textwrap
from pathlib import Path

import pytest

from ampreview.linter.cli import COMMANDS, main
from ampreview.linter.declare import load_schema
from ampreview.linter.evaluation.catalogue import load
from ampreview.linter.judging.house import House
from ampreview.linter.judging.house_file import read_house
from ampreview.linter.reading.loading import load_text
from ampreview.linter.reading.parts_file import PartsFile, parts_of

from .screens.stored import README_SPEC, page_of_the_readme

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


def test_the_house_file_shown_is_accepted(tmp_path: Path) -> None:
    file = tmp_path / "house.ampreview.yaml"
    file.write_text(block("amplifier_house:") + "\n", encoding="utf-8")
    house = read_house(file)
    assert isinstance(house, House), house
    assert len(house.changes) == 3


def test_the_parts_file_shown_is_accepted() -> None:
    """The part is put into a spec as the sentence below the file says."""
    parts = parts_of(block("amplifier_parts:").encode(), "parts.ampreview.yaml", load_schema())
    assert isinstance(parts, PartsFile), parts
    (section,) = re.findall(r"`(device: \{part: .*?\})`", README)
    text = f"amplifier_spec: 1\nchannels: {{main: {{output_stage: {{{section}}}}}}}\n"
    loaded = load_text(text, "README.md", parts=lambda: parts)
    assert loaded.spec is not None, loaded.refusals
    assert "channels.main.output_stage.device.q_g" in loaded.spec.values


def test_the_form_shown_asks_for_few_values(tmp_path: Path) -> None:
    """The way from nothing, with the numbers of the form's own test behind the sentence."""
    _, *words = block("ampreview form").split()
    words[-1] = str(tmp_path / words[-1])
    assert main(words) == 0
    spec = load_text((tmp_path / "new.amp.yaml").read_text("utf-8"), "new.amp.yaml").spec
    assert spec is not None
    assert spec.milestone == "concept"


@pytest.mark.parametrize("start", ["ampreview assess --milestone", "ampreview assess offer"])
def test_the_commands_of_the_uses_are_taken(
    start: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Each in turn on a short sample in place of the reader's own file; none is refused."""
    monkeypatch.chdir(tmp_path)
    sample = (ROOT / "sample_specs" / "classroom-sketch.amp.yaml").read_text("utf-8")
    for name in ("board", "offer"):
        Path(f"{name}.amp.yaml").write_text(sample, encoding="utf-8")
    for line in block(start).splitlines():
        assert main(line.split()[1:]) in (0, 1), line


def test_every_command_is_named_and_every_name_is_a_command() -> None:
    table = README.split("## Commands")[1].split("###")[0]
    named = {
        word
        for cell in re.findall(r"^\| (`[^|]+)\|", table, re.MULTILINE)
        for word in re.findall(r"`(\w+)", cell)
    }
    assert named == set(COMMANDS)


def without_counts(text: str) -> list[str]:
    """The lines of a page without counts and hashes, which move with every check that is added."""
    counts = r"\d+(?= (critical|major|minor|open|met|findings?|answers?|more|others?)\b)"
    masked = re.sub(counts, "#", text)
    return [re.sub(r"\b[0-9a-f]{16}\b", "#", line.rstrip()) for line in masked.splitlines()]


def test_the_page_is_what_the_program_prints() -> None:
    """Where it is not: ``python tests/screens/stored.py`` prints it anew; read the difference."""
    assert f"`ampreview assess {README_SPEC}`" in README
    printed = textwrap.dedent(page_of_the_readme()).strip("\n")
    assert without_counts(block("HELD")) == without_counts(printed)


def test_both_commands_stand_in_the_readme() -> None:
    setup = "python3 -m venv .venv && .venv/bin/pip install"
    assert f"{setup} . && .venv/bin/ampreview assess sample_specs/" in README
    assert f"{setup} '.[dev]' && .venv/bin/python -m pytest -q -n 2 --dist loadfile" in README
    run = (ROOT / ".ci" / "run").read_text(encoding="utf-8")
    assert "python -m pytest -q -n 2 --dist loadfile" in run
