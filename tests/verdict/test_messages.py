"""No message prints what nobody knows: a placeholder as a fact, or a name that is empty.

Read are the messages of the samples and the published designs, and of every check on its own
fragments with each single field left out.
"""

import re
from collections.abc import Iterator

import pytest

from ampreview.linter.evaluation.catalogue import load
from ampreview.linter.evaluation.engine import Assessment
from ampreview.linter.finding import Finding, Status
from ampreview.linter.judging.consistency import built_in_findings
from ampreview.linter.reading.loading import Spec, load_text

from . import specs

CATALOGUE = load()
FILES = (
    *specs.files("sample_specs"),
    *specs.files("tests/published/designs"),
    *specs.files("tests/published/failures"),
)
UNSAID = re.compile(r"infinite|\binf\b|\bnan\b|\bNone\b|[{}]|  | ,|: *[,;]|[:;,] *$", re.IGNORECASE)
WORDS_OF_NONE = re.compile(r"\bnone\b")
NOTHING_STATED = re.compile(r"\b0 \S+ each|stated at 0 ")


def faults(found: Finding) -> list[str]:
    """What a message must not hold; the word none of a section is one of the spec."""
    if found.status is Status.NOT_APPLICABLE:
        return []
    text = WORDS_OF_NONE.sub("nothing", found.message)
    hits = [match.group() for match in UNSAID.finditer(text)]
    if found.status is Status.OPEN:
        hits += [match.group() for match in NOTHING_STATED.finditer(text)]
    return [f"{found.check}: {hit!r} in: {found.message}" for hit in hits]


def told(spec: Spec, only: str = "") -> Iterator[Finding]:
    """The answers of a spec at prototype, of all checks or of one."""
    run = Assessment(spec, CATALOGUE, "prototype")
    if not only:
        yield from built_in_findings(spec, run.graph)
    for entry, subject in run.questions():
        if only in ("", entry.name):
            yield run.judge(entry, subject)


@pytest.mark.parametrize("name", FILES)
def test_messages_of_whole_specs(name: str) -> None:
    spec = specs.spec_of_file(name)
    assert [fault for item in told(spec) for fault in faults(item)] == []


@pytest.mark.parametrize("name", sorted(entry.name for entry in CATALOGUE.entries))
def test_messages_with_one_field_left_out(name: str) -> None:
    entry = CATALOGUE.entry(name)
    assert entry is not None
    found = []
    for fragment in (entry.check.fails, entry.check.passes):
        spec = load_text(f"amplifier_spec: 1\n{fragment}", name).spec
        assert spec is not None
        poorer = (spec.with_values({path: None}).spec for path in spec.values)
        for less in (spec, *poorer):
            if less is not None:
                found += [fault for item in told(less, name) for fault in faults(item)]
    assert found == []
