"""The documented way to a release at production: look up, measure, record, assess again.

A user follows only what the report says, on a sample in a folder of its own.
"""

import re
from datetime import date
from pathlib import Path

import pytest

from ampreview.linter.cli import main
from ampreview.linter.evaluation.catalogue import load
from ampreview.linter.evaluation.recalled import in_doubt, recalled, unverified
from ampreview.linter.finding import Status
from ampreview.linter.judging.house import House
from ampreview.linter.judging.house_file import read_house
from ampreview.linter.judging.review import review
from ampreview.linter.reading.loading import load_text
from ampreview.linter.reading.refusal import Refusal
from ampreview.linter.reports.lookup_text import lookup_text
from ampreview.linter.reports.standing import waits_for_a_text

SAMPLES = Path(__file__).parents[3] / "sample_specs"
LAMP = "bedside-lamp.amp.yaml"
HOUSE = "house.ampreview.yaml"
AT_LAST = ["assess", "--milestone", "production"]
READ = "measured.yaml"
READINGS = """\
amplifier_measured: 1
measured:
  - {figure: p_at_one_percent, value: 2.5 W, supply: 12 V, load: 6 ohm}
  - {figure: p_idle, value: 0.12 W, supply: 12 V}
  - {figure: t_air_inside, value: 35 degC, supply: 12 V, load: 6 ohm, power: 2 W,
     crest_factor: 14 dB, ambient: 25 degC, other_loads: 6 W}
  - {figure: output_stage.over_current.i_trip, value: 2.8 A}
  - {figure: protection.under_voltage.v_trip, value: 9 V}
  - {figure: protection.over_temperature.t_trip, value: 150 degC}
"""


def filled_in(text: str) -> str:
    """The records as somebody fills them in who finds what the catalogue remembers."""
    told, value = [], ""
    for line in text.splitlines():
        found = re.match(r" +# (?:required: )?([^:]+?)(?:, from memory)?: ", line)
        value = found[1] if found else value
        line = re.sub(r"text:  # (.*), edition and year", r"text: \1 of 2024", line)
        line = re.sub(r"by: +# name or role", "by: head of safety", line)
        line = re.sub(r"on: +# a day.*", "on: 2025-06-30", line)
        told.append(line.replace("found: , clause: ", f"found: {value}, clause: table 1"))
    return "\n".join(told) + "\n"


def test_a_sound_sample_is_released_at_production_by_what_the_report_says(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(tmp_path)
    Path(LAMP).write_text((SAMPLES / LAMP).read_text("utf-8"), encoding="utf-8")
    assert main([*AT_LAST, LAMP]) == 1
    told = " ".join(capsys.readouterr().out.split())
    (command,) = re.findall(r"texts?: ampreview (questions --limits) FILE", told)
    assert main([*command.split(), HOUSE, LAMP]) == 0
    capsys.readouterr()
    assert main([*AT_LAST, LAMP]) == 1, "blank records are no records"
    assert command in " ".join(capsys.readouterr().out.split())
    begun = Path(HOUSE).read_text("utf-8").replace("by:    # name", "by: N. N. # name", 1)
    Path(HOUSE).write_text(begun, encoding="utf-8")
    assert main([*AT_LAST, LAMP]) == 2
    assert "which text was looked up" in " ".join(capsys.readouterr().out.split())
    Path(HOUSE).write_text(filled_in(Path(HOUSE).read_text("utf-8")), encoding="utf-8")
    assert main([*AT_LAST, LAMP]) == 1
    told = " ".join(capsys.readouterr().out.split())
    assert "measure output power at clipping, idle loss, operating temperature, over-" in told
    assert "look up" not in told
    Path(READ).write_text(READINGS, encoding="utf-8")
    assert main([*AT_LAST, "--measured", READ, LAMP]) == 0
    told = " ".join(capsys.readouterr().out.split())
    assert "RELEASED at production" in told
    assert re.search(r"House rules: house.ampreview.yaml \(.+\), \d+ limits looked up", told)
    assert main([*AT_LAST, "--measured", READ, "--full", LAMP]) == 0
    told = " ".join(capsys.readouterr().out.split())
    assert "looked up by head of safety on 2025-06-30" in told


def taken(folder: Path, limits: str, by: str = "head of safety") -> House | tuple[Refusal, ...]:
    path = folder / HOUSE
    record = f"{{text: IEC 60000 of 2024, by: {by}, on: 2025-06-30, limits: {limits}}}"
    path.write_text(f"amplifier_house: 1\nverified:\n  - {record}\n", encoding="utf-8")
    return read_house(path)


# stored-voltage-service: major above 120 V from memory, stored-voltage-accessible: critical
@pytest.mark.parametrize(
    ("found", "told", "weakens"),
    [("120 V", "major 120 V;", False), ("100 V", "tighter than 120 V", False),
     ("150 V", "looser than 120 V", True)],
)  # fmt: skip
def test_a_value_found_becomes_the_limit_with_its_record(
    tmp_path: Path, found: str, told: str, weakens: bool
) -> None:
    limits = f"{{stored-voltage-service: {{major: {{found: {found}, clause: table 4}}}}}}"
    house = taken(tmp_path, limits)
    assert isinstance(house, House), house
    entry = house.catalogue.entry("stored-voltage-service")
    assert entry is not None
    assert entry.check.limits.major == found
    assert entry.check.limits.basis["major"].kind == "looked up"
    assert not unverified(entry.check)
    (change,) = house.changes
    assert told in change.text
    assert change.reason == "looked up by head of safety on 2025-06-30"
    assert change.safety is weakens


def constant(name: str, key: str, found: str) -> str:
    return f"{{{name}: {{{key}: {{found: {found}, clause: table 4}}}}}}"


@pytest.mark.parametrize(
    ("limits", "problem"),
    [
        (constant("stored-voltage-accessible", "critical", "9000 V"), "cannot be looser"),
        (constant("dc-fault-power", "p_safe", "30 W"), "cannot be looser"),
        (constant("device-voltage-margin", "critical", "200 %"), "cannot be looser than 100 %"),
        (constant("drain-current-margin", "t_least", "90 K"), "cannot be looser than 1 uK"),
        (constant("dc-fault-power", "p_safe", "15 V"), "V"),
        (constant("protection-present", "critical", "1"), "critical of protection-present is yes"),
        (constant("protection-present", "critical", "no"), "cannot be looser than yes"),
        (constant("dc-fault-power", "p_sane", "15 W"), "has no limit p_sane"),
        ("{dc-fault-power: {p_safe: {found: , clause: }}}", "found is not stated"),
        (constant("trace-current", "k_outer", "0 A"), "trace-current cannot be computed"),
        (constant("trace-current", "k_outer", "-1 A"), "trace-current cannot be computed"),
        ("{dc-fault-power: {p_safe: {found: 15 W, clause: [x]}}}", "clause is not stated"),
    ],
)
def test_what_nobody_may_loosen_is_refused(tmp_path: Path, limits: str, problem: str) -> None:
    refusals = taken(tmp_path, limits)
    assert isinstance(refusals, tuple)
    assert any(problem in item.problem for item in refusals), refusals


def test_a_constant_counts_as_much_as_a_limit(tmp_path: Path) -> None:
    """15 W of direct current in a coil are quoted; less may be recorded, and counts."""
    entry = load().entry("dc-fault-power")
    assert entry is not None
    assert {item.name for item in recalled(entry.check)} == {"p_safe", "p_spreads"}
    house = taken(tmp_path, constant("dc-fault-power", "p_safe", "10 W"))
    assert isinstance(house, House), house
    changed = house.catalogue.entry("dc-fault-power")
    assert changed is not None
    assert {item.name for item in recalled(changed.check)} == {"p_spreads"}
    assert "tighter" in house.changes[0].text


@pytest.mark.parametrize("by", ["tbd", "'?'", "''", "[a, b]", "{name: a}"])
def test_a_record_without_a_name_is_none(tmp_path: Path, by: str) -> None:
    refusals = taken(tmp_path, constant("dc-fault-power", "p_safe", "15 W"), by)
    assert isinstance(refusals, tuple)
    assert "who looked it up" in refusals[0].problem


@pytest.mark.parametrize(
    ("day", "refused"),
    [(date(2025, 6, 28), True),  # two days before; a day more, and it may be so further east
     (date(2025, 6, 29), False), (date(2025, 7, 1), False)],
)  # fmt: skip
def test_what_will_be_looked_up_one_day_is_not_looked_up(
    tmp_path: Path, day: date, refused: bool
) -> None:
    taken(tmp_path, constant("dc-fault-power", "p_safe", "15 W"))
    house = read_house(tmp_path / HOUSE, day)
    if not refused:
        assert isinstance(house, House), house
        return
    assert isinstance(house, tuple)
    assert house[0].problem == "2025-06-30 is still to come; the day of the review is 2025-06-28"
    assert house[0].place.line == 3


@pytest.mark.parametrize(
    ("found", "limit", "told"),
    [("yes", "1", "major yes; IEC"), ("no", "0", "major no, looser than yes of the catalogue")],
)
def test_what_has_to_be_there_is_asked_and_told_as_yes_or_no(
    tmp_path: Path, found: str, limit: str, told: str
) -> None:
    house = taken(tmp_path, constant("charger-stated", "major", found))
    assert isinstance(house, House), house
    entry = house.catalogue.entry("charger-stated")
    assert entry is not None
    assert entry.check.limits.major == limit
    assert told in house.changes[0].text


# trace-current: the chart of IPC-2221 as pages quote it; fire-power-class: nothing is uncontained
def test_a_pass_of_safety_on_a_quotation_waits_like_one_on_memory() -> None:
    text = (SAMPLES / LAMP).read_text("utf-8")
    spec = load_text(text.replace("prototype", "production", 1), LAMP).spec
    assert spec is not None
    found = review(spec)
    (before,) = (x for x in found.findings if x.check == "trace-current")
    assert before.status is Status.OPEN
    assert "as quoted elsewhere, not verified against the standard" in before.message
    assert waits_for_a_text(found, before)
    assert "# 0.048 A: IPC-2221, fit to its charts, as quoted on" in lookup_text(found)
    (nothing,) = (x for x in found.findings if x.check == "fire-power-class")
    assert nothing.status is Status.MEETS, nothing.message
    assert "fire-power-class" not in lookup_text(found)


@pytest.mark.parametrize(
    ("name", "waits"),
    [("fire-power-class", False),  # nothing at all stays below any power
     ("hearing-exposure", True),   # 0 dB are the limit itself
     ("charger-stated", True),     # 0 is a miss
     ("dc-fault-power", True)],    # its power of 15 W is a constant, not a limit
)  # fmt: skip
def test_a_figure_of_nothing_hangs_on_no_limit_that_begins_at_nothing(
    name: str, waits: bool
) -> None:
    entry = load().entry(name)
    assert entry is not None
    assert bool(in_doubt(entry.check, 0.0)) is waits
    assert in_doubt(entry.check, 0.1)


def test_where_nothing_is_left_to_look_up_no_file_is_written(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """An empty house file would stop every review below it."""
    board = tmp_path / "blank.amp.yaml"
    board.write_text("amplifier_spec: 1\n", encoding="utf-8")
    assert main(["questions", "--limits", str(tmp_path / "house.ampreview.yaml"), str(board)]) == 0
    assert "there is no file to write" in capsys.readouterr().out
    assert [x.name for x in tmp_path.iterdir()] == ["blank.amp.yaml"]
