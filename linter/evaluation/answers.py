"""What a check says of one subject: not concerned, open, met, or a finding with its severity.

Silence neither convicts nor acquits: a value that is missing, or only assumed in the design's
favour, is taken over its usual range (``ranges``); what hangs on it stays open.
"""

from dataclasses import replace

from ..check import MILESTONES, Check
from ..declare import field_path
from ..finding import Assumed, Finding, Severity, Status
from .failed import failed
from .gap import Gap
from .measured import GRAVE, leaning, measured, missing_by
from .met import can_be_grave, looked_up, met
from .node import Computed
from .question import Question, blank
from .ranges import Bounded, bounded, is_settled
from .stand_ins import is_usual_span, over_usual
from .threshold import missed

SILENT = "not given in the spec"
NOTHING_NAMED = "nothing stated gives what it needs"


def incomplete(question: Question, gap: Gap, speaks_up: bool) -> Finding:
    """The answer where inputs lack: met or failed whatever they are, else open."""
    found = blank(question.entry, question.subject)
    if gap.unclaimed:
        return replace(found, message=f"{gap.absent}: nothing is claimed")
    if gap.absent and not _hangs_on_none(question.check, gap):
        return replace(found, message=f"{gap.absent}: not in this design")
    if gap.absent:
        text = f"cannot be judged: it depends on {gap.none}, which is stated as none"
        return replace(found, status=Status.OPEN, message=text)
    if not speaks_up:
        return replace(found, message=SILENT)
    names = tuple(item.path for item in gap.missing)
    over = None
    if gap.choices is not None:
        sets = [[item.path for item in choice] for choice in gap.choices]
        over = bounded(question.plan, question.graph, question.check, sets)
    if over is not None and over.worst is None:
        return _met_whatever(question, over)
    if (
        over is not None
        and over.best is not None
        and is_settled(over)
        and not _nothing_promised(question, over)
    ):
        return _failed_whatever(question, over)
    places_found = (question.graph.spec.place(path) for path in names)
    missing = [replace(x, border=over.border_of(x.path) if over else "") for x in gap.missing]
    told = dict.fromkeys(item.border for item in missing if item.border)
    needs = f"; it must be {' or '.join(told)}" if told else ""
    return replace(
        found,
        status=Status.OPEN,
        message=f"cannot be judged: {', '.join(names[:4]) or NOTHING_NAMED}{needs}",
        place=next((place for place in places_found if place), None),
        evidence=replace(found.evidence, leaves=over.node.used if over else frozenset()),
        advice=replace(
            found.advice,
            missing=tuple(missing),
        ),
    )


def judged(question: Question, node: Computed) -> Finding:
    """The answer where the figure can be computed."""
    extreme = question.worst(node)
    finding = measured(question, node, extreme)
    severity = missed(question.check, extreme.figure)
    if severity is None:
        return met(question, finding, node)
    found = failed(question, finding, node, severity)
    return looked_up(question, found) if found.severity is Severity.MINOR else found


def _hangs_on_none(check: Check, gap: Gap) -> bool:
    """Whether a part stated ``none`` is needed by a check that is not about that part."""
    if not gap.none:
        return False
    part = gap.none.split(".", 2)[-1] if gap.none.startswith("channels.") else gap.none
    paths = [getattr(item, "path", "").removeprefix("all ") for item in check.inputs.values()]
    paths += [*check.applies, *check.topic, *(lever.path for lever in check.levers)]
    return not any(f"{path}.".startswith(f"{part}.") for path in paths)


def _nothing_promised(question: Question, over: Bounded) -> bool:
    """Whether a promise is missing and no claim is made: what nobody promises is not broken."""
    schema = question.graph.spec.schema
    promised = any(schema.fields[field_path(path)].promise for path in over.paths)
    return promised and not any(field_path(path) in schema.voluntary for path in over.node.used)


def _met_whatever(question: Question, over: Bounded) -> Finding:
    finding = measured(question, over.node, over.extreme)
    floors = [item for item in over.node.assumed if item.leaning == "floor"]
    derived = question.graph.derived
    counted = (derived[x.path].meaning.split(",")[0] for x in floors if x.path in derived)
    names = " and ".join(dict.fromkeys((*over.paths, *counted)))
    wider = over_usual(question, floors, shares=True, beside=over.paths)
    if floors and (wider is None or wider.worst is not None):
        return leaning(question, finding, floors, "best case: missing data can only make it worse")
    soft = [item for item in over.node.assumed if item.leaning in ("favourable", "neutral")]
    paths = [*over.paths, *(item.path for item in soft if not item.placeholder)]
    known = any(is_usual_span(question, item) for item in soft if not item.placeholder)
    if question.milestone != MILESTONES[0] and len(paths) > len(over.paths) and not known:
        wider = bounded(question.plan, question.graph, question.check, [paths])
        if _is_doubtful(question, soft, wider):
            return leaning(
                question, finding, soft, "met with the assumed value, but not over its usual range"
            )
    told = f"{finding.message}; met for any usual value of {names}"
    return looked_up(question, replace(finding, message=told))


def _is_doubtful(question: Question, soft: list[Assumed], wider: Bounded | None) -> bool:
    """Whether what is assumed may hide a failure; what flatters and has no range may."""
    if wider is not None:
        return wider.worst in GRAVE
    return can_be_grave(question) and any(item.leaning == "favourable" for item in soft)


def _failed_whatever(question: Question, over: Bounded) -> Finding:
    """A finding that rests on usual ranges alone is never critical."""
    assert over.best is not None
    severity = max(over.best, Severity.MAJOR, key=lambda item: item.rank)
    finding = measured(question, over.node, over.extreme)
    names = " and ".join(over.paths)
    note = f"; even with the best usual value of {names}"
    return missing_by(question, finding, severity, note, over.node)
