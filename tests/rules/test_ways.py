"""A way that leaves something out says so: it is a floor, an assumption, or another design.

A later way to a quantity that takes fewer inputs than an earlier one, for designs that the earlier
one concerns as well, computes less.  Where it assumes nothing, the table says why it is whole.
"""

import pytest

from ampreview.linter.check import Input, Way
from ampreview.linter.evaluation.catalogue import load

STATED = "says whether a value is stated: the way that leaves it out is the answer no"
TIGHTER = "the tighter of two statements; where one is made it is the whole of what is known"
NOT_FITTED = "the part that is left out is not fitted, or adds nothing in these designs"
HELD = "a direct source is a bench supply or its like, held at its terminals: nothing sags"
NO_BAND = "where no band is claimed nothing of it can be lost"
SAME = "the value itself follows in another way, nothing is left out of a sum"
WHOLE = {
    ("c_discharged", 1): NOT_FITTED,
    ("c_total", 2): NOT_FITTED,
    ("c_total_unbiased", 2): NOT_FITTED,
    ("p_gate_other", 2): NOT_FITTED,
    ("sun", 2): NOT_FITTED,
    ("r_sink", 2): NOT_FITTED,
    ("f_converter", 1): NOT_FITTED,
    ("detector_independent", 1): SAME,
    ("heatsink", 1): SAME,
    ("heatsink_to_touch", 1): SAME,
    ("package_share", 1): SAME,
    ("package_share", 2): SAME,
    ("q_gd_swing", 1): SAME,
    ("r_e_at_most", 1): SAME,
    ("sink_path", 1): SAME,
    ("v_cell_limit", 3): SAME,
    ("z_load_stated", 2): SAME,
    ("v_ideal_usual", 3): HELD,
    ("resonance_kept_out", 1): NO_BAND,
    ("i_lead_rated", 1): TIGHTER,
    ("i_surge_path", 1): TIGHTER,
    ("i_surge_path", 2): TIGHTER,
    ("p_dc_lasting", 2): TIGHTER,
    ("p_supply_max", 1): TIGHTER,
    ("p_supply_max", 2): TIGHTER,
    ("t_beyond_chemistry", 1): TIGHTER,
    ("t_junction_alive", 1): TIGHTER,
    ("t_beyond_chemistry", 2): TIGHTER,
    ("c_across_dielectric", 1): STATED,
    ("c_ground_dielectric", 1): STATED,
    ("dead_time_stated", 1): STATED,
    ("edge_stated", 1): STATED,
    ("heat_ended", 1): STATED,
    ("heat_known", 1): STATED,
    ("i_q_stated", 1): STATED,
    ("box_known", 1): STATED,
    ("ip_claim", 1): STATED,
    ("port_length_stated", 1): STATED,
    ("ip_in_rain", 1): "no code is stated, and nothing is claimed where there is no box",
    ("ip_in_rain", 2): "no code is stated, and nothing is claimed of a box with vents",
    ("r_ds_on_stated", 1): STATED,
    ("rating_lasts", 1): STATED,
    ("grounded", 2): STATED,
    ("source_sags", 2): STATED,
    ("supply_rated", 1): STATED,
    ("travel_stated", 2): STATED,
    ("trip_stated", 1): STATED,
    ("thd_allowed", 2): "nothing is claimed: the limit of practice is the whole",
}


def leaving_out() -> list[tuple[str, int]]:
    found = []
    for quantity in load().derived.values():
        for number, way in enumerate(quantity.ways):
            if way.assumes is None and any(_less(way, other) for other in quantity.ways[:number]):
                found.append((quantity.name, number))
    return found


def _less(way: Way, other: Way) -> bool:
    """Whether a way takes fewer inputs than another one in designs that both concern."""
    return _paths(way) < _paths(other) and not _apart(way, other)


def _paths(way: Way) -> frozenset[str]:
    return frozenset(item.path for item in way.inputs.values() if isinstance(item, Input))


def _apart(way: Way, other: Way) -> bool:
    shared = way.when.keys() & other.when.keys()
    return any(not _words(way, path) & _words(other, path) for path in shared)


def _words(way: Way, path: str) -> set[str]:
    words = way.when[path]
    return {words} if isinstance(words, str) else set(words)


@pytest.mark.parametrize(("name", "number"), leaving_out())
def test_a_way_that_takes_fewer_inputs_is_a_floor_or_says_why_it_is_whole(
    name: str, number: int
) -> None:
    assert (name, number) in WHOLE, (
        f"way {number} to {name} leaves out what an earlier way takes: give it"
        ' assumes=Assumption(None, "floor", ...), or add a row with the reason to WHOLE'
    )


def test_the_table_has_no_row_too_many() -> None:
    assert set(leaving_out()) == set(WHOLE)
