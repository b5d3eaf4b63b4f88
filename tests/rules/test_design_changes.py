"""What follows from a change of the design: by hand, and on specs where it can be seen.

The numbers are circuit theory worked out beside each row, or data of a public table.
"""

import math

import pytest

from ampreview.linter.changes.following import completed, offered
from ampreview.linter.changes.remedy import Advisor
from ampreview.linter.changes.rerun import Reruns
from ampreview.linter.declare import PRODUCT
from ampreview.linter.evaluation.catalogue import load
from ampreview.linter.judging.review import review
from ampreview.linter.quantities.quantity import parse
from ampreview.linter.reading.loading import load_text
from ampreview.rules.changes import (
    cells_in_series,
    dc_detector,
    device_class,
    inductor,
    limiter_for_loudspeaker,
    loudspeaker_for_the_power,
    output_capacitor,
    output_capacitor_where_none,
    pack_for_the_power,
    power_for_the_pack,
    supply_lead,
)

PACK = """
amplifier_spec: 1
milestone: prototype
supply: {source: battery, rails: single, bulk: {c: 4700 uF, v_rated: 25 V}}
battery:
  chemistry: li-ion
  series: 5
  parallel: 1
  cell: {capacity: 2.6 Ah, v_charge: 4.2 V, v_oc_low: 3.4 V, r_internal: 40 mohm, i_cont: 2 A,
         i_pulse: 10 A}
  charger: {v: 21 V ± 0.5 %, i: 1 A}
  protection: {i_trip: 9 A, v_cutoff: 14 V}
protection:
  under_voltage: {v_trip: 15 V}
  fuse: {i_rated: 10 A, v_dc: 32 V, i_breaking: 100 A}
wiring: {supply_lead: {length: 0.5 m, area: 0.75 mm2}}
channels:
  main:
    rated_power: 100 W
    rated_load: 4 ohm
    output_stage:
      topology: full-bridge
      devices: discrete
      efficiency: 90 %
      device: {v_dss: 30 V, r_ds_on: {typ: 10 mohm, max: 12 mohm}, q_g: {typ: 20 nC}}
    modulator: {m_max: 95 %, carrier: 400 kHz}
    filter: {type: lc, inductor: {l: 10 uH, dcr: 20 mohm, i_sat: 10 A}, c_across: {c: 1 uF}}
"""
SEVEN = PACK.replace("series: 5", "series: 7")


def reruns(text: str = PACK) -> Reruns:
    loaded = load_text(text, "invented.amp.yaml")
    assert loaded.spec is not None, loaded.refusals
    return Reruns(review(loaded.spec))


def change(title: str):
    (found,) = [x for x in load().changes if title in x.title]
    return found


def nominal(data: object, unit: str) -> float:
    return parse(data, unit).nominal


def test_more_cells_bring_their_charger_lockout_and_ratings() -> None:
    """7 x 4.2 V = 29.4 V; 14 V and 15 V move by 7/5; 29.4 V / 0.8 = 36.75 V: 50 V parts."""
    values, brought = completed(reruns(), {"battery.series": "7"})
    assert [x.title for x in brought] == [change("number of cells in series").title]
    assert nominal(values["battery.charger.v"], "V") == pytest.approx(29.4)
    assert "0.5 %" in str(values["battery.charger.v"])
    assert nominal(values["battery.protection.v_cutoff"], "V") == pytest.approx(19.6)
    assert nominal(values["protection.under_voltage.v_trip"], "V") == pytest.approx(21.0)
    assert values["supply.bulk.v_rated"] == "50 V"
    assert nominal(values["channels.main.output_stage.device.v_dss"], "V") >= 29.4 / 0.8


def test_what_is_good_enough_stays() -> None:
    """The fuse of 32 V stands the 29.4 V of seven cells."""
    values, _ = completed(reruns(), {"battery.series": "7"})
    assert "protection.fuse.v_dc" not in values


def test_what_is_silent_stays_silent_unless_the_change_needs_it() -> None:
    values, _ = completed(reruns(), {"battery.series": "7"})
    assert "channels.main.filter.c_across.v_rated" not in values
    values, _ = completed(reruns(), {"wiring.supply_lead.area": "2.5 mm2"})
    assert values["wiring.supply_lead.i_rated"]["from"] == "estimate"


def test_the_short_circuit_of_a_stiffer_pack_is_broken() -> None:
    """5 x 40 mohm = 200 mohm; 3 strings: 66.7 mohm; 21.1 V into that is 317 A: 500 A."""
    values, _ = completed(reruns(), {"battery.parallel": "3"})
    assert values["protection.fuse.i_breaking"] == "500 A"


def test_a_pack_for_the_rated_power() -> None:
    """100 W into 4 ohm peak at 28.3 V; 95 % of depth and 15 % of sag make 34.2 V of a low pack.

    Ten cells of 3.4 V are 34 V, eleven 37.4 V.  From that 111 W, by 1.2247 for the rms of a sine
    on a bridge and 1.15 for the sag, are 4.18 A: three strings of 2 A.
    """
    values = offered(reruns(SEVEN), change("a pack for the rated power"), PRODUCT)
    assert (values["battery.series"], values["battery.parallel"]) == ("11", "3")


def test_a_pack_many_times_as_large_is_another_product() -> None:
    """Strings of 0.5 A: the 4.18 A of the pack above would take nine, and the spec has one.

    Five cells would become eleven.
    """
    weak = SEVEN.replace("i_cont: 2 A", "i_cont: 0.5 A")
    for text in (weak, PACK):
        assert offered(reruns(text), change("a pack for the rated power"), PRODUCT) == {}


def test_power_that_the_pack_carries() -> None:
    """The strings that the power takes, and the power that the strings carry: one ratio.

    80 W at 22 V, by 1.2247 and 1.15, are 5.12 A: as many strings of 1 A, and 100 W / 5.12; or
    what the limiter lets through, 16 W at 8 V into 4 ohm, where that is less.
    """
    given = (80.0, 100.0, 22.0, 7, 1.0, 100.0, 1e-6)
    assert pack_for_the_power.strings_needed(*given) == pytest.approx(5.122, rel=1e-3)
    carried = power_for_the_pack.power_carried
    assert carried(100.0, 1, *given, 40.0, 4.0) == pytest.approx(100 / 5.122, rel=1e-3)
    assert carried(100.0, 1, *given, 8.0, 4.0) == pytest.approx(16.0)
    assert carried(100.0, 6, *given, 40.0, 4.0) == pytest.approx(100.0), "never more"


BARE = PACK.replace("protection: {i_trip: 9 A, v_cutoff: 14 V}", "protection: none").replace(
    "fuse: {i_rated: 10 A, v_dc: 32 V, i_breaking: 100 A}", "fuse: none"
)


def test_a_fuse_where_nothing_ends_a_short_circuit() -> None:
    """111 W from 17 V less its sag, by 1.22 for the rms: about 8 A, 12 A at 67.5 %; 21 V: 32 V."""
    advisor = Advisor(reruns(BARE).review)
    found = next(x for x in advisor.review.findings if x.check == "unprotected-source-power")
    remedy = advisor.best(found)
    assert remedy is not None
    assert remedy.title == "a fuse at the source"
    values = dict(remedy.values)
    i_source = advisor.reruns.run.graph.resolve("i_source_rms", None).value()
    rated = nominal(values["protection.fuse.i_rated"], "A")
    assert i_source / 0.675 <= rated < i_source / 0.675 * 1.5
    assert nominal(values["protection.fuse.v_dc"], "V") == 32.0
    assert nominal(values["protection.fuse.i_breaking"], "A") >= 21.0 / 0.2  # 5 x 40 mohm


def test_a_part_that_is_none_is_fitted_whole() -> None:
    """A cut-off alone would be a protection circuit that trips at nothing and breaks nothing."""
    bare = BARE.replace("under_voltage: {v_trip: 15 V}", "under_voltage: none")
    bare = bare.replace("rated_power: 100 W", "rated_power: 10 W")
    advisor = Advisor(reruns(bare).review)
    found = next(x for x in advisor.review.findings if x.check == "cell-discharge-end")
    remedy = advisor.best(found)
    assert remedy is not None
    assert {path.rpartition(".")[2] for path, _ in remedy.changes} == {
        "v_cutoff",
        "i_trip",
        "i_breaking",
    }


def test_an_output_capacitor_an_octave_below_the_band() -> None:
    """1 / (2 pi 20 Hz 8 ohm) is 995 uF; a first-order high-pass loses 0.97 dB an octave above."""
    c = output_capacitor_where_none.an_octave_below(40.0, 8.0)
    assert c == pytest.approx(995e-6, rel=1e-3)
    assert 10 * math.log10(1 + (20 / 40) ** 2) == pytest.approx(0.97, abs=0.01)


def test_devices_of_another_class_are_guesses_in_proportion() -> None:
    """60 V for 30 V on twice the area: twice the resistance and twice the charge."""
    values, _ = completed(reruns(), {"channels.main.output_stage.device.v_dss": "60 V"})
    r = values["channels.main.output_stage.device.r_ds_on"]
    assert (r["from"], nominal(r, "ohm")) == ("estimate", pytest.approx(0.020))
    assert parse(r, "ohm").hi == pytest.approx(0.024)
    q = values["channels.main.output_stage.device.q_g"]
    assert nominal(q, "C") == pytest.approx(40e-9)


def test_resistance_times_area_goes_with_the_square_of_the_voltage() -> None:
    """Resistance and charge (the area) each in proportion: their product with the square."""
    rise = device_class.in_proportion(1.0, 40.0, 100.0)
    assert rise**2 == pytest.approx((100 / 40) ** 2)


def test_another_inductance_on_the_same_core() -> None:
    """Twice the turns: four times L and resistance, half the saturation current."""
    values, _ = completed(reruns(), {"channels.main.filter.inductor.l": "40 uH"})
    told = {path.rpartition(".")[2]: x for path, x in values.items()}
    assert nominal(told["dcr"], "ohm") == pytest.approx(0.080)
    assert nominal(told["i_sat"], "A") == pytest.approx(5.0)
    assert inductor.with_the_turns(10.0, 10e-6, 40e-6) == pytest.approx(20.0)


def test_the_lead_is_rated_for_three_quarters_of_the_wire_table() -> None:
    """1.309 mm2 (AWG 16): 22 A as chassis wire (the public table that its check names)."""
    assert supply_lead.usual_rating(1.309e-6) == pytest.approx(16.5)
    assert supply_lead.wire_area(22.0) == pytest.approx(1.309e-6, rel=2e-3)
    assert supply_lead.area_for(21.0, 5.0) == pytest.approx(
        supply_lead.wire_area(21.0 / 1.45 / 0.75), rel=2e-3
    )


@pytest.mark.parametrize(
    ("found", "expected"),
    [
        (cells_in_series.of_all_cells(8, 4.2), 33.6),
        (cells_in_series.in_proportion(24.0, 7, 11), 264 / 7),
        (loudspeaker_for_the_power.sine(500.0, 4.0), 44.72),  # sqrt(500 W x 4 ohm)
        (loudspeaker_for_the_power.peak(500.0, 4.0), 63.25),  # sqrt(2) times that
        (loudspeaker_for_the_power.rating_needed(250.0, 125.0, 500.0, 1, 1), 1000.0),
        (limiter_for_loudspeaker.noise_voltage(50.0, 8.0, 1, 1), 20.0),
        (limiter_for_loudspeaker.noise_voltage(50.0, 4.0, 1, 2), 20.0),  # two of 8 ohm
        (output_capacitor.sine_current(2**0.5), 1.0),
        (pack_for_the_power.cells_needed(7, 23.1, 29.4, (1.054,), (0.993,)), 10.87),
    ],
)
def test_figures_by_hand(found: float, expected: float) -> None:
    assert found == pytest.approx(expected, rel=1e-3)


SWAPPED = """
amplifier_spec: 1
channels:
  main:
    output_stage: {topology: full-bridge, devices: discrete}
    gate_drive: {r_g_on: ON, r_g_off: OFF}
"""


@pytest.mark.parametrize(
    ("on", "off", "swapped"), [("2R2", "10 ohm", True), ("10 ohm", "2R2", False)]
)
def test_gate_resistors_are_swapped_back_only_where_they_are_swapped(on, off, swapped) -> None:
    text = SWAPPED.replace("ON", on).replace("OFF", off)
    values = offered(reruns(text), change("swapped back"), "main")
    if not swapped:
        assert values == {}
        return
    assert nominal(values["channels.main.gate_drive.r_g_on"], "ohm") == pytest.approx(10.0)
    assert nominal(values["channels.main.gate_drive.r_g_off"], "ohm") == pytest.approx(2.2)


@pytest.mark.parametrize(("rail", "volts"), [(8.0, 1.2), (20.0, 3.0), (60.0, 3.0)])
def test_a_new_detector_trips_below_a_fifth_of_a_low_rail(rail, volts):
    """3 V where the rail allows it, else 0.15 of it: below the fifth of dc-detector-threshold."""
    usual = parse(dc_detector.THRESHOLD["usual"].value, "V").nominal
    share = parse(dc_detector.THRESHOLD["share"].value, "1").nominal
    assert dc_detector.threshold(usual, share, rail) == pytest.approx(volts)
