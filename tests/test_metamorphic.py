"""What must not change the answers of a review, or may change them in one direction only.

None of these tests knows a right figure; each compares two reviews of specs that a reader
would call equal, or of which one is plainly the harder one.
"""

import json
import random
from collections import Counter
from collections.abc import Iterator, Mapping
from functools import cache
from pathlib import Path
from typing import Any

import pytest
from hypothesis import Phase, given, settings
from hypothesis import strategies as st

from ampreview.linter.check import Check, Constant, Input
from ampreview.linter.declare import load_schema, local_path
from ampreview.linter.evaluation.catalogue import load
from ampreview.linter.finding import Assumed, Finding, Status
from ampreview.linter.judging.review import review
from ampreview.linter.judging.stated import DOMAIN
from ampreview.linter.quantities.quantity import Value, spell
from ampreview.linter.reading.loading import Spec, load_text

from .sampling import tries

SCHEMA = load_schema()
FIELDS = SCHEMA.fields
field_of = SCHEMA.field_of
is_channel_path = SCHEMA.is_channel_path

FOLDER = Path(__file__).parents[1] / "sample_specs"
SAMPLES = sorted(FOLDER.glob("*.amp.yaml"))

Key = tuple[str, str]

SAYS_ALL = ("choir-portable.amp.yaml", "choir-portable-faulty.amp.yaml")


def settled(examples: int) -> settings:
    return settings(max_examples=examples, derandomize=True, deadline=None, phases=[Phase.generate])


def spec_of(text: str | bytes, name: str = "a.amp.yaml") -> Spec:
    loaded = load_text(text, name)
    assert loaded.spec is not None, loaded.refusals
    return loaded.spec


def answers_of(spec: Spec) -> dict[Key, Finding]:
    """Every answer by check and subject, the findings on stated values left out."""
    found = [item for item in review(spec).findings if item.domain != DOMAIN]
    return {(item.check, item.subject): item for item in found}


@cache
def sample(path: Path) -> Spec:
    return spec_of(path.read_bytes(), path.name)


@cache
def answers(path: Path) -> Mapping[Key, Finding]:
    return answers_of(sample(path))


def told(item: Finding) -> tuple[object, ...]:
    """What a reader gets to know, without the places."""
    missing = tuple(gap.path for gap in item.advice.missing)
    return (item.status, item.severity, item.message, missing)


def near(old: float | None, new: float | None, within: float) -> bool:
    if old is None or new is None:
        return old is new
    return new == pytest.approx(old, rel=within)


def same(old: Mapping[Key, Finding], new: Mapping[Key, Finding], keys: Iterator[Key]) -> None:
    for key in keys:
        assert told(new[key]) == told(old[key]), key
        assert near(old[key].evidence.figure, new[key].evidence.figure, 1e-12), key


# Wider tolerances


@cache
def windows() -> frozenset[str]:
    """Ranges that are permissions, such as a part's supply range: wider is more permitted."""
    catalogue = load()
    inputs = [item for entry in catalogue.entries for item in entry.check.inputs.values()]
    for quantity in catalogue.derived.values():
        inputs += [item for way in quantity.ways for item in way.inputs.values()]
    ends = (item.path.partition(":") for item in inputs if isinstance(item, Input))
    return frozenset(path for path, end, _ in ends if end)


def wider(value: Value, unit: str) -> object:
    """The same nominal value with more around it."""
    if value.form == "line":
        if "typ" not in value.sides or len(value.sides) < 2:
            return None
        low, high = value.nominal - 1.3 * (value.nominal - value.lo), value.hi * 1.05
        return spell(Value(low, value.nominal, high, "line", sides=value.sides), unit)
    step = max(value.hi - value.nominal, value.nominal - value.lo) * 1.3
    step = step or abs(value.nominal) * 0.04
    low, high = value.nominal - step, value.nominal + step
    form = "range" if value.form == "range" else "tolerance"
    return spell(Value(low, value.nominal, high, form), unit) if low < high else None


@pytest.mark.slow
@settled(tries(12, swept=40))
@given(st.sampled_from(SAMPLES), st.integers(0, 2**32), st.integers(1, 6))
def test_a_wider_tolerance_never_eases_a_finding(path: Path, seed: int, changes: int) -> None:
    """For safety and ratings, which are judged at the extreme corner."""
    dice = random.Random(seed)
    spec, old = sample(path), answers(path)
    numbers = sorted(
        name
        for name, value in spec.values.items()
        if isinstance(value, Value)
        and field_of(name).kind == "quantity"
        and value.nominal != 0.0
        and local_path(name) not in windows()
    )
    texts = {}
    for name in dice.sample(numbers, min(changes, len(numbers))):
        value = spec.values[name]
        assert isinstance(value, Value)
        text = wider(value, field_of(name).unit)
        if text is not None:
            texts[name] = text
    loaded = spec.with_values(texts)
    if loaded.spec is None:  # wider than can be
        return
    new = answers_of(loaded.spec)
    for key, item in old.items():
        if item.status is Status.FINDING and item.stake in ("safety", "rating"):
            now = new[key].severity
            assert now is not None, (key, texts)
            assert now.rank <= (item.severity or now).rank, (key, texts)


# Defaults written down


def stated(leaned: Assumed) -> bool:
    """Whether an assumption stands for a leaf that a spec could state with the same value."""
    path = local_path(leaned.path)
    computed = {item.stated_at for item in load().derived.values()}
    field = FIELDS.get(path)
    return field is not None and field.model is None and path not in computed


@pytest.mark.slow
@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.name.split(".")[0])
def test_a_default_that_is_written_down_leaves_the_figure(path: Path) -> None:
    spec, old = sample(path), answers(path)
    wanted: dict[tuple[str, str], list[Key]] = {}
    for key, item in old.items():
        read_as = Counter(leaned.path for leaned in item.evidence.assumed)
        for leaned in item.evidence.assumed:
            # silence that is read as two values at once stands for all between them
            one = read_as[leaned.path] == 1
            if one and stated(leaned) and leaned.path not in spec.values:
                wanted.setdefault((leaned.path, leaned.text), []).append(key)
    dice = random.Random(path.name)
    tried = 0
    for name, text in dice.sample(sorted(wanted), len(wanted)):
        loaded = spec.with_values({name: text})
        if loaded.spec is None:  # such as a resistance of zero, which nobody can state
            continue
        new = answers_of(loaded.spec)
        tried += 1
        for key in wanted[name, text]:
            assert near(old[key].evidence.figure, new[key].evidence.figure, 1e-9), (key, name, text)
        if tried == tries(4, swept=12):
            break
    assert tried or path.name in SAYS_ALL


# Order


def turned(data: Any) -> Any:
    """The same mappings with their keys in reverse order; lists keep theirs."""
    if isinstance(data, dict):
        return {name: turned(data[name]) for name in reversed(data)}
    return [turned(item) for item in data] if isinstance(data, list) else data


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.name.split(".")[0])
def test_the_order_of_keys_and_channels_does_not_matter(path: Path) -> None:
    spec, old = sample(path), answers(path)
    other = spec_of(json.dumps(turned(spec.data), ensure_ascii=False), path.name)
    assert other.channels == spec.channels[::-1]
    new = answers_of(other)
    assert new.keys() == old.keys()
    for key, item in old.items():
        assert (new[key].status, new[key].severity) == (item.status, item.severity), key
        assert near(item.evidence.figure, new[key].evidence.figure, 1e-9), key


# What does not concern a check


def inputs_of(check: Check) -> set[str]:
    paths = {item.path for item in check.inputs.values() if isinstance(item, Input)}
    return paths | set(check.applies) | set(check.topic)


@cache
def reach(name: str) -> frozenset[str]:
    """Every leaf, section and quantity that a check can possibly look at, by its file."""
    catalogue = load()
    entry = catalogue.entry(name)
    if entry is None:
        return frozenset()
    found: set[str] = set()
    waiting = list(inputs_of(entry.check))
    while waiting:
        path = waiting.pop().removeprefix("all ").partition(":")[0]
        if path in found:
            continue
        found.add(path)
        quantity = catalogue.derived.get(path)
        if quantity is None:
            continue
        waiting += [quantity.stated_at] if quantity.stated_at else []
        for way in quantity.ways:
            waiting += way.when
            waiting += [x.path for x in way.inputs.values() if not isinstance(x, Constant)]
    return frozenset(found)


@cache
def topic_sections(name: str) -> tuple[str, ...]:
    """How the paths begin that stand in the section of one of a check's topics."""
    entry = load().entry(name)
    topics = entry.check.topic if entry else ()
    sections = {topic.removeprefix("all ").rpartition(".")[0] for topic in topics}
    return tuple(f"{section}." for section in sections if section)


def concerns(name: str, path: str) -> bool:
    """Whether a check can look at a leaf, at a section above it or at a part below one.

    It also asks about what its section holds as soon as that section says anything, and about
    its topic as soon as anything stands in the topic's section, however deep.
    """
    section = path.rpartition(".")[0]
    if path.startswith(topic_sections(name)):
        return True
    return any(
        path == known
        or path.startswith((f"{known}.", f"{known}["))
        or known.startswith(f"{path}.")
        or (section != "" and section == known.rpartition(".")[0])
        for known in reach(name)
    )


def as_data(example: str) -> object:
    """An example as plain data: ``{min: 40 ns, typ: 45 ns}`` is a mapping."""
    if not example.startswith("{"):
        return example
    return dict(part.strip().split(": ") for part in example.strip("{}").split(","))


@pytest.mark.slow
@settled(tries(12, swept=40))
@given(st.sampled_from(SAMPLES), st.integers(0, 2**32))
def test_what_is_added_leaves_the_answers_that_it_does_not_concern(path: Path, seed: int) -> None:
    dice = random.Random(seed)
    spec, old = sample(path), answers(path)
    silent = [
        (f"channels.{dice.choice(spec.channels)}.{name}" if is_channel_path(name) else name)
        for name, field in FIELDS.items()
        if field.model is None and "[]" not in name and field.example and field.kind != "list"
    ]
    fitting = [
        name
        for name in silent
        if name not in spec.values
        and not any(name.startswith(f"{part}.") for part in spec.none)
        and local_path(name).split(".")[0] not in ("title", "revision", "milestone")
    ]
    name = dice.choice(fitting)
    loaded = spec.with_values({name: as_data(field_of(name).example)})
    assert loaded.spec is not None, (name, loaded.refusals)
    new = answers_of(loaded.spec)
    kept = [key for key in old if not concerns(key[0], local_path(name))]
    assert len(kept) > len(old) / 4  # heat hangs on all of stage and filter, and much on heat
    same(old, new, iter(kept))


# Anchors and merge keys

MERGED = """
amplifier_spec: 1
supply: {source: dc-source, rails: single, v_rail: &rail 24 V ± 5 %}
channels:
  left: &channel
    rated_power: 60 W
    rated_load: 8 ohm
    output_stage: &stage {topology: full-bridge, devices: discrete, device: {v_dss: 40 V}}
    filter: {type: lc, inductor: &coil {l: 15 uH ± 20 %, i_sat: 9 A}}
  right:
    <<: *channel
    rated_power: 20 W
  rear:
    <<: [{band: 100 Hz .. 5 kHz}, *channel]
    output_stage: {<<: *stage, device: {v_dss: 60 V}}
    filter: {type: lc, inductor: {<<: *coil, i_sat: 4 A}}
battery: {charger: {v: *rail}}
"""
BY_HAND = """
amplifier_spec: 1
supply: {source: dc-source, rails: single, v_rail: 24 V ± 5 %}
channels:
  left:
    rated_power: 60 W
    rated_load: 8 ohm
    output_stage: {topology: full-bridge, devices: discrete, device: {v_dss: 40 V}}
    filter: {type: lc, inductor: {l: 15 uH ± 20 %, i_sat: 9 A}}
  right:
    rated_power: 20 W
    rated_load: 8 ohm
    output_stage: {topology: full-bridge, devices: discrete, device: {v_dss: 40 V}}
    filter: {type: lc, inductor: {l: 15 uH ± 20 %, i_sat: 9 A}}
  rear:
    band: 100 Hz .. 5 kHz
    rated_power: 60 W
    rated_load: 8 ohm
    output_stage: {topology: full-bridge, devices: discrete, device: {v_dss: 60 V}}
    filter: {type: lc, inductor: {l: 15 uH ± 20 %, i_sat: 4 A}}
battery: {charger: {v: 24 V ± 5 %}}
"""


def test_merge_keys_expanded_by_hand_give_the_same_answers() -> None:
    merged, by_hand = answers_of(spec_of(MERGED)), answers_of(spec_of(BY_HAND))
    assert merged.keys() == by_hand.keys()
    assert any(item.status is Status.FINDING for item in merged.values())
    same(merged, by_hand, iter(merged))


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.name.split(".")[0])
def test_samples_without_their_anchors_give_the_same_answers(path: Path) -> None:
    spec, old = sample(path), answers(path)
    text = json.dumps(spec.data, ensure_ascii=False)
    assert "*channel" not in text
    new = answers_of(spec_of(text, path.name))
    assert new.keys() == old.keys()
    same(old, new, iter(old))
