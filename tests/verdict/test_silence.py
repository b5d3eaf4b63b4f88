"""Silence neither convicts nor acquits: a spec that says less is never judged more mildly.

Every field and section is left out in turn, and ``none`` written where it is allowed.  What
held before must still hold, and what was critical must still be, or stand as an item that
holds.  None of these tests knows a right figure; each compares a spec with a poorer one.
"""

import random
from collections.abc import Iterable

import pytest

from ampreview.linter.check import Milestone
from ampreview.linter.reading.loading import Spec

from . import accepted, specs
from .changes import Change, several_left_out, silences, widenings
from .reruns import Judged, Rejudged
from .silence import violations

SAMPLES = specs.files("sample_specs")
PUBLISHED = (*specs.files("tests/published/designs"), *specs.files("tests/published/failures"))
FRAGMENTS = specs.fragments()
# At the concept open items are listed and hold nothing, so there is no gate to slip through.
OTHER_STAGES: tuple[Milestone, ...] = ("production",)
FEW = range(5)
FURTHER = range(5, 30)
SLOW = ("choir-portable-faulty", "playhouse-subwoofer-faulty")


def none_is_milder(
    name: str, spec: Spec, changes: Iterable[Change], milestone: Milestone = "prototype"
) -> None:
    """Fail with what some changes make milder, one line each."""
    before = Judged(spec, specs.house(), milestone)
    found = [item.line for item in violations(name, before, changes)]
    assert not found, "\n".join(found)


def marked(name: str) -> object:
    """A sample; those that take long only in the wider selection."""
    slow = any(word in name for word in SLOW)
    return pytest.param(name, marks=pytest.mark.slow if slow else ())


@pytest.mark.parametrize("check", FRAGMENTS)
def test_failing_fragments(check: str) -> None:
    spec = specs.fragment(check)
    none_is_milder(check, spec, silences(spec))


@pytest.mark.parametrize("name", [marked(name) for name in SAMPLES])
def test_samples(name: str) -> None:
    spec = specs.spec_of_file(name)
    none_is_milder(name, spec, silences(spec))


@pytest.mark.parametrize("name", PUBLISHED)
def test_published(name: str) -> None:
    spec = specs.spec_of_file(name)
    none_is_milder(name, spec, silences(spec))


@pytest.mark.parametrize("seed", FEW)
def test_generated(seed: int) -> None:
    spec = specs.generated(seed)
    none_is_milder(f"generated {seed}", spec, silences(spec))


@pytest.mark.parametrize("check", FRAGMENTS)
def test_wider_fragments(check: str) -> None:
    spec = specs.fragment(check)
    none_is_milder(check, spec, widenings(spec))


# A wider selection


@pytest.mark.slow
@pytest.mark.parametrize("seed", FURTHER)
def test_further_generated(seed: int) -> None:
    spec = specs.generated(seed)
    none_is_milder(f"generated {seed}", spec, silences(spec))


@pytest.mark.slow
@pytest.mark.parametrize("seed", [*FEW, *FURTHER])
def test_several_fields_at_once(seed: int) -> None:
    spec = specs.generated(seed)
    changes = several_left_out(spec, random.Random(f"several {seed}"), 60)
    none_is_milder(f"generated {seed}", spec, changes)


@pytest.mark.slow
@pytest.mark.parametrize("milestone", OTHER_STAGES)
@pytest.mark.parametrize("check", FRAGMENTS)
def test_failing_fragments_at_other_milestones(check: str, milestone: Milestone) -> None:
    spec = specs.fragment(check)
    none_is_milder(check, spec, silences(spec), milestone)


@pytest.mark.slow
@pytest.mark.parametrize("milestone", OTHER_STAGES)
@pytest.mark.parametrize("name", [*SAMPLES, *PUBLISHED])
def test_files_at_other_milestones(name: str, milestone: Milestone) -> None:
    spec = specs.spec_of_file(name)
    none_is_milder(name, spec, silences(spec), milestone)


@pytest.mark.slow
@pytest.mark.parametrize("name", SAMPLES)
def test_one_channel_that_says_less(name: str) -> None:
    spec = specs.spec_of_file(name)
    if len(spec.channels) > 1:
        none_is_milder(name, spec, silences(spec, one_channel=True))


@pytest.mark.slow
@pytest.mark.parametrize("name", [*SAMPLES, *PUBLISHED])
def test_wider_files(name: str) -> None:
    spec = specs.spec_of_file(name)
    none_is_milder(name, spec, widenings(spec))


# The tests themselves


def test_every_kind_of_change_is_tried() -> None:
    spec = specs.spec_of_file("sample_specs/foyer-proposal.amp.yaml")
    kinds = {change.kind for change in (*silences(spec), *widenings(spec))}
    assert kinds == {"field left out", "section left out", "none", "none added", "wider"}


def test_a_cure_would_be_told() -> None:
    """The capacitors of the foyer, 25 V on 29.4 V, cured by a rating that is no silence."""
    spec = specs.spec_of_file("sample_specs/foyer-proposal.amp.yaml")
    for kind, what in (("field left out", "critical lost"), ("wider", "eased")):
        change = Change(kind, "supply.bulk.v_rated", {"supply.bulk.v_rated": "63 V"})
        before = Judged(spec, specs.house(), "prototype")
        found = [(item.check, item.what) for item in violations("foyer", before, [change])]
        assert ("bulk-capacitor-voltage", what) in found


def test_generated_products_have_much_to_lose() -> None:
    """Else leaving something out could not show anything."""
    for seed in FEW:
        before = Judged(specs.generated(seed), specs.house(), "prototype")
        assert before.holding, seed
        assert before.at_stake, seed


@pytest.mark.parametrize("name", SAMPLES)
def test_judging_only_what_is_reached_gives_the_whole_review(name: str) -> None:
    dice = random.Random(name)
    before = Judged(specs.spec_of_file(name), specs.house(), "prototype")
    changes = list(silences(before.spec))
    for change in dice.sample(changes, 4):
        spec = before.spec.with_values(change.values).spec
        if spec is not None:
            whole = Judged(spec, specs.house(), "prototype")
            assert told(Rejudged(before, spec)) == told(whole), change


def told(judged: Judged) -> dict[object, object]:
    return {
        key: item and (item.status, item.severity, item.message, item.advice.missing)
        for key, item in judged.answers.items()
    }


def test_every_row_of_the_short_table_has_a_reason() -> None:
    for row in accepted.TABLE:
        assert len(row.why.split()) >= 8, row
    assert len(accepted.TABLE) == len(set(accepted.TABLE)) <= 34
