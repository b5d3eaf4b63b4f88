"""One list of hazards: every check that people can be hurt by warns, the same hazard alike.

Signal words by ANSI Z535.6 and the colours of their panels by ANSI Z535.1, both from memory.
"""

from pathlib import Path

import pytest

from ampreview import rules
from ampreview.linter.evaluation.catalogue import load
from ampreview.linter.finding import Status
from ampreview.linter.judging.review import review
from ampreview.linter.reading.loading import load_text
from ampreview.linter.reports.assess_markdown import markdown_pieces
from ampreview.linter.reports.assess_sarif import sarif_pieces
from ampreview.linter.reports.cautions import SIGNALS, cautions_of
from ampreview.rules.hazards import HAZARDS, MAINS

CHECKS = {entry.name: entry.check for entry in load().entries}
RULES = Path(next(iter(rules.__path__)))
# what a person can be hurt by, whatever the check: words of the list, and a check that has each
HURTS = {
    "Mains voltage kills": "mains-barrier",
    "can shock and injure": "shock-class-rails",
    "stay charged": "stored-voltage-service",
    "arcs and throws hot metal": "inrush-energy",
    "Cells beyond their limits": "pack-collapse",
    "are charged too high": "charge-voltage",
    "hydrogen": "battery-ventilation",
    "overloaded lead, trace or connector": "supply-lead-current",
    "bursts, or goes on burning": "fuse-breaking-capacity",
    "set the loudspeaker on fire": "dc-fault-power",
    "can burst and throw hot electrolyte": "bulk-capacitor-voltage",
    "A resistor above its rating": "bleeder-power",
    "Hot surfaces burn skin": "touch-temperature-heatsink",
    "Heat that nothing ends": "thermal-runaway",
    "failed short can burn": "surge-against-stage",
    "throw hot fragments": "dead-time-margin",
    "damage hearing": "hearing-notice",
    "burn in transit": "lithium-transport-cited",
    "protects nobody": "conductor-spacing",
}


@pytest.mark.parametrize(("words", "check"), HURTS.items())
def test_each_hazard_stands_once_and_its_check_warns_of_it(words: str, check: str) -> None:
    (hazard,) = [item for item in HAZARDS if words in item.text]
    told = [x for x in CHECKS[check].cautions if x.text.startswith(hazard.text)]
    assert [x.signal for x in told] == [hazard.signal]
    assert hazard.signal in ("DANGER", "WARNING", "CAUTION"), "people can be hurt"


def test_no_check_words_a_hazard_of_its_own() -> None:
    for name, check in CHECKS.items():
        for told in check.cautions:
            (hazard,) = [item for item in HAZARDS if told.text.startswith(item.text)]
            assert told.signal == hazard.signal, name
    bench = RULES / "bringup"  # its steps warn of the work itself too: no checks, so on no list
    files = [x for x in RULES.rglob("*.py") if x.name != "hazards.py" and bench not in x.parents]
    assert [path.name for path in files if "Caution(" in path.read_text("utf-8")] == []


def test_what_can_hurt_or_destroy_warns() -> None:
    """Standards cited and the like warn of nothing; a critical limit and safety always do."""
    grave = {name for name, x in CHECKS.items() if x.limits.critical or x.stake == "safety"}
    assert {name for name in grave if not CHECKS[name].cautions} == set()


def test_red_is_the_colour_of_danger_and_orange_that_of_warning() -> None:
    assert MAINS.signal == "DANGER"
    colours = dict(zip(SIGNALS, ("red", "orange", "yellow", "blue"), strict=True))
    assert all(colours[word] in style for word, style in SIGNALS.items())


def test_an_open_question_of_safety_prints_its_caution() -> None:
    text = "amplifier_spec: 1\nmilestone: prototype\nsupply: {source: mains-converter}\n"
    loaded = load_text(text, "board")
    assert loaded.spec is not None
    found = review(loaded.spec)
    (item,) = [x for x in found.findings if x.check == "mains-barrier"]
    assert item.status is Status.OPEN
    assert cautions_of(item) == (MAINS,)
    page = "".join(markdown_pieces([("board", found)]))
    sarif = "".join(sarif_pieces([("board", found)]))
    for report in (page, sarif):
        assert "Mains voltage kills" in report
