"""Which answers a change is likely to spoil: they are asked first, so that it is refused early."""

from collections import Counter
from collections.abc import Iterable, Mapping

from ..evaluation.threshold import closeness
from ..finding import Finding
from .effect import Key


class Likely:
    """What changes of the same leaves have spoilt before, and how near to its limit each is."""

    def __init__(self, answers: Mapping[Key, Finding]) -> None:
        near = {key: closeness(item.evidence) for key, item in answers.items()}
        self._near = {key: x for key, x in near.items() if x is not None}
        self._spoilt: Counter[tuple[str, Key]] = Counter()

    def spoilt(self, key: Key, paths: Iterable[str]) -> None:
        """Other values of these leaves have spoilt an answer."""
        self._spoilt.update((path, key) for path in paths)

    def first(self, keys: Iterable[Key], paths: Iterable[str]) -> list[Key]:
        """Answers in order: what was spoilt by the same leaves, then the tightest."""
        touched, before = set(paths), Counter[Key]()
        for (path, key), times in self._spoilt.items():
            before[key] += times if path in touched else 0
        return sorted(keys, key=lambda key: (-before[key], self._near.get(key, 1.0)))
