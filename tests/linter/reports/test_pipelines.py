"""Reports for pipelines, each opened by a consumer that is not ours.

JUnit XML by junitparser, SARIF 2.1.0 by pydantic-sarif (models made from a draft of OASIS),
lines by the pattern of the GNU Coding Standards, *Formatting Error Messages*.
"""

import re
from collections import Counter
from pathlib import Path

import junitparser
import pytest
from pydantic_sarif.model import StaticAnalysisResultsFormatSarifVersion210JsonSchema as Sarif

from ampreview.linter.cli import main
from ampreview.linter.finding import Status
from ampreview.linter.judging.review import Review, review_file

HOSTILE = "<script>&]]> \\u001b[31m 🔊 x.amp.yaml:1:1: fatal: forged"
SPEC = f"""amplifier_spec: 1
title: "{HOSTILE.replace(chr(92) + "u001b", "")}"
milestone: prototype
supply: {{rails: single, source: dc-source, v_rail: 24 kV}}
channels:
  left: &one
    rated_power: 20 W
    rated_load: 8 ohm
    output_stage: {{topology: full-bridge, devices: discrete, device: {{v_dss: 40 V}}}}
  right: *one
deviations:
  - {{check: value-outside-usual-range, place: product, permitted_by: "<b>&", reason: "]]>",
     until: production}}
"""
REFUSED = 'amplifier_spec: 1\n"su<b>": {}\nsupply: {v_rail: 24}\n'
GNU = re.compile(r"([^:]+):(\d+):(\d+): (critical|major|minor|open|not assessed): (.+)")
PROGRAM = re.compile(r"ampreview: .+")


@pytest.fixture
def spec(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    (tmp_path / "x.amp.yaml").write_text(SPEC, encoding="utf-8")
    (tmp_path / "refused.amp.yaml").write_text(REFUSED, encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    return Path("x.amp.yaml")


def made(kind: str, *files: str) -> str:
    out = Path("report")
    words = ["--report", kind, "--remedies", "none", "--overwrite", "-o", str(out)]
    main(["assess", *files, *words])
    return out.read_text(encoding="utf-8")


def reviewed(path: Path) -> Review:
    found = review_file(path)
    assert isinstance(found, Review)
    return found


def test_junit_is_what_the_review_says(spec: Path) -> None:
    text, review = made("junit", "x.amp.yaml", "refused.amp.yaml"), reviewed(spec)
    judged, refused = junitparser.JUnitXml.fromstring(text.encode())
    cases = list(judged)
    answers = [x for x in review.findings if x.status is not Status.NOT_APPLICABLE]
    assert judged.tests == len(cases) == len(answers)
    assert len({(case.classname, case.name) for case in cases}) == len(cases)
    results = Counter(type(x.result[0]).__name__ if x.result else "passed" for x in cases)
    assert results["Failure"] == judged.failures == len(review.verdict.holding) > 0
    mild = [x for x in answers if x.permitted or x.status is Status.OPEN]
    mild = [x for x in mild if x not in review.verdict.holding]
    assert results["Skipped"] == judged.skipped == len(mild) > 0
    permitted = [x for x in cases if x.name == "value-outside-usual-range (product)"]
    assert "permitted" in permitted[0].result[0].message
    assert (refused.tests, refused.errors, refused.failures) == (2, 2, 0)
    counts = [(suite.tests, suite.failures, suite.errors, suite.skipped) for suite in (judged,)]
    judged.update_statistics()  # the consumer counts for itself
    assert counts == [(judged.tests, judged.failures, judged.errors, judged.skipped)]


def test_junit_of_a_released_design_has_no_failure(spec: Path) -> None:
    spec.write_text("amplifier_spec: 1\nsupply: {rails: single, v_rail: 24 V}\n", "utf-8")
    (judged,) = junitparser.JUnitXml.fromstring(made("junit", "x.amp.yaml").encode())
    assert reviewed(spec).verdict.released
    assert judged.failures == judged.errors == 0 < judged.tests


def test_lines_have_the_gnu_form_and_point_into_the_file(spec: Path) -> None:
    lines = made("lines", "x.amp.yaml", "refused.amp.yaml").splitlines()
    found = [match for line in lines if (match := GNU.fullmatch(line))]
    assert all(PROGRAM.fullmatch(line) for line in lines if not GNU.fullmatch(line))
    review = reviewed(spec)
    opened = [x for x in review.verdict.holding if x.status is Status.OPEN]
    severities = Counter(match[4] for match in found if match[1] == "x.amp.yaml")
    assert severities.total() == len(review.failing()) + len(opened)
    assert "critical" in severities
    rows = SPEC.splitlines()
    supply = next(x for x in found if "[value-outside-usual-range" in x[5])
    assert rows[int(supply[2]) - 1][int(supply[3]) - 1 :].startswith("24 kV")
    refused = {(int(x[2]), int(x[3])) for x in found if x[4] == "not assessed"}
    assert refused == {(2, 1), (3, 18)}


def test_sarif_is_read_by_models_of_the_standard(spec: Path) -> None:
    """The models were made from a draft, in which the status of a suppression was its state."""
    made_of_both = made("sarif", "x.amp.yaml", "refused.amp.yaml")
    assert '"status": "accepted"' in made_of_both  # 3.35.3 of the standard
    log = Sarif.model_validate_json(made_of_both.replace('"status":', '"state":'))
    (run,) = log.runs
    assert run.results
    assert run.tool.driver.name == "ampreview"
    text = made_of_both.replace('"status":', '"state":').replace('"kind": "fail"', '"kind": "no"')
    with pytest.raises(ValueError, match="kind"):
        Sarif.model_validate_json(text)


def test_markdown_begins_as_the_page_does(spec: Path) -> None:
    """Verdict with its counts, product, why; then promises and what is required."""
    head = made("markdown", "x.amp.yaml").split("### Findings")[0]
    review = reviewed(spec)
    counts = [f"{n} {x}" for x, n in review.counts().items() if n and x != "meets"]
    places = [head.index(x) for x in ("**HELD** at prototype", *counts[:3], "Required before")]
    assert places == sorted(places)
