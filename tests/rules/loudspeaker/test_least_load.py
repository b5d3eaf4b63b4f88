"""When the least load of an integrated part is asked for."""

import pytest

from ampreview.linter.finding import Finding, Status

from ..whole import answer as answer_of

CHECK = "loudspeaker-minimum-impedance"
ASKING = "bootstrap-under-voltage"  # of what hangs on the kind of stage, the first that is grave


def answer(stage: str, check: str = CHECK) -> Finding:
    """The answer of a check for an output stage at 4 ohm."""
    text = f"channels: {{main: {{rated_load: 4 ohm, output_stage: {stage}}}}}\n"
    return answer_of(check, text, "prototype")


def test_asked_for_a_part_that_is_named() -> None:
    found = answer("{devices: integrated, device: {part: invented stage}}")
    assert found.status is Status.OPEN
    assert [gap.path for gap in found.advice.missing] == [
        "channels.main.output_stage.device.load_min",
    ]


def test_a_stage_that_is_silent_on_the_part_is_asked() -> None:
    found = answer("{devices: integrated}")
    assert found.status is Status.OPEN
    (gap,) = found.advice.missing
    assert (gap.path, gap.border) == ("channels.main.output_stage.device.load_min", "at most 4 Ω")


def test_another_check_asks_of_which_kind_a_stage_is() -> None:
    silent = "{topology: full-bridge}"
    found = answer(silent)
    devices = "channels.main.output_stage.devices"
    assert found.status is Status.NOT_APPLICABLE
    assert f"it depends on {devices}, which {ASKING} asks for" in found.message
    asking = answer(silent, ASKING)
    assert asking.status is Status.OPEN
    assert not asking.permissible
    assert [gap.path for gap in asking.advice.missing] == [devices]


@pytest.mark.parametrize(
    "stage", ["{devices: discrete}", "{devices: discrete, device: {part: invented switch}}"]
)
def test_not_asked_of_discrete_switches(stage: str) -> None:
    assert answer(stage).status is Status.NOT_APPLICABLE
