"""The engine on a catalogue of a few invented checks, with hand-computed answers."""

from dataclasses import replace
from typing import Any

import pytest

from ampreview.linter.check import (
    COMMON_PRACTICE,
    Assumption,
    AtLeast,
    AtMost,
    Check,
    Derived,
    Input,
    Lever,
    Way,
    from_memory,
)
from ampreview.linter.declare import load_schema
from ampreview.linter.evaluation.catalogue import (
    Catalogue,
    CatalogueError,
    extended,
    faults,
    load,
)
from ampreview.linter.evaluation.engine import Assessment
from ampreview.linter.evaluation.graph import Graph
from ampreview.linter.finding import Finding, Severity, Status
from ampreview.linter.judging.consistency import built_in_findings
from ampreview.linter.reading.loading import load_text

from ..toys import BOOK, STRESS, entry


def run(
    text: str,
    check: Check = STRESS,
    milestone: Any = "concept",
    derived: tuple[Derived, ...] = (),
) -> list[Finding]:
    loaded = load_text("amplifier_spec: 1\n" + text, "invented.amp.yaml")
    assert loaded.spec is not None, loaded.refusals
    catalogue = Catalogue((entry(check),), {item.name: item for item in derived}, {}, load_schema())
    return list(Assessment(loaded.spec, catalogue, milestone).findings())


def spec(rail: str, rating: str = "100 V") -> str:
    return (
        f"supply: {{v_rail: {rail}}}\n"
        f"channels: {{main: {{output_stage: {{device: {{v_dss: {rating}}}}}}}}}\n"
    )


@pytest.mark.parametrize(
    ("rail", "severity"),
    [
        ("101 V", Severity.CRITICAL),
        ("100 V", Severity.MAJOR),
        ("91 V", Severity.MAJOR),
        ("90 V", Severity.MINOR),
        ("81 V", Severity.MINOR),
        ("80 V", None),
    ],
)
def test_severity_follows_the_gravest_limit_missed(rail: str, severity: Severity | None) -> None:
    (found,) = run(spec(rail))
    assert found.severity == severity
    assert (found.status is Status.MEETS) == (severity is None)


def test_the_upper_end_of_the_rail_is_the_worst_corner() -> None:
    (found,) = run(spec("85 V ± 10 %"))
    assert found.evidence.figure == pytest.approx(0.935)
    assert found.evidence.nominal == pytest.approx(0.85)
    assert found.severity is Severity.MAJOR
    assert [(item.path, item.value) for item in found.evidence.corner] == [
        ("supply.v_rail", pytest.approx(93.5))
    ]
    assert found.message == "93.5 V on a switch rated 100 V"
    assert found.evidence.limit == pytest.approx(0.9)
    assert found.evidence.margin == pytest.approx((0.9 - 0.935) / 0.9)
    assert found.place is not None
    assert (found.place.line, found.place.column) == (2, 18)


def test_a_margin_that_is_met_is_measured_to_the_mildest_limit() -> None:
    (found,) = run(spec("40 V"))
    assert found.evidence.margin == pytest.approx(0.5)
    assert found.evidence.limit == pytest.approx(0.8)


def test_missing_data_is_open_and_named() -> None:
    (found,) = run("channels: {main: {output_stage: {device: {v_dss: 100 V}}}}\n")
    assert found.status is Status.OPEN
    assert [item.path for item in found.advice.missing] == ["supply.v_rail"]
    assert found.advice.missing[0].unit == "V"


def test_silence_on_the_whole_topic_bothers_nobody_before_its_milestone() -> None:
    text = "title: nothing yet\nchannels: {main: {rated_power: 50 W}}\n"
    mild = replace(STRESS, limits=AtMost(major="90 %", basis=STRESS.limits.basis))
    check = replace(mild, asked_from="production")
    assert run(text, check, "prototype")[0].status is Status.NOT_APPLICABLE
    assert run(text, check, "production")[0].status is Status.OPEN
    never = replace(mild, asked_from=None)
    assert run(text, never, "production")[0].status is Status.NOT_APPLICABLE


def test_a_check_that_can_find_destruction_asks_before_boards_are_built() -> None:
    text = "title: nothing yet\nchannels: {main: {rated_power: 50 W}}\n"
    never = replace(STRESS, asked_from=None)
    assert run(text, never, "concept")[0].status is Status.NOT_APPLICABLE
    assert run(text, never, "prototype")[0].status is Status.OPEN


def test_a_check_for_other_topologies_is_not_applicable() -> None:
    check = replace(STRESS, applies={"output_stage.devices": "discrete"})
    text = spec("101 V").replace("{device", "{devices: integrated, device")
    assert run(text, check)[0].status is Status.NOT_APPLICABLE
    assert run(text.replace("integrated", "discrete"), check)[0].severity is Severity.CRITICAL
    silent = run(spec("101 V"), check)[0]
    assert silent.status is Status.OPEN
    assert [item.path for item in silent.advice.missing] == ["channels.main.output_stage.devices"]


def test_a_section_stated_none_makes_its_check_not_applicable() -> None:
    check = replace(
        STRESS, inputs=dict(STRESS.inputs) | {"v_dss": Input("filter.damper.r", "ohm", "damper")}
    )
    text = "supply: {v_rail: 40 V}\nchannels: {main: {filter: {damper: none}}}\n"
    (found,) = run(text, check)
    assert found.status is Status.NOT_APPLICABLE
    assert "filter.damper" in found.message


def assumed(leaning: Any, placeholder: bool = False) -> Check:
    inputs = dict(STRESS.inputs)
    default = Assumption("120 V", leaning, COMMON_PRACTICE, placeholder)
    inputs["v_rail"] = Input("supply.v_rail", "V", "rail", default)
    return replace(STRESS, inputs=inputs)


RATING = "channels: {main: {output_stage: {device: {v_dss: %s}}}}\n"


def test_a_critical_that_rests_on_an_assumption_is_open_or_major() -> None:
    """An adverse range is judged over its usual one and asks; a neutral one may be wrong."""
    found = run(RATING % "100 V", assumed("adverse"))[0]
    assert found.status is Status.OPEN
    assert [item.path for item in found.advice.missing] == ["supply.v_rail"]
    assert run(RATING % "100 V", assumed("neutral", True))[0].severity is Severity.MAJOR
    assert run(RATING % "100 V", assumed("favourable"))[0].severity is Severity.CRITICAL


def test_a_critical_that_rests_on_an_estimate_is_major() -> None:
    assert run(spec("{value: 120 V, from: estimate}"))[0].severity is Severity.MAJOR
    assert run(spec("{value: 120 V, from: measured}"))[0].severity is Severity.CRITICAL


def test_a_pass_that_leans_on_an_assumption_is_open_at_production() -> None:
    text = RATING % "200 V"
    assert run(text, assumed("neutral"), "concept")[0].status is Status.MEETS
    found = run(text, assumed("neutral"), "production")[0]
    assert found.status is Status.OPEN
    assert [item.path for item in found.advice.missing] == ["supply.v_rail"]
    assert run(text, assumed("adverse"), "production")[0].status is Status.MEETS


def test_a_floor_can_fail_and_never_pass() -> None:
    assert run(RATING % "200 V", assumed("floor"))[0].status is Status.OPEN
    assert run(RATING % "100 V", assumed("floor"))[0].severity is Severity.CRITICAL


def test_a_safety_limit_from_memory_stays_open_at_production() -> None:
    basis = {s: from_memory("a standard not at hand") for s in ("critical", "major", "minor")}
    check = replace(STRESS, stake="safety", limits=AtMost("100 %", "90 %", "80 %", basis))
    assert run(spec("40 V"), check, "prototype")[0].status is Status.MEETS
    found = run(spec("40 V"), check, "production")[0]
    assert found.status is Status.OPEN
    assert "not verified against the standard" in found.message


def test_performance_within_root_sum_square_is_minor() -> None:
    """0.7 ± 15 % over 1 ± 15 %: extreme 0.947, in squares 0.7 (1 + sqrt(0.15^2 + 0.176^2))."""
    check = replace(STRESS, stake="performance", limits=AtMost(None, "90 %", None, {"major": BOOK}))
    text = spec("70 V ± 15 %", "100 V ± 15 %")
    assert run(text, check)[0].severity is Severity.MINOR
    rating = replace(check, stake="rating")
    assert run(text, rating)[0].severity is Severity.MAJOR
    assert run(spec("95 V ± 1 %"), check)[0].severity is Severity.MAJOR


def test_a_check_that_crashes_becomes_a_finding() -> None:
    def broken(v_rail: Any, v_dss: Any) -> Any:
        return v_rail / (v_dss - v_dss)

    (found,) = run(spec("40 V"), replace(STRESS, figure=broken))
    assert found.severity is Severity.MAJOR
    assert "ZeroDivisionError" in found.message


def test_a_figure_that_is_no_number_becomes_a_finding() -> None:
    def rooted(v_rail: Any, v_dss: Any) -> Any:
        return (v_rail - v_dss) ** 0.5

    (found,) = run(spec("40 V"), replace(STRESS, figure=rooted))
    assert found.status is Status.FINDING
    assert "not a number" in found.message


def double(v_rail: Any) -> Any:
    return 2 * v_rail


SWING = Derived(
    "v_swing",
    "V",
    "product",
    "swing of the node",
    (
        Way(
            double,
            {"v_rail": Input("supply.v_rail", "V", "rail")},
            "2 v_rail",
            when={"supply.rails": "split"},
        ),
    ),
)


def test_a_way_is_walked_only_for_its_words() -> None:
    inputs = {
        "v_rail": Input("v_swing", "V", "swing"),
        "v_dss": Input("output_stage.device.v_dss", "V", "rating"),
    }
    check = replace(STRESS, inputs=inputs)
    split = spec("51 V").replace("{v_rail", "{rails: split, v_rail")
    assert run(split, check, derived=(SWING,))[0].severity is Severity.CRITICAL
    single = split.replace("split", "single")
    assert run(single, check, derived=(SWING,))[0].status is Status.NOT_APPLICABLE
    silent = run(spec("51 V"), check, derived=(SWING,))[0]
    assert [item.path for item in silent.advice.missing] == ["supply.rails"]


def test_a_value_behind_an_alias_points_at_its_text_and_its_uses() -> None:
    text = (
        "supply: {v_rail: 120 V}\n"
        "channels:\n"
        "  left: &left\n"
        "    output_stage: {device: {v_dss: 100 V}}\n"
        "  right: *left\n"
    )
    left, right = run(text)
    assert (left.subject, right.subject) == ("left", "right")
    assert right.severity is Severity.CRITICAL
    lines = {place.line for place in (right.place, *right.related) if place}
    assert {5, 6} <= lines


def test_faulty_rule_files_are_refused_with_the_field() -> None:
    bad = replace(
        STRESS,
        sentence="{nonsense}",
        inputs={"v_rail": Input("supply.v_rial", "V", "rail")},
        limits=AtLeast("90 %", "80 %", None, {"critical": BOOK}),
        sources=(),
        levers=(
            Lever("supply.v_rial", "1 V"),
            Lever("supply.v_rail", "1 V", {"output_stage.devices": "discrete"}),
            Lever("gate_drive.dead_time", "5 ns", {"output_stage.topolgy": "half-bridge"}),
        ),
    )
    found = list(faults(entry(bad), {}, load_schema()))
    for fragment in (
        "sources: at least one",
        "inputs: v_rail: supply.v_rial is neither",
        "inputs: v_dss: figure takes it, inputs lack it",
        "sentence: {nonsense} is not an input",
        "limits: major has no basis",
        "levers: supply.v_rial is not a field",
        "levers: output_stage.devices belongs to a channel, supply.v_rail to the product",
        "levers: output_stage.topolgy is unknown",
        "limits: critical, major, minor must lie in this order",
    ):
        assert any(fragment in line for line in found), (fragment, found)


def test_a_package_with_a_bad_rule_is_refused_with_its_file(
    tmp_path: Any, monkeypatch: pytest.MonkeyPatch
) -> None:
    root = tmp_path / "house_rules"
    for folder in (root, root / "derived", root / "speed"):
        folder.mkdir()
        (folder / "__init__.py").write_text('"""Speed."""\n')
    (root / "speed" / "no_check.py").write_text('"""No check here."""\n')
    monkeypatch.syspath_prepend(tmp_path)
    with pytest.raises(CatalogueError, match=r"no_check\.py: CHECK"):
        extended(load(), "house_rules")


def test_the_own_answer_does_not_depend_on_the_order_of_evaluation() -> None:
    loaded = load_text("amplifier_spec: 1\n" + spec("85 V ± 10 %"), "invented.amp.yaml")
    assert loaded.spec is not None
    catalogue = Catalogue((entry(STRESS, "one"), entry(STRESS, "two")), {}, {}, load_schema())
    run_ = Assessment(loaded.spec, catalogue, "concept")
    first, second = run_.findings()
    assert replace(first, check="two") == second


@pytest.mark.parametrize(
    ("rating", "status"),
    [
        ("{typ: 200 V}", Status.OPEN),
        ("{min: 200 V}", Status.MEETS),
        ("{min: 200 V, typ: 220 V}", Status.MEETS),
        ("200 V", Status.MEETS),
    ],
)
def test_at_production_a_limit_needs_the_guaranteed_side(rating: str, status: Status) -> None:
    """Typical alone guarantees nothing; a line with a printed limit is taken as it stands."""
    found = run(spec("40 V", rating), STRESS, "production")[0]
    assert found.status is status
    assert run(spec("40 V", rating), STRESS, "prototype")[0].status is Status.MEETS
    if status is Status.OPEN:
        assert [item.path for item in found.advice.missing] == [
            "channels.main.output_stage.device.v_dss"
        ]
        assert any("typical only" in item.text for item in found.evidence.assumed)


@pytest.mark.parametrize(
    ("charge", "found"),
    [
        ("{typ: 66 nC, max: 87 nC}", False),
        ("{typ: 66 nC, max: 87 uC}", True),
        ("{min: 1 nC, max: 90 nC}", False),
    ],
)
def test_a_slip_in_one_side_of_a_data_sheet_line_is_found(charge: str, found: bool) -> None:
    """87 uC beside 66 nC: the typical value is usual, the other side a thousand times off."""
    text = (
        f"amplifier_spec: 1\nchannels: {{main: {{output_stage: {{device: {{q_g: {charge}}}}}}}}}\n"
    )
    loaded = load_text(text, "gate.amp.yaml")
    assert loaded.spec is not None
    items = built_in_findings(loaded.spec, Graph(loaded.spec, {}))
    apart = [item for item in items if "apart" in item.title]
    assert bool(apart) == found
    assert all(item.severity is Severity.MAJOR for item in apart)
