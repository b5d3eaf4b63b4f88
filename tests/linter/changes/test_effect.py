"""Which answers of a changed spec need not be judged to know that they are not spoilt."""

from pathlib import Path

import pytest

from ampreview.linter.changes.effect import answers_of, may_spoil, spoils
from ampreview.linter.changes.remedy import Advisor
from ampreview.linter.changes.stages import with_remedies
from ampreview.linter.finding import Finding, Severity
from ampreview.linter.judging.review import with_run
from ampreview.linter.reading.loading import load_file

from .test_remedy import HOLD_UP, ROOM, changes, reviewed

SAMPLE = Path(__file__).parents[3] / "sample_specs" / "bird-call-pocket-faulty.amp.yaml"
LIMITS = [(severity.rank, stake) for severity in Severity for stake in range(3)]
CHANGED = [
    {"battery.series": "2"},
    {"channels.left.modulator.carrier": "900 kHz"},
    {"environment.ambient": "5 degC .. 60 degC"},
    {"channels.left.rated_power": "9 W", "channels.right.rated_power": "9 W"},
]


@pytest.mark.parametrize("changed", CHANGED)
def test_a_figure_that_can_spoil_nothing_belongs_to_an_answer_that_does_not(
    changed: dict[str, object],
) -> None:
    """Every answer is judged in full, and held against what its figure alone says."""
    spec = load_file(SAMPLE).spec
    assert spec is not None
    review, run = with_run(spec)
    before, revised = answers_of(review.findings), run.revised(changed)
    assert revised is not None
    spared = 0
    for entry, subject in revised[0].questions():
        figure = revised[0].at_worst(entry, subject)
        old, new = before[entry.name, subject], revised[0].answer(entry, subject)
        assert figure is None or new.evidence.figure in (figure, None)
        for limit in LIMITS if figure is not None else ():
            if not may_spoil(old, entry.check, figure, limit):
                spared += 1
                assert not spoils(old, new, limit), (entry.name, subject, limit)
    assert spared > 100


def test_no_further_value_is_tried_where_the_nearest_spoils_an_answer(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """6800 uF store 1 J at 20 V, and are too much for the room; so are 10 mF and 15 mF."""
    tried: list[object] = []
    prove = Advisor.prove

    def proved(self: Advisor, finding: Finding, values: dict[str, object]) -> object:
        tried.extend(values.values())
        return prove(self, finding, values)

    monkeypatch.setattr(Advisor, "prove", proved)
    done = with_remedies(
        reviewed("{v_rail: 20 V, bulk: {c: 1000 uF, v_rated: 63 V}}", hold_up=HOLD_UP, room=ROOM)
    )
    assert [x for x in tried if str(x).endswith("F")] == ["6800 uF"]
    assert changes(done, "hold-up") == [(("supply.v_rail", "45 V"),)]
