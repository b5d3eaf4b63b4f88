"""The blank spec: loads as printed, loads when filled with its own examples, and asks
only what concerns the design."""

import io
import re
from collections.abc import Iterator
from contextlib import redirect_stdout
from itertools import product
from pathlib import Path

import pytest

from ampreview.linter.asking.form import Design, asked_first, form
from ampreview.linter.asking.needed import is_grave
from ampreview.linter.asking.requirements import requirements_of
from ampreview.linter.check import MILESTONES, Milestone
from ampreview.linter.cli import main
from ampreview.linter.declare import load_schema
from ampreview.linter.evaluation.catalogue import load as load_catalogue
from ampreview.linter.evaluation.dependence import Dependences
from ampreview.linter.judging.review import Review, review_file
from ampreview.linter.reading.loading import Spec, load_text
from ampreview.linter.reports.assess_page import page_lines
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


WALKS = ["battery", "single", "none", "full-bridge", "integrated", "lc"]
ALL_CHOSEN = [
    Design(SCHEMA, dict(zip((ASKED[name] for name in KINDS), words, strict=True)))
    for words in product(*(FIELDS[ASKED[name]].words for name in KINDS))
    if words[KINDS.index("source")] != "mains-converter"
    or words[KINDS.index("converter")] == "none"
]
ALL_CHOSEN.sort(key=lambda x: list(x.words.values()) != WALKS)


def text_at(design: Design, milestone: Milestone) -> str:
    """What the command prints for a design at a milestone."""
    names = {path: name for name, path in ASKED.items()}
    words = [f"--{names[path]}={word}" for path, word in design.words.items()]
    out = io.StringIO()
    with redirect_stdout(out):
        assert main(["form", "--milestone", milestone, *words]) == 0
    return out.getvalue()


def blanks(design: Design, milestone: Milestone) -> set[str]:
    """The paths of the values that a form asks for."""
    text = text_at(design, milestone)
    found = list(entries(text))
    sections = {path.rpartition(".")[0] for _, path, _ in found}
    return {path for _, path, value in found if not value and path not in sections} - {"channels"}


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
            if above
            and above[-1][1].endswith(("foster", "efficiency_curve", "deviations", "measured"))
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
        if (
            "[0]" in path
            or path in ("deviations", "measured")
            or re.fullmatch(r"channels(\.\w+)?", path)
        ):
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
            part = ("none", "fitted") if FIELDS[path].can_be_none else ()
            assert set(words) <= {*known, *part}
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


def test_a_concept_is_asked_for_what_decides_something() -> None:
    """Each of its fields can move a promise's check, or one that finds what holds a concept."""
    catalogue = load_catalogue()
    reach = Dependences(catalogue)
    deciding = {x.name for x in catalogue.entries if is_grave(x.check)}
    deciding |= {x.check for promise in catalogue.promises for x in promise.checks}
    moved = frozenset[str]().union(*(reach[name].fields for name in deciding))
    assert moved >= SCHEMA.at_concept - {"title"}


def test_a_concept_of_one_channel_takes_few_values() -> None:
    """At most 25 besides the title, whatever the design."""
    for design in ALL_CHOSEN:
        assert len(blanks(design, "concept") - {"title"}) <= 25, told(design)


@pytest.mark.parametrize("design", ALL_CHOSEN[::37], ids=told)
def test_a_later_milestone_asks_for_more(design: Design) -> None:
    concept, prototype, production = (blanks(design, name) for name in MILESTONES)
    assert concept < prototype < production


def test_a_form_of_a_milestone_leaves_out_what_the_design_excludes() -> None:
    words = {"topology": "full-bridge", "devices": "integrated", "filter": "filterless"}
    for source, ruled_out in (("battery", "supply.v_rail"), ("dc-source", "battery.series")):
        asked = blanks(designed(source=source, converter="none", **words), "concept")
        assert ruled_out not in asked
        assert not any(path.startswith("channels.main.filter.inductor") for path in asked)
        assert "channels.main.output_stage.device.v_dss" not in asked
    assert "supply.v_rail" in asked


@pytest.mark.parametrize("design", [ALL_CHOSEN[0], OPEN], ids=told)
def test_a_comment_takes_two_lines(design: Design) -> None:
    """Four fields take a third: they tell words apart that are easily confused."""
    told_in_lines = re.compile(r"(?:^ +# .*\n)+", re.M)
    brief = [run.count("\n") for run in told_in_lines.findall(text_at(design, "concept"))]
    assert max(brief) <= 2
    whole = [run.count("\n") for run in told_in_lines.findall(blank(design))]
    assert max(whole) <= 3
    assert whole.count(3) <= 4


FILLED = {
    "title": "Portable for walks",
    "environment.ambient": "0 degC .. 40 degC",
    "battery.chemistry": "li-ion",
    "battery.series": "6",
    "battery.parallel": "2",
    "battery.cell.capacity": "3.4 Ah",
    "battery.cell.i_cont": "8 A",
    "battery.cell.v_oc_low": "3.3 V",
    "channels.main.rated_power": "30 W",
    "channels.main.rated_load": "4 ohm",
    "channels.main.output_stage.device.r_ds_on": "80 mohm",
    "channels.main.modulator.carrier": "400 kHz",
    "channels.main.filter.inductor.l": "10 uH",
    "channels.main.filter.c_across.c": "680 nF",
    "channels.main.loudspeaker.p_rated": "60 W",
    "channels.main.loudspeaker.sensitivity": "89 dB",
    "thermal.heatsink.r_th_sa": "6 K/W",
    "claims.efficiency": "88 %",
    "claims.thd": "0.2 %",
    "claims.sound_level": "100 dB",
    "claims.sound_distance": "1 m",
    "claims.run_time": "5 h",
}


def test_a_form_that_is_filled_in_leads_to_a_verdict_and_to_requirements(tmp_path: Path) -> None:
    """A newcomer's way: every main promise gets its number, and the next parts their ratings."""
    text = text_at(ALL_CHOSEN[0], "concept")
    lines = text.splitlines()
    for number, path, value in entries(text):
        if not value and path in FILLED:
            lines[number] += f" {FILLED[path]}"
    assert blanks(ALL_CHOSEN[0], "concept") == FILLED.keys()
    file = tmp_path / "walks.amp.yaml"
    file.write_text("\n".join(lines) + "\n", encoding="utf-8")
    review = review_file(file)
    assert isinstance(review, Review)
    assert review.verdict.released
    numbers = {item.name: item.allowed for item in review.promises}
    main_promises = ("power per channel", "run time", "sound level", "efficiency")
    assert all(numbers[name] for name in main_promises), numbers
    bounds = {item.paths[0] for part in requirements_of(review) for item in part.bounds}
    assert {
        "channels.main.filter.c_across.v_rated",
        "channels.main.filter.inductor.i_sat",
        "channels.main.filter.inductor.dcr",
        "supply.bulk.v_rated",
    } <= bounds
    page = " ".join(str(line) for line in page_lines(review, 100))
    assert "Open, to be stated next" in page
    assert "ampreview questions --requirements" in page
