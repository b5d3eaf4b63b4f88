"""What the models of the spec refuse, and with which words."""

from typing import Any

import pytest
from pydantic_core import ValidationError

from ampreview.rules.spec.amplifier import Amplifier


def nested(path: str, value: Any) -> dict[str, Any]:
    """A spec that says one thing."""
    for step in reversed(path.split("/")):
        value = {step: value}
    return {"amplifier_spec": "1"} | dict(value)


def refused(path: str, value: Any) -> dict[str, Any]:
    """The one error that a value at a path is refused with."""
    with pytest.raises(ValidationError) as caught:
        Amplifier.model_validate(nested(path, value))
    (error,) = caught.value.errors()
    assert error["loc"][: path.count("/") + 1] == tuple(path.split("/"))
    return dict(error)


@pytest.mark.parametrize(
    ("path", "value", "problem"),
    [
        ("supply/v_rail", "24", "24"),
        ("supply/v_rail", "24 A", "A"),
        ("supply/v_rail", "24,5 V", "24,5 V"),
        ("supply/v_rail", "-24 V", "the value reaches below zero"),
        ("supply/bulk/c", "0 uF", "zero is not possible here"),
        ("supply/bulk/c", "none", "none"),
        ("supply/bulk/v_rated", {"typical": "50 V"}, "typical"),
        ("battery/cell/v_charge", "3.6 V ± 4 V", "the value reaches below zero"),
        ("claims/efficiency", "0.84", "0.84"),
        ("channels/bass/gate_drive/r_g_on", ["10 ohm"], "list"),
        ("channels/bass/output_stage/device/foster", [{"r": "1 s"}], "s"),
    ],
)
def test_refused_quantity_says_what_was_expected(path: str, value: Any, problem: str) -> None:
    error = refused(path, value)
    assert error["type"] == "quantity"
    assert problem in error["ctx"]["problem"]
    assert error["ctx"]["expected"]
    assert error["ctx"]["example"]


@pytest.mark.parametrize("value", ["6.5", "0", "-2", "6 V", "6 ± 1", "5 .. 7", "six", ["6"]])
def test_a_count_is_whole_positive_and_bare(value: Any) -> None:
    error = refused("battery/series", value)
    assert error["type"] == "count"
    assert "a whole number" in error["ctx"]["expected"]


@pytest.mark.parametrize("value", ["li-po", "", "none", ["lfp"], {"value": "lfp"}])
def test_a_word_of_another_list(value: Any) -> None:
    error = refused("battery/chemistry", value)
    assert "li-ion, lfp, lead-acid-agm" in error["ctx"]["expected"]


@pytest.mark.parametrize("value", ["mars", "eu, uk", ["eu", "mars"], {"eu": "yes"}])
def test_a_list_of_words(value: Any) -> None:
    assert refused("claims/markets", value)["ctx"]["problem"]


@pytest.mark.parametrize(
    "path",
    [
        "supply",
        "supply/bulk",
        "battery",
        "thermal",
        "wiring/trace",
        "channels/bass",
        "channels/bass/output_stage/device",
        "channels/bass/filter/inductor",
    ],
)
def test_none_only_where_the_part_can_be_left_out(path: str) -> None:
    error = refused(path, "none")
    assert error["ctx"]["problem"] == "this is not a section"
    assert "none" not in error["ctx"]["expected"]


@pytest.mark.parametrize("value", ["yes", "None", "1", ["none"], []])
def test_a_section_that_may_be_none_takes_that_word_alone(value: Any) -> None:
    error = refused("protection/fuse", value)
    assert "or the word none" in error["ctx"]["expected"]


@pytest.mark.parametrize(
    "path", ["supplies", "supply/v_bus", "supply/value", "channels/bass/filter/damper/l"]
)
def test_unknown_key(path: str) -> None:
    assert refused(path, "3 V")["type"] == "extra_forbidden"


@pytest.mark.parametrize("name", ["product", "left.front", "left[0]", "a b", "", "x" * 61])
def test_names_that_no_channel_may_have(name: str) -> None:
    with pytest.raises(ValidationError) as caught:
        Amplifier.model_validate({"amplifier_spec": "1", "channels": {name: {}}})
    (error,) = caught.value.errors()
    assert error["loc"] == ("channels",)
    assert "a name of letters" in error["ctx"]["expected"]


def test_a_deviation_says_who_why_and_until_when() -> None:
    deviation = {"check": "rail-ripple", "place": "product"}
    with pytest.raises(ValidationError) as caught:
        Amplifier.model_validate(nested("deviations", [deviation]))
    missing = {error["loc"][-1] for error in caught.value.errors() if error["type"] == "missing"}
    assert missing == {"permitted_by", "reason", "until"}
    for value in ("none", {"check": "rail-ripple"}, ["none"]):
        with pytest.raises(ValidationError):
            Amplifier.model_validate(nested("deviations", value))


def test_format_version_is_asked_for() -> None:
    with pytest.raises(ValidationError) as caught:
        Amplifier.model_validate({"title": "x"})
    assert caught.value.errors()[0]["type"] == "missing"


@pytest.mark.parametrize("text", ["on", "", "YES", "1", "none"])
def test_a_flag_is_yes_or_no(text: str) -> None:
    assert refused("safety/hearing_notice", text)["ctx"]["expected"] == "yes or no"


@pytest.mark.parametrize(
    "path", ["title", "environment/ip_code", "channels/a/output_stage/device/part"]
)
@pytest.mark.parametrize("value", ["", "  ", ["x"], {"x": "y"}])
def test_text_is_not_empty(path: str, value: Any) -> None:
    assert refused(path, value)["ctx"]["expected"] == "text"
