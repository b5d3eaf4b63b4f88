"""A word on which many checks hang is asked for once, those whose value hangs on it included."""

from pathlib import Path

from ampreview.linter.evaluation.catalogue import load
from ampreview.linter.evaluation.engine import Assessment
from ampreview.linter.finding import Status
from ampreview.linter.judging.deviation import forbidden
from ampreview.linter.judging.review import review
from ampreview.linter.reading.loading import load_text

SOUND = Path(__file__).parents[3] / "sample_specs" / "playhouse-subwoofer.amp.yaml"
SILENT_SOURCE = """
amplifier_spec: 1
battery: {chemistry: li-ion, series: 4, cell: {v_charge: 4.35 V, made_for: high-voltage}}
channels: {main: {rated_power: 20 W}}
"""


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


def test_what_waits_for_a_word_is_what_one_of_its_words_would_answer() -> None:
    """The long way round: each word stated in turn, and every open answer worked out anew."""
    word, text = "channels.sub.output_stage.devices", SOUND.read_text(encoding="utf-8")
    spec = load_text(text.replace("      devices: discrete\n", "", 1), "silent.amp.yaml").spec
    assert spec is not None
    run = Assessment(spec, load(), spec.milestone)
    stated = [spec.with_values({word: x}).spec for x in spec.schema.field_of(word).words]
    runs = [Assessment(x, load(), spec.milestone) for x in stated if x is not None]
    waiting = 0
    for entry, subject in run.questions():
        found = run.answer(entry, subject)
        if found.status is Status.OPEN and word not in [x.path for x in found.advice.missing]:
            answers = {other.answer(entry, subject).status for other in runs}
            waits = run.judge(entry, subject).status is Status.NOT_APPLICABLE
            waiting += waits
            assert waits is (answers != {Status.OPEN}), (entry.name, subject)
    assert waiting


def test_an_answer_that_waits_for_a_look_up_does_not_ask_for_the_word() -> None:
    """The charge voltage is met whatever the source; its limit from memory is all it waits for."""
    loaded = load_text(SILENT_SOURCE, "silent.amp.yaml")
    assert loaded.spec is not None, loaded.refusals
    found = review(loaded.spec, milestone="production").findings
    waiting = [x for x in found if "it depends on supply.source, which " in x.message]
    assert "cell-charge-voltage" in {x.check for x in waiting}
    asking = {x.message.rpartition(", which ")[2].removesuffix(" asks for") for x in waiting}
    (item,) = (x for x in found if x.check in asking)
    assert item.status is Status.OPEN
    assert "supply.source" in [gap.path for gap in item.advice.missing]
