"""Promises that physics forbids hold at every milestone, and only where nothing can clear them.

Each bound is a sum done by hand beside the case: energy, Ohm's law, the square law of sound.
"""

from pathlib import Path

import pytest

from ampreview.linter.check import MILESTONES, Milestone
from ampreview.linter.evaluation.catalogue import load
from ampreview.linter.finding import Finding, Severity, Status
from ampreview.linter.judging.review import Review, review
from ampreview.linter.reading.loading import load_text

CATALOGUE = load()
FORBIDDEN = {entry.name: entry for entry in CATALOGUE.entries if entry.check.forbidden}

# 6 cells of 4.20 V are 25.2 V at most: 25.2^2 / (2 x 4 ohm) = 79.4 W, of which 86.5 W are 1.09
# times.  6 x 2.6 Ah x 3.6 V = 56.2 Wh; an eighth of 86.5 W lasts 5.19 h, 0.43 of 12 h, before
# any loss.
OFFER = """amplifier_spec: 1
milestone: concept
supply: {source: battery, rails: single}
battery: {chemistry: li-ion, series: 6, parallel: 1, cell: {capacity: 2.6 Ah}}
channels:
  main:
    rated_power: 86.5 W
    rated_load: 4 ohm
    output_stage: {topology: full-bridge, devices: integrated}
claims: {run_time: 12 h}
"""


def reviewed(text: str, milestone: Milestone = "concept") -> Review:
    loaded = load_text(text, "offer")
    assert loaded.spec is not None, loaded.refusals
    return review(loaded.spec, milestone)


def holding(text: str, milestone: Milestone = "concept") -> set[str]:
    return {item.check for item in reviewed(text, milestone).verdict.holding}


def finding(text: str, check: str) -> Finding:
    return next(item for item in reviewed(text).findings if item.check == check)


def test_an_impossible_offer_is_held_as_a_mere_concept() -> None:
    assert holding(OFFER) == {"power-above-rail", "run-time-best-case"}


def test_the_same_offer_within_its_rail_and_pack_is_released() -> None:
    possible = OFFER.replace("86.5 W", "60 W").replace("12 h", "4 h")
    assert reviewed(possible).verdict.released


def test_the_run_time_is_that_of_the_energy_alone() -> None:
    found = finding(OFFER, "run-time-best-case")
    assert found.evidence.figure == pytest.approx(56.16 / (86.5 / 8) / 12, rel=1e-3)


def test_what_a_tolerance_could_clear_does_not_hold_at_concept() -> None:
    """At 60 W and an eighth of it 56.2 Wh last 7.5 h; of an eighth only without the spread."""
    text = OFFER.replace("86.5 W", "60 W").replace("12 h", "8 h")
    assert holding(text) == {"run-time-best-case"}
    spread = text + "signal: {crest_factor: 11 dB .. 15 dB}\n"
    assert finding(spread, "run-time-best-case").severity is Severity.MAJOR
    assert holding(spread) == set()


def test_what_rests_on_an_estimate_is_no_proof() -> None:
    text = OFFER.replace("rated_load: 4 ohm", "rated_load: {value: 4 ohm, from: estimate}")
    assert finding(text, "power-above-rail").severity is Severity.MAJOR
    assert "power-above-rail" not in holding(text)


@pytest.mark.parametrize("name", sorted(FORBIDDEN))
@pytest.mark.parametrize("milestone", MILESTONES)
def test_the_failing_fragment_is_held(name: str, milestone: Milestone) -> None:
    check = FORBIDDEN[name].check
    assert check.limits.major is not None
    assert check.limits.critical is None
    assert name in holding("amplifier_spec: 1\n" + check.fails, milestone)


DESIGNS = sorted((Path(__file__).parents[1] / "published" / "designs").glob("*.amp.yaml"))
CLIPPED_ONLY = "split-half-bridge-integrated-31v.amp.yaml"  # 130 W, clean sine of 120 W


@pytest.mark.parametrize("path", DESIGNS, ids=lambda path: path.name)
def test_no_published_working_design_is_impossible(path: Path) -> None:
    found = reviewed(path.read_text()).findings
    held = {x.check for x in found if x.holds_always and x.status is Status.FINDING}
    assert held == ({"power-above-rail"} if path.name == CLIPPED_ONLY else set())
