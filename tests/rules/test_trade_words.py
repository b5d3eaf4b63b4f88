"""Words and sizes of the trade lead to the field or the value that they mean, and to no other."""

import math

import pytest

from ampreview.linter.declare import load_schema, spelled
from ampreview.linter.reading.loading import Loaded, load_text
from ampreview.rules.spec.trade_sizes import AWG, COPPER_WEIGHTS

SCHEMA = load_schema()

# Areas of round solid wire in mm2: the table of ASTM B258 as encyclopaedias print it (common
# practice, standard not seen).
AREAS = {10: 5.26, 14: 2.08, 16: 1.31, 18: 0.823, 20: 0.518, 24: 0.205, 30: 0.0509}


def loaded(text: str) -> Loaded:
    return load_text(f"amplifier_spec: 1\n{text}\n", "test.amp.yaml")


def value(text: str, path: str) -> object:
    found = loaded(text)
    assert found.spec is not None, found.refusals
    return found.spec.values[path]


@pytest.mark.parametrize("word", SCHEMA.trade_words)
def test_a_word_of_the_trade_leads_to_fields_that_there_are(word: str) -> None:
    assert word == spelled(word)
    for place in SCHEMA.trade_words[word]:
        path, _, text = place.partition(": ")
        field = SCHEMA.fields[path]
        assert not text or text in field.words


@pytest.mark.parametrize(
    ("key", "place"),
    [
        ("BTL", "output_stage.topology: full-bridge"),
        ("BMS", "battery.protection"),
        ("OCP", "output_stage.over_current"),
        ("fsw", "modulator.carrier"),
        ("UVLO", "gate_drive.bootstrap.v_uvlo"),
        ("MOSFET", "output_stage.device"),
        ("c_rss", "output_stage.device.q_gd"),
        ("Rds(on)", "output_stage.device.r_ds_on"),
        ("DCR", "filter.inductor.dcr"),
        ("θJA", "output_stage.device.r_th_ja"),
        ("power", "rated_power"),
    ],
)
def test_what_people_type_is_told_its_place(key: str, place: str) -> None:
    (refusal,) = loaded(f"supply: {{'{key}': 1}}").refusals
    assert place in refusal.expected


def test_no_guess_leads_from_one_letter_symbol_to_another() -> None:
    (refusal,) = loaded("channels: {main: {output_stage: {device: {c_xss: 9 pF}}}}").refusals
    assert "c_oss`" not in refusal.expected
    assert "c_iss`" not in refusal.expected


@pytest.mark.parametrize(("gauge", "area"), AREAS.items())
def test_a_wire_gauge_is_its_area(gauge: int, area: float) -> None:
    assert math.isclose(float(AWG[f"AWG {gauge}"].removesuffix(" mm2")), area, rel_tol=0.01)


def test_sizes_and_words_are_understood() -> None:
    wiring = "wiring: {supply_lead: {area: AWG18}, trace: {copper: 2oz}}"
    assert getattr(value(wiring, "wiring.supply_lead.area"), "nominal", 0) == 0.823e-6
    assert getattr(value(wiring, "wiring.trace.copper"), "nominal", 0) == 70e-6
    stage = (
        "channels: {main: {output_stage: {topology: btl}, filter: {c_across: {dielectric: x7r}}}}"
    )
    assert value(stage, "channels.main.output_stage.topology") == "full-bridge"
    assert value(stage, "channels.main.filter.c_across.dielectric") == "ceramic-class-2"
    assert value("claims: {markets: [EU, USA]}", "claims.markets") == ("eu", "us")


def test_an_ounce_of_copper_per_square_foot_is_about_35_um() -> None:
    """28.35 g on 929.03 cm2 at 8.93 g/cm3: 34.2 um; board makers sell it as 35 um."""
    thickness = 28.35 / 929.03 / 8.93 * 1e4
    assert math.isclose(thickness, float(COPPER_WEIGHTS["1 oz"].removesuffix(" um")), rel_tol=0.03)


def test_a_range_may_have_its_unit_once_where_it_has_no_prefix() -> None:
    ambient = value("environment: {ambient: -10..40 degC}", "environment.ambient")
    assert getattr(ambient, "lo", 0) == 263.15
    (refusal,) = loaded("channels: {main: {band: 20 .. 20 kHz}}").refusals
    assert "no unit" in refusal.problem


def test_several_parts_and_times_by_the_calendar_are_answered_with_an_example() -> None:
    (refusal,) = loaded("supply: {bulk: {c: 2 x 1000 uF}}").refusals
    assert refusal.example.startswith("2000 uF for all of them, 1000 uF for each")
    (refusal,) = loaded("claims: {shelf_time: 6 months}").refusals
    assert refusal.example == "4380 h"
