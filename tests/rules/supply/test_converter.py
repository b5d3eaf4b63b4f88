"""What a step-up and a step-down converter cannot do, through whole specs."""

import pytest

from ampreview.linter.finding import Status
from ampreview.linter.judging.review import review
from ampreview.linter.reading.loading import load_text

PACK = """
amplifier_spec: 1
supply: {{source: battery, rails: {rails}, converter: {converter}, v_rail: {rail}}}
battery: {{chemistry: li-ion, series: 4, cell: {{v_charge: 4.2 V, v_oc_low: 3.25 V}}}}
channels: {{main: {{rated_power: 10 W}}}}
"""


def answer(check: str, converter: str, rail: str, rails: str = "single") -> tuple[Status, str]:
    loaded = load_text(PACK.format(converter=converter, rail=rail, rails=rails), "converter")
    assert loaded.spec is not None, loaded.refusals
    done = review(loaded.spec, "prototype")
    (found,) = (item for item in done.findings if item.check == check)
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
