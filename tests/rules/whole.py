"""All checks over a small spec, by name: of the product, or of its first channel."""

from ampreview.linter.evaluation.catalogue import load
from ampreview.linter.evaluation.engine import Assessment
from ampreview.linter.finding import Finding
from ampreview.linter.reading.loading import load_text


def answers(text: str) -> dict[str, Finding]:
    """The answer of every check."""
    loaded = load_text("amplifier_spec: 1\n" + text, "fragment")
    assert loaded.spec is not None, loaded.refusals
    run = Assessment(loaded.spec, load(), loaded.spec.milestone)
    return {
        entry.name: run.judge(entry, run.subjects(entry.check)[0])
        for entry in run.catalogue.entries
    }
