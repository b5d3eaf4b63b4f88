"""An open item can be answered: it names a field, or says what decides where no field could.

Whole specs at the prototype are read by ``test_messages.py``.
"""

from collections.abc import Iterator
from pathlib import Path

import pytest

from ampreview.linter.check import MILESTONES, Milestone
from ampreview.linter.evaluation.catalogue import Entry, load
from ampreview.linter.finding import Finding, Status
from ampreview.linter.judging.review import Review, review
from ampreview.linter.reading.loading import load_text

from ..reviews import FILES, name_of, reviewed
from ..sampling import some

GRAVE: tuple[Milestone, ...] = MILESTONES[1:]
# What a reader can do without a field: look a limit up, weigh what the message names, measure.
SAID = ("not verified against the standard", "what decides: ", "not been measured on a board")


def dead_ends(found: Review) -> list[str]:
    """Open items that ask for nothing and do not say why."""
    return [f"{x.check} ({x.subject}): {x.message}" for x in found.findings if is_dead_end(x)]


STEP = 120  # two fragments a check


def is_dead_end(item: Finding) -> bool:
    told = any(words in item.message for words in SAID)
    return item.status is Status.OPEN and not item.advice.missing and not told


@pytest.mark.parametrize("path", some(FILES, 10), ids=name_of)
def test_open_items_at_production_can_be_answered(path: Path) -> None:
    assert dead_ends(reviewed(path, "production")) == []


def fragments() -> Iterator[tuple[Entry, str]]:
    for entry in load().entries:
        yield entry, entry.check.fails
        yield entry, entry.check.passes


@pytest.mark.slow
@pytest.mark.parametrize("milestone", GRAVE)
def test_open_items_of_fragments_can_be_answered(milestone: Milestone) -> None:
    """What fails at the prototype, what passes at production; of every sixtieth check."""
    for entry, text in some(list(fragments()), STEP, GRAVE.index(milestone)):
        loaded = load_text(f"amplifier_spec: 1\n{text}", "fragment.amp.yaml")
        assert loaded.spec is not None, f"{entry.name}: {loaded.refusals}"
        assert dead_ends(review(loaded.spec, milestone)) == [], entry.name
