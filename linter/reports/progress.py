"""How far long work has come: a bar on standard error, where that is a terminal.

It appears only where the work takes longer than one waits without wondering, and it is gone when
the work is done.
"""

import sys
from collections.abc import Callable, Iterable, Iterator
from contextlib import contextmanager
from itertools import islice
from threading import Timer
from typing import TYPE_CHECKING, TypeVar

if TYPE_CHECKING:
    from rich.progress import Progress

PATIENCE = 1.0
"""Seconds without a bar."""
T = TypeVar("T")


@contextmanager
def progress(told: str, size: int | None = None, start: int = 0) -> Iterator[Callable[[], None]]:
    """A bar over some work; gives what moves it on.  size: None where nobody knows."""
    if not sys.stderr.isatty():
        yield lambda: None
        return
    bar = _Bar(told, size, start)
    timer = Timer(PATIENCE, bar.show)
    timer.daemon = True
    timer.start()
    try:
        yield bar.advance
    finally:
        timer.cancel()
        timer.join()
        bar.hide()


def followed(items: Iterable[T], told: str, size: int) -> Iterator[T]:
    """So many items as they come, with a bar that is gone when the last one is handed on."""
    source = iter(items)
    with progress(told, size if size > 1 else None) as advance:
        for item in islice(source, size - 1):
            advance()
            yield item
        last = list(islice(source, 1))
    yield from last


class _Bar:
    """A bar that may not be there yet."""

    def __init__(self, told: str, size: int | None, done: int) -> None:
        self.told, self.size, self.done = told, size, done
        self._shown: Progress | None = None

    def show(self) -> None:
        """Make it appear, unless the terminal cannot take lines back."""
        from rich.console import Console
        from rich.progress import Progress

        console = Console(stderr=True)
        if console.is_interactive:
            bar = Progress(console=console, transient=True)
            bar.add_task(self.told, total=self.size, completed=self.done)
            bar.start()
            self._shown = bar

    def advance(self) -> None:
        """One more is done."""
        self.done += 1
        if self._shown is not None:
            self._shown.update(self._shown.task_ids[0], completed=self.done)

    def hide(self) -> None:
        """Take it away."""
        if self._shown is not None:
            self._shown.stop()
