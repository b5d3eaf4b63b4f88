"""The language server over the pipes of a process, as an editor calls it."""

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from ampreview.linter.cli import main
from ampreview.linter.commands import editor as command
from ampreview.linter.judging.review import Review, review_file

from .client import Client, applied, under

SAMPLE = Path(__file__).parents[3] / "sample_specs" / "bird-call-pocket-faulty.amp.yaml"
TEXT = SAMPLE.read_text(encoding="utf-8")
URI = SAMPLE.as_uri()
GRAVITY = {"critical": 1, "major": 2, "minor": 3}  # LSP 3.17, DiagnosticSeverity
PARTS = """amplifier_parts: 1
device:
  "µ-switch 🔊": {v_dss: 80 V}
  switch-80v: {v_dss: 80 V, r_ds_on: {typ: 9 mohm, max: 12 mohm}}
"""
WITH_PART = """amplifier_spec: 1
channels:
  main:
    output_stage: {device: {part: switch-80v, v_dss: 90 V}}
"""


@pytest.fixture(scope="module")
def client() -> Iterator[Client]:
    session = Client(workspaceEdit={"documentChanges": True})
    yield session
    assert session.end() == 0


def row_of(text: str, words: str, behind: bool = False) -> tuple[int, int]:
    """Line and column, from 0, where words first stand, or end."""
    before = text[: text.index(words) + (len(words) if behind else 0)]
    return before.count("\n"), len(before.rpartition("\n")[2])


def test_findings_are_those_of_the_review_and_come_with_their_root_cause(client: Client) -> None:
    review = review_file(SAMPLE)
    assert isinstance(review, Review)
    wanted = {
        (x.check, x.place.line - 1, GRAVITY[str(x.severity)]) for x in review.failing() if x.place
    }
    for marks in (client.open(URI, TEXT), client.marks(URI, 1)):
        found = {(x["code"], x["range"]["start"]["line"], x["severity"]) for x in marks}
        assert found == wanted
        assert {x["source"] for x in marks} == {"ampreview"}
    slip = next(x for x in marks if x["code"] == "input-coupling-corner")
    causes = [x for x in slip["relatedInformation"] if "root cause" in x["message"]]
    assert under(TEXT, causes[0]["location"]["range"]) == "15 ohm"  # the planted slip


def test_typing_breaks_the_text_and_mends_it(client: Client) -> None:
    before = client.change(URI, TEXT, 2)
    broken = TEXT.replace("r_in: 15 ohm", "r_in: {15 oh")
    (mark,) = client.change(URI, broken, 3)
    assert mark["message"].startswith("not assessed")
    line, column = row_of(TEXT, "15 ohm")
    assert mark["range"]["start"] == {"line": line, "character": column}
    told = client.at("hover", URI, line, column - 4)  # on the name of the field, in broken text
    assert "r\\_in" in told["contents"]["value"]
    assert "usually 1 .. 220 kohm" in told["contents"]["value"]
    assert "Input coupling corner" in told["contents"]["value"]
    unit_missing = TEXT.replace("r_in: 15 ohm", "r_in: 15")
    (mark,) = client.change(URI, unit_missing, 4)
    assert under(unit_missing, mark["range"]) == "15"
    assert client.change(URI, TEXT, 5) == before


def test_a_quick_fix_is_an_edit_that_ends_the_finding(client: Client, tmp_path: Path) -> None:
    """In a text with line ends of two characters, and characters that count twice before it."""
    text = TEXT.replace("\n", "\r\n").replace("r_in: 15 ohm ", "r_in: 15 ohm # 🔊🔊")
    uri = (tmp_path / "x.amp.yaml").as_uri()
    marks = client.open(uri, text)
    mark = next(x for x in marks if x["code"] == "value-outside-usual-range")
    assert under(text, mark["range"]) == "15 ohm"
    context = {"diagnostics": [mark], "only": ["quickfix"]}
    asked = {"textDocument": {"uri": uri}, "range": mark["range"], "context": context}
    actions = client.ask("textDocument/codeAction", asked)
    assert "r_in to 15 kohm" in actions[0]["title"]
    (change,) = actions[0]["edit"]["documentChanges"]
    assert change["textDocument"] == {"uri": uri, "version": 1}
    after = applied(text, change["edits"])
    assert "15 kohm" in after
    assert "; was 15 ohm, for value-outside-usual-range\r\n" in after
    assert "\n" not in after.replace("\r\n", "")
    codes = {x["code"] for x in client.change(uri, after, 2)}
    assert codes
    assert not codes & {"value-outside-usual-range", "input-coupling-corner"}
    assert (
        client.ask("textDocument/codeAction", asked | {"context": {**context, "only": ["x"]}}) == []
    )


def test_columns_count_as_the_protocol_counts(client: Client, tmp_path: Path) -> None:
    text = '{amplifier_spec: 1, title: "🔊 Ω µ 𝛀", supply: {v_rail: 24}}\n'
    (mark,) = client.open((tmp_path / "u.amp.yaml").as_uri(), text)
    assert under(text, mark["range"]) == "24"
    characters = text.index("24}")
    assert mark["range"]["start"]["character"] == characters + 2  # two beyond the first plane


def test_names_words_units_and_parts_are_offered(client: Client, tmp_path: Path) -> None:
    (tmp_path / "parts.ampreview.yaml").write_text(PARTS, encoding="utf-8")
    uri = (tmp_path / "c.amp.yaml").as_uri()
    text = WITH_PART.replace("{part: switch-80v, v_dss: 90 V}", "{part: ") + "supply:\n  source: \n"
    text += "  v_rail: 24 \n  bulk: {c: {\n  pr\n"

    def offered(words: str) -> dict[str, dict[str, Any]]:
        items = client.at("completion", uri, *row_of(text, words, behind=True))
        return {x["label"]: x for x in items}

    client.open(uri, text)
    assert {"battery", "dc-source", "mains-converter"} == set(offered("source: "))
    assert {"24 V", "24 mV"} & set(offered("v_rail: 24 ")) == {"24 V"}
    assert set(offered("bulk: {c: {")) == {"value", "min", "typ", "max", "from"}
    assert set(offered("{part: ")) == {"switch-80v", "µ-switch 🔊"}
    names = offered("supply:\n  ")
    assert names["v_source"]["textEdit"]["newText"] == "v_source: "
    assert "[V]" in names["v_source"]["detail"]
    assert "v_rail" not in names  # it is there already


def test_the_name_of_a_part_leads_into_the_parts_file(client: Client, tmp_path: Path) -> None:
    parts = tmp_path / "parts.ampreview.yaml"
    parts.write_text(PARTS, encoding="utf-8")
    uri = (tmp_path / "d.amp.yaml").as_uri()
    client.open(uri, WITH_PART)
    line, column = row_of(WITH_PART, "switch-80v")
    found = client.at("definition", uri, line, column + 3)
    assert found["uri"] == parts.as_uri()
    assert under(PARTS, found["range"]) == "switch-80v"
    assert client.at("definition", uri, 0, 3) is None


def test_a_parts_file_is_judged_and_explained_by_itself(client: Client, tmp_path: Path) -> None:
    uri = (tmp_path / "parts.ampreview.yaml").as_uri()
    sound = PARTS.replace("µ-switch 🔊", "other")
    wrong = sound.replace("typ: 9 mohm", "typ: 13 mohm")
    (mark,) = client.open(uri, wrong)
    assert mark["range"]["start"]["line"] == row_of(wrong, "typ: 13 mohm")[0]
    assert "rising order" in mark["message"]
    line, column = row_of(wrong, "r_ds_on")
    assert "mohm" in client.at("hover", uri, line, column)["contents"]["value"]
    names = {x["label"] for x in client.at("completion", uri, line, column)}
    assert {"v_dss", "r_ds_on", "q_g"} <= names
    assert "device" in {x["label"] for x in client.at("completion", uri, 1, 0)}
    assert client.change(uri, sound, 2) == []
    doubtful = sound.replace("r_ds_on: {typ: 9 mohm, max: 12 mohm}", "r_ds_on: 9 kohm")
    assert "value-outside-usual-range" in {x["code"] for x in client.change(uri, doubtful, 3)}


def test_a_house_file_is_refused_where_it_is_wrong(client: Client, tmp_path: Path) -> None:
    uri = (tmp_path / "house.ampreview.yaml").as_uri()
    text = "amplifier_house: 1\nchecks_off: {dead-time-sharp: ours}\n"
    (mark,) = client.open(uri, text)
    assert under(text, mark["range"]) == "dead-time-sharp"
    assert client.change(uri, text.replace("sharp", "share"), 2) == []


def test_what_is_no_file_here_is_read_from_the_text_alone(client: Client, tmp_path: Path) -> None:
    (tmp_path / "house.ampreview.yaml").write_text("amplifier_house: 2\n", encoding="utf-8")
    for number, uri in enumerate(
        ("untitled:/x.amp.yaml", f"file://elsewhere{tmp_path}/x.amp.yaml")
    ):
        marks = client.open(uri, "amplifier_spec: 1\nsupply: {v_rail: 24 kV}\n", number + 1)
        assert "value-outside-usual-range" in {x["code"] for x in marks}
    (mark,) = client.open((tmp_path / "x.amp.yaml").as_uri(), "amplifier_spec: 1\n")
    (there,) = mark["relatedInformation"]
    assert there["location"]["uri"].endswith("house.ampreview.yaml")
    assert mark["range"]["start"] == {"line": 0, "character": 0}


def test_hostile_text_is_refused_in_one_line(client: Client, tmp_path: Path) -> None:
    uri = (tmp_path / "h.amp.yaml").as_uri()
    hostile = (
        "amplifier_spec: 1\ntitle: \x1b[31m\u202e\n",
        "amplifier_spec: 1\nx: !!python/object:os.system {}\n",
        "a: &a [*a, *a]\n" * 3,
        "{" * 3000,
        "x" * 1_100_000,
        "",
        'amplifier_spec: 1\n"<b>[x](http://evil.example)\\u001b": 1\n',
    )
    for version, text in enumerate(hostile, start=1):
        marks = client.open(uri, text) if version == 1 else client.change(uri, text, version)
        assert marks
        assert all(x["message"].isprintable() for x in marks)
        assert all(x["message"].startswith("not assessed") for x in marks)


def test_other_documents_are_left_alone(client: Client, tmp_path: Path) -> None:
    uri = (tmp_path / "other.yaml").as_uri()
    document = {"uri": uri, "languageId": "yaml", "version": 1, "text": "a: 1"}
    client.tell("textDocument/didOpen", {"textDocument": document})
    assert client.at("completion", uri, 0, 0) == []
    assert client.at("hover", uri, 0, 0) is None
    known = (tmp_path / "after.amp.yaml").as_uri()
    client.open(known, "amplifier_spec: 1\n")  # nothing came of the other one before this


def test_without_the_library_the_command_says_how_to_get_it(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(command, "find_spec", lambda name: None)
    assert main(["editor"]) == 2
    told = capsys.readouterr().err
    assert "needs pygls" in told
    assert "-m pip install 'pygls>=2'" in told


def test_what_is_open_and_holds_is_marked_too(client: Client, tmp_path: Path) -> None:
    text = WITH_PART.replace("part: switch-80v, ", "") + "milestone: prototype\n"
    marks = client.open((tmp_path / "o.amp.yaml").as_uri(), text)
    assert any(x["message"].startswith("open: state ") for x in marks)
