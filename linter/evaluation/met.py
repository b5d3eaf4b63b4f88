"""A figure within its limits: met, unless it leans on what is only assumed or typical."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from ..check import MILESTONES
from ..declare import field_path, local_path
from ..finding import Assumed, Finding, Severity, Status
from .measured import GRAVE, leaning
from .node import Computed
from .only_typical import only_typical, open_ended
from .question import Question
from .recalled import in_doubt, known_how
from .stand_ins import over_usual

ONE_SIDED = "met only if the side not stated is near the stated one"


def met(question: Question, found: Finding, node: Computed) -> Finding:
    """The check is met, or open where only what is assumed or not guaranteed makes it so."""
    soft = [item for item in node.assumed if _may_flatter(item, question)]
    for items, note in _doubts(question, found, node, soft):
        if items:
            return leaning(question, found, list(items), note)
    if soft or _floors(node):
        found = replace(found, message=f"{found.message}; {_whatever(question, node, soft)}")
    return looked_up(question, found)


def looked_up(question: Question, found: Finding) -> Finding:
    """At the last milestone no answer of safety stands on a limit that nobody has looked up."""
    unseen = in_doubt(question.check, found.evidence.figure)
    if not unseen or question.milestone != MILESTONES[-1]:
        return found
    note = f"the limit is {known_how(unseen)}, not verified against the standard"
    return replace(found, status=Status.OPEN, severity=None, message=f"{found.message}; {note}")


def _doubts(
    question: Question, found: Finding, node: Computed, soft: list[Assumed]
) -> Iterator[tuple[Sequence[Assumed], str]]:
    """What a pass may lean on in vain at the milestone at hand, one kind after the other."""
    floors = _floors(node)
    if floors and not _holds_over(question, floors):
        yield floors, "best case: missing data can only make it worse"
    if question.milestone == MILESTONES[0]:
        return
    if soft and not _holds_over(question, [*floors, *soft]):
        yield soft, "met only on assumptions"
    telling = [item for item in node.assumed if _may_be_critical(item, question)]
    yield telling, "met with the assumed value, but not over its usual range"
    check, told = question.check, (question.plan, question.graph, node, found)
    if question.milestone != MILESTONES[-1] and check.limits.critical is not None:
        yield open_ended(*told, check), ONE_SIDED
    if question.milestone == MILESTONES[-1] and check.stake != "performance":
        yield only_typical(*told), "met only with typical values"


def _floors(node: Computed) -> list[Assumed]:
    """What is left out of the figure, so that it is only a least value."""
    return [item for item in node.assumed if item.leaning == "floor"]


def _may_flatter(item: Assumed, question: Question) -> bool:
    """Whether a pass may not rest on an assumption at this milestone.

    A default of the house states nothing of this design, so it acquits no grave check; an
    estimate in place of a sum hides what the sum would give.
    """
    if question.milestone == MILESTONES[0]:
        return False
    if question.milestone == MILESTONES[-1]:
        return item.leaning in ("favourable", "neutral") or item.placeholder
    if not can_be_grave(question):
        return False
    spec, path = question.graph.spec, field_path(item.path)
    if item.path in spec.values and spec.schema.fields[path].beats_sum:
        return True
    return item.leaning == "favourable" or path in spec.defaults


def can_be_grave(question: Question) -> bool:
    """Whether a check can find more than a remark."""
    limits = question.check.limits
    return limits.critical is not None or limits.major is not None


def _whatever(question: Question, node: Computed, soft: list[Assumed]) -> str:
    """That what is assumed cannot change the answer, and what that is."""
    derived, items = question.graph.derived, [*_floors(node), *soft]
    named = (
        derived[x.path].meaning.split(",")[0] if x.path in derived else local_path(x.path)
        for x in items
    )
    over = over_usual(question, items, shares=True)
    told = "a remark at most" if over is not None and over.worst is Severity.MINOR else "met"
    return f"{told} for any usual value of {' and '.join(dict.fromkeys(named))}"


def _holds_over(question: Question, soft: list[Assumed]) -> bool:
    """Whether the check is met over the usual ranges of all that is only assumed.

    At the last milestone a remark at most is as good: an answer that would not hold asks nothing.
    """
    stated = question.graph.spec.values
    if any(item.path in stated for item in soft):  # an estimate of the spec
        return False
    over = over_usual(question, soft, shares=True)
    mild = (Severity.MINOR,) if question.milestone == MILESTONES[-1] else ()
    return over is not None and over.worst in (None, *mild)


def _may_be_critical(item: Assumed, question: Question) -> bool:
    """Whether another usual value of what is assumed would be a hazard or destroy."""
    if item.leaning != "neutral" or item.placeholder or not can_be_grave(question):
        return False
    graph, path = question.graph, field_path(item.path)
    follows = any(path == quantity.stated_at for quantity in graph.derived.values())
    if follows or path in graph.spec.schema.voluntary:  # no field of its own, or no claim
        return False
    over = over_usual(question, [item])
    return over is not None and over.worst in GRAVE
