"""Permissions to depart from a limit, on an invented catalogue with hand-computed figures.

The figure is v_rail / v_dss: 46 V on 50 V is 92 %, beyond the major limit of 90 %.
"""

import io
import json
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import Any

import pytest
from rich.console import Console

from ampreview.linter.asking.questions import groups_of
from ampreview.linter.check import AtLeast, Derived, Way
from ampreview.linter.declare import load_schema
from ampreview.linter.evaluation.catalogue import Catalogue
from ampreview.linter.finding import Finding, Severity, Status
from ampreview.linter.judging.criteria import Criteria
from ampreview.linter.judging.deviation import BUILT_IN, day_of, forbidden
from ampreview.linter.judging.review import Review, review
from ampreview.linter.reading.keyed_file import Permissions, read_deviations
from ampreview.linter.reading.loading import load_text
from ampreview.linter.reports.assess_json import json_pieces
from ampreview.linter.reports.assess_markdown import markdown_pieces
from ampreview.linter.reports.assess_page import page_lines
from ampreview.linter.reports.assess_sarif import sarif_pieces
from ampreview.linter.reports.assess_text import print_review

from ..toys import BOOK, STRESS, entry

DAY = date(2030, 6, 30)


def headroom(v_rail: Any, v_dss: Any) -> Any:
    return v_dss - v_rail


HEADROOM = replace(
    STRESS,
    figure=headroom,
    unit="V",
    limits=AtLeast("0 V", "5 V", None, dict.fromkeys(("critical", "major"), BOOK)),
)


def toy_catalogue(stake: Any = "rating", permissible: bool = True) -> Catalogue:
    stress = replace(STRESS, stake=stake, permissible=permissible)
    checks = {"rail-stress": stress, "rail-headroom": HEADROOM}
    entries = tuple(entry(check, name) for name, check in checks.items())
    return Catalogue(entries, {}, {"invented": "Invented"}, load_schema())


def toy_spec(v_rail: str, *deviations: str, milestone: str = "prototype") -> str:
    listed = "".join(f"\n  - {{{item}}}" for item in deviations)
    return (
        f"amplifier_spec: 1\nmilestone: {milestone}\nsupply: {{v_rail: {v_rail}}}\n"
        "channels:\n  main: {output_stage: {device: {v_dss: 50 V}}}\n"
        + (f"deviations:{listed}\n" if deviations else "")
    )


def permit(**changed: str) -> str:
    stated = {
        "check": "rail-stress",
        "place": "main",
        "permitted_by": "lead",
        "reason": "the part is screened",
        "until": "2030-06-30",
    } | changed
    return ", ".join(f"{key}: {value}" for key, value in stated.items())


def judged(
    v_rail: str,
    *deviations: str,
    milestone: str = "prototype",
    day: date = DAY,
    stake: Any = "rating",
    permissible: bool = True,
    beside: Permissions | None = None,
) -> Review:
    loaded = load_text(toy_spec(v_rail, *deviations, milestone=milestone), "toy.amp.yaml")
    assert loaded.spec is not None, loaded.refusals
    criteria = Criteria(day, beside)
    return review(loaded.spec, None, None, toy_catalogue(stake, permissible), criteria)


def answer(found: Review, check: str = "rail-stress") -> Finding:
    return next(item for item in found.findings if item.check == check)


def own(found: Review) -> list[str]:
    return [item.check for item in found.findings if item.check in BUILT_IN]


def test_without_permission_the_finding_holds() -> None:
    found = judged("46 V")
    assert {item.check for item in found.verdict.holding} == {"rail-stress", "rail-headroom"}


def test_a_permission_keeps_its_finding_from_holding_and_in_the_report() -> None:
    found = judged("46 V", permit())
    item = answer(found)
    assert item.status is Status.FINDING
    assert item.severity is Severity.MAJOR
    assert item.permitted == "permitted by lead until 2030-06-30: the part is screened"
    assert [x.check for x in found.verdict.holding] == ["rail-headroom"]
    assert found.counts()["permitted"] == 1
    assert own(found) == []


def test_released_when_all_that_holds_is_permitted() -> None:
    found = judged("46 V", permit(), permit(check="rail-headroom"))
    assert found.verdict.released


@pytest.mark.parametrize(("day", "expired"), [(date(2030, 6, 30), False), (date(2030, 7, 1), True)])
def test_the_last_day_still_counts(day: date, expired: bool) -> None:
    found = judged("46 V", permit(), day=day)
    assert own(found) == (["deviation-expired"] if expired else [])
    assert bool(answer(found).permitted) is not expired


@pytest.mark.parametrize(
    ("milestone", "until", "expired"),
    [
        ("concept", "prototype", False),
        ("prototype", "prototype", True),
        ("prototype", "production", False),
        ("production", "prototype", True),
    ],
)
def test_a_milestone_ends_a_permission_when_it_is_reached(
    milestone: str, until: str, expired: bool
) -> None:
    found = judged("46 V", permit(until=until), milestone=milestone)
    assert ("deviation-expired" in own(found)) is expired
    assert bool(answer(found).permitted) is not expired


@pytest.mark.parametrize(
    ("check", "up_to", "exceeded"),
    [
        ("rail-stress", "92 %", False),
        ("rail-stress", "91.9 %", True),
        ("rail-headroom", "4 V", False),
        ("rail-headroom", "4.1 V", True),
    ],
)
def test_a_departure_beyond_its_figure_holds(check: str, up_to: str, exceeded: bool) -> None:
    """46 V on 50 V: 92 % stress, 4 V headroom; the limit of one rises, of the other falls."""
    found = judged("46 V", permit(check=check, up_to=up_to))
    assert own(found) == (["deviation-exceeded"] if exceeded else [])
    assert bool(answer(found, check).permitted) is not exceeded


@pytest.mark.parametrize(
    ("check", "up_to", "too_far"),
    [
        ("rail-stress", "110 %", False),  # a fifth of 92 % above them
        ("rail-stress", "111 %", True),
        ("rail-stress", "900 %", True),
        ("rail-headroom", "3.2 V", False),  # a fifth of 4 V below them; half of 1 V is less
        ("rail-headroom", "3.1 V", True),
    ],
)
def test_a_permission_far_beyond_what_is_found_permits_nothing(
    check: str, up_to: str, too_far: bool
) -> None:
    found = judged("46 V", permit(check=check, up_to=up_to))
    assert own(found) == (["deviation-too-far"] if too_far else [])
    assert bool(answer(found, check).permitted) is not too_far


def test_a_permission_for_a_met_check_is_unused() -> None:
    found = judged("30 V", permit())
    assert own(found) == ["deviation-unused"]
    assert found.verdict.released


def on_an_open_item(stake: str = "rating", **changed: str) -> Review:
    """The rating of the switch is not stated, so both checks are open, and hold."""
    permits = "".join(
        f"  - {{{permit(check=name, **changed)}}}\n" for name in ("rail-stress", "rail-headroom")
    )
    text = "amplifier_spec: 1\nmilestone: prototype\nsupply: {v_rail: 46 V}\nchannels: {main: {}}\n"
    loaded = load_text(f"{text}deviations:\n{permits}", "toy.amp.yaml")
    assert loaded.spec is not None, loaded.refusals
    return review(loaded.spec, None, None, toy_catalogue(stake), Criteria(DAY))


def test_an_open_item_is_accepted_like_a_deviation() -> None:
    found = on_an_open_item()
    item = answer(found)
    assert item.status is Status.OPEN
    assert item.permitted == "accepted as open by lead until 2030-06-30: the part is screened"
    assert found.verdict.released
    assert found.counts()["permitted"] == 2
    assert own(found) == []


def test_an_accepted_item_is_shown_as_accepted_in_every_report() -> None:
    found, told = on_an_open_item(), "accepted as open by lead"
    page = Console(file=io.StringIO(), width=160)
    print_review(found, page)
    text = page.file.getvalue()  # type: ignore[attr-defined]
    assert text.count(told) == 2
    assert not groups_of(found), "what is accepted as open is not asked"
    outcomes = [("toy.amp.yaml", found)]
    document = "".join(markdown_pieces(outcomes))
    assert document.count(told) == 2
    assert document.count("in force, an open item") == 2
    answers = json.loads("".join(json_pieces(outcomes)))["files"][0]["answers"]
    assert [x["holds"] for x in answers if x["permitted"].startswith(told)] == [False, False]
    results = json.loads("".join(sarif_pieces(outcomes)))["runs"][0]["results"]
    assert sum(1 for x in results for y in x["suppressions"] if told in y["justification"]) == 2


def test_the_page_says_who_permitted_why_and_until_when() -> None:
    """What is permitted does not read as what merely does not hold."""
    found = judged("46 V", permit(up_to="95 %"), permit(check="rail-headroom"))
    lines = [line.plain for line in page_lines(found, 120)]
    text = " ".join(" ".join(lines).split())
    assert " Permitted" in lines
    assert "permitted by lead up to 95 % until 2030-06-30: the part is screened" in text
    assert "Does not hold" not in text
    opened = [line.plain for line in page_lines(on_an_open_item(), 160)]
    assert " Accepted as open" in opened
    assert any("accepted as open by lead until 2030-06-30" in line for line in opened)


def test_up_to_makes_no_sense_for_an_open_item() -> None:
    """The one is asked up to a share, the other up to a voltage: both have no figure."""
    found = on_an_open_item(up_to="95 %")
    assert own(found) == ["deviation-incomplete", "deviation-incomplete"]
    assert "no figure" in answer(found, "deviation-incomplete").message
    assert not answer(found).permitted
    assert not found.verdict.released


def test_an_acceptance_runs_out() -> None:
    found = on_an_open_item(until="2030-06-29")
    assert own(found) == ["deviation-expired", "deviation-expired"]
    assert not found.verdict.released


def test_an_open_question_of_safety_cannot_be_accepted() -> None:
    found = on_an_open_item("safety")
    assert own(found) == ["deviation-against-safety"]
    assert "must be answered" in answer(found, "deviation-against-safety").message
    assert [item.check for item in found.verdict.holding] == ["rail-stress"]


@pytest.mark.parametrize("nobody", ["tbd", "n/a", '"-"', "Nobody"])
def test_a_permission_has_a_name_to_it(nobody: str) -> None:
    found = judged("46 V", permit(permitted_by=nobody))
    assert own(found) == ["deviation-incomplete"]
    assert not answer(found).permitted


@pytest.mark.parametrize(
    "wrong",
    [{"until": "2030-02-30"}, {"until": "next week"}, {"until": "20300101"}, {"up_to": "5 V"}],
)
def test_what_cannot_be_read_permits_nothing(wrong: dict[str, str]) -> None:
    found = judged("46 V", permit(**wrong))
    assert own(found) == ["deviation-incomplete"]
    assert not answer(found).permitted


def test_an_unknown_check_names_the_nearest() -> None:
    found = judged("46 V", permit(check="rail-stres"))
    assert own(found) == ["deviation-unknown"]
    assert "did you mean rail-stress" in answer(found, "deviation-unknown").message


@pytest.mark.parametrize("place", ["mian", "product"])
def test_an_unknown_place_permits_nothing(place: str) -> None:
    found = judged("46 V", permit(place=place))
    assert own(found) == ["deviation-unknown"]
    assert not answer(found).permitted


def test_a_critical_finding_of_safety_holds_whatever_is_permitted() -> None:
    found = judged("51 V", permit(), permit(check="rail-headroom", up_to="-1 V"), stake="safety")
    assert answer(found).severity is Severity.CRITICAL
    assert own(found) == ["deviation-against-safety"]
    assert [item.check for item in found.verdict.holding] == ["rail-stress"]


@pytest.mark.parametrize(
    ("v_rail", "stake", "permissible", "refused"),
    [
        ("51 V", "rating", True, False),
        ("51 V", "rating", False, True),
        ("46 V", "rating", False, False),
        ("46 V", "safety", True, False),
        ("46 V", "safety", False, True),
    ],
)
def test_impossible_figures_and_barriers_are_beyond_permission(
    v_rail: str, stake: str, permissible: bool, refused: bool
) -> None:
    """51 V on 50 V is critical, 46 V major; of a barrier not even the major is permitted."""
    found = judged(v_rail, permit(up_to="105 %"), stake=stake, permissible=permissible)
    assert own(found) == (["deviation-against-safety"] if refused else [])
    assert bool(answer(found).permitted) is not refused
    assert ("rail-stress" in {item.check for item in found.verdict.holding}) is refused


def test_a_danger_that_is_major_only_for_want_of_data_is_beyond_permission() -> None:
    """51 V on an assumed 50 V: beyond the critical limit, major because it is assumed."""
    item = replace(answer(judged("51 V", stake="safety")), severity=Severity.MAJOR)
    assert forbidden(item, toy_catalogue("safety").entry("rail-stress"))
    milder = replace(item, evidence=replace(item.evidence, figure=0.92))
    assert not forbidden(milder, toy_catalogue("safety").entry("rail-stress"))


def test_a_critical_finding_of_a_rating_can_be_permitted() -> None:
    found = judged("51 V", permit(up_to="102 %"), permit(check="rail-headroom", up_to="-1 V"))
    assert answer(found).severity is Severity.CRITICAL
    assert found.verdict.released


def test_a_critical_finding_is_permitted_up_to_a_figure_only() -> None:
    """Else what was written for an open item would cover what its answer shows."""
    found = judged("51 V", permit())
    assert own(found) == ["deviation-incomplete"]
    assert "up_to is missing" in answer(found, "deviation-incomplete").message
    assert not answer(found).permitted


def test_what_was_accepted_while_open_does_not_cover_the_critical_answer() -> None:
    accepted = on_an_open_item()
    assert answer(accepted).permitted
    assert not answer(judged("51 V", permit())).permitted


@pytest.mark.parametrize(
    ("by", "stake", "refused"),
    [("physics", "rating", True), ("physics", "safety", True), ("practice", "rating", False)],
)
def test_a_statement_beyond_a_bound_of_physics_is_beyond_permission(
    by: Any, stake: Any, refused: bool
) -> None:
    """A rail of 46 V, bounded by the 40 V that a part is said to bear."""
    bound = Derived(
        "most", "V", "product", "the most", (Way(lambda: 40.0, {}, "40 V"),), bounds_by=by,
        bounds_stake=stake, bounds_from_above=("supply.v_rail",),
    )  # fmt: skip
    catalogue = replace(toy_catalogue(), derived={"most": bound})
    deviations = [permit(check="stated-value-contradicts", place="product")]
    deviations += [permit(), permit(check="rail-headroom")]
    loaded = load_text(toy_spec("46 V", *deviations), "toy.amp.yaml")
    assert loaded.spec is not None, loaded.refusals
    found = review(loaded.spec, None, None, catalogue, Criteria(DAY, None))
    assert answer(found, "stated-value-contradicts").stake == stake
    assert own(found) == (["deviation-against-safety"] if refused else [])
    assert found.verdict.released is not refused


def test_a_finding_on_stated_values_can_be_permitted_but_has_no_figure() -> None:
    """A rail of 40 kV is outside the usual range of its field."""
    unusual = permit(check="value-outside-usual-range", place="product")
    assert answer(judged("40 kV", unusual), "value-outside-usual-range").permitted
    assert "deviation-incomplete" in own(judged("40 kV", f"{unusual}, up_to: 5 V"))


def test_an_expired_permission_does_not_spoil_a_valid_one() -> None:
    found = judged("46 V", permit(until="2020-01-01"), permit(permitted_by="Grace"))
    assert answer(found).permitted.startswith("permitted by Grace")
    assert own(found) == ["deviation-expired"]


def test_text_of_a_permission_stays_on_one_line() -> None:
    found = judged("46 V", permit(reason='"screened\\n RELEASED"'))
    assert "\n" not in answer(found).permitted


def test_a_file_of_its_own_counts_like_the_list_of_the_spec(tmp_path: Path) -> None:
    path = tmp_path / "permits.yaml"
    path.write_text(f"amplifier_deviations: 1\ndeviations:\n  - {{{permit()}}}\n")
    beside = read_deviations(path)
    assert isinstance(beside, Permissions)
    found = judged("46 V", beside=beside)
    assert answer(found).permitted
    place = beside.deviations[0].at
    assert (place.file, place.line) == (str(path), 3)


def test_a_faulty_permission_of_a_file_names_that_file(tmp_path: Path) -> None:
    path = tmp_path / "permits.yaml"
    path.write_text(f"amplifier_deviations: 1\ndeviations:\n  - {{{permit(place='mian')}}}\n")
    beside = read_deviations(path)
    assert isinstance(beside, Permissions)
    message = answer(judged("46 V", beside=beside), "deviation-unknown").message
    assert str(path) in message


@pytest.mark.parametrize(
    ("text", "problem", "line"),
    [
        ("", "empty", 1),
        ("deviations: []\n", "format version is not stated", 1),
        ("amplifier_deviations: 2\n", "not known here", 1),
        ("deviations: []\namplifier_deviations: 1\n", "does not come first", 2),
        ("amplifier_deviations: 1\ndeviation: []\n", "`deviation` is not known", 2),
        ("amplifier_deviations: 1\ndeviations: x\n", "not a list", 2),
        ("amplifier_deviations: 1\ndeviations:\n  - {check: a}\n", "is not stated", 3),
        ("amplifier_deviations: 1\ndeviations:\n  - {chek: a}\n", "`chek` is not known", 3),
        ("amplifier_deviations: 1\nx: [\n", "", 2),
    ],
)
def test_a_bad_file_is_refused_with_its_place(
    tmp_path: Path, text: str, problem: str, line: int
) -> None:
    path = tmp_path / "permits.yaml"
    path.write_text(text)
    refusals = read_deviations(path)
    assert isinstance(refusals, tuple)
    assert any(problem in item.problem and item.place.line >= line for item in refusals)
    assert all(item.place.file == str(path) for item in refusals)
    assert all("spec" not in item.example for item in refusals)


def test_a_file_that_is_not_there_is_refused(tmp_path: Path) -> None:
    refusals = read_deviations(tmp_path / "nowhere.yaml")
    assert isinstance(refusals, tuple)
    assert "cannot be opened" in refusals[0].problem


@pytest.mark.parametrize(
    ("text", "day"),
    [("2030-06-30", date(2030, 6, 30)), ("2024-02-29", date(2024, 2, 29)), ("2023-02-29", None)],
)
def test_days_are_those_of_the_calendar(text: str, day: date | None) -> None:
    assert day_of(text) == day
