"""What a graph has resolved, and what it takes over from the graph it was made from.

Nothing is copied when a graph is made: a name is taken over when it is asked for.
"""

from collections.abc import Callable

from .gap import Gap
from .node import Node

Key = tuple[str, str | None]
Found = Node | Gap
Earlier = Callable[[Key], Found | None]


class Known:
    """Names that are resolved; earlier: gives those of another graph that still count."""

    def __init__(self, earlier: Earlier | None = None) -> None:
        self._found: dict[Key, Found] = {}
        self._earlier = earlier

    def get(self, key: Key) -> Found | None:
        """What a name was resolved to, here or earlier."""
        found = self._found.get(key)
        if found is None and self._earlier is not None:
            found = self._earlier(key)
            if found is not None:
                self._found[key] = found
        return found

    def add(self, key: Key, found: Found) -> Found:
        """Keep what a name is resolved to."""
        self._found[key] = found
        return found

    def where(self, stands: Callable[[Key, Found], bool]) -> "Known":
        """Those that still stand in a graph that is made from this one."""

        def earlier(key: Key) -> Found | None:
            found = self.get(key)
            return found if found is not None and stands(key, found) else None

        return Known(earlier)
