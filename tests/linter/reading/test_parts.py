"""Parts of a parts file in a spec: values, places, overrides, refusals, copies."""

from pathlib import Path

import pytest

from ampreview.linter.asking.form import Design, part_form
from ampreview.linter.cli import main
from ampreview.linter.declare import load_schema
from ampreview.linter.declare.parts import part_kinds
from ampreview.linter.finding import Place
from ampreview.linter.quantities.quantity import Value
from ampreview.linter.reading.loading import Loaded, Spec, load_file, load_text
from ampreview.linter.reading.parts_file import NAME, PartsFile, parts_of, read_parts
from ampreview.linter.reports.form_text import form_text
from ampreview.linter.rewriting.rewrite import Change, rewritten

PARTS = """\
# Invented demo data.
amplifier_parts: 1
device:
  switch-80v:
    part: XY80
    v_dss: 80 V
    q_g: {typ: 15 nC, max: 20 nC}
    r_ds_on: {value: 9 mohm, from: datasheet}
    foster: [{r: 0.2 K/W, tau: 1 ms}, {r: 0.5 K/W, tau: 9 ms}]
c_across:
  film-1u: {c: 1 uF ± 5 %, v_rated: 100 V}
loudspeaker:
  box-8: {re: 6 ohm, enclosure: {v: 20 l}}
"""
SPEC = """\
amplifier_spec: 1
channels:
  left: &left
    output_stage:
      device: {part: switch-80v, v_dss: 90 V}
  right: *left
"""
DEVICE = "channels.left.output_stage.device"


def loaded(spec: str = SPEC, parts: str = PARTS) -> Loaded:
    return load_text(spec, "board.amp.yaml", None, lambda: taken(parts))


def taken(parts: str = PARTS) -> PartsFile:
    found = parts_of(parts.encode(), NAME, load_schema())
    assert isinstance(found, PartsFile), found
    return found


def spec_of(spec: str = SPEC) -> Spec:
    found = loaded(spec)
    assert found.spec is not None, found.refusals
    return found.spec


def only_refusal(found: Loaded) -> tuple[str, str, Place]:
    assert found.spec is None
    (one,) = found.refusals
    return one.problem, one.expected, one.place


def test_a_part_is_stated_in_full_and_what_stands_beside_its_name_counts_instead() -> None:
    values = spec_of().values
    spelled_out = SPEC.replace(
        "{part: switch-80v, v_dss: 90 V}",
        "{part: XY80, v_dss: 90 V, q_g: {typ: 15 nC, max: 20 nC},"
        " r_ds_on: {value: 9 mohm, from: datasheet},"
        " foster: [{r: 0.2 K/W, tau: 1 ms}, {r: 0.5 K/W, tau: 9 ms}]}",
    )
    plain = load_text(spelled_out, "board.amp.yaml").spec
    assert plain is not None
    assert values == plain.values
    assert spec_of().lists == plain.lists
    found = values[f"{DEVICE}.r_ds_on"]
    assert isinstance(found, Value)
    assert found.provenance == "datasheet"


def test_places_point_into_the_parts_file_and_to_where_the_part_is_named() -> None:
    spec = spec_of()
    first, named, alias = spec.places["channels.right.output_stage.device.q_g"]
    assert (first.file, first.line) == (NAME, 7)
    assert first.path == "channels.right.output_stage.device.q_g"
    assert (named.file, named.line, alias.line) == ("board.amp.yaml", 5, 6)
    assert spec.places[f"{DEVICE}.v_dss"][0].file == "board.amp.yaml"
    assert spec.places[f"{DEVICE}.foster[1].tau"][0].line == 9


def test_a_wrong_value_in_the_parts_file_is_refused_with_its_place_there() -> None:
    problem, _, place = only_refusal(loaded(parts=PARTS.replace("typ: 15 nC", "typ: 15 nF")))
    assert "nF" in problem
    assert (place.file, place.line) == (NAME, 7)


@pytest.mark.parametrize(
    ("section", "problem", "expected"),
    [
        ("device: {part: swich-80v}", "has no device named `swich-80v`", "`switch-80v`, if"),
        ("device: {part: film-1u}", "there it is a c_across", "one of switch-80v"),
        ("snubber: {part: rc}", "has no snubber named `rc`", "a part below `snubber:`"),
    ],
)
def test_an_unknown_part_is_refused_with_near_names(
    section: str, problem: str, expected: str
) -> None:
    spec = SPEC.replace("device: {part: switch-80v, v_dss: 90 V}", section)
    told, wanted, place = only_refusal(loaded(spec.replace("  right: *left\n", "")))
    assert problem in told
    assert expected in wanted
    assert place.line == 5


def test_without_a_parts_file_a_part_is_refused_and_a_type_number_is_text() -> None:
    inductor = "amplifier_spec: 1\nchannels: {main: {filter: {inductor: {part: coil}}}}\n"
    problem, expected, _ = only_refusal(load_text(inductor, "board.amp.yaml"))
    assert "there is no parts file" in problem
    assert NAME in expected
    spec = load_text(SPEC, "board.amp.yaml").spec
    assert spec is not None
    assert spec.values[f"{DEVICE}.part"] == "switch-80v"
    other = SPEC.replace("part: switch-80v", "part: QQ7")
    assert loaded(other).spec is not None  # a contractor's type number, with values of its own


def test_a_part_of_one_section_fits_another_of_the_same_model() -> None:
    spec = spec_of("amplifier_spec: 1\nchannels: {main: {filter: {c_ground: {part: film-1u}}}}\n")
    assert spec.values["channels.main.filter.c_ground.v_rated"]


def test_other_values_keep_the_part_and_are_written_as_overrides() -> None:
    spec = spec_of()
    changed = spec.with_values({f"{DEVICE}.v_dss": "100 V"}).spec
    fitted = spec.with_values({f"{DEVICE}.q_gd": "4 nC", "thermal.heatsink": "none"}).spec
    assert changed is not None
    assert fitted is not None
    assert fitted.values[f"{DEVICE}.r_ds_on"] == spec.values[f"{DEVICE}.r_ds_on"]
    assert fitted.places[f"{DEVICE}.r_ds_on"][0].file == NAME
    text = rewritten(
        spec, {f"{DEVICE}.q_gd": Change("4 nC"), f"{DEVICE}.foster[0].r": Change("0.3 K/W")}
    )
    assert "part: switch-80v, v_dss: 90 V, q_gd: 4 nC" in text
    assert "9 mohm" not in text
    again = loaded(text).spec
    assert again is not None
    first = again.values[f"{DEVICE}.foster[0].r"]
    assert isinstance(first, Value)
    assert (first.nominal, again.lists[f"{DEVICE}.foster"]) == (0.3, 2)
    assert (
        again.values["channels.right.output_stage.device.v_dss"] == spec.values[f"{DEVICE}.v_dss"]
    )


@pytest.mark.parametrize(
    ("text", "problem"),
    [
        ("amplifier_parts: 2\n", "is not known here"),
        ("amplifier_parts: 1\ndevise: {a: {v_dss: 1 V}}\n", "`devise` is no kind of part"),
        ("amplifier_parts: 1\ndevice: 5\n", "`device` holds no parts"),
        ("amplifier_parts: 1\ndevice: {a: 5}\n", "the part `a` has no values"),
        ("amplifier_parts: 1\nx: !!python/name:os {}\n", "tag"),
    ],
)
def test_a_parts_file_is_data_and_is_refused_with_places(text: str, problem: str) -> None:
    found = parts_of(text.encode(), NAME, load_schema())
    assert isinstance(found, tuple)
    assert any(problem in item.problem for item in found)


def test_parts_cannot_be_unfolded_without_bound() -> None:
    many = ", ".join(["{r: 1 K/W, tau: 1 s}"] * 2_000)
    parts = f"amplifier_parts: 1\ndevice:\n  big: {{foster: [{many}]}}\n"
    names = "\n".join(f"  c{n}: {{output_stage: {{device: {{part: big}}}}}}" for n in range(64))
    found = loaded(f"amplifier_spec: 1\nchannels:\n{names}\n", parts)
    assert any("values with all parts put in" in item.problem for item in found.refusals)


def test_blank_parts_can_be_read_and_hold_what_fits_the_design() -> None:
    design = Design(load_schema(), {"output_stage.devices": "integrated"})
    text = form_text(part_form(design, ["device", "inductor", "fuse"]), "Blank.")
    for kind in ("device", "inductor", "fuse"):
        assert taken(text).names(kind) == ("my-part",)
    assert "v_supply_abs:" in text
    assert "v_dss:" not in text  # of a discrete switch


def test_every_kind_names_one_section() -> None:
    kinds = part_kinds(load_schema())
    assert len(set(kinds.values())) == len(kinds)
    assert kinds["cell"] == "battery.cell"
    assert kinds["loudspeaker_enclosure"] == "loudspeaker.enclosure"


def test_the_file_above_is_found_and_reviewed(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    board = tmp_path / "boards" / "one.amp.yaml"
    board.parent.mkdir()
    board.write_text(SPEC, "utf-8")
    wrong = PARTS.replace("q_g: {typ: 15 nC, max: 20 nC}", "q_g: 20 nC\n    q_gd: 40 nC")
    wrong = wrong[: wrong.index("loudspeaker:")]
    (tmp_path / NAME).write_text(wrong, "utf-8")
    assert load_file(board).spec is not None
    assert main(["assess", str(tmp_path / NAME)]) == 1
    told = " ".join(capsys.readouterr().out.split())
    assert "q_gd is stated as 40 nC; its bound is 20 nC: the whole gate charge" in told
    assert "c_across film-1u" in told
    (tmp_path / NAME).write_text(wrong.replace("40 nC", "4 nC"), "utf-8")
    assert main(["assess", str(tmp_path / NAME)]) == 0
    told = " ".join(capsys.readouterr().out.split())
    assert "CONSISTENT" in told
    assert "r_th_jc [K/W]" in told  # missing, and wanted by grave checks
    assert "integrated stages" not in told  # the part states v_dss, so it is none
    for kind in ("json", "markdown"):
        assert main(["assess", "--report", kind, str(tmp_path / NAME)]) == 0
        told = capsys.readouterr().out
        assert ('consistent": true' if kind == "json" else "**CONSISTENT**") in told
    assert main(["assess", "--report", "sarif", str(tmp_path / NAME)]) == 2
    assert main(["assess", "--report", "json", str(tmp_path / NAME), str(board)]) == 2
    assert "name them apart" in capsys.readouterr().err
    assert isinstance(read_parts(tmp_path / "none.yaml"), tuple)
