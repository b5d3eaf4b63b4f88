"""The review itself: check by check, inputs, figure, worst corner, limit, status.

The engine knows nothing of amplifiers: it takes a spec and a catalogue and gives one
finding for every check and subject.  A check that crashes becomes a finding as well.
"""

from collections.abc import Iterator, Mapping
from dataclasses import replace
from functools import cached_property, partial

from ..check import MILESTONES, AtLeast, Check, Milestone
from ..finding import Finding, Leaned, Missing, Severity, Status
from ..reading.loading import Spec
from .affected import Affected
from .catalogue import Catalogue, Entry
from .computations import Computations
from .dependence import Dependences
from .graph import Graph
from .node import Computed, FigureError, Gap
from .only_typical import only_typical
from .threshold import limit_of, margin_to, mildest, missed
from .tolerance import Extreme, root_sum_square, worst_case
from .wording import corner_readings, places, readings, sentence

PRODUCT = "product"
SILENT = "the spec says nothing about it yet"
LEANS_WHEN_MET = ("favourable", "neutral")


def assess(
    spec: Spec, catalogue: Catalogue, milestone: Milestone | None = None
) -> tuple[Finding, ...]:
    """The answer of every check of the catalogue for every subject of the spec."""
    run = Assessment(spec, catalogue, milestone or spec.milestone)
    return tuple(run.findings())


class Assessment:
    """One run of a catalogue over a spec at a milestone."""

    def __init__(self, spec: Spec, catalogue: Catalogue, milestone: Milestone) -> None:
        self.spec = spec
        self.catalogue = catalogue
        self.milestone = milestone
        self.computations = Computations()

    @cached_property
    def graph(self) -> Graph:
        """Names to values, for the whole run."""
        return Graph(self.spec, self.catalogue.derived, computations=self.computations)

    @cached_property
    def sure_graph(self) -> Graph:
        """The graph without adverse assumptions and placeholders."""
        return Graph(self.spec, self.catalogue.derived, sure=True, computations=self.computations)

    @cached_property
    def dependences(self) -> Dependences:
        """What the names of the catalogue can depend on."""
        return Dependences(self.catalogue)

    @cached_property
    def _topics(self) -> frozenset[str]:
        """Every stated path and every section above one."""
        return frozenset(above for path in self.spec.values for above in _above(path))

    def revised(self, changes: Mapping[str, object]) -> "tuple[Assessment, Affected] | None":
        """A run of the spec with changes, and what these can alter; None where they cannot be.

        What the changes cannot alter is taken over from this run.
        """
        loaded = self.spec.with_values(changes)
        if loaded.spec is None:
            return None
        change = Affected(self.dependences, self.spec, loaded.spec, frozenset(changes))
        run = Assessment(loaded.spec, self.catalogue, self.milestone)
        run.graph = self.graph.revised(loaded.spec, change)
        run.sure_graph = self.sure_graph.revised(loaded.spec, change)
        run.dependences, run.computations = self.dependences, self.computations
        self.computations.revised()
        return run, change

    def findings(self) -> Iterator[Finding]:
        """One finding for each check and subject, in the catalogue's order."""
        return (self.judge(entry, subject) for entry, subject in self.questions())

    def questions(self) -> Iterator[tuple[Entry, str]]:
        """Every check with every subject it is asked of, in the catalogue's order."""
        for entry in self.catalogue.entries:
            for subject in self.subjects(entry.check):
                yield entry, subject

    def subjects(self, check: Check) -> tuple[str, ...]:
        """The channels, or the product as a whole."""
        return self.spec.channels if check.each == "channel" else (PRODUCT,)

    def judge(self, entry: Entry, subject: str) -> Finding:
        """The answer of one check for one subject."""
        try:
            return self._judge(entry, subject)
        except FigureError as error:
            return _crashed(entry, subject, str(error))

    def prepare(self, entry: Entry, subject: str, graph: Graph) -> Computed | Gap | None:
        """The figure as a node; a gap when inputs lack; None when not applicable."""
        channel = None if subject == PRODUCT else subject
        fits = graph.matches(entry.check.applies, channel)
        if fits is False:
            return None
        found = fits if isinstance(fits, Gap) else graph.arguments(entry.check.inputs, channel)
        if isinstance(found, Gap):
            return found
        return Computed(entry.name, entry.check.figure, found, computations=self.computations)

    def target(self, check: Check) -> float:
        """The threshold that a figure must reach to meet the check."""
        return limit_of(check, mildest(check.limits))[0]

    def _judge(self, entry: Entry, subject: str) -> Finding:
        blank = _blank(entry, subject)
        node = self.prepare(entry, subject, self.graph)
        if node is None:
            return replace(blank, message="does not concern this design")
        if isinstance(node, Gap):
            return self._incomplete(blank, entry.check, node)
        adverse = -1 if isinstance(entry.check.limits, AtLeast) else 1
        extreme = worst_case(node, adverse, entry.check.peaks_inside)
        finding = self._measured(blank, entry.check, node, extreme)
        severity = missed(entry.check, extreme.figure)
        if severity is None:
            return self._met(finding, entry, node)
        return self._failed(finding, entry, node, severity)

    def _incomplete(self, blank: Finding, check: Check, gap: Gap) -> Finding:
        if gap.absent:
            return replace(blank, message=f"{gap.absent}: not in this design")
        if not self._speaks_up(check, blank.subject):
            return replace(blank, message=SILENT)
        places_found = (self.spec.place(item.path) for item in gap.missing)
        return replace(
            blank,
            status=Status.OPEN,
            message="cannot be judged: " + ", ".join(item.path for item in gap.missing[:4]),
            missing=gap.missing,
            place=next((place for place in places_found if place), None),
        )

    def _speaks_up(self, check: Check, subject: str) -> bool:
        """Whether silence is an open item: the topic is touched, or the milestone asks."""
        if check.asked_from and _reached(self.milestone, check.asked_from):
            return True
        topics = check.topic or tuple(getattr(item, "path", "") for item in check.inputs.values())
        channel = None if subject == PRODUCT else subject
        full = (path for topic in topics for path in self._full_topics(topic, channel))
        return any(path in self._topics for path in full)

    def _full_topics(self, topic: str, channel: str | None) -> tuple[str, ...]:
        topic = topic.removeprefix("all ")
        if channel is None:
            return (topic, *(f"channels.{name}.{topic}" for name in self.spec.channels))
        return (topic, f"channels.{channel}.{topic}")

    def _measured(self, blank: Finding, check: Check, node: Computed, extreme: Extreme) -> Finding:
        channel = None if blank.subject == PRODUCT else blank.subject
        pointed = places(node, check, self.graph, channel)
        shares = {sway.path: sway.share for sway in extreme.sways}
        return replace(
            blank,
            message=sentence(check, node, extreme.corner),
            figure=extreme.figure,
            nominal=extreme.nominal,
            place=pointed[0] if pointed else None,
            related=pointed[1:6],
            readings=readings(check, node, extreme.corner, self.graph),
            corner=corner_readings(node, extreme.corner, self.graph, shares),
            sways=extreme.sways,
            leaned=node.leaned,
            leaves=node.used,
        )

    def _met(self, finding: Finding, entry: Entry, node: Computed) -> Finding:
        check = entry.check
        limit, basis = limit_of(check, mildest(check.limits))
        met = replace(
            finding,
            status=Status.MEETS,
            limit=limit,
            basis=basis,
            margin=margin_to(finding, limit),
        )
        floors = [item for item in node.leaned if item.leaning == "floor"]
        if floors:
            return self._leaning(met, floors, "is only a bound: what is missing makes it worse")
        if self.milestone != MILESTONES[-1]:
            return met
        soft = [x for x in node.leaned if x.leaning in LEANS_WHEN_MET or x.placeholder]
        if check.stake != "performance":
            plan = partial(self.prepare, entry, met.subject)
            soft += only_typical(plan, self.graph, node, met)
        if soft:
            return self._leaning(met, soft, "is met only on assumptions or typical values")
        recalled = any(item.kind == "from memory" for item in check.limits.basis.values())
        if check.stake == "safety" and recalled:
            note = "the limit is from memory, not verified against the standard"
            return replace(met, status=Status.OPEN, message=f"{met.message}; {note}")
        return met

    def _leaning(self, finding: Finding, leaned: list[Leaned], note: str) -> Finding:
        channel = None if finding.subject == PRODUCT else finding.subject
        missing: dict[Missing, None] = {}
        for item in leaned:
            for gap in self.graph.asked(item.path, channel):
                missing.setdefault(gap)
        return replace(
            finding,
            status=Status.OPEN,
            message=f"{finding.message}; it {note}",
            missing=tuple(missing),
            leaned=tuple(dict.fromkeys((*finding.leaned, *leaned))),
        )

    def _failed(
        self, finding: Finding, entry: Entry, node: Computed, severity: Severity
    ) -> Finding:
        check = entry.check
        note = ""
        if severity == Severity.CRITICAL and not self._stands(entry, finding, node):
            severity = Severity.MAJOR
            note = "; major, not critical, because it rests on an assumption"
        if check.stake == "performance" and severity != Severity.MINOR:
            adverse = 1 if not finding.at_least else -1
            if missed(check, root_sum_square(node, adverse)) in (None, Severity.MINOR):
                severity = Severity.MINOR
                note = "; minor, because the tolerances in root-sum-square stay within"
        limit, basis = limit_of(check, missed(check, finding.figure or 0.0) or severity)
        return replace(
            finding,
            status=Status.FINDING,
            severity=severity,
            message=finding.message + note,
            limit=limit,
            basis=basis,
            margin=margin_to(finding, limit),
        )

    def _stands(self, entry: Entry, finding: Finding, node: Computed) -> bool:
        """Whether a critical stands without adverse assumptions and placeholders."""
        if not any(item.leaning == "adverse" or item.placeholder for item in node.leaned):
            return True
        sure = self.prepare(entry, finding.subject, self.sure_graph)
        if not isinstance(sure, Computed):
            return False
        adverse = -1 if finding.at_least else 1
        figure = worst_case(sure, adverse, entry.check.peaks_inside).figure
        return missed(entry.check, figure) == Severity.CRITICAL


def _above(path: str) -> Iterator[str]:
    """A path and the sections above it: ``a[0].b`` gives ``a[0].b``, ``a[0]``, ``a``."""
    yield path
    for position, sign in enumerate(path):
        if sign in ".[":
            yield path[:position]


def _blank(entry: Entry, subject: str) -> Finding:
    check = entry.check
    return Finding(
        check=entry.name,
        domain=entry.domain,
        title=check.title,
        subject=subject,
        status=Status.NOT_APPLICABLE,
        message="",
        unit=check.unit,
        at_least=isinstance(check.limits, AtLeast),
        limits=check.limits,
        sources=check.sources,
        cautions=check.cautions,
        stake=check.stake,
    )


def _crashed(entry: Entry, subject: str, what: str) -> Finding:
    return replace(
        _blank(entry, subject),
        status=Status.FINDING,
        severity=Severity.MAJOR,
        message=f"the check itself failed and judged nothing: {what}",
        cautions=(),
    )


def _reached(milestone: Milestone, wanted: Milestone) -> bool:
    return MILESTONES.index(milestone) >= MILESTONES.index(wanted)
