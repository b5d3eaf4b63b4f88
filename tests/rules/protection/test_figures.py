"""Figures of fuses with every input away from one and zero, by hand."""

import pytest

from ampreview.rules.protection.fuse_protects_connector import figure as connector
from ampreview.rules.protection.fuse_protects_trace import figure as trace


@pytest.mark.parametrize(("contacts", "counted"), [(1.0, 1.0), (2.0, 1.0), (3.0, 2.0), (4.0, 3.0)])
def test_contacts_in_parallel_less_one(contacts: float, counted: float) -> None:
    """5 A of IEC 60127 open at 10.5 A; 30 K at 6 A each; 50 degC of air, 105 allowed."""
    rise = 30.0 * (10.5 / (6.0 * counted)) ** 2
    found = connector(10.5, 6.0, contacts, 323.15, 378.15, 30.0)
    assert found == pytest.approx(50 + rise - 105)


@pytest.mark.parametrize(("layer", "k"), [("outer", 0.048), ("inner", 0.024)])
def test_trace_at_the_opening_current(layer: str, k: float) -> None:
    """IPC-2221: i = k rise^0.44 area^0.725 with the area in square mils; 5 A UL opens at 6.75."""
    area = 3e-3 * 35e-6 / (25.4e-6) ** 2
    rise = (6.75 / (k * area**0.725)) ** (1 / 0.44)
    found = trace(6.75, 313.15, 3e-3, 35e-6, layer, 0.048, (25.4e-6) ** 2, 1.0)
    assert found == pytest.approx(313.15 + rise, rel=1e-6)
