"""What a check says of one subject: not concerned, open, met, or a finding with its severity.

Silence neither convicts nor acquits: a value that is missing, or only assumed in the design's
favour, is taken over its usual range (``ranges``); what hangs on it stays open.
"""

from dataclasses import replace

from ..check import MILESTONES, Check
from ..declare import field_path
from ..finding import Finding, Leaned, Missing, Severity, Status
from .forbidden import is_forbidden
from .gap import Gap
from .node import Computed
from .only_typical import only_typical
from .question import Question, blank
from .ranges import Bounded, bounded
from .threshold import limit_of, measured_to, mildest, missed
from .tolerance import Extreme, root_sum_square, worst_case
from .wording import corner_values, places, sentence

SILENT = "the spec says nothing about it yet"
GRAVE = (Severity.CRITICAL, Severity.MAJOR)


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
    if over is not None and over.best is not None and _is_settled(over):
        return _failed_whatever(question, over)
    places_found = (question.graph.spec.place(path) for path in names)
    border = over.border if over else ""
    needs = f"; it must be {border}" if border else ""
    return replace(
        found,
        status=Status.OPEN,
        message=f"cannot be judged: {', '.join(names[:4])}{needs}",
        place=next((place for place in places_found if place), None),
        evidence=replace(found.evidence, leaves=over.node.used if over else frozenset()),
        advice=replace(
            found.advice,
            missing=tuple(replace(item, border=border) for item in gap.missing),
        ),
    )


def judged(question: Question, node: Computed) -> Finding:
    """The answer where the figure can be computed."""
    extreme = worst_case(node, question.adverse, question.check.peaks_inside)
    finding = _measured(question, node, extreme)
    severity = missed(question.check, extreme.figure)
    if severity is None:
        return _met(question, finding, node)
    return _failed(question, finding, node, severity)


def _hangs_on_none(check: Check, gap: Gap) -> bool:
    """Whether a part stated ``none`` is needed by a check that is not about that part."""
    if not gap.none:
        return False
    part = gap.none.split(".", 2)[-1] if gap.none.startswith("channels.") else gap.none
    paths = [getattr(item, "path", "").removeprefix("all ") for item in check.inputs.values()]
    paths += [*check.applies, *check.topic, *(lever.path for lever in check.levers)]
    return not any(f"{path}.".startswith(f"{part}.") for path in paths)


def _measured(question: Question, node: Computed, extreme: Extreme) -> Finding:
    check, graph = question.check, question.graph
    pointed = places(node, check, graph, question.channel)
    found = blank(question.entry, question.subject)
    return replace(
        found,
        message=sentence(check, node, extreme.corner),
        place=pointed[0] if pointed else None,
        related=pointed[1:6],
        evidence=replace(
            found.evidence,
            figure=extreme.figure,
            nominal=extreme.nominal,
            corner=corner_values(node, extreme, graph),
            leaned=node.leaned,
            leaves=node.used,
        ),
    )


def _within(finding: Finding, check: Check) -> Finding:
    limit = limit_of(check, mildest(check.limits))
    return replace(finding, status=Status.MEETS, evidence=measured_to(finding.evidence, *limit))


def _met_whatever(question: Question, over: Bounded) -> Finding:
    finding = _within(_measured(question, over.node, over.extreme), question.check)
    names = " and ".join(over.paths)
    floors = [item for item in over.node.leaned if item.leaning == "floor"]
    if floors:
        return _leaning(question, finding, floors, "best case: missing data can only make it worse")
    soft = [item for item in over.node.leaned if item.leaning in ("favourable", "neutral")]
    paths = [*over.paths, *(item.path for item in soft if not item.placeholder)]
    if question.milestone != MILESTONES[0] and len(paths) > len(over.paths):
        wider = bounded(question.plan, question.graph, question.check, [paths])
        if wider is not None and wider.worst in GRAVE:
            return _leaning(
                question, finding, soft, "met with the assumed value, but not over its usual range"
            )
    return replace(finding, message=f"{finding.message}, for any usual value of {names}")


def _is_settled(over: Bounded) -> bool:
    """Whether more data could not make of a remark what holds the design."""
    assert over.best is not None
    return over.best != Severity.MINOR or over.worst == Severity.MINOR


def _failed_whatever(question: Question, over: Bounded) -> Finding:
    """A finding that rests on usual ranges alone is never critical."""
    assert over.best is not None
    severity = max(over.best, Severity.MAJOR, key=lambda item: item.rank)
    finding = _measured(question, over.node, over.extreme)
    names = " and ".join(over.paths)
    return _missing_by(question, finding, severity, f", even with the best usual value of {names}")


def _missing_by(question: Question, finding: Finding, severity: Severity, note: str) -> Finding:
    gravest = missed(question.check, finding.evidence.figure or 0.0) or severity
    return replace(
        finding,
        status=Status.FINDING,
        severity=severity,
        message=finding.message + note,
        evidence=measured_to(finding.evidence, *limit_of(question.check, gravest)),
        holds_always=is_forbidden(question, severity),
    )


def _met(question: Question, finding: Finding, node: Computed) -> Finding:
    check = question.check
    met = _within(finding, check)
    floors = [item for item in node.leaned if item.leaning == "floor"]
    if floors:
        return _leaning(question, met, floors, "best case: missing data can only make it worse")
    if question.milestone == MILESTONES[0]:
        return met
    soft = [item for item in node.leaned if _may_flatter(item, question)]
    if soft and not _holds_over(question, soft):
        return _leaning(question, met, soft, "met only on assumptions")
    if soft:
        names = " and ".join(dict.fromkeys(item.path for item in soft))
        met = replace(met, message=f"{met.message}, for any usual value of {names}")
    telling = [item for item in node.leaned if _may_be_critical(item, question)]
    if telling:
        return _leaning(
            question, met, telling, "met with the assumed value, but not over its usual range"
        )
    if question.milestone != MILESTONES[-1]:
        return met
    if check.stake != "performance":
        typical = only_typical(question.plan, question.graph, node, met)
        if typical:
            return _leaning(question, met, list(typical), "met only with typical values")
    recalled = any(item.kind == "from memory" for item in check.limits.basis.values())
    if check.stake == "safety" and recalled:
        note = "the limit is from memory, not verified against the standard"
        return replace(met, status=Status.OPEN, message=f"{met.message}; {note}")
    return met


def _may_flatter(item: Leaned, question: Question) -> bool:
    """Whether a pass may not rest on an assumption at this milestone.

    A default of the house states nothing of this design, so it acquits no grave check.
    """
    if question.milestone == MILESTONES[-1]:
        return item.leaning in ("favourable", "neutral") or item.placeholder
    if not _can_be_grave(question):
        return False
    return item.leaning == "favourable" or field_path(item.path) in question.graph.spec.defaults


def _can_be_grave(question: Question) -> bool:
    limits = question.check.limits
    return limits.critical is not None or limits.major is not None


def _holds_over(question: Question, soft: list[Leaned]) -> bool:
    """Whether the check is met over the usual ranges of all that is only assumed."""
    paths = [item.path for item in soft]
    if any(path in question.graph.spec.values for path in paths):  # an estimate of the spec
        return False
    over = bounded(question.plan, question.graph, question.check, [paths])
    return over is not None and over.worst is None


def _may_be_critical(item: Leaned, question: Question) -> bool:
    """Whether another usual value of what is assumed would be a hazard or destroy."""
    if item.leaning != "neutral" or item.placeholder or not _can_be_grave(question):
        return False
    graph, path = question.graph, field_path(item.path)
    follows = any(path == quantity.stated_at for quantity in graph.derived.values())
    if follows or path in graph.spec.schema.voluntary:  # no field of its own, or no claim
        return False
    over = bounded(question.plan, question.graph, question.check, [[item.path]])
    return over is not None and over.worst in GRAVE


def _leaning(question: Question, finding: Finding, leaned: list[Leaned], note: str) -> Finding:
    missing: dict[Missing, None] = {}
    for item in leaned:
        for gap in question.graph.asked(item.path, question.channel):
            missing.setdefault(gap)
    return replace(
        finding,
        status=Status.OPEN,
        severity=None,
        message=f"{finding.message}; {note}",
        advice=replace(finding.advice, missing=tuple(missing)),
        evidence=replace(
            finding.evidence,
            leaned=tuple(dict.fromkeys((*finding.evidence.leaned, *leaned))),
        ),
    )


def _failed(question: Question, finding: Finding, node: Computed, severity: Severity) -> Finding:
    check, note = question.check, ""
    assumed = [item for item in node.leaned if item.leaning in ("adverse", "neutral")]
    defaults = [item.path for item in assumed if not item.placeholder]
    over = bounded(question.plan, question.graph, check, [defaults]) if defaults else None
    if over is not None and over.best is None and over.worst is not None:
        named = ", ".join(f"{x.path} {x.text}" for x in assumed if not x.placeholder)
        if all(item.leaning == "adverse" for item in assumed):
            return _open_by_default(question, finding, assumed, over.border)
        note = f"; an assumed value decides: {named}"
        severity = max(severity, Severity.MAJOR, key=lambda item: item.rank)
    elif over is None and _rests_on_the_worst(question, severity, assumed):
        return _open_by_default(question, finding, assumed, "")
    elif severity == Severity.CRITICAL and not _stands(question, finding, node):
        severity = Severity.MAJOR
        note = "; major, not critical, because it rests on an assumption"
    within = (None, Severity.MINOR)
    soft = check.stake == "performance" and severity != Severity.MINOR
    if soft and missed(check, root_sum_square(node, question.adverse)) in within:
        severity = Severity.MINOR
        note = "; minor, because the tolerances in root-sum-square stay within"
    failed = _missing_by(question, finding, severity, note)
    if severity == Severity.MINOR and question.milestone != MILESTONES[0]:
        worse = next((item for item in node.leaned if _may_hide_more(item, question)), None)
        if worse is not None:
            note = "missing data may make it a hazard"
            return _leaning(question, failed, [worse], note)
    return failed


def _may_hide_more(item: Leaned, question: Question) -> bool:
    """Whether a remark may turn out to be critical once something is known."""
    if question.check.limits.critical is None or item.leaning in ("absent", "adverse"):
        return False
    if item.leaning == "floor":
        return True
    over = bounded(question.plan, question.graph, question.check, [[item.path]])
    return over is not None and over.worst == Severity.CRITICAL


def _rests_on_the_worst(question: Question, severity: Severity, assumed: list[Leaned]) -> bool:
    """Whether a grave finding is gone, or cannot be computed, without adverse assumptions."""
    if severity not in GRAVE or not assumed or any(x.leaning != "adverse" for x in assumed):
        return False
    if any(item.placeholder for item in assumed):
        return False
    sure = question.plan(question.sure_graph())
    if not isinstance(sure, Computed):
        return True
    figure = worst_case(sure, question.adverse, question.check.peaks_inside).figure
    return missed(question.check, figure) not in GRAVE


def _open_by_default(
    question: Question, finding: Finding, assumed: list[Leaned], border: str
) -> Finding:
    """Silence read as the worst case convicts nobody: the check asks."""
    gaps = [gap for x in assumed for gap in question.graph.asked(x.path, question.channel)]
    missing = tuple(replace(gap, border=border) for gap in dict.fromkeys(gaps))
    names = ", ".join(item.path for item in missing)
    needs = f"; it must be {border}" if border else ""
    limit = limit_of(question.check, mildest(question.check.limits))
    return replace(
        finding,
        status=Status.OPEN,
        message=f"{finding.message}; it depends on {names}, which is not stated{needs}",
        evidence=measured_to(finding.evidence, *limit),
        advice=replace(finding.advice, missing=missing),
    )


def _stands(question: Question, finding: Finding, node: Computed) -> bool:
    """Whether a critical stands without adverse assumptions and placeholders."""
    if not any(item.leaning == "adverse" or item.placeholder for item in node.leaned):
        return True
    sure = question.plan(question.sure_graph())
    if not isinstance(sure, Computed):
        return False
    figure = worst_case(sure, question.adverse, question.check.peaks_inside).figure
    return missed(question.check, figure) == Severity.CRITICAL
