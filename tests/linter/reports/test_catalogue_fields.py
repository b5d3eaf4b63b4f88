"""The glossary of fields and derived quantities, against the models and the spec's words."""

import re

import pytest

from ampreview.linter.cli import main
from ampreview.linter.declare import load_schema
from ampreview.linter.evaluation.catalogue import load

SCHEMA = load_schema()
FIELDS = SCHEMA.fields

LEAVES = {
    path
    for path, field in FIELDS.items()
    if field.kind not in ("section", "sections", "named sections")
}


def printed(capsys: pytest.CaptureFixture[str], *words: str) -> str:
    assert main(["catalogue", *words]) == 0
    return capsys.readouterr().out


def said(text: str) -> str:
    """The text as one line, so that a check does not depend on the wrapping."""
    return " ".join(text.split())


def markdown_cells(text: str) -> list[list[str]]:
    rows = [line for line in text.splitlines() if line.startswith("| ")]
    return [[cell.strip() for cell in re.split(r"(?<!\\)\|", row)[1:-1]] for row in rows]


def test_every_field_is_told_once(capsys: pytest.CaptureFixture[str]) -> None:
    text = printed(capsys, "--fields", "--markdown")
    names = [row[0].replace("\\", "") for row in markdown_cells(text)]
    told = [name for name in names if name not in ("field", "---")]
    assert sorted(told) == sorted(path.rpartition(".")[2] for path in LEAVES)


def test_all_that_is_known_of_a_field_is_told(capsys: pytest.CaptureFixture[str]) -> None:
    text = said(printed(capsys, "--fields"))
    for path in LEAVES:
        field = FIELDS[path]
        parts = [field.meaning, ", ".join(field.words), field.usual, field.usual_high]
        parts += [field.possible, "" if field.words else field.example]
        parts += [f"for {field.concerns.text}" if field.concerns else ""]
        for part in parts:
            assert said(part) in text, path


def test_a_field_as_a_reader_would_ask_for_it(capsys: pytest.CaptureFixture[str]) -> None:
    text = said(printed(capsys, "--fields", "channels.left.filter.inductor.dcr"))
    assert text.startswith("channels.NAME.filter.inductor")
    assert "dcr [ohm] DC resistance of ONE inductor at 20 degC" in text
    assert "min, typ and max as printed" in text
    assert "default: 0 ohm, the better case" in text
    assert "i_sat" not in text


@pytest.mark.parametrize(
    ("path", "inside", "outside"),
    [
        ("filter.inductor", "i_sat_drop", "tan_delta"),
        ("channels", "rated_power", "air_travel"),
        ("deviations", "permitted_by", "rated_power"),
        ("output_stage.device.foster", "channels.NAME.output_stage.device.foster[]", "v_dss"),
    ],
)
def test_a_section_takes_in_what_lies_below_it(
    capsys: pytest.CaptureFixture[str], path: str, inside: str, outside: str
) -> None:
    text = printed(capsys, "--fields", path)
    assert inside in text
    assert outside not in text


def test_an_unknown_path_or_name_is_refused(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["catalogue", "--fields", "filter.inductr"]) == 2
    assert "did you mean filter.inductor" in capsys.readouterr().err
    assert main(["catalogue", "--quantities", "p_cores"]) == 2
    assert "did you mean p_core" in capsys.readouterr().err
    assert main(["catalogue", "dead-time-margin", "--markdown"]) == 2
    assert main(["catalogue", "dead-time-margin", "--fields"]) == 2


def test_every_quantity_is_told_with_formula_and_place(capsys: pytest.CaptureFixture[str]) -> None:
    text = said(printed(capsys, "--quantities"))
    for item in load().derived.values():
        assert item.name in text
        assert said(item.meaning) in text
        for way in item.ways:
            assert f"= {said(way.formula)}" in text, item.name
        if item.stated_at:
            assert f"may be stated as {item.stated_at}" in text


def test_names_of_a_formula_lead_to_fields_and_quantities(
    capsys: pytest.CaptureFixture[str],
) -> None:
    text = said(printed(capsys, "--quantities", "t_edge"))
    assert "q = output_stage.device.q_sw, r_on = r_gate_on" in text
    assert "where output_stage.devices is discrete" in text


def test_quantities_as_markdown_are_whole_tables(capsys: pytest.CaptureFixture[str]) -> None:
    rows = markdown_cells(printed(capsys, "--quantities", "--markdown"))
    assert {len(row) for row in rows} == {5}
    assert len(rows) - 4 == len(load().derived)


@pytest.mark.parametrize("width", [60, 80, 120])
@pytest.mark.parametrize("what", ["--fields", "--quantities"])
def test_lines_keep_within_the_terminal(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch, what: str, width: int
) -> None:
    monkeypatch.setenv("COLUMNS", str(width))
    lines = printed(capsys, what).splitlines()
    assert max(map(len, lines)) <= width
    assert not [line for line in lines if line != line.rstrip()]
