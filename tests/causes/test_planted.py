"""The causes told are the causes planted: each of them, apart, and at most one more.

Minor findings may have causes of their own beside these.
"""

from functools import cache
from pathlib import Path

import pytest

from ampreview.linter.changes.causes import causes_of
from ampreview.linter.changes.stages import with_remedies
from ampreview.linter.finding import Cause, Severity
from ampreview.linter.judging.review import Review, review
from ampreview.linter.reading.loading import Spec, load_file
from ampreview.linter.reports.cause_words import cause_words, in_order

from .planted import COMPOSED, SAMPLES

FOLDER = Path(__file__).parents[2] / "sample_specs"
NAMES = (*SAMPLES, *COMPOSED)


def planted(name: str) -> dict[str, tuple[str, ...]]:
    return SAMPLES[name] if name in SAMPLES else COMPOSED[name].causes


def spec_of(name: str) -> Spec:
    base = name if name in SAMPLES else COMPOSED[name].base
    loaded = load_file(FOLDER / f"{base}.amp.yaml")
    if loaded.spec is not None and name in COMPOSED:
        loaded = loaded.spec.with_values(COMPOSED[name].changes())
    assert loaded.spec is not None, loaded.refusals
    return loaded.spec


@cache
def told(name: str) -> tuple[Review, tuple[Cause, ...]]:
    advised = with_remedies(review(spec_of(name)))
    return advised, causes_of(advised)


def holding(name: str, check: str) -> set[int]:
    """The causes under which a check is told, by their number."""
    _, causes = told(name)
    numbers = enumerate(causes)
    return {number for number, cause in numbers if check in {x.check for x in cause.findings}}


@pytest.mark.parametrize("name", NAMES)
def test_each_planted_cause_is_told_as_one(name: str) -> None:
    for fault, checks in planted(name).items():
        under = {check: holding(name, check) for check in checks}
        assert all(under.values()), f"{fault}: {under}"
        assert set.intersection(*under.values()), f"{fault} is told in pieces: {under}"


@pytest.mark.parametrize("name", NAMES)
def test_planted_causes_are_told_apart(name: str) -> None:
    seen: dict[frozenset[int], str] = {}
    for fault, checks in planted(name).items():
        under = frozenset(set.intersection(*(holding(name, check) for check in checks)))
        assert under not in seen, f"{fault} is told together with {seen[under]}"
        seen[under] = fault


@pytest.mark.parametrize("name", NAMES)
def test_at_most_one_cause_more_is_told(name: str) -> None:
    _, causes = told(name)
    grave = [cause for cause in causes if cause.severity is not Severity.MINOR]
    assert len(grave) <= len(planted(name)) + 1, [cause.headline for cause in grave]


@pytest.mark.parametrize("name", NAMES)
def test_each_failing_answer_is_in_one_cause(name: str) -> None:
    advised, causes = told(name)
    explained = [id(item) for cause in causes for item in cause.findings]
    assert sorted(explained) == sorted(map(id, advised.failing()))
    numbered = in_order(advised, cause_words(advised, causes))
    assert all(number for item, number in numbered if item.severity is not None)


@pytest.mark.parametrize("name", NAMES)
def test_a_remedy_of_a_cause_meets_a_finding_of_it(name: str) -> None:
    for cause in told(name)[1]:
        labels = {f"{item.check} ({item.subject})" for item in cause.findings}
        proposed = {x.changes for item in cause.findings for x in item.advice.remedies}
        for remedy in cause.remedies:
            assert remedy.changes in proposed or labels & set(remedy.cured), cause.headline


@pytest.mark.parametrize("name", ["foyer-proposal", "four faults in one product"])
def test_the_same_spec_has_the_same_causes(name: str) -> None:
    again = causes_of(with_remedies(review(spec_of(name))))
    assert [(x.headline, x.note) for x in again] == [(x.headline, x.note) for x in told(name)[1]]


def test_what_kills_is_told_first() -> None:
    """Uncertified mains before six other critical causes with more findings."""
    _, causes = told("playhouse-subwoofer-faulty")
    assert "mains-barrier" in {x.check for x in causes[0].findings}
