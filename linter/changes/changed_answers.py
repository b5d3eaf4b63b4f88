"""The answers of a changed spec: each is judged when it is first asked for, or taken over."""

from collections.abc import Iterator, Mapping

from ..evaluation.catalogue import Entry
from ..evaluation.engine import Assessment
from ..finding import Finding
from ..judging.consistency import BUILT_IN
from .effect import Key


class ChangedAnswers(Mapping[Key, Finding]):
    """The answers after a change, as if no other check were asked.

    kept: those that the change cannot alter.  fresh: the entries of those that it can.
    """

    def __init__(
        self, kept: Mapping[Key, Finding], run: Assessment, fresh: Mapping[Key, Entry]
    ) -> None:
        self._kept = kept
        self._run = run
        self.fresh = fresh
        self._judged: dict[Key, Finding] = {}

    def __getitem__(self, key: Key) -> Finding:
        entry = self.fresh.get(key)
        if entry is None:
            return self._kept[key]
        if key not in self._judged:
            self._judged[key] = self._run.answer(entry, key[1])
        return self._judged[key]

    @property
    def changed(self) -> list[Key]:
        """What can differ, the findings on stated values with it."""
        return [key for key in self._kept if key in self.fresh or key[0] in BUILT_IN]

    def told(self, key: Key) -> Finding:
        """The answer as it is told beside those of the other checks."""
        entry = self.fresh.get(key)
        return self._kept[key] if entry is None else self._run.judge(entry, key[1])

    def __contains__(self, key: object) -> bool:
        return key in self._kept

    def __iter__(self) -> Iterator[Key]:
        return iter(self._kept)

    def __len__(self) -> int:
        return len(self._kept)
