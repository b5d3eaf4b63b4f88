"""Where a position is, compared with what the reader of YAML says of texts that it can read."""

import random
from pathlib import Path

import pytest

from ampreview.linter.declare import load_schema
from ampreview.linter.editor.completion import offers
from ampreview.linter.editor.lookup import field_at, section_at
from ampreview.linter.editor.spot import keys_in, spot_at, spot_of
from ampreview.linter.reading.source import read

ROOT = Path(__file__).parents[3]
TEXTS = sorted(ROOT.glob("sample_specs/[bf]*.yaml"))


def test_every_key_is_where_the_reader_finds_it() -> None:
    seen = 0
    for path in TEXTS:
        text = path.read_text(encoding="utf-8")
        document, lines = read(text, "x"), text.split("\n")
        for name, place in document.key_places.items():
            if len(document.places[name]) == 1:  # not what an alias or a merge repeats
                spot = spot_of(lines, place.line - 1, place.column - 1)
                assert spot is not None, (path.name, name)
                assert spot.path == name
                seen += 1
    assert seen > 500


@pytest.mark.parametrize(
    ("text", "path", "what", "typed"),
    [
        ("supply:\n  v_rail: 2", "supply.v_rail", "value", "2"),
        ("supply:\n  ", "supply", "key", ""),
        ("supply:\n  bulk: {c: 1 uF, v_r", "supply.bulk", "key", "v_r"),
        ("supply:\n  bulk: {c: {typ: ", "supply.bulk.c.typ", "value", ""),
        ("supply: {bulk: {\nsign", "", "key", "sign"),  # the bracket above was never closed
        ("title: 'a: {b'\nsupply:\n  v", "supply", "key", "v"),
        ("channels:\n  left: &one\n    ga", "channels.left", "key", "ga"),
        ("channels:\n  left: &one {ga", "channels.left", "key", "ga"),
        ("deviations:\n- check: x\n  pl", "deviations[0]", "key", "pl"),
        ("deviations:\n  - check: x\n  - check: ", "deviations[1].check", "value", ""),
        ("claims:\n  markets: [eu, u", "claims.markets[1]", "value", "u"),
        ("\ta: [}]}: {", None, None, None),
    ],
)
def test_a_text_that_is_being_written(
    text: str, path: str | None, what: str | None, typed: str | None
) -> None:
    lines = text.split("\n")
    spot = spot_at(lines, len(lines) - 1, len(lines[-1]))
    if path is not None:
        assert spot is not None
        assert (spot.path, spot.what, spot.typed) == (path, what, typed)


def test_nothing_that_is_typed_breaks_it() -> None:
    """Signs of YAML put into a sample anywhere (seeded); the text is followed to every place."""
    draw, text = random.Random(1), TEXTS[0].read_text(encoding="utf-8")
    for _ in range(60):
        at = draw.randrange(len(text))
        broken = (
            text[max(0, at - 400) : at] + draw.choice("{}[]:,#\"'&*-|>%@!\t\r 🔊") + text[at:][:60]
        )
        lines = broken.split("\n")
        assert "" not in keys_in(lines)
        line = draw.randrange(len(lines))
        for column in range(len(lines[line]) + 2):
            for spot in (spot_at(lines, line, column), spot_of(lines, line, column)):
                assert spot is None or offers(load_schema(), spot, None) is not None


def test_a_comment_is_nowhere() -> None:
    assert spot_at(["supply:", "  v_rail: 2 # x"], 1, 14) is None
    assert spot_at(["# x"], 0, 3) is None
    assert spot_at([""], 5, 0) is None


def test_every_field_can_be_named_and_what_is_offered_is_accepted() -> None:
    schema = load_schema()
    for path, field in schema.fields.items():
        found = field_at(schema, path.replace("[]", "[0]"))
        assert found is not None, path
        assert found.field is field
        section = path.rpartition(".")[0].replace("[]", "[0]")
        if schema.is_channel_path(path):
            section = f"channels.main.{section}".rstrip(".")
        assert path.rpartition(".")[2] in section_at(schema, section), path
        if field.kind == "quantity" and field.unit != "1":
            spot = spot_at([f"{path.rpartition('.')[2]}: 5 "], 0, 99)
            assert spot is not None
            assert offers(schema, type(spot)(path, "value", "5 ", 0), None), path
