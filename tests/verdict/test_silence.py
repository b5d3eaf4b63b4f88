"""Silence neither convicts nor acquits: a spec that says less is never judged more mildly.

Fields and sections are left out in turn, ``none`` is written where it is allowed, and tolerances
are wider.  What held before must still hold, and what was critical must still be, or stand as an
item that holds.  None of these tests knows a right figure; each compares a spec with a poorer one.

A part of the specs and of the changes is tried at each run, and all of them with ``SWEEP=1``.
"""

import random
from collections.abc import Iterable
from itertools import chain

import pytest

from ampreview.linter.check import Milestone
from ampreview.linter.reading.loading import Spec

from ..sampling import few, some
from . import accepted, specs
from .changes import Change, several_left_out, silences, widenings
from .reruns import Judged, Rejudged
from .silence import violations

SAMPLES = specs.files("sample_specs")
FILES = (
    *SAMPLES,
    *specs.files("tests/published/designs"),
    *specs.files("tests/published/failures"),
)
FRAGMENTS = specs.fragments()
GENERATED = range(30)
# At the concept open items are listed and hold nothing, so there is no gate to slip through.
LATER: Milestone = "production"


def none_is_milder(
    name: str, spec: Spec, changes: Iterable[Change], milestone: Milestone = "prototype"
) -> None:
    """Fail with what some changes make milder, one line each."""
    before = Judged(spec, specs.house(), milestone)
    found = [item.line for item in violations(name, before, changes)]
    assert not found, "\n".join(found)


def all_changes(spec: Spec) -> Iterable[Change]:
    return chain(silences(spec), widenings(spec))


@pytest.mark.parametrize("check", some(FRAGMENTS, 12))
def test_failing_fragments(check: str) -> None:
    spec = specs.fragment(check)
    none_is_milder(check, spec, all_changes(spec))


@pytest.mark.parametrize("check", some(FRAGMENTS, 30, first=4))
def test_failing_fragments_at_production(check: str) -> None:
    spec = specs.fragment(check)
    none_is_milder(check, spec, silences(spec), LATER)


@pytest.mark.parametrize("name", some(FILES, 2))
def test_files(name: str) -> None:
    spec = specs.spec_of_file(name)
    none_is_milder(name, spec, few(all_changes(spec), 12, name))


@pytest.mark.parametrize("name", some(FILES, 8, first=1))
def test_files_at_production(name: str) -> None:
    spec = specs.spec_of_file(name)
    none_is_milder(name, spec, few(silences(spec), 12, f"{name} later"), LATER)


@pytest.mark.parametrize("seed", some(GENERATED, 10))
def test_generated(seed: int) -> None:
    spec = specs.generated(seed)
    none_is_milder(f"generated {seed}", spec, few(silences(spec), 20, f"{seed}"))


@pytest.mark.parametrize("seed", some(GENERATED, 10, first=5))
def test_several_fields_at_once(seed: int) -> None:
    spec = specs.generated(seed)
    changes = several_left_out(spec, random.Random(f"several {seed}"), 60)
    none_is_milder(f"generated {seed}", spec, few(changes, 20, f"{seed}"))


@pytest.mark.parametrize("name", some(SAMPLES, 3))
def test_one_channel_that_says_less(name: str) -> None:
    spec = specs.spec_of_file(name)
    if len(spec.channels) > 1:
        none_is_milder(name, spec, few(silences(spec, one_channel=True), 12, name))


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
    for seed in GENERATED[:3]:
        before = Judged(specs.generated(seed), specs.house(), "prototype")
        assert before.holding, seed
        assert before.at_stake, seed


@pytest.mark.parametrize("name", some(SAMPLES, 3, first=1))
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
    assert len(accepted.TABLE) == len(set(accepted.TABLE)) <= 35
