"""Checks over a small spec, whose text goes without the format's first line."""

from collections.abc import Iterator, Mapping

from ampreview.linter.check import Milestone
from ampreview.linter.evaluation.catalogue import load
from ampreview.linter.evaluation.engine import Assessment
from ampreview.linter.finding import Finding
from ampreview.linter.reading.loading import load_text


def assessment(text: str, milestone: Milestone | None = None) -> Assessment:
    """A run of the catalogue at a milestone, or at the spec's own."""
    loaded = load_text("amplifier_spec: 1\n" + text, "fragment")
    assert loaded.spec is not None, loaded.refusals
    return Assessment(loaded.spec, load(), milestone or loaded.spec.milestone)


class Answers(Mapping[str, Finding]):
    """The answer of every check, by name: of the product, or of its first channel.

    Each is judged when it is asked for.
    """

    def __init__(self, run: Assessment) -> None:
        self.run = run

    def __getitem__(self, check: str) -> Finding:
        entry = self.run.catalogue.entry(check)
        assert entry is not None, f"there is no check {check}"
        return self.run.judge(entry, self.run.subjects(entry.check)[0])

    def __iter__(self) -> Iterator[str]:
        return (entry.name for entry in self.run.catalogue.entries)

    def __len__(self) -> int:
        return len(self.run.catalogue.entries)


def answers(text: str, milestone: Milestone | None = None) -> Answers:
    return Answers(assessment(text, milestone))


def answer(check: str, text: str, milestone: Milestone | None = None, subject: str = "") -> Finding:
    """The answer of one check."""
    run = assessment(text, milestone)
    entry = run.catalogue.entry(check)
    assert entry is not None, f"there is no check {check}"
    return run.judge(entry, subject or run.subjects(entry.check)[0])
