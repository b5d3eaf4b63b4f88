"""Channels that state the same get the same answers, each named in its place.

The expectation comes from the long way round: every channel judged for itself, as if no other
stated the same.
"""

import re
from dataclasses import replace
from pathlib import Path

import pytest

from ampreview.linter.evaluation.catalogue import load
from ampreview.linter.evaluation.engine import Assessment
from ampreview.linter.evaluation.node import Computed, LeafNode
from ampreview.linter.evaluation.tolerance import root_sum_square, worst_case
from ampreview.linter.evaluation.twins import Leaf, Twins
from ampreview.linter.finding import Finding
from ampreview.linter.quantities.quantity import parse
from ampreview.linter.reading.loading import Spec, load_text

SAMPLES = Path(__file__).parents[3] / "sample_specs"
STEREO = (
    "choir-portable",
    "choir-portable-faulty",
    "foyer-proposal",
    "bird-call-pocket",
    "bird-call-pocket-faulty",
)


def load_spec(text: str) -> Spec:
    loaded = load_text(text, "twins.amp.yaml")
    assert loaded.spec is not None, loaded.refusals
    return loaded.spec


def sample(name: str) -> str:
    return (SAMPLES / f"{name}.amp.yaml").read_text(encoding="utf-8")


def answers(spec: Spec) -> dict[tuple[str, str], Finding]:
    run = Assessment(spec, load(), "prototype")
    return {(item.check, item.subject): item for item in run.findings()}


def answers_one_by_one(spec: Spec, monkeypatch: pytest.MonkeyPatch) -> dict[object, Finding]:
    with monkeypatch.context() as patch:
        patch.setattr(Twins, "groups", {})
        return dict(answers(spec).items())


def with_channels(text: str, names: list[str]) -> str:
    """A sample of two equal channels with as many as there are names."""
    first, second = re.findall(r"^  ([\w-]+):(?: &\w+$| \*\w+$)", text, re.M)
    anchor = re.search(rf"^  {first}: &(\w+)$", text, re.M)
    assert anchor is not None
    others = "".join(f"  {name}: *{anchor[1]}\n" for name in names[1:])
    text = text.replace(f"  {second}: *{anchor[1]}\n", others)
    return text.replace(f"  {first}: &", f"  {names[0]}: &")


@pytest.mark.parametrize("name", STEREO)
def test_what_is_carried_over_is_what_each_channel_gets_for_itself(
    name: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    spec = load_spec(sample(name))
    assert Twins(spec).groups
    assert answers(spec) == answers_one_by_one(spec, monkeypatch)


def test_among_five_channels_each_gets_the_figures_that_it_gets_for_itself(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """Sums of five in another order differ in their last digit."""
    spec = load_spec(with_channels(sample("choir-portable"), ["e", "a", "x10", "x9", "c"]))
    together, alone = answers(spec), answers_one_by_one(spec, monkeypatch)
    assert together.keys() == alone.keys()
    for key, item in together.items():
        other = alone[key]
        assert (item.status, item.severity, item.place) == (
            other.status,
            other.severity,
            other.place,
        ), key
        figures = (item.evidence.figure or 0.0, other.evidence.figure or 0.0)
        assert figures[0] == pytest.approx(figures[1], rel=1e-9), key
        assert {x.path: x.value for x in item.evidence.corner} == {
            x.path: x.value for x in other.evidence.corner
        }, key
        assert item.evidence.leaves == other.evidence.leaves, key


def test_equal_channels_get_equal_answers_renamed() -> None:
    spec = load_spec(with_channels(sample("choir-portable"), ["one", "two", "three"]))
    found = answers(spec)
    for (check, subject), item in found.items():
        if subject in ("two", "three"):
            first = found[check, "one"]
            assert item.message == first.message.replace("channels.one.", f"channels.{subject}.")
            assert item.evidence.figure == first.evidence.figure
            assert (item.status, item.severity) == (first.status, first.severity)


def test_written_apart_or_by_an_anchor_is_the_same() -> None:
    text = with_channels(sample("choir-portable"), ["a", "b", "c"])
    by_anchor = load_spec(text)
    body = re.search(r"^  a: &\w+\n((?:    .*\n|\n)+)", text, re.M)
    assert body is not None
    apart = load_spec(re.sub(r": \*\w+\n", f":\n{body[1]}", text))
    assert Twins(apart).groups == Twins(by_anchor).groups
    plain = [
        {key: replace(item, place=None, related=()) for key, item in answers(spec).items()}
        for spec in (by_anchor, apart)
    ]
    assert plain[0] == plain[1]


def test_another_text_makes_another_channel() -> None:
    text = """
amplifier_spec: 1
channels:
  a: {rated_power: 50 W}
  b: {rated_power: 50 W}
  c: {rated_power: 50.0 W}
  d: {rated_power: 50 W, output_stage: {topology: full-bridge}}
"""
    spec = load_spec(text)
    assert dict(Twins(spec).groups) == {"a": ("a", "b"), "b": ("a", "b")}


def three_leaves(figure: object) -> tuple[Computed, dict[str, Leaf]]:
    """A figure of the same toleranced leaf of three channels."""
    names = {name: f"channels.{name}.x" for name in "abc"}
    nodes = {n: LeafNode(p, parse("10 V ± 1 V", "V"), (), real=True) for n, p in names.items()}
    alike = {path: Leaf("a", name, "x") for name, path in names.items()}
    return Computed("figure", figure, nodes), alike  # type: ignore[arg-type]


def test_leaves_that_are_alike_still_move_apart() -> None:
    """The spread between three channels of 10 V ± 1 V is 2 V: one up, another down."""
    node, alike = three_leaves(lambda a, b, c: max(a, b, c) - min(a, b, c))
    assert worst_case(node, 1, (), alike).figure == pytest.approx(2.0)


def test_leaves_that_are_alike_are_all_at_the_corner_of_a_sum() -> None:
    node, alike = three_leaves(lambda a, b, c: a + b + c)
    extreme = worst_case(node, 1, (), alike)
    assert extreme.figure == pytest.approx(33.0)
    assert len(extreme.corner) == 3
    assert set(extreme.shares.values()) == {1 / 3}


def test_leaves_that_are_alike_add_in_squares() -> None:
    """Three independent spreads of 1 V make the root of 3."""
    node, alike = three_leaves(lambda a, b, c: a + b + c)
    assert root_sum_square(node, 1, alike) == pytest.approx(30.0 + 3.0**0.5)
