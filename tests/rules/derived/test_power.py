"""Power, supply and pack quantities, by hand for small specs through the graph."""

import cmath
import math

import pytest

from ampreview.rules.derived import power as p
from ampreview.rules.derived.bulk import at_programme, at_rated, ripple_at_rated_power

THREE = "channels:\n" + "".join(
    f"  {name}: {{rated_power: {power} W, rated_load: 4 ohm,"
    f" output_stage: {{topology: full-bridge, efficiency: {efficiency} %}}}}\n"
    for name, power, efficiency in (("left", 40, 80), ("right", 60, 75), ("sub", 90, 90))
)
DIRECT = "supply: {source: dc-source, rails: single, v_rail: 36 V, p_auxiliary: 2 W}\n"
CONVERTED = (
    "supply: {source: battery, converter: step-up, converter_efficiency: 80 %, rails: split,"
    " v_rail: 36 V, p_auxiliary: 2 W}\n"
)
HEAT = 40 / 4 + 60 / 3 + 90 / 9  # 10, 20 and 10 W


@pytest.mark.parametrize(
    ("supply", "name", "expected"),
    [
        (DIRECT, "p_rated_sum", 192.0),
        (DIRECT, "p_source_least", 192.0),
        (CONVERTED, "p_source_least", 190 / 0.8 + 2),
        (DIRECT, "p_in_rated", 190 + HEAT + 2),
        (DIRECT, "p_rail_rated", 190 + HEAT + 2),
        (CONVERTED, "p_rail_rated", (190 + HEAT) / 2),
        (CONVERTED, "p_source_rated", (190 + HEAT) / 0.8 + 2),
        (DIRECT, "converter_share", 0.0),
        (CONVERTED, "converter_share", 0.25),  # 0.2 lost for 0.8 given
        (DIRECT, "rail_feed", "source"),
        (CONVERTED, "rail_feed", "converter"),
        (CONVERTED, "rail_count", 2.0),
    ],
)
def test_power_of_three_channels(derived, supply, name, expected):
    text = supply.replace("p_aux", "converter: none, p_aux") if supply == DIRECT else supply
    assert derived(name, text + THREE) == pytest.approx(expected)


def test_programme_power_counts_every_loss_once():
    """An eighth of 190 W at 12.04 dB, three losses, 2 W beside."""
    found = p.input_power_programme((40.0, 60.0, 90.0), (1.0, 2.0, 4.0), 2.0, 10 * math.log10(16))
    assert found == pytest.approx(190 / 8 + 7 + 2, rel=1e-3)


def test_largest_power_of_a_source(derived):
    text = "supply: {source: dc-source, converter: none, rails: split, v_rail: 36 V, i_max: 5 A}\n"
    assert derived("p_supply_max", text + THREE) == pytest.approx(360.0)


def share_of_source(r: float, c: float, f: float) -> float:
    """Part of an alternating current that comes through r and not from c, by phasors."""
    return abs(1 / (1 + 2j * math.pi * f * r * c))


def test_swing_at_twice_the_lowest_frequency():
    """(102 - 2) W on two rails; 0.1 ohm and 10 mF at 2 x 30 Hz, the lowest of the channels."""
    found = p.swing_double(102.0, 2.0, 2.0, 0.1, 10e-3, (40.0, 30.0, 60.0))
    assert found == pytest.approx(50 * share_of_source(0.1, 10e-3, 60.0))


def half_bridge_power(p_rated: float, depth: float) -> float:
    """Fundamental of the power of ONE rail: v_rail d(t) i(t) with d = (1 + m sin)/2."""
    n, total = 2000, 0.0
    for k in range(n):
        s = math.sin(2 * math.pi * k / n)
        # v_rail i = 2 p_rated / depth * sin, of which this rail takes (1 + m sin)/2
        total += 2 * p_rated / depth * s * (1 + depth * s) / 2 * s
    return 2 * total / n


def test_swing_at_the_signal_of_half_bridges():
    """Two half-bridges and a bridge; in phase the swings add, opposite they subtract."""
    swings = [half_bridge_power(40.0, 0.8), half_bridge_power(60.0, 0.5)]
    common = ((40.0, 60.0, 90.0), (0.8, 0.5, 0.9), (1.0, 1.0, 2.0), 2.0, 0.1, 10e-3, (30.0, 40.0))
    share = share_of_source(0.1, 10e-3, 30.0)
    together = p.swing_signal(*common, "in-phase")
    apart = p.swing_signal(*common, "opposite")
    assert together == pytest.approx((swings[0] + swings[1]) * share, rel=1e-6)
    assert apart == pytest.approx(abs(swings[0] - swings[1]) * share, rel=1e-6)


def test_crest_of_the_power():
    assert p.crest_power(100.0, 40.0, 7.0) == 147.0


def test_ripple_of_a_rail():
    """Both parts of the current through r beside c as phasors, from trough to crest, at 30 V."""
    found = ripple_at_rated_power((40.0, 60.0), 2.0, 0.1, 10e-3, (30.0, 40.0), 5.0, 30.0)
    turn = 2 * math.pi * 30.0 * 0.1 * 10e-3
    double = 50.0 / (1 + 2j * turn)
    signal = 5.0 * -1j * abs(1 + 1j * turn) / (1 + 1j * turn)  # 5 W behind the source's share
    circle = [cmath.exp(2j * math.pi * k / 5000) for k in range(5000)]
    swing = [(signal * x - double * x**2).real for x in circle]
    assert found == pytest.approx(0.1 * (max(swing) - min(swing)) / 30.0, rel=0.005)


def test_current_of_the_bulk_at_programme():
    """At the crest of a sine, 3.01 dB, programme is the rated sine itself."""
    common = ((2.0,), ("two-level",), (5.0,), (0.8,), ("yes",), 0.1, 10e-3, (30.0,))
    sine = at_programme(*common, 10 * math.log10(2))
    assert sine == pytest.approx(at_rated(*common), rel=1e-4)
    assert at_programme(*common, 12.0) < 0.6 * sine


def test_bulk_current_of_unlike_channels_by_powers():
    """Signal parts of the channels add as they are, whatever the order of the channels."""

    def rated(order):
        pick = lambda values: tuple(values[k] for k in order)  # noqa: E731
        return at_rated(
            pick((1.0, 2.0, 2.0)),
            pick(("two-level", "two-level", "three-level")),
            pick((3.0, 5.0, 7.0)),
            pick((0.5, 0.8, 0.9)),
            ("yes",) * 3,
            0.1,
            10e-3,
            pick((30.0, 60.0, 90.0)),
        )

    assert rated((1, 2, 0)) == pytest.approx(rated((0, 1, 2)), rel=1e-12)
    assert rated((2, 0, 1)) == pytest.approx(rated((0, 1, 2)), rel=1e-12)


VEHICLE = (
    "environment: {place: vehicle}\n"
    "supply: {source: dc-source, converter: none, surge: {v: 87 V}}\n"
)
PACK = "supply: {source: battery, converter: none}\nbattery: "


@pytest.mark.parametrize(
    ("battery", "name", "expected"),
    [
        ("{chemistry: li-ion, series: 3}", "v_pack_full", 12.6),
        ("{chemistry: lfp, series: 4}", "v_pack_full", 14.6),
        ("{chemistry: lead-acid-agm, series: 6}", "v_pack_full", 14.4),
        ("{chemistry: lead-acid-flooded, series: 6}", "v_pack_full", 15.48),
        ("{chemistry: lead-acid-flooded}", "v_cell_charger", 14.4 / 6),
        ("{chemistry: li-ion, cell: {v_charge: 4.1 V}}", "v_cell_charger", 4.1),
        ("{chemistry: nimh, series: 10}", "v_pack_full", 15.0),
        ("{chemistry: li-ion, series: 3, cell: {v_oc_low: 3.3 V}}", "v_pack_low", 9.9),
        ("{chemistry: li-ion, parallel: 2, cell: {capacity: 3 Ah}}", "capacity_pack", 6 * 3600.0),
        ("{chemistry: li-ion, parallel: 2, cell: {capacity: 3 Ah}}", "i_cell_charge_max", 1.5),
        (
            "{chemistry: li-ion, series: 3, parallel: 2, cell: {capacity: 3 Ah}}",
            "e_pack",
            3 * 3.6 * 2 * 3 * 3600,
        ),
        (
            "{chemistry: lfp, series: 4, parallel: 1, cell: {capacity: 3 Ah}}",
            "e_pack",
            4 * 3.2 * 3 * 3600,
        ),
        (
            "{chemistry: lead-acid-agm, series: 6, parallel: 1, cell: {capacity: 7 Ah}}",
            "e_pack",
            12 * 7 * 3600,
        ),
        (
            "{chemistry: nimh, series: 10, parallel: 1, cell: {capacity: 2 Ah}}",
            "e_pack",
            12 * 2 * 3600,
        ),
        ("{chemistry: li-ion, cell: {capacity: 3 Ah, i_cont: 6 A}}", "shortest_discharge", 1800.0),
        ("{chemistry: li-ion}", "shortest_discharge", 1800.0),
        ("{chemistry: nimh}", "shortest_discharge", 3600.0),
        ("{chemistry: lead-acid-agm}", "shortest_discharge", 3600.0),
        ("{chemistry: lead-acid-flooded}", "shortest_discharge", 7200.0),
        ("{chemistry: lead-acid-agm}", "peukert_exponent", 1.15),
        ("{chemistry: lead-acid-flooded}", "peukert_exponent", 1.3),
        ("{chemistry: li-ion}", "t_charge_low", 273.15),
        ("{chemistry: li-ion}", "t_charge_high", 318.15),
        ("{chemistry: lead-acid-agm}", "t_charge_low", 253.15),
        ("{chemistry: lead-acid-agm}", "t_charge_high", 323.15),
        (
            "{chemistry: li-ion, series: 3, parallel: 2, cell: {r_internal: 30 mohm}}",
            "r_pack",
            0.045,
        ),
        (
            "{chemistry: li-ion, series: 3, parallel: 2, cell: {r_internal: 30 mohm},"
            " protection: {r: 10 mohm}}",
            "r_short",
            0.055,
        ),
        (
            "{chemistry: li-ion, series: 3, parallel: 2, cell: {r_internal: 30 mohm}}",
            "p_fault",
            12.6**2 / (4 * 0.045),
        ),
    ],
)
def test_pack(derived, battery, name, expected):
    assert derived(name, PACK + battery + "\n") == pytest.approx(expected)


@pytest.mark.parametrize(
    ("lines", "name", "expected"),
    [
        (
            VEHICLE + "protection: {surge: {v_clamp: 38 V}}",
            "v_surge",
            38.0,
        ),
        (
            VEHICLE + "protection: {surge: none}",
            "v_surge",
            87.0,
        ),
        ("environment: {place: outdoor}", "sun", 1000.0),
        ("environment: {place: indoor}", "sun", 0.0),
        ("environment: {place: vehicle}", "sun", 0.0),
        (
            "supply: {source: dc-source, rails: split, v_rail: 30 V, converter: none}",
            "v_across_fuse",
            60.0,
        ),
    ],
)
def test_environment_and_source(derived, lines, name, expected):
    assert derived(name, lines + "\n") == pytest.approx(expected)


@pytest.mark.parametrize(
    ("method", "keys", "expected"),
    [
        ("schottky", "v_f: 0.5 V", 0.5 * 200 / 25),
        ("p-channel", "r_on: 10 mohm", 0.01 * 8.0**2),
    ],
)
def test_heat_of_a_guard_against_reversal(method, keys, expected):
    from ampreview.rules.derived.protection import heat_of_drop, heat_of_resistance

    if method == "schottky":
        assert heat_of_drop(0.5, 200.0, 25.0) == pytest.approx(expected)
    else:
        assert heat_of_resistance(0.01, 8.0) == pytest.approx(expected)


def test_input_power_counts_every_channel_once():
    found = p.input_power((40.0, 60.0, 90.0), (1.0, 2.0, 4.0), 3.0)
    assert found == pytest.approx(190 + 7 + 3)
