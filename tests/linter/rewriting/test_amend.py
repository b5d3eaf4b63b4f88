"""Remedies and answers written into copies, on two invented checks solved by hand.

``stress``: rail over rating, at most 80 %; 60 V need 75 V, of which 80 V is sold.
``gap``: dead time less turn-off delay, at least 10 ns; a delay of 38 ns needs 48 ns,
which is 50 ns in steps of 5 ns.
"""

import json
import os
from pathlib import Path
from typing import Any

import pytest

from ampreview.linter.check import AtLeast, AtMost, Check, Input, Lever, Source
from ampreview.linter.cli import main
from ampreview.linter.declare import load_schema
from ampreview.linter.evaluation.catalogue import Catalogue, Entry
from ampreview.linter.judging.review import Review, review
from ampreview.linter.reading.loading import Spec, load_text
from ampreview.linter.reading.writing import WritingError, write_text
from ampreview.linter.rewriting.amend import (
    Amendment,
    AmendmentError,
    begin,
    caused,
    copy_of,
    cured,
    cured_all,
    planned,
    with_changes,
)
from ampreview.linter.rewriting.answers_file import merger

SAMPLES = Path(__file__).parents[3] / "sample_specs"
BOOK = Source("an invented handbook", "p. 1")


def stress(v_rail: Any, v_dss: Any) -> Any:
    return v_rail / v_dss


def gap(dead_time: Any, t_d_off: Any) -> Any:
    return dead_time - t_d_off


def check(figure: Any, unit: str, limits: Any, lever: Lever, **inputs: Input) -> Entry:
    known = Check(
        title=f"Invented {figure.__name__}",
        figure=figure,
        unit=unit,
        each="channel",
        stake="rating",
        formula=" ".join(inputs),
        sentence="{figure}",
        inputs=inputs,
        limits=limits,
        levers=(lever,),
        sources=(BOOK,),
        cases=(),
        fails="",
        passes="",
    )
    return Entry(figure.__name__, "invented", "Prose.", known, "invented.py")


CATALOGUE = Catalogue(
    (
        check(
            stress,
            "%",
            AtMost("100 %", "90 %", "80 %", dict.fromkeys(("critical", "major", "minor"), BOOK)),
            Lever("output_stage.device.v_dss", ("60 V", "80 V", "100 V")),
            v_rail=Input("supply.v_rail", "V", "rail"),
            v_dss=Input("output_stage.device.v_dss", "V", "rating"),
        ),
        check(
            gap,
            "s",
            AtLeast("0 ns", "10 ns", None, dict.fromkeys(("critical", "major"), BOOK)),
            Lever("gate_drive.dead_time", "5 ns"),
            dead_time=Input("gate_drive.dead_time", "s", "dead time"),
            t_d_off=Input("output_stage.device.t_d_off", "s", "delay"),
        ),
    ),
    {},
    {},
    load_schema(),
)

TEXT = """\
amplifier_spec: 1
milestone: prototype
supply: {v_rail: 60 V}   # the bench
channels:
  left: &channel
    output_stage:
      device: {v_dss: 60 V, t_d_off: 38 ns}
    gate_drive:
      dead_time: 30ns  # short
  right: *channel
"""
HEAD = "amplifier_spec: 1\n"


def spec(text: str, name: str = "invented.amp.yaml") -> Spec:
    loaded = load_text(text, name)
    assert loaded.spec is not None, loaded.refusals
    return loaded.spec


def start(text: str = TEXT) -> Amendment:
    return begin(review(spec(text), catalogue=CATALOGUE))


def assessed(text: str) -> Review:
    return review(spec(text), catalogue=CATALOGUE)


def test_a_cure_of_a_channel_behind_an_alias_changes_the_shared_text_and_says_why() -> None:
    copy = copy_of(cured(start(), "gap", "right"))
    assert "      dead_time: 50ns  # short; was 30ns, for gap\n" in copy
    assert "  right: *channel\n" in copy
    assert not any(item.check == "gap" for item in assessed(copy).failing())


def test_a_cure_without_a_subject_is_for_every_channel() -> None:
    copy = copy_of(cured(start(), "gap"))
    shared = "dead_time: 30ns  # short", "dead_time: 50ns  # short; was 30ns, for gap"
    assert copy == TEXT.replace(*shared)


def test_a_guessed_prefix_is_written_as_an_estimate() -> None:
    copy = copy_of(
        cured(start(TEXT.replace("60 V}   #", "60 kV}   #")), "value-outside-usual-range")
    )
    assert "supply: {v_rail: {value: 60 V, from: estimate}}" in copy
    leaned = [item for found in assessed(copy).findings for item in found.evidence.assumed]
    assert {item.path for item in leaned} == {"supply.v_rail"}


@pytest.mark.parametrize("way", [cured_all, planned])
def test_all_changes_together_give_the_promised_verdict(way: Any) -> None:
    before = start()
    assert not before.before.verdict.released
    amendment = way(before)
    copy = assessed(copy_of(amendment))
    assert copy.verdict.released
    assert amendment.after.verdict.released
    assert copy.counts() == amendment.after.counts()
    loads = [
        copy.spec.values[f"channels.{name}.output_stage.device.v_dss"] for name in ("left", "right")
    ]
    assert [getattr(value, "text", "") for value in loads] == ["80 V", "80 V"]


def test_what_has_no_remedy_is_told() -> None:
    amendment = cured_all(start(TEXT.replace("60 V}   #", "120 V}   #")))
    assert not amendment.after.verdict.released
    assert any(note.startswith("stress (left) has no remedy") for note in amendment.notes)


def test_a_cure_that_is_not_needed_any_more_is_told() -> None:
    twice = cured(cured(start(), "gap", "left"), "gap", "left")
    sides = ("left", "right")
    assert list(twice.changes) == [f"channels.{side}.gate_drive.dead_time" for side in sides]
    assert twice.notes == ("gap (left) is already fixed by a change above",)


@pytest.mark.parametrize(
    ("name", "subject", "said"),
    [
        ("gapp", "", "no check named gapp"),
        ("gap", "centre", "has no answer for centre; it has for left, right"),
    ],
)
def test_a_wish_that_cannot_be_fulfilled(name: str, subject: str, said: str) -> None:
    with pytest.raises(AmendmentError, match=said):
        cured(start(), name, subject)


def test_nothing_to_cure() -> None:
    with pytest.raises(AmendmentError, match="nothing to fix"):
        cured(start(TEXT.replace("30ns", "60 ns")), "gap")


def test_a_cause_is_written_as_the_report_shows_it(capsys: pytest.CaptureFixture[str]) -> None:
    """The trace that the report widens to 1 mm, which a cure of one check alone does not."""
    lamp = str(SAMPLES / "bedside-lamp-faulty.amp.yaml")
    assert main(["assess", lamp, "--report", "json"]) == 1
    causes = json.loads(capsys.readouterr().out)["files"][0]["causes"]
    number = next(x["number"] for x in causes if "trace" in x["headline"])
    shown = causes[number - 1]["changes"][0]["text"]
    assert shown == "wiring.trace.width to 1 mm (now 0.2 mm)"
    assert main(["amend", lamp, "--cause", str(number), "--dry"]) == 1
    assert "trace: {width: 1 mm, copper" in capsys.readouterr().out
    with pytest.raises(AmendmentError, match="no cause 3; the report has 2"):
        caused(start(), [1, 3])
    assert set(caused(start(), [1, 2]).changes) == set(planned(start()).changes)


def test_what_was_measured_is_not_written_into_a_copy() -> None:
    text = TEXT + "measured: [{figure: gate_drive.dead_time, place: left, value: 31 ns}]\n"
    bench = start(text.replace("30ns ", "{value: 30 ns, from: estimate} "))
    assert bench.before.spec.stood_in
    copy = copy_of(cured(bench, "stress"))
    assert "dead_time: {value: 30 ns, from: estimate}" in copy


def test_answers_are_taken_in() -> None:
    text = TEXT.replace(", t_d_off: 38 ns", "")
    answers = HEAD + "channels: {left: {output_stage: {device: {t_d_off: 25 ns}}}}\n"
    found = merger(spec(text), spec(answers, "folder/answers.amp.yaml"))
    assert not found.conflicts
    copy = copy_of(with_changes(start(text), found.changes))
    assert "{v_dss: 60 V, t_d_off: 25 ns}  # t_d_off from answers.amp.yaml, line 2" in copy
    opened = [(x.check, x.subject) for x in assessed(copy).findings if x.status == "open"]
    assert opened == [("gap", "right")]


def test_answers_may_repeat_the_spec_and_fit_what_it_is_silent_on() -> None:
    answers = HEAD + (
        "supply: {v_rail: 60.0 V, bulk: {c: {min: 1 mF}}}\nprotection: {fuse: none}\n"
        "channels: {right: {output_stage: {device: {foster: [{r: 1 K/W, tau: 1 ms}]}}}}\n"
        "claims: {markets: [eu]}\n"
    )
    found = merger(spec(TEXT), spec(answers))
    assert not found.conflicts
    assert set(found.changes) == {
        "supply.bulk.c",
        "protection.fuse",
        "channels.right.output_stage.device.foster",
        "claims.markets",
    }
    copy = spec(copy_of(with_changes(start(), found.changes)))
    assert copy.none == {"protection.fuse"}
    assert copy.lists == {"channels.right.output_stage.device.foster": 1}
    assert copy.values["claims.markets"] == ("eu",)


def test_an_answer_takes_the_place_of_an_estimate_and_completes_a_line() -> None:
    text = TEXT.replace("t_d_off: 38 ns", "t_d_off: {typ: 38 ns}")
    text = text.replace("30ns ", "{value: 30 ns, from: estimate} ")
    said = "channels: {{left: {{output_stage: {{device: {{t_d_off: {}}}}}, gate_drive: {}}}}}\n"
    better = said.format("{typ: 38 ns, max: 44 ns}", "{dead_time: 33 ns}")
    found = merger(spec(text), spec(HEAD + better))
    assert (len(found.changes), found.conflicts) == (2, ())
    assert "{typ: 38 ns, max: 44 ns}" in copy_of(with_changes(start(text), found.changes))
    for other in ("{typ: 36 ns, max: 44 ns}", "44 ns"):
        found = merger(spec(text), spec(HEAD + said.format(other, "{}")))
        assert "t_d_off differs in the spec" in found.conflicts[0].problem


@pytest.mark.parametrize(
    ("answer", "said"),
    [
        ("supply: {v_rail: 48 V}", "supply.v_rail differs in the spec: 60 V"),
        ("supply: {bulk: {c: 1 mF}}\nprotection: {surge: {v_clamp: 40 V}}", "protection.surge"),
        ("protection: {fuse: none}", "protection.fuse differs in the spec: a section"),
        ("channels: {centre: {rated_load: 4 ohm}}", "no channel named centre"),
        ("milestone: production", "milestone differs in the spec: prototype"),
    ],
)
def test_answers_that_contradict_the_spec_are_refused_with_places(answer: str, said: str) -> None:
    text = TEXT + "protection: {surge: none, fuse: {i_rated: 5 A}}\n"
    found = merger(spec(text), spec(HEAD + answer))
    assert len(found.conflicts) == 1
    assert said in found.conflicts[0].problem
    assert found.conflicts[0].place.line == 1 + len(answer.splitlines())


# The command, on the checks that come with the program

TOY = """\
amplifier_spec: 1
supply: {source: dc-source, rails: single, v_rail: 60 V, sinks_current: yes}
channels:
  main:
    rated_load: 8 ohm   # nominal
    output_stage: {topology: half-bridge, devices: discrete, device: {v_dss: 40 V}}
"""
CURE = "device-voltage-margin"


def toy(tmp_path: Path) -> Path:
    path = tmp_path / "toy.amp.yaml"
    path.write_text(TOY, "utf-8")
    return path


def test_command_writes_a_copy_that_is_assessed_alike(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path, copy = toy(tmp_path), tmp_path / "copy.amp.yaml"
    assert main(["assess", "--remedies", "none", str(path)]) == 1
    status = main(["amend", str(path), "--fix", CURE, "-o", str(copy)])
    shown = capsys.readouterr().out
    assert "v_dss was 40 V" in shown
    assert path.read_text("utf-8") == TOY
    assert "# nominal" in copy.read_text("utf-8")
    assert main(["assess", "--remedies", "none", str(copy)]) == status
    assert sorted(item.name for item in tmp_path.iterdir()) == ["copy.amp.yaml", "toy.amp.yaml"]


@pytest.mark.parametrize("options", [["--dry", "-o", "copy"], []])
def test_command_shows_without_writing(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], options: list[str]
) -> None:
    path = toy(tmp_path)
    words = [str(tmp_path / word) if word == "copy" else word for word in options]
    assert main(["amend", str(path), "--fix", CURE, *words]) in (0, 1)
    said = capsys.readouterr().out
    assert "Nothing written" in said
    assert "LINES THAT DIFFER" in said
    assert [item.name for item in tmp_path.iterdir()] == ["toy.amp.yaml"]


def test_command_overwrites_only_when_told_to(tmp_path: Path) -> None:
    path = toy(tmp_path)
    target = tmp_path / "next.amp.yaml"
    target.write_text("mine", "utf-8")
    wish = ["amend", str(path), "--fix", CURE, "-o"]
    assert main([*wish, str(target)]) == 2
    assert target.read_text("utf-8") == "mine"
    assert main([*wish, str(target), "--overwrite"]) in (0, 1)
    assert "v_dss was 40 V" in target.read_text("utf-8")
    assert main([*wish, str(path), "--overwrite"]) == 2
    assert path.read_text("utf-8") == TOY


@pytest.mark.parametrize(
    ("words", "said"),
    [
        ([], "say what to change"),
        (["--fix", "device-voltage-margn"], "did you mean device-voltage-margin"),
        (["--fix", f"{CURE}@rear"], "has no answer for rear"),
        (["--answers", "missing.amp.yaml"], "cannot be opened"),
        (["--fix", CURE, "-o", "no/such/folder.amp.yaml"], "cannot be written"),
    ],
)
def test_command_used_wrongly(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], words: list[str], said: str
) -> None:
    assert main(["amend", str(toy(tmp_path)), *words]) == 2
    shown = capsys.readouterr()
    assert said in (shown.out + shown.err).replace("\n", " ")


def test_a_blank_of_questions_filled_in_is_taken_in(tmp_path: Path) -> None:
    path, answers, copy = (tmp_path / f"{name}.amp.yaml" for name in ("toy", "answers", "copy"))
    path.write_text(TOY, "utf-8")
    assert main(["questions", str(path), "--milestone", "prototype", "--blank", str(answers)]) == 0
    assert main(["questions", str(path), "--blank", str(answers)]) == 2
    assert main(["amend", str(path), "--answers", str(answers), "-o", str(copy)]) == 1
    assert not copy.exists()
    text = answers.read_text("utf-8")
    line = next(line for line in text.splitlines() if line.strip() in ("t_j_max:", "v_gss:"))
    filled = text.replace(line, f"{line} {'20 V' if 'v_gss' in line else '150 degC'}")
    answers.write_text(filled, "utf-8")
    assert main(["amend", str(path), "--answers", str(answers), "-o", str(copy)]) == 1
    assert "from answers.amp.yaml, line" in copy.read_text("utf-8")


# Writing


def test_writing_is_whole_or_not_at_all(tmp_path: Path) -> None:
    target = tmp_path / "a.txt"
    write_text(target, "one\r\ntwo ±\n")
    assert target.read_bytes() == "one\r\ntwo ±\n".encode()
    with pytest.raises(WritingError, match="exists already"):
        write_text(target, "three")
    with pytest.raises(UnicodeEncodeError):
        write_text(target, "four \udc80", overwrite=True)
    assert target.read_bytes() == "one\r\ntwo ±\n".encode()
    assert [item.name for item in tmp_path.iterdir()] == ["a.txt"]


def test_writing_follows_no_link_and_keeps_the_permissions(tmp_path: Path) -> None:
    target, link = tmp_path / "a.txt", tmp_path / "b.txt"
    write_text(target, "one")
    assert target.stat().st_mode & 0o777 == 0o666 & ~_umask()
    target.chmod(0o640)
    link.symlink_to(target)
    with pytest.raises(WritingError, match="is a link"):
        write_text(link, "two", overwrite=True)
    assert target.read_text("utf-8") == "one"
    write_text(target, "two", overwrite=True)
    assert target.read_text("utf-8") == "two"
    assert target.stat().st_mode & 0o777 == 0o640


def _umask() -> int:
    mask = os.umask(0)
    os.umask(mask)
    return mask
