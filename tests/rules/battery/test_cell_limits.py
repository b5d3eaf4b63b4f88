"""Limits of cells: what is stated is bounded by the chemistry, typed a second time here."""

from dataclasses import replace

import pytest

from ampreview.linter.check import COMMON_PRACTICE, Assumption
from ampreview.linter.finding import Finding, Severity, Status
from ampreview.linter.judging.review import review
from ampreview.linter.reading.loading import load_text
from ampreview.rules.formulas.pack import vent_area_needed

from ..whole import answers

# chemistry: highest charge, lowest discharge [V]; coldest and hottest charge [degC]
CHEMISTRIES = {
    "li-ion": (4.20, 2.5, 0, 60),
    "lfp": (3.65, 2.0, 0, 60),
    "lead-acid-agm": (2.50, 1.75, -40, 60),
    "lead-acid-flooded": (2.70, 1.75, -40, 60),
    "nimh": (1.8, 1.0, 0, 60),
}


def answer(check: str, battery: str, rest: str = "") -> Finding:
    """What a check says of a battery, at prototype."""
    supply = "" if "supply:" in rest else "supply: {source: battery, converter: none}\n"
    text = f"milestone: prototype\n{supply}battery: {{{battery}}}\n{rest}\n"
    return answers(text + "channels: {main: {rated_power: 20 W}}\n")[check]


@pytest.mark.parametrize("chemistry", CHEMISTRIES)
def test_a_stated_charge_voltage_beyond_the_chemistry_is_critical(chemistry: str) -> None:
    most = CHEMISTRIES[chemistry][0]
    within = answer("cell-charge-voltage", f"chemistry: {chemistry}, cell: {{v_charge: {most} V}}")
    assert within.status is Status.MEETS
    cell = f"chemistry: {chemistry}, cell: {{v_charge: {most * 1.02} V}}"
    assert answer("cell-charge-voltage", cell).severity is Severity.CRITICAL
    charger = f"{cell}, series: 6, charger: {{v: {6.0 * most * 1.02} V}}"
    assert answer("charge-voltage", charger).severity is Severity.CRITICAL


@pytest.mark.parametrize("chemistry", CHEMISTRIES)
def test_no_tolerance_widens_what_is_allowed(chemistry: str) -> None:
    most = CHEMISTRIES[chemistry][0]
    cell = f"chemistry: {chemistry}, series: 1, cell: {{v_charge: {most} V ± 20 %}}"
    found = answer("charge-voltage", f"{cell}, charger: {{v: {most * 1.05} V}}")
    assert found.severity is Severity.CRITICAL
    assert found.evidence.figure == pytest.approx(1.05)


def test_a_high_voltage_cell_is_charged_to_what_it_states() -> None:
    cell = "chemistry: li-ion, series: 2, cell: {v_charge: 4.35 V, made_for: high-voltage}"
    assert answer("charge-voltage", f"{cell}, charger: {{v: 8.7 V}}").status is Status.MEETS
    assert answer("charge-voltage", f"{cell}, charger: {{v: 8.9 V}}").severity is Severity.CRITICAL


@pytest.mark.parametrize(
    ("part", "status"),
    [("", Status.OPEN), (", part: tbd", Status.FINDING), (", part: XYZ1", Status.MEETS)],
)
def test_the_word_of_an_exception_names_its_cell(part: str, status: Status) -> None:
    cell = f"chemistry: li-ion, cell: {{v_charge: 4.35 V, made_for: high-voltage{part}}}"
    found = answer("cell-type-named", cell)
    assert (found.status, found.stake) == (status, "safety")
    usual = answer("cell-type-named", "chemistry: li-ion, cell: {v_charge: 4.2 V}")
    assert usual.status is Status.NOT_APPLICABLE


def test_a_word_of_the_house_lifts_no_limit() -> None:
    """A default of the house says nothing of this cell."""
    text = (
        "amplifier_spec: 1\nmilestone: prototype\nsupply: {source: battery}\n"
        "battery: {chemistry: li-ion, cell: {v_charge: 4.35 V}}\n"
        "channels: {main: {rated_power: 20 W}}\n"
    )
    spec = load_text(text, "house").spec
    assert spec is not None
    house = {"battery.cell.made_for": Assumption("high-voltage", "neutral", COMMON_PRACTICE)}
    found = review(replace(spec, defaults=house)).findings
    answered = {item.check: item for item in found}
    assert answered["cell-charge-voltage"].status is Status.OPEN


LEAST = [(1.0, None), (0.93, "minor"), (0.9, "major"), (0.79, "critical")]


@pytest.mark.parametrize("chemistry", CHEMISTRIES)
@pytest.mark.parametrize(("cells", "severity"), LEAST)
def test_least_cell_voltage(chemistry: str, cells: float, severity: str | None) -> None:
    cutoff = 6 * CHEMISTRIES[chemistry][1] * cells
    pack = f"chemistry: {chemistry}, series: 6, protection: {{v_cutoff: {cutoff:.4f} V}}"
    assert answer("cell-discharge-end", pack).severity == (Severity(severity) if severity else None)


def test_the_lockout_ends_the_discharge_of_a_pack_without_protection() -> None:
    pack = "chemistry: lead-acid-agm, series: 6, protection: none"
    lockout = "protection: {under_voltage: {v_trip: 10.5 V}}"
    assert answer("cell-discharge-end", pack, lockout).evidence.figure == pytest.approx(1.0)
    nothing = answer("cell-discharge-end", pack, "protection: {under_voltage: none}")
    assert (nothing.evidence.figure, nothing.severity) == (0.0, Severity.CRITICAL)
    converter = "supply: {source: battery, converter: step-up}"
    asked = answer("cell-discharge-end", pack, converter)
    assert [gap.path for gap in asked.advice.missing] == ["supply.v_lockout"]


@pytest.mark.parametrize("chemistry", CHEMISTRIES)
@pytest.mark.parametrize("end", ["cold", "hot"])
def test_a_stated_window_beyond_the_chemistry_is_critical(chemistry: str, end: str) -> None:
    _, _, coldest, hottest = CHEMISTRIES[chemistry]
    low, high = (coldest - 1, hottest) if end == "cold" else (coldest, hottest + 1)
    if low < -40:
        return
    cell = f"chemistry: {chemistry}, cell: {{t_charge: {low} degC .. {high} degC}}"
    found = answer("cell-temperature-window", cell)
    assert found.severity is Severity.CRITICAL
    assert found.evidence.figure == pytest.approx(1.0)


def test_charging_in_frost_needs_a_cell_made_for_it() -> None:
    charger = "charger: {sensor: cell, t_window: -18 degC .. 43 degC}"
    cell = "chemistry: li-ion, cell: {t_charge: -20 degC .. 45 degC"
    assert answer("charge-in-cold", f"{cell}}}, {charger}").severity is Severity.CRITICAL
    special = f"{cell}, made_for: cold-charge}}, {charger}"
    assert answer("charge-in-cold", special).status is Status.MEETS


def test_without_a_sensor_all_air_in_use_is_charged_in() -> None:
    air = "environment: {ambient: -10 degC .. 65 degC}"
    pack = "chemistry: li-ion, charger: {sensor: none, t_window: 2 degC .. 43 degC}"
    assert answer("charge-in-cold", pack, air).evidence.figure == pytest.approx(-10.0)
    assert answer("charge-in-heat", pack, air).evidence.figure == pytest.approx(-20.0)


@pytest.mark.parametrize(
    ("window", "reduced", "severity"),
    [
        (60, None, "critical"),
        (49, None, "major"),
        (44, None, None),
        (58, 44, None),
        (66, 44, "critical"),
    ],
)
def test_hot_charge(window: int, reduced: int | None, severity: str | None) -> None:
    """Full charge to 45, reduced to 60 (SLUSD89B, register 08h)."""
    stage = f", t_reduced: {reduced} degC" if reduced else ""
    charger = f"charger: {{sensor: cell, t_window: 2 degC .. {window} degC{stage}}}"
    cell = "cell: {t_charge: 0 degC .. 45 degC}"
    found = answer("charge-in-heat", f"chemistry: li-ion, {cell}, {charger}")
    assert found.severity == (Severity(severity) if severity else None)


def test_vent_area_by_hand() -> None:
    """EN 50272: Q = 0.05 n I C / 1000 m3/h with I in mA/Ah; A = 28 Q cm2 (27.8 at 0.1 m/s)."""
    flow = 0.05 * 6 * 20 * 40 / 1000
    area = vent_area_needed(6, 40 * 3600.0, "lead-acid-flooded", 3600.0, 0.05 / 3600, 0.1)
    assert area * 1e4 == pytest.approx(28 * flow, rel=0.01)


def test_a_lead_acid_battery_in_a_sealed_box() -> None:
    pack = "chemistry: lead-acid-flooded, series: 6, cell: {capacity: 40 Ah}"
    sealed = "thermal: {enclosure: {openings: sealed}}"
    taken = answer("battery-ventilation", pack, sealed)
    assert (taken.severity, taken.evidence.figure) == (Severity.MAJOR, 0.0)  # taken to be in it
    assert taken.message.endswith("an assumed value decides: battery.vent_area 0 cm²")
    for area, figure in ((0, 0.0), (6, 6 / 6.67)):  # stated, it is a hazard
        tight = answer("battery-ventilation", f"{pack}, vent_area: {area} cm2", sealed)
        assert tight.severity is Severity.CRITICAL
        assert tight.evidence.figure == pytest.approx(figure, rel=0.01)
    bay = answer("battery-ventilation", f"{pack}, vent_area: 7 cm2", sealed)
    assert (bay.status, bay.evidence.figure) == (Status.MEETS, pytest.approx(7 / 6.67, rel=0.01))
    assert answer("battery-ventilation", "chemistry: li-ion", sealed).status is (
        Status.NOT_APPLICABLE
    )


def test_no_charger_is_a_finding() -> None:
    found = answer("charger-stated", "chemistry: nimh, charger: none")
    assert found.severity is Severity.MAJOR
