"""No message prints what nobody knows: a placeholder as a fact, or a name that is empty.

Read are the messages of the samples and the published designs, and of every check on its own
fragments with each single field left out, a part of the checks at each run.
"""

import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from ampreview.linter.evaluation.catalogue import Entry, load
from ampreview.linter.evaluation.engine import Assessment
from ampreview.linter.finding import Finding, Status
from ampreview.linter.reading.loading import Spec, load_text

from ..reviews import FILES, name_of, reviewed
from ..sampling import some
from .test_no_dead_ends import dead_ends

CATALOGUE = load()
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


def told(spec: Spec, entry: Entry) -> Iterator[Finding]:
    """The answers of one check at prototype."""
    run = Assessment(spec, CATALOGUE, "prototype")
    return (run.judge(entry, subject) for subject in run.subjects(entry.check))


@pytest.mark.parametrize("path", FILES, ids=name_of)
def test_messages_of_whole_specs(path: Path) -> None:
    """And their open items can be answered."""
    found = reviewed(path, "prototype")
    assert [fault for item in found.findings for fault in faults(item)] == []
    assert dead_ends(found) == []


@pytest.mark.parametrize("name", some([entry.name for entry in CATALOGUE.entries], 9))
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
                found += [fault for item in told(less, entry) for fault in faults(item)]
    assert found == []
