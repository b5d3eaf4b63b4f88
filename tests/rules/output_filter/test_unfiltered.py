"""Stages without a full filter: what silence means, and what is asked."""

import pytest

from ampreview.linter.finding import Finding, Severity, Status

from ..whole import answer


def judge(name: str, channel: str) -> Finding:
    """One check at the prototype on one channel that is written in flow style."""
    return answer(name, f"channels: {{main: {{{channel}}}}}\n", "prototype")


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
    assert [item.path for item in found.advice.missing] == ["channels.main.modulator.levels"]


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


@pytest.mark.parametrize(
    ("name", "kind", "leaf"),
    [
        ("ferrite-bead-current", "bead", "filter.bead.i_rated"),
        ("loudspeaker-lead-length", "bead", "lead.length"),
        ("loudspeaker-lead-length", "filterless", "lead.length"),
    ],
)
def test_a_stated_bead_or_no_filter_is_asked_for_what_it_needs(name, kind, leaf) -> None:
    found = judge(name, stage("full-bridge", "integrated", "three-level", kind))
    assert found.status is Status.OPEN
    assert f"channels.main.{leaf}" in [item.path for item in found.advice.missing]


@pytest.mark.parametrize("name", ["ferrite-bead-current", "loudspeaker-lead-length"])
@pytest.mark.parametrize("channel", ["filter: {type: lc}", "band: 20 Hz .. 20 kHz"])
def test_with_a_filter_or_silent_about_it_neither_is_asked(name: str, channel: str) -> None:
    assert judge(name, channel).status is Status.NOT_APPLICABLE


BRIDGE = """
supply: {source: dc-source, rails: single, v_rail: 24 V}
channels:
  main:
    lead: {length: 2 m}
    output_stage: {topology: full-bridge}
    modulator: {type: natural-sampling, levels: LEVELS, carrier: 250 kHz}
    filter: {inductor: {l: 33 uH}, c_across: {c: 470 nF, dielectric: polypropylene}MORE}
"""


@pytest.mark.parametrize(
    ("levels", "more", "status", "decibel"),
    [
        ("two-level", "", "not applicable", None),
        ("three-level", "", "finding", None),
        ("three-level", ", c_ground: {c: 100 nF, dielectric: polypropylene}", None, 17.07),
        ("three-level", ", second_stage: {l: 4.7 uH, c_ground: 1 uF}", None, 39.28),
    ],
)
def test_only_capacitors_to_ground_keep_a_three_level_carrier_off_the_lead(
    levels: str, more: str, status: str | None, decibel: float | None
) -> None:
    """At 250 kHz: 33 uH with 0.1 uF by hand; 37.7 uH with 1 uF where the first has none."""
    text = BRIDGE.replace("LEVELS", levels).replace("MORE", more)
    lead = answer("loudspeaker-lead-length", text)
    assert lead.status.value == (status or "not applicable")
    common = answer("common-mode-attenuation", text)
    if decibel is None:
        assert common.status.value == "not applicable"
    else:
        assert common.evidence.figure == pytest.approx(decibel, abs=0.1)
