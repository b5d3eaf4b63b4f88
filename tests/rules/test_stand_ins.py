"""What stands in for silence convicts nobody: placeholders, worst cases, slips that may be none."""

import pytest

from ampreview.linter.evaluation.catalogue import load
from ampreview.linter.finding import Finding, Severity, Status
from ampreview.linter.judging.review import review
from ampreview.linter.reading.loading import load_text

from .whole import answer

CATALOGUE = load()


def finding(text: str, check: str) -> Finding:
    return answer(check, text, "prototype")


# 2 x 50 V of swing on switches of 120 V; a quarter of the swing, 25 V, stands in for the ringing
STAGE = """
supply: {source: dc-source, rails: split, v_rail: 50 V, sinks_current: yes}
channels:
  main:
    rated_power: 100 W
    rated_load: 8 ohm
    output_stage: {topology: half-bridge, devices: discrete, device: {v_dss: 120 V}}
"""


def test_a_share_of_the_swing_asks_for_the_measured_overshoot() -> None:
    found = finding(STAGE, "device-voltage-ringing")
    assert found.evidence.figure == pytest.approx(125 / 120, rel=1e-3)
    assert found.status is Status.OPEN
    assert [item.path for item in found.advice.missing] == [
        "channels.main.output_stage.v_overshoot"
    ]
    assert found.advice.missing[0].border.startswith("at most ")


def test_a_measured_overshoot_convicts() -> None:
    measured = STAGE.replace("device: {", "v_overshoot: {value: 25 V, from: measured}, device: {")
    assert finding(measured, "device-voltage-ringing").severity is Severity.CRITICAL


def test_no_ringing_at_all_is_needed_where_the_rail_alone_is_too_high() -> None:
    """100 V across a switch of 90 V: no measured overshoot could help."""
    found = finding(STAGE.replace("120 V", "90 V"), "device-voltage-ringing")
    assert found.severity is not None
    assert found.severity.rank <= Severity.MAJOR.rank


# 5 nC of gate charge stand in for a capacitance; 16 ns of printed times are there beside it
GATES = """
supply: {source: dc-source, rails: single, v_rail: 24 V}
channels:
  main:
    rated_power: 20 W
    rated_load: 8 ohm
    output_stage:
      topology: full-bridge
      devices: discrete
      device: {t_d_on: 8 ns, t_d_off: 16 ns, t_f: 6 ns, q_g: 18 nC, v_gs_th: {min: 1.8 V},
        r_g_int: 1 ohm}
    gate_drive: {dead_time: DEAD, v_drv: 10 V, r_g_on: 4.7 ohm, r_g_off: 4.7 ohm, i_source: 4 A,
      i_sink: 4 A, delay_mismatch: 1 ns}
"""


def test_a_dead_time_is_no_shoot_through_by_an_assumed_capacitance() -> None:
    """The printed times need 14 ns and 1 ns; the share of the gate charge would need more."""
    found = finding(GATES.replace("DEAD", "16 ns"), "dead-time-margin")
    assert found.severity is not Severity.CRITICAL
    printed = finding(GATES.replace("DEAD", "13 ns"), "dead-time-margin")
    assert printed.severity is Severity.CRITICAL


RAILS = """
supply: {source: dc-source, rails: split, v_rail: 70 V, bulk: {c: 4700 uF}, c_source: 0 F}
channels: {main: {rated_power: 50 W}}
"""


def test_a_discharge_resistor_of_which_nothing_is_said_is_asked_for() -> None:
    found = finding(RAILS, "stored-voltage-service")
    assert found.status is Status.OPEN
    assert "protection.bleeder" in {item.path for item in found.advice.missing}
    none = finding(RAILS + "protection: {bleeder: none}\n", "stored-voltage-service")
    assert none.severity is Severity.MAJOR
    fitted = finding(RAILS + "protection: {bleeder: {r: 200 ohm}}\n", "stored-voltage-service")
    assert fitted.status is Status.MEETS


OUTDOORS = """
environment: {place: outdoor, altitude: 300 m, ip_code: IPXX}
supply: {source: dc-source, rails: single, converter: none, v_rail: 24 V}
wiring: {spacing: {gap: 0.8 mm, surface: outer-bare}}
channels: {main: {rated_power: 50 W}}
"""


@pytest.mark.parametrize(
    ("code", "status"),
    [
        ("IP54", Status.MEETS),
        ("IP65", Status.MEETS),
        ("IP44", Status.FINDING),
        ("IPX4", Status.FINDING),
    ],
)
def test_a_tight_box_outdoors_keeps_the_dirt_out(code: str, status: Status) -> None:
    found = finding(OUTDOORS.replace("IPXX", code), "clearance-and-creepage")
    assert found.status is status


@pytest.mark.parametrize(
    "text",
    [
        "protection: {inrush: {r: 1 kohm}}",  # until a relay bridges it
        "channels: {main: {filter: {damper: {r: 1 kohm, c: 100 nF}}}}",
        "channels: {main: {output_stage: {over_current: {i_trip: 10 A, t_response: 20 ms}}}}",
    ],
)
def test_a_value_of_another_kind_of_design_is_no_slip(text: str) -> None:
    main = "" if "channels" in text else "\nchannels: {main: {rated_power: 50 W}}"
    loaded = load_text(f"amplifier_spec: 1\n{text}{main}", "board")
    assert loaded.spec is not None
    names = {item.check for item in review(loaded.spec).failing()}
    assert "value-outside-usual-range" not in names


PUBLISHED = [
    # TPA3111D1 data sheet SLOS618E, figure 21; TI SLOA339: 200 pF at most at the output
    "channels: {main: {filter: {type: bead, c_ground: {c: 1 nF}}}}",
    "channels: {main: {filter: {type: bead, c_ground: {c: 200 pF}}}}",
    # TPA2010D1 product page: 2.8 mA and 0.5 uA, here on 3.6 V
    "channels: {main: {output_stage: {p_idle: 10 mW}}}\nbattery: {i_standby: 0.5 uA}",
    # MAX98357A data sheet 19-6779, general description
    "channels: {main: {modulator: {jitter: 12 ns}}}",
    # TAS6424-Q1, 2.1 MHz; TPA6404-Q1, loads of up to 6 kohm told apart from none
    "channels: {main: {modulator: {carrier: 2.1 MHz}, load_range: 2 ohm .. 6 kohm}}",
    # IRAUDAMP4 manual p. 11; thesis Universidad de Cantabria 2017; TPA3220 data sheet SLASEN3B
    "channels: {main: {dc_offset: 5 mV, gate_drive: {bootstrap: {c: 47 uF}}}}",
    "channels: {main: {gate_drive: {bootstrap: {c: 33 nF}}}}",
    # Mattingly, TPA3255_ClassD_PBTL: 100 mA on 50 V; nevenfo, protection-48v: 15.4 mF, 54 A2s
    "channels: {main: {output_stage: {p_idle: 5 W}}}\nsupply: {bulk: {c: 15.4 mF}}",
    "channels: {main: {rated_power: 10 W}}\nprotection: {fuse: {i2t: 54 A2s}}",
    # XMOS dock application note 2010: 220 uF; evaluation of a part of 3 W: 10 uF, common practice
    "channels: {main: {rated_power: 3 W}}\nsupply: {bulk: {c: 10 uF}}",
]


@pytest.mark.parametrize("text", PUBLISHED)
def test_what_published_parts_and_boards_have_is_no_slip(text: str) -> None:
    loaded = load_text(f"amplifier_spec: 1\n{text}\n", "board")
    assert loaded.spec is not None, loaded.refusals
    said = [x for x in review(loaded.spec).failing() if x.check == "value-outside-usual-range"]
    assert not [x.message for x in said if x.severity is Severity.MAJOR]


@pytest.mark.parametrize("kind", ["lc", "bead"])
def test_a_capacitor_behind_a_bead_is_a_slip_behind_a_coil(kind: str) -> None:
    text = f"channels: {{main: {{filter: {{type: {kind}, c_ground: {{c: 1 nF}}}}}}}}"
    loaded = load_text(f"amplifier_spec: 1\n{text}\n", "board")
    assert loaded.spec is not None, loaded.refusals
    found = {x.check for x in review(loaded.spec).failing()}
    assert ("value-outside-usual-range" in found) is (kind == "lc")


@pytest.mark.parametrize(
    ("value", "severity"),
    [
        ("22 mH", Severity.MAJOR),
        ("{value: 22 mH, from: estimate}", Severity.MAJOR),
        ("{value: 22 mH, from: measured}", Severity.MINOR),
        ("{value: 22 mH, from: datasheet}", Severity.MINOR),
    ],
)
def test_a_value_that_was_read_off_is_questioned_only(value: str, severity: Severity) -> None:
    text = f"channels: {{main: {{filter: {{type: lc, inductor: {{l: {value}}}}}}}}}"
    loaded = load_text(f"amplifier_spec: 1\nmilestone: prototype\n{text}", "board")
    assert loaded.spec is not None, loaded.refusals
    (found,) = [x for x in review(loaded.spec).failing() if x.check == "value-outside-usual-range"]
    assert found.severity is severity
    assert (found.advice.follows is None) is (severity is Severity.MINOR)


# 14.4 V into 2 ohm are 7.2 A without any resistance in line; two switches of 90 mohm leave 6.6 A,
# and coils of some tens of mohm bring the rest (TAS6424-Q1: limit 6.5 A, 45 W into 2 ohm)
LIMITER = """
supply: {source: dc-source, rails: single, v_rail: 14.4 V}
channels:
  main:
    rated_power: 27 W
    rated_thd: 10 %
    rated_load: 4 ohm
    load_range: 2 ohm .. 4 ohm
    output_stage:
      topology: full-bridge
      devices: integrated
      over_current: {i_trip: {typ: TRIP}, sensing: internal}
      device: {r_ds_on: {typ: 90 mohm}}
    filter: {type: lc, inductor: {l: 3.3 uH}}
"""


def test_what_a_worst_default_decides_beside_a_neutral_one_is_open() -> None:
    found = finding(LIMITER.replace("TRIP", "6.5 A"), "trip-above-music")
    assert found.status is Status.OPEN, found.message
    assert "channels.main.filter.inductor.dcr" in {item.path for item in found.advice.missing}


def test_what_no_usual_resistance_would_clear_is_found() -> None:
    """4 A into 2 ohm need 1.6 ohm in line: no such coil is on the way of 27 W."""
    found = finding(LIMITER.replace("TRIP", "4 A"), "trip-above-music")
    assert found.severity is Severity.MAJOR


@pytest.mark.parametrize(("clamp", "severity"), [("77.4 V", Severity.MAJOR), ("60 V", None)])
def test_a_suppressor_that_clamps_above_the_part(clamp: str, severity: Severity | None) -> None:
    """nevenfo, docs/protection-48v.md: SMCJ48A on a stage of 65 V."""
    board = f"""
environment: {{place: indoor}}
supply: {{source: dc-source, rails: single, converter: none, v_rail: 48 V}}
channels:
  main:
    output_stage: {{topology: full-bridge, devices: integrated, device: {{v_supply_abs: 65 V}}}}
protection: {{surge: {{v_rwm: 48 V, v_clamp: {clamp}}}}}
"""
    assert finding(board, "surge-clamp").severity is severity


def test_an_assumed_surge_acquits_no_stage() -> None:
    """The surge of an unknown place is a favourable figure: nothing is met on it."""
    board = """
supply: {source: dc-source, rails: single, converter: none, v_rail: 48 V}
channels:
  main:
    output_stage: {topology: full-bridge, devices: integrated, device: {v_supply_abs: 65 V}}
protection: {surge: {v_rwm: 48 V, v_clamp: 77.4 V}}
"""
    assert finding(board, "surge-against-stage").status is Status.OPEN
