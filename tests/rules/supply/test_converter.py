"""What a step-up and a step-down converter cannot do, through whole specs."""

import pytest

from ampreview.linter.finding import Finding, Status

from ..whole import answer as answer_of

PACK = """
supply: {{source: battery, rails: {rails}, converter: {converter}, v_rail: {rail}}}
battery: {{chemistry: li-ion, series: 4, cell: {{v_charge: 4.2 V, v_oc_low: 3.25 V}}{more}}}
channels: {{main: {{rated_power: 10 W}}}}
"""


def found_in(check: str, converter: str, rail: str, rails: str, more: str) -> Finding:
    text = PACK.format(converter=converter, rail=rail, rails=rails, more=more)
    return answer_of(check, text, "prototype")


def answer(check: str, converter: str, rail: str, rails: str = "single") -> tuple[Status, str]:
    """The answer where the charger fills the pack to 16.8 V and no more."""
    found = found_in(check, converter, rail, rails, ", charger: {v: 16.8 V}")
    return found.status, found.severity or ""


@pytest.mark.parametrize(
    ("rail", "severity"),
    [
        ("15 V ± 3 %", "major"),  # 15.45 V at most, the full pack gives 16.8 V
        ("15.9 V", "major"),  # 0.946
        ("16 V", "minor"),  # 0.952
        ("16.5 V", "minor"),
        ("17.2 V", ""),
        ("16.6 V ± 5 %", ""),  # 16.8 V lies inside what is stated
        ("13 V .. 30 V", ""),  # follows the music, and rests on the pack
    ],
)
def test_step_up(rail: str, severity: str) -> None:
    status = Status.FINDING if severity else Status.MEETS
    assert answer("step-up-below-source", "step-up", rail) == (status, severity)


def test_a_silent_charger_may_lift_the_pack() -> None:
    """17.2 V lie above a pack of 16.8 V, but a charger that is not stated may give more."""
    found = found_in("step-up-below-source", "step-up", "17.2 V", "single", "")
    assert found.status is Status.OPEN
    assert [gap.path for gap in found.advice.missing] == ["battery.charger.v"]


@pytest.mark.parametrize(
    ("rail", "severity"),
    [
        ("12 V", ""),  # the empty pack gives 13 V
        ("13.2 V", "minor"),
        ("14 V", "major"),
        ("15 V ± 3 %", "major"),
        ("13 V ± 3 %", ""),
    ],
)
def test_step_down(rail: str, severity: str) -> None:
    status = Status.FINDING if severity else Status.MEETS
    assert answer("step-down-above-source", "step-down", rail) == (status, severity)


@pytest.mark.parametrize("check", ["step-up-below-source", "step-down-above-source"])
def test_what_is_not_bound_to_the_source(check: str) -> None:
    for converter, rails in (("step-up-down", "single"), ("step-up", "split"), ("none", "single")):
        status = answer(check, converter, "15 V", rails)[0]
        assert status is Status.NOT_APPLICABLE
