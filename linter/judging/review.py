"""One spec file reviewed: read, assessed, judged.  What every report is made from."""

from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from datetime import date
from operator import itemgetter
from pathlib import Path

from ..check import Milestone
from ..declare import local_path
from ..evaluation.catalogue import Catalogue
from ..evaluation.engine import Assessment
from ..evaluation.threshold import closeness
from ..finding import Cause, Finding, Severity, Status
from ..reading.loading import Deviation, Loaded, Spec, load_file
from ..reading.refusal import Refusal
from .beyond_limit import on_measurements
from .boards import Boards, several
from .consistency import built_in_findings
from .criteria import TODAY, USUAL, Criteria, Terms, criteria_for
from .deviation import Occasion, with_deviations
from .measured import Compared, comparisons
from .milestone import Verdict, verdict
from .promised import Promised
from .promises import promises_of, slips_of
from .stated import DOMAIN
from .unjudged import on_silence
from .unmeasured import not_measured

STAKES = ("safety", "rating", "performance")


@dataclass(frozen=True, slots=True)
class Review:
    """A spec with the answer of every check and the verdict on them.

    slips: values that look like slips, by path, as they are taken to judge the promises.
    measured: what was measured, against the model.  causes: what the failing answers come
    from, once that is worked out.  advised: whether proven changes were looked for.
    against: by check and subject, what a reading says against the design.
    """

    spec: Spec
    findings: tuple[Finding, ...]
    verdict: Verdict
    catalogue: Catalogue
    criteria: Criteria = TODAY
    promises: tuple[Promised, ...] = ()
    slips: Mapping[str, object] = field(default_factory=dict)
    measured: tuple[Compared, ...] = ()
    causes: tuple[Cause, ...] | None = None
    advised: bool = False
    against: Mapping[tuple[str, str], Finding] = field(default_factory=dict)

    def failing(self) -> tuple[Finding, ...]:
        """The findings proper in the order in which a reader should take them.

        Gravest first.  Within a severity, doubtful values come before what was computed
        from them, safety and ratings before performance, plain facts before what leans on
        an adverse assumption or an estimate, far misses before near ones.
        The same fault in a second channel is no news: it stands behind all first ones.
        """
        found = sorted((x for x in self.findings if x.severity is not None), key=_gravity)
        seen: Counter[tuple[str, Severity | None, str]] = Counter()
        ordered = []
        for item in found:
            kind = (item.check, item.severity, _doubtful(item))
            ordered.append((item.rank, seen[kind], item))
            seen[kind] += 1
        return tuple(item for *_, item in sorted(ordered, key=itemgetter(0, 1)))

    def of_status(self, status: Status) -> tuple[Finding, ...]:
        """The answers of one kind, in the catalogue's order."""
        return tuple(item for item in self.findings if item.status is status)

    @property
    def deviations(self) -> tuple[Deviation, ...]:
        """The deviations on record: those of the spec, then those of a file of their own."""
        others = self.criteria.permissions
        return (*self.spec.deviations, *(others.deviations if others else ()))

    @property
    def boards(self) -> tuple[Boards, ...]:
        """The spread of what was measured on several boards."""
        return several(self.measured)

    def counts(self) -> Mapping[str, int]:
        """How many answers there are of each severity and of each kind."""
        severities = {s.value: 0 for s in Severity}
        for item in self.failing():
            severities[str(item.severity)] += 1
        kinds = {s.value: len(self.of_status(s)) for s in (Status.OPEN, Status.MEETS)}
        permitted = sum(1 for item in self.findings if item.permitted)
        return severities | kinds | ({"permitted": permitted} if permitted else {})


def _doubtful(finding: Finding) -> str:
    """The value that a finding doubts: two such values are two faults, not one twice."""
    place = finding.place if finding.domain == DOMAIN else None
    return local_path(place.path) if place else ""


def _gravity(finding: Finding) -> tuple[int, bool, int, bool, float, str, str]:
    return (
        finding.rank,
        finding.domain != DOMAIN,
        STAKES.index(finding.stake),
        any(item.leaning == "adverse" or item.placeholder for item in finding.evidence.assumed),
        closeness(finding.evidence) or 0.0,
        finding.check,
        finding.subject,
    )


Outcome = Review | tuple[Refusal, ...]
"""What becomes of a file: a review, or why it cannot be assessed."""


def review(
    spec: Spec,
    milestone: Milestone | None = None,
    hold_at: Severity | None = None,
    catalogue: Catalogue | None = None,
    criteria: Criteria = TODAY,
) -> Review:
    """Review a spec with the catalogue that comes with the program, or another one.

    Without a catalogue the one of the criteria's house file counts, if there is one.
    """
    return with_run(spec, milestone, hold_at, catalogue, criteria)[0]


def with_run(
    spec: Spec,
    milestone: Milestone | None = None,
    hold_at: Severity | None = None,
    catalogue: Catalogue | None = None,
    criteria: Criteria = TODAY,
) -> tuple[Review, Assessment]:
    """The same review and the run that it was made from, for what is computed further on."""
    spec = criteria.applied(spec)
    run = Assessment(spec, catalogue or criteria.catalogue, milestone or spec.milestone)
    return concluded(run, run.findings(), hold_at, criteria), run


def concluded(
    run: Assessment, answers: Iterable[Finding], hold_at: Severity | None, criteria: Criteria
) -> Review:
    """The review made of the answers of a run: stated values, promises and verdict added."""
    answers = tuple(answers)
    stated = built_in_findings(run.spec, run.graph)
    found = decided(run, answers, stated, hold_at, criteria)
    slips = slips_of(stated)
    promises = promises_of(run, answers, slips, found.against)
    return replace(found, promises=promises, slips=slips)


def decided(
    run: Assessment,
    answers: Iterable[Finding],
    on_values: Iterable[Finding],
    hold_at: Severity | None,
    criteria: Criteria,
) -> Review:
    """The same without what becomes of each promise, on which no verdict hangs.

    on_values: the findings on stated values by themselves.
    """
    spec, catalogue, stage = run.spec, run.catalogue, run.milestone
    answers = tuple(answers)
    day = criteria.day or date.today()
    compared = comparisons(spec, catalogue, criteria.measurements(spec), day)
    measured = on_measurements(compared, answers, run)
    unread = not_measured(compared, run.graph, catalogue, stage)
    silent = on_silence(run.graph, catalogue.judged_by)
    findings = (*silent, *on_values, *answers, *measured.findings, *unread)
    others = criteria.permissions.deviations if criteria.permissions else ()
    occasion = Occasion(catalogue, spec.channels, stage, day, spec.file)
    findings = with_deviations(findings, (*spec.deviations, *others), occasion)
    judged = verdict(findings, stage, hold_at)
    against = measured.against
    return Review(spec, findings, judged, catalogue, criteria, measured=compared, against=against)


def review_file(
    path: Path,
    milestone: Milestone | None = None,
    hold_at: Severity | None = None,
    terms: Terms = USUAL,
) -> Outcome:
    """Review a file, or say why it cannot be assessed.

    terms: day, file of deviations and house file; without them it is today, the
    deviations are those of the spec and the house file is the one nearest to it.
    """
    loaded: Loaded = load_file(path, parts=terms.parts)
    if loaded.spec is None:
        return loaded.refusals
    criteria = criteria_for(path, terms)
    if isinstance(criteria, tuple):
        return criteria
    return review(loaded.spec, milestone, hold_at, criteria=criteria)
