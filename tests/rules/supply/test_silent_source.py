"""When a silent resistance of the source becomes a question."""

import pytest

from ampreview.linter.finding import Status
from ampreview.linter.judging.review import review
from ampreview.linter.reading.loading import load_text

SPEC = """
amplifier_spec: 1
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
    loaded = load_text(SPEC.format(source=source, more=more), "source")
    assert loaded.spec is not None, loaded.refusals
    done = review(loaded.spec, "prototype")
    (found,) = (item for item in done.findings if item.check == check)
    assert found.status is expected
    if expected is Status.OPEN:
        assert [item.path for item in found.advice.missing] == ["supply.r_source"]
