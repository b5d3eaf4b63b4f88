"""A word on which many checks hang is asked for once, those whose value hangs on it included."""

from pathlib import Path

from ampreview.linter.finding import Status
from ampreview.linter.judging.deviation import forbidden
from ampreview.linter.judging.review import review
from ampreview.linter.reading.loading import load_text

SOUND = Path(__file__).parents[3] / "sample_specs" / "playhouse-subwoofer.amp.yaml"


def test_silence_on_the_kind_of_devices_is_one_question_that_nobody_can_accept_away() -> None:
    """Its losses, heat and currents all wait for that word, and for nothing else."""
    text = SOUND.read_text(encoding="utf-8")
    assert "devices: discrete" in text
    loaded = load_text(text.replace("      devices: discrete\n", "", 1), "silent.amp.yaml")
    assert loaded.spec is not None, loaded.refusals
    found = review(loaded.spec)
    (asking,) = found.verdict.holding
    assert [item.path for item in asking.advice.missing] == ["channels.sub.output_stage.devices"]
    assert "cannot be accepted" in forbidden(asking, None)
    waiting = {x.check: x for x in found.findings if asking.check in x.message}
    assert waiting["junction-at-rated-sine"].status is Status.NOT_APPLICABLE
    assert waiting["fuse-protects-trace"].status is Status.NOT_APPLICABLE
