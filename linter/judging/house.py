"""A team's own rules: limits, checks switched off, defaults and checks of its own.

They stand in ``house.ampreview.yaml``, found in the folder of the spec or in one above.
Nothing of it works in silence: every report lists what the house file changes, and what
it loosens in matters of safety comes first.
"""

import importlib.metadata
from collections.abc import Mapping
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Literal

from ..check import Assumption, AtLeast, Check, Source, SourceKind
from ..evaluation.catalogue import Catalogue, Entry
from ..finding import Place
from ..quantities.quantity import to_si
from ..reading.loading import Spec

NAME = "house.ampreview.yaml"
GROUP = "ampreview.house_rules"

HouseEffect = Literal["looser limit", "tighter limit", "check off", "default", "checks added"]


@dataclass(frozen=True, slots=True)
class HouseChange:
    """One thing that the house file changes, as the reports tell it.

    about: the check, the field or the package; safety: people can be hurt by what the
    check looks at, and the change weakens it.
    """

    effect: HouseEffect
    about: str
    text: str
    reason: str
    place: Place
    safety: bool = False


@dataclass(frozen=True, slots=True, eq=False)
class House:
    """A house file that was taken, and the catalogue that results from it."""

    file: str
    text: str
    catalogue: Catalogue
    changes: tuple[HouseChange, ...]
    defaults: Mapping[str, Assumption]

    def applied(self, spec: Spec) -> Spec:
        """The spec with the house's defaults where it gives none."""
        return replace(spec, defaults=self.defaults)

    @property
    def weakened(self) -> tuple[HouseChange, ...]:
        """What weakens a check of safety."""
        return tuple(item for item in self.changes if item.safety)


def package_of(name: str) -> str:
    """The package behind a name under which an installed distribution offers house rules.

    LookupError where no distribution offers it; its text names those that are there.
    """
    offered = importlib.metadata.entry_points(group=GROUP)
    found = next((item for item in offered if item.name == name), None)
    if found is None:
        known = ", ".join(sorted({item.name for item in offered})) or "there are none"
        raise LookupError(f"no installed package offers house rules {name} ({known})")
    return found.module


def compared(
    entry: Entry, severity: str, text: str, reason: str, place: Place
) -> HouseChange | None:
    """A house limit beside the published one; None where both are the same."""
    check = entry.check
    published = getattr(check.limits, severity)
    if published is None:
        told = f"{severity} {text}, none published"
        return HouseChange("tighter limit", entry.name, told, reason, place)
    new, old = to_si(text, check.unit), to_si(published, check.unit)
    if new == old:
        return None
    looser = new < old if isinstance(check.limits, AtLeast) else new > old
    effect: HouseEffect = "looser limit" if looser else "tighter limit"
    told = f"{severity} {text}, published {published}"
    return HouseChange(effect, entry.name, told, reason, place, looser and check.stake == "safety")


def untouchable(check: Check) -> str:
    """Why a house file may not switch a check off, empty where it may."""
    if not check.permissible and check.stake != "safety":
        return "its figure says that a design cannot be"
    if check.limits.critical is not None and check.stake == "safety":
        return "people can be hurt by what it looks at"
    return ""


def kept_on(check: Check) -> str:
    """Why a house file may not switch a check off; a limit has a figure, and no check has none.

    A check that can find destruction stays on too: a limit of the house's own can say how far.
    """
    if check.limits.critical is not None and not untouchable(check):
        return "parts can be destroyed by what it looks at; a limit of your own can replace it"
    return untouchable(check)


def fixed(check: Check, severity: str) -> bool:
    """Whether a house file may not loosen a limit of an untouchable check.

    The critical one never; none at all where nothing between people and a hazard may give.
    """
    barrier = not check.permissible and check.stake == "safety"
    return bool(untouchable(check)) and (severity == "critical" or barrier)


def basis_of(change: HouseChange, published: Source | None) -> Source:
    """The source of a house limit; one against a limit from memory is not verified either."""
    where = f"{Path(change.place.file).name}, line {change.place.line}"
    unread = published is not None and published.kind == "from memory"
    kind: SourceKind = "from memory" if unread else "common practice"
    beside = f" ({published.title})" if published else ""
    word = "looser" if change.effect == "looser limit" else "tighter"
    title = f"house limit, {word}: {change.text}{beside}; {change.reason}"
    return Source(title, where, kind)
