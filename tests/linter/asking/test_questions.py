"""Questions behind the open answers of invented checks; the counts are done by hand."""

import csv
import re
from dataclasses import replace
from math import prod
from pathlib import Path
from typing import Any

import pytest

from ampreview.linter.asking.letter import letter_of
from ampreview.linter.asking.questions import QuestionGroup, SupplierQuestion, groups_of
from ampreview.linter.check import AtMost, Check, Input, Source
from ampreview.linter.cli import main
from ampreview.linter.declare import load_schema, usual_bounds
from ampreview.linter.evaluation.catalogue import Catalogue, Entry
from ampreview.linter.judging.review import Review, review
from ampreview.linter.reading.loading import load_file, load_text
from ampreview.linter.reports.letter_text import answers_table, letter_markdown, letter_text
from ampreview.linter.reports.questions_text import (
    blank_text,
    condition,
    heading,
)
from ampreview.linter.rewriting.answers_file import merger
from ampreview.linter.rewriting.answers_table import load_table

SCHEMA = load_schema()
FIELDS = SCHEMA.fields

BOOK = Source("an invented handbook", "p. 1")
DEVICE = "output_stage.device"


def total(*inputs: Any) -> Any:
    """A figure that hangs on every number: none of its usual range settles it alone."""
    return prod(float(item) for item in inputs if not isinstance(item, str))


def middle(path: str) -> float:
    """The middle of a field's usual range in SI; 1 for a section."""
    bounds = usual_bounds(FIELDS[path])
    return ((bounds[0] or bounds[1] / 1e3) * bounds[1]) ** 0.5 if bounds else 1.0


def entry(name: str, each: Any, *paths: str) -> Entry:
    inputs = {f"x{n}": Input(path, FIELDS[path].unit, "") for n, path in enumerate(paths)}
    check = Check(
        title=f"Title of {name}",
        figure=total,
        unit="1",
        each=each,
        stake="rating",
        formula=" ".join(inputs),
        sentence="{figure}",
        inputs=inputs,
        limits=AtMost(f"{prod(map(middle, paths)):g}", basis={"critical": BOOK}),
        sources=(BOOK,),
        cases=(),
        asked_from="concept",
        fails="",
        passes="",
    )
    return Entry(name, "invented", "Prose.", check, "invented.py")


CATALOGUE = Catalogue(
    (
        entry("one", "channel", f"{DEVICE}.v_dss"),
        entry("two", "channel", f"{DEVICE}.v_dss", f"{DEVICE}.t_d_off"),
        entry("three", "channel", f"{DEVICE}.t_d_off", "filter.inductor.i_sat"),
        entry("four", "product", "supply.bulk.c", "supply.v_rail"),
        entry("five", "channel", "lead"),
        entry("six", "product", "supply.p_auxiliary"),
    ),
    {},
    {},
    load_schema(),
)

SAMPLES = Path(__file__).parents[3] / "sample_specs"
SHARED = """\
amplifier_spec: 1
title: Two*channels
supply: {v_rail: 24 V}
channels:
  left: &channel
    output_stage: {device: {part: XYZ1}}
  right: *channel
"""
UNLIKE = """\
amplifier_spec: 1
channels:
  left: {output_stage: {device: {part: XYZ1, r_g_test: 5 ohm}}}
  right: {output_stage: {device: {part: XYZ2}}}
"""


def reviewed(text: str, milestone: Any = "concept") -> Review:
    spec = load_text(text, "invented.amp.yaml").spec
    assert spec is not None
    return review(spec, milestone, catalogue=CATALOGUE)


def asked(groups: tuple[QuestionGroup, ...]) -> dict[str, SupplierQuestion]:
    return {item.local: item for group in groups for item in group.questions}


def test_questions_are_grouped_by_part_and_counted_by_open_answers() -> None:
    groups = groups_of(reviewed(SHARED))
    assert [(heading(group), group.unlocks) for group in groups] == [
        ("Output devices of channels left and right, XYZ1", 6),
        ("Filter inductor of channels left and right", 2),
        ("Loudspeaker lead of channels left and right", 2),
        ("Bulk capacitors", 1),
    ]
    found = asked(groups)
    assert (found[f"{DEVICE}.v_dss"].unlocks, found[f"{DEVICE}.v_dss"].alone) == (4, 2)
    assert (found[f"{DEVICE}.t_d_off"].unlocks, found[f"{DEVICE}.t_d_off"].alone) == (4, 0)
    assert found["supply.bulk.c"].needed_for == ("Title of four",)
    assert [item.local for item in groups[0].questions] == [f"{DEVICE}.v_dss", f"{DEVICE}.t_d_off"]


def test_channels_with_other_parts_are_asked_apart() -> None:
    groups = groups_of(reviewed(UNLIKE))
    heads = [heading(group) for group in groups]
    assert "Output devices of channel left, XYZ1" in heads
    assert "Output devices of channel right, XYZ2" in heads
    assert "Filter inductor of channel left" in heads


def test_the_condition_names_what_has_to_be_stated_with_it() -> None:
    left, right = (
        next(
            q
            for g in groups_of(reviewed(UNLIKE))
            for q in g.questions
            if q.paths == (f"channels.{name}.{DEVICE}.t_d_off",)
        )
        for name in ("left", "right")
    )
    assert "min, typ and max as printed; state with it r_g_test" in condition(right)
    assert "state with it" not in condition(left)
    inductor = asked(groups_of(reviewed(SHARED)))["filter.inductor.i_sat"]
    assert "25 degC" in condition(inductor)
    assert "i_sat_drop" in inductor.with_it


def test_boards_are_not_built_on_what_is_only_assumed_in_their_favour() -> None:
    assert "supply.p_auxiliary" not in asked(groups_of(reviewed(SHARED, "concept")))
    assert "supply.p_auxiliary" in asked(groups_of(reviewed(SHARED, "prototype")))


def test_a_spec_without_gaps_brings_no_question() -> None:
    text = "amplifier_spec: 1\nsupply: {v_rail: 24 V, bulk: {c: 1 mF}}\n"
    found = reviewed(text)
    assert groups_of(found) == ()
    assert "nothing to ask" in letter_text(found, letter_of(found, ()))


def test_the_blank_asks_for_exactly_the_open_leaves() -> None:
    found = reviewed(SHARED)
    text = blank_text(found, groups_of(found))
    names = [line.strip() for line in text.splitlines() if re.fullmatch(r" *#?\w+:", line)]
    assert names == [
        "supply:",
        "bulk:",
        "c:",
        "channels:",
        "#lead:",
        "#length:",
        "#area:",
        "output_stage:",
        "device:",
        "v_dss:",
        "t_d_off:",
        "filter:",
        "inductor:",
        "i_sat:",
        "right:",
    ]
    assert "    <<: *channel\n" in text
    assert load_text(text, "blank").spec is not None


def test_the_blank_of_unlike_channels_asks_each() -> None:
    found = reviewed(UNLIKE)
    text = blank_text(found, groups_of(found))
    assert text.count("v_dss:") == 2
    assert "<<" not in text
    filled = text.replace("v_dss:", "v_dss: 60 V")
    spec = load_text(filled, "blank").spec
    assert spec is not None
    assert {f"channels.{name}.{DEVICE}.v_dss" for name in ("left", "right")} <= set(spec.values)


def test_markdown_has_a_row_for_each_question_and_escapes_the_spec() -> None:
    found = reviewed(SHARED)
    text = letter_markdown(found, letter_of(found, ()))
    assert text.startswith("# Two\\*channels: what we need to know\n")
    rows = [line for line in text.splitlines() if line.startswith("| ") and "---" not in line]
    assert len(rows) == 1 + 5
    assert {line.count(" |") for line in rows} == {5}
    assert "| drain-source voltage rating; a limit \\[v\\_dss, in V\\] | Output devices" in text


def test_the_whole_letter_has_what_its_first_page_leaves_out() -> None:
    found = reviewed(SHARED)
    letter = letter_of(found, ())
    many = replace(letter, provide=letter.provide * 5)
    page, whole = (letter_text(found, many, whole) for whole in (False, True))
    assert page.count("   - ") == 12
    assert "and 13 more" in page
    assert whole.count("   - ") == 25
    assert "more; we ask" not in whole


def test_answers_in_the_table_come_back_into_the_spec(tmp_path: Path) -> None:
    found = reviewed(SHARED)
    rows = list(csv.reader(answers_table(letter_of(found, ())).splitlines()))
    place = rows[0].index("field")
    answers = {f"{DEVICE}.v_dss": "60 V", f"{DEVICE}.t_d_off": "{min: 8 ns, typ: 12 ns}"}
    for row in rows[1:]:
        row[-1] = next((x for path, x in answers.items() if row[place].endswith(path)), "")
    path = tmp_path / "answers.csv"
    with path.open("w", encoding="utf-8", newline="") as stream:
        csv.writer(stream, delimiter=";").writerows(rows)
    loaded = load_table(path)
    assert loaded.spec is not None
    changes = merger(found.spec, loaded.spec).changes
    assert {local: change.data for local, change in changes.items()} == {
        f"channels.{name}.{local}": text
        for name in ("left", "right")
        for local, text in (
            (f"{DEVICE}.v_dss", "60 V"),
            (f"{DEVICE}.t_d_off", {"min": "8 ns", "typ": "12 ns"}),
        )
    }


@pytest.mark.parametrize(
    ("text", "told", "line"),
    [
        ("what,answer\nx,1\n", "no table of answers", 1),
        ("field,your value\nsupply.v_rail,24\n", "has no unit", 2),
        ("field,your value\nsupply.v_rial,24 V\n", "is not known", 2),
        ("", "no table of answers", 1),
    ],
)
def test_a_table_that_cannot_be_read_is_refused_with_its_row(
    tmp_path: Path, text: str, told: str, line: int
) -> None:
    path = tmp_path / "answers.csv"
    path.write_text(text, "utf-8")
    (refusal,) = load_table(path).refusals
    assert told in refusal.problem
    assert refusal.place.line == line


def test_a_title_cannot_break_out_of_the_comment_of_the_blank() -> None:
    found = reviewed(SHARED.replace("Two*channels", '"a\\nsupply: {v_rail: 1 V}\\n"'))
    text = blank_text(found, groups_of(found))
    spec = load_text(text, "blank").spec
    assert spec is not None
    assert set(spec.values) == {"amplifier_spec"}


def test_every_section_has_a_part_of_its_own_or_above_it() -> None:
    sections = [path for path, field in FIELDS.items() if field.kind == "section"]
    parts = [FIELDS[path].part for path in sections]
    assert all(parts)
    assert len(set(parts)) == len(parts)


@pytest.mark.parametrize("width", [60, 80, 200])
def test_command_prints_within_the_width(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: Any, width: int
) -> None:
    path = tmp_path / "toy.amp.yaml"
    path.write_text(SHARED, "utf-8")
    monkeypatch.setenv("COLUMNS", str(width))
    assert main(["questions", str(path), "--milestone", "production"]) == 0
    said = capsys.readouterr().out
    assert "Please provide" in said
    assert max(len(line) for line in said.splitlines()) <= width


def test_command_used_wrongly(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["questions", str(tmp_path / "missing.amp.yaml")]) == 2
    assert "NOT ASSESSED" in capsys.readouterr().out
    path = tmp_path / "toy.amp.yaml"
    path.write_text(SHARED, "utf-8")
    assert main(["questions", str(path), "--blank", str(tmp_path / "no" / "b.amp.yaml")]) == 2
    with pytest.raises(SystemExit) as stop:
        main(["questions", str(path), "--blank", "b", "--all"])
    assert stop.value.code == 2


def test_a_letter_asks_for_what_can_be_critical_before_what_can_be_major() -> None:
    """The core data of an inductor can at most show a major finding."""
    spec = load_file(SAMPLES / "foyer-proposal.amp.yaml").spec
    assert spec is not None
    found = review(spec)
    critical = {x.check.title for x in found.catalogue.entries if x.check.limits.critical}
    wanted = letter_of(found, ()).provide
    core = [x.question.local for x in wanted].index("filter.inductor.turns")
    unbounded = [item.needed_for in critical for item in wanted if not item.bounds]
    assert unbounded == sorted(unbounded, reverse=True)
    assert core > 3
