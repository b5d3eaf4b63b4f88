"""A verdict's exit status when what the program writes to is closed or full."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

from ampreview.linter.reading.plain_text import content_of
from ampreview.linter.reading.refusal import Refusal

LAMP = Path(__file__).parents[1] / "sample_specs" / "bedside-lamp.amp.yaml"
FULL = Path("/dev/full")
REVIEW = ("assess", "--no-house", "--remedies", "none", str(LAMP))
SHELL = pytest.mark.skipif(sys.platform == "win32", reason="a shell of POSIX")
NEVER_ROOM = pytest.mark.skipif(not FULL.exists(), reason="the system has no full device")


def status(words: tuple[str, ...], streams: str) -> int:
    """The exit status of the program with its streams as a shell is told."""
    code = "import sys; from ampreview.linter.cli import main; sys.exit(main())"
    shell = ["sh", "-c", f'exec "$@" {streams}', "sh", sys.executable, "-c", code, *words]
    return subprocess.run(shell, capture_output=True, timeout=60, check=False).returncode


@SHELL
@pytest.mark.parametrize("streams", [">&-", "2>&-", "<&- >&- 2>&-"])
def test_the_status_of_a_verdict_needs_no_stream(streams: str) -> None:
    assert status(REVIEW, streams) == 0
    assert status(("assess", "--date", "never", str(LAMP)), streams) == 2


@SHELL
@NEVER_ROOM
def test_a_report_that_finds_no_room_is_no_verdict(tmp_path: Path) -> None:
    assert status(REVIEW, ">/dev/full") == 2
    assert status((*REVIEW, "-q"), ">/dev/full") == 0
    assert status(("assess", "--date", "never", str(LAMP)), "2>/dev/full") == 2
    assert status(("schema", "-o", str(tmp_path / "one.json")), ">/dev/full") == 2


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="the system has no named pipes")
def test_a_file_of_the_kernel_with_nothing_in_it_yet_is_refused(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Such a file passes for a plain one and is no end of a pipe; a pipe stands in for it."""
    os.mkfifo(tmp_path / "log")
    writer = os.open(tmp_path / "log", os.O_RDWR)
    monkeypatch.setattr("stat.S_ISREG", lambda mode: True)
    found = content_of(tmp_path / "log", "a spec file")
    os.close(writer)
    assert isinstance(found, Refusal)
