"""The review itself: check by check, inputs, figure, worst corner, limit, status.

The engine knows nothing of amplifiers: it takes a spec and a catalogue and gives one
finding for every check and subject.  A check that crashes becomes a finding as well.
"""

from collections.abc import Iterator, Mapping
from contextlib import suppress
from functools import cached_property, partial

from ..check import MILESTONES, Check, Milestone
from ..declare import PRODUCT, field_path, local_path, sections_above
from ..finding import Finding, Status
from ..reading.loading import Spec
from .affected import Affected
from .answers import incomplete, judged
from .asked_once import AskedOnce
from .at_worst import figure_at_worst
from .catalogue import Catalogue, Entry
from .dependence import Dependences
from .gap import Gap
from .graph import Graph
from .known import Key
from .node import Computed, FigureError, Node
from .nodes import Nodes
from .placing import placed
from .question import Question, blank, crashed
from .threshold import limit_of, mildest
from .twins import Twins


class Assessment:
    """One run of a catalogue over a spec at a milestone."""

    def __init__(self, spec: Spec, catalogue: Catalogue, milestone: Milestone) -> None:
        self.spec = spec
        self.catalogue = catalogue
        self.milestone = milestone
        self.nodes = Nodes()
        self._answers: dict[tuple[str, str], Finding] = {}
        self._figures: dict[tuple[str, str], float | None] = {}
        self._with_word: dict[str, tuple[Assessment, ...]] = {}
        self._earlier: tuple[Assessment, Affected] | None = None
        self._revised: dict[str, tuple[Assessment, Affected] | None] = {}

    @cached_property
    def graph(self) -> Graph:
        """Names to values, for the whole run."""
        return Graph(self.spec, self.catalogue.derived, nodes=self.nodes)

    @cached_property
    def sure_graph(self) -> Graph:
        """The graph without adverse assumptions and placeholders."""
        return Graph(self.spec, self.catalogue.derived, sure=True, nodes=self.nodes)

    @cached_property
    def twins(self) -> Twins:
        """Which channels state the same."""
        return Twins(self.spec)

    @cached_property
    def dependences(self) -> Dependences:
        """What the names of the catalogue can depend on."""
        return Dependences(self.catalogue)

    @cached_property
    def _topics(self) -> frozenset[str]:
        """Every stated path and every section above one."""
        return frozenset(x for path in self.spec.values for x in (path, *sections_above(path)))

    def revised(
        self, changes: Mapping[str, object], apart: bool = False
    ) -> "tuple[Assessment, Affected] | None":
        """A run of the spec with changes, and what these can alter; None where they cannot be.

        What the changes cannot alter is taken over from this run.  apart: what is planned for
        them is not kept here.
        """
        if apart:
            return self._made_anew(changes, self.nodes.above())
        name = repr(tuple(changes.items()))
        if name not in self._revised:
            self._revised[name] = self._made_anew(changes, self.nodes)
        return self._revised[name]

    def _made_anew(
        self, changes: Mapping[str, object], nodes: Nodes
    ) -> "tuple[Assessment, Affected] | None":
        loaded = self.spec.with_values(changes)
        if loaded.spec is None:
            return None
        change = Affected(self.dependences, self.spec, loaded.spec, frozenset(changes))
        run = Assessment(loaded.spec, self.catalogue, self.milestone)
        run.nodes = nodes
        run.graph = self.graph.revised(loaded.spec, change, nodes)
        run.sure_graph = self.sure_graph.revised(loaded.spec, change, nodes)
        run.dependences = self.dependences
        run._earlier = (self, change)
        self.nodes.computations.revised()
        return run, change

    def placing(self, nodes: Mapping[Key, Node]) -> "Assessment":
        """The same run with nodes in place of some names; no channel is taken as another's twin."""
        led = self.dependences.led_by(frozenset(name for name, _ in nodes))
        run = Assessment(self.spec, self.catalogue, self.milestone)
        run.nodes = self.nodes.above()
        run.graph = placed(self.graph, nodes, led, run.nodes)
        run.sure_graph = placed(self.sure_graph, nodes, led, run.nodes)
        run.dependences = self.dependences
        run.twins.groups = {}
        return run

    def at(self, milestone: Milestone) -> "Assessment":
        """The same run as it would be asked at another milestone."""
        run = Assessment(self.spec, self.catalogue, milestone)
        run.graph, run.sure_graph = self.graph, self.sure_graph
        run.dependences, run.nodes = self.dependences, self.nodes
        return run

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
        """The answer of one check for one subject; a word of many checks is asked for once."""
        found = self.answer(entry, subject)
        asks = found.status is Status.OPEN and _reached(self.milestone, "prototype")
        return self._asked_once.heard(found, entry.check) if asks else found

    @cached_property
    def _asked_once(self) -> AskedOnce:
        return AskedOnce(self.questions(), self._concerns, self.answer, self._is_answered_by)

    def _is_answered_by(self, found: Finding, word: str) -> bool:
        """Whether a word at a path changes the figure of an open finding, and answers it."""
        entry = self.catalogue.entry(found.check)
        if entry is None or field_path(word) not in self.dependences[entry.name].fields:
            return False
        asked = entry, found.subject
        return any(
            run._planned(*asked) is not self._planned(*asked)
            and run.answer(*asked).status is not Status.OPEN
            for run in self._worded(word)
        )

    def _worded(self, path: str) -> "tuple[Assessment, ...]":
        """The run with each of the words that may stand at a silent path, in all channels."""
        if path not in self._with_word:
            schema = self.spec.schema
            names = self.spec.channels if schema.is_channel_path(local_path(path)) else (None,)
            silent = [self.graph.full(local_path(path), name) for name in names]
            paths = [item for item in silent if item not in self.spec.values]
            revised = (
                self.revised(dict.fromkeys(paths, option)) for option in schema.field_of(path).words
            )
            self._with_word[path] = tuple(x[0] for x in revised if x is not None)
        return self._with_word[path]

    def _concerns(self, check: Check, subject: str) -> bool | Gap:
        """Whether a check concerns the design, or the word on which that hangs."""
        return self.graph.matches(check.applies, None if subject == PRODUCT else subject)

    def answer(self, entry: Entry, subject: str) -> Finding:
        """The answer as if no other check were asked; channels that state the same share it."""
        first = self.twins.first(subject)
        key = (entry.name, first)
        if key not in self._answers:
            self._answers[key] = self._first_answer(entry, first)
        found = self._answers[key]
        if first == subject:
            return found
        return self.twins.carried(found, subject) or self._first_answer(entry, subject)

    def _first_answer(self, entry: Entry, subject: str) -> Finding:
        question = self.question(entry, subject)
        try:
            node = question.plan(self.graph)
            if node is None:
                return blank(entry, subject)
            if isinstance(node, Gap):
                return incomplete(question, node, self._speaks_up(entry.check, subject))
            return judged(question, node)
        except FigureError as error:
            return crashed(entry, subject, str(error))

    def at_worst(self, entry: Entry, subject: str) -> float | None:
        """The figure at its worst corner, before what it leans on is weighed; None without one."""
        key = (entry.name, self.twins.first(subject))
        if key not in self._figures:
            self._figures[key] = figure_at_worst(self.question(entry, key[1]))
        return self._figures[key]

    def _planned(self, entry: Entry, subject: str) -> Computed | Gap | None:
        """The figure as a node; None also where it cannot be planned."""
        with suppress(FigureError):
            return self.prepare(entry, subject, self.graph)
        return None

    def question(self, entry: Entry, subject: str) -> Question:
        """A check put to a subject, with all that it takes to answer it."""
        return Question(
            entry,
            subject,
            self.milestone,
            self.twins,
            self.graph,
            lambda: self.sure_graph,
            partial(self.prepare, entry, subject),
        )

    def prepare(self, entry: Entry, subject: str, graph: Graph) -> Computed | Gap | None:
        """The figure as a node; a gap when inputs lack; None when not applicable."""
        channel = None if subject == PRODUCT else subject
        fits = graph.matches(entry.check.applies, channel)
        if fits is False or (
            isinstance(fits, Gap) and fits.assumed and not _reached(self.milestone, "prototype")
        ):
            return None
        found = fits if isinstance(fits, Gap) else graph.arguments(entry.check.inputs, channel)
        if isinstance(found, Gap):
            return found
        return graph.nodes.computed(entry.name, entry.check.figure, found)

    def _grave(self, check: Check) -> bool:
        """Whether boards are built and a check can find a hazard or destruction."""
        return check.limits.critical is not None and _reached(self.milestone, "prototype")

    def target(self, check: Check) -> float:
        """The threshold that a figure must reach to meet the check."""
        return limit_of(check, mildest(check.limits))[0]

    def _speaks_up(self, check: Check, subject: str) -> bool:
        """Whether silence is an open item: the milestone asks, or its topic is stated."""
        if self._grave(check):
            return not self.asked_elsewhere(check, subject)
        if check.asked_from and _reached(self.milestone, check.asked_from):
            return True
        topics = check.topic or tuple(getattr(item, "path", "") for item in check.inputs.values())
        channel = None if subject == PRODUCT else subject
        sections = dict.fromkeys(_section_of(topic) for topic in topics)
        full = (path for section in sections for path in self._full_topics(section, channel))
        return any(path in self._topics for path in full)

    def asked_elsewhere(self, check: Check, subject: str) -> bool:
        """Whether a part is not mentioned yet and another check asks whether there is one."""
        channel = None if subject == PRODUCT else subject
        return any(
            full in self.parts_asked_for and full not in self._topics
            for part in self.catalogue.parts_needed(check)
            for full in self._full_topics(part, channel)
        )

    @cached_property
    def parts_asked_for(self) -> frozenset[str]:
        """The parts of which a grave check asks whether they are in the product at all."""
        return frozenset[str]().union(*self._parts_asked_by.values())

    @cached_property
    def _parts_asked_by(self) -> Mapping[tuple[str, str], frozenset[str]]:
        """The same for each grave check and subject; what a change cannot alter is taken over."""
        before, change = self._earlier or (self, None)
        return {
            (entry.name, subject): before._parts_asked_by[entry.name, subject]
            if change is not None and not change.alters(entry.name)
            else self._parts_lacking(entry, subject)
            for entry, subject in self.questions()
            if self._grave(entry.check)
        }

    def _parts_lacking(self, entry: Entry, subject: str) -> frozenset[str]:
        """The parts that a check lacks a word about."""
        gap = self._planned(entry, subject)
        paths = (item.path for item in getattr(gap, "missing", ()))
        return frozenset(path for path in paths if self.spec.schema.field_of(path).can_be_none)

    def _full_topics(self, topic: str, channel: str | None) -> tuple[str, ...]:
        topic = topic.removeprefix("all ")
        if channel is None:
            return (topic, *(f"channels.{name}.{topic}" for name in self.spec.channels))
        return (topic, f"channels.{channel}.{topic}")


def _section_of(topic: str) -> str:
    """The section that a topic stands in; a topic without one stands for itself."""
    return topic.removeprefix("all ").rpartition(".")[0] or topic


def _reached(milestone: Milestone, wanted: Milestone) -> bool:
    return MILESTONES.index(milestone) >= MILESTONES.index(wanted)
