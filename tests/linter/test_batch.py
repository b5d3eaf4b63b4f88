"""Many specs by any executor: order, equality with one by one, refusals, errors, memory."""

import threading
from collections.abc import Callable, Iterator
from concurrent.futures import Executor, Future, ProcessPoolExecutor, ThreadPoolExecutor
from datetime import date
from pathlib import Path
from typing import Any

import pytest

from ampreview.linter import batch
from ampreview.linter.batch import UNDER_WAY, Order, review_many
from ampreview.linter.judging.criteria import Terms
from ampreview.linter.judging.review import Review

ORDER = Order("prototype", None, Terms(day=date(2030, 1, 1)))
HOUSE = """amplifier_house: 1
checks_off: {stored-voltage-service: keyed}
defaults: [{path: limiter.v_peak, value: 20 V, reason: ours}]
"""


class Reversed(Executor):
    """An executor of the caller's own that does the work late and backwards."""

    def __init__(self) -> None:
        self.waiting: list[Callable[[], None]] = []
        self.most = 0

    def submit(self, fn: Any, /, *args: Any, **kwargs: Any) -> Future[Any]:
        future = _Lazy(self)
        self.waiting.append(lambda: future.set_result(fn(*args, **kwargs)))
        self.most = max(self.most, len(self.waiting))
        return future


class _Lazy(Future[Any]):
    def __init__(self, pool: Reversed) -> None:
        super().__init__()
        self.pool = pool

    def result(self, timeout: float | None = None) -> Any:
        while self.pool.waiting:
            self.pool.waiting.pop()()
        return super().result(timeout)


@pytest.fixture
def paths(tmp_path: Path) -> list[Path]:
    """Five specs of which the third is refused, with a house file."""
    (tmp_path / "house.ampreview.yaml").write_text(HOUSE)
    found = []
    for number in range(5):
        path = tmp_path / f"board-{number}.amp.yaml"
        rail = "24" if number == 2 else f"{20 + number} V"
        path.write_text(
            f"amplifier_spec: 1\ntitle: board {number}\nsupply: {{v_rail: {rail}}}\n"
            "channels:\n  main:\n    rated_power: 20 W\n    rated_load: 8 ohm\n"
            "    output_stage: {topology: full-bridge, devices: integrated}\n"
        )
        found.append(path)
    return found


EXECUTORS = [
    pytest.param(lambda: ThreadPoolExecutor(3), id="threads"),
    pytest.param(lambda: ProcessPoolExecutor(2), id="processes"),
    pytest.param(Reversed, id="of the caller's own"),
]


@pytest.mark.parametrize("make", EXECUTORS)
def test_any_executor_gives_what_one_by_one_gives(
    paths: list[Path], make: Callable[[], Executor]
) -> None:
    alone = list(review_many(paths, None, ORDER))
    with make() as executor:
        together = list(review_many(paths, executor, ORDER))
    assert [isinstance(item, Review) for item in together] == [True, True, False, True, True]
    for one, other in zip(alone, together, strict=True):
        if isinstance(one, Review) and isinstance(other, Review):
            assert (one.findings, one.verdict) == (other.findings, other.verdict)
            assert one.spec.title == other.spec.title
            assert one.catalogue is other.catalogue
            assert one.criteria == other.criteria
            assert one.spec.defaults == other.spec.defaults
        else:
            assert one == other


def test_outcomes_come_in_the_order_of_the_paths(paths: list[Path]) -> None:
    backwards = list(reversed(paths))
    found = list(review_many(backwards, Reversed(), ORDER))
    titles = [item.spec.title for item in found if isinstance(item, Review)]
    assert titles == ["board 4", "board 3", "board 1", "board 0"]


def test_few_are_under_way_at_a_time(paths: list[Path]) -> None:
    executor = Reversed()
    many = [paths[2]] * (3 * UNDER_WAY)
    assert sum(1 for _ in review_many(many, executor, ORDER)) == len(many)
    assert executor.most == UNDER_WAY


def test_paths_are_taken_as_they_are_needed(paths: list[Path]) -> None:
    taken: list[Path] = []

    def endless() -> Iterator[Path]:
        while True:
            taken.append(paths[2])
            yield paths[2]

    next(review_many(endless(), Reversed(), ORDER))
    assert len(taken) == UNDER_WAY


def test_remedies_are_looked_for_in_the_worker(
    paths: list[Path], monkeypatch: pytest.MonkeyPatch
) -> None:
    seen: set[str] = set()

    def marked(found: Review, only_holding: bool, checks: tuple[str, ...]) -> Review:
        assert not only_holding
        assert not checks
        seen.add(threading.current_thread().name)
        return found

    monkeypatch.setattr(batch, "with_remedies", marked)
    order = Order("prototype", None, ORDER.terms, remedies="all")
    with ThreadPoolExecutor(1, thread_name_prefix="worker") as executor:
        list(review_many(paths[:1], executor, order))
    assert seen == {"worker_0"}


def test_what_a_worker_raises_is_raised_here(
    paths: list[Path], monkeypatch: pytest.MonkeyPatch
) -> None:
    def broken(*_: Any) -> Any:
        raise RuntimeError("out of order")

    monkeypatch.setattr(batch, "review_file", broken)
    with ThreadPoolExecutor(1) as executor, pytest.raises(RuntimeError, match="out of order"):
        list(review_many(paths, executor, ORDER))


def test_nothing_to_do_gives_nothing() -> None:
    assert list(review_many([], Reversed(), ORDER)) == []
