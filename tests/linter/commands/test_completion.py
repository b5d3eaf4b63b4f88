"""Completion, asked of the shells themselves; one that is not installed is left out."""

import shutil
import subprocess
from pathlib import Path

import pytest

from ampreview.linter.cli import COMMANDS, main
from ampreview.linter.commands import completion

BASH = """source {script}
COMP_WORDS=({words}) COMP_CWORD=$((${{#COMP_WORDS[@]}} - 1)) COMPREPLY=()
_shtab_ampreview
printf '%s\\n' "${{COMPREPLY[@]}}"
"""
FISH = "source {script}; complete -C '{words}'"
ASKED = [
    ("ampreview ass", "assess"),
    ("ampreview assess --mil", "--milestone"),
    ("ampreview assess --milestone prot", "prototype"),
    ("ampreview assess --check dead-time-sh", "dead-time-share"),
    ("ampreview catalogue dead-time-sh", "dead-time-share"),
    ("ampreview assess boar", "board.amp.yaml"),
    ("ampreview compare boar", "board.amp.yaml"),
    ("ampreview assess --report mark", "markdown"),
]


def script(shell: str, folder: Path, capsys: pytest.CaptureFixture[str]) -> Path:
    assert main(["completion", shell]) == 0
    path = folder / f"completion.{shell}"
    path.write_text(capsys.readouterr().out, encoding="utf-8")
    return path


@pytest.mark.parametrize("shell", completion.SHELLS)
def test_the_shell_reads_the_script(
    shell: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = script(shell, tmp_path, capsys)
    text = path.read_text(encoding="utf-8")
    assert all(name in text for name in COMMANDS)
    assert "://" not in text
    assert completion.WHERE[shell] in text
    program = shutil.which(shell)
    if program is None:
        pytest.skip(f"{shell} is not installed")
    done = subprocess.run([program, "-n", path], capture_output=True, check=False)
    assert (done.returncode, done.stderr) == (0, b"")


@pytest.mark.parametrize("shell", ["bash", "fish"])
def test_the_shell_completes(
    shell: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    program = shutil.which(shell)
    if program is None:
        pytest.skip(f"{shell} is not installed")
    path = script(shell, tmp_path, capsys)
    (tmp_path / "board.amp.yaml").touch()
    monkeypatch.chdir(tmp_path)
    for words, wanted in ASKED:
        asked = (BASH if shell == "bash" else FISH).format(script=path, words=words)
        done = subprocess.run([program, "-c", asked], capture_output=True, text=True, check=True)
        found = [line.partition("\t")[0].strip() for line in done.stdout.splitlines()]
        assert wanted in found, (words, done.stdout, done.stderr)


def test_without_the_library_the_command_says_how_to_get_it(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(completion, "find_spec", lambda name: None)
    assert main(["completion", "bash"]) == 2
    assert "-m pip install 'shtab>=1.13'" in capsys.readouterr().err
