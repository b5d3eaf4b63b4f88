"""A cluster's client as the executor: a local one stands for machines elsewhere.

Two hundred variants there give what they give in one thread, so that nothing but plain items
and small results has to travel.
"""

import pytest

from ampreview.linter.batch.items import Item, Text, Variant
from ampreview.linter.batch.many import review_many
from ampreview.linter.batch.work import Order

BOARD = """amplifier_spec: 1
supply: {v_rail: 28 V, bulk: {v_rated: 35 V}}
channels:
  main:
    rated_power: 20 W
    rated_load: 8 ohm
    output_stage: {topology: full-bridge, devices: integrated}
"""


@pytest.mark.slow
def test_a_local_cluster_gives_what_one_thread_gives() -> None:
    distributed = pytest.importorskip("distributed")
    items: list[Item] = [
        Variant(Text("board", BOARD), {"supply.bulk.v_rated": f"{number / 10} V"})
        for number in range(200, 400)
    ]
    order = Order("concept", margins=("bulk-capacitor-voltage",))
    settings = {"processes": True, "dashboard_address": None, "threads_per_worker": 1}
    with (
        distributed.LocalCluster(n_workers=2, **settings) as cluster,
        distributed.Client(cluster) as client,
    ):
        there = client.get_executor(pure=False)
        found = list(review_many(items, there, order, together=25, under_way=4))
        ready = review_many(items[:50], there, order, together=10, in_order=False)
        assert sorted(ready, key=lambda item: item.number) == found[:50]
    assert len({item.verdict for item in found}) == 2
    assert found == list(review_many(items, None, order))
