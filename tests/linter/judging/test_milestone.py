"""What holds at which milestone, and the verdict that follows."""

from dataclasses import replace
from typing import Any

import pytest

from ampreview.linter.check import MILESTONES, Stake
from ampreview.linter.finding import Finding, Severity, Status
from ampreview.linter.judging.milestone import GATES, verdict

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
