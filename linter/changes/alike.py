"""What changes together: channels that state the same, or share a piece of text."""

from collections.abc import Mapping

from ..declare import CHANNELS, PRODUCT, local_path, subject_of
from ..evaluation.twins import Twins
from ..reading.loading import Spec


class Alike:
    """The channels of one spec in which a leaf is the same one."""

    def __init__(self, spec: Spec, twins: Twins) -> None:
        self.spec = spec
        self.twins = twins

    def everywhere(self, changes: Mapping[str, object]) -> dict[str, object]:
        """Changes made in all channels in which they are the same ones."""
        return {alias: value for path, value in changes.items() for alias in self.paths(path)}

    def paths(self, path: str) -> tuple[str, ...]:
        """The leaf in all channels that state the same, and where it is the same piece of text."""
        own = subject_of(path)
        if own == PRODUCT:
            return (path,)
        alike, here = self.twins.groups.get(own, (own,)), self._spot(path)
        field = local_path(path)
        paths = {name: f"{CHANNELS}.{name}.{field}" for name in self.spec.channels}
        return tuple(
            x for name, x in paths.items() if name in alike or (here and self._spot(x) == here)
        )

    def _spot(self, path: str) -> tuple[int, int] | None:
        """Where a value stands, or else the nearest section above it that is written."""
        while path.count(".") > 1 and path not in self.spec.places:
            path = path.rpartition(".")[0]
        places = self.spec.places.get(path)
        return (places[0].line, places[0].column) if places else None
