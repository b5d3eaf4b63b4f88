"""A pack that is the rail is changed by its cells in series."""

from ampreview.linter.changes.stages import with_remedies
from ampreview.linter.judging.review import review
from ampreview.linter.reading.loading import load_text

FOUR_CELLS = """
amplifier_spec: 1
milestone: concept
supply: {source: battery, rails: single}
battery: {chemistry: li-ion, series: 4, cell: {v_charge: 4.2 V}}
channels:
  main:
    output_stage:
      topology: full-bridge
      devices: integrated
      device: {v_supply: {max: 14.4 V}, v_supply_abs: 20 V}
"""


def test_one_cell_less_for_a_part_of_14_4_volt() -> None:
    """4 x 4.2 V is 16.8 V; 3 x 4.2 V is 12.6 V, within 97 % of 14.4 V."""
    loaded = load_text(FOUR_CELLS, "four cells")
    assert loaded.spec is not None, loaded.refusals
    found = with_remedies(review(loaded.spec)).failing()
    item = next(x for x in found if x.check == "supply-above-recommended")
    assert (("battery.series", "3"),) in [remedy.changes for remedy in item.advice.remedies]
