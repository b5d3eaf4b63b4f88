"""Heat step by step in time against the fixed point and the formula of the duration.

The second method is an explicit integration of the electro-thermal loop: heat capacities
charged by what flows in, resistance of the switches at the temperature of the moment.
"""

from collections.abc import Callable

import numpy as np
import pytest

from ampreview.linter.finding import Finding, Severity, Status
from ampreview.rules.derived.duration import share_reached
from ampreview.rules.formulas.heat import (
    Air,
    ChannelHeat,
    Sink,
    junction_after,
    junction_over,
    solve,
)

from ..whole import answer

AMBIENT, END = 298.15, 423.15


def integrated(
    heat: Callable[[float], ChannelHeat],
    r_package: float,
    r_sink: float,
    c_sink: float,
    until: float,
    start: float = AMBIENT,
    c_package: float = 0.5,
    step: float = 0.01,
) -> tuple[float, float]:
    """Junction and heatsink after a time: two heat capacities, explicit steps."""
    t_sink = t_junction = start
    for number in range(round(until / step)):
        now = heat(number * step)
        warm = now.conduction * (min(t_junction, END) / 298.15) ** now.exponent
        down = (t_junction - t_sink) / r_package
        t_junction += step * (now.switches + warm - down) / c_package
        t_sink += step * (down - (t_sink - AMBIENT) / r_sink) / c_sink
    return t_junction, t_sink


@pytest.mark.parametrize(("conduction", "r_sink"), [(4.0, 6.0), (8.0, 6.0), (20.0, 5.0)])
def test_integration_ends_at_the_fixed_point(conduction: float, r_sink: float) -> None:
    """Twenty time constants later; the last one has no balance below the end of the part."""
    heat = ChannelHeat(1.0, conduction, 1.6, 0.0, 0.0)
    t_junction, t_sink = integrated(lambda _: heat, 1.5, r_sink, 4.0, 20 * 4.0 * (r_sink + 4))
    found = solve(
        Air(AMBIENT, None, None), Sink(r_sink, None, True), (heat,), (1.5,), (END,), 0.0, 0.0
    )
    assert found.t_junction[0] == pytest.approx(t_junction, abs=0.05)
    assert found.t_reference == pytest.approx(t_sink, abs=0.05)
    assert (found.t_junction[0] > END) == (conduction == 20.0)


@pytest.mark.parametrize("duration", [1.0, 10.0, 60.0, 300.0])
def test_a_sine_for_some_time_by_integration(duration: float) -> None:
    """Constant heat: 5 W of programme for ever, then 20 W; 3 K/W, 40 J/K, 1.5 K/W inside."""
    programme, rated = 5.0, 20.0
    before = AMBIENT + 3 * programme

    def heat(_: float) -> ChannelHeat:
        return ChannelHeat(rated, 0.0, 1.0, 0.0, 0.0)

    found = junction_after(
        share_reached(duration, 3.0 * 40.0),
        before + 1.5 * programme,
        AMBIENT + 4.5 * rated,
        1.5 * (rated - programme),
    )
    # the heatsink is warm from the programme, the package is too quick to matter
    stepped = integrated(heat, 1.5, 3.0, 40.0, duration, start=before, c_package=0.02)[0]
    assert found == pytest.approx(stepped, abs=0.3)


@pytest.mark.parametrize("duration", [5.0, 30.0, 120.0])
def test_rising_resistance_only_makes_the_formula_cautious(duration: float) -> None:
    """With conduction that grows on the way the formula lies above the integration, not below."""
    rated = ChannelHeat(2.0, 8.0, 1.6, 0.0, 0.0)
    quiet = ChannelHeat(2.0, 1.0, 1.6, 0.0, 0.0)
    air, sink = Air(AMBIENT, None, None), Sink(4.0, None, True)
    lasting = solve(air, sink, (rated,), (1.5,), (END,), 0.0, 0.0)
    before = solve(air, sink, (quiet,), (1.5,), (END,), 0.0, 0.0)
    t_r, t_p = lasting.t_junction[0], before.t_junction[0]
    more = (t_r - lasting.t_reference - (t_p - before.t_reference)) / 1.5
    found = junction_after(share_reached(duration, 4.0 * 30.0), t_p, t_r, 1.5 * more)
    start = before.t_reference
    stepped = integrated(lambda _: rated, 1.5, 4.0, 30.0, duration, start, c_package=0.02)[0]
    assert stepped - 0.05 < found < stepped + 8.0


DICE = np.random.default_rng(7)
CASES = [tuple(DICE.uniform((0.5, 0.0, 0.3, 0.5, 270.0), (8, 12, 6, 8, 330))) for _ in range(40)]


@pytest.mark.parametrize("case", CASES)
def test_hotter_is_never_cooler_and_more_resistance_neither(case: tuple[float, ...]) -> None:
    """More heat, warmer air, a worse package or heatsink: no junction falls."""

    def at(*factors: float) -> float:
        a, b, c, d, e = (x * y for x, y in zip(case, factors, strict=True))
        heat = ChannelHeat(a, b, 1.7, 0.0, 0.0)
        air, sink = Air(e, None, None), Sink(d, None, True)
        return solve(air, sink, (heat, heat), (c, c), (END, END), 0.0, 0.0).t_junction[0]

    here = at(1, 1, 1, 1, 1)
    for number in range(5):
        factors = [1.0] * 5
        factors[number] = 1.05
        assert at(*factors) >= here - 1e-6


@pytest.mark.parametrize("case", CASES[:12])
def test_energy_is_kept_and_two_equal_channels_give_twice_one(case: tuple[float, ...]) -> None:
    """What the switches set free flows through package and heatsink; two channels, twice that."""
    switches, conduction, r_own, r_sink, ambient = case
    heat = ChannelHeat(switches, conduction, 1.7, 0.0, 0.0)
    air, end = Air(ambient, None, None), (END, END)
    one = solve(air, Sink(r_sink, None, True), (heat,), (r_own,), end[:1], 0.0, 0.0)
    two = solve(air, Sink(r_sink / 2, None, True), (heat, heat), (r_own, r_own), end, 0.0, 0.0)
    out = (one.t_reference - ambient) / r_sink
    assert (one.t_junction[0] - one.t_reference) / r_own == pytest.approx(out, rel=1e-6)
    set_free = switches + conduction * (min(one.t_junction[0], END) / 298.15) ** 1.7
    assert out == pytest.approx(set_free, rel=1e-6)
    assert (two.t_reference - ambient) / (r_sink / 2) == pytest.approx(2 * out, rel=1e-6)
    assert two.t_junction[0] == pytest.approx(one.t_junction[0], abs=1e-5)


def test_nothing_is_cooler_than_the_heatsink_it_sits_on() -> None:
    assert junction_over(340.0, ChannelHeat(0.0, 0.0, 1.0, 0.0, 0.0), 2.0, END) == 340.0


BOARD = """milestone: prototype
environment: {ambient: 25 degC, altitude: 0 m}
supply: {source: dc-source, converter: none, rails: single, v_rail: 24 V}
channels:
  main:
    rated_power: 50 W
    rated_thd: 10 %
    rated_load: 4 ohm
    DURATION
    output_stage:
      topology: full-bridge
      devices: integrated
      p_idle: 0.8 W
      efficiency: 85 %
      device: {r_ds_on: 120 mohm, t_j_max: 150 degC, r_th_ja: 20 K/W, r_th_jc: 1.2 K/W}
    filter: {inductor: {l: 10 uH, dcr: 1 mohm}}
thermal:
  enclosure: none
  heatsink: none
  TIME
protection: {over_temperature: TRIP}
"""


def board(
    check: str, duration: str = "", time: str = "", trip: str = "{t_trip: 150 degC, at: junction}"
) -> Finding:
    """The answer of one check for a part on its board that a lasting sine takes to its trip."""
    text = BOARD.replace("    DURATION\n", f"    {duration}\n" if duration else "")
    return answer(
        check, text.replace("  TIME\n", f"  {time}\n" if time else "").replace("TRIP", trip)
    )


def test_a_burst_stays_below_what_a_lasting_sine_takes_to_its_trip() -> None:
    """8.8 W through 20 K/W are 176 K; ten seconds of it, of 120 s, a twelfth of the way."""
    sine = board("junction-at-rated-sine")
    assert sine.evidence.figure == pytest.approx(0.0, abs=0.01)  # at its trip, and no further
    burst = board("junction-at-rated-sine", "rated_duration: 10 s", "time_constant: 120 s")
    lasting, copper = 50 * (1 / 0.85 - 1), 12.5 * 2 * 0.001 * 1.3
    eighth = 0.8 + (lasting - 0.8) * 10 ** (-0.82 * 0.90309)
    share = 1 - np.exp(-10 / 120)
    rise = share * 20 * lasting + (1 - share) * (20 * eighth + 1.2 * (lasting - eighth))
    assert burst.evidence.figure == pytest.approx(125 - rise + 20 * copper * share, abs=0.3)


def test_a_duration_without_a_time_constant_asks_for_it() -> None:
    found = board("junction-at-rated-sine", "rated_duration: 60 s", trip="none")
    assert found.status is Status.OPEN
    assert "thermal.time_constant" in [gap.path for gap in found.advice.missing]


def test_a_longer_rating_is_never_cooler() -> None:
    margins = [
        board("junction-at-rated-sine", f"rated_duration: {t} s", "time_constant: 120 s", "none")
        for t in (10, 30, 100, 300, 1000)
    ]
    figures = [item.evidence.figure for item in margins]
    assert figures == sorted(figures, reverse=True)
    lasting = board("junction-at-rated-sine", trip="none").evidence.figure
    assert figures[-1] == pytest.approx(lasting, abs=0.1)


RUNAWAY = BOARD.replace("      efficiency: 85 %\n", "").replace("20 K/W", "150 K/W")


def runaway(trip: str) -> Finding:
    """The check on a part whose balance lies beyond its end."""
    text = RUNAWAY.replace("    DURATION\n", "").replace("  TIME\n", "").replace("TRIP", trip)
    return answer("thermal-runaway", text)


def test_nothing_ends_a_runaway_but_a_trip() -> None:
    """Critical without a trip; with one the loop is switched off, and the gain counts to 0.5."""
    assert runaway("none").severity is Severity.CRITICAL
    ended = runaway("{t_trip: 150 degC, at: junction}")
    assert ended.evidence.figure == 0.5
    assert ended.severity in (None, Severity.MINOR)


def test_a_stable_point_below_the_trip_is_no_runaway() -> None:
    """Loop gain below 1, whatever the extrapolated curve would do beyond 150 degC."""
    text = RUNAWAY.replace("150 K/W", "16 K/W").replace("    DURATION\n", "")
    found = answer("thermal-runaway", text.replace("  TIME\n", "").replace("TRIP", "none"))
    assert found.evidence.figure < 0.5


def test_a_short_rating_gives_the_loop_no_time() -> None:
    """Ten seconds of 120 s: a twelfth of 150 K/W, and the package itself."""
    text = RUNAWAY.replace("    DURATION\n", "    rated_duration: 10 s\n")
    found = answer(
        "thermal-runaway", text.replace("TIME", "time_constant: 120 s").replace("TRIP", "none")
    )
    lasting = answer(
        "thermal-runaway",
        RUNAWAY.replace("    DURATION\n", "").replace("  TIME\n", "").replace("TRIP", "none"),
    )
    share = 1 - np.exp(-10 / 120)
    assert found.evidence.figure < (share * 150 + 1.2) / 150 * lasting.evidence.figure
    assert lasting.severity is Severity.CRITICAL
    assert found.severity is not Severity.CRITICAL
