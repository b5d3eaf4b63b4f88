"""What README promises, sentence by sentence, and the test that would fail if it were not so."""

import re
from pathlib import Path

import pytest

from ampreview.linter.cli import main
from ampreview.linter.evaluation.catalogue import load

ROOT = Path(__file__).parents[1]
README = " ".join((ROOT / "README.md").read_text(encoding="utf-8").split())
REPORTS, JUDGING = "linter/reports/", "linter/judging/"
PROMISES = {
    "more than two hundred named checks": "test_readme_promises.py::test_checks_are_many",
    "every tolerance at its worst corner": "test_metamorphic.py::"
    "test_a_wider_tolerance_never_eases_a_finding",
    "a change for each finding where one exists, proven by running the whole review again": "linter"
    "/changes/test_remedy.py::test_every_remedy_shown_does_what_it_says",
    "prints one page, whatever is in the spec": REPORTS
    + "test_assess_page.py::test_every_spec_fits_on_one_page",
    "What does not fit is counted": REPORTS
    + "test_assess_page.py::test_what_does_not_fit_is_counted",
    "`--check dead-time-margin` one check alone": REPORTS
    + "test_assess_page.py::test_a_check_asked_for_by_name_shows_alone",
    "The exit status is 0 for released, 1 for held, 2 for could not assess": "test_program.py::"
    "test_exit_status",
    "Every changed `*.amp.yaml` is reviewed before the commit goes in": "test_hook.py::"
    "test_a_bad_spec_holds_the_commit_and_a_good_one_passes",
    "exit status 1 where it got worse": JUDGING
    + "test_compare.py::test_the_command_and_its_exit_status",
    "promises that were lowered": JUDGING + "test_compare.py::test_lowered_promises_are_told_apart",
    "with the hash of the spec and of the rules": REPORTS
    + "test_machine_reports.py::test_hashes_are_those_of_the_files",
    "`--report sarif` marks the lines": REPORTS
    + "test_machine_reports.py::test_sarif_places_are_in_the_file",
    "a sheet for the product and one a channel (equal channels share it)": JUDGING
    + "test_worksheet.py::test_a_sheet_has_each_quantity_once_and_equal_channels_share_it",
    "writes the proven changes into a copy; comments and layout stay": "linter/rewriting/"
    "test_amend.py::test_command_writes_a_copy_that_is_assessed_alike",
    "writes the change shown for cause 2 into a copy": "linter/rewriting/test_amend.py::"
    "test_a_cause_is_written_as_the_report_shows_it",
    "filled in, `amend --answers` takes them into a copy": "linter/asking/test_questions.py::"
    "test_answers_in_the_table_come_back_into_the_spec",
    "findings as you type with their root cause": "linter/editor/test_session.py::"
    "test_findings_are_those_of_the_review_and_come_with_their_root_cause",
    "proven changes as quick fixes": "linter/editor/test_session.py::"
    "test_a_quick_fix_is_an_edit_that_ends_the_finding",
    "a case fails where it holds the design": REPORTS
    + "test_pipelines.py::test_junit_is_what_the_review_says",
    "the form of the GNU Coding Standards": REPORTS
    + "test_pipelines.py::test_lines_have_the_gnu_form_and_point_into_the_file",
    "`--quiet` leaves the exit status": "test_program.py::"
    "test_quiet_leaves_the_exit_status_and_errors",
    "a blank spec of 25 values at most": "linter/asking/test_form.py::"
    "test_a_concept_of_one_channel_takes_few_values",
    "is refused with its place, what was expected and an example": "linter/reading/"
    "test_loading.py::test_a_wrong_value_is_refused_where_it_stands",
    "with the field that it means": "rules/test_trade_words.py::"
    "test_a_word_of_the_trade_leads_to_fields_that_there_are",
    "All problems of a file come in one go": "linter/reading/test_loading.py::"
    "test_everything_wrong_comes_in_one_go_and_in_order",
    "no tags, no code, no includes": "test_readme_promises.py::test_a_spec_is_data",
    "it then stays in every report as accepted, and does not hold": JUDGING
    + "test_deviation.py::test_an_accepted_item_is_shown_as_accepted_in_every_report",
    "critical findings and open questions of safety": JUDGING
    + "test_deviation.py::test_an_open_question_of_safety_cannot_be_accepted",
    "the mains barrier, and figures that cannot be": JUDGING
    + "test_deviation.py::test_impossible_figures_and_barriers_are_beyond_permission",
    "found upward from the spec": JUDGING
    + "test_house.py::test_the_nearest_house_file_is_found_upwards",
    "Every command shows what the house file changes": "test_disclaimer.py::"
    "test_every_screen_is_an_aid_and_tells_of_the_house",
    "looser limits than those of the catalogue as such": JUDGING
    + "test_house.py::test_a_limit_is_compared_with_the_published_one",
    "`catalogue` lists what holds in the folder": JUDGING
    + "test_house.py::test_the_catalogue_shows_house_checks_and_limits",
    "No check of safety or of destruction is switched off there": JUDGING
    + "test_house.py::test_what_hurts_destroys_or_cannot_be_is_not_switched_off",
    "nor its critical limit loosened, of safety the major neither": JUDGING
    + "test_house.py::test_their_gravest_limit_cannot_be_looser",
    "With the records in the house file the pass closes, and every report tells them": JUDGING
    + "test_verified.py::"
    "test_a_sound_sample_is_released_at_production_by_what_the_report_says",
    "A value that differs becomes the limit": JUDGING
    + "test_verified.py::test_a_value_found_becomes_the_limit_with_its_record",
    "and refused where no house may loosen it": JUDGING
    + "test_verified.py::test_what_nobody_may_loosen_is_refused",
    "the tool never computes mains insulation": "rules/test_hazards.py::"
    "test_each_hazard_stands_once_and_its_check_warns_of_it",
}


@pytest.mark.parametrize(("sentence", "where"), PROMISES.items())
def test_each_promise_stands_in_readme_and_has_its_test(sentence: str, where: str) -> None:
    file, name = where.split("::")
    assert sentence in README
    assert f"\ndef {name}(" in (ROOT / "tests" / file).read_text(encoding="utf-8")


def test_checks_are_many() -> None:
    assert len(load().entries) > 200


@pytest.mark.parametrize(
    "text", ["title: !!python/object:os.system x", "title: !include other.yaml", "<<: other.yaml"]
)
def test_a_spec_is_data(text: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    file = tmp_path / "x.amp.yaml"
    file.write_text(f"amplifier_spec: 1\n{text}\n", encoding="utf-8")
    assert main(["assess", str(file)]) == 2
    assert re.search("NOT ASSESSED", capsys.readouterr().out)
