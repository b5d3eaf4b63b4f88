"""The pre-commit hook on a throw-away hardware repository: bad specs hold the commit."""

import shutil
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
TAKEN = ("linter", "rules", "pyproject.toml", "README.md", ".pre-commit-hooks.yaml")
IDENTITY = ("-c", "user.name=Hardware", "-c", "user.email=hardware@example.org")
pytestmark = pytest.mark.slow


def git(repository: Path, *words: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        ["git", *IDENTITY, *words], cwd=repository, capture_output=True, text=True, check=False
    )


def repository(folder: Path) -> str:
    """Make a repository of what is in the folder and give the name of its commit."""
    git(folder, "init", "--quiet")
    git(folder, "add", "--all")
    done = git(folder, "commit", "--quiet", "--no-verify", "--message", "start")
    assert done.returncode == 0, done.stderr
    return git(folder, "rev-parse", "HEAD").stdout.strip()


@pytest.fixture(scope="module")
def tool(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, str]:
    """This project as a repository, and its commit: one environment of the hook for all tests."""
    tool = tmp_path_factory.mktemp("tool")
    for name in TAKEN:
        source = ROOT / name
        copy = shutil.copytree if source.is_dir() else shutil.copy
        copy(source, tool / name)
    return tool, repository(tool)


@pytest.fixture
def hardware(tmp_path: Path, tool: tuple[Path, str]) -> Path:
    """A repository with the hook of this project installed."""
    source, commit = tool
    boards = tmp_path / "boards"
    boards.mkdir()
    config = f"repos: [{{repo: '{source}', rev: {commit}, hooks: [{{id: ampreview}}]}}]\n"
    (boards / ".pre-commit-config.yaml").write_text(config, encoding="utf-8")
    (boards / "notes.txt").write_text("A board.\n", encoding="utf-8")
    repository(boards)
    done = subprocess.run(
        [sys.executable, "-m", "pre_commit", "install"],
        cwd=boards,
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stderr
    return boards


def test_a_bad_spec_holds_the_commit_and_a_good_one_passes(hardware: Path) -> None:
    good = (ROOT / "sample_specs" / "choir-portable.amp.yaml").read_text(encoding="utf-8")
    bad = (ROOT / "sample_specs" / "bedside-lamp-faulty.amp.yaml").read_text(encoding="utf-8")
    spec = hardware / "speaker.amp.yaml"
    spec.write_text(bad, encoding="utf-8")
    git(hardware, "add", "speaker.amp.yaml")
    held = git(hardware, "commit", "--message", "a proposal")
    assert held.returncode != 0
    assert "HELD" in held.stdout + held.stderr
    spec.write_text(good, encoding="utf-8")
    git(hardware, "add", "speaker.amp.yaml")
    passed = git(hardware, "commit", "--message", "a sound design")
    assert passed.returncode == 0, passed.stdout + passed.stderr
    assert "speaker.amp.yaml" in git(hardware, "show", "--stat").stdout


@pytest.mark.skipif(sys.platform == "win32", reason="no such file names")
def test_names_that_look_like_options_are_names(hardware: Path) -> None:
    """Tracked names that would write a file, choose a house file or forge a line if they could."""
    bad = (ROOT / "sample_specs" / "bedside-lamp-faulty.amp.yaml").read_text(encoding="utf-8")
    precious = hardware.parent / "precious.amp.yaml"
    precious.write_text("mine\n", encoding="utf-8")
    names = (
        "--output=..", "--house=..", "-o", "--no-house", "--help", "a\n RELEASED  b", "-\u202eä",
    )  # fmt: skip
    for number, name in enumerate(names):
        path = (
            hardware / f"{name}" / "precious.amp.yaml"
            if ".." in name
            else hardware / f"{name}.amp.yaml"
        )
        path.parent.mkdir(exist_ok=True)
        path.write_text(f"{bad}# {number}\n", encoding="utf-8")
    git(hardware, "add", "--all")
    held = git(hardware, "commit", "--message", "names")
    said = held.stdout + held.stderr
    assert held.returncode != 0, said
    assert "usage:" not in said
    assert said.count("HELD") >= len(names)
    assert not [line for line in said.splitlines() if line.strip().startswith("RELEASED")]
    assert precious.read_text(encoding="utf-8") == "mine\n"


def test_files_that_are_no_specs_pass_unread(hardware: Path) -> None:
    (hardware / "other.yaml").write_text("not: a spec\n", encoding="utf-8")
    git(hardware, "add", "other.yaml")
    done = git(hardware, "commit", "--message", "another file")
    assert done.returncode == 0, done.stdout + done.stderr
