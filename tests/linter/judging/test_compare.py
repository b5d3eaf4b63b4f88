"""Two revisions side by side, on invented checks with hand-computed answers, and in git."""

import shutil
import subprocess
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import Any

import pytest

from ampreview.linter.check import Assumption, AtLeast, AtMost, Input
from ampreview.linter.cli import main
from ampreview.linter.declare import load_schema
from ampreview.linter.evaluation.catalogue import Catalogue, Entry
from ampreview.linter.judging.compare import Comparison, compare
from ampreview.linter.judging.criteria import Criteria
from ampreview.linter.judging.review import Review, review
from ampreview.linter.reading.loading import load_text
from ampreview.linter.reading.revision import RevisionError, content_at, split
from ampreview.linter.reports.compare_text import compare_markdown

from ..toys import BOOK, STRESS, entry


def height(v_rail: Any) -> Any:
    return v_rail


HEIGHT = replace(
    STRESS,
    figure=height,
    unit="V",
    each="product",
    sentence="a rail of {v_rail}",
    inputs={"v_rail": Input("supply.v_rail", "V", "rail")},
    limits=AtMost(minor="60 V", basis={"minor": BOOK}),
)
CATALOGUE = Catalogue(
    (entry(STRESS, "stress"), entry(HEIGHT, "height")),
    {},
    {"invented": "Invented"},
    load_schema(),
)


def toy(v_rail: str, v_dss: str = "v_dss: 50 V", more: str = "", milestone: str = "") -> Review:
    text = f"amplifier_spec: 1\nsupply: {{v_rail: {v_rail}}}\n"
    text += f"channels: {{main: {{output_stage: {{device: {{{v_dss}}}}}}}}}\n{more}"
    text += f"milestone: {milestone or 'prototype'}\n"
    loaded = load_text(text, "toy.amp.yaml")
    assert loaded.spec is not None, loaded.refusals
    return review(loaded.spec, None, None, CATALOGUE, Criteria(date(2030, 1, 1)))


def effects(found: Comparison) -> dict[str, str]:
    return {changed.subject.check: changed.effect for changed in found.answers}


@pytest.mark.parametrize(
    ("old", "new", "effect", "outcome"),
    [
        ("30 V", "30 V", None, "neither"),
        ("30 V", "35 V", None, "neither"),
        ("30 V", "42 V", "appeared", "worse"),
        ("42 V", "46 V", "graver", "worse"),
        ("46 V", "51 V", "graver", "worse"),
        ("51 V", "46 V", "eased", "better"),
        ("46 V", "30 V", "cured", "better"),
        ("42 V", "30 V", "cured", "better"),
        ("46 V", "47 V", None, "worse"),
        ("47 V", "46 V", None, "better"),
        ("73.5 V", "122.5 V", None, "worse"),
    ],
)
def test_turns_of_a_rail_on_a_switch_of_50_volts(
    old: str, new: str, effect: str | None, outcome: str
) -> None:
    """80 % is 40 V, 90 % is 45 V, 100 % is 50 V; 147 % and 245 % miss 100 % by 47 % and 145 %."""
    found = compare(toy(old), toy(new))
    assert effects(found).get("stress") == effect
    assert found.outcome == outcome


def test_a_finding_that_falls_silent_is_worse() -> None:
    found = compare(toy("46 V"), toy("46 V", "r_ds_on: 20 mohm"))
    assert effects(found) == {"stress": "no longer judged"}
    assert found.outcome == "worse"


def test_a_finding_that_the_concept_no_longer_asks_about_fell_silent_too() -> None:
    """At the concept a check whose topic is not mentioned at all says nothing."""
    bare = load_text("amplifier_spec: 1\nchannels: {main: {}}\n", "x")
    assert bare.spec is not None
    now = review(bare.spec, None, None, CATALOGUE, Criteria(date(2030, 1, 1)))
    found = compare(toy("46 V", milestone="concept"), now)
    assert effects(found) == {"stress": "no longer judged"}
    assert found.outcome == "worse"


def test_an_open_item_that_turns_into_a_finding_is_no_gain() -> None:
    """25 V, a favourable guess, are 63 % of 40 V, open at production; 86 % of 29 V are minor."""
    flattering = Assumption("25 V", "favourable", BOOK)
    rail = replace(STRESS.inputs["v_rail"], default=flattering)
    mild = AtMost(major="100 %", minor="80 %", basis=dict.fromkeys(("major", "minor"), BOOK))
    leaning = replace(STRESS, inputs={**STRESS.inputs, "v_rail": rail}, limits=mild)
    catalogue = replace(CATALOGUE, entries=(entry(leaning, "stress"), entry(STRESS, "open")))

    def with_rating(v_dss: str) -> Review:
        text = f"amplifier_spec: 1\nchannels: {{main: {{output_stage: {{device: {{{v_dss}}}}}}}}}\n"
        loaded = load_text(text, "toy")
        assert loaded.spec is not None, loaded.refusals
        return review(loaded.spec, "production", None, catalogue, Criteria(date(2030, 1, 1)))

    high, low, bare = map(with_rating, ("v_dss: 40 V", "v_dss: 29 V", "r_ds_on: 20 mohm"))
    assert effects(compare(high, low)) == {"stress": "appeared"}
    assert effects(compare(low, high)) == {"stress": "eased"}
    assert compare(high, low).outcome == "worse"
    assert compare(low, high).outcome == "better"
    assert effects(compare(low, bare)) == {"stress": "no longer judged"}
    assert compare(low, bare).outcome == "worse"


def test_an_answer_that_is_missing_or_given_is_told() -> None:
    bare = toy("30 V", "r_ds_on: 20 mohm")
    assert effects(compare(toy("30 V"), bare)) == {"stress": "opened"}
    found = compare(bare, toy("30 V"))
    assert effects(found) == {"stress": "answered"}
    assert found.outcome != "worse"


def test_a_stricter_milestone_is_no_worse_design() -> None:
    """The same open item holds at the prototype and not at the concept."""
    bare = "r_ds_on: 20 mohm"
    old, new = toy("30 V", bare, milestone="concept"), toy("30 V", bare)
    assert (old.verdict.released, new.verdict.released) == (True, False)
    found = compare(old, new)
    assert (effects(found), found.outcome) == ({}, "neither")
    told = "the milestone was concept and is prototype, both compared at prototype"
    assert told in found.why
    assert compare(toy("46 V", milestone="concept"), toy("30 V")).outcome == "better"
    assert compare(toy("30 V", milestone="concept"), toy("46 V")).outcome == "worse"


def test_a_guard_that_is_gone_is_worse_though_nothing_fails() -> None:
    """Both answers met; the one on a guard rests on nothing any more."""
    lasts = replace(
        STRESS,
        figure=lambda v_trip: v_trip,
        unit="V",
        each="product",
        sentence="{v_trip}",
        inputs={"v_trip": Input("protection.under_voltage.v_trip", "V", "trip")},
        limits=AtLeast(None, "5 V", None, {"major": BOOK}),
    )
    catalogue = replace(CATALOGUE, entries=(*CATALOGUE.entries, entry(lasts, "trip")))

    def with_trip(stated: str) -> Review:
        text = f"amplifier_spec: 1\nprotection: {{under_voltage: {stated}}}\n"
        loaded = load_text(f"{text}supply: {{v_rail: 20 V}}\nchannels: {{main: {{}}}}\n", "toy")
        assert loaded.spec is not None, loaded.refusals
        return review(loaded.spec, "concept", None, catalogue, Criteria(date(2030, 1, 1)))

    old, new = with_trip("{v_trip: 9 V}"), with_trip("none")
    found = compare(old, new)
    assert (found.outcome, found.why) == ("worse", "met before and not any more: trip (product)")
    assert compare(new, old).outcome == "better"


PERMIT = (
    "deviations: [{check: stress, place: main, permitted_by: lead, reason: screened,"
    " until: production}]\n"
)


def test_a_permission_is_told_and_is_not_worse() -> None:
    found = compare(toy("46 V"), toy("46 V", more=PERMIT))
    assert effects(found) == {"stress": "permitted"}
    assert found.outcome != "worse"


def test_a_permission_that_is_lost_costs_the_verdict() -> None:
    found = compare(toy("46 V", more=PERMIT), toy("46 V"))
    assert effects(found) == {"stress": "permission lost"}
    assert found.outcome == "worse"


def test_edits_in_engineering_terms() -> None:
    found = compare(toy("40 V ± 5 %"), toy("44 V ± 5 %", "v_dss: 50 V, q_g: 9 nC"))
    edits = {edit.path: edit for edit in found.edits}
    assert set(edits) == {"supply.v_rail", "channels.main.output_stage.device.q_g"}
    rail = edits["supply.v_rail"]
    assert (rail.old, rail.new) == ("40 V ± 5 %", "44 V ± 5 %")
    assert rail.change == pytest.approx(0.10)
    assert "rail" in rail.meaning
    charge = edits["channels.main.output_stage.device.q_g"]
    assert (charge.old, charge.new, charge.change) == ("", "9 nC", None)


def test_the_same_value_in_another_spelling_is_no_edit() -> None:
    assert compare(toy("40 V"), toy("40000 mV")).edits == ()


def test_a_tolerance_that_changes_is_an_edit() -> None:
    found = compare(toy("40 V ± 5 %"), toy("40 V ± 1 %"))
    assert [edit.change for edit in found.edits] == [0.0]


def test_a_section_that_is_no_longer_fitted_is_an_edit() -> None:
    found = compare(
        toy("30 V", more="protection: {fuse: {i_rated: 5 A}}\n"),
        toy("30 V", more="protection: {fuse: none}\n"),
    )
    told = [(x.path, x.old, x.new) for x in found.edits if x.path.startswith("protection")]
    assert told == [("protection.fuse", "stated", "none")], "its fields are not told again"


def test_margins_by_how_far_they_moved() -> None:
    """From 20 V to 40 V: 80 V less 40 % is 50 % of margin, then none; 60 V less 67 %, 33 %."""
    found = compare(toy("20 V"), toy("40 V"))
    moved = {new.check: (old.evidence.margin, new.evidence.margin) for old, new in found.margins}
    assert moved["stress"] == pytest.approx((0.5, 0.0))
    assert moved["height"] == pytest.approx((2 / 3, 1 / 3))
    assert [new.check for _, new in found.margins] == ["stress", "height"]


def limit_at_zero(margin: str) -> Review:
    """The dead time left, in an invented check with limits at 0 ns and 10 ns."""
    left = replace(
        STRESS,
        figure=lambda dead_time: dead_time - 54.8e-9,
        unit="ns",
        sentence="{dead_time}",
        inputs={"dead_time": Input("gate_drive.dead_time", "ns", "dead time")},
        limits=AtLeast("0 ns", "10 ns", None, dict.fromkeys(("critical", "major"), BOOK)),
    )
    catalogue = Catalogue((Entry("left", "toy", "P.", left, "x"),), {}, {}, load_schema())
    text = (
        f"amplifier_spec: 1\nmilestone: prototype\nchannels: {{main: {{gate_drive: {margin}}}}}\n"
    )
    loaded = load_text(text, "toy.amp.yaml")
    assert loaded.spec is not None, loaded.refusals
    return review(loaded.spec, None, None, catalogue, Criteria(date(2030, 1, 1)))


def test_a_distance_counts_where_the_limit_is_zero() -> None:
    """20 ns less 54.8 ns are -34.8 ns; 5 ns less 54.8 ns are -49.8 ns."""
    old, new = (limit_at_zero(f"{{dead_time: {x} ns}}") for x in (20, 5))
    (before,), (after,) = old.findings, new.findings
    assert (before.evidence.margin, after.evidence.margin) == (None, None)
    assert (before.evidence.distance, after.evidence.distance) == pytest.approx(
        (-34.8e-9, -49.8e-9)
    )
    found = compare(old, new)
    assert (found.outcome, found.why) == ("worse", "critical: left (main) worse than before")
    assert "| -34.8 ns | -49.8 ns |" in compare_markdown(found)
    assert compare(new, old).outcome == "better"


def four(v_rail: str, ratings: tuple[str, ...], more: str = "") -> Review:
    """A rail on one channel for each rating."""
    channels = "".join(
        f"  c{n}: {{output_stage: {{device: {{{rating}}}}}}}\n" for n, rating in enumerate(ratings)
    )
    text = f"amplifier_spec: 1\nsupply: {{v_rail: {v_rail}}}\nchannels:\n{channels}{more}"
    loaded = load_text(f"{text}milestone: prototype\n", "toy.amp.yaml")
    assert loaded.spec is not None, loaded.refusals
    return review(loaded.spec, None, None, CATALOGUE, Criteria(date(2030, 1, 1)))


@pytest.mark.parametrize(
    ("old", "new", "outcome", "why"),
    [
        # 62 V on 65 V are 95 %, major; on 75 V 83 %, minor; on 60 V 103 %, critical
        (["v_dss: 65 V"] * 4, ["v_dss: 75 V"] * 4, "better", "held before, released now"),
        (["v_dss: 75 V"] * 4, ["v_dss: 65 V"] * 4, "worse", "released before, held now"),
        (
            ["v_dss: 60 V"] + ["v_dss: 65 V"] * 3,
            ["v_dss: 60 V"] * 2 + ["v_dss: 200 V"] * 2,
            "worse",
            "critical findings: 1 before, 2 now",
        ),
        (
            ["v_dss: 60 V"] * 2 + ["v_dss: 200 V"] * 2,
            ["v_dss: 60 V"] + ["v_dss: 65 V"] * 3,
            "better",
            "critical findings: 2 before, 1 now",
        ),
        (
            ["v_dss: 65 V"] * 2,
            ["v_dss: 65 V", "r_ds_on: 9 mohm"],
            "worse",
            "open items that hold: 0 before, 1 now",
        ),
        (
            ["v_dss: 65 V", "v_dss: 200 V"],
            ["v_dss: 65 V", "r_ds_on: 9 mohm"],
            "worse",
            "open items that hold: 0 before, 1 now",
        ),
        (["v_dss: 60 V", "v_dss: 50 V"], ["v_dss: 50 V", "v_dss: 60 V"], "worse", "critical: "),
    ],
)
def test_the_gate_decides_then_what_is_gravest(
    old: list[str], new: list[str], outcome: str, why: str
) -> None:
    found = compare(four("62 V", tuple(old)), four("62 V", tuple(new)))
    assert found.outcome == outcome
    assert found.why.startswith(why)


def test_fewer_majors_do_not_outweigh_a_critical_that_is_further_off() -> None:
    """62 V on 60 V and on 55 V are 103 and 113 %; two majors are gone."""
    old = four("62 V", ("v_dss: 60 V", "v_dss: 65 V", "v_dss: 65 V"))
    new = four("62 V", ("v_dss: 55 V", "v_dss: 200 V", "v_dss: 200 V"))
    found = compare(old, new)
    assert (found.outcome, found.why) == ("worse", "critical: stress (c0) worse than before")
    assert compare(new, old).outcome == "worse"  # two majors more, for a critical that is nearer


def test_a_milder_milestone_is_no_gain() -> None:
    """46 V on 50 V are a major, which does not hold at the concept."""
    old, new = toy("46 V"), toy("46 V", milestone="concept")
    assert (old.verdict.released, new.verdict.released) == (False, True)
    assert compare(old, new).outcome == "neither"
    assert compare(old, toy("51 V", milestone="concept")).outcome == "worse"


def test_a_release_is_better_though_a_minor_is_new() -> None:
    """58 V on 60 V are 97 %, major; 62 V on 200 V meet it, and are above the 60 V of height."""
    found = compare(four("58 V", ("v_dss: 60 V",) * 14), four("62 V", ("v_dss: 200 V",) * 14))
    assert effects(found) == {"stress": "cured", "height": "appeared"}
    assert len(found.old.verdict.holding) == 14
    assert found.outcome == "better"


def test_a_finding_released_by_silence_is_not_better() -> None:
    """At the concept nothing open holds; the critical of 51 V on 50 V is gone, not cured."""
    old = toy("51 V", milestone="concept")
    new = toy("51 V", "r_ds_on: 9 mohm", milestone="concept")
    assert (old.verdict.released, new.verdict.released) == (False, True)
    found = compare(old, new)
    assert found.outcome == "worse"
    assert "an answer is missing" in found.why


def test_lowered_promises_are_told_apart() -> None:
    old = "claims: {run_time: 10 h, thd: 0.1 %, markets: [eu, uk], life: 5000 h}\n"
    new = "claims: {run_time: 5 h, thd: 0.05 %, markets: [eu], life: 6000 h}\n"
    found = compare(toy("30 V", more=old), toy("30 V", more=new))
    assert [edit.path for edit in found.lowered] == ["claims.run_time", "claims.markets"]
    assert [edit.path for edit in found.edits] == ["claims.thd", "claims.life"]
    assert found.outcome == "neither"
    text = compare_markdown(found)
    assert "**NEITHER BETTER NOR WORSE, with promises lowered: run time, markets**" in text
    assert "## Lowered promises: 2" in text
    assert "## Changed in the spec: 2" in text


def test_the_count_of_a_heading_is_that_of_its_list() -> None:
    """Two channels with the same answer are one line."""
    found = compare(four("30 V", ("v_dss: 50 V",) * 2), four("42 V", ("v_dss: 50 V",) * 2))
    blocks = compare_markdown(found).split("\n## ")[1:]
    assert blocks
    for block in blocks:
        head, _, rest = block.partition("\n")
        lines = [line for line in rest.splitlines() if line.startswith(("- ", "| "))]
        rows = len(lines) - 2 * lines[0].startswith("| ")
        assert head.endswith(f": {rows}"), block


def test_no_percent_of_temperatures_and_decibels() -> None:
    more = "signal: {crest_factor: %s}\n"
    found = compare(toy("30 V", more=more % "10 dB"), toy("30 V", more=more % "12 dB"))
    assert [(x.path, x.change) for x in found.edits] == [("signal.crest_factor", None)]


def test_markdown_shows_text_of_a_spec_as_it_is() -> None:
    title = 'title: "<b>|`[a](http://x)"\n'
    text = compare_markdown(compare(toy("30 V"), toy("46 V", more=title)))
    assert r"\<b\>\|\`\[a\](`http" in text
    assert "**WORSE**" in text


@pytest.mark.parametrize(
    ("text", "parts"),
    [
        ("HEAD:a.amp.yaml", ("HEAD", "a.amp.yaml")),
        ("v1.2~3:boards/a b.amp.yaml", ("v1.2~3", "boards/a b.amp.yaml")),
        ("HEAD:./a:b.yaml", ("HEAD", "./a:b.yaml")),
        ("a.amp.yaml", None),
        ("--output=x:a.amp.yaml", None),
        ("-p:a", None),
        ("HEAD --output=x:a", None),
        (":a", None),
        ("HEAD:", None),
    ],
)
def test_what_counts_as_a_revision(text: str, parts: tuple[str, str] | None) -> None:
    assert split(text) == parts


def test_a_file_of_that_very_name_is_a_file(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    Path("HEAD:a").write_text("x")
    assert split("HEAD:a") is None


needs_git = pytest.mark.skipif(shutil.which("git") is None, reason="git is not installed")
GOOD = "amplifier_spec: 1\nsupply: {v_rail: 24 V}\n"


@pytest.fixture
def repository(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A repository with one committed spec in a folder, and the folder at hand."""
    boards = tmp_path / "boards"
    boards.mkdir()
    (boards / "a.amp.yaml").write_text(GOOD, encoding="utf-8")
    for words in (
        ["init", "-q"],
        ["add", "."],
        ["-c", "user.name=a", "-c", "user.email=a@b.example", "commit", "-qm", "one"],
    ):
        subprocess.run(["git", *words], cwd=tmp_path, check=True)
    monkeypatch.chdir(boards)
    return boards


@needs_git
def test_a_revision_is_read_from_the_top_or_from_here(repository: Path) -> None:
    (repository / "a.amp.yaml").write_text("changed")
    assert content_at("HEAD", "boards/a.amp.yaml") == GOOD.encode()
    assert content_at("HEAD", "./a.amp.yaml") == GOOD.encode()


@needs_git
@pytest.mark.parametrize("name", [("HEAD", "a.amp.yaml"), ("nosuch", "./a.amp.yaml")])
def test_what_git_does_not_know_is_told(repository: Path, name: tuple[str, str]) -> None:
    with pytest.raises(RevisionError, match=r"no such revision, or no such file"):
        content_at(*name)


@needs_git
def test_outside_a_repository(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("GIT_CEILING_DIRECTORIES", str(tmp_path.parent))
    with pytest.raises(RevisionError, match="in no git repository"):
        content_at("HEAD", "a.amp.yaml")


def test_without_git(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    monkeypatch.setenv("PATH", str(tmp_path))
    with pytest.raises(RevisionError, match="git is not installed"):
        content_at("HEAD", "a.amp.yaml")


@needs_git
def test_the_command_and_its_exit_status(
    repository: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    old = "HEAD:./a.amp.yaml"
    assert main(["compare", old, "a.amp.yaml", "--no-house"]) == 0
    (repository / "a.amp.yaml").write_text(GOOD.replace("24 V", "24 kV"), encoding="utf-8")
    assert main(["compare", old, "a.amp.yaml", "--no-house"]) == 1
    assert "Value vs. usual range" in capsys.readouterr().out
    assert main(["compare", "HEAD:./b.amp.yaml", "a.amp.yaml"]) == 2
    (repository / "a.amp.yaml").write_text("amplifier_spec: 1\nsuply: {}\n", encoding="utf-8")
    assert main(["compare", old, "a.amp.yaml"]) == 2
    assert "suply" in capsys.readouterr().out


@needs_git
def test_both_sides_are_held_against_the_same_house_file(repository: Path) -> None:
    (repository / "house.ampreview.yaml").write_text("amplifier_house: 2\n")
    assert main(["compare", "HEAD:boards/a.amp.yaml", "a.amp.yaml"]) == 2
    assert main(["compare", "HEAD:boards/a.amp.yaml", "a.amp.yaml", "--no-house"]) == 0
