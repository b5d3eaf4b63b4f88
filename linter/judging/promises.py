"""What the paperwork promises, and whether the design can keep it.

Judged by the answers of a prototype at every milestone, because what a design can do does
not depend on what is about to be built.  Deviations count for nothing: what is permitted is
not yet kept.  A value that looks like a slip is put right first: what it spoils is no promise
of the design.
"""

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass

from ..check import Milestone, Promise, PromiseCheck
from ..declare import PRODUCT, Field
from ..evaluation.engine import Assessment
from ..evaluation.threshold import closeness
from ..finding import Finding, Severity, Status
from ..quantities.quantity import Value, to_si
from ..reading.loading import Spec
from .promised import OUTLOOKS, Allowed, At, Outlook, Promised
from .stated import UNUSUAL

STAGE: Milestone = "prototype"
GRAVE = (Severity.CRITICAL, Severity.MAJOR)
NOTICEABLE = 0.005


Answers = Callable[[str, str], Finding | None]
Against = Mapping[tuple[str, str], Finding]


@dataclass(frozen=True, slots=True)
class CheckAnswer:
    """What one check says of a promise, by the answer that speaks most against it."""

    judge: PromiseCheck
    answer: Finding
    outlook: Outlook
    allowed: Allowed | None


def slips_of(stated: Iterable[Finding]) -> dict[str, object]:
    """What the values that look like slips would be, by path, from the findings on them."""
    return {
        path: item.advice.follows
        for item in stated
        if item.check == UNUSUAL and item.advice.follows
        for path in item.evidence.leaves
    }


def promises_of(
    run: Assessment, answers: Iterable[Finding], slips: Mapping[str, object], against: Against
) -> tuple[Promised, ...]:
    """Every promise that the spec makes, with its outlook, in the catalogue's order.

    answers: before any deviation; against: those of boards, in their place; slips: put right first.
    """
    known = {(item.check, item.subject): item for item in answers} | dict(against)
    right = run.revised(slips) if slips else None
    meant, change = right or (run, None)
    stage = meant if run.milestone == STAGE else meant.at(STAGE)

    def answer(check: str, subject: str) -> Finding | None:
        entry, item = run.catalogue.entry(check), known.get((check, subject))
        if entry is None or item is None or (check, subject) in against:
            return item
        altered = change is not None and change.alters(check, item.evidence.leaves)
        return stage.judge(entry, subject) if altered or run.milestone != STAGE else item

    checks = frozenset(entry.name for entry in run.catalogue.entries)
    return tuple(
        found
        for promise in run.catalogue.promises
        for subject in _subjects(promise, run.spec)
        if (found := PromiseAtHand(promise, subject, run.spec, checks, answer).concluded())
        is not None
    )


def _subjects(promise: Promise, spec: Spec) -> tuple[str, ...]:
    first = promise.told[0][0]
    return spec.channels if spec.schema.is_channel_path(first) else (PRODUCT,)


@dataclass(frozen=True, slots=True)
class PromiseAtHand:
    """One promise of one subject, and how to get the answers of the checks that judge it.

    checks: those that the catalogue has; the house may switch some off.
    """

    promise: Promise
    subject: str
    spec: Spec
    checks: frozenset[str]
    answer: Answers

    def concluded(self) -> Promised | None:
        """What becomes of the promise; None where the spec does not make it."""
        claim = self._claim()
        if not claim:
            return None
        found = [self._answer_of(judge) for judge in self.promise.checks]
        heard = [item for item in found if item is not None]
        outlook = _outlook(heard)
        off = [x.check for x in self.promise.checks if x.check not in self.checks]
        if off and outlook == "supported":
            return self._unjudged(claim, off)
        telling = [x for x in heard if _tells(x, outlook)]
        unsaid = [x for x in telling if x.allowed is None and outlook != "supported"]
        needs = [x.answer.advice.missing for x in telling if x.answer.advice.missing]
        return Promised(
            self.promise.name,
            self.subject,
            claim,
            outlook,
            self._figure(),
            self._field.unit,
            tuple(x.allowed for x in telling if x.allowed is not None),
            unsaid[0].answer.message if unsaid else "" if telling else self.promise.unproven,
            needs[0] if needs and outlook == "not shown" else (),
            tuple(x.answer.check for x in telling),
            unsaid[0].answer.check if unsaid else "",
        )

    def _unjudged(self, claim: str, off: Sequence[str]) -> Promised:
        """A promise that is not shown, because the house does without a check of it."""
        told = f"switched off by the house file: {', '.join(off)}"
        given = (self.promise.name, self.subject, claim)
        return Promised(*given, "not shown", self._figure(), self._field.unit, told=told)

    @property
    def _field(self) -> Field:
        return self.spec.schema.fields[self.promise.path]

    def _claim(self) -> str:
        """What is promised, in the words of the spec."""
        texts = [(wording, self._stated(path)) for path, wording in self.promise.told]
        main = {self.promise.path, self.promise.told[0][0]}
        if not any(self._stated(path) for path in main):
            return ""
        return " ".join(wording.format(text) for wording, text in texts if text)

    def _full(self, path: str) -> str:
        """The path from the root of the spec: a promise of a channel may rest on both."""
        inside = self.spec.schema.is_channel_path(path)
        return f"channels.{self.subject}.{path}" if inside else path

    def _stated(self, path: str) -> str:
        """What the spec promises at a path, in words; empty where it promises nothing."""
        full, values = self._full(path), self.spec.values
        if self.spec.schema.fields[path].kind == "section":
            return "fitted" if any(x.startswith(f"{full}.") for x in values) else ""
        stated = values.get(full)
        if stated is None or stated in ("none", "no"):
            return ""
        if isinstance(stated, tuple):
            return ", ".join(stated)
        return stated.text if isinstance(stated, Value) else str(stated)

    def _figure(self) -> float | None:
        """What is promised as a number: as stated, or as the field has it in silence."""
        stated = self.spec.values.get(self._full(self.promise.path))
        if isinstance(stated, Value):
            return stated.nominal
        usual = self._field.default.value if self._field.default else None
        if stated is None and self._field.kind == "quantity" and isinstance(usual, str):
            return to_si(usual, self._field.unit)
        return None

    def _answer_of(self, judge: PromiseCheck) -> CheckAnswer | None:
        """What a check says; None where it does not concern the design."""
        names = self.spec.channels if self.subject == PRODUCT else (self.subject,)
        found = [self.answer(judge.check, name) for name in (*names, PRODUCT)]
        asked = [x for x in found if x and (x.status is not Status.NOT_APPLICABLE or _hangs(x))]
        if not asked:
            return None
        worst = min(asked, key=lambda x: (_against(x), closeness(x.evidence) or 0.0))
        allowed = self._allowed(judge, worst)
        return CheckAnswer(judge, worst, self._said(judge, worst, allowed), allowed)

    def _said(self, judge: PromiseCheck, item: Finding, allowed: Allowed | None) -> Outlook:
        """What a single answer makes of the promise."""
        if item.status is Status.OPEN or item.evidence.figure is None:
            return "not shown"
        if item.severity and not judge.refutes:
            return "not shown"
        if item.evidence.best is not None:
            return "impossible"
        if item.severity in GRAVE:
            return "unlikely"
        doubted = item.severity is not None or judge.proves
        return "not shown" if doubted and self._falls_short(allowed) else "supported"

    def _falls_short(self, allowed: Allowed | None) -> bool:
        """Whether a mild finding allows less than is promised, by its own figure."""
        claim = self._figure()
        if allowed is None or claim is None or allowed.unit != self._field.unit:
            return False
        room = NOTICEABLE * abs(claim)
        if self._field.promise == "lower":
            return allowed.value > claim + room
        return self._field.promise == "higher" and allowed.value < claim - room

    def _allowed(self, judge: PromiseCheck, item: Finding) -> Allowed | None:
        """The number that a check allows, at its best where even that misses the promise."""
        found, claim = item.evidence, self._figure()
        figure = found.figure if found.best is None else found.best
        if figure is None or abs(figure) == float("inf"):
            return None
        at, worst = _at(item, figure), found.figure
        if judge.allows is not None and claim is not None and figure != 0.0:
            path = self._full(self.promise.path)
            stated = next((x.value for x in found.corner if x.path == path), claim)
            value, least = judge.allows(stated, figure), judge.allows(stated, worst or figure)
            unit = self._field.unit
            return Allowed(item.check, value, unit, judge.says, at, _other(least, value))
        if not judge.says:
            return None
        return Allowed(item.check, figure, found.unit, judge.says, at, _other(worst, figure))


def _other(worst: float | None, figure: float) -> float | None:
    """A number in the worst case, where it is noticeably another one."""
    differs = worst is not None and abs(worst - figure) > NOTICEABLE * abs(figure)
    return worst if differs else None


def _at(item: Finding, figure: float) -> At:
    """Under which conditions a figure of an answer holds."""
    if item.evidence.best is not None:
        return "at best"
    if item.status is Status.OPEN:
        return "as far as known"
    nominal = item.evidence.nominal
    moved = nominal is not None and abs(figure - nominal) > NOTICEABLE * abs(figure)
    return "worst case" if moved else ""


def _hangs(item: Finding) -> bool:
    """Whether an answer hangs on a word that another check asks for."""
    return item.status is Status.NOT_APPLICABLE and bool(item.advice.missing)


def _against(item: Finding) -> int:
    """How much an answer speaks against a promise: what physics forbids first."""
    if item.evidence.best is not None:
        return 0
    if item.severity in GRAVE:
        return 1
    return 2 if item.status is Status.OPEN or _hangs(item) else 3


def _tells(item: CheckAnswer, outlook: Outlook) -> bool:
    """Whether an answer is told: those that decide, and what the design gives in the end."""
    if outlook == "supported":
        return item.judge.proves
    return item.outlook == outlook or (item.judge.proves and item.outlook == "unlikely")


def _outlook(heard: Sequence[CheckAnswer]) -> Outlook:
    """What all answers together make of a promise: the worst; support takes one that proves it."""
    worst = min((OUTLOOKS.index(item.outlook) for item in heard), default=None)
    proven = any(item.judge.proves for item in heard)
    if worst is None or (OUTLOOKS[worst] == "supported" and not proven):
        return "not shown"
    return OUTLOOKS[worst]
