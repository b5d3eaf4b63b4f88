"""Small steps that several pictures share."""

from ...linter.check import Arguments, Input
from ...linter.picture import Amount, Kind, Shown


def of(path: str) -> Amount:
    """A field or a derived quantity as it is."""
    return Amount({"value": Input(path)})


def shown(label: str, path: str, kind: Kind = "value") -> Shown:
    """A field or a derived quantity as a number of a picture."""
    return Shown(label, (of(path),), kind)


def as_read(read: float) -> float:
    """A reading as it is."""
    return read


def read_of(name: str) -> Shown:
    """What was read of a figure that the row itself does not show."""
    return Shown("", (Amount({}, as_read),), "measured", measures=name)


def share(value: float, part: float) -> float:
    """A part of a value."""
    return part * value


def nothing() -> float:
    """An axis from zero."""
    return 0.0


def whole() -> float:
    """An axis to 100 %."""
    return 1.0


def times(path: str, factor: float) -> Amount:
    """A multiple of a field or a derived quantity."""

    def multiple(value: float) -> float:
        return factor * value

    return Amount({"value": Input(path)}, multiple)


FILTER: Arguments = {
    "l_total": Input("l_total"),
    "c_total": Input("c_total"),
    "n_legs": Input("n_legs"),
    "dcr": Input("filter.inductor.dcr"),
    "l_2": Input("l_second"),
    "c_2": Input("c_second"),
    "r_damper": Input("r_damper"),
    "c_damper": Input("c_damper"),
}
"""The output filter as the load sees it, without the load."""
