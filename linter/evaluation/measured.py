"""A computed figure as a finding: with its evidence, met, missed, or leaning on something."""

from dataclasses import replace

from ..finding import Assumed, Evidence, Finding, Missing, Severity, Status
from .forbidden import forbidden_at_best
from .node import Computed
from .question import Question, answered
from .threshold import distance_to, limit_of, measured_to, mildest, missed
from .tolerance import Extreme
from .wording import corner_values, places, sentence

MOST_PLACES = 6
GRAVE = (Severity.CRITICAL, Severity.MAJOR)


def measured(question: Question, node: Computed, extreme: Extreme) -> Finding:
    """The figure at the worst corner, held against the first limit: met, for all that it says.

    With the places and values behind it.
    """
    check, graph, rising = question.check, question.graph, question.adverse < 0
    limit, basis = limit_of(check, mildest(check.limits))
    distance, share = distance_to(limit, extreme.figure, check.unit, rising)
    evidence = Evidence(
        unit=check.unit,
        at_least=rising,
        limits=check.limits,
        sources=check.sources,
        figure=extreme.figure,
        nominal=extreme.nominal,
        limit=limit,
        basis=basis,
        distance=distance,
        margin=share,
        corner=corner_values(extreme, graph, question.channel),
        assumed=node.assumed,
        leaves=node.used,
    )
    text = sentence(check, node, extreme.corner)
    pointed = places(node, check, graph, question.channel, MOST_PLACES)
    return answered(question.entry, question.subject, Status.MEETS, text, evidence, pointed)


def missing_by(
    question: Question,
    finding: Finding,
    severity: Severity,
    note: str,
    over_usual: Computed | None = None,
) -> Finding:
    """A finding of a severity, with its distance to the gravest limit that the figure misses.

    over_usual: the figure where values are missing, over all that these usually are.
    """
    gravest = missed(question.check, finding.evidence.figure or 0.0) or severity
    best = forbidden_at_best(question, severity, over_usual)
    evidence = measured_to(finding.evidence, *limit_of(question.check, gravest))
    return replace(
        finding,
        status=Status.FINDING,
        severity=severity,
        message=finding.message + note,
        evidence=replace(evidence, best=best),
        holds_always=best is not None,
    )


def leaning(question: Question, finding: Finding, assumed: list[Assumed], note: str) -> Finding:
    """An open answer: met or missed only with what it leans on, which it asks for."""
    missing: dict[Missing, None] = {}
    for item in assumed:
        for gap in question.graph.asked(item.path, question.channel):
            missing.setdefault(gap)
    if not missing:  # no field of this design could say it: at least tell what decides
        note += f"; what decides: {_named(question, assumed)}"
    return replace(
        finding,
        status=Status.OPEN,
        severity=None,
        message=f"{finding.message}; {note}",
        advice=replace(finding.advice, missing=tuple(missing)),
        evidence=replace(
            finding.evidence,
            assumed=tuple(dict.fromkeys((*finding.evidence.assumed, *assumed))),
        ),
    )


def _named(question: Question, assumed: list[Assumed]) -> str:
    """Assumptions in words, each with its value."""
    derived = question.graph.derived
    return ", ".join(
        f"{derived[x.path].meaning if x.path in derived else x.path}, taken as {x.text}"
        for x in assumed
    )
