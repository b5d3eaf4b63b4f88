"""A check that crashes holds at every milestone, in every report, and no command fails by it."""

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from ampreview.linter.check import MILESTONES, Milestone
from ampreview.linter.cli import main
from ampreview.linter.evaluation import catalogue
from ampreview.linter.judging import criteria, house_file
from ampreview.linter.judging.review import review
from ampreview.linter.reading.loading import load_text

SPEC = """\
amplifier_spec: 1
title: Invented
supply: {source: dc-source, rails: single, v_rail: 24 V ± 5 %, bulk: {c: 1 mF, v_rated: 50 V}}
channels: {main: {rated_power: 20 W, rated_load: 8 ohm, output_stage: {topology: full-bridge}}}
"""
CHECK = "bulk-capacitor-voltage"
WORDS = (
    ["assess"],
    ["assess", "--check", CHECK],
    ["assess", "--report", "markdown"],
    ["assess", "--report", "json"],
    ["assess", "--report", "sarif"],
    ["assess", "--remedies", "all", "--tolerance", "root-sum-square"],
    ["worksheet"],
    ["worksheet", "--report", "markdown"],
    ["questions"],
    ["questions", "--requirements"],
    ["compare", "other.amp.yaml"],
    ["amend", "--to-release"],
)
NEED_NOT_NAME = ("questions", "compare")


def raising(v_rail: float, v_rated: float) -> float:
    raise ZeroDivisionError("float division by zero")


def no_number(v_rail: float, v_rated: float) -> float:
    return float("nan")


def not_real(v_rail: float, v_rated: float) -> object:
    return (-1.0) ** 0.5


def break_check(monkeypatch: pytest.MonkeyPatch, figure: Callable[..., object]) -> None:
    """Put a figure in place of that of one check of the catalogue."""
    whole = catalogue.load()
    entries = tuple(
        replace(entry, check=replace(entry.check, figure=figure)) if entry.name == CHECK else entry
        for entry in whole.entries
    )
    spoilt = replace(whole, entries=entries)
    for module in (catalogue, criteria, house_file):
        monkeypatch.setattr(module, "load", lambda: spoilt)


@pytest.mark.parametrize("figure", [raising, no_number, not_real])
@pytest.mark.parametrize("milestone", MILESTONES)
def test_a_crash_holds_at_every_milestone(
    monkeypatch: pytest.MonkeyPatch, milestone: Milestone, figure: Callable[..., object]
) -> None:
    break_check(monkeypatch, figure)
    spec = load_text(SPEC, "a.amp.yaml").spec
    assert spec is not None
    held = review(spec, milestone).verdict.holding
    assert [x.message for x in held if x.check == CHECK and "itself failed" in x.message]


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    made = tmp_path_factory.mktemp("crash")
    for name in ("a.amp.yaml", "other.amp.yaml"):
        (made / name).write_text(SPEC, encoding="utf-8")
    return made


@pytest.mark.parametrize("words", WORDS, ids=" ".join)
def test_no_command_fails_and_reports_tell_it(
    folder: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
    words: list[str],
) -> None:
    break_check(monkeypatch, raising)
    monkeypatch.chdir(folder)
    named = [CHECK] if words == ["worksheet"] else []
    status = main([*words, "a.amp.yaml", *named])
    told = "".join(capsys.readouterr())
    assert status == (1 if words[0] in ("assess", "amend") else 0), told
    assert "program itself failed" not in told
    if words[0] not in NEED_NOT_NAME:
        assert (CHECK if words[0] == "amend" else "itself failed") in " ".join(told.split())
