"""A figure beyond a limit: how grave it is, and what it may only owe to an assumption."""

from dataclasses import replace
from typing import TypeGuard

from ..check import MILESTONES
from ..finding import Assumed, Finding, Severity, Status
from .measured import GRAVE, leaning, missing_by
from .node import Computed
from .question import Question
from .ranges import Bounded
from .stand_ins import (
    hangs_on,
    hangs_on_a_part,
    is_cleared_by_the_middle,
    over_usual,
    stands,
    sure_figure,
)
from .threshold import missed
from .tolerance import root_sum_square
from .wording import assumed_in_words


def failed(question: Question, finding: Finding, node: Computed, severity: Severity) -> Finding:
    """A finding; what an assumption decides is open, or said and never critical."""
    check, note = question.check, ""
    assumed = [item for item in node.assumed if item.leaning in ("adverse", "neutral")]
    stated = question.graph.spec.values
    stand_ins = [item for item in assumed if item.placeholder and item.path not in stated]
    over = over_usual(question, stand_ins)
    if hangs_on(over):
        return _open_by_default(question, finding, stand_ins, over.border if over else "")
    if hangs_on_a_part(question, node, assumed, severity):
        return _open_by_default(question, finding, assumed, "")
    firm = [item for item in assumed if not item.placeholder]
    adverse = [item for item in firm if item.leaning == "adverse"]
    over = over_usual(question, adverse)
    if _decides(over) and (adverse == firm or is_cleared_by_the_middle(question, over)):
        return _open_by_default(question, finding, adverse, over.border)
    over = over_usual(question, firm)
    if _decides(over):
        named = ", ".join(map(assumed_in_words, firm))
        note = f"; an assumed value decides: {named}"
        severity = max(severity, Severity.MAJOR, key=lambda item: item.rank)
    elif over is None and _rests_on_the_worst(question, severity, assumed):
        return _open_by_default(question, finding, assumed, "")
    elif severity == Severity.CRITICAL and not stands(question, node, severity):
        severity = Severity.MAJOR
        note = "; major, not critical, because it rests on an assumption"
    within = (None, Severity.MINOR)
    soft = check.stake == "performance" and severity != Severity.MINOR
    if (
        soft
        and missed(check, root_sum_square(node, question.adverse, question.alike(node))) in within
    ):
        severity = Severity.MINOR
        note = "; minor, because root-sum-square tolerances stay within the limit"
    failed = missing_by(question, finding, severity, note)
    if severity == Severity.MINOR and question.milestone != MILESTONES[0]:
        worse = next((item for item in node.assumed if _may_hide_more(item, question)), None)
        if worse is not None:
            note = "missing data may make it a hazard"
            return leaning(question, failed, [worse], note)
    return failed


def _decides(over: Bounded | None) -> TypeGuard[Bounded]:
    """Whether a check fails over a part of what is only assumed, and is met over the rest."""
    return over is not None and over.best is None and over.worst is not None


def _may_hide_more(item: Assumed, question: Question) -> bool:
    """Whether a remark may turn out to be critical once something is known."""
    if question.check.limits.critical is None or item.leaning in ("absent", "adverse"):
        return False
    if item.leaning == "floor":
        return True
    over = over_usual(question, [item])
    return over is not None and over.worst == Severity.CRITICAL


def _rests_on_the_worst(question: Question, severity: Severity, assumed: list[Assumed]) -> bool:
    """Whether a grave finding is gone without adverse assumptions."""
    if severity not in GRAVE or not assumed or any(x.leaning != "adverse" for x in assumed):
        return False
    if any(item.placeholder for item in assumed):
        return False
    if not any(question.graph.asked(item.path, question.channel) for item in assumed):
        return False
    figure = sure_figure(question)
    return figure is not None and missed(question.check, figure) not in GRAVE


def _open_by_default(
    question: Question, finding: Finding, assumed: list[Assumed], border: str
) -> Finding:
    """Silence read as the worst case convicts nobody: the check asks."""
    gaps = [gap for x in assumed for gap in question.graph.asked(x.path, question.channel)]
    missing = tuple(replace(gap, border=border) for gap in dict.fromkeys(gaps))
    names = ", ".join(item.path for item in missing or assumed)
    needs = f"; it must be {border}" if border else ""
    return replace(
        finding,
        status=Status.OPEN,
        message=f"{finding.message}; it depends on {names}, which is not stated{needs}",
        advice=replace(finding.advice, missing=missing),
    )
