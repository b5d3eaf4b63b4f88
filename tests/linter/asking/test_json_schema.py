"""The JSON Schema: valid by a validator of its own, takes what the program takes, refuses
wrong keys and words.  The specs are read by a plain YAML loader, as an editor would."""

import io
import json
import re
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator
from ruamel.yaml import YAML

from ampreview.linter.asking.json_schema import json_schema
from ampreview.linter.cli import main
from ampreview.linter.declare import load_schema
from ampreview.linter.reading.loading import load_text

FIELDS = load_schema().fields

SCHEMA = json_schema(load_schema())
VALIDATOR = Draft202012Validator(SCHEMA)
SAMPLES = sorted((Path(__file__).parents[3] / "sample_specs").glob("**/*.amp.yaml"))

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
    return reader.load(io.StringIO(text))


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


@pytest.mark.parametrize("path", sorted(FIELDS))
def test_the_example_of_every_field_is_accepted_and_its_neighbour_is_not(path: str) -> None:
    field = FIELDS[path]
    if field.model is not None or path in ("amplifier_spec",) or path.startswith("deviations"):
        return
    assert accepted(spec_with(path, field.example))
    assert not accepted(spec_with(path + "_", field.example))


def spec_with(path: str, value: str) -> str:
    """A spec with one value, in brackets from its section on."""
    text = value
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


def test_no_text_is_held_to_a_pattern() -> None:
    assert not re.search(r'"(pattern|patternProperties)"', json.dumps(SCHEMA))


def test_command_prints_and_writes(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["schema"]) == 0
    assert json.loads(capsys.readouterr().out) == SCHEMA
    target = tmp_path / "amp.schema.json"
    assert main(["schema", "-o", str(target)]) == 0
    assert json.loads(target.read_text("utf-8")) == SCHEMA
    assert main(["schema", "-o", str(target)]) == 2
