"""The same reports where the decimal sign is a comma, and where the small I has no dot.

The locales are made for the test from the sources that the system has; C is what they are
compared with.  Both write 1,5 (glibc, locales de_DE and tr_TR).
"""

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from ampreview.linter.cli import main

SPEC = "board.amp.yaml"
TEXT = """amplifier_spec: 1
title: Invented Ünit İıŞ
milestone: concept
supply: {source: dc-source, rails: single, v_rail: 24.5 V ± 2.5 %,
  bulk: {ref: C1, c: 1.5 mF, v_rated: 50 V}}
channels: {main: {rated_power: 20 W, rated_load: 8 ohm, output_stage: {topology: full-bridge}}}
"""
BOM = "\ufeffReferenz;WERT;Menge\nC1;1,5 mF;1\n"
CODE = """
import locale, sys
locale.setlocale(locale.LC_ALL, "")
from ampreview.linter.cli import main
print(locale.localeconv()["decimal_point"], file=sys.stderr)
for words in (
    ["assess", "board.amp.yaml", "--report", "json"],
    ["assess", "board.amp.yaml", "--full"],
    ["bom", "board.amp.yaml", "bom.csv"],
    ["sweep", "board.amp.yaml", "--vary", "rated_load=1.5 ohm..2.5 ohm:0.5 ohm"],
    ["questions", "board.amp.yaml", "--table", "table.csv"],
):
    assert main(words) < 2, words
print(open("table.csv", encoding="utf-8").read())
"""


@pytest.fixture(scope="module")
def locales(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder with two locales; skipped where the system cannot make them."""
    folder = tmp_path_factory.mktemp("locales")
    if shutil.which("localedef") is None:
        pytest.skip("localedef is not installed")
    for name in ("de_DE", "tr_TR"):
        words = ["localedef", "-i", name, "-f", "UTF-8", str(folder / f"{name}.UTF-8")]
        if subprocess.run(words, capture_output=True, check=False).returncode > 1:
            pytest.skip(f"the system has no source of the locale {name}")
    return folder


def told(folder: Path, locales: Path, name: str) -> tuple[str, str]:
    """All that some commands print under a locale, and the decimal sign that was in force."""
    made = folder / name.replace(".", "-")
    made.mkdir()
    (made / SPEC).write_text(TEXT, encoding="utf-8")
    (made / "bom.csv").write_text(BOM, encoding="utf-8")
    env = os.environ | {"LC_ALL": name, "LANG": name, "LOCPATH": str(locales)}
    done = subprocess.run(
        [sys.executable, "-c", CODE], cwd=made, env=env, capture_output=True, check=True, timeout=60
    )
    return done.stdout.decode("utf-8"), done.stderr.decode("utf-8").splitlines()[0]


def test_reports_are_the_same_in_every_locale(tmp_path: Path, locales: Path) -> None:
    plain, point = told(tmp_path, locales, "C")
    assert point == "."
    assert "24.5 V" in plain and "1 values agree" in plain
    for name in ("de_DE.UTF-8", "tr_TR.UTF-8"):
        text, sign = told(tmp_path, locales, name)
        assert sign == ",", name
        assert text == plain, name


def test_a_decimal_comma_of_a_table_is_read_and_that_of_a_spec_refused(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(tmp_path)
    Path(SPEC).write_text(TEXT.replace("1.5 mF", "1,5 mF"), encoding="utf-8")
    assert main(["assess", SPEC]) == 2
    assert "decimal" in capsys.readouterr().out
    Path(SPEC).write_text(TEXT, encoding="utf-8")
    for number, status in (("1,5", 0), ("1.5", 0), ("15", 1), ("1,500", 1)):
        Path("bom.csv").write_text(f"Referenz;Wert\nC1;{number} mF\n", encoding="utf-8-sig")
        assert main(["bom", SPEC, "bom.csv"]) == status, number


@pytest.mark.parametrize("unit", ["mİ", "Vı", "K\u0307", "ﬀ"])
def test_letters_that_change_with_their_case_are_no_units(unit: str, tmp_path: Path) -> None:
    """The dotted capital and the dotless small I, a combining dot, a ligature."""
    path = tmp_path / SPEC
    path.write_text(f"amplifier_spec: 1\nsupply: {{v_rail: 24 {unit}}}\n", encoding="utf-8")
    assert main(["assess", str(path)]) == 2
