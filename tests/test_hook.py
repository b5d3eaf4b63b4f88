"""The pre-commit hook on a throw-away hardware repository: bad specs hold the commit."""

import re
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
    """A repository of this project and its commit; its environment is built once."""
    folder = tmp_path_factory.mktemp("tool")
    for name in TAKEN:
        source = ROOT / name
        copy = shutil.copytree if source.is_dir() else shutil.copy
        copy(source, folder / name)
    return folder, repository(folder)


def with_hook(boards: Path) -> Path:
    """A hardware repository with the hooks of its own configuration installed."""
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


@pytest.fixture
def hardware(tmp_path: Path, tool: tuple[Path, str]) -> Path:
    """A repository with the hook of this project installed."""
    folder, commit = tool
    boards = tmp_path / "boards"
    boards.mkdir()
    config = f"repos: [{{repo: '{folder}', rev: {commit}, hooks: [{{id: ampreview}}]}}]\n"
    (boards / ".pre-commit-config.yaml").write_text(config, encoding="utf-8")
    (boards / "notes.txt").write_text("A board.\n", encoding="utf-8")
    return with_hook(boards)


@pytest.fixture
def museum(tmp_path: Path, tool: tuple[Path, str]) -> Path:
    """The sample repository, its hooks taken from this project."""
    folder, commit = tool
    boards = tmp_path / "museum"
    shutil.copytree(ROOT / "sample_specs" / "museum-boards", boards)
    config = boards / ".pre-commit-config.yaml"
    text = re.sub(r"repo: \S+", f"repo: '{folder}'", config.read_text(encoding="utf-8"))
    config.write_text(re.sub(r"rev: \S+", f"rev: {commit}", text), encoding="utf-8")
    return with_hook(boards)


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


def committed(folder: Path, file: str, old: str, new: str) -> tuple[bool, str]:
    """Whether a change of a file is let through, and what the hooks say; then it is undone."""
    path = folder / file
    text = path.read_text(encoding="utf-8")
    assert old in text
    path.write_text(text.replace(old, new), encoding="utf-8")
    done = git(folder, "commit", "--all", "--message", "a change")
    git(folder, "reset", "--quiet", "--hard", "HEAD" if done.returncode else "HEAD~1")
    return done.returncode == 0, done.stdout + done.stderr


def test_what_boards_share_brings_the_review_of_each(museum: Path) -> None:
    """A part, a rule of the house, a reading, a bill of materials: what it concerns is judged."""
    whole = subprocess.run(
        [sys.executable, "-m", "pre_commit", "run", "--all-files", "--verbose"],
        cwd=museum,
        capture_output=True,
        text=True,
        check=False,
    )
    assert whole.returncode == 0, whole.stdout
    assert whole.stdout.count("RELEASED at production") == 4, "two boards, above and below"
    assert whole.stdout.count("AGREES") == 2

    passed, said = committed(
        museum, "parts.ampreview.yaml", "v_supply_abs: 36 V", "v_supply_abs: 26 V"
    )
    assert not passed
    assert "HELD at production" in said
    assert "bench/bench.amp.yaml" in said and "plinth/plinth.amp.yaml" in said
    assert "RELEASED" not in said

    passed, said = committed(
        museum, "house.ampreview.yaml", "major: 92 %, minor: 85 %", "major: 60 %, minor: 50 %"
    )
    assert not passed
    assert "bench/bench.amp.yaml" in said and "plinth/plinth.amp.yaml" in said

    passed, said = committed(museum, "bench/measured.yaml", "value: 2.2 V ±", "value: 12 V ±")
    assert not passed
    assert re.search(r"design review, plinth\.+\(no files to check\)Skipped", said)

    passed, said = committed(
        museum, "plinth/deviations.yaml", "until: 2060-12-31", "until: 2020-12-31"
    )
    assert not passed
    assert "HELD" in said

    passed, said = committed(museum, "bench/bom.csv", "C1,3300u,20%,35V", "C1,3300u,20%,25V")
    assert not passed
    assert "bench/bom.csv, line 2" in said


@pytest.mark.skipif(sys.platform == "win32", reason="no such file names")
def test_names_beside_a_board_are_no_options_of_its_review(museum: Path) -> None:
    for name in ("--no-house.yaml", "-o.csv", "--house=x.yaml"):
        (museum / "bench" / name).write_text("a: 1\n", encoding="utf-8")
    git(museum, "add", "--all")
    done = git(museum, "commit", "--message", "names")
    assert done.returncode == 0, done.stdout + done.stderr
