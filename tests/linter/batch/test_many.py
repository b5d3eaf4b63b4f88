"""Many specs by any executor: order, equality with one by one, refusals, killed workers."""

import os
import signal
import time
from collections.abc import Callable, Iterator
from concurrent.futures import Executor, Future, ProcessPoolExecutor, ThreadPoolExecutor
from datetime import date
from functools import partial
from pathlib import Path
from threading import Thread
from typing import Any

import pytest

from ampreview.linter.batch import work
from ampreview.linter.batch.items import Item, Text, Variant, from_data
from ampreview.linter.batch.many import review_many
from ampreview.linter.batch.result import Result
from ampreview.linter.batch.work import Order
from ampreview.linter.judging.criteria import Terms
from ampreview.linter.judging.review import Review

DAY = Terms(day=date(2030, 1, 1))
ORDER = Order("concept", None, DAY, margins=("bulk-capacitor-voltage",))
WHOLE = Order("concept", None, DAY, whole=True)
HOUSE = """amplifier_house: 1
checks_off: {emission-class: keyed}
defaults: [{path: limiter.v_peak, value: 20 V, reason: ours}]
"""
BOARD = """amplifier_spec: 1
title: board %d
supply: {v_rail: %s}
channels:
  main:
    rated_power: 20 W
    rated_load: 8 ohm
    output_stage: {topology: full-bridge, devices: integrated}
"""


class Late(Executor):
    """An executor of the caller's own, which works later and backwards."""

    def __init__(self) -> None:
        self.waiting: list[Callable[[], None]] = []
        self.most = 0

    def submit(self, fn: Any, /, *args: Any, **kwargs: Any) -> Future[Any]:
        future: Future[Any] = Future()

        def work() -> None:
            if future.set_running_or_notify_cancel():
                future.set_result(fn(*args, **kwargs))

        self.waiting.append(work)
        self.most = max(self.most, len(self.waiting))
        Thread(target=self._work, daemon=True).start()
        return future

    def _work(self) -> None:
        time.sleep(0.1)
        self.waiting.pop()()


@pytest.fixture
def paths(tmp_path: Path) -> list[Path]:
    """Four specs of which the third is refused, with a house file."""
    (tmp_path / "house.ampreview.yaml").write_text(HOUSE)
    found = []
    for number in range(4):
        path = tmp_path / f"board-{number}.amp.yaml"
        path.write_text(BOARD % (number, "24" if number == 2 else f"{20 + number} V"))
        found.append(path)
    return found


EXECUTORS = [
    pytest.param(lambda: ThreadPoolExecutor(3), id="threads"),
    pytest.param(lambda: ProcessPoolExecutor(2), id="processes"),
    pytest.param(Late, id="of the caller's own"),
]


@pytest.mark.parametrize("make", EXECUTORS)
def test_any_executor_gives_what_one_by_one_gives(
    paths: list[Path], make: Callable[[], Executor]
) -> None:
    alone = list(review_many(paths, None, ORDER))
    assert [item.verdict == "not assessed" for item in alone] == [False, False, True, False]
    with make() as executor:
        assert list(review_many(paths, executor, ORDER, together=2)) == alone
    with make() as executor:
        ready = review_many(paths, executor, ORDER, in_order=False)
        assert sorted(ready, key=lambda item: item.number) == alone


def test_a_result_is_small_and_plain(paths: list[Path]) -> None:
    found, *_ = review_many(paths[3:], None, Order("production"))
    assert (found.number, found.name, found.verdict) == (0, str(paths[3]), "held")
    assert found.counts["open"] > 0 and found.holding and found.outcome is None


def test_margins_are_those_asked_for() -> None:
    """A capacitor rated 35 V on 28 V is used to 80 %: 28 / 35 by hand."""
    text = (BOARD % (1, "28 V")).replace("28 V}", "28 V, bulk: {v_rated: 35 V}}")
    (found,) = review_many([Text("board", text)], None, Order(margins=("bulk-capacitor-voltage",)))
    (margin,) = found.margins
    assert (margin.subject, margin.figure) == ("product", pytest.approx(28 / 35))
    assert margin.limit is not None and margin.distance is not None
    assert margin.distance == pytest.approx(margin.limit - 28 / 35)


@pytest.mark.parametrize("make", EXECUTORS)
def test_whole_reviews_come_on_request(paths: list[Path], make: Callable[[], Executor]) -> None:
    alone = [item.outcome for item in review_many(paths[:3], None, WHOLE)]
    with make() as executor:
        together = [item.outcome for item in review_many(paths[:3], executor, WHOLE)]
    assert isinstance(alone[0], Review) and alone[2] == together[2]
    for one, other in zip(alone[:2], together[:2], strict=True):
        assert isinstance(one, Review) and isinstance(other, Review)
        assert (one.findings, one.verdict) == (other.findings, other.verdict)
        assert one.spec.title == other.spec.title
        assert one.catalogue is other.catalogue
        mine, theirs = one.criteria.house, other.criteria.house
        assert mine is not None and theirs is not None
        assert (mine.text, mine.changes) == (theirs.text, theirs.changes)
        assert one.spec.defaults == other.spec.defaults


def test_files_texts_data_and_variants_are_alike(paths: list[Path]) -> None:
    data = {
        "amplifier_spec": 1,
        "title": "board 1",
        "supply": {"v_rail": "21 V"},
        "channels": {
            "main": {
                "rated_power": "20 W",
                "rated_load": "8 ohm",
                "output_stage": {"topology": "full-bridge", "devices": "integrated"},
            }
        },
    }
    text = Text("board", BOARD % (1, "21 V"))
    items: list[Item] = [
        text,
        from_data("board", data),
        Variant(Text("board", BOARD % (1, "40 V")), {"supply.v_rail": "21 V"}),
    ]
    found = [(x.verdict, x.counts, x.holding) for x in review_many(items, None, ORDER)]
    assert found[0] == found[1] == found[2]
    housed = Order("concept", None, Terms(house=paths[0].parent / "house.ampreview.yaml"))
    of_file, of_text = review_many([paths[1], text], None, housed)
    assert (of_file.counts, of_file.holding) == (of_text.counts, of_text.holding)


def test_few_are_under_way_at_a_time_and_items_are_taken_as_they_are_needed() -> None:
    taken: list[int] = []

    def endless() -> Iterator[Text]:
        while True:
            taken.append(len(taken))
            yield Text("refused", "nothing")

    executor = Late()
    results = review_many(endless(), executor, ORDER, under_way=4)
    assert [next(results).number for _ in range(9)] == list(range(9))
    assert executor.most <= 4
    assert len(taken) <= 9 + 4


def _killed_by(word: str, item: Any, order: Order) -> Any:
    """In the worker: a review that the system kills."""
    if word in str(item):
        os.kill(os.getpid(), signal.SIGKILL)
    return (work.Refusal(work.Place(str(item), 1, 1), "read", "nothing"),)


@pytest.mark.parametrize("in_order", [True, False])
def test_a_killed_worker_costs_its_item_and_no_other(
    paths: list[Path], monkeypatch: pytest.MonkeyPatch, in_order: bool
) -> None:
    monkeypatch.setattr(work, "review_item", partial(_killed_by, "board-1"))
    many = [paths[0], paths[1], *paths[2:] * 4]
    fresh = partial(ProcessPoolExecutor, 1)
    with fresh() as executor:
        given = review_many(many, executor, under_way=3, in_order=in_order, fresh=fresh)
        found = sorted(given, key=lambda item: item.number)
    assert [item.name for item in found] == [str(path) for path in many]
    told = [item.problems[0].partition(";")[0] for item in found]
    assert "was killed" in told.pop(1)
    assert set(told) == {"read"}
    assert not any(item.released for item in found)


def test_a_fault_costs_its_item_and_no_other(
    paths: list[Path], monkeypatch: pytest.MonkeyPatch
) -> None:
    whole = work.review_item

    def broken(item: Any, order: Order) -> Any:
        if item == paths[1]:
            raise RuntimeError("out of order")
        return whole(item, order)

    monkeypatch.setattr(work, "review_item", broken)
    with ThreadPoolExecutor(1) as executor:
        found = list(review_many(paths[:3], executor, ORDER))
    assert "RuntimeError: out of order" in found[1].problems[0]
    assert found[0].verdict != "not assessed"


def test_nothing_to_do_gives_nothing() -> None:
    nothing: list[Result] = list(review_many([], Late(), ORDER))
    assert nothing == []
