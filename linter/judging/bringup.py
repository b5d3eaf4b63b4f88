"""The bring-up sheet of a spec: its steps with every number that its own model expects.

Each figure has a name, a nominal value, the band that the stated tolerances allow, and the
limit at which to stop.  What the spec does not state is asked where it is needed.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from itertools import chain
from math import inf
from typing import get_args

from ..bringup_step import Amount, Bench, Hazard, Kind, Line, Reading, Step
from ..check import AtLeast, Caution, SignalWord, Words
from ..declare import PRODUCT
from ..evaluation.bringup_steps import NamedStep, steps_of
from ..evaluation.engine import Assessment
from ..evaluation.gap import Gap
from ..evaluation.graph import Graph
from ..evaluation.node import FigureError
from ..evaluation.threshold import limit_of
from ..finding import Missing, Severity
from ..quantities.quantity import show
from .bench import Band, banded, limit_in, setting

EXACT = 12
FAILED = "The numbers of this step cannot be computed from this spec: leave it out, and ask."
SIGNALS = get_args(SignalWord)


@dataclass(frozen=True, slots=True)
class Figure:
    """One value to read, for one subject or for several of which every number agrees.

    band: what to expect; None where the spec lacks what it follows from.  limit: where to
    stop, in SI, or what is wanted where nothing ``harms``.  missing: what to state, of the
    figure or of its limit.
    """

    name: str
    title: str
    subjects: tuple[str, ...]
    unit: str
    kind: Kind
    band: Band | None
    stop: str
    limit: float | None
    harms: bool = True
    missing: tuple[Missing, ...] = ()


@dataclass(frozen=True, slots=True)
class SheetStep:
    """One step as it is made on this design.

    lines: what to do; missing: what the lines or the step itself hang on.
    """

    number: int
    name: str
    title: str
    instrument: str
    lines: tuple[str, ...]
    cautions: tuple[Caution, ...]
    figures: tuple[Figure, ...]
    missing: tuple[Missing, ...] = ()


def sheet_of(run: Assessment) -> tuple[SheetStep, ...]:
    """The steps that concern a design, each with its numbers."""
    found: list[SheetStep] = []
    graphs = {"{}": run.graph}
    for item in steps_of(run.catalogue):
        step = _Maker(run, item, graphs).made(len(found) + 1)
        if step is not None:
            found.append(step)
    return tuple(found)


class _Maker:
    """Makes one step of the sheet; graphs: those of the bench, by what it sets."""

    def __init__(self, run: Assessment, item: NamedStep, graphs: dict[str, Graph]) -> None:
        self.run = run
        self.graphs = graphs
        self.name = item.name
        self.step: Step = item.step

    def made(self, number: int) -> SheetStep | None:
        """The step; None where it does not concern the design."""
        fits = self._fits(self.step.applies, None)
        if fits is False:
            return None
        try:
            return self._filled(number, fits)
        except FigureError:
            return SheetStep(number, self.name, self.step.title, self.step.instrument, (FAILED,),
                             self._all_cautions(), ())  # fmt: skip

    def _filled(self, number: int, fits: bool | Gap) -> SheetStep | None:
        asked = list(fits.missing) if isinstance(fits, Gap) else []
        graph = self._on_bench(self.step.bench)
        figures = tuple(x for reading in self.step.readings for x in self._figures(reading))
        if self.step.readings and not figures:
            return None
        lines: list[str] = []
        for line in self.step.lines:
            for text, missing in self._told(line, graph):
                lines += [text] if text not in lines else []
                asked += missing
        return SheetStep(
            number,
            self.name,
            self.step.title,
            self.step.instrument,
            tuple(lines),
            self._all_cautions(),
            figures,
            tuple(dict.fromkeys(asked)),
        )

    def _fits(self, words: Mapping[str, Words], channel: str | None) -> bool | Gap:
        """Whether something concerns the design; a gap where a word is silent.

        Words of a channel, where no channel is at hand, ask whether they fit any of them.
        """
        if channel is None and any(map(self._of_channel, words)):
            found = [self._fits(words, name) for name in self.run.spec.channels]
            return next((x for x in (True, *found) if x in found and x is not False), False)
        fits = self.run.graph.matches(words, channel)
        return False if isinstance(fits, Gap) and fits.assumed else fits

    def _of_channel(self, path: str) -> bool:
        derived = self.run.catalogue.derived.get(path)
        return derived.each == "channel" if derived else self.run.spec.schema.is_channel_path(path)

    def _on_bench(self, items: tuple[Bench, ...]) -> Graph:
        """The graph of the design as it lies on the bench."""
        changes: dict[str, object] = {}
        for item in items:
            if self._fits(item.when, None) is not True:
                continue
            text = item.value if isinstance(item.value, str) else self._set_to(item.value)
            if text:
                changes[item.path] = text
        key = str(changes)
        if key not in self.graphs:
            spec = self.run.spec.with_values(changes).spec
            if spec is None:
                raise FigureError(f"{self.name}: the bench cannot be set: {key}")
            self.graphs[key] = Assessment(spec, self.run.catalogue, self.run.milestone).graph
        return self.graphs[key]

    def _set_to(self, amount: Amount) -> str:
        found = banded(self.run.graph, amount, None)
        return show(found.nominal, amount.unit, EXACT) if isinstance(found, Band) else ""

    def _told(self, line: Line, graph: Graph) -> Iterator[tuple[str, tuple[Missing, ...]]]:
        """A line in words, for each channel where its amounts belong to one."""
        channels = self.run.spec.channels if line.each == "channel" else (None,)
        for channel in channels:
            fits = self._fits({**self.step.applies, **line.applies}, channel)
            if fits is False:
                continue
            found = {x: self._amount(a, graph, channel) for x, a in line.amounts.items()}
            words = {name: x for name, x in found.items() if isinstance(x, str)}
            gaps = [x for x in (fits, *found.values()) if isinstance(x, Gap)]
            if any(gap.absent for gap in gaps):
                continue
            blank = dict.fromkeys(found, "____")
            text = line.text.format_map(blank | words)
            alike = len(channels) > 1 and "{" in line.text
            yield (
                f"{channel}: {text}" if alike and not self._same(line, graph) else text,
                tuple(item for gap in gaps for item in gap.missing),
            )

    def _same(self, line: Line, graph: Graph) -> bool:
        """Whether a line says the same of every channel."""
        said = {
            tuple(str(self._amount(x, graph, channel)) for x in line.amounts.values())
            for channel in self.run.spec.channels
        }
        return len(said) == 1

    def _amount(self, amount: Amount, graph: Graph, channel: str | None) -> str | Gap:
        return setting(self.run.graph if amount.as_designed else graph, amount, channel)

    def _all_cautions(self) -> tuple[Caution, ...]:
        """Each caution once, the gravest first."""
        found = dict.fromkeys(chain.from_iterable(map(self._cautions, self.step.hazards)))
        return tuple(sorted(found, key=lambda caution: SIGNALS.index(caution.signal)))

    def _cautions(self, hazard: Hazard) -> tuple[Caution, ...]:
        if self._fits(hazard.when, None) is False:
            return ()
        if isinstance(hazard.caution, Caution):
            return (hazard.caution,)
        entry = self.run.catalogue.entry(hazard.caution)
        return entry.check.cautions if entry else ()

    def _figures(self, reading: Reading) -> Iterator[Figure]:
        """The figures of a reading; subjects of which all agrees share one."""
        channels = self.run.spec.channels if reading.each == "channel" else (None,)
        graph = self._on_bench((*self.step.bench, *reading.bench))
        found: dict[object, tuple[Figure, list[str]]] = {}
        for channel in channels:
            figure = self._figure(reading, graph, channel)
            if figure is not None:
                key = (figure.band and (figure.band.nominal, figure.band.lo, figure.band.hi),
                       figure.limit, bool(figure.missing))  # fmt: skip
                found.setdefault(key, (figure, []))[1].append(channel or PRODUCT)
        for figure, subjects in found.values():
            yield replace(figure, subjects=tuple(subjects))

    def _figure(self, reading: Reading, graph: Graph, channel: str | None) -> Figure | None:
        fits = self._fits({**self.step.applies, **reading.applies}, channel)
        if fits is False:
            return None
        amount, limit, stop = self._asked(reading, graph, channel)
        found = banded(graph, amount, channel)
        spread = banded(graph, reading.spread, channel) if reading.spread else None
        gaps = [x for x in (fits, found, spread, limit) if isinstance(x, Gap)]
        if any(gap.absent for gap in gaps if gap is not limit):
            return None
        band = found if isinstance(found, Band) and inf not in (found.lo, found.hi) else None
        if band is None and isinstance(found, Band):
            return None
        if band is not None and isinstance(spread, Band):
            band = replace(band, lo=band.lo - spread.nominal, hi=band.hi + spread.nominal)
        missing = dict.fromkeys(item for gap in gaps for item in gap.missing)
        kind = band.kind(reading.kind, stop) if band else reading.kind
        number = limit if isinstance(limit, float) and abs(limit) != inf else None
        return Figure(
            reading.name,
            reading.title,
            (),
            amount.unit,
            kind,
            band,
            stop,
            number,
            reading.harms,
            tuple(missing),
        )

    def _asked(
        self, reading: Reading, graph: Graph, channel: str | None
    ) -> tuple[Amount, float | Gap | None, str]:
        """What is read, where to stop, and on which side."""
        entry = self.run.catalogue.entry(reading.check)
        if entry is not None:
            check = entry.check
            gravest = next(s for s in Severity if getattr(check.limits, s.value) is not None)
            side = "below" if isinstance(check.limits, AtLeast) else "above"
            amount = Amount(check.unit, check.figure, check.inputs)
            return amount, limit_of(check, gravest)[0], side
        if reading.amount is None:
            raise FigureError(f"{self.name}: {reading.name} has neither an amount nor a check")
        on = self.run.graph if reading.limit and reading.limit.as_designed else graph
        return reading.amount, limit_in(reading, on, channel), reading.stop
