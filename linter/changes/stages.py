"""The remedies of a whole review, worked out in the order in which an engineer would act.

First the slips are put right.  Then every finding is given the changes that are proven for
the spec as it is.  What finds none is tried again with the first change of each of the others
made: a higher voltage cannot be proven while the parts are too small for the one
there is.  At the end stand pairs of changes, promises lowered, what has a change only with less
promised, and the reasons for what is left.
"""

from collections.abc import Collection, Iterable, Mapping
from dataclasses import replace

from ..declare import CHANNELS, PRODUCT, local_path
from ..evaluation.engine import Assessment
from ..finding import Finding, Remedy
from ..judging.consistency import BUILT_IN
from ..judging.review import Review
from .effect import KINDS, settled, with_lists
from .kinds import ORDER
from .remedy import Advisor

MOST_REMEDIES = 3
MOST_STAGES = 3
TOGETHER = "no single change fixes this; these together do"
SLIP_FIRST = "worked out with {} put right first"
OTHERS_FIRST = "worked out with the changes of the other findings made first"
SETTLED = "the changes of the other findings fix this as well"

Key = tuple[object, ...]


def with_remedies(
    review: Review,
    only_holding: bool = False,
    checks: Collection[str] = (),
    run: Assessment | None = None,
) -> Review:
    """The review with proven remedies in each finding, or in those that hold or are named.

    run: of the spec, where there is one.
    """
    holding = {id(item) for item in review.verdict.holding}
    wanted = [x for x in review.failing() if x.check in checks or not checks]
    asked = [x for x in wanted if id(x) in holding or not only_holding]
    advised = Stages(review, run).advised(asked)
    findings = tuple(advised.get(id(item), item) for item in review.findings)
    held = tuple(advised.get(id(item), item) for item in review.verdict.holding)
    verdict = replace(review.verdict, holding=held)
    return replace(review, findings=findings, verdict=verdict, advised=True)


class Stages:
    """The advice on the findings of one review, stage by stage."""

    def __init__(self, review: Review, run: Assessment | None = None) -> None:
        self.start = Advisor(review, run)
        self.now = self.start.beyond or self.start
        slips = dict.fromkeys(local_path(path) for path in self.start.slips.paths)
        self.note = SLIP_FIRST.format(", ".join(slips)) if slips else ""
        self.note_of_made = self.note
        self.made: list[tuple[Advisor, Remedy]] = []
        self._found: dict[Key, Finding] = {}

    def advised(self, asked: list[Finding]) -> dict[int, Finding]:
        """The findings asked for with their advice, by identity; the gravest come first."""
        todo: dict[Key, Finding] = {}
        for item in asked:
            todo.setdefault(self._kind(item), item)
        for stage in range(MOST_STAGES):
            made = self._stage(todo, first=stage == 0)
            if not made or not todo or not self._make(made):
                break
        for kind, item in list(todo.items()):
            self._found[kind] = self._last(item)
        self._with_less_promised(todo)
        return {id(item): _seen_from(self._found[self._kind(item)], item) for item in asked}

    def _with_less_promised(self, todo: Mapping[Key, Finding]) -> None:
        """What has no change as long as all is promised, tried with the promises that come down."""
        last = {kind: self._found[kind].advice.remedies for kind in todo}
        lowered = [x[0] for x in last.values() if x and x[0].kind == "promise"]
        left = [kind for kind, x in last.items() if not x and todo[kind].check not in BUILT_IN]
        if not (lowered and left and self._make(lowered)):
            return
        for kind in left:
            found = self._proven(todo[kind])
            if found is None:
                self._found[kind] = self._settled(todo[kind])
            elif found:
                self._found[kind] = _with(todo[kind], found, self.note)

    def _kind(self, item: Finding) -> Key:
        """The same for findings of channels that state the same and fail alike."""
        if item.subject == PRODUCT or item.check in BUILT_IN:
            return item.check, item.subject, item.message
        first = self.start.reruns.run.twins.first(item.subject)
        return item.check, first, item.message.replace(item.subject, "")

    def _stage(self, todo: dict[Key, Finding], first: bool) -> list[Remedy]:
        """Advice for what has a proven change now; the first of each is handed on."""
        given: list[Key] = []
        for kind, item in list(todo.items()):
            found = self._first_hand(item) if first else self._proven(item)
            if found is None:
                self._found[kind] = self._settled(todo.pop(kind))
            elif any(remedy.kind != "promise" for remedy in found):
                note = self.note if found[0].kind != "slip" else ""
                self._found[kind] = _with(todo.pop(kind), found, note)
                given += [kind] if found[0].kind != "slip" else []
        self._agree(given)
        return [self._found[kind].advice.remedies[0] for kind in given]

    def _first_hand(self, item: Finding) -> list[Remedy]:
        """The remedies for the spec as it is; a promise lowered alone is for the last stage."""
        return self.start.first_hand(item, MOST_REMEDIES, lowering=False)

    def _agree(self, given: list[Key]) -> None:
        """Where several findings would move the same value, the one that settles most of them.

        A capacitor of 680 nF for one check and of 1 uF for the next are one capacitor.
        """
        firsts = {kind: self._found[kind].advice.remedies[0] for kind in given}
        groups: dict[tuple[str, ...], list[Key]] = {}
        for kind, remedy in firsts.items():
            groups.setdefault(tuple(path for path, _ in remedy.changes), []).append(kind)
        for kinds in groups.values():
            best = max(kinds, key=lambda kind: len(self._settled_by(firsts[kind], kinds)))
            for kind in self._settled_by(firsts[best], kinds):
                item = self._found[kind]
                told = self.now.told_of(firsts[best], (item.check, item.subject))
                if told is not None:
                    rest = item.advice.remedies[1:]
                    self._found[kind] = _with(item, (told, *rest), item.advice.remedy_note)

    def _settled_by(self, remedy: Remedy, kinds: list[Key]) -> list[Key]:
        """The findings that one remedy settles."""
        answers = self.now.reruns.behind(remedy).answers
        found = {kind: self._found[kind] for kind in kinds}
        return [kind for kind, x in found.items() if settled(answers.get((x.check, x.subject)))]

    def _proven(self, item: Finding) -> list[Remedy] | None:
        """The remedies at this stage; None where the finding is settled already."""
        entry = self.now.review.catalogue.entry(item.check)
        later = self.now.reruns.answers.get((item.check, item.subject))
        if entry is None:
            return []
        return None if later is None or settled(later) else self._ranked(item, later, False)

    def _ranked(self, item: Finding, later: Finding, lowering: bool) -> list[Remedy]:
        entry = self.now.review.catalogue.entry(item.check)
        found = self.now.ranked(entry, later, MOST_REMEDIES, lowering) if entry else []
        return [self._from_start(remedy, item) for remedy in found]

    def _from_start(self, remedy: Remedy, item: Finding) -> Remedy:
        """A promise lowered at a later stage with what that does by itself, where it does."""
        first = self.start.beyond or self.start
        if first is self.now or remedy.kind != "promise":
            return remedy
        rerun, key = first.reruns.whole(dict(remedy.values)), (item.check, item.subject)
        if rerun is None or not settled(rerun.answers.get(key)):
            return remedy
        alone = first.reruns.effects(rerun, key)
        return with_lists(remedy, {kind: getattr(alone, kind) for kind in KINDS})

    def _make(self, made: list[Remedy]) -> bool:
        """Make the first changes of all; of two that disagree on one value the wider one."""
        values: dict[str, object] = {}
        self.made += [(self.now, remedy) for remedy in made]
        for remedy in sorted(made, key=lambda x: ORDER.index(x.kind), reverse=True):
            if all(values.get(path, data) == data for path, data in remedy.values):
                values |= dict(remedy.values)
        rerun = self.now.reruns.whole(values)
        if rerun is None:
            return False
        self.now = self.now.after(self.now.reruns.effects(rerun, ("", "")))
        self.note = OTHERS_FIRST
        return True

    def _settled(self, item: Finding) -> Finding:
        """Advice on what a change of another finding settles: that change, if one alone does."""
        key = (item.check, item.subject)
        for advisor, remedy in self.made:
            told = advisor.told_of(remedy, key)
            if told is not None:
                return _with(item, (told,), self.note_of_made)
        return _with(item, (), SETTLED)

    def _last(self, item: Finding) -> Finding:
        """Advice for what no single change of the design settles."""
        if item.check in BUILT_IN:
            return _with(item, (), self.start.obstacle(item) if item.advice.follows else "")
        later = self.now.reruns.answers[item.check, item.subject]
        if settled(later):
            return self._settled(item)
        found = self._ranked(item, later, lowering=True)
        pair = self.now.second_hand(later)
        if pair is not None:
            return _with(item, (pair, *found)[:MOST_REMEDIES], TOGETHER)
        entry = self.now.review.catalogue.entry(item.check)
        needs = entry.check.otherwise if entry else ""
        if found:
            return _with(item, found, f"kept as promised it needs {needs}" if needs else self.note)
        return _with(item, (), self.now.obstacle(later))


def _with(finding: Finding, remedies: Iterable[Remedy], note: str) -> Finding:
    return replace(
        finding, advice=replace(finding.advice, remedies=tuple(remedies), remedy_note=note)
    )


def _seen_from(twin: Finding, finding: Finding) -> Finding:
    """The advice on a finding in one channel, told for the same finding in another one."""
    one, other = (f"{finding.check} ({x.subject})" for x in (finding, twin))
    here, there = (f"{CHANNELS}.{x.subject}." for x in (finding, twin))
    remedies = []
    for remedy in twin.advice.remedies:
        lists = {
            kind: [other if label == one else label for label in getattr(remedy, kind)]
            for kind in KINDS
        }
        lacks = tuple(replace(x, path=x.path.replace(there, here)) for x in remedy.lacks)
        remedies.append(replace(with_lists(remedy, lists), lacks=lacks))
    return _with(finding, remedies, twin.advice.remedy_note.replace(there, here))
