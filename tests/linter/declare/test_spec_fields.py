"""What every field of the spec says of itself, and the paths of the spec."""

import math

import pytest
from ruamel.yaml import YAML

from ampreview.linter.check import Assumption, Source
from ampreview.linter.declare import Field, load_schema, usual_bounds
from ampreview.linter.declare.accept import PLAIN
from ampreview.linter.quantities.quantity import Value, parse

SCHEMA = load_schema()
FIELDS = SCHEMA.fields
field_of = SCHEMA.field_of
is_channel_path = SCHEMA.is_channel_path

# Sections that a spec may declare not to be in the product.
MAY_BE_NONE = {
    "thermal.heatsink.fan",
    "limiter",
    "line",
    "line.high_pass",
    "lead",
    "output_stage.snubber",
    "output_stage.over_current",
    "gate_drive.bootstrap",
    "gate_drive.regulator",
    "filter.c_across",
    "filter.c_block",
    "filter.c_ground",
    "filter.damper",
    "filter.second_stage",
    "loudspeaker",
    "loudspeaker.high_pass",
    "loudspeaker.c_series",
    "loudspeaker.piezo",
    "loudspeaker.zobel",
    "battery.protection",
    "battery.charger",
    "thermal.heatsink",
    "thermal.enclosure",
    "wiring.connector",
    "protection.over_voltage",
    "protection.under_voltage",
    "protection.over_temperature",
    "protection.dc_detector",
    "protection.fuse",
    "protection.inrush",
    "protection.reverse_polarity",
    "protection.surge",
    "protection.bleeder",
}
# Silence about these sections means that they are not in the product.
NONE_WHEN_SILENT = {
    "thermal.heatsink.fan",
    "limiter",
    "line",
    "line.high_pass",
    "output_stage.device.foster",
    "output_stage.efficiency_curve",
    "output_stage.snubber",
    "filter.c_ground",
    "filter.damper",
    "filter.second_stage",
    "loudspeaker.c_series",
    "loudspeaker.piezo",
    "loudspeaker.zobel",
    "protection.over_voltage",
    "protection.surge",
    "protection.bleeder",
}

LEAVES = {path: field for path, field in FIELDS.items() if field.model is None}
NUMBERS = {path: field for path, field in LEAVES.items() if field.kind in ("quantity", "count")}


def accepted(field: Field, text: object) -> object:
    """What the spec makes of a text in this field."""
    return PLAIN[field.kind](field)(text)


def plain(text: str) -> object:
    """The text of an example as a YAML file hands it over: scalars stay text."""
    if text[:1] in "{[":
        return YAML(typ="safe", pure=True).load(text)
    return text


def test_meaning_is_said() -> None:
    for path, field in FIELDS.items():
        assert len(field.meaning) >= 12, path


def test_a_slip_of_one_prefix_falls_outside_the_usual_range() -> None:
    for path in NUMBERS:
        tells_a_slip(path)


def tells_a_slip(path: str) -> None:
    field = NUMBERS[path]
    if path.startswith("output_stage.device.foster"):
        assert usual_bounds(field) is None
        return
    for upper_end in (False, True):
        bounds = usual_bounds(field, upper_end)
        assert bounds is not None, path
        low, high = bounds
        assert low <= high, path
        if field.unit == "degC":
            assert high - low <= 150.0, path
        else:
            assert low > 0.0, path
            assert high / low < 1000.0, path


def test_examples_are_accepted_and_usual() -> None:
    for path, field in LEAVES.items():
        assert field.example, path
        value = accepted(field, plain(field.example))
        bounds = usual_bounds(field)
        if isinstance(value, Value) and bounds is not None:
            assert bounds[0] <= value.lo * 1.000001, path
            top = usual_bounds(field, upper_end=True)
            assert top is not None, path
            assert value.hi <= top[1] * 1.000001, path


@pytest.mark.parametrize("path", [path for path, field in FIELDS.items() if field.default])
def test_default_is_accepted_and_names_a_basis(path: str) -> None:
    field, default = FIELDS[path], FIELDS[path].default
    assert isinstance(default, Assumption)
    assert isinstance(default.basis, Source)
    assert default.basis.title
    if field.model is not None:
        assert (default.value, default.leaning) == ("none", "absent")
    elif isinstance(default.value, str) and field.kind == "quantity":
        assert parse(default.value, field.unit).lo >= 0.0
    elif isinstance(default.value, str):
        assert accepted(field, default.value) == default.value
    else:
        assert isinstance(default.value, float)
        assert field.kind == "count" or math.isinf(default.value)


def test_usual_ranges_in_si_as_worked_by_hand() -> None:
    # 1 h = 3600 s; 1 Ah = 3600 C; 1 V/ns = 1e9 V/s; 1 L = 1e-3 m3; 0 degC = 273.15 K
    by_hand = {
        "supply.bulk.c": (47e-6, 33e-3),
        "supply.bulk.life": (3.6e6, 7.2e7),
        "supply.bulk.t_rated": (358.15, 423.15),
        "battery.cell.capacity": (720.0, 540e3),
        "gate_drive.cmti": (2e9, 300e9),
        "loudspeaker.v_as": (0.5e-3, 0.45),
        "loudspeaker.s_d": (4e-4, 0.13),
        "filter.inductor.v_e": (50e-9, 45e-6),
        "filter.inductor.p_v": (20e3, 9e6),
        "modulator.m_max": (0.4, 1.0),
        "signal.crest_factor": (3.0, 20.0),
        "loudspeaker.phase": (math.pi / 180.0, 75.0 * math.pi / 180.0),
        "band": (10.0, 9000.0),
    }
    for path, (low, high) in by_hand.items():
        assert usual_bounds(FIELDS[path]) == pytest.approx((low, high), rel=1e-9)
    assert usual_bounds(FIELDS["band"], upper_end=True) == (200.0, 99000.0)
    assert usual_bounds(FIELDS["title"]) is None


def test_sections_that_may_be_none() -> None:
    assert {path for path, field in FIELDS.items() if field.can_be_none} == MAY_BE_NONE


def test_sections_that_silence_means_none_for() -> None:
    silent = {path for path, field in FIELDS.items() if field.model is not None and field.default}
    assert silent == NONE_WHEN_SILENT


def test_fields_where_zero_is_a_value() -> None:
    for path, field in NUMBERS.items():
        assert field.zero == field.usual.startswith("0 or "), path
    assert FIELDS["output_stage.device.q_rr"].zero
    assert not FIELDS["filter.inductor.l"].zero


def test_only_the_format_and_a_deviation_are_asked_for_by_force() -> None:
    required = {path for path, field in LEAVES.items() if field.required}
    inside = {
        f"deviations[].{key}" for key in ("check", "place", "permitted_by", "reason", "until")
    } | {"measured[].figure", "measured[].value"}
    assert required == {"amplifier_spec"} | inside


@pytest.mark.parametrize(
    ("path", "key"),
    [
        ("channels.voice.filter.inductor.l", "filter.inductor.l"),
        ("channels.filter.rated_power", "rated_power"),
        ("channels.supply.output_stage.device.foster[3].tau", "output_stage.device.foster[].tau"),
        ("deviations[0].check", "deviations[].check"),
        ("supply.v_rail", "supply.v_rail"),
        ("rated_load", "rated_load"),
    ],
)
def test_field_of_a_full_path(path: str, key: str) -> None:
    assert field_of(path) is FIELDS[key]


def test_field_of_an_unknown_path() -> None:
    with pytest.raises(KeyError):
        field_of("channels.voice.filter.inductor.henry")


@pytest.mark.parametrize(
    ("path", "expected"),
    [
        ("filter.inductor.l", True),
        ("channels.left.band", True),
        ("rated_power", True),
        ("output_stage.device.foster[].r", True),
        ("lead", True),
        ("supply.v_rail", False),
        ("channels", False),
        ("deviations[0].place", False),
        ("battery.protection.r", False),
    ],
)
def test_paths_of_a_channel(path: str, expected: bool) -> None:
    assert is_channel_path(path) is expected


@pytest.mark.parametrize(
    ("path", "sold", "slips"),
    [
        ("rated_power", (1.4, 1200.0), (1.2, 1.4e3)),
        ("protection.inrush.e_rated", (1.0, 150.0), (0.15, 1e3)),
    ],
)
def test_what_is_sold_is_usual_and_its_slip_is_not(
    path: str, sold: tuple[float, float], slips: tuple[float, float]
) -> None:
    """Channels of 1.2 kW and limiters of 100 J and more are sold."""
    bounds = usual_bounds(FIELDS[path])
    assert bounds is not None
    low, high = bounds
    assert low <= sold[0] < sold[1] <= high
    assert slips[0] < low < high < slips[1]


def test_the_part_of_an_item_of_a_list_is_that_of_the_section_above() -> None:
    schema = load_schema()
    assert schema.part_of("output_stage.efficiency_curve[0]") == "efficiency curve"
