"""What a spec is reviewed against besides the catalogue: day, permissions, house file."""

from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path

from ..evaluation.catalogue import Catalogue, load
from ..reading.keyed_file import Measured, Permissions, read_deviations, read_measured
from ..reading.loading import Measurement, Spec
from ..reading.refusal import Refusal
from .house import House, find_house, where_found
from .house_file import read_house
from .standing_in import with_stand_ins


@dataclass(frozen=True, slots=True)
class Terms:
    """Where the criteria of a review are to be found.

    day: the day of the review, None for today; deviations: a file of deviations beside
    those of the spec; house: a house file, None for the one nearest to the spec;
    no_house: go without any; parts: a parts file, None for the one nearest to the spec.
    measured: a file of measurements beside those of the spec.
    """

    day: date | None = None
    deviations: Path | None = None
    house: Path | None = None
    no_house: bool = False
    parts: Path | None = None
    measured: Path | None = None


@dataclass(frozen=True, slots=True)
class Criteria:
    """The same, read."""

    day: date | None = None
    permissions: Permissions | None = None
    house: House | None = None
    measured: Measured | None = None

    @property
    def catalogue(self) -> Catalogue:
        """The one of the house file, or the one that comes with the program."""
        return self.house.catalogue if self.house else load()

    def applied(self, spec: Spec) -> Spec:
        """The spec with the defaults of the house file, and what was measured in its place."""
        spec = self.house.applied(spec) if self.house else spec
        return with_stand_ins(spec, self.catalogue, self.measurements(spec), self.day)

    def measurements(self, spec: Spec) -> tuple[Measurement, ...]:
        """What was measured: that of the spec, then that of a file of its own."""
        return (*spec.measurements, *(self.measured.measurements if self.measured else ()))


TODAY = Criteria()
USUAL = Terms()


def criteria_for(spec: Path, terms: Terms) -> Criteria | tuple[Refusal, ...]:
    """The criteria for the spec of a path, or the refusals of the files they stand in."""
    permissions = read_deviations(terms.deviations) if terms.deviations else None
    if isinstance(permissions, tuple):
        return permissions
    path = None if terms.no_house else terms.house or find_house(spec)
    day = terms.day or date.today()
    house = read_house(path, day) if path else None
    if isinstance(house, tuple):
        return house
    if house and path and not terms.house:
        house = replace(house, found=where_found(spec, path))
    measured = read_measured(terms.measured) if terms.measured else None
    if isinstance(measured, tuple):
        return measured
    return Criteria(day, permissions, house, measured)
