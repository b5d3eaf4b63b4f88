"""What an open item says a value must be is right: put in it meets, a little beyond it does not."""

from pathlib import Path

import pytest

from ampreview.linter.evaluation.catalogue import load
from ampreview.linter.evaluation.engine import Assessment
from ampreview.linter.evaluation.threshold import missed
from ampreview.linter.finding import Finding, Status
from ampreview.linter.quantities.quantity import Value, spell, to_si
from ampreview.linter.reading.loading import Spec

from ..reviews import SAMPLES, name_of, reviewed, spec_of
from ..sampling import few

PATHS = sorted(SAMPLES.glob("*.amp.yaml"))
BEYOND = 0.02


def bordered(path: Path) -> list[Finding]:
    found = reviewed(path, "prototype").findings
    return [x for x in found if x.advice.missing and x.advice.missing[0].border]


@pytest.mark.parametrize("path", PATHS, ids=name_of)
def test_a_border_is_where_the_check_begins_to_be_met(path: Path) -> None:
    for finding in few(bordered(path), 12, path.name):
        border_is_true(spec_of(path), finding)


def border_is_true(spec: Spec, finding: Finding) -> None:
    (missing,) = finding.advice.missing
    side, _, text = missing.border.removeprefix("at ").partition(" ")
    text = text.partition(" at its ")[0]
    field = spec.schema.field_of(missing.path)
    number = to_si(text, field.unit)
    worse = number * (1 - BEYOND) if side == "least" else number * (1 + BEYOND)
    if field.unit == "degC":
        worse = number - 1.0 if side == "least" else number + 1.0
    entry = load().entry(finding.check)
    assert entry is not None
    here, beyond = (judged(spec, finding, missing.path, x, field.unit) for x in (number, worse))
    assert here.evidence.figure is not None
    assert beyond.evidence.figure is not None
    assert missed(entry.check, here.evidence.figure) is None, here.message
    assert missed(entry.check, beyond.evidence.figure) is not None, beyond.message
    assert beyond.status is not Status.MEETS


def judged(spec: Spec, finding: Finding, path: str, x: float, unit: str) -> Finding:
    changed = spec.with_values({path: spell(Value(x, x, x), unit)}).spec
    assert changed is not None
    entry = load().entry(finding.check)
    assert entry is not None
    return Assessment(changed, load(), "prototype").judge(entry, finding.subject)


def test_there_are_borders_to_look_at() -> None:
    assert sum(len(bordered(path)) for path in PATHS) > 20
