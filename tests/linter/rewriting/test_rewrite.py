"""Changes written back into spec texts of many layouts: nothing but the change moves.

The expectation comes from the other way to change a spec, ``Spec.with_values``, which never
touches text, and from reading the written text with another loader of YAML.
"""

import io
import re
from collections.abc import Set
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from ruamel.yaml import YAML

from ampreview.linter.declare import Field, load_schema, usual_bounds
from ampreview.linter.quantities.quantity import from_si
from ampreview.linter.reading.loading import Spec, load_text
from ampreview.linter.rewriting.rewrite import Change, RewriteError, rewritten

from ...sampling import tries

SCHEMA = load_schema()
FIELDS = SCHEMA.fields

BLOCK = """\
# An invented stereo amplifier.
amplifier_spec: 1
title: 'Invented amplifier'      # quoted
milestone: prototype

supply:                          # one rail
    rails: "single"
    v_rail: 24 V ± 2 %           # measured
    bulk: {c: 2m2 ± 20 %, v_rated: 35V}

channels:
    left:   # the first
        rated_load: 4 Ω
        output_stage:
            topology: full-bridge
            device:
                t_d_off: {typ: 14 ns, max: 22 ns}
                # the ladder follows
                foster:
                    - {r: 0.2 K/W, tau: 0.4 ms}
                    - r: 0.9 K/W     # second stage
                      tau: 12 ms
        gate_drive:
            dead_time:
                min: 40 ns   # lowest
                max: 45 ns
            r_g_on: 6R8 ± 5%
        filter:
            inductor: {l: 22µH ±20%, dcr: 20 mohm}  # copper
            damper: none
claims:
    markets: [eu, uk]
    # the end
"""

ALIASED = """\
amplifier_spec: 1
channels:
  left: &channel
    rated_load: 4 ohm
    gate_drive: {dead_time: {value: 45 ns, from: measured}, v_drv: 12 V}   # both
    modulator: &modulator
      carrier: &frequency 400 kHz
      loop_order: 2
    filter:
      inductor: {l: 10 uH}
      c_across:
      second_stage: none
  right: *channel    # the same
  rear:
    <<: *channel
    rated_load: 8 ohm
    modulator:
      <<: *modulator
      levels: two-level
  centre: {<<: *channel, modulator: *modulator}
supply: {converter_frequency: *frequency, v_rail: 24 V}
"""

NESTED = """\
amplifier_spec: 1
channels:
  a: &a
    output_stage: &stage
      device: &device
        v_dss: 100 V
        foster: &ladder
          - &first {r: 0.2 K/W, tau: 1 ms}
          - {<<: *first, tau: 4 ms}
          - *first
  b: &b
    <<: *a
    output_stage: {<<: *stage, parallel: 2}
  c: *b
  d:
    <<: [*b, *a]
    filter: {type: lc, inductor: {l: 10 uH,},}
  e:
    output_stage:
      device: {v_dss: 80 V, foster: *ladder}"""

FLOW = "{amplifier_spec: 1, channels: {main: {rated_load: 4 ohm}}, supply: {v_rail: 24 V}}\n"
WINDOWS = BLOCK.replace("\n", "\r\n")
LAYOUTS = {
    "block": BLOCK,
    "aliased": ALIASED,
    "nested": NESTED,
    "flow": FLOW,
    "windows": WINDOWS,
}

CHANNEL_PATHS = (
    "rated_load",
    "gate_drive.dead_time",
    "gate_drive.r_g_on",
    "modulator.carrier",
    "modulator.levels",
    "filter.inductor.l",
    "filter.damper.r",
    "filter.c_across.c",
    "filter.second_stage.l",
    "output_stage.device.t_d_off",
    "output_stage.device.v_dss",
    "output_stage.parallel",
    "lead.length",
)
PRODUCT_PATHS = (
    "supply.v_rail",
    "supply.bulk.c",
    "supply.converter_frequency",
    "wiring.trace.width",
)


def load(text: str) -> Spec:
    loaded = load_text(text, "invented.amp.yaml")
    assert loaded.spec is not None, loaded.refusals
    return loaded.spec


def plain(text: str) -> Any:
    """The text as another loader reads it: ruamel's round-trip tree."""
    return YAML().load(io.StringIO(text))


def texts(spec: Spec, paths: Set[str]) -> dict[str, str]:
    return {path: str(getattr(spec.values[path], "text", spec.values[path])) for path in paths}


def stated(tree: Any) -> Any:
    """A tree without what says nothing, numbers and booleans as text."""
    if isinstance(tree, dict):
        kept = {str(key): stated(value) for key, value in tree.items()}
        return {key: value for key, value in kept.items() if value not in (None, {})}
    if isinstance(tree, list):
        return [stated(item) for item in tree]
    return None if tree is None else str(tree)


def comments(text: str) -> list[str]:
    return [found.strip() for found in re.findall(r"(?m)(?:^|\s)#(.*)$", text)]


def in_order(wanted: list[str], found: list[str]) -> bool:
    """Whether each wanted comment begins one of the found ones, in that order."""
    rest = iter(found)
    return all(any(item.startswith(want) for item in rest) for want in wanted)


def written(text: str, changes: dict[str, Any], why: str = "") -> str:
    spec = load(text)
    return rewritten(spec, {path: Change(data, why) for path, data in changes.items()})


def value_for(field: Field) -> st.SearchStrategy[Any]:
    if field.words:
        return st.sampled_from(field.words)
    if field.kind == "count":
        return st.sampled_from(["1", "3"])
    unit = field.unit
    low, high = (from_si(bound, unit) for bound in usual_bounds(field) or (1.0, 900.0))
    numbers = st.integers(0, 100).map(lambda n: float(f"{low + (high - low) * n / 100:.4g}"))
    return st.one_of(
        numbers.map(lambda x: f"{x:g} {unit}"),
        numbers.map(lambda x: f"{x:g} {unit} ± 5 %"),
        numbers.map(lambda x: {"min": f"{x:g} {unit}", "max": f"{1.01 * x:g} {unit}"}),
    )


@st.composite
def changes_of(draw: st.DrawFn, channels: tuple[str, ...]) -> dict[str, Any]:
    paths = [f"channels.{name}.{path}" for name in channels for path in CHANNEL_PATHS]
    chosen = draw(st.lists(st.sampled_from([*paths, *PRODUCT_PATHS]), max_size=5, unique=True))
    return {path: draw(value_for(FIELDS[re.sub(r"^channels\.\w+\.", "", path)])) for path in chosen}


@pytest.mark.parametrize("name", LAYOUTS)
@given(data=st.data())
@settings(max_examples=tries(20, swept=60), deadline=None)
def test_only_the_change_moves(name: str, data: st.DataObject) -> None:
    text = LAYOUTS[name]
    spec = load(text)
    changes = data.draw(changes_of(spec.channels))
    after = written(text, changes, "was otherwise: because")
    found, wanted = load(after), spec.with_values(changes).spec
    assert wanted is not None
    assert found.values == wanted.values
    assert found.none == wanted.none
    assert found.lists == wanted.lists
    assert stated(plain(after)) == stated(found.data)
    untouched = spec.values.keys() - changes.keys()
    assert texts(found, untouched) == texts(spec, untouched)
    assert in_order(comments(text), comments(after))
    anchors = re.findall(r"&[\w-]+", text)
    assert [item for item in re.findall(r"&[\w-]+", after) if item in anchors] == anchors


@pytest.mark.parametrize("name", LAYOUTS)
def test_no_change_leaves_the_text_as_it_is(name: str) -> None:
    assert written(LAYOUTS[name], {}) == LAYOUTS[name]


def test_one_value_changes_one_line() -> None:
    after = written(BLOCK, {"supply.v_rail": "28 V ± 2 %"}, "was 24 V: the pack is larger")
    before, now = BLOCK.splitlines(), after.splitlines()
    moved = [(old, new) for old, new in zip(before, now, strict=True) if old != new]
    assert moved == [
        (
            "    v_rail: 24 V ± 2 %           # measured",
            "    v_rail: 28 V ± 2 %           # measured; was 24 V: the pack is larger",
        )
    ]


@pytest.mark.parametrize(
    ("path", "new", "line"),
    [
        ("channels.left.filter.inductor.l", "33 uH ± 20 %", "{l: 33µH ±20%, dcr: 20 mohm}"),
        ("channels.left.gate_drive.r_g_on", "8.2 ohm ± 5 %", "r_g_on: 8R2 ± 5%"),
        ("supply.bulk.c", "3300 uF ± 20 %", "{c: 3300u ± 20 %, v_rated: 35V}"),
        ("supply.bulk.v_rated", "50 V", "v_rated: 50V}"),
        ("channels.left.rated_load", "8 ohm", "rated_load: 8 Ω"),
        ("supply.rails", "split", 'rails: "split"'),
        ("title", "Hall's amplifier", "title: 'Hall''s amplifier'      # quoted"),
        ("channels.left.gate_drive.dead_time", {"min": "50 ns", "max": "55 ns"}, "min: 50 ns   #"),
    ],
)
def test_written_in_the_style_of_the_file(path: str, new: Any, line: str) -> None:
    assert line in written(BLOCK, {path: new})


def test_comments_of_a_line_that_goes_are_kept() -> None:
    after = written(BLOCK, {"channels.left.gate_drive.dead_time": "50 ns"})
    assert "            dead_time: 50 ns # lowest\n" in after


def test_a_new_section_comes_where_it_belongs() -> None:
    after = written(BLOCK, {"channels.left.lead.length": "2 m", "protection.surge.v_clamp": "40 V"})
    assert "            damper: none\n        lead:\n            length: 2 m\nclaims:" in after
    assert after.endswith("\nprotection:\n    surge:\n        v_clamp: 40 V\n    # the end\n") or (
        "\nprotection:\n    surge:\n        v_clamp: 40 V\n" in after
    )


def test_a_section_that_is_not_in_the_product_is_fitted() -> None:
    after = written(BLOCK, {"channels.left.filter.damper.r": "10 ohm"})
    assert "damper: {r: 10 ohm}" in after


def test_an_aliased_channel_becomes_a_merge_with_the_change_alone() -> None:
    after = written(ALIASED, {"channels.right.rated_load": "6 ohm"}, "was 4 ohm: it runs hot")
    head = "  right:    # the same\n    <<: *channel\n"
    assert f"{head}    rated_load: 6 ohm  # was 4 ohm: it runs hot\n" in after


def test_a_shared_value_changes_once_when_all_who_share_it_change() -> None:
    paths = [f"channels.{name}.filter.inductor.l" for name in ("left", "right", "rear", "centre")]
    after = written(ALIASED, dict.fromkeys(paths, "22 uH"), "was 10 uH: ripple")
    expected = "inductor: {l: 22 uH}  # l was 10 uH: ripple"
    assert after == ALIASED.replace("inductor: {l: 10 uH}", expected)


def test_the_owner_of_an_anchor_changes_alone() -> None:
    after = written(ALIASED, {"channels.left.rated_load": "2 ohm"})
    values = load(after).values
    loads = [
        str(getattr(values[f"channels.{n}.rated_load"], "text", ""))
        for n in ("left", "right", "rear", "centre")
    ]
    assert loads == ["2 ohm", "4 ohm", "8 ohm", "4 ohm"]


def test_an_item_of_a_shared_list_changes_alone() -> None:
    after = written(NESTED, {"channels.e.output_stage.device.foster[1].r": "0.5 K/W"})
    assert "foster: [{r: 0.2 K/W, tau: 1 ms}, {tau: 4 ms, r: 0.5 K/W}, " in after
    assert "          - {<<: *first, tau: 4 ms}\n" in after


def test_two_new_sections_beside_a_merge_in_brackets() -> None:
    changes = {"channels.left.output_stage.parallel": "1", "channels.left.lead.length": "1 m"}
    values = load(written(ALIASED, changes)).values
    assert "channels.left.lead.length" in values
    assert "channels.centre.lead.length" not in values


def test_a_change_that_the_spec_refuses_is_not_written() -> None:
    with pytest.raises(RewriteError):
        written("amplifier_spec: 1\n", {"supply.v_rail": "24 parsec"})


def test_a_list_is_written_whole() -> None:
    data = [{"r": "0.2 K/W", "tau": "1 ms"}, {"r": "1 K/W", "tau": "20 ms"}]
    after = written("amplifier_spec: 1\n", {"channels.main.output_stage.device.foster": data})
    assert load(after).lists == {"channels.main.output_stage.device.foster": 2}
    assert "- {r: 0.2 K/W, tau: 1 ms}\n" in after
