"""When the least load of an integrated part is asked for."""

import pytest

from ampreview.linter.finding import Finding, Status

from ..whole import answer as answer_of


def answer(stage: str) -> Finding:
    """The answer of loudspeaker-minimum-impedance for an output stage at 4 ohm."""
    text = f"channels: {{main: {{rated_load: 4 ohm, output_stage: {stage}}}}}\n"
    return answer_of("loudspeaker-minimum-impedance", text, "prototype")


def test_asked_for_a_part_that_is_named() -> None:
    found = answer("{devices: integrated, device: {part: invented stage}}")
    assert found.status is Status.OPEN
    assert [gap.path for gap in found.advice.missing] == [
        "channels.main.output_stage.device.load_min",
    ]


@pytest.mark.parametrize(
    ("stage", "asked", "border"),
    [
        ("{topology: full-bridge}", "devices", ""),  # nothing of the part: first of which kind
        ("{devices: integrated}", "device.load_min", "at most 4 Ω"),
    ],
)
def test_a_stage_that_is_silent_on_the_part_is_asked(stage: str, asked: str, border: str) -> None:
    found = answer(stage)
    assert found.status is Status.OPEN
    (gap,) = found.advice.missing
    assert (gap.path, gap.border) == (f"channels.main.output_stage.{asked}", border)


@pytest.mark.parametrize(
    "stage", ["{devices: discrete}", "{devices: discrete, device: {part: invented switch}}"]
)
def test_not_asked_of_discrete_switches(stage: str) -> None:
    assert answer(stage).status is Status.NOT_APPLICABLE
