"""A missing value is a range: worked by hand on checks of two or three numbers.

The usual range of ``v_dss`` is 12 .. 900 V, that of ``v_rail`` 2.5 .. 200 V.
"""

from dataclasses import replace
from typing import Any

import pytest

from ampreview.linter.check import Assumption, AtMost, Check, Derived, Input, Lever, Way
from ampreview.linter.declare import load_schema
from ampreview.linter.evaluation.border import Border, _rounded
from ampreview.linter.evaluation.catalogue import Catalogue
from ampreview.linter.evaluation.engine import Assessment
from ampreview.linter.evaluation.threshold import ZERO_CELSIUS
from ampreview.linter.finding import Finding, Severity, Status
from ampreview.linter.judging.milestone import verdict
from ampreview.linter.reading.loading import load_text

from ..toys import BOOK, STEPS, entry
from ..toys import STRESS as SHARE_OF_RATING

STRESS = replace(
    SHARE_OF_RATING, unit="1", limits=AtMost("1", "0.9", "0.8", dict.fromkeys(STEPS, BOOK))
)


def answer(
    rest: str, check: Check = STRESS, milestone: Any = "prototype", *derived: Derived
) -> Finding:
    loaded = load_text(f"amplifier_spec: 1\n{rest}", "invented.amp.yaml")
    assert loaded.spec is not None, loaded.refusals
    names = {item.name: item for item in derived}
    run = Assessment(loaded.spec, Catalogue((entry(check),), names, {}, load_schema()), milestone)
    (found,) = run.findings()
    return found


def test_what_hangs_on_one_number_is_open_with_the_border_solved_for() -> None:
    """24 V / 0.8 = 30 V."""
    found = answer("supply: {v_rail: 24 V}\nchannels: {main: {}}\n")
    assert found.status is Status.OPEN
    assert [item.border for item in found.advice.missing] == ["at least 30 V"]


@pytest.mark.parametrize(("number", "status"), [("30 V", "meets"), ("29.9 V", "finding")])
def test_the_border_put_in_meets_by_a_hair(number: str, status: str) -> None:
    device = f"output_stage: {{device: {{v_dss: {number}}}}}"
    text = f"supply: {{v_rail: 24 V}}\nchannels: {{main: {{{device}}}}}\n"
    assert answer(text).status == status


def test_the_border_is_that_of_the_worst_corner() -> None:
    """24 V and 10 % are 26.4 V at most: 26.4 V / 0.8 = 33 V."""
    found = answer("supply: {v_rail: 24 V ± 10 %}\nchannels: {main: {}}\n")
    assert [item.border for item in found.advice.missing] == ["at least 33 V"]


def test_a_border_at_zero_is_said_as_zero_and_that_of_a_range_names_its_end() -> None:
    """Bisection over -20 .. 70 degC ends a picokelvin above zero."""
    assert _rounded(ZERO_CELSIUS + 2e-12, "degC", True, 9e-8) == ZERO_CELSIUS
    assert _rounded(2e-3, "V", True, 9e-8) == pytest.approx(2e-3)
    assert str(Border(True, ZERO_CELSIUS, "degC", end="low")) == "at least 0 °C at its lower end"


def test_what_no_usual_value_can_spoil_is_met() -> None:
    """3 V / 12 V = 0.25."""
    found = answer("supply: {v_rail: 3 V}\nchannels: {main: {}}\n")
    assert found.status is Status.MEETS
    assert found.evidence.figure == pytest.approx(0.25)
    assert "for any usual value of channels.main.output_stage.device.v_dss" in found.message


def test_what_fails_at_its_usual_best_is_a_finding_and_never_critical() -> None:
    """A thousandth of the limits: even 900 V are too little for 24 V."""
    small = AtMost("0.001", "0.0009", "0.0008", dict.fromkeys(STEPS, BOOK))
    found = answer("supply: {v_rail: 24 V}\nchannels: {main: {}}\n", replace(STRESS, limits=small))
    assert (found.status, found.severity) == (Status.FINDING, Severity.MAJOR)
    assert found.evidence.figure == pytest.approx(24 / 900)
    assert (
        "even with the best usual value of channels.main.output_stage.device.v_dss" in found.message
    )


def test_a_remark_that_could_be_worse_is_open() -> None:
    """At 900 V 0.0267 is only a remark, at 12 V it is critical: nobody knows."""
    mild = AtMost("1", "0.9", "0.02", dict.fromkeys(STEPS, BOOK))
    found = answer("supply: {v_rail: 24 V}\nchannels: {main: {}}\n", replace(STRESS, limits=mild))
    assert found.status is Status.OPEN


def test_two_missing_numbers_are_taken_at_their_best_together() -> None:
    """The smaller of two limits of one source: both high at once is what would do."""
    inputs = {
        "v_rail": Input("supply.v_rail", "V", "rail"),
        "i": Input("supply.i_max", "A", "current"),
        "p": Input("supply.p_max", "W", "power"),
    }
    check = replace(
        STRESS,
        figure=lambda v_rail, i, p: v_rail / min(v_rail * i, p),
        inputs=inputs,
        each="product",
    )
    found = answer("supply: {v_rail: 24 V}\nchannels: {main: {}}\n", check)
    assert found.status is Status.OPEN
    assert {item.path for item in found.advice.missing} == {"supply.i_max", "supply.p_max"}


def test_a_silent_word_is_every_word() -> None:
    """Of the three sources two are no battery: the check may not concern the design at all."""
    battery = replace(STRESS, applies={"supply.source": "battery"})
    device = "output_stage: {device: {v_dss: 20 V}}"
    found = answer(f"supply: {{v_rail: 24 V}}\nchannels: {{main: {{{device}}}}}\n", battery)
    assert found.status is Status.OPEN
    assert [item.path for item in found.advice.missing] == ["supply.source"]
    fine = answer("supply: {v_rail: 10 V}\nchannels: {main: {" + device + "}}\n", battery)
    assert fine.status is Status.MEETS


def test_several_ways_to_a_value_must_all_agree() -> None:
    """The rating may be stated, or follow from another: met only if both ways meet."""
    ways = tuple(
        Way(lambda x: x, {"x": Input(path, "V", "x")}, "x")
        for path in ("output_stage.device.v_dss", "supply.bulk.v_rated")
    )
    rating = Derived("rating", "V", "channel", "a rating", ways)
    inputs = {
        "v_rail": Input("supply.v_rail", "V", "rail"),
        "v_dss": Input("rating", "V", "rating"),
    }
    check = replace(STRESS, inputs=inputs)
    text = "supply: {v_rail: 3.3 V}\nchannels: {main: {}}\n"
    assert answer(text, check, "prototype", rating).status is Status.OPEN  # 3.3 V / 4 V
    low = "supply: {v_rail: 3 V}\nchannels: {main: {}}\n"
    assert answer(low, check, "prototype", rating).status is Status.MEETS  # 3 V / 4 V


def assumed(value: str, leaning: Any) -> Check:
    default = Assumption(value, leaning, BOOK)
    inputs = {**STRESS.inputs, "v_dss": Input("output_stage.device.v_dss", "V", "r", default)}
    return replace(STRESS, inputs=inputs)


RAIL = "supply: {v_rail: 24 V}\nchannels: {main: {}}\n"


def test_a_favourable_default_acquits_nobody_from_prototype_on() -> None:
    check = assumed("100 V", "favourable")
    assert answer(RAIL, check, "concept").status is Status.MEETS
    found = answer(RAIL, check)
    assert found.status is Status.OPEN
    assert [item.path for item in found.advice.missing] == [
        "channels.main.output_stage.device.v_dss"
    ]
    assert answer(RAIL.replace("24", "3"), check).status is Status.MEETS, "it cannot matter"


def test_an_adverse_default_convicts_nobody() -> None:
    found = answer(RAIL, assumed("20 V", "adverse"))
    assert found.status is Status.OPEN
    assert [item.border for item in found.advice.missing] == ["at least 30 V"]


def test_what_a_neutral_default_decides_is_said_and_never_critical() -> None:
    found = answer(RAIL, assumed("20 V", "neutral"))
    assert (found.status, found.severity) == (Status.FINDING, Severity.MAJOR)
    assert "an assumed value decides: channels.main.output_stage.device.v_dss 20 V" in found.message


def test_a_neutral_default_is_asked_for_where_another_value_would_fail() -> None:
    assert answer(RAIL, assumed("100 V", "neutral")).status is Status.OPEN
    mild = AtMost(minor="0.9", basis={"minor": BOOK})
    assert answer(RAIL, replace(assumed("100 V", "neutral"), limits=mild)).status is Status.MEETS


def test_open_items_of_grave_checks_hold_from_prototype_on() -> None:
    found = answer(RAIL)
    assert verdict((found,), "prototype").holding == (found,)
    assert verdict((found,), "concept").released
    mild = replace(STRESS, limits=AtMost(major="0.9", basis={"major": BOOK}), asked_from="concept")
    listed = answer(RAIL, mild)
    assert listed.status is Status.OPEN
    assert verdict((listed,), "prototype").released
    assert not verdict((listed,), "production").released


def test_none_of_another_part_leaves_the_check_open() -> None:
    """The rating hangs on a part that a check of the rail does not speak of."""
    way = Way(lambda x: x, {"x": Input("protection.fuse.v_dc", "V", "x")}, "x")
    rating = Derived("rating", "V", "product", "a rating", (way,))
    inputs = {
        "v_rail": Input("supply.v_rail", "V", "rail"),
        "v_dss": Input("rating", "V", "rating"),
    }
    text = "supply: {v_rail: 24 V}\nprotection: {fuse: none}\nchannels: {main: {}}\n"
    found = answer(text, replace(STRESS, inputs=inputs), "prototype", rating)
    assert found.status is Status.OPEN
    assert "protection.fuse, which is stated as none" in found.message
    about_it = replace(STRESS, inputs=inputs, levers=(Lever("protection.fuse.v_dc", "1 V"),))
    assert answer(text, about_it, "prototype", rating).status is Status.NOT_APPLICABLE


def test_a_crashed_check_holds_everywhere() -> None:
    device = "output_stage: {device: {v_dss: 20 V}}"
    broken = replace(STRESS, figure=lambda v_rail, v_dss: v_rail / 0.0)
    found = answer(f"supply: {{v_rail: 24 V}}\nchannels: {{main: {{{device}}}}}\n", broken)
    for milestone in ("concept", "prototype", "production"):
        assert not verdict((found,), milestone).released  # type: ignore[arg-type]


def test_a_line_that_is_open_to_the_wrong_side_acquits_nobody() -> None:
    """A rating of at least 100 V is a rating; a rail of at least 24 V may be three times that."""
    device = "output_stage: {device: {v_dss: 80 V}}"
    spec = "supply: {v_rail: RAIL}\nchannels: {main: {" + device + "}}\n"
    assert answer(spec.replace("RAIL", "{min: 24 V}")).status is Status.OPEN
    assert answer(spec.replace("RAIL", "{min: 20 V}")).status is Status.MEETS, "60 V / 80 V"
    assert answer(spec.replace("RAIL", "{max: 60 V}")).status is Status.MEETS


def ended(default: Assumption | None = None) -> Check:
    """The stress with the upper end of the rail alone."""
    inputs = dict(STRESS.inputs) | {"v_rail": Input("supply.v_rail:high", "V", "rail", default)}
    return replace(STRESS, inputs=inputs)


V_DSS = "channels: {main: {output_stage: {device: {v_dss: 50 V}}}}\n"


@pytest.mark.parametrize("default", [None, Assumption("120 V", "adverse", BOOK)])
def test_a_missing_range_is_taken_over_its_usual_ends(default: Assumption | None) -> None:
    """0.8 of 50 V; an adverse default decides no more than silence does."""
    found = answer(V_DSS, ended(default))
    assert found.status is Status.OPEN
    assert [item.border for item in found.advice.missing] == ["at most 40 V at its upper end"]


def test_the_ends_of_a_missing_range_move_apart() -> None:
    """One number for both ends would make of every range a point, and meet the check."""
    low = {"low": Input("supply.v_rail:low", "V", "low"), "v_dss": STRESS.inputs["v_dss"]}
    span = replace(
        STRESS,
        figure=lambda low, high, v_dss: (high - low) / v_dss,
        formula="(high - low) / v_dss",
        sentence="{low} .. {high}",
        inputs=low | {"high": Input("supply.v_rail:high", "V", "high")},
    )
    assert answer(V_DSS, span).status is Status.OPEN
