"""Many specs in one go, by whatever executor of ``concurrent.futures`` the caller has.

Only items and terms go to a worker and only small results come back.  Few are under way at a
time, so that memory stays flat; a worker that is killed costs the item that killed it.
"""

from collections import deque
from collections.abc import Callable, Iterable, Iterator
from concurrent.futures import (
    FIRST_COMPLETED,
    BrokenExecutor,
    Executor,
    Future,
    ProcessPoolExecutor,
    wait,
)
from itertools import islice

from .items import Item
from .result import Result
from .work import (
    PLAIN,
    Numbered,
    Order,
    light_results_of,
    made_whole,
    not_assessed,
    one_result,
)

UNDER_WAY = 64
KILLED = "the process that reviewed it was killed, or ran out of memory, also when it was alone"

Group = tuple[Numbered, ...]
Submitted = Future[list[Result]]


def review_many(
    items: Iterable[Item],
    executor: Executor | None = None,
    order: Order = PLAIN,
    *,
    under_way: int = UNDER_WAY,
    together: int = 1,
    in_order: bool = True,
    fresh: Callable[[], Executor] = ProcessPoolExecutor,
) -> Iterator[Result]:
    """Review each item: in this thread, or by an executor of threads, processes or machines.

    under_way: tasks that are handed out and not yet given back; together: items in one task;
    in_order: give the results in the order of the items, or as they are ready.  fresh: makes
    what takes the place of an executor that broke.  What was under way then is tried again,
    each item alone; one that breaks its process again is not assessed.
    """
    numbered = enumerate(items)
    if executor is None:
        yield from (one_result(number, item, order) for number, item in numbered)
        return
    groups = iter(lambda: tuple(islice(numbered, max(together, 1))), ())
    crew = _Crew(executor, order, fresh)
    flow = _in_order if in_order else _as_ready
    try:
        for result, item in flow(crew, groups, max(under_way, 1)):
            yield made_whole(result, item, order)
    finally:
        crew.close()


def _in_order(
    crew: "_Crew", groups: Iterator[Group], under_way: int
) -> Iterator[tuple[Result, Item]]:
    waiting: deque[tuple[Submitted, Group]] = deque()
    for group in groups:
        waiting.append((crew.submit(group), group))
        if len(waiting) >= under_way:
            yield from crew.results(*waiting.popleft())
    while waiting:
        yield from crew.results(*waiting.popleft())


def _as_ready(
    crew: "_Crew", groups: Iterator[Group], under_way: int
) -> Iterator[tuple[Result, Item]]:
    waiting: dict[Submitted, Group] = {}
    more = True
    while more or waiting:
        for group in islice(groups, under_way - len(waiting)):
            waiting[crew.submit(group)] = group
        more = len(waiting) >= under_way
        for future in wait(waiting, return_when=FIRST_COMPLETED).done:
            yield from crew.results(future, waiting.pop(future))


class _Crew:
    """An executor, what takes its place when it breaks, and one process to try items alone."""

    def __init__(self, executor: Executor, order: Order, fresh: Callable[[], Executor]) -> None:
        self.order = order
        self._executor = executor
        self._fresh = fresh
        self._own: list[Executor] = []
        self._single: ProcessPoolExecutor | None = None
        self._open: set[Submitted] = set()

    def submit(self, group: Group) -> Submitted:
        """Hand out some items; a broken executor is replaced first."""
        try:
            future = self._executor.submit(light_results_of, group, self.order)
        except BrokenExecutor:
            self._executor = self._fresh()
            self._own.append(self._executor)
            future = self._executor.submit(light_results_of, group, self.order)
        self._open.add(future)
        return future

    def results(self, future: Submitted, group: Group) -> list[tuple[Result, Item]]:
        """What came of some items, each with its item; what broke is tried again, one by one."""
        self._open.discard(future)
        items = [item for _, item in group]
        try:
            found = future.result()
        except BrokenExecutor:
            found = [self._alone(number, item) for number, item in group]
        except Exception as error:  # the executor's own: the worker tells of its faults itself
            why = f"the executor gave it up: {type(error).__name__}: {error}"
            found = [not_assessed(number, item, why) for number, item in group]
        return list(zip(found, items, strict=True))

    def _alone(self, number: int, item: Item) -> Result:
        if self._single is None:
            self._single = ProcessPoolExecutor(1)
        try:
            return self._single.submit(light_results_of, ((number, item),), self.order).result()[0]
        except BrokenExecutor:
            self._single.shutdown(wait=False)
            self._single = None
            return not_assessed(number, item, KILLED)

    def close(self) -> None:
        """End what was begun here; what is still under way elsewhere is called off."""
        for future in self._open:
            future.cancel()
        for pool in (*self._own, *([self._single] if self._single else [])):
            pool.shutdown(wait=False, cancel_futures=True)
