"""A core of which nothing is known: one check asks for its data, the others bear its worst."""

from pathlib import Path

import pytest

from ampreview.linter.finding import Status
from ampreview.linter.judging.review import review
from ampreview.linter.reading.loading import Spec, load_file
from ampreview.rules.derived.core_loss import next_to_nothing
from ampreview.rules.output_filter.inductor_core_loss import figure as rise

SAMPLE = Path(__file__).parents[3] / "sample_specs" / "choir-portable.amp.yaml"
CORE = ("turns", "a_e", "v_e", "p_v")


def without_core_data() -> Spec:
    spec = load_file(SAMPLE).spec
    assert spec is not None
    taken = {path: None for path in spec.values if path.rpartition(".")[2] in CORE}
    bare = spec.with_values(taken).spec
    assert bare is not None
    return bare


def test_the_most_that_is_reckoned_with_heats_the_part_by_60_k() -> None:
    """Sagami 7W14A, 9.4 mohm: 7 A heat it by 40 K; by Newton's law of cooling 0.691 W by 60 K."""
    most = 100 * next_to_nothing(2.0, 60.0, 40.0, 7.0, 9.4e-3)
    assert most == pytest.approx(2 * 7.0**2 * 9.4e-3 * 60 / 40)
    assert rise(40.0, 0.0, 7.0, most, 2.0, 9.4e-3) == pytest.approx(60.0)


@pytest.mark.parametrize("milestone", ["prototype", "production"])
def test_core_data_that_are_missing_are_asked_for_once(milestone) -> None:
    found = review(without_core_data(), milestone).findings
    asking = [
        item
        for item in found
        if item.status is Status.OPEN
        and any(x.path.rpartition(".")[2] in CORE for x in item.advice.missing)
    ]
    assert {item.check for item in asking} == {"inductor-core-loss"}
