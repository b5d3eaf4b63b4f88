"""Only changes that can be carried out are offered: the levers of the real catalogue."""

import pytest

from ampreview.linter.changes.remedy import Advisor
from ampreview.linter.declare import load_schema
from ampreview.linter.evaluation.catalogue import load
from ampreview.linter.judging.review import review
from ampreview.linter.reading.loading import load_text
from ampreview.rules.derived.feed import feed_word

SCHEMA = load_schema()
field_of = SCHEMA.field_of

CARRIER, TO_GROUND = "modulator.carrier", "filter.c_ground.c"


def offered(check: str, stage: str) -> set[str]:
    """The paths that the check may change in a stage, as seen from its channel."""
    text = f"amplifier_spec: 1\nchannels: {{main: {{output_stage: {{{stage}}}}}}}\n"
    loaded = load_text(text, "fragment")
    assert loaded.spec is not None, loaded.refusals
    done = review(loaded.spec)
    entry = load().entry(check)
    assert entry is not None
    (finding,) = [item for item in done.findings if item.check == check]
    levers = Advisor(done).levers.of(entry, finding)
    return {path.removeprefix("channels.main.") for _, path in levers}


@pytest.mark.parametrize("check", ["carrier-residual", "carrier-attenuation"])
@pytest.mark.parametrize(
    ("stage", "carrier", "ground"),
    [
        ("topology: half-bridge, devices: discrete", True, False),
        ("topology: half-bridge, devices: integrated", False, False),
        ("topology: full-bridge, devices: integrated", False, True),
        ("topology: full-bridge, devices: discrete", True, True),
        ("topology: full-bridge", True, True),  # silent: nothing speaks against it
    ],
)
def test_what_can_be_changed_in_the_filter(check, stage, carrier, ground) -> None:
    found = offered(check, stage)
    assert (CARRIER in found, TO_GROUND in found) == (carrier, ground)
    assert {"filter.inductor.l", "filter.c_across.c"} <= found


def test_conditions_name_words_that_their_fields_know() -> None:
    """A condition with a misspelt word would take the change away for good."""
    conditions = [
        (path, words)
        for entry in load().entries
        for lever in entry.check.levers
        for path, words in lever.when.items()
    ]
    feeds = {feed_word("battery", "none"), feed_word("dc-source", "none")}
    for path, words in conditions:
        known = feeds if path == "rail_feed" else field_of(path).words or ("fitted", "none")
        assert words in known
    assert {path for path, _ in conditions} == {
        "loudspeaker.c_series",
        "output_stage.devices",
        "output_stage.topology",
        "rail_feed",
    }


@pytest.mark.parametrize(("source", "cells"), [("battery", True), ("dc-source", False)])
def test_cells_are_changed_only_where_they_are_the_rail(source: str, cells: bool) -> None:
    text = f"amplifier_spec: 1\nsupply: {{source: {source}, v_rail: 24 V}}\n"
    loaded = load_text(f"{text}channels: {{main: {{rated_load: 4 ohm}}}}\n", "fragment")
    assert loaded.spec is not None, loaded.refusals
    done = review(loaded.spec)
    entry = load().entry("supply-above-recommended")
    assert entry is not None
    finding = next(item for item in done.findings if item.check == "supply-above-recommended")
    paths = {path for _, path in Advisor(done).levers.of(entry, finding)}
    assert ("battery.series" in paths) == cells


TURNED = {"part", "setting", "topology", "claim"}


def test_a_lever_is_something_that_a_designer_decides() -> None:
    """A use, and what is measured or follows from the rest, is invented when it is moved."""
    for path in {x.path for entry in load().entries for x in entry.check.levers}:
        assert SCHEMA.nature_of(path) in TURNED, path


def test_what_a_field_is_comes_from_its_section_or_from_itself() -> None:
    """By hand, for fields that were moved once to make a finding go away."""
    told = {
        "safety.nearest_listener": "use",
        "filter.c_across.bias_retention": "outcome",
        "wiring.supply_lead.i_rated": "outcome",
        "protection.dc_detector.independent": "outcome",
        "filter.corner": "outcome",
        "battery.cell.v_oc_low": "use",
        "signal.crest_factor": "use",
        "claims.run_time": "claim",
        "rated_power": "claim",
        "rated_thd": "claim",
        "environment.ambient": "claim",
        "gate_drive.dead_time": "setting",
        "battery.charger.v": "setting",
        "modulator.levels": "topology",
        "battery.series": "topology",
        "output_stage.device.v_dss": "part",
        "wiring.supply_lead.area": "part",
    }
    assert {path: SCHEMA.nature_of(path) for path in told} == told


def test_a_design_change_writes_no_claim_and_no_use() -> None:
    """What it writes of outcomes is what one builds: a detector with a supply of its own.

    One that lowers a promise says so.
    """
    changes = [change for change in load().changes if change.kind != "promise"]
    written = {item.path for change in changes for item in change.follows}
    outcomes = {path for path in written if SCHEMA.nature_of(path) not in TURNED - {"claim"}}
    assert outcomes == {"protection.dc_detector.independent", "wiring.supply_lead.i_rated"}


def test_a_design_change_helps_checks_that_there_are() -> None:
    names = {entry.name for entry in load().entries}
    for change in load().changes:
        assert set(change.helps) <= names, change.title
        assert change.helps or change.moves, change.title
        assert change.follows, change.title
        assert change.sources, change.title
