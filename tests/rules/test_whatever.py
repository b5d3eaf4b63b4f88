"""What cannot change the answer opens nothing: a missing value over all that it usually is."""

import re
from pathlib import Path

from ampreview.linter.finding import Status
from ampreview.linter.judging.review import review
from ampreview.linter.reading.loading import load_text

CHOIR = Path(__file__).parents[2] / "sample_specs" / "choir-portable.amp.yaml"


def test_an_unknown_core_loss_asks_where_it_matters_alone() -> None:
    """A pack that can give 958 W for peaks of 207 W collapses by no core loss."""
    text, count = re.subn(r"\n +p_v: .*", "", CHOIR.read_text(encoding="utf-8"))
    assert count
    loaded = load_text(text, "board")
    assert loaded.spec is not None
    found = {item.check: item for item in review(loaded.spec, "production").findings}
    collapse = found["pack-collapse"]
    assert collapse.status is Status.MEETS
    assert "met for any usual value of core loss" in collapse.message
    asking = [x for x in found.values() if x.status is Status.OPEN and x.advice.missing]
    assert [item.check for item in asking] == ["inductor-core-loss"]


def test_the_ends_of_what_a_loss_may_be_are_those_of_its_law() -> None:
    """With the current or with its square: part^0.5 and part^1 over the fitted part^0.82.

    By hand: 1/8 of the power of a sine, and 1/50 at a crest factor of 20 dB.
    """
    for part, low, high in ((1 / 8, 0.68, 2.0), (1 / 50, 0.49, 3.5)):
        assert low <= part / part**0.82 < 1.02 * low
        assert part**0.5 / part**0.82 <= high < 1.04 * part**0.5 / part**0.82
