"""What a spec is reviewed against besides the catalogue: day, permissions, house file."""

from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path

from ..evaluation.catalogue import Catalogue, load
from ..reading.keyed_file import Permissions, read_deviations
from ..reading.loading import Spec
from ..reading.refusal import Refusal
from .house import House, find_house, where_found
from .house_file import read_house


@dataclass(frozen=True, slots=True)
class Terms:
    """Where the criteria of a review are to be found.

    day: the day of the review, None for today; deviations: a file of deviations beside
    those of the spec; house: a house file, None for the one nearest to the spec;
    no_house: go without any; parts: a parts file, None for the one nearest to the spec.
    """

    day: date | None = None
    deviations: Path | None = None
    house: Path | None = None
    no_house: bool = False
    parts: Path | None = None


@dataclass(frozen=True, slots=True)
class Criteria:
    """The same, read."""

    day: date | None = None
    permissions: Permissions | None = None
    house: House | None = None

    @property
    def catalogue(self) -> Catalogue:
        """The one of the house file, or the one that comes with the program."""
        return self.house.catalogue if self.house else load()

    def applied(self, spec: Spec) -> Spec:
        """The spec with the defaults of the house file."""
        return self.house.applied(spec) if self.house else spec


TODAY = Criteria()
USUAL = Terms()


def criteria_for(spec: Path, terms: Terms) -> Criteria | tuple[Refusal, ...]:
    """The criteria for the spec of a path, or the refusals of the files they stand in."""
    permissions = read_deviations(terms.deviations) if terms.deviations else None
    if isinstance(permissions, tuple):
        return permissions
    path = None if terms.no_house else terms.house or find_house(spec)
    house = read_house(path) if path else None
    if isinstance(house, tuple):
        return house
    if house and path and not terms.house:
        house = replace(house, found=where_found(spec, path))
    return Criteria(terms.day or date.today(), permissions, house)
