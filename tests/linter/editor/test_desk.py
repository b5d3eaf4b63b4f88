"""A change of a text that was reviewed before is judged as if it had never been."""

from pathlib import Path

import pytest

from ampreview.linter.editor.desk import Desk, Seen
from ampreview.linter.finding import Finding

SAMPLE = Path(__file__).parents[3] / "sample_specs" / "bedside-lamp-faulty.amp.yaml"
TEXT = SAMPLE.read_text(encoding="utf-8")
URI = SAMPLE.as_uri()


def look(desk: Desk, text: str, version: int) -> Seen:
    desk.latest[URI] = version
    seen = desk.look(URI, version, text)
    assert seen is not None
    return seen


def told(items: tuple[Finding, ...]) -> list[tuple[object, ...]]:
    return [(x.check, x.subject, x.severity, x.message, x.place, x.related) for x in items]


def line_with(words: str) -> str:
    return next(line for line in TEXT.splitlines() if words in line)


@pytest.fixture(scope="module")
def desk() -> Desk:
    found = Desk()
    look(found, TEXT, 0)
    return found


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("v_rail: ", "v_rail:      "),
        ("title: ", "title: another, "),
        ("amplifier_spec: 1\n", "amplifier_spec: 1\n# a remark\n\n"),
        ("carrier: 350", "carrier: 360"),
        ("carrier: 350", "carrier: 3500"),
        ("milestone: prototype", "milestone: concept"),
        ("carrier: 350 kHz ± 5 %", "carrier: 300 kHz .. 350 kHz"),
    ],
)
def test_a_change_is_judged_as_a_new_text_is(desk: Desk, old: str, new: str) -> None:
    assert old in TEXT
    text = TEXT.replace(old, new, 1)
    look(desk, TEXT, 1)
    after, fresh = look(desk, text, 2), look(Desk(), text, 1)
    assert (after.review is None) == (fresh.review is None)
    if after.review is not None and fresh.review is not None:
        assert told(after.review.failing()) == told(fresh.review.failing())
        holding = after.review.verdict.holding, fresh.review.verdict.holding
        assert told(holding[0]) == told(holding[1])
        assert after.review.spec.title == fresh.review.spec.title
    assert after.refusals == fresh.refusals


def test_what_has_been_overtaken_is_not_begun_and_given_up(desk: Desk) -> None:
    seen = look(desk, TEXT, 5)
    assert seen.review is not None
    check = seen.review.failing()[0].check
    assert desk.proven(URI, check, lambda: True)
    answers = iter([True])
    assert desk.proven(URI, check, lambda: next(answers, False)) == ()
    desk.latest[URI] = 6
    assert desk.look(URI, 5, TEXT) is None
    assert desk.explained(URI, 5) is None
    desk.latest[URI] = 5
    explained = desk.explained(URI, 5)
    assert explained is not None
    assert explained.causes
    desk.forget(URI)
    assert desk.explained(URI, 5) is None


def test_a_fault_of_the_program_is_told_and_leaves_no_findings_of_another_text(
    desk: Desk, monkeypatch: pytest.MonkeyPatch
) -> None:
    def fails(*given: object, **named: object) -> None:
        raise ZeroDivisionError

    look(desk, TEXT, 8)
    monkeypatch.setattr("ampreview.linter.editor.desk.load_text", fails)
    seen = look(desk, TEXT, 9)
    assert seen.review is None
    assert "itself failed" in seen.refusals[0].problem
