"""A team's own rules: limits, checks switched off, defaults and checks of its own.

They stand in ``house.ampreview.yaml``, found in the folder of the spec or in one above.
Nothing of it works in silence: every report lists what the house file changes, and what
it loosens in matters of safety comes first.
"""

import os
import sys
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Literal

from ..check import Assumption, AtLeast, Check, Limits, Source, SourceKind
from ..evaluation.catalogue import Catalogue, Entry
from ..evaluation.recalled import UNSEEN
from ..finding import Place
from ..quantities.quantity import to_si
from ..reading.loading import Spec
from ..reading.parts_file import find_upward, folder_of

NAME = "house.ampreview.yaml"
GROUP = "ampreview.house_rules"

HouseEffect = Literal[
    "looser limit", "tighter limit", "looked up", "check off", "default", "checks added"
]


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
    """A house file that was taken, and the catalogue that results from it.

    found: how far from the spec, empty where it was named.
    """

    file: str
    text: str
    catalogue: Catalogue
    changes: tuple[HouseChange, ...]
    defaults: Mapping[str, Assumption]
    found: str = ""

    def applied(self, spec: Spec) -> Spec:
        """The spec with the house's defaults where it gives none."""
        return replace(spec, defaults=self.defaults)

    @property
    def told(self) -> str:
        """Its name, and where it was found."""
        return f"{self.file} ({self.found})" if self.found else self.file

    @property
    def weakened(self) -> tuple[HouseChange, ...]:
        """What weakens a check of safety."""
        return tuple(item for item in self.changes if item.safety)


def find_house(spec: Path) -> Path | None:
    """The house file nearest to a spec: in its folder, or in one above."""
    return find_upward(spec, NAME)


def where_found(spec: Path, house: Path) -> str:
    """How far from a spec its house file was found, in words, and what to do about strangers'.

    >>> where_found(Path("boards/a.amp.yaml"), Path("house.ampreview.yaml"))
    'found 1 folder above the spec; for files from outside: --no-house'
    """
    folder, whole = folder_of(spec), folder_of(house)
    steps = next((n for n, x in enumerate((folder, *folder.parents)) if x == whole), 0)
    far = f"{steps} folder{'s' if steps > 1 else ''} above the spec" if steps else "beside the spec"
    return f"found {far}; for files from outside: --no-house"


def installed_paths() -> list[str]:
    """The path of imports as far as it is installed.

    Without the folder that the program is run in and without PYTHONPATH: a file of anybody's
    may lie there.
    """
    named = [x for x in os.environ.get("PYTHONPATH", "").split(os.pathsep) if x]
    loose = {os.path.abspath(x) for x in named}
    here = os.getcwd()
    first = sys.path[:1] if os.path.abspath(sys.path[0] or here) == here else []
    return [x for x in sys.path[len(first) :] if x and os.path.abspath(x) not in loose]


@contextmanager
def only_installed() -> Iterator[None]:
    """Imports find installed packages alone."""
    before = list(sys.path)
    sys.path[:] = installed_paths()
    try:
        yield
    finally:
        sys.path[:] = before


def package_of(name: str) -> str:
    """The package behind a name under which an installed distribution offers house rules.

    LookupError where no distribution offers it; its text names those that are there.
    """
    from importlib.metadata import distributions  # seldom needed, and slow to import

    found = distributions(path=installed_paths())
    offered = [x for one in found for x in one.entry_points if x.group == GROUP]
    chosen = next((item for item in offered if item.name == name), None)
    if chosen is None:
        known = ", ".join(sorted({item.name for item in offered})) or "there are none"
        raise LookupError(f"no installed package offers house rules {name} ({known})")
    return chosen.module


def compared(
    entry: Entry, severity: str, text: str, reason: str, place: Place
) -> HouseChange | None:
    """A house limit beside the one of the catalogue; None where both are the same."""
    check = entry.check
    known = getattr(check.limits, severity)
    if known is None:
        told = f"{severity} {text}, none in the catalogue"
        return HouseChange("tighter limit", entry.name, told, reason, place)
    new, old = to_si(text, check.unit), to_si(known, check.unit)
    if new == old:
        return None
    looser = new < old if isinstance(check.limits, AtLeast) else new > old
    effect: HouseEffect = "looser limit" if looser else "tighter limit"
    told = f"{severity} {text}, in the catalogue {known}"
    return HouseChange(effect, entry.name, told, reason, place, looser and check.stake == "safety")


def untouchable(check: Check) -> str:
    """Why a house file may not switch a check off, empty where it may."""
    if check.limits.critical is not None and check.stake == "safety":
        return "people can be hurt by what it looks at"
    if not check.permissible:
        return "its figure says that a design cannot be"
    return ""


def kept_on(check: Check) -> str:
    """Why a house file may not switch a check off; a limit has a figure, and no check has none.

    One of safety stays on whatever its limits are, and one that can find destruction too.
    """
    if check.stake == "safety":
        return "people can be hurt by what it looks at"
    if check.limits.critical is not None and not untouchable(check):
        return "parts can be destroyed by what it looks at"
    return untouchable(check)


def order_of(limits: Limits) -> str:
    """In which order the limits of a check lie."""
    furthest = f"critical {limits.critical}" if limits.critical else "critical"
    return f"{furthest} furthest out, then major, then minor"


def instead(check: Check) -> str:
    """What may be done where a house file may not, as the end of a sentence."""
    known = "; for one design a deviation with up_to, a name and a last day"
    return "" if untouchable(check) else known


def chosen(check: Check, severity: str) -> str:
    """Why a house may not choose a looser limit, empty where it may: of safety minor alone."""
    safety = check.stake == "safety" and severity == "major"
    return kept_on(check) if safety else fixed(check, severity)


def fixed(check: Check, severity: str) -> str:
    """Why a limit may not be looser, not even where it was looked up; empty where it may.

    The critical one never: beyond it people are hurt or a part is destroyed, which no house
    decides.  None at all where nothing between people and a hazard may give.
    """
    barrier = not check.permissible and check.stake == "safety"
    return kept_on(check) if severity == "critical" or barrier else ""


def basis_of(change: HouseChange, known: Source | None) -> Source:
    """The source of a house limit; one against a limit that nobody saw is not verified either."""
    where = f"{Path(change.place.file).name}, line {change.place.line}"
    kind: SourceKind = known.kind if known and known.kind in UNSEEN else "common practice"
    beside = f" ({known.title})" if known else ""
    word = "looser" if change.effect == "looser limit" else "tighter"
    title = f"house limit, {word}: {change.text}{beside}; {change.reason}"
    return Source(title, where, kind)
