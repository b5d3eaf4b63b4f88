"""Who may touch what: every combination of access, users and openings."""

import pytest

from ampreview.rules.safety.fire_power_class import figure as fire
from ampreview.rules.safety.ingress_and_vents import figure as vents
from ampreview.rules.safety.shock_class_rails import figure as rails


@pytest.mark.parametrize(
    ("users", "access", "limit"),
    [
        ("ordinary", "bare", 60.0),
        ("instructed", "bare", 120.0),
        ("skilled", "bare", 120.0),
        ("ordinary", "tool", 120.0),
        ("skilled", "tool", 120.0),
    ],
)
def test_class_that_may_be_reached(users: str, access: str, limit: float) -> None:
    """IEC 62368-1: only what ordinary persons can touch has to be class 1."""
    assert rails(90.0, users, access, 60.0, 120.0) == pytest.approx(90.0 / limit)


@pytest.mark.parametrize(
    ("code", "openings", "count"),
    [
        ("IP54", "vented", 1.0),
        ("IP65", "vented", 2.0),
        ("IP44", "vented", 0.0),
        ("IP45", "vented", 1.0),
        ("IP65", "sealed", 0.0),
        ("IP55", "vented", 2.0),
    ],
)
def test_dust_and_jets_against_vents(code: str, openings: str, count: float) -> None:
    """IEC 60529: 5 is dust-protected, 5 is jets."""
    assert vents(code, openings) == count


def test_fire_enclosure_takes_the_power() -> None:
    assert fire(250.0, "no") == 250.0
    assert fire(250.0, "yes") == 0.0
