"""The bar of long work: on a terminal alone, not before a while, and gone in the end."""

import io
import sys
import time

import pytest

from ampreview.linter.reports import progress

ERASE = "\x1b[2K"  # ECMA-48, 8.3.41: erase in line


class Terminal(io.StringIO):
    def isatty(self) -> bool:
        return True


def worked(
    monkeypatch: pytest.MonkeyPatch,
    stream: io.StringIO,
    term: str = "xterm",
    patience: float = 0.0,
    most: int = 1000,
) -> tuple[str, str]:
    """What the stream has when the last item comes, and at the end."""
    for name in ("NO_COLOR", "FORCE_COLOR", "TTY_COMPATIBLE", "TTY_INTERACTIVE"):
        monkeypatch.delenv(name, raising=False)
    monkeypatch.setenv("TERM", term)
    monkeypatch.setattr(sys, "stderr", stream)
    monkeypatch.setattr(progress, "PATIENCE", patience)

    with progress.progress("work", 3) as advance:
        for _ in range(most):  # a bar comes up in a thread of its own
            time.sleep(0.05)
            if "work" in stream.getvalue():
                break
        advance()
        before = stream.getvalue()
    return before, stream.getvalue()


def test_it_counts_and_is_gone_in_the_end(monkeypatch: pytest.MonkeyPatch) -> None:
    before, after = worked(monkeypatch, Terminal())
    assert "work" in before
    assert after.rindex(ERASE) > after.rindex("work")


@pytest.mark.parametrize(
    ("stream", "term", "patience"),
    [
        (io.StringIO(), "xterm", 0.0),
        (Terminal(), "dumb", 0.0),
        (Terminal(), "xterm", 60.0),
    ],
)
def test_it_is_not_there(
    monkeypatch: pytest.MonkeyPatch, stream: io.StringIO, term: str, patience: float
) -> None:
    assert worked(monkeypatch, stream, term, patience, 6) == ("", "")


def test_it_is_gone_before_the_last_item_is_handed_on(monkeypatch: pytest.MonkeyPatch) -> None:
    """What is printed of a single review does not meet a bar."""
    stream = Terminal()
    monkeypatch.setenv("TERM", "xterm")
    monkeypatch.setattr(sys, "stderr", stream)
    monkeypatch.setattr(progress, "PATIENCE", 0.0)
    (only,) = progress.followed(["one"], "reviewed", 1)
    assert only == "one"
    assert list(progress.followed([1, 2, 3], "reviewed", 3)) == [1, 2, 3]
    assert not stream.getvalue().rpartition(ERASE)[2].strip()
