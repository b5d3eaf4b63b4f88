"""The blank spec: loads as printed, loads when filled with its own examples, and asks
only what concerns the design."""

import re
from collections.abc import Iterator
from itertools import product
from pathlib import Path

import pytest

from ampreview.linter.asking.form import Design, asked_first, form
from ampreview.linter.cli import main
from ampreview.linter.declare import load_schema
from ampreview.linter.reading.loading import Spec, load_text
from ampreview.linter.reports.form_text import WIDTH, form_text

SCHEMA = load_schema()
FIELDS = SCHEMA.fields
field_of = SCHEMA.field_of

NAME = re.compile(r"( *)(#?)(- )?([a-z_0-9]+):( .*)?")
ASKED = asked_first(SCHEMA)


def designed(channels: tuple[str, ...] = ("main",), **words: str) -> Design:
    return Design(SCHEMA, {ASKED[name]: word for name, word in words.items()}, channels)


def told(design: Design) -> str:
    return " ".join([*design.words.values(), *design.channels])


OPEN = designed()
KINDS = [name for name in ASKED if name != "milestone"]
DESIGNS = [
    designed(channels, milestone="prototype", **dict(zip(KINDS, words, strict=True)))
    for channels in (("main",), ("left", "right"))
    for words in product(*(FIELDS[ASKED[name]].words for name in KINDS))
] + [OPEN]


def blank(design: Design) -> str:
    return form_text(form(design), "Blank.")


def load(text: str) -> Spec:
    loaded = load_text(text, "form.amp.yaml")
    assert loaded.spec is not None, loaded.refusals
    return loaded.spec


def entries(text: str) -> Iterator[tuple[int, str, str]]:
    """Line number, path and what is filled in, for every name of a form."""
    above: list[tuple[int, str]] = []
    for number, line in enumerate(text.splitlines()):
        found = NAME.fullmatch(line)
        if found is None:
            continue
        indent = len(found[1]) + (2 if found[3] else 0)
        while above and above[-1][0] >= indent:
            above.pop()
        name = (
            f"[0].{found[4]}"
            if above and above[-1][1].endswith(("foster", "efficiency_curve", "deviations"))
            else (f".{found[4]}" if above else found[4])
        )
        above.append((indent, (above[-1][1] if above else "") + name))
        yield number, above[-1][1], (found[5] or "").strip()


def example(path: str) -> str:
    return field_of(path).example


def filled(text: str, wanted: set[str] | None = None) -> str:
    """The form with examples behind the names (of the wanted paths), their # taken away."""
    lines = text.splitlines()
    for number, path, value in entries(text):
        named = path == "channels" or re.fullmatch(r"channels\.\w+", path)
        if (
            value
            or named
            or not (
                wanted is None or any(f"{w}.".startswith((f"{path}.", f"{path}[")) for w in wanted)
            )
        ):
            continue
        line = re.sub(r"^( *)#", r"\1", lines[number])
        model = field_of(path).model
        lines[number] = line if model else f"{line} {example(path)}"
    return "\n".join(lines) + "\n"


@pytest.mark.parametrize("design", DESIGNS[::29], ids=told)
def test_the_blank_form_loads_and_says_what_was_chosen(design: Design) -> None:
    spec = load(blank(design))
    chosen = design.words
    for path, word in chosen.items():
        if path.partition(".")[0] in ("output_stage", "filter"):
            assert [spec.values[f"channels.{name}.{path}"] for name in design.channels] == [
                word
            ] * len(design.channels)
        else:
            assert spec.values[path] == word


@pytest.mark.parametrize("design", [*DESIGNS[::43], OPEN], ids=told)
def test_the_form_filled_with_its_examples_loads(design: Design) -> None:
    text = blank(design)
    spec = load(filled(text))
    asked = {path for _, path, _ in entries(text) if "channels." not in path or "." in path[9:]}
    leaves = {path for path in asked if field_of(path).model is None}
    assert leaves <= spec.values.keys()


def test_the_open_form_asks_for_every_field_of_the_models() -> None:
    asked = {
        re.sub(r"^channels\.main\.|\[0\]", lambda m: "[]" if m[0] == "[0]" else "", path)
        for _, path, _ in entries(blank(OPEN))
    }
    assert asked - {"channels.main"} == set(FIELDS)


def test_each_name_can_be_put_to_use_alone() -> None:
    text = blank(
        designed(
            topology="half-bridge",
            rails="split",
            devices="discrete",
            source="dc-source",
            filter="lc",
        )
    )
    leaves = [path for _, path, value in entries(text) if not value]
    for path in leaves:
        # the names in an item of a list belong together: they are filled in the test above
        if "[0]" in path or path == "deviations" or re.fullmatch(r"channels(\.\w+)?", path):
            continue
        if field_of(path).model is None:
            assert path in load(filled(text, {path})).values


@pytest.mark.parametrize("path", ["channels.main.limiter", "protection.fuse", "channels.main.lead"])
def test_a_section_can_be_called_none(path: str) -> None:
    text = blank(OPEN)
    number = next(line for line, found, _ in entries(text) if found == path)
    lines = text.splitlines()
    lines[number] = lines[number].replace("#", "") + " none"
    assert path in load("\n".join(lines)).none


def test_names_that_do_not_concern_the_design_are_left_out() -> None:
    text = blank(
        designed(
            topology="full-bridge",
            rails="single",
            devices="integrated",
            source="dc-source",
            filter="filterless",
        )
    )
    asked = {path for _, path, _ in entries(text)}
    assert not any(path.startswith("battery") for path in asked)
    assert not any(path.startswith("channels.main.filter.inductor") for path in asked)
    assert "channels.main.output_stage.device.v_dss" not in asked
    assert "channels.main.output_stage.device.v_supply_abs" in asked


CONCERNS = {f.concerns.text: f.concerns for f in FIELDS.values() if f.concerns}


@pytest.mark.parametrize("text", CONCERNS)
def test_a_condition_of_a_field_is_one_that_a_form_can_meet(text: str) -> None:
    concerns = CONCERNS[text]
    for needed in concerns.when:
        for path, words in needed.items():
            known = ("one", "several") if path == "channels" else FIELDS[path].words
            assert set(words) <= {*known, "none" if FIELDS[path].can_be_none else ""}
        several = needed.get("channels") == ("several",)
        words = {path: allowed[0] for path, allowed in needed.items() if path != "channels"}
        design = Design(SCHEMA, words, ("left", "right") if several else ("main",))
        assert design.settles(concerns)
        assert not design.rules_out(concerns)
        others = {path: "another" for needed in concerns.when for path in needed}
        assert Design(SCHEMA, others).rules_out(concerns)


@pytest.mark.parametrize("design", [DESIGNS[0], designed(("left", "right"))], ids=told)
def test_lines_stay_within_the_width(design: Design) -> None:
    assert max(len(line) for line in blank(design).splitlines()) <= WIDTH == 100


def test_command_prints_writes_and_refuses(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    target = tmp_path / "new.amp.yaml"
    assert main(["form", "--topology", "full-bridge", "-o", str(target)]) == 0
    first = target.read_text("utf-8")
    assert "topology: full-bridge" in first
    assert main(["form", "-o", str(target)]) == 2
    assert "exists already" in capsys.readouterr().err
    assert target.read_text("utf-8") == first
    assert main(["form", "-o", str(target), "--overwrite"]) == 0
    assert target.read_text("utf-8") != first
    assert [path.name for path in tmp_path.iterdir()] == ["new.amp.yaml"]


@pytest.mark.parametrize("names", ["a,a", "a b", "", "product", "left,,right"])
def test_command_refuses_names_that_cannot_be(
    names: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["form", "--channels", names]) == 2
    said = capsys.readouterr()
    assert "cannot be" in said.err
    assert not said.out
