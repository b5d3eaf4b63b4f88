"""The bring-up sheet: its numbers worked by hand for the samples, its order, its cautions."""

import importlib
import math
import pkgutil
import re
from pathlib import Path

import pytest

import ampreview.rules.bringup
from ampreview.linter.bringup_step import Step
from ampreview.linter.evaluation.bringup_steps import steps_of
from ampreview.linter.evaluation.catalogue import load
from ampreview.linter.evaluation.engine import Assessment
from ampreview.linter.judging.bringup import Figure, SheetStep, sheet_of
from ampreview.linter.reading.loading import Spec, load_file, load_text
from ampreview.linter.reports.bringup_words import beyond

SAMPLES = Path(__file__).parents[2] / "sample_specs"
PUBLISHED = Path(__file__).parents[1] / "published"
CATALOGUE = load()
STEPS = {item.name: item.step for item in steps_of(CATALOGUE)}


def made(spec: Spec | None) -> dict[str, SheetStep]:
    assert spec is not None
    steps = sheet_of(Assessment(spec, CATALOGUE, spec.milestone))
    assert [step.number for step in steps] == list(range(1, len(steps) + 1))
    return {step.name: step for step in steps}


def sheet(name: str) -> dict[str, SheetStep]:
    return made(load_file(SAMPLES / f"{name}.amp.yaml").spec)


CHOIR, SUBWOOFER, LAMP = map(sheet, ("choir-portable", "playhouse-subwoofer", "bedside-lamp"))


def figure(steps: dict[str, SheetStep], name: str) -> Figure:
    (found,) = (x for step in steps.values() for x in step.figures if x.name == name)
    return found


def band(steps: dict[str, SheetStep], name: str) -> tuple[float, float, float]:
    found = figure(steps, name).band
    assert found is not None, name
    return found.lo, found.nominal, found.hi


def line(steps: dict[str, SheetStep], name: str, start: str) -> str:
    return next(text for text in steps[name].lines if start in text)


# --- a portable on a pack, 8 cells, two full bridges on 33.6 V ---------------------------


def test_first_voltage_and_limit_of_the_portable() -> None:
    """1.05 x 23.2 V (highest lockout) = 24.36 V.

    Limit: 1.25 times the idle current, 199 mA, and 5.28 mF x 24.36 V / 5 s = 25.7 mA.
    Fault: 24.36 V x 0.2739 A = 6.67 W.  Capacitors: 5.28 mF x (24.36 V)^2 / 2 = 1.567 J.
    """
    _, _, idle = band(CHOIR, "first-supply-current")
    limit = 1.25 * idle + 5.28e-3 * 24.36 / 5
    assert limit == pytest.approx(0.2739, rel=1e-3)
    assert line(CHOIR, "first-power", "Set").startswith("Set 24.4 V, limit 280 mA")
    fault = line(CHOIR, "first-power", "fault")
    assert re.findall(r"[\d.]+ [WJ]", fault) == ["6.7 W", "1.6 J"]
    assert figure(CHOIR, "first-supply-current").limit == 0.28
    assert figure(CHOIR, "rail-resistance").limit == 88.0  # 24.36 V / 0.2739 A, down


def test_known_air_is_cooler_in_the_room() -> None:
    """45 degC in 35 degC of ambient is 35 degC at 25."""
    spec = load_file(SAMPLES / "choir-portable.amp.yaml").spec
    assert spec is not None
    steps = made(spec.with_values({"thermal.t_air_inside": "45 degC"}).spec)
    assert band(steps, "inside-air")[1] == pytest.approx(35 + 273.15)


def test_idle_current_of_the_portable() -> None:
    """Two channels and 2.5 W of mixer and radios, at 33.6 V; both channels alike."""
    per_channel = figure(CHOIR, "idle-power")
    assert per_channel.subjects == ("left", "right")
    watts = band(CHOIR, "idle-power")
    by_hand = [(2 * p + 2.5) / 33.6 for p in watts]
    assert band(CHOIR, "idle-current") == pytest.approx(by_hand, rel=1e-6)


def test_dead_time_of_the_portable() -> None:
    """50 ns, 4 ns of tolerance, 5 ns between the drivers.

    Turn-off 18 + 6 ns less turn-on 5 ns outlasts by 19 ns; 10 ns are kept.
    """
    assert band(CHOIR, "dead-time") == pytest.approx((41e-9, 50e-9, 59e-9))
    assert figure(CHOIR, "dead-time").limit == pytest.approx(29e-9)


def test_carrier_residual_of_the_portable() -> None:
    """Nodal equations of the filter at twice 384 kHz, three-level drive at half modulation.

    Both legs: 20 uH in line; 680 nF and half of 330 nF across; two dampers of 10 ohm and
    100 nF in series across; 4 ohm.  Fourier: a leg's edges leave root 2 / pi of 33.6 V.
    """
    w = 2 * math.pi * 768e3
    across = 1j * w * (680e-9 + 165e-9) + 1 / (20 + 1 / (1j * w * 50e-9)) + 1 / 4
    gain = abs(1 / (1 + 1j * w * 20e-6 * across))
    expected = 2**0.5 / math.pi * 33.6 * gain
    assert band(CHOIR, "carrier-residual")[1] == pytest.approx(expected, rel=5e-3)
    assert figure(CHOIR, "carrier-residual").limit == pytest.approx(0.08 * 33.6 / 2**0.5)


def test_trips_of_the_portable() -> None:
    """The load that trips: 0.92 x 24.36 V / (1.25 x 12 A) = 1.494 ohm, rounded down."""
    assert "1.4 Ω" in line(CHOIR, "over-current-trip", "Load of")
    assert band(CHOIR, "over-current-trip") == pytest.approx((10.0, 11.0, 12.0))
    assert figure(CHOIR, "over-current-trip").limit == pytest.approx(1.25 * 12)
    assert figure(CHOIR, "under-voltage-trip").limit == pytest.approx(0.95 * 22.4, abs=0.1)
    assert figure(CHOIR, "over-temperature-trip").limit == pytest.approx(273.15 + 84 + 5)
    assert "remove supply" in line(CHOIR, "dc-trip", "It must")


def test_dummy_load_of_the_portable() -> None:
    """1 % adds 4.8 % to the power at the onset; twice that is what a clipped stage gives.

    The filter's corner 1 / (2 pi root(20 uH x 845 nF)) = 38.7 kHz; the dampers, 50 nF, take
    it to 37.6 kHz: a tenth of 4 ohm there is 1.6 .. 1.7 uH, at the highest corner less.
    """
    highest = band(CHOIR, "power-at-one-percent")[2]
    told = line(CHOIR, "power", "Dummy load 4 Ω")
    (power,) = re.findall(r"rated (\d+) W", told)
    assert highest * 2 <= float(power) < highest * 2 + 10
    (henry,) = re.findall(r"at most ([\d.]+) µH", told)
    assert 1.3 <= float(henry) <= 1.7
    assert figure(CHOIR, "power-at-one-percent").limit == 50.0


def test_rail_after_the_wait() -> None:
    """33.6 V on 2.2 kohm and 4.4 mF + 20 % for 2 s: x exp(-2 / 11.616) = 28.28 V.

    The subwoofer: 79 V + 3 % on 3.3 kohm and 22.2 mF + 4 mF, 120 s.
    """
    assert band(CHOIR, "rail-after-wait")[2] == pytest.approx(28.28, rel=1e-3)
    left = 79 * math.exp(-120 / (3300 * 26.2e-3))
    assert band(SUBWOOFER, "rail-after-wait")[2] == pytest.approx(left, rel=1e-6)


def test_sag_of_the_pack() -> None:
    """Cells 8/3 x 47.5 mohm, 8 mohm of protection, 0.6 m of 2.5 mm2: 138.8 mohm.

    Two times 50 W, the losses and 2.5 W are 109.8 W: v = 27.6 V - r p / v, iterated.
    """
    r = 8 / 3 * 47.5e-3 + 8e-3 + 0.6 * 1.724e-8 / 2.5e-6
    v = 27.6
    for _ in range(50):
        v = 27.6 - r * 109.8 / v
    assert band(CHOIR, "pack-sag")[1] == pytest.approx(27.6 - v, rel=2e-3)


def test_temperature_of_the_heatsink() -> None:
    """What goes in and not out at one eighth, through 3.5 K/W.

    A little less of it: the inductors do not sit there; a little more: air at 1500 m.
    """
    heat = band(CHOIR, "supply-power-at-one-eighth")[1] - 2 * 6.25 - 2.5
    rise = band(CHOIR, "heatsink-temperature")[1] - 298.15
    assert 0.8 * 3.5 * heat < rise < 1.1 * 3.5 * heat
    # The trip at 76 degC must not come in an ambient of 35 degC, 10 K above the room.
    assert figure(CHOIR, "heatsink-temperature").limit == pytest.approx(273.15 + 66)


# --- 500 W on a split supply of two times 79 V, behind a mains converter -----------------


def test_limit_of_the_subwoofer() -> None:
    """24 mF of bulk at 1.05 x 52 V = 54.6 V in 5 s are 262 mA beside the idle current."""
    _, _, idle = band(SUBWOOFER, "first-supply-current")
    limit = 1.25 * idle + 24e-3 * 54.6 / 5
    assert figure(SUBWOOFER, "first-supply-current").limit == math.ceil(limit * 100) / 100
    watts = band(SUBWOOFER, "idle-power")[1]
    assert band(SUBWOOFER, "idle-current")[1] == pytest.approx((watts + 5) / 158, rel=1e-6)


def test_over_voltage_of_the_subwoofer() -> None:
    """Capacitors of 100 V; switches of 250 V less the other rail of 79 V leave 171 V: 100 V."""
    assert figure(SUBWOOFER, "over-voltage-trip").limit == 100.0
    spec = load_file(SAMPLES / "playhouse-subwoofer.amp.yaml").spec
    assert spec is not None
    tight = spec.with_values({"channels.sub.output_stage.device.v_dss": "175 V"}).spec
    assert figure(made(tight), "over-voltage-trip").limit == 96.0


def test_a_source_that_ranges_is_set_to_its_ends_and_never_to_its_middle() -> None:
    """11.4 to 14.7 V ahead of a converter of 92 %: 0.4 W of the stage behind it, 2 W beside."""
    trolley = sheet("market-day-trolley")
    assert line(trolley, "idle", "outputs open").startswith("14.7 V")
    assert band(trolley, "idle-current")[1] == pytest.approx((0.4 / 0.92 + 2) / 14.7, rel=1e-6)
    assert "low charge: 11.4 V" in line(trolley, "power", "in place of the pack")
    assert line(trolley, "first-power", "Set").startswith("Set 11.6 V")  # 1.05 x 11.0 V, lockout


def test_the_rail_stops_at_the_part_that_gives_way_first() -> None:
    """Capacitors of 35 V on a power stage recommended up to 26.5 V, absolute maximum 34 V."""
    trolley = sheet("market-day-trolley")
    assert figure(trolley, "full-rail").limit == 26.5
    assert (
        figure(LAMP, "own-rail").limit == 14.0
    )  # capacitors of 16 V, a stage of 18 V; to last, 14 V


def test_the_subwoofer_is_told_of_mains_and_of_two_rails() -> None:
    told = " ".join(x.text for step in SUBWOOFER.values() for x in step.cautions)
    assert "Mains voltage kills" in told
    assert "above 60 V" in told
    assert "one for each rail" in line(SUBWOOFER, "first-power", "bench supply")
    assert "Mains" not in " ".join(x.text for step in CHOIR.values() for x in step.cautions)


# --- 2 W of an integrated half bridge, efficiency stated ----------------------------------


def test_efficiency_of_the_lamp() -> None:
    """85 % at 2 W is stated; 6 W of lamp beside: 2 W / 0.85 + 6 W = 8.353 W."""
    assert band(LAMP, "efficiency-at-full")[1] == pytest.approx(0.85, rel=1e-4)
    assert band(LAMP, "supply-power-at-full")[1] == pytest.approx(2 / 0.85 + 6, rel=1e-4)
    eighth, half = (band(LAMP, f"efficiency-at-{x}")[1] for x in ("one-eighth", "half"))
    assert eighth < half < 0.85


def test_power_ahead_of_a_converter() -> None:
    """Two channels of 3 W at a stated 86 %, the converter, and the other loads ahead of it."""
    spec = load_file(SAMPLES / "bird-call-pocket.amp.yaml").spec
    assert spec is not None
    efficiency, others = (
        spec.values[f"supply.{x}"].nominal for x in ("converter_efficiency", "p_auxiliary")
    )
    drawn = 2 * 3 / 0.86 / efficiency + others
    steps = made(spec)
    assert band(steps, "supply-power-at-full")[1] == pytest.approx(drawn, rel=5e-3)
    assert band(steps, "supply-power")[1] == pytest.approx(drawn, rel=5e-3)


def test_how_long_to_wait() -> None:
    """Three time constants, 95 % of the rise."""
    spec = load_file(SAMPLES / "choir-portable.amp.yaml").spec
    assert spec is not None
    changed = spec.with_values({"thermal.time_constant": "10 min"}).spec
    assert "Wait 30 min" in line(made(changed), "temperatures", "Wait")
    # 3.5 K/W and 0.2 kg of aluminium of 900 J/kg/K: 3 x 630 s = 31.5 min; more in thin air
    (minutes,) = re.findall(r"Wait ([\d.]+) min", line(CHOIR, "temperatures", "Wait"))
    assert 31.5 < float(minutes) < 31.5 * 1.15
    silent = made(spec.with_values({"thermal.heatsink.mass": None}).spec)
    assert "Wait ____" in line(silent, "temperatures", "Wait")
    assert [x.path for x in silent["temperatures"].missing] == ["thermal.heatsink.mass"]


def test_level_of_the_lamp() -> None:
    """82 dB for 1 W into 6 ohm, 2.45 V; a tenth of 2.83 V; 3 dB for room and meter."""
    level = 82 + 20 * math.log10(0.283 / 6**0.5)
    assert band(LAMP, "small-level") == pytest.approx((level - 3, level, level + 3), abs=0.02)


def test_a_printed_side_is_not_made_up() -> None:
    """The lamp's trip is printed from its least value up: no highest one is told."""
    assert figure(LAMP, "over-current-trip").kind == "at least"
    assert figure(CHOIR, "over-current-trip").kind == "band"


# --- the sheet as a whole -------------------------------------------------------------------

ORDER = (
    "inspection",
    "first-power",
    "discharge",
    "gate-supply",
    "switching",
    "idle",
    "carrier-residual",
    "dc-offset",
    "under-voltage-trip",
    "over-voltage-trip",
    "over-current-trip",
    "over-temperature-trip",
    "dc-trip",
    "own-source",
    "power",
    "efficiency",
    "temperatures",
    "pack-connect",
    "pack-under-load",
    "loudspeaker",
)
"""As the trade goes: nothing with power before it is inspected, nothing loud before it is cool."""


def test_order_of_the_steps() -> None:
    assert tuple(STEPS) == ORDER
    assert len({step.order for step in STEPS.values()}) == len(STEPS)


def test_only_steps_that_concern_the_design() -> None:
    assert [x for x in ORDER if x not in CHOIR] == ["over-voltage-trip", "own-source"]
    assert [x for x in ORDER if x not in SUBWOOFER] == ["pack-connect", "pack-under-load"]
    others = {"over-voltage-trip", "dc-trip", "gate-supply", "pack-connect", "pack-under-load"}
    assert {x for x in ORDER if x not in LAMP} == others


@pytest.mark.parametrize("steps", [CHOIR, SUBWOOFER, LAMP], ids=["choir", "subwoofer", "lamp"])
def test_every_step_tells_a_caution_and_sound_designs_stay_clear_of_every_stop(
    steps: dict[str, SheetStep],
) -> None:
    for step in steps.values():
        assert step.cautions, step.name
        assert step.instrument, step.name
        for item in step.figures:
            if item.band is None or item.limit is None:
                continue
            ahead = item.limit - item.band.nominal
            assert (ahead if item.stop == "above" else -ahead) >= -1e-9, item.name


def test_what_the_spec_does_not_state_is_asked_where_it_is_needed() -> None:
    text = """
amplifier_spec: 1
supply: {source: dc-source, rails: single, v_rail: 24 V}
channels:
  main: {rated_power: 30 W, rated_load: 8 ohm, output_stage: {topology: full-bridge,
    devices: integrated}, modulator: {carrier: 400 kHz}}
"""
    steps = made(load_text(text, "sketch").spec)
    assert figure(steps, "idle-current").band is None
    asked = {item.path for item in figure(steps, "idle-current").missing}
    assert "channels.main.output_stage.p_idle" in asked
    assert "limit ____" in line(steps, "first-power", "Set 24 V")


def test_a_sum_with_terms_left_out_is_a_bound_and_stops_nothing() -> None:
    steps = sheet("foyer-proposal")
    found = figure(steps, "idle-current")
    assert found.kind == "at least"
    assert found.limit is None
    assert "limit at least" in line(steps, "first-power", "Set")


@pytest.mark.parametrize(
    ("name", "step"),
    [
        ("no-dead-time", "switching"),
        ("bridge-without-dead-time", "switching"),
        ("capacitors-below-rail", "first-power"),
        ("dc-in-the-coil", "loudspeaker"),
        ("direct-voltage-burns-transducer", "loudspeaker"),
    ],
)
def test_published_failures_stop_at_the_step_that_would_have_shown_them(
    name: str, step: str
) -> None:
    """Boards that people have described after they failed; their source stands in each file."""
    steps = made(load_file(PUBLISHED / "failures" / f"{name}.amp.yaml").spec)
    assert "DO NOT MAKE THIS STEP" in beyond(steps[step])


@pytest.mark.parametrize(
    "path", sorted((PUBLISHED / "designs").glob("*.amp.yaml")), ids=lambda path: path.stem
)
def test_published_designs_that_work_are_stopped_nowhere(path: Path) -> None:
    for step in made(load_file(path).spec).values():
        assert "DO NOT" not in beyond(step), step.name


@pytest.mark.parametrize(
    "name", [info.name for info in pkgutil.iter_modules(ampreview.rules.bringup.__path__)]
)
def test_every_file_holds_a_step(name: str) -> None:
    module = importlib.import_module(f"ampreview.rules.bringup.{name}")
    assert isinstance(getattr(module, "STEP", None), Step) or name == "shared"
