"""A pack of which only the full voltage is known: found where that is too little, never met."""

from collections.abc import Mapping

import pytest

from ampreview.linter.check import Arguments, Input
from ampreview.linter.evaluation.catalogue import load
from ampreview.linter.finding import Severity, Status

from ..whole import answer, answers

POCKET = """
milestone: prototype
supply:
  source: battery
  rails: single
  converter: step-up
  v_rail: 6.5 V
  converter_efficiency: 80 %
  bulk: {c: 2200 uF}
battery:
  chemistry: li-ion
  series: 1
  parallel: 1
  cell: {i_cont: 3 A, i_pulse: 4 A}
  protection: {i_trip: 3 A}
channels:
  left: &one
    rated_power: 5 W
    rated_load: 4 ohm
    output_stage: {topology: full-bridge, devices: integrated}
  right: *one
"""
CURRENTS = ("pack-current", "pack-pulse-current", "protection-trip-above-music")
ASKING = "blocking-capacitor-current"  # of what hangs on the topology, the first that is grave


def test_full_cell_is_found_too_weak() -> None:
    """10 W / 80 % / 4.2 V: 2.98 A mean, twice that at the crest, root 1.5 of it rms."""
    found = answers(POCKET)
    mean = 10 / 0.8 / 4.2
    assert found["pack-current"].evidence.figure == pytest.approx(1.5**0.5 * mean / 3.0, rel=1e-3)
    assert found["pack-current"].severity is Severity.CRITICAL
    assert found["pack-pulse-current"].evidence.figure == pytest.approx(2 * mean / 4.0, rel=1e-3)
    assert found["pack-pulse-current"].severity is Severity.MAJOR
    assert found["protection-trip-above-music"].evidence.figure == pytest.approx(
        3.0 / (2 * mean), rel=1e-3
    )
    assert found["protection-trip-above-music"].severity is Severity.MAJOR


@pytest.mark.parametrize("check", CURRENTS)
def test_only_the_topology_is_asked_for_and_by_one_check(check: str) -> None:
    """4 A rms and 7 A of crest: above the 3.65 A and 5.95 A of bridges, below half bridges'."""
    between = POCKET.replace("i_cont: 3 A, i_pulse: 4 A", "i_cont: 4 A, i_pulse: 7 A")
    between = between.replace("i_trip: 3 A", "i_trip: 7 A")
    half = answers(between.replace("full-bridge", "half-bridge"))[check]
    assert half.severity is Severity.MAJOR
    silent = between.replace("topology: full-bridge, ", "")
    found = answers(silent)[check]
    topology = "channels.left.output_stage.topology"
    assert found.status is Status.NOT_APPLICABLE
    assert f"it depends on {topology}, which {ASKING} asks for" in found.message
    for channel in ("left", "right"):
        asking = answer(ASKING, silent, subject=channel)
        assert asking.status is Status.OPEN
        assert not asking.permissible
        assert [item.path for item in asking.advice.missing] == [
            f"channels.{channel}.output_stage.topology"
        ]


@pytest.mark.parametrize("check", CURRENTS)
def test_too_weak_for_either_topology_is_found_without_it(check: str) -> None:
    """3 A are too little even for the bridges of test_full_cell_is_found_too_weak."""
    found = answers(POCKET.replace("topology: full-bridge, ", ""))[check]
    assert found.severity is Severity.MAJOR
    assert "even with the best usual value" in found.message
    assert "channels.left.output_stage.topology" in found.message


@pytest.mark.parametrize("check", CURRENTS)
def test_full_cell_that_would_do_is_no_pass(check: str) -> None:
    strong = POCKET.replace("i_cont: 3 A, i_pulse: 4 A", "i_cont: 30 A, i_pulse: 40 A")
    found = answers(strong.replace("i_trip: 3 A", "i_trip: 30 A"))[check]
    assert found.status is Status.OPEN
    assert "battery.cell.v_oc_low" in {item.path for item in found.advice.missing}


def test_a_stated_low_voltage_is_taken() -> None:
    found = answers(POCKET.replace("i_cont", "v_oc_low: 3.4 V, i_cont"))
    mean = 10 / 0.8 / 3.4
    assert found["pack-pulse-current"].evidence.figure == pytest.approx(2 * mean / 4.0, rel=1e-3)


def leads(inputs: Arguments, words: Mapping[str, object]) -> set[str]:
    paths = {item.path for item in inputs.values() if isinstance(item, Input)}
    return {path.removeprefix("all ") for path in paths} | set(words)


def test_the_bound_reaches_only_what_fails_on_a_low_voltage() -> None:
    """More voltage is less current, less sag and less drop; each name was looked at."""
    catalogue = load()
    below = {
        name: set().union(*(leads(way.inputs, way.when) for way in item.ways))
        for name, item in catalogue.derived.items()
    }
    reached = {"v_source_low_at_most"}
    while more := {name for name, inputs in below.items() if inputs & reached} - reached:
        reached |= more
    assert {
        entry.name
        for entry in catalogue.entries
        if leads(entry.check.inputs, entry.check.applies) & reached
    } == {
        "capacity-at-high-rate",
        "connector-current",
        "fuse-current",
        "pack-collapse",
        "pack-current",
        "pack-cutoff-under-load",
        "pack-pulse-current",
        "pack-voltage-under-load",
        "protection-trip-above-music",
        "reverse-polarity-junction",
        "supply-lead-current",
        "supply-lead-drop",
        "trace-current",
    }


def test_collapse_is_not_judged_on_a_pack_without_resistance() -> None:
    """0 ohm would pass whatever the music draws; 0.2 ohm behind 4.2 V give 22 W at most."""
    silent = answers(POCKET)["pack-collapse"]
    assert silent.status is Status.OPEN
    assert [item.path for item in silent.advice.missing] == ["battery.cell.r_internal"]
    weak = answers(POCKET.replace("i_cont", "r_internal: 200 mohm, i_cont"))["pack-collapse"]
    assert weak.severity is Severity.CRITICAL
    assert weak.evidence.figure == pytest.approx(25.0 / (4.2**2 / (4 * 0.2)), rel=1e-3)
