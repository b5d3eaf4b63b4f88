"""Loading a spec: values by full path, and every refusal of a file in one go.

The specs are invented for these tests; lines and columns are found in their text.
"""

import json
import pickle
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from ampreview.linter.declare import load_schema
from ampreview.linter.quantities.quantity import Value
from ampreview.linter.reading.by_path import steps_of
from ampreview.linter.reading.loading import Loaded, Spec, load_file, load_text, spec_of
from ampreview.linter.reading.refusal import Refusal
from ampreview.linter.reading.source import Document
from ampreview.linter.reading.validation import MAX_NAMED

SCHEMA = load_schema()
field_of = SCHEMA.field_of

BOOTH = """\
amplifier_spec: 1
title: Prompter's booth monitor
revision: "7"
milestone: prototype
supply:
  source: dc-source
  rails: single
  v_rail: 32 V ± 5 %
  sinks_current: true
  bulk:
    c: 3300 uF +30 % -10 %
battery:
channels:
  left: &left
    rated_power: 40 W
    open_load: no
    band: 50 Hz .. 18 kHz
    output_stage:
      topology: full-bridge
      devices: discrete
      device:
        t_f: {typ: 6 ns, max: 11 ns}
        foster:
          - {r: 0.3 K/W, tau: 2 ms}
          - {r: 0.8 K/W, tau: 30 ms}
    filter:
      inductor: {l: 15 uH ± 20 %}
      damper: none
      second_stage:
    loudspeaker: none
  right:
    <<: *left
    rated_power: {value: 35 W, from: measured}
protection:
  fuse: none
claims:
  markets: [eu, uk]
deviations:
  - check: an-invented-check
    place: left
    permitted_by: stage manager
    reason: the booth is closed
    until: production
"""


def loaded(text: str) -> Spec:
    result = load_text(text, "booth.amp.yaml")
    assert result.refusals == ()
    assert result.spec is not None
    return result.spec


def refusals(text: str) -> tuple[Refusal, ...]:
    result = load_text(text, "booth.amp.yaml")
    assert result.spec is None
    assert result.refusals
    return result.refusals


def only_refusal(text: str) -> Refusal:
    found = refusals(text)
    assert len(found) == 1, found
    return found[0]


def fragment(text: str) -> str:
    return "amplifier_spec: 1\n" + text


def spot(text: str, part: str) -> tuple[int, int]:
    """Line and column, from 1, of a part that stands once in the text."""
    assert text.count(part) == 1
    before = text[: text.index(part)].split("\n")
    return len(before), len(before[-1]) + 1


def stands_at(refusal: Refusal, text: str, part: str) -> bool:
    return (refusal.place.line, refusal.place.column) == spot(text, part)


def test_values_by_full_path():
    values = loaded(BOOTH).values
    assert values["supply.v_rail"] == Value(32 * 0.95, 32.0, 32 * 1.05, form="tolerance")
    capacity = values["supply.bulk.c"]
    assert capacity.lo == pytest.approx(2970e-6)
    assert capacity.nominal == pytest.approx(3300e-6)
    assert capacity.hi == pytest.approx(4290e-6)
    assert values["supply.sinks_current"] == "yes"
    assert values["channels.left.open_load"] == "no"
    assert values["channels.left.output_stage.topology"] == "full-bridge"
    assert values["channels.left.output_stage.device.foster[1].tau"].nominal == pytest.approx(0.03)
    assert values["claims.markets"] == ("eu", "uk")
    assert values["revision"] == "7"
    assert "battery" not in values


def test_values_through_a_merge_and_over_it():
    values = loaded(BOOTH).values
    inductance = "filter.inductor.l"
    assert values[f"channels.right.{inductance}"] == values[f"channels.left.{inductance}"]
    assert values["channels.left.rated_power"].nominal == 40.0
    assert values["channels.right.rated_power"].nominal == 35.0
    assert values["channels.right.rated_power"].provenance == "measured"


def test_sections_stated_and_sections_not_in_the_product():
    spec = loaded(BOOTH)
    assert spec.channels == ("left", "right")
    both = ("channels.left", "channels.right")
    assert spec.none == {f"{name}.{part}" for name in both for part in NOT_FITTED} | {
        "protection.fuse"
    }
    assert {"supply", "supply.bulk", "channels.left.filter.inductor", "protection"} <= spec.sections
    assert "channels.left.filter.second_stage" not in spec.sections | spec.none
    assert "battery" not in spec.sections | spec.none
    assert spec.lists["channels.right.output_stage.device.foster"] == 2


NOT_FITTED = ("filter.damper", "loudspeaker")


def test_an_empty_section_is_silent():
    spec = loaded(fragment("supply: {}\nchannels:\n  a: {filter: {inductor: {}}}\n  b:\n"))
    assert spec.sections == frozenset()
    assert spec.channels == ("a", "b")
    assert set(spec.values) == {"amplifier_spec"}


def test_title_revision_milestone_and_deviations():
    spec = loaded(BOOTH)
    assert (spec.title, spec.revision, spec.milestone) == (
        "Prompter's booth monitor",
        "7",
        "prototype",
    )
    (deviation,) = spec.deviations
    assert deviation.check == "an-invented-check"
    assert (deviation.place, deviation.until, deviation.up_to) == ("left", "production", "")
    assert (deviation.at.line, deviation.at.column) == spot(BOOTH, "check: an")
    bare = loaded(fragment(""))
    assert (bare.title, bare.revision, bare.milestone, bare.deviations) == ("", "", "concept", ())


def test_a_spec_without_channels_is_accepted():
    for text in ("", "channels:\n", "channels: {}\n"):
        assert loaded(fragment(text)).channels == ()


def test_places_climb_to_the_nearest_section():
    spec = loaded(BOOTH)
    assert spot(BOOTH, "32 V") == (
        spec.place("supply.v_rail").line,
        spec.place("supply.v_rail").column,
    )
    nearest = spec.place("channels.left.output_stage.device.t_r")
    assert (nearest.line, nearest.column) == spot(BOOTH, "device:")
    item = spec.place("channels.left.output_stage.device.foster[7].r")
    assert (item.line, item.column) == spot(BOOTH, "foster:")
    assert (spec.place("thermal.heatsink").line, spec.place("thermal.heatsink").column) == (1, 1)


def test_the_format_line_is_asked_for_first():
    missing = only_refusal("supply: {v_rail: 24 V}\n")
    assert "format version" in missing.problem
    assert missing.example == "amplifier_spec: 1"
    text = "amplifier_spec: 2\nsupply: {v_rail: 24}\nnonsense: 3\n"
    other = only_refusal(text)
    assert "`2`" in other.problem
    assert stands_at(other, text, "2\n")
    assert len(refusals("supply: {v_rail: 24}\n")) == 2
    assert "format version" in only_refusal("version: 3\nservices: {web: 1}\n").problem
    assert loaded("supply: {v_rail: 24 V}\namplifier_spec: 1\n").values["supply.v_rail"]


def test_everything_wrong_comes_in_one_go_and_in_order():
    text = fragment(
        "supply:\n  v_rail: 24\n  rails: both\n  vrail: 24 V\n"
        "supply_: 3\nchannels:\n  a b: {rated_power: 3 W}\n"
        "  ok: {rated_power: 3 ohm, filter: lc, band: [1]}\n"
        "claims: {markets: mars}\ndeviations: [{check: x}]\ntitle: {a: 1}\ntitle: again\n"
    )
    found = refusals(text)
    lines = [item.place.line for item in found]
    assert lines == sorted(lines)
    assert set(lines) == {3, 4, 5, 6, 8, 9, 10, 11, 12, 13}
    assert lines.count(9) == 3
    assert all(item.problem and item.expected for item in found)


def test_an_unknown_key_is_told_its_nearest_name():
    text = fragment("channels:\n  a:\n    filter:\n      indutor: {l: 22 uH}\n")
    found = only_refusal(text)
    assert stands_at(found, text, "indutor")
    assert "`indutor` is not known in channels.a.filter" in found.problem
    assert "inductor" in found.expected
    capital = only_refusal(fragment("supply: {V_rail: 24 V}\n"))
    assert "`v_rail`" in capital.expected
    assert capital.example.startswith("v_rail: ")
    hyphen = only_refusal(fragment("channels: {a: {gate_drive: {dead-time: 40 ns}}}\n"))
    assert "`dead_time`" in hyphen.expected


def test_an_unknown_key_that_belongs_elsewhere_is_told_its_place():
    found = only_refusal(fragment("channels: {a: {output_stage: {r_ds_on: 12 mohm}}}\n"))
    assert found.expected == "its place is output_stage.device.r_ds_on"
    top = only_refusal(fragment("v_rail: 24 V\n"))
    assert "supply.v_rail" in top.expected
    assert "at the top of the file" in top.problem


def test_an_unknown_key_unlike_any_other_is_told_what_is_known():
    found = only_refusal(fragment("channels: {a: {lead: {zzz: 1 m}}}\n"))
    assert "area" in found.expected
    assert "length" in found.expected


def test_a_missing_space_behind_the_colon_is_recognised_inside_brackets_and_alone():
    inside = only_refusal(fragment("channels: {a: {lead: {length:2 m, area: 1 mm2}}}\n"))
    assert "no space after the colon" in inside.problem
    assert "length: 2 m" in inside.example
    alone = only_refusal(fragment("supply:\n  v_rail:24 V\n"))
    assert "no space after the colon" in alone.problem
    assert alone.example == "v_rail: 24 V"


@pytest.mark.parametrize(
    ("text", "part"),
    [
        ("supply: {v_rail: 24}\n", "24}"),
        ("supply: {v_rail: 24 ohm}\n", "24 ohm"),
        ("supply: {v_rail: '24,5 V'}\n", "'24,5"),
        ("supply: {v_rail: 2*3 V}\n", "2*3"),
        ("supply: {v_rail: nan V}\n", "nan"),
        ("supply: {v_rail: [24 V]}\n", "v_rail"),
        ("supply: {v_rail: {minimum: 24 V}}\n", "v_rail"),
        ("supply: 24 V\n", "24 V"),
        ("supply: none\n", "none"),
        ("supply: [a]\n", "supply"),
        ("channels: a\n", "a\n"),
        ("channels: {a: none}\n", "none"),
        ("battery: {series: 4 V}\n", "4 V"),
        ("battery: {chemistry: lipo}\n", "lipo"),
        ("supply: {certified: perhaps}\n", "perhaps"),
        ("claims: {markets: mars}\n", "mars"),
        ("milestone: soon\n", "soon"),
        ("deviations: {check: x}\n", "deviations"),
        ("title: [a]\n", "title"),
    ],
)
def test_a_wrong_value_is_refused_where_it_stands(text, part):
    text = fragment(text)
    found = only_refusal(text)
    line = text.splitlines()[found.place.line - 1]
    assert found.place.line == 2
    assert line[found.place.column - 1 :].startswith(part.rstrip("\n"))
    assert found.expected


def test_missing_parts_of_a_deviation_are_named():
    text = fragment("deviations:\n  - check: invented\n    place: product\n")
    found = refusals(text)
    assert {item.problem for item in found} == {
        f"`deviations[0].{name}` is not stated" for name in ("permitted_by", "reason", "until")
    }
    assert all(item.place.line == 3 for item in found)
    assert all(item.example for item in found)


@pytest.mark.parametrize("name", ["a b", "ä/ö", "a:b", "x" * 100, "product", "-\tx"])
def test_names_of_channels_are_plain_words(name):
    text = fragment(
        f"channels:\n  {name!r}: {{rated_power: 3 W}}\n  good_2-x: {{rated_power: 1}}\n"
    )
    if "\\t" in repr(name):
        text = text.replace("'-\\tx'", '"-\\tx"')
    bad, other = refusals(text)
    assert (bad.place.line, bad.place.column) == (3, 3)
    assert (other.place.line, other.place.path) == (4, "channels.good_2-x.rated_power")


def test_a_file_full_of_slips_is_cut_short_and_says_so():
    channels = range(60)
    rows = "".join(f"  c{n}:\n    rated_power: 3\n    rated_load: 3\n" for n in channels)
    found = refusals(fragment("channels:\n" + rows))
    slips = [line for n in channels for line in (4 + 3 * n, 5 + 3 * n)]
    assert [item.place.line for item in found] == slips[:101]
    assert found[-1].problem == "more problems from here on"
    keys = "".join(f"  odd{number}: 3\n" for number in range(300))
    assert 90 < len(refusals(fragment("supply:\n" + keys))) < 110


def test_more_channels_than_can_be_reviewed_are_refused_at_the_first_too_many():
    text = "channels:\n" + "".join(f"  c{n}: {{rated_power: 50 W}}\n" for n in range(MAX_NAMED + 1))
    found = only_refusal(fragment(text))
    assert (found.place.line, found.problem) == (3 + MAX_NAMED, f"{MAX_NAMED + 1} channels")
    assert str(MAX_NAMED) in found.expected


def test_a_slip_in_a_shared_section_is_refused_once():
    text = fragment("channels:\n  a: &a {rated_power: 3}\n  b: *a\n  c: {<<: *a}\n")
    assert stands_at(only_refusal(text), text, "3}")


def test_problems_of_the_text_and_of_the_values_come_together():
    text = fragment("supply: {v_rail: 24}\ntitle: !mine x\nsupply: {}\n")
    assert [item.place.line for item in refusals(text)] == [2, 3, 4]


def test_a_file_that_cannot_be_opened_is_refused(tmp_path: Path):
    for path in (tmp_path / "absent.amp.yaml", tmp_path, "bad\0name"):
        (found,) = load_file(path).refusals
        assert found.problem.startswith("the file cannot be opened")


def test_a_file_loads_like_its_text(tmp_path: Path):
    path = tmp_path / "booth.amp.yaml"
    path.write_text(BOOTH, encoding="utf-8")
    spec = load_file(path).spec
    assert spec.values == loaded(BOOTH).values
    assert spec.text == BOOTH
    assert spec.file == str(path)
    assert spec.place("supply.v_rail").file == str(path)


def test_a_spec_can_be_sent_to_another_process():
    spec = loaded(BOOTH)
    again = pickle.loads(pickle.dumps(spec))
    assert (again.values, again.places) == (spec.values, spec.places)


def changed(spec: Spec, changes: dict[str, object]) -> Spec:
    result = spec.with_values(changes)
    assert result.refusals == ()
    return result.spec


def test_changed_values_and_nothing_else():
    spec = loaded(BOOTH)
    other = changed(
        spec,
        {
            "channels.left.filter.inductor.l": "22 uH ± 10 %",
            "channels.left.output_stage.device.foster[1].r": "1.1 K/W",
            "supply.v_rail": "30 V",
        },
    )
    expected = dict(spec.values)
    expected["channels.left.filter.inductor.l"] = other.values["channels.left.filter.inductor.l"]
    expected["supply.v_rail"] = Value(30.0, 30.0, 30.0)
    item = "channels.left.output_stage.device.foster[1].r"
    expected[item] = Value(1.1, 1.1, 1.1)
    assert dict(other.values) == expected
    assert other.values["channels.left.filter.inductor.l"].lo == pytest.approx(19.8e-6)
    assert (other.none, other.sections, other.places) == (spec.none, spec.sections, spec.places)
    assert spec.values["supply.v_rail"].nominal == 32.0
    assert loaded(BOOTH).values == spec.values


def test_added_values_fit_the_sections_on_the_way():
    spec = loaded(BOOTH)
    other = changed(
        spec, {"channels.right.filter.damper.r": "10 ohm", "thermal.heatsink.count": "2"}
    )
    assert other.values["channels.right.filter.damper.r"].nominal == 10.0
    assert "channels.right.filter.damper" in other.sections - other.none
    assert "channels.left.filter.damper" in other.none
    assert other.values["thermal.heatsink.count"].nominal == 2.0
    assert other.place("channels.right.filter.damper.r") == spec.place(
        "channels.right.filter.damper"
    )


def test_a_section_can_be_replaced_and_taken_out():
    other = changed(loaded(BOOTH), {"supply.bulk": {"c": "1 mF"}, "protection.surge": "none"})
    assert other.values["supply.bulk.c"].nominal == pytest.approx(1e-3)
    assert "protection.surge" in other.none
    again = changed(other, {"channels.left.filter.damper": {"r": "10 ohm"}})
    bare = changed(again, {"channels.left.filter.damper": "none"})
    assert "channels.left.filter.damper" in bare.none
    assert "channels.left.filter.damper.r" not in bare.values


def test_changes_are_validated():
    spec = loaded(BOOTH)
    result = spec.with_values({"supply.v_rail": "30", "channels.left.filter.indutor.l": "1 uH"})
    assert result.spec is None
    assert {item.place.path for item in result.refusals} == {
        "supply.v_rail",
        "channels.left.filter",
    }


AWKWARD = ("5", "none", "-3 V", "{a}", ["x"], 7, 1.5e99, "", "1 uH", "10 V .. 20 V", None)


def test_a_changed_leaf_is_what_the_whole_file_gives():
    """A leaf that is stated already is read alone; the whole file read anew says the same."""
    spec = loaded(BOOTH)
    mapped = ({"min": "1 V", "typ": "2 V"}, {"value": "4 ohm", "from": "measured"})
    for path in spec.values:
        for value in (field_of(path).example, *AWKWARD, *mapped):
            data = {path: value}
            alone, whole = spec.with_values(data), read_again(spec, data)
            assert alone.refusals == whole.refusals, data
            if whole.spec is not None:
                assert alone.spec.values == whole.spec.values, data
                assert alone.spec.data == whole.spec.data, data
                assert (alone.spec.lists, alone.spec.sections) == (spec.lists, whole.spec.sections)


def read_again(spec: Spec, changes: dict[str, object]) -> Loaded:
    """A spec with changes by the long way: the changed data written out and loaded."""
    data = json.loads(json.dumps(spec.data))  # a copy in which channels share nothing
    for path, value in changes.items():
        *above, last = steps_of(path)
        inner = data
        for step in above:
            inner = inner[step]
        inner[last] = value
    return spec_of(Document(data, spec.places, {}, (), spec.text), spec.file, spec.schema)


def test_a_changed_spec_changes_on():
    spec = loaded(BOOTH)
    first = changed(spec, {"channels.left.rated_power": "41 W"})
    second = changed(first, {"channels.right.rated_power": "42 W"})
    assert second.values["channels.left.rated_power"].nominal == 41.0
    assert second.values["channels.right.rated_power"].nominal == 42.0


def survives(content: str | bytes) -> None:
    result = load_text(content, "f")
    assert isinstance(result, Loaded)
    assert (result.spec is None) == bool(result.refusals)


@given(st.binary(max_size=200))
def test_any_bytes_load_or_are_refused(content):
    survives(content)
    survives(b"amplifier_spec: 1\n" + content)


LINES = BOOTH.splitlines()


@settings(max_examples=150, deadline=None)
@given(
    st.lists(st.tuples(st.integers(0, len(LINES) - 1), st.integers(0, len(LINES) - 1)), max_size=6),
    st.integers(0, len(BOOTH)),
    st.text(alphabet="\n :-{}[]&*<>!'\"#x0%.,µ", max_size=5),
)
def test_a_shuffled_spec_loads_or_is_refused(swaps, cut, put):
    lines = list(LINES)
    for one, other in swaps:
        lines[one], lines[other] = lines[other], lines[one]
    text = "\n".join(lines)
    survives(text[:cut] + put + text[cut:])
    survives(text[:cut])


ANY = st.recursive(
    st.none() | st.text(max_size=6) | st.sampled_from(["none", "yes", "3 V", "22 uH", "1"]),
    lambda inner: (
        st.lists(inner, max_size=3)
        | st.dictionaries(
            st.sampled_from(["min", "typ", "max", "value", "from", "c", "l", "filter", "x"]),
            inner,
            max_size=3,
        )
    ),
    max_leaves=6,
)


@settings(max_examples=150, deadline=None)
@given(
    st.dictionaries(
        st.sampled_from(
            [
                "supply",
                "supply.v_rail",
                "channels",
                "channels.left",
                "channels.left.filter",
                "channels.left.filter.inductor.l",
                "channels.left.output_stage.device.foster",
                "channels.left.output_stage.device.foster[0]",
                "channels.left.open_load",
                "claims.markets",
                "deviations",
                "deviations[0].check",
                "amplifier_spec",
                "title",
                "battery.series",
                "nonsense.x",
            ]
        ),
        ANY,
        min_size=1,
        max_size=3,
    )
)
def test_any_plain_data_in_any_place_load_or_are_refused(changes):
    result = BOOTH_SPEC.with_values(changes)
    assert (result.spec is None) == bool(result.refusals)


BOOTH_SPEC = load_text(BOOTH, "booth.amp.yaml").spec or Spec(
    "", (), {}, frozenset(), frozenset(), {}, {}, {}, ""
)


@pytest.mark.parametrize("part", ["protection: {dc_detector: {}}", "channels: {a: {lead: {}}}"])
def test_an_empty_section_that_could_be_none_is_refused(part):
    (refusal,) = refusals(fragment(part))
    assert "says neither that there is one nor that there is none" in refusal.problem
    assert refusal.example in ("dc_detector: none", "lead: none")


def test_a_section_with_keys_to_be_filled_in_is_still_silent():
    spec = loaded(fragment("protection:\n  dc_detector:\n    v_trip:\n"))
    assert not spec.sections & {"protection.dc_detector"}


@pytest.mark.parametrize(
    ("text", "quoted", "example"),
    [
        ("filter: {c_across: {c: 0,68 uF, v_rated: 63 V}}", "`c: 0,68 uF`", "c: 0.68 uF"),
        ("filter: {inductor: {l: 2,2 uH ± 20 %}}", "`l: 2,2 uH ± 20 %`", "l: 2.2 uH ± 20 %"),
        ("filter: {c_across: {c: 1,000 nF}}", "`c: 1,000 nF`", ""),  # a thousand, or one?
        ("filter: {inductor: {l: {typ: 2,2 uH, max: 3 uH}}}", "'2,2 uH'", "22 uH"),
    ],
)
def test_a_decimal_comma_inside_braces_is_named_once(text, quoted, example):
    (refusal,) = refusals(fragment("channels: {a: {" + text + "}}"))
    assert refusal.problem.startswith(f"{quoted} has a comma")
    assert refusal.example == example
    assert "decimal point" in refusal.problem + refusal.expected


def test_one_word_may_stand_alone_where_a_list_belongs() -> None:
    loaded = load_text("amplifier_spec: 1\nclaims: {markets: EU, standards: EN 55032}\n", "a")
    assert loaded.spec is not None, loaded.refusals
    assert loaded.spec.values["claims.markets"] == ("eu",)
    assert loaded.spec.values["claims.standards"] == ("EN 55032",)
