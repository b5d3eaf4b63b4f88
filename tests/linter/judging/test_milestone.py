"""What holds at which milestone, and the verdict that follows."""

from dataclasses import replace
from typing import Any

import pytest

from ampreview.linter.asking.questions import groups_of
from ampreview.linter.check import MILESTONES, Milestone, Stake
from ampreview.linter.finding import Finding, Severity, Status
from ampreview.linter.judging.milestone import GATES, verdict
from ampreview.linter.judging.review import Review, review
from ampreview.linter.judging.unjudged import UNJUDGED
from ampreview.linter.reading.loading import load_text
from ampreview.linter.reports.verdict import reason

PLAIN = Finding("some-check", "invented", "A question", "product", Status.MEETS, "")


def found(severity: Severity) -> Finding:
    return replace(PLAIN, status=Status.FINDING, severity=severity)


def opened(stake: Stake) -> Finding:
    return replace(PLAIN, status=Status.OPEN, stake=stake)


@pytest.mark.parametrize(
    ("finding", "holds_at"),
    [
        (found(Severity.CRITICAL), {"concept", "prototype", "production"}),
        (found(Severity.MAJOR), {"prototype", "production"}),
        (found(Severity.MINOR), set()),
        (opened("safety"), {"prototype", "production"}),
        (opened("rating"), {"production"}),
        (opened("performance"), {"production"}),
        (PLAIN, set()),
    ],
)
def test_what_holds_where(finding: Finding, holds_at: set[str]) -> None:
    held = {stage for stage in MILESTONES if not verdict((finding,), stage).released}
    assert held == holds_at


@pytest.mark.parametrize("stage", MILESTONES)
@pytest.mark.parametrize("hold_at", list(Severity))
def test_another_threshold_can_be_asked_for(stage: Any, hold_at: Severity) -> None:
    held = [x for x in Severity if not verdict((found(x),), stage, hold_at).released]
    assert held == list(Severity)[: list(Severity).index(hold_at) + 1]


def test_every_milestone_says_why() -> None:
    assert set(GATES) == set(MILESTONES)
    assert all(len(gate.why) > 40 for gate in GATES.values())


START = """amplifier_spec: 1
supply: {source: dc-source, rails: single, v_rail: 24 V}
channels: {main: {rated_power: 20 W, rated_load: 8 ohm}}
"""
LEFT_OUT = {
    "rated_power: 20 W, ": "channels.main.rated_power",
    ", rated_load: 8 ohm": "channels.main.rated_load",
    ", v_rail: 24 V": "supply.v_rail",
    "supply: {source: dc-source, rails: single, v_rail: 24 V}\n": "supply.source",
}


@pytest.mark.parametrize("stage", MILESTONES)
def test_what_gives_nothing_to_judge_by_is_no_pass(stage: Milestone) -> None:
    blank = reviewed("amplifier_spec: 1\n", stage)
    assert not blank.verdict.released
    assert reason(blank).startswith("Nothing to judge yet. ")
    paths = [path for group in groups_of(blank) for x in group.questions for path in x.paths]
    assert [path.rpartition(".")[2] for path in paths[:3]] == [
        "rated_power",
        "rated_load",
        "source",
    ]


@pytest.mark.parametrize(("text", "path"), LEFT_OUT.items())
def test_rating_load_and_supply_are_asked_for_one_by_one(text: str, path: str) -> None:
    assert reviewed(START, "concept").verdict.released
    held = reviewed(START.replace(text, ""), "concept").verdict.holding
    assert [(x.check, x.advice.missing[0].path) for x in held] == [(UNJUDGED, path)]


def reviewed(text: str, stage: Milestone) -> Review:
    loaded = load_text(text, "start")
    assert loaded.spec is not None, loaded.refusals
    return review(loaded.spec, stage)
