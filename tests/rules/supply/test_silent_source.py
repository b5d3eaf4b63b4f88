"""When a silent resistance of the source becomes a question."""

import pytest

from ampreview.linter.finding import Status

from ..whole import answer

SPEC = """
supply: {{source: {source}, rails: single, v_rail: 30 V, bulk: {{c: 3300 uF}}{more}}}
channels:
  main:
    rated_power: 80 W
    rated_load: 4 ohm
    output_stage: {{topology: full-bridge, efficiency: 90 %}}
    modulator: {{m_max: 95 %}}
"""


@pytest.mark.parametrize("source", ["dc-source", "mains-converter"])
@pytest.mark.parametrize("check", ["rail-ripple", "rail-trough"])
@pytest.mark.parametrize(
    ("more", "expected"),
    [
        ("", Status.OPEN),  # the section of the source is stated, so it is asked for
        (", ripple: 200 mV", Status.OPEN),
        (", c_source: 2 mF", Status.OPEN),
        (", c_source: 2 mF, r_source: 50 mohm", Status.MEETS),
    ],
)
def test_a_described_source_is_asked_for_its_resistance(
    source: str, check: str, more: str, expected: Status
) -> None:
    found = answer(check, SPEC.format(source=source, more=more), "prototype")
    assert found.status is expected
    if expected is Status.OPEN:
        assert [item.path for item in found.advice.missing] == ["supply.r_source"]
