"""The JSON Schema: valid by a validator of its own, takes what the program takes, refuses
wrong keys and words.  The specs are read by a plain YAML loader, as an editor would."""

import io
import json
import random
import re
from collections import Counter
from collections.abc import Callable, Sequence
from datetime import date
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator
from ruamel.yaml import YAML
from ruamel.yaml.error import YAMLError

from ampreview.linter.asking.json_schema import json_schema
from ampreview.linter.cli import main
from ampreview.linter.declare import load_schema
from ampreview.linter.judging.house_file import read_house
from ampreview.linter.judging.parts_review import review_parts
from ampreview.linter.reading.keyed_file import read_deviations, read_measured
from ampreview.linter.reading.loading import load_text

from ...sampling import tries

FIELDS = load_schema().fields

SCHEMA = json_schema(load_schema())
VALIDATOR = Draft202012Validator(SCHEMA)
SAMPLES = sorted((Path(__file__).parents[3] / "sample_specs").glob("**/*.amp.yaml"))
FAULTY = Path(__file__).parents[3] / "sample_specs" / "bird-call-pocket-faulty.amp.yaml"

GOOD = """\
amplifier_spec: 1
title: Invented
revision: 2.9
milestone: prototype
supply:
  source: battery
  rails:
  v_rail: {min: 20 V, max: 29 V}
  bulk: {c: {value: 1 mF, from: measured}}
  sinks_current: no
battery: {series: 6, charger: none}
channels:
  left: &channel
    rated_load: 4 ohm
    limiter: none
    output_stage:
      topology: full-bridge
      device: {foster: [{r: 0.2 K/W, tau: 1 ms}], r_ds_on_hot_factor: 1.8}
  right:
    <<: *channel
    limiter: {v_rms: 11 V}
  rear:
claims: {markets: [eu, uk], standards: [IEC 62368-1]}
deviations:
  - {check: a, place: product, permitted_by: b, reason: c, until: production}
"""

BAD = {
    "an unknown key": ("title: Invented", "titel: Invented"),
    "an unknown key in a section": ("rated_load:", "rated_lode:"),
    "an unknown key in a list": ("tau: 1 ms", "tua: 1 ms"),
    "an unknown section": ("claims:", "claim:"),
    "an unknown word": ("full-bridge", "double-bridge"),
    "a bare number for a quantity": ("4 ohm", "4"),
    "a list for a quantity": ("4 ohm", "[4 ohm]"),
    "a broken count": ("series: 6", "series: 6.5"),
    "none where a part is due": ("bulk: {c: {value: 1 mF, from: measured}}", "bulk: none"),
    "an unknown source of a value": ("measured", "guessed"),
    "value beside min": ("{min: 20 V", "{value: 20 V"),
    "a line without sides": ("{min: 20 V, max: 29 V}", "{from: supplier}"),
    "a section for a word": ("source: battery", "source: {battery: yes}"),
    "a channel named product": ("right:", "product:"),
    "a deviation without a reason": ("reason: c, ", ""),
    "an unknown market": ("[eu, uk]", "[eu, moon]"),
    "no format version": ("amplifier_spec: 1\n", ""),
}


def data(text: str, version: tuple[int, int] = (1, 2)) -> Any:
    reader = YAML(typ="safe", pure=True)
    reader.version = version
    return as_json(reader.load(io.StringIO(text)))


def as_json(read: Any) -> Any:
    """With every day as text: JSON, which a schema is about, has none."""
    if isinstance(read, dict):
        return {key: as_json(item) for key, item in read.items()}
    if isinstance(read, list):
        return [as_json(item) for item in read]
    return read.isoformat() if isinstance(read, date) else read


def accepted(text: str) -> bool:
    return bool(VALIDATOR.is_valid(data(text)))


def test_the_schema_is_one() -> None:
    Draft202012Validator.check_schema(SCHEMA)


@pytest.mark.parametrize("version", [(1, 1), (1, 2)])
def test_a_spec_is_accepted_under_either_version_of_yaml(version: tuple[int, int]) -> None:
    assert load_text(GOOD, "x").spec is not None
    assert [error.message for error in VALIDATOR.iter_errors(data(GOOD, version))] == []


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.name)
def test_the_samples_are_accepted(path: Path) -> None:
    found = data(path.read_text("utf-8"))
    assert [error.message for error in VALIDATOR.iter_errors(found)] == []


@pytest.mark.parametrize("name", BAD)
def test_what_the_program_refuses_is_refused(name: str) -> None:
    old, new = BAD[name]
    assert old in GOOD
    wrong = GOOD.replace(old, new)
    assert load_text(wrong, "x").spec is None
    assert not accepted(wrong)


def test_the_example_of_every_field_is_accepted_and_its_neighbour_is_not() -> None:
    for path, field in FIELDS.items():
        others = ("amplifier_spec", "deviations", "measured")
        if field.model is None and not path.startswith(others):
            assert accepted(spec_with(path, field.example)), path
            assert not accepted(spec_with(path + "_", field.example)), path


READING = "measured: [{figure: p_idle, value: 2 W, "


def spec_with(path: str, value: str) -> str:
    """A spec with one value, in brackets from its section on."""
    text = value
    if path.startswith("measured[]."):
        return f"amplifier_spec: 1\n{READING}{path.removeprefix('measured[].')}: {value}}}]\n"
    for step in reversed(path.split(".")):
        inner = f"[{{{text}}}]" if step.endswith("[]") else text if text is value else f"{{{text}}}"
        text = f"{step.removesuffix('[]')}: {inner}"
    if load_schema().is_channel_path(path.removesuffix("_")):
        text = f"channels: {{main: {{{text}}}}}"
    return f"amplifier_spec: 1\n{text}\n"


def test_every_field_is_described_with_its_unit_and_usual_range() -> None:
    text = json.dumps(SCHEMA, ensure_ascii=False)
    for field in FIELDS.values():
        assert field.meaning.rstrip(".") in text.replace('\\"', '"')
        assert not field.usual or f"usually {field.usual}" in text


WRONG_VALUES = (
    "4", "-3 {unit}", "0 {unit}", "1,5 {unit}", "2*3 {unit}", "nan {unit}", "inf {unit}",
    "3 parsec", "3 {other}", "{unit}", "[1 {unit}]", "{{min: 1 {other}}}", "{{typ: 0 {unit}}}",
    "1 {unit} .. 2 {other}", "3 {unit} and more", "{{value: 1 {unit}, from: hearsay}}",
    "{{least: 1 {unit}}}", "3 {unit} ± 20 % ± 1 %", "5 {unit} .. 2 {unit}", "1e40 {unit}",
)  # fmt: skip


PAIR = re.compile(r"(?<=[\s{])(\w+): ([^{\[&*|,}#\n]+)(?=$|[,}]| *#)", re.MULTILINE)
UNITS = ("V", "A", "ohm", "s", "Hz", "W", "mm2", "degC", "%", "K/W")


def mutant(text: str, dice: random.Random) -> str:
    """A text with one thing wrong or changed: a value, a key, a word, the version."""
    pair = dice.choice([x for x in PAIR.finditer(text) if not x[1].startswith("amplifier_")])
    key, value, kind = pair[1], pair[2].strip(), dice.randrange(8)
    if kind == 0:
        new = f"{key}x: {value}"
    elif kind == 1:
        version = dice.choice(("2", "0", "1.0.0", "one", "-1"))
        return re.sub(r"(?m)^(amplifier_\w+): 1", rf"\1: {version}", text)
    elif kind == 2:
        new = f"{key}: {dice.choice(('yess', 'none', '[]', '{}', '7', 'true'))}"
    else:
        unit = re.search(r"[A-Za-z%/0-9]+$", value)
        named = unit[0] if unit else "V"
        other = dice.choice([x for x in UNITS if x not in named])
        new = f"{key}: {dice.choice(WRONG_VALUES).format(unit=named, other=other)}"
    return text[: pair.start()] + new + text[pair.end() :]


def share_caught(
    check: Draft202012Validator,
    taken: Callable[[str], Any],
    texts: Sequence[str],
    count: int,
    seed: int = 1,
) -> tuple[int, Counter[str]]:
    """How many refused mutants a schema refuses too, and what it misses; no accepted one."""
    caught, missed, dice = 0, Counter[str](), random.Random(seed)
    for text in (mutant(dice.choice(texts), dice) for _ in range(count)):
        try:
            read = data(text)
        except YAMLError:  # what is no YAML never comes before a schema
            continue
        refusals = taken(text)
        if not isinstance(refusals, tuple) or not refusals:
            assert check.is_valid(read), text
        elif check.is_valid(read):
            missed[refusals[0].problem] += 1
        else:
            caught += 1
    return caught, missed


def test_nine_of_ten_refused_mutants_are_caught_and_no_accepted_one() -> None:
    texts = [path.read_text("utf-8") for path in SAMPLES if "museum" not in str(path)]
    count = tries(120, swept=1200)
    caught, missed = share_caught(VALIDATOR, lambda x: load_text(x, "x").refusals, texts, count)
    assert caught + missed.total() > 0.7 * count
    assert caught > 0.9 * (caught + missed.total()), missed


def test_what_a_quantity_may_look_like_passes_and_another_unit_does_not() -> None:
    for path, field in FIELDS.items():
        if field.kind != "quantity":
            continue
        line = f"{{typ: {field.example}}}" if field.example[0] != "{" else ""
        for text in filter(None, (field.example, line, *field.called)):
            assert accepted(spec_with(path, text)), (path, text)
        assert not accepted(spec_with(path, "3 cd")), path


OTHER_FILES = {
    "house": (
        "amplifier_house: 1\nlimits: {a-check: {major: 90 %, reason: two returns}}\n"
        "checks_off: {b-check: not ours}\ndefaults: [{path: a.b, value: 1 V, reason: x}]\n",
        ("amplifier_house: 2", "amplifier_house: 1\nlimit: {}",
         "amplifier_house: 1\nlimits: {a: {major: 1 V}}", "amplifier_house: 1\nchecks_off: {a: ''}",
         "limits: {}"),
    ),
    "deviations": (
        "amplifier_deviations: 1\ndeviations:\n"
        "  - {check: a, place: product, permitted_by: b, reason: c, until: production}\n",
        ("amplifier_deviations: 1\ndeviations: [{check: a}]", "deviations: []",
         "amplifier_deviations: 1\nallowed: []"),
    ),
    "measured": (
        "amplifier_measured: 1\nmeasured:\n  - {figure: p_idle, value: 2 W, supply: 24 V}\n",
        ("amplifier_measured: 1\nmeasured: [{figure: p_idle}]", "measured: []",
         "amplifier_measured: 1\nmeasured: [{figure: p_idle, value: 2 W, supply: 24}]"),
    ),
}  # fmt: skip


MUSEUM = SAMPLES[0].parent / "museum-boards"
TAKEN: dict[str, tuple[str, float, Callable[[Path], Any]]] = {
    "house": ("house.ampreview.yaml", 0.8, read_house),  # it knows no unit of a check's limits
    "parts": ("parts.ampreview.yaml", 0.9, review_parts),
    "deviations": ("plinth/deviations.yaml", 0.9, read_deviations),
    "measured": ("bench/measured.yaml", 0.9, read_measured),
}


@pytest.mark.parametrize("kind", TAKEN)
def test_most_refused_mutants_of_a_file_beside_a_spec_are_caught(
    kind: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    name, share, take = TAKEN[kind]
    assert main(["schema", "--of", kind]) == 0
    check = Draft202012Validator(json.loads(capsys.readouterr().out))

    def taken(text: str) -> Any:
        (tmp_path / "x.yaml").write_text(text, "utf-8")
        return take(tmp_path / "x.yaml")

    text = (MUSEUM / name).read_text("utf-8")
    assert check.is_valid(data(text))
    caught, missed = share_caught(check, taken, [text], tries(40, swept=400))
    assert caught > share * (caught + missed.total()), missed


@pytest.mark.parametrize("kind", OTHER_FILES)
def test_schemas_of_the_files_beside_a_spec(kind: str, capsys: pytest.CaptureFixture[str]) -> None:
    good, bad = OTHER_FILES[kind]
    assert main(["schema", "--of", kind]) == 0
    schema = json.loads(capsys.readouterr().out)
    Draft202012Validator.check_schema(schema)
    check = Draft202012Validator(schema)
    assert [error.message for error in check.iter_errors(data(good))] == []
    for text in bad:
        assert not check.is_valid(data(text)), text


def test_the_report_for_machines_keeps_its_schema(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Of a faulty sample with its changes, and of a file that is not there."""

    def printed(*words: str) -> str:
        main([*words])
        return capsys.readouterr().out

    def checker(kind: str) -> Draft202012Validator:
        schema = json.loads(printed("schema", "--of", kind))
        Draft202012Validator.check_schema(schema)
        return Draft202012Validator(schema)

    lines = tmp_path / "lines"
    kinds = ("--report", "json", "--report", f"json-lines={lines}")
    report = json.loads(printed("assess", *kinds, str(FAULTY), "gone.amp.yaml"))
    check, check_line = checker("report"), checker("report-line")
    assert [error.message for error in check.iter_errors(report)] == []
    judged = report["files"][0]
    assert any(x.get("changes") for x in judged["answers"])
    for line in lines.read_text(encoding="utf-8").splitlines():
        assert [error.message for error in check_line.iter_errors(json.loads(line))] == []
    for part, key in ((judged["causes"][0], "headline"), (judged["answers"][0], "status")):
        kept = part.pop(key)
        assert not check.is_valid(report)
        part[key] = kept
    del report["files"][1]["refusals"][0]["place"]
    assert not check.is_valid(report)


def test_command_prints_and_writes(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["schema"]) == 0
    assert json.loads(capsys.readouterr().out) == SCHEMA
    target = tmp_path / "amp.schema.json"
    assert main(["schema", "-o", str(target)]) == 0
    assert json.loads(target.read_text("utf-8")) == SCHEMA
    assert main(["schema", "-o", str(target)]) == 2
