"""Remedies and answers put into a copy of a spec, with the review before and after.

The text of the copy is read back and reviewed: what is promised is what was found in it.
"""

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, field, replace

from ..changes.causes import causes_of
from ..changes.numbering import numbered
from ..changes.plan import plan
from ..changes.remedy import Advisor
from ..changes.stages import with_remedies
from ..declare import local_path
from ..finding import Cause, Finding, Remedy
from ..judging.review import Review, review
from ..quantities.quantity import Value
from ..reading.loading import Spec, load_text
from .rewrite import Change, RewriteError, rewritten

MOST_CURES = 60


class AmendmentError(Exception):
    """A wish that cannot be fulfilled, and why."""


@dataclass(frozen=True, slots=True)
class Amendment:
    """A review, the changes to its spec so far, and the review with them.

    notes: what was asked for and not done, with the reason.
    """

    before: Review
    after: Review
    changes: Mapping[str, Change] = field(default_factory=dict)
    notes: tuple[str, ...] = ()


def begin(start: Review) -> Amendment:
    """An amendment that changes nothing yet."""
    return Amendment(start, start)


def with_changes(so_far: Amendment, changes: Mapping[str, Change]) -> Amendment:
    """The amendment with the values of an answers file or of a plan, reviewed once."""
    return _changed(so_far, changes) if changes else so_far


def cured(so_far: Amendment, check: str, subject: str = "") -> Amendment:
    """The amendment with the first proven remedy of a check's findings."""
    now = [x for x in so_far.after.findings if x.check == check]
    if not now:
        raise AmendmentError(f"there is no check named {check}, or it has no answer here")
    wanted = [x for x in now if subject in ("", x.subject)]
    if not wanted:
        places = ", ".join(dict.fromkeys(item.subject for item in now))
        raise AmendmentError(f"{check} has no answer for {subject}; it has for {places}")
    found = (*so_far.before.failing(), *so_far.after.failing())
    failing = {x.subject: None for x in found if x.check == check and subject in ("", x.subject)}
    if not failing:
        kinds = ", ".join(f"{item.subject}: {item.status.value}" for item in wanted)
        raise AmendmentError(f"{check} found nothing to fix ({kinds})")
    for name in failing:
        so_far = _cure_one(so_far, check, name)
    return so_far


def _cure_one(so_far: Amendment, check: str, subject: str) -> Amendment:
    finding = _finding(so_far.after, check, subject)
    if finding is None:
        note = f"{check} ({subject}) is already fixed by a change above"
        return replace(so_far, notes=(*so_far.notes, note))
    advisor = Advisor(so_far.after)
    remedy = advisor.best(finding)
    if remedy is None:
        raise AmendmentError(f"{check} ({subject}) has no remedy: {advisor.obstacle(finding)}")
    return _changed(so_far, changes_of(so_far.after, finding, remedy))


def caused(so_far: Amendment, numbers: Collection[int], only_holding: bool = True) -> Amendment:
    """The amendment with what the report tells to change for causes, by their numbers there.

    only_holding: whether that report looks for changes only for what holds.
    """
    causes = numbered(causes_of(with_remedies(so_far.before, only_holding)))
    changes: dict[str, Change] = {}
    notes: dict[str, None] = {}
    for number in numbers:
        if not 1 <= number <= len(causes):
            raise AmendmentError(f"there is no cause {number}; the report has {len(causes)}")
        for path, change in _of_causes(so_far.before, number, causes[number - 1]).items():
            if changes.setdefault(path, change).data != change.data:
                raise AmendmentError(f"cause {number} needs another {path} than one before it")
        if told := causes[number - 1][0].findings[0].advice.remedy_note:
            notes[f"cause {number}: {told}"] = None
    return replace(with_changes(so_far, changes), notes=(*so_far.notes, *notes))


def _of_causes(before: Review, number: int, alike: Sequence[Cause]) -> dict[str, Change]:
    """What is to be changed, all together, for a cause in each of its channels."""
    told = [(x.findings[0], remedy) for x in alike for remedy in x.remedies or x.alternatives[:1]]
    if not told:
        why = alike[0].note or "the report looks for changes of what holds alone"
        raise AmendmentError(f"cause {number} has no change: {why}")
    return {
        path: change
        for item, remedy in told
        for path, change in changes_of(before, item, remedy).items()
    }


def cured_all(so_far: Amendment) -> Amendment:
    """The amendment with the first remedy of every finding, the gravest first.

    Findings with a permission in force are left alone.
    """
    hopeless: dict[tuple[str, str], str] = {}
    advisor = Advisor(so_far.after)
    for _ in range(MOST_CURES):
        failing = (x for x in so_far.after.failing() if not x.permitted)
        left = [x for x in failing if (x.check, x.subject) not in hopeless]
        if not left:
            break
        finding = left[0]
        remedy = advisor.best(finding)
        if remedy is None:
            hopeless[finding.check, finding.subject] = advisor.obstacle(finding)
        else:
            so_far = _changed(so_far, changes_of(so_far.after, finding, remedy))
            advisor = Advisor(so_far.after)
    notes = [
        f"{check} ({subject}) has no remedy: {why}"
        for (check, subject), why in hopeless.items()
        if _finding(so_far.after, check, subject) is not None
    ]
    return replace(so_far, notes=(*so_far.notes, *notes))


def planned(so_far: Amendment) -> Amendment:
    """The amendment with the whole plan, as far as there is one."""
    found = plan(so_far.after)
    steps = [changes_of(so_far.after, step.finding, step.remedy) for step in found.steps]
    so_far = with_changes(so_far, {path: x for step in steps for path, x in step.items()})
    return replace(so_far, notes=(*so_far.notes, *found.obstacles))


def changes_of(so_far: Review, finding: Finding, remedy: Remedy) -> dict[str, Change]:
    """The changes of a remedy, each with the finding that it cures; a lowered promise is said.

    What goes along with a value that the check itself asks for says with which.
    """
    lowered = f"{remedy.title}, " if remedy.kind == "promise" else ""
    entry = so_far.catalogue.entry(finding.check)
    levers = {lever.path for lever in entry.check.levers} if entry else set()
    moved = [local_path(path) for path, _ in remedy.values if local_path(path) in levers]

    def why(path: str) -> str:
        along = f"with {moved[0]}, " if moved and local_path(path) not in levers else ""
        return f"{lowered or along}for {finding.check}"

    return {path: Change(data, why(path)) for path, data in remedy.values}


def effective(amendment: Amendment) -> dict[str, Change]:
    """The changes that change anything in the end; a value may have moved and come back."""
    specs = amendment.before.spec, amendment.after.spec
    before, after = (spec.as_stated().values for spec in specs)
    return {
        path: change
        for path, change in amendment.changes.items()
        if path not in before or before[path] != after.get(path)
    }


def copy_of(amendment: Amendment) -> str:
    """The text of the amended copy, read back and reviewed once more."""
    before, after = amendment.before, amendment.after
    changes = {
        path: Change(change.data, _reason(before, path, change))
        for path, change in effective(amendment).items()
    }
    text = rewritten(before.spec, changes)
    loaded = load_text(text, before.spec.file, before.spec.schema, lambda: before.spec.parts)
    if loaded.spec is None or loaded.spec.values != after.spec.as_stated().values:
        raise RewriteError("the copy would not say what the changes say")
    again = _again(before, loaded.spec)
    if again.counts() != after.counts() or again.verdict.released != after.verdict.released:
        raise RewriteError("the copy would not get the verdict that the changes promise")
    return text


def stated_text(found: Review, path: str) -> str:
    """What a spec states at a path, as it is written there; empty where it is silent."""
    spec = found.spec.as_stated()
    stated = spec.values.get(path)
    if isinstance(stated, tuple):
        return ", ".join(stated)
    if path in spec.none:
        return "none"
    return stated.text if isinstance(stated, Value) else str(stated or "")


def _reason(before: Review, path: str, change: Change) -> str:
    """The trailing comment: what stood there, and why it changed."""
    was = stated_text(before, path)
    return f"was {was}, {change.why}" if was else change.why


def _changed(so_far: Amendment, changes: Mapping[str, Change]) -> Amendment:
    spec = so_far.after.spec.as_stated()
    loaded = spec.with_values({path: change.data for path, change in changes.items()})
    if loaded.spec is None:
        refused = loaded.refusals[0]
        raise AmendmentError(f"{refused.place.path}: {refused.problem}")
    after = _again(so_far.before, loaded.spec)
    return replace(so_far, after=after, changes={**so_far.changes, **changes})


def _again(before: Review, spec: Spec) -> Review:
    verdict = before.verdict
    given = (verdict.milestone, verdict.hold_at, before.catalogue, before.criteria)
    return review(spec, *given)


def _finding(found: Review, check: str, subject: str) -> Finding | None:
    """The finding of a check for a subject, if it still has one."""
    return next(
        (x for x in found.failing() if (x.check, x.subject) == (check, subject)),
        None,
    )
