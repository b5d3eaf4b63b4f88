"""The built wheel and sdist: complete, installable and working in a fresh environment."""

import subprocess
import sys
import tarfile
import venv
import zipfile
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
SUFFIXES = (".py", ".typed", ".txt", ".csv", ".css", ".html")
pytestmark = pytest.mark.slow


def run(*words: str | Path, cwd: Path) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [str(word) for word in words], cwd=cwd, capture_output=True, text=True, check=False
    )


@pytest.fixture(scope="module")
def built(tmp_path_factory: pytest.TempPathFactory) -> Path:
    out = tmp_path_factory.mktemp("dist")
    done = run(sys.executable, "-m", "build", "--no-isolation", "--outdir", out, ROOT, cwd=out)
    assert done.returncode == 0, done.stderr[-2000:]
    return out


def expected() -> set[str]:
    """The files of the two folders under the names that they are installed by."""
    return {
        f"ampreview/{folder}/{path.relative_to(ROOT / folder).as_posix()}"
        for folder in ("linter", "rules")
        for path in (ROOT / folder).rglob("*")
        if (path.suffix in SUFFIXES or path.name == "LICENSE") and "__pycache__" not in path.parts
    }


def test_the_wheel_holds_every_file_of_the_folders(built: Path) -> None:
    (wheel,) = built.glob("*.whl")
    names = {name for name in zipfile.ZipFile(wheel).namelist() if ".dist-info/" not in name}
    assert names == expected()
    assert "ampreview/linter/py.typed" in names
    assert "ampreview/rules/py.typed" in names


def test_wheel_and_sdist_carry_the_licence(built: Path) -> None:
    """The text of PEP 639: in the folder of the wheel's metadata, named there."""
    text = (ROOT / "linter" / "LICENSE").read_bytes()
    (wheel,) = built.glob("*.whl")
    with zipfile.ZipFile(wheel) as archive:
        (inside,) = (x for x in archive.namelist() if x.endswith("/licenses/linter/LICENSE"))
        assert archive.read(inside) == text
        (metadata,) = (x for x in archive.namelist() if x.endswith(".dist-info/METADATA"))
        lines = archive.read(metadata).decode().splitlines()
    assert {"License-Expression: MIT", "License-File: linter/LICENSE"} <= set(lines)
    (sdist,) = built.glob("*.tar.gz")
    with tarfile.open(sdist) as archive:
        (inside,) = (x for x in archive.getnames() if x.endswith("/linter/LICENSE"))
        member = archive.extractfile(inside)
        assert member is not None
        assert member.read() == text


def test_the_sdist_can_be_built_from(built: Path) -> None:
    (sdist,) = built.glob("*.tar.gz")
    with tarfile.open(sdist) as archive:
        inner = {name.split("/", 1)[1] for name in archive.getnames() if "/" in name}
    folders = {name.removeprefix("ampreview/") for name in expected()}
    assert folders <= inner
    assert {"pyproject.toml", "README.md"} <= inner


def test_the_wheel_works_in_a_fresh_environment(built: Path, tmp_path: Path) -> None:
    (wheel,) = built.glob("*.whl")
    venv.create(tmp_path / "fresh", with_pip=True)
    tools = tmp_path / "fresh" / ("Scripts" if sys.platform == "win32" else "bin")
    done = run(tools / "python", "-m", "pip", "install", "--quiet", wheel, cwd=tmp_path)
    assert done.returncode == 0, done.stderr[-2000:]
    sample = ROOT / "sample_specs" / "choir-portable.amp.yaml"
    done = run(tools / "ampreview", "assess", sample, cwd=tmp_path)
    assert done.returncode == 0, done.stdout[-2000:] + done.stderr[-2000:]
    assert "RELEASED" in done.stdout
    again = run(tools / "python", "-m", "ampreview.linter", "assess", sample, cwd=tmp_path)
    assert again.stdout == done.stdout
