"""Reports for pipelines, each opened by a consumer that is not ours.

JUnit XML by junitparser, SARIF 2.1.0 by pydantic-sarif (models made from a draft of OASIS),
lines by the pattern of the GNU Coding Standards, *Formatting Error Messages*, Markdown by
markdown-it.
"""

import re
from collections import Counter
from collections.abc import Mapping
from contextlib import chdir
from dataclasses import dataclass
from pathlib import Path

import junitparser
import pytest
from markdown_it import MarkdownIt
from pydantic_sarif.model import StaticAnalysisResultsFormatSarifVersion210JsonSchema as Sarif

from ampreview.linter.cli import main
from ampreview.linter.finding import Status
from ampreview.linter.judging.review import Review, review_file

KINDS = ("junit", "lines", "sarif", "markdown")
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


@dataclass(frozen=True, slots=True)
class Made:
    """The reports of one run over two files, by kind, and the review of the first one."""

    texts: Mapping[str, str]
    review: Review


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory) -> Made:
    folder = tmp_path_factory.mktemp("pipeline")
    (folder / "x.amp.yaml").write_text(SPEC, encoding="utf-8")
    (folder / "refused.amp.yaml").write_text(REFUSED, encoding="utf-8")
    with chdir(folder):
        words = [word for kind in KINDS for word in ("--report", f"{kind}={kind}")]
        main(["assess", "--quiet", "--remedies", "none", *words, "x.amp.yaml", "refused.amp.yaml"])
        review = review_file(Path("x.amp.yaml"))
    assert isinstance(review, Review)
    return Made({kind: (folder / kind).read_text(encoding="utf-8") for kind in KINDS}, review)


def test_junit_is_what_the_review_says(made: Made) -> None:
    review = made.review
    judged, refused = junitparser.JUnitXml.fromstring(made.texts["junit"].encode())
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


def test_junit_of_a_released_design_has_no_failure(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    spec = tmp_path / "x.amp.yaml"
    spec.write_text(
        "amplifier_spec: 1\nsupply: {rails: single, v_rail: 24 V}\n"
        "channels: {main: {rated_power: 20 W, rated_load: 8 ohm}}\n",
        "utf-8",
    )
    assert main(["assess", "--report", "junit", str(spec)]) == 0
    (judged,) = junitparser.JUnitXml.fromstring(capsys.readouterr().out.encode())
    assert judged.failures == judged.errors == 0 < judged.tests


def test_lines_have_the_gnu_form_and_point_into_the_file(made: Made) -> None:
    lines = made.texts["lines"].splitlines()
    found = [match for line in lines if (match := GNU.fullmatch(line))]
    assert all(PROGRAM.fullmatch(line) for line in lines if not GNU.fullmatch(line))
    review = made.review
    opened = [x for x in review.verdict.holding if x.status is Status.OPEN]
    severities = Counter(match[4] for match in found if match[1] == "x.amp.yaml")
    assert severities.total() == len(review.failing()) + len(opened)
    assert "critical" in severities
    rows = SPEC.splitlines()
    supply = next(x for x in found if "[value-outside-usual-range" in x[5])
    assert rows[int(supply[2]) - 1][int(supply[3]) - 1 :].startswith("24 kV")
    refused = {(int(x[2]), int(x[3])) for x in found if x[4] == "not assessed"}
    assert refused == {(2, 1), (3, 18)}


def test_sarif_is_read_by_models_of_the_standard(made: Made) -> None:
    """The models were made from a draft, in which the status of a suppression was its state."""
    text = made.texts["sarif"]
    assert '"status": "accepted"' in text  # 3.35.3 of the standard
    log = Sarif.model_validate_json(text.replace('"status":', '"state":'))
    (run,) = log.runs
    assert run.results
    assert run.tool.driver.name == "ampreview"
    wrong = text.replace('"status":', '"state":').replace('"kind": "fail"', '"kind": "no"')
    with pytest.raises(ValueError, match="kind"):
        Sarif.model_validate_json(wrong)


def test_markdown_begins_as_the_page_does(made: Made) -> None:
    """Read by markdown-it: verdict, product, why; then promises and what is required."""
    tokens = MarkdownIt("commonmark").enable("table").parse(made.texts["markdown"])
    inside = [x for token in tokens for x in (token, *(token.children or ()))]
    assert not {"html_block", "html_inline", "link_open", "image"} & {x.type for x in inside}
    texts = [x.content for x in tokens if x.type == "inline"]
    head = texts[: texts.index("Required before release")]
    review = made.review
    assert head[0] == "Design review"
    assert "fatal: forged" in head[1]  # the title, as text
    assert head[2].startswith("**HELD** at prototype: ")
    counts = [f"{n} {x}" for x, n in review.counts().items() if n and x != "meets"]
    assert all(count in head[2] for count in counts)
    assert "x.amp.yaml" in head[3]
    assert head[4].startswith("Held by ")
    assert head[5] == "Promises"
