"""What differs on Windows, as far as another system can show it: names, drives, line ends."""

from pathlib import Path, PureWindowsPath

import pytest

from ampreview.linter.cli import main
from ampreview.linter.reading import writing
from ampreview.linter.reading.revision import split
from ampreview.linter.reading.writing import WritingError, kept_by_windows, refuse_target
from ampreview.linter.reports import sarif_parts

SPEC = """amplifier_spec: 1
title: Invented
milestone: concept
supply: {source: dc-source, rails: single, v_rail: 24 V,
  bulk: {ref: C1, c: 1 mF, v_rated: 50 V}}
channels: {main: {rated_power: 20 W, rated_load: 8 ohm, output_stage: {topology: full-bridge}}}
"""


@pytest.mark.parametrize(
    "name", ["CON", "nul", "aux.csv", "NUL.tar.gz", "Com1.json", "lpt9", "com\u00b2.md", "prn .txt"]
)
def test_names_of_devices(name: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """Microsoft, "Naming Files, Paths, and Namespaces", as pages that quote it list them."""
    assert kept_by_windows(name)
    monkeypatch.setattr(writing.os, "name", "nt")
    with pytest.raises(WritingError, match="keeps for itself"):
        refuse_target(PureWindowsPath("boards") / name, overwrite=True)  # type: ignore[arg-type]


@pytest.mark.parametrize(
    "name", ["console.csv", "com.json", "com10", "nullify", "my-con.md", "x.nul"]
)
def test_names_like_those_of_devices(name: str) -> None:
    assert not kept_by_windows(name)


@pytest.mark.parametrize("text", [r"C:\boards\a.amp.yaml", "d:/boards/a.amp.yaml", "C:\\a:b.yaml"])
def test_a_drive_is_no_revision(text: str) -> None:
    assert split(text) is None
    assert split("HEAD:boards/a.amp.yaml") == ("HEAD", "boards/a.amp.yaml")


def test_addresses_of_files_on_drives(monkeypatch: pytest.MonkeyPatch) -> None:
    """RFC 8089, appendix E.2: a drive letter stands behind three slashes."""
    monkeypatch.setattr(sarif_parts, "PurePath", PureWindowsPath)
    assert sarif_parts.uri(r"C:\my boards\a.amp.yaml") == "file:///C:/my%20boards/a.amp.yaml"
    assert sarif_parts.uri(r"boards\a.amp.yaml") == "boards/a.amp.yaml"
    assert sarif_parts.uri(r"..\a.amp.yaml") == "../a.amp.yaml"


def test_line_ends_and_byte_order_mark_change_no_report(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(tmp_path)
    told = []
    table = "Reference,Value\nC1,1 mF\n"
    for mark, end in (("", "\n"), ("", "\r\n"), ("\ufeff", "\r\n"), ("", "\r")):
        for name, text in (("a.amp.yaml", SPEC), ("bom.csv", table)):
            Path(name).write_bytes((mark + text.replace("\n", end)).encode("utf-8"))
        for words in (["assess", "--full", "a.amp.yaml"], ["bom", "a.amp.yaml", "bom.csv"]):
            assert main(words) == 0
        lines = capsys.readouterr().out.splitlines()
        told.append([x for x in lines if not x.lstrip().startswith(("spec ", "table "))])
    assert told[0] == told[1] == told[2] == told[3]
