"""Variants of a base: the same as when each is reviewed from its own text, whatever the order.

The expectation comes from the long way round: the values written into the data of the spec, and
that reviewed as any file is.
"""

import random
from pathlib import Path

import pytest

from ampreview.linter.batch.items import Item, Text, Variant
from ampreview.linter.batch.many import review_many
from ampreview.linter.batch.variants import Point
from ampreview.linter.batch.work import Order
from ampreview.linter.check import MILESTONES
from ampreview.linter.judging.criteria import TODAY
from ampreview.linter.judging.review import Review, review
from ampreview.linter.reading.loading import Spec, load_file

SAMPLES = Path(__file__).parents[3] / "sample_specs"
GRID = {
    "choir-portable": {
        "channels.left.output_stage.over_current.i_trip": ("9 A", "16 A"),
        "channels.right.loudspeaker.p_rated": ("20 W", "80 W"),
        "protection.fuse.i_rated": ("4 A", "15 A"),
        "claims.run_time": ("6 h", "{value: 60 h, from: estimate}"),
    },
    "foyer-proposal": {
        "channels.left.gate_drive.dead_time": ("20 ns", "90 ns"),
        "supply.bulk.v_rated": ("25 V", "50 V"),
        "battery.connection": ("keyed", "reversible"),
    },
}


def spec_of(name: str) -> Spec:
    found = load_file(SAMPLES / f"{name}.amp.yaml").spec
    assert found is not None
    return found


def told(found: Review) -> tuple[object, ...]:
    answers = [(x.check, x.subject, x.status, x.severity, x.message) for x in found.findings]
    return found.verdict.released, answers, [x.evidence.figure for x in found.findings]


@pytest.mark.parametrize("name", GRID)
def test_a_point_gives_what_a_review_from_nothing_gives(name: str) -> None:
    spec, dice = spec_of(name), random.Random(name)
    numbers = {path: two for path, two in GRID[name].items() if two[0][0].isdigit()}
    first = spec.with_values({path: two[0] for path, two in numbers.items()}).spec
    assert first is not None
    point = Point(first, TODAY, "prototype", None)
    for whole in (False, True):
        changes = {path: dice.choice(two) for path, two in numbers.items() if "{" not in two[1]}
        after = first.with_values(changes).spec
        assert after is not None
        found = point.outcome(changes, whole)
        assert isinstance(found, Review)
        assert told(found) == told(review(after, "prototype"))


def test_any_order_gives_the_same_results() -> None:
    base = Text("choir", spec_of("choir-portable").text)
    light = dict(list(GRID["choir-portable"].items())[1:])
    items: list[Item] = [
        Variant(base, dict(zip(light, (a, b, c), strict=True)))
        for a in light["channels.right.loudspeaker.p_rated"]
        for b in light["protection.fuse.i_rated"]
        for c in ("6 h", "60 h")
    ]
    order = Order("prototype", margins=("claimed-run-time",))
    forth = list(review_many(items, None, order))
    back = list(review_many(items[::-1], None, order))[::-1]
    assert [(x.verdict, x.counts, x.holding, x.margins) for x in forth] == [
        (x.verdict, x.counts, x.holding, x.margins) for x in back
    ]
    assert len({(x.verdict, x.holding) for x in forth}) > 2


def test_a_value_that_cannot_be_is_refused_alone() -> None:
    base = Text("choir", spec_of("choir-portable").text)
    items = [Variant(base, {"protection.fuse.i_rated": text}) for text in ("15", "15 A")]
    refused, fine = review_many(items, None, Order(MILESTONES[0]))
    assert refused.verdict == "not assessed" and "15" in refused.problems[0]
    assert fine.verdict == "released"
