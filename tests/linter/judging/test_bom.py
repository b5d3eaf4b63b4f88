"""Bills of materials in several dialects against a spec; all of them invented.

Letter codes are those of IEC 60062:2016 as the encyclopaedia article "RKM code" gives them; heads,
delimiters and code pages are common practice, no source.
"""

import json
from pathlib import Path

import pytest

from ampreview.linter.cli import main
from ampreview.linter.judging.bom import BomComparison, compare_bom
from ampreview.linter.quantities.board_value import board_value
from ampreview.linter.reading.bom_file import Bom, BomRow, Layout, bom_of, decoded
from ampreview.linter.reading.designators import designators
from ampreview.linter.reading.loading import load_text

SPEC = """\
amplifier_spec: 1
supply:
  bulk: {c: 4400 uF ± 20 %, v_rated: 50 V, ref: C1 + C2}
channels:
  left:
    output_stage:
      c_local: 2.2 uF ± 10 %
      v_c_local: 100 V
      ref: {c_local: C10-C12}
      device: {v_dss: 80 V, ref: Q1-Q2}
      snubber: {c: 470 pF, r: 4R7 ± 5 %, p_rated: 250 mW, v_rated: 100 V, ref: "C20, R20"}
    filter:
      inductor: {l: 15 uH ± 20 %, ref: [L1, L2]}
"""
COMMAS = """\
"Reference","Value","Datasheet","Footprint","Qty","Tolerance","DNP"
"C1,C2","2200uF/63V","","round","2","20%",""
"C10-C12","2u2 100V","","1210","3","10%",""
"C20","470p/200V","","0603","1","5%",""
"R20","4R7/0.25W","","1206","1","1%",""
"L1,L2","15u","","","2","20%",""
"Q1,Q2","XY80","","","2","",""
"J1","input","","","1","",""
"""
SEMICOLONS = """\
sep=;
Export of the invented board, 8 positions
Pos;Menge;Ref. Des.;Wert;Toleranz (%);Voltage (V);Power (W)
1;2;C1 C2;2200 µF;20;63;
2;3;C10, C11, C12;2,2 µF;10;100;
3;1;C20;470 pF;5;200;
4;1;R20;4,7 Ohm;1;;0,25
5;2;L1..L2;15 µH;20;;
6;2;Q1 - Q2;XY80;;;
"""
TABS = """\
Comment\tDescription\tDesignator\tQuantity\tFitted
2200uF\tcapacitor, aluminium 63V 20%\tC1, C2\t2\tFitted
2.2uF\tcapacitor, film 100V 10%\t"C10,\nC11, C12"\t3\tyes
0.47nF\tcapacitor C0G 200V 5%\tC20\t1\tyes
4.7R\tresistor 1/4W 1%\tR20\t1\tyes
15uH\tinductor 20%\tL1, L2\t2\tyes
XY80\ttransistor\tQ1, Q2\t2\tyes
"""


def compared(table: str, spec: str = SPEC) -> BomComparison:
    loaded = load_text(spec, "board.amp.yaml").spec
    assert loaded is not None
    bom = bom_of(table, "bom.csv", Layout())
    assert isinstance(bom, Bom), bom
    return compare_bom(loaded, bom)


@pytest.mark.parametrize(
    ("table", "encoding"),
    [(COMMAS, "utf-8-sig"), (SEMICOLONS, "cp1252"), (TABS, "utf-16"), (TABS, "utf-8")],
)
def test_the_same_parts_agree_in_every_dialect(table: str, encoding: str) -> None:
    found = compared(decoded(table.encode(encoding)))
    assert found.findings == []
    assert found.named == 11
    told = {local for local, _ in found.agreed}
    assert {path.rpartition(".")[2] for path in told} == {
        "c",
        "v_rated",
        "c_local",
        "v_c_local",
        "r",
        "p_rated",
        "l",
    }
    assert set(found.untold) == {"no value goes with the letter of these"}


@pytest.mark.parametrize(
    ("old", "new", "kind", "names", "says", "lines", "stands"),
    [
        ('"R20","4R7', '"R20","47R', "different", ("R20",), "4R7 ± 5 % in the spec, 47R", (5,), 11),
        ('"C1,C2","2200', '"C1,C2","1000', "different", ("C1", "C2"), "4400 uF", (2,), 3),
        ("/63V", "/35V", "different", ("C1", "C2"), "50 V in the spec, 35 V", (2,), 3),
        ('"3","10%"', '"3","20%"', "different", ("C10", "C11", "C12"), "± 20 %", (3,), 7),
        ("0.25W", "0.1W", "different", ("R20",), "250 mW in the spec, 100 mW", (5,), 11),
        ('"L1,L2"', '"L1,L3"', "missing", ("L2",), "not listed", (), 13),
        (
            '"Q1,Q2","XY80","","","2","",""',
            '"Q1,Q2","XY80","","","2","","x"',
            "missing",
            ("Q1", "Q2"),
            "listed as not fitted",
            (7,),
            10,
        ),
        ('"R20","4R7', '"R20","4R7 DNP', "missing", ("R20",), "listed as not fitted", (5,), 11),
        (
            '"15u","","","2"',
            '"15u","","","4"',
            "quantity",
            ("L1", "L2"),
            "quantity 4, but 2",
            (6,),
            None,
        ),
        ('"J1"', '"L1"', "twice", ("L1",), "2 times", (6, 8), None),
        (
            '"470p/200V"',
            '"47,000 p/200V"',
            "not readable",
            ("C20",),
            "not clearly a value",
            (4,),
            11,
        ),
    ],
)
def test_each_disagreement_is_told_with_both_places(
    old: str,
    new: str,
    kind: str,
    names: tuple[str, ...],
    says: str,
    lines: tuple[int, ...],
    stands: int | None,
) -> None:
    assert old in COMMAS
    (finding,) = compared(COMMAS.replace(old, new)).findings
    assert (finding.kind, finding.names, finding.lines) == (kind, names, lines)
    assert says in finding.message
    place = finding.place.line if finding.place else None
    assert place == stands


def test_what_is_better_than_the_spec_agrees_and_what_is_not_told_is_no_agreement() -> None:
    found = compared(COMMAS.replace("20%", "10%").replace("/63V", ""))
    assert found.findings == []
    assert found.untold["voltage rating not in the table"] == {"C1", "C2"}
    assert found.extra == ("J1",)


def test_a_list_that_bears_a_value_together_is_hinted_at() -> None:
    found = compared(COMMAS, SPEC.replace("C1 + C2", "[C1, C2]"))
    assert all("the spec says C1 + C2" in item.message for item in found.findings)
    assert found.findings


@pytest.mark.parametrize(
    ("text", "unit", "value"),
    [
        ("4k7", "ohm", 4700.0), ("R47", "ohm", 0.47), ("1M0", "ohm", 1e6), ("10MEG", "ohm", 1e7),
        ("100n", "F", 1e-7), ("100N", "F", 1e-7), ("1M", "F", None), ("22", "F", None),
        ("10k,1%,0603", "ohm", 1e4), ("1,000 pF", "F", None), ("0,047u", "F", 4.7e-8),
        ("4u7", "H", 4.7e-6), ("4R7", "H", None), ("T10A 125VDC", "A", 10.0), ("5m", "ohm", 0.005),
        ("10k or 12k", "ohm", None), ("DNP", "F", None), ("", "F", None),
    ],
)  # fmt: skip
def test_values_as_tables_write_them(text: str, unit: str, value: float | None) -> None:
    assert board_value(text, unit).value == pytest.approx(value)


@pytest.mark.parametrize("text", ["", "C", "12", "C9-C3", "C1-R4", "C1-C99999", "C1 +", {"a": 1}])
def test_what_is_no_designator_is_none(text: object) -> None:
    assert designators(text) is None


def test_a_designator_for_a_value_that_is_not_there_is_refused() -> None:
    wrong = SPEC.replace("{c_local: C10-C12}", "{c_locl: C10}").replace("C1 + C2", "'?'")
    wrong = wrong.replace("[L1, L2]", "L1, L2")
    problems = [item.problem for item in load_text(wrong, "board.amp.yaml").refusals]
    assert any("`c_locl`" in problem for problem in problems)
    assert any("a comma inside braces" in problem for problem in problems)
    assert any("names no parts of the board" in problem for problem in problems)


def test_the_command_reads_named_columns_and_says_what_it_cannot_do(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    spec, table = tmp_path / "a.amp.yaml", tmp_path / "bom.csv"
    spec.write_text(SPEC, "utf-8")
    table.write_text(COMMAS.replace("Reference", "On board"), "utf-8")
    assert main(["bom", str(spec), str(table)]) == 2
    assert "--reference NAME" in " ".join(capsys.readouterr().out.split())
    assert main(["bom", "--reference", "on board", str(spec), str(table)]) == 0
    assert "AGREES" in capsys.readouterr().out
    table.write_text(COMMAS.replace("4R7", "47R"), "utf-8")
    assert main(["bom", str(spec), str(table)]) == 1
    told = "".join(capsys.readouterr().out.split())
    assert f"{spec},line11;{table},line5" in told
    spec.write_text("amplifier_spec: 1\n", "utf-8")
    assert main(["bom", str(spec), str(table)]) == 2


def test_the_same_disagreement_in_every_report(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    board, table = tmp_path / "board.amp.yaml", tmp_path / "bom.csv"
    board.write_text(SPEC, "utf-8")
    table.write_text(COMMAS.replace("2200uF/63V", "2200uF/35V").replace("J1", "=J1|x"), "utf-8")
    given = ["bom", str(board), str(table)]
    assert main([*given, "--report", "json"]) == 1
    told = json.loads(capsys.readouterr().out)
    assert told["agrees"] is False
    (item,) = told["findings"]
    assert (item["kind"], item["parts"], item["table_lines"]) == ("different", ["C1", "C2"], [2])
    assert item["place"]["line"] == 3
    assert main([*given, "--report", "markdown", "-o", str(tmp_path / "bom.md")]) == 1
    page = (tmp_path / "bom.md").read_text("utf-8")
    assert "**HELD**" in page
    assert "| Different | C1, C2 |" in page
    assert "=J1\\|x" in page  # nothing of a table becomes markup
    assert main([*given, "-o", str(table), "--overwrite"]) == 2
    assert "would be lost" in capsys.readouterr().err


@pytest.mark.parametrize(
    ("column", "text", "fitted"),
    [
        ("value", "100 nF", True),
        ("value", "NM", False),
        ("value", "15R DNP", False),
        ("description", "resistor, not fitted", False),
        ("description", "capacitor 0805 do not populate", False),
        ("description", "film, not for reflow", True),
    ],
)
def test_what_is_not_fitted_is_told_in_the_ways_of_the_trade(
    column: str, text: str, fitted: bool
) -> None:
    """Abbreviations on bills of materials: common practice, no source."""
    assert BomRow(2, ("R1",), {column: text}).fitted is fitted
