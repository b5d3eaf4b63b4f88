"""Reports for machines and for the file: JSON, SARIF 2.1.0, Markdown.

The facts about SARIF are those of the OASIS Standard 2.1.0 (section numbers beside each);
its schema allows no property that it does not name, so ``ALLOWED`` names them.
"""

import hashlib
import json
import re
from pathlib import Path
from typing import Any

import pytest

from ampreview.linter.cli import main
from ampreview.linter.evaluation.threshold import NO_SHARE
from ampreview.linter.judging.review import Review, review_file
from ampreview.linter.reports.identity import rules_hash, text_hash
from ampreview.linter.reports.phrases import escaped
from ampreview.linter.reports.verdict import reason

SAMPLES = Path(__file__).parents[3] / "sample_specs"

HOSTILE = "<script>|`[a](http://evil.example)` {0} # *b*\\n## RELEASED"
SPEC = f"""amplifier_spec: 1
title: "{HOSTILE}"
milestone: prototype
supply: {{rails: single, source: dc-source, v_rail: 24 kV}}
channels:
  main:
    rated_power: 20 W
    rated_load: 8 ohm
    output_stage: {{topology: full-bridge, devices: discrete, device: {{v_dss: 40 V}}}}
deviations:
  - {{check: value-outside-usual-range, place: product, permitted_by: "{HOSTILE}",
     reason: "{HOSTILE}", until: production}}
"""
REFUSED = 'amplifier_spec: 1\n"su\\u001bpply<b>": {}\nsupply: {v_rail: 24}\n'
HOUSE = """amplifier_house: 1
limits: {stored-energy: {minor: 25 J, reason: "keyed <b> [plug](http://evil.example)"}}
"""


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder at hand with a spec, one that is refused, and a house file."""
    (tmp_path / "a b.amp.yaml").write_text(SPEC, encoding="utf-8")
    (tmp_path / "refused.amp.yaml").write_text(REFUSED, encoding="utf-8")
    (tmp_path / "house.ampreview.yaml").write_text(HOUSE, encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    return tmp_path


def report(kind: str, *words: str, files: tuple[str, ...] = ("a b.amp.yaml",)) -> str:
    """The text of a report; the exit status must be held, or not assessed."""
    out = Path("report.out")
    words_ = ["--report", kind, "-o", str(out), "--overwrite", "--remedies", "none", *words]
    status = main(["assess", *files, *words_])
    assert status == (2 if "refused.amp.yaml" in files else 1)
    return out.read_text(encoding="utf-8")


BOTH = ("a b.amp.yaml", "refused.amp.yaml")


@pytest.mark.parametrize("kind", ["json", "sarif", "markdown", "text", "junit", "lines"])
def test_the_same_input_gives_the_same_bytes(folder: Path, kind: str) -> None:
    assert report(kind, files=BOTH) == report(kind, files=BOTH)


@pytest.mark.parametrize("kind", ["json", "sarif", "markdown", "text", "junit", "lines"])
def test_a_report_holds_no_control_characters(folder: Path, kind: str) -> None:
    text = report(kind, files=BOTH)
    assert not re.search(r"[\x00-\x08\x0b-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069]", text)


@pytest.mark.parametrize("kind", ["json", "sarif", "markdown", "text", "junit"])
def test_the_date_stands_only_where_it_is_asked_for(folder: Path, kind: str) -> None:
    assert "2031-05-06" not in report(kind, "--date", "2031-05-06")
    assert "2031-05-06" in report(kind, "--date", "2031-05-06", "--dated")


def test_hashes_are_those_of_the_files(folder: Path) -> None:
    expected = hashlib.sha256((folder / "a b.amp.yaml").read_bytes()).hexdigest()
    house = hashlib.sha256((folder / "house.ampreview.yaml").read_bytes()).hexdigest()
    for kind in ("json", "sarif", "markdown"):
        text = report(kind)
        assert expected in text
        assert house in text
        assert rules_hash("ampreview.rules") in text


def test_the_hash_of_a_text_is_that_of_the_standard() -> None:
    """FIPS 180-2, appendix B.1: the message abc."""
    digest = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"
    assert text_hash("abc") == digest


def test_the_hash_of_rules_follows_their_text(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    found = []
    for number, text in enumerate(("x = 1\n", "x = 1\r\n", "x = 2\n")):
        package = tmp_path / f"p{number}" / f"hashed_{number}"
        package.mkdir(parents=True)
        (package / "__init__.py").write_bytes(text.encode())
        monkeypatch.syspath_prepend(str(package.parent))
        found.append(rules_hash(f"hashed_{number}"))
    assert found[0] == found[1] != found[2]


# JSON


def test_json_lists_exactly_what_must_change(folder: Path) -> None:
    data = json.loads(report("json"))["files"][0]
    holding = {(x["check"], x["subject"]) for x in data["answers"] if x["holds"]}
    named = {(x["check"], x["subject"]) for x in data["to_be_released"]}
    assert data["verdict"] == "held"
    assert named == holding
    assert all(x["demand"] for x in data["to_be_released"])
    grave = {(x["check"], x["subject"]): x["severity"] or "open" for x in data["answers"]}
    order = [grave[x["check"], x["subject"]] for x in data["to_be_released"]]
    assert order == sorted(order, key=["critical", "major", "minor", "open"].index)
    graver = [x for x in data["answers"] if x["severity"] in ("critical", "major")]
    assert {(x["check"], x["subject"]) for x in graver if not x["permitted"]} <= holding


def test_json_keeps_a_permitted_finding_and_does_not_hold_it(folder: Path) -> None:
    answers = json.loads(report("json"))["files"][0]["answers"]
    permitted = [x for x in answers if x["permitted"]]
    assert [x["check"] for x in permitted] == ["value-outside-usual-range"]
    assert permitted[0]["severity"] == "major"
    assert permitted[0]["holds"] is False


def test_json_is_ascii_and_safe_inside_html(folder: Path) -> None:
    text = report("json", files=BOTH)
    assert text.isascii()
    assert not set("<>&") & set(text)
    assert json.loads(text)["files"][0]["title"].endswith("## RELEASED")


def test_json_tells_what_could_not_be_assessed(folder: Path) -> None:
    first, second = json.loads(report("json", files=BOTH))["files"]
    assert (first["assessed"], second["assessed"]) == (True, False)
    lines = {(x["place"]["line"], bool(x["expected"])) for x in second["refusals"]}
    assert lines == {(2, True), (3, True)}


# SARIF

ALLOWED = {
    "log": {"$schema", "version", "runs"},
    "run": {
        *("tool", "columnKind", "defaultEncoding", "invocations", "results", "artifacts"),
        "properties",
    },
    "component": {"name", "version", "rules"},
    "rule": {"id", "shortDescription", "fullDescription", "properties"},
    "result": {
        *("ruleId", "ruleIndex", "kind", "level", "message", "locations", "relatedLocations"),
        *("suppressions", "partialFingerprints", "properties"),
    },
    "location": {"id", "physicalLocation", "logicalLocations"},
    "physical": {"artifactLocation", "region"},
    "suppression": {"kind", "status", "justification", "location"},
    "artifact": {"location", "mimeType", "hashes"},
    "invocation": {
        *("executionSuccessful", "toolConfigurationNotifications"),
        "toolExecutionNotifications",
    },
    "notification": {"level", "message", "locations"},
}


def only(data: dict[str, Any], kind: str, *required: str) -> None:
    assert data.keys() <= ALLOWED[kind]
    assert data.keys() >= set(required)


def sarif(*words: str, files: tuple[str, ...] = BOTH) -> dict[str, Any]:
    log: dict[str, Any] = json.loads(report("sarif", "--full", *words, files=files))
    only(log, "log", "version", "runs")  # 3.13
    assert log["version"] == "2.1.0"  # 3.13.2
    run: dict[str, Any] = log["runs"][0]
    only(run, "run", "tool")  # 3.14.6
    return run


def test_sarif_tool_and_rules(folder: Path) -> None:
    driver = sarif()["tool"]["driver"]
    only(driver, "component", "name")  # 3.19.8
    names = [rule["id"] for rule in driver["rules"]]
    assert len(names) == len(set(names))  # 3.19.23: rules are unique
    for rule in driver["rules"]:
        only(rule, "rule", "id")  # 3.49.3


def test_sarif_kinds_and_levels(folder: Path) -> None:
    run = sarif()
    names = [rule["id"] for rule in run["tool"]["driver"]["rules"]]
    kinds = set()
    for result in run["results"]:
        only(result, "result", "message")  # 3.27.11
        kinds.add(result["kind"])
        assert result["kind"] in ("fail", "pass", "open", "notApplicable")  # 3.27.9
        expected = ("error", "warning", "note") if result["kind"] == "fail" else ("none",)
        assert result["level"] in expected  # 3.27.10
        assert names[result["ruleIndex"]] == result["ruleId"]  # 3.27.6
    assert kinds == {"fail", "pass", "open", "notApplicable"}


def test_sarif_levels_follow_severity(folder: Path) -> None:
    answers = json.loads(report("json"))["files"][0]["answers"]
    results = sarif(files=("a b.amp.yaml",))["results"]
    level = {"critical": "error", "major": "warning", "minor": "note", None: "none"}
    assert [level[x["severity"]] for x in answers] == [x["level"] for x in results]


def test_sarif_places_are_in_the_file(folder: Path) -> None:
    run = sarif()
    lines = SPEC.splitlines()
    assert run["columnKind"] == "unicodeCodePoints"  # 3.14.17
    for result in run["results"]:
        places = result["locations"] + result.get("relatedLocations", [])
        numbers = [place["id"] for place in result.get("relatedLocations", [])]
        assert len(numbers) == len(set(numbers))  # 3.28.2
        for place in places:
            only(place, "location")
            physical = place["physicalLocation"]
            only(physical, "physical", "artifactLocation")  # 3.29.2
            region = physical["region"]
            assert 1 <= region["startLine"] <= len(lines)  # 3.30.5
            assert 1 <= region["startColumn"] <= len(lines[region["startLine"] - 1]) + 1
            location = physical["artifactLocation"]
            assert location == run["artifacts"][location["index"]]["location"]  # 3.4.5
            assert location["uri"] == "a%20b.amp.yaml"  # RFC 3986: no blank in a URI


def test_sarif_artifacts_carry_hashes(folder: Path) -> None:
    by_name = {}
    for artifact in sarif()["artifacts"]:
        only(artifact, "artifact", "location")
        by_name[artifact["location"]["uri"]] = artifact
    expected = hashlib.sha256((folder / "a b.amp.yaml").read_bytes()).hexdigest()
    assert by_name["a%20b.amp.yaml"]["hashes"]["sha-256"] == expected  # 3.24.11


def test_sarif_suppressions_of_permitted_findings(folder: Path) -> None:
    results = sarif()["results"]
    assert all("suppressions" in result for result in results)  # 3.27.23: on all or on none
    suppressed = [result for result in results if result["suppressions"]]
    assert [result["ruleId"] for result in suppressed] == ["value-outside-usual-range"]
    for item in suppressed[0]["suppressions"]:
        only(item, "suppression", "kind")  # 3.35.3
        assert item["kind"] == "inSource"
        assert item["status"] == "accepted"
        assert item["location"]["physicalLocation"]["region"]["startLine"] == 11


def test_sarif_suppression_by_a_file_is_external(folder: Path) -> None:
    spec, _, listed = SPEC.partition("deviations:")
    (folder / "a b.amp.yaml").write_text(spec, encoding="utf-8")
    Path("permits.yaml").write_text(f"amplifier_deviations: 1\ndeviations:{listed}")
    run = sarif("--deviations", "permits.yaml", files=("a b.amp.yaml",))
    found = [item for result in run["results"] for item in result["suppressions"]]
    assert [item["kind"] for item in found] == ["external"]
    uri = found[0]["location"]["physicalLocation"]["artifactLocation"]["uri"]
    assert uri == "permits.yaml"


def test_sarif_messages_have_no_placeholders_and_no_links(folder: Path) -> None:
    """3.11.5: braces are doubled; 3.11.6: brackets stand behind a backslash."""
    run = sarif()
    texts = [result["message"]["text"] for result in run["results"]]
    for notes in run["invocations"][0].values():
        texts += [note["message"]["text"] for note in notes] if isinstance(notes, list) else []
    assert any("http://evil.example" in text for text in texts)
    for text in texts:
        assert not re.search(r"(?<!\\)(?:\\\\)*[\[\]]", text)
        assert not re.search(r"(?<!\{)\{(?:\{\{)*(?!\{)", text)


def test_sarif_tells_what_could_not_be_assessed(folder: Path) -> None:
    for files, successful in ((BOTH, False), (BOTH[:1], True)):
        invocation = sarif(files=files)["invocations"][0]
        only(invocation, "invocation", "executionSuccessful")  # 3.20.14
        assert invocation["executionSuccessful"] is successful
        notes = invocation["toolExecutionNotifications"]
        assert bool(notes) is not successful
        for note in notes:
            only(note, "notification", "message")  # 3.58.5
            assert note["level"] == "error"


def test_sarif_tells_what_the_house_file_weakens(folder: Path) -> None:
    notes = sarif()["invocations"][0]["toolConfigurationNotifications"]
    assert ["stored-energy" in note["message"]["text"] for note in notes] == [True]


# Markdown


def test_markdown_names_what_holds_and_has_room_to_sign(folder: Path) -> None:
    text = report("markdown")
    data = json.loads(report("json"))["files"][0]
    causes = text.partition("### Required before release")[2].partition("###")[0]
    opened = text.partition("### Open, required before release")[2].partition("###")[0]
    for item in data["causes"]:
        assert (escaped(item["headline"]) in causes) is item["holds"]
    for item in data["answers"]:
        if item["holds"] and item["status"] == "open":
            assert f"- {item['title']} (" in opened
    for role in ("Prepared by", "Reviewed by", "Released by"):
        assert f"| {role} |" in text


def test_markdown_shows_text_of_a_spec_as_it_is(folder: Path) -> None:
    text = report("markdown", files=BOTH)
    assert "<script>" not in text.replace(r"\<script\>", "")
    assert not re.search(r"(?<!\\)\[", text)
    assert "\n## RELEASED" not in text
    tables = [line for line in text.splitlines() if line.startswith("|")]
    assert tables
    assert all(line.endswith("|") for line in tables)


def test_markdown_shows_weakened_safety_before_the_verdict(folder: Path) -> None:
    text = report("markdown")
    assert text.index("weakened by the house file") < text.index("**HELD**")


# Text and wrong use


@pytest.mark.parametrize("width", ["40", "60", "100", "200"])
def test_the_text_report_names_what_holds_and_what_is_weakened(
    folder: Path, width: str, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    data = json.loads(report("json"))["files"][0]
    monkeypatch.setenv("COLUMNS", width)
    assert main(["assess", "a b.amp.yaml", "--full", "--remedies", "none"]) == 1
    lines = capsys.readouterr().out.splitlines()
    assert max(map(len, lines)) <= int(width)
    text = "".join("".join(lines).split())
    for item in data["to_be_released"]:
        assert f"check{item['check']}(" in text
    assert text.index("SAFETYCHECKWEAKENED") < text.index("HELD")


@pytest.mark.parametrize(
    "words",
    [
        ["-o", "a b.amp.yaml"],
        ["-o", "nowhere/report.json"],
        ["--jobs", "0"],
        ["--house", "nowhere.yaml"],
        ["--deviations", "nowhere.yaml"],
    ],
)
def test_wrong_use_is_told_and_spoils_nothing(
    folder: Path, words: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["assess", "a b.amp.yaml", "--remedies", "none", *words]) == 2
    told = capsys.readouterr()
    assert told.out or told.err
    assert (folder / "a b.amp.yaml").read_text(encoding="utf-8") == SPEC


@pytest.mark.parametrize(
    "words", [["--date", "2030-02-30"], ["--report", "pdf"], ["--house", "x", "--no-house"]]
)
def test_options_that_cannot_be_are_refused(folder: Path, words: list[str]) -> None:
    with pytest.raises(SystemExit) as stop:
        main(["assess", "a b.amp.yaml", *words])
    assert stop.value.code == 2


def test_a_release_of_a_file_that_says_nothing_says_that_it_says_little(tmp_path: Path) -> None:
    path = tmp_path / "empty.amp.yaml"
    path.write_text(
        "amplifier_spec: 1\nsupply: {source: dc-source, rails: single, v_rail: 24 V}\n"
        "channels: {main: {rated_power: 20 W, rated_load: 8 ohm}}\n",
        encoding="utf-8",
    )
    done = review_file(path)
    assert isinstance(done, Review)
    assert done.verdict.released
    assert re.search(r"Only \d checks could be judged", reason(done))
    sound = review_file(SAMPLES / "choir-portable.amp.yaml")
    assert isinstance(sound, Review)
    assert "could be judged" not in reason(sound)


def test_no_percent_of_temperatures_and_decibels(capsys: pytest.CaptureFixture[str]) -> None:
    """A distance in K or dB in every report of a sample, a share for nothing of the kind."""
    sample = str(Path(__file__).parents[3] / "sample_specs" / "playhouse-subwoofer-faulty.amp.yaml")
    words = ["assess", sample, "--remedies", "none"]
    main([*words, "--report", "json"])
    answers = json.loads(capsys.readouterr().out)["files"][0]["answers"]
    told = [x for x in answers if x.get("figure") and x["limit"] and x["unit"] in NO_SHARE]
    assert {x["unit"] for x in told} == {*NO_SHARE}
    assert all(x["margin"] is None and x["distance"]["text"][-2:] in (" K", "dB") for x in told)
    names = {x["check"] for x in told if x["status"] == "meets"}
    titles = {x["title"] for x in told if x["status"] == "meets"}
    main([*words, "--report", "markdown"])
    rows = [line.split("|") for line in capsys.readouterr().out.splitlines() if line[:2] == "| "]
    met = [row for row in rows if len(row) == 7 and row[1].strip() in titles]
    assert met
    assert all("%" not in row[4] and row[4].strip() for row in met)
    main([*words, "--report", "sarif", "--full"])
    results = json.loads(capsys.readouterr().out)["runs"][0]["results"]
    properties = [x["properties"] for x in results if x["ruleId"] in names]
    assert all("margin" not in x and "distance" in x for x in properties if "limit" in x)
