"""Every screen says what it is: an aid, not a certificate; and what the house file changed."""

from pathlib import Path

import pytest

from ampreview.linter.cli import main
from ampreview.linter.reports.verdict import DISCLAIMER

SPEC = """amplifier_spec: 1
supply: {source: dc-source, rails: single, v_rail: 24 V}
channels: {main: {rated_power: 20 W}}
"""
HOUSE = """amplifier_house: 1
checks_off: {emission-class: our products are for stages}
verified:
  - text: IEC 60000 of 2024
    by: head of safety
    on: 2025-06-30
    limits: {stored-voltage-service: {major: {found: 120 V, clause: table 4}}}
"""
COMMANDS = [
    "assess x.amp.yaml",
    "assess --full x.amp.yaml",
    "assess --report markdown x.amp.yaml",
    "assess --report sarif x.amp.yaml",
    "assess --report json x.amp.yaml",
    "assess --report junit x.amp.yaml",
    "assess --report lines x.amp.yaml",
    "questions x.amp.yaml",
    "questions --markdown x.amp.yaml",
    "questions --requirements x.amp.yaml",
    "worksheet x.amp.yaml power-above-rail",
    "worksheet --report markdown x.amp.yaml power-above-rail",
    "worksheet --report page x.amp.yaml power-above-rail",
    "compare x.amp.yaml x.amp.yaml",
    "compare --report markdown x.amp.yaml x.amp.yaml",
    "compare --report page x.amp.yaml x.amp.yaml",
    "amend --dry --all x.amp.yaml",
]


def printed(
    command: str, folder: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> str:
    monkeypatch.chdir(folder)
    Path("x.amp.yaml").write_text(SPEC, encoding="utf-8")
    Path("house.ampreview.yaml").write_text(HOUSE, encoding="utf-8")
    main(command.split())
    return " ".join(capsys.readouterr().out.replace("#", " ").split())


@pytest.mark.parametrize("command", COMMANDS)
def test_every_screen_is_an_aid_and_tells_of_the_house(
    command: str,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    told = printed(command, tmp_path, monkeypatch, capsys)
    assert DISCLAIMER in told
    assert "our products are for stages" in told


def test_a_blank_form_is_one_too(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    assert DISCLAIMER in printed("form --source battery", tmp_path, monkeypatch, capsys)
