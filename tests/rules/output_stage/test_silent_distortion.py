"""A rating without its distortion is no contradiction where 10 % would give it."""

import pytest

from ampreview.linter.catalogue import load
from ampreview.linter.engine import assess
from ampreview.linter.finding import Finding, Severity, Status
from ampreview.linter.loading import load_text

# IRAUDAMP12: 130 W into 4 ohm on +-31 V, no distortion printed; 120 W are the clean limit
BOARD = """amplifier_spec: 1
milestone: prototype
supply: {source: dc-source, rails: split, v_rail: 31 V}
channels:
  main:
    rated_power: 130 W
    rated_load: 4 ohm
    output_stage: {topology: half-bridge, devices: integrated}
    modulator: {m_max: 100 %}
"""


def answer(check: str, text: str) -> Finding:
    loaded = load_text(text, "fragment")
    assert loaded.spec is not None, loaded.refusals
    return next(item for item in assess(loaded.spec, load()) if item.check == check)


@pytest.mark.parametrize("check", ["power-above-rail", "minimum-pulse-vs-modulation"])
@pytest.mark.parametrize(
    ("power", "severity"),
    [
        ("130 W", Severity.MINOR),
        ("154 W", Severity.MINOR),  # 1.288 times 120.1 W are 154.7 W
        ("158 W", Severity.MAJOR),
    ],
)
def test_silent_distortion(check: str, power: str, severity: Severity) -> None:
    assert answer(check, BOARD.replace("130 W", power)).severity is severity


@pytest.mark.parametrize("check", ["power-above-rail", "minimum-pulse-vs-modulation"])
def test_stated_distortion(check: str) -> None:
    at_one = BOARD.replace("rated_load", "rated_thd: 1 %\n    rated_load")
    assert answer(check, at_one).severity is Severity.MAJOR
    assert answer(check, at_one.replace("1 %", "10 %")).status is not Status.FINDING
