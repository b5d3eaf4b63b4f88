"""Stages without a full filter: what silence means, and what is asked."""

import pytest

from ampreview.linter.catalogue import load
from ampreview.linter.engine import Assessment
from ampreview.linter.finding import Finding, Severity, Status
from ampreview.linter.loading import load_text


def judge(name: str, channel: str, milestone: str = "prototype") -> Finding:
    """One check on one channel that is written in flow style."""
    loaded = load_text(f"amplifier_spec: 1\nchannels: {{main: {{{channel}}}}}\n", "fragment")
    assert loaded.spec is not None, loaded.refusals
    entry = load().entry(name)
    assert entry is not None
    return Assessment(loaded.spec, load(), milestone).judge(entry, "main")


def stage(topology: str, devices: str, levels: str, kind: str) -> str:
    stated = f"modulator: {{levels: {levels}}}, " if levels else ""
    return (
        f"output_stage: {{topology: {topology}, devices: {devices}}}, "
        f"{stated}filter: {{type: {kind}}}"
    )


@pytest.mark.parametrize("kind", ["bead", "filterless"])
@pytest.mark.parametrize("devices", ["integrated", "discrete"])
def test_a_bridge_silent_on_its_levels_is_asked_for_them(devices: str, kind: str) -> None:
    found = judge("filterless-drive", stage("full-bridge", devices, "", kind))
    assert found.status is Status.OPEN
    assert [item.path for item in found.missing] == ["channels.main.modulator.levels"]


@pytest.mark.parametrize(
    ("topology", "levels", "severity"),
    [
        ("half-bridge", "", Severity.MAJOR),
        ("full-bridge", "two-level", Severity.MAJOR),
        ("full-bridge", "three-level", None),
    ],
)
def test_what_is_known_of_the_levels_is_judged(topology, levels, severity) -> None:
    found = judge("filterless-drive", stage(topology, "integrated", levels, "filterless"))
    assert found.severity is severity
    assert found.status is (Status.FINDING if severity else Status.MEETS)
