"""Values at the end of what can be: the check judges them and does not break."""

from pathlib import Path

import pytest

from ampreview.linter.finding import Finding, Severity, Status
from ampreview.linter.judging.review import review
from ampreview.linter.reading.loading import load_file

SAMPLES = Path(__file__).parents[2] / "sample_specs"
LEFT = "channels.left"


def judged(name: str, check: str, changes: dict[str, object]) -> Finding:
    """The first answer of a check on a sample with some values changed."""
    spec = load_file(SAMPLES / f"{name}.amp.yaml").spec
    assert spec is not None
    loaded = spec.with_values(changes)
    assert loaded.spec is not None, loaded.refusals
    return next(item for item in review(loaded.spec).findings if item.check == check)


def test_a_battery_that_nothing_draws_from_lasts() -> None:
    """A switch in the battery's lead: no current, any time."""
    found = judged("choir-portable", "shelf-time", {"battery.i_standby": "0 uA"})
    assert found.status is Status.MEETS
    assert found.evidence.figure == pytest.approx(1e6)


def test_core_loss_without_a_resistance_is_open() -> None:
    """The rise is told in parts of the copper's; without the copper nothing can be said."""
    spec = load_file(SAMPLES / "choir-portable.amp.yaml").spec
    assert spec is not None
    loaded = spec.with_values({f"{LEFT}.filter.inductor.dcr": None})
    assert loaded.spec is not None
    found = next(x for x in review(loaded.spec).findings if x.check == "inductor-core-loss")
    assert found.status is Status.OPEN
    assert [item.path for item in found.advice.missing] == [f"{LEFT}.filter.inductor.dcr"]


@pytest.mark.parametrize("t_j_max", ["0 degC", "25 degC", "-10 degC"])
def test_a_junction_that_must_stay_cold_carries_no_current(t_j_max: str) -> None:
    changes = {f"{LEFT}.output_stage.device.t_j_max": t_j_max}
    found = judged("choir-portable", "drain-current-margin", changes)
    assert found.evidence.figure is not None
    assert found.evidence.figure > 0.0


def test_a_step_of_nothing_makes_no_pop() -> None:
    """20 log10(0) is minus infinity."""
    found = judged("choir-portable", "turn-on-pop", {f"{LEFT}.turn_on_step": "0 V"})
    assert found.status is Status.MEETS
    assert found.evidence.figure == float("-inf")


def test_pulses_longer_than_the_period_leave_no_depth() -> None:
    """2 t_pulse_min carrier beyond 1: nothing of the modulation is let through."""
    changes = {f"{LEFT}.gate_drive.t_pulse_min": "2 us", f"{LEFT}.modulator.m_max": None}
    found = judged("choir-portable", "minimum-pulse-vs-modulation", changes)
    assert found.severity in (Severity.MAJOR, Severity.MINOR)
    assert found.evidence.figure is not None
    assert found.evidence.figure > 100.0


@pytest.mark.parametrize("check", ["dead-time-margin", "dead-time-distortion", "output-power"])
@pytest.mark.parametrize("name", ["v_gs_th", "v_gs_pl"])
def test_a_gate_that_is_never_driven_so_far_is_judged(check: str, name: str) -> None:
    """The gate supply is 11 V."""
    found = judged("choir-portable", check, {f"{LEFT}.output_stage.device.{name}": "14 V"})
    assert "itself failed" not in found.message
    assert found.evidence.figure is not None
    assert abs(found.evidence.figure) < float("inf")


def test_a_plateau_above_the_gate_supply_is_caught() -> None:
    changes: dict[str, object] = {f"{LEFT}.output_stage.device.v_gs_pl": "14 V"}
    assert judged("choir-portable", "gate-overdrive", changes).severity is Severity.CRITICAL


@pytest.mark.parametrize(
    ("path", "text", "problem"),
    [
        ("environment.altitude", "45 km", "larger than can be"),
        ("environment.pollution_degree", "4", "larger than can be"),
        ("environment.ambient", "20 degC .. 1200 degC", "larger than can be"),
        (f"{LEFT}.filter.inductor.exponent_b", "9", "larger than can be"),
        (f"{LEFT}.filter.inductor.l", "4.7e12 H", "larger than can be"),
        (f"{LEFT}.filter.inductor.l", "1e-20 H", "smaller than can be"),
        (f"{LEFT}.filter.inductor.l", "1e-30 H", "too small"),
        ("claims.response", "0 dB", "smaller than can be"),
        ("supply.v_rail", "0 V", "zero is not possible"),
    ],
)
def test_what_cannot_be_is_refused_in_the_field(path: str, text: str, problem: str) -> None:
    spec = load_file(SAMPLES / "choir-portable.amp.yaml").spec
    assert spec is not None
    loaded = spec.with_values({path: text})
    assert loaded.spec is None
    assert problem in loaded.refusals[0].problem


def test_a_slip_of_one_prefix_is_a_finding_and_no_refusal() -> None:
    """10 H in place of 10 uH: six powers of ten."""
    changes: dict[str, object] = {f"{LEFT}.filter.inductor.l": "10 H"}
    found = judged("choir-portable", "value-outside-usual-range", changes)
    assert found.severity is Severity.MAJOR
    assert "(10 µH): check the drawing or the data sheet" in found.message
    assert found.advice.follows == {
        "value": "10 uH",
        "from": "estimate",
    }  # a guess, and marked as one
