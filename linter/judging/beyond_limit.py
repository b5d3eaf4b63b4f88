"""Findings on measurements: those that cannot be used, and figures beyond the limit of a check."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from ..check import AtLeast, Check, derivation
from ..declare import PRODUCT
from ..evaluation.engine import Assessment
from ..evaluation.gap import Gap
from ..evaluation.node import Computed, FigureError, Fixed
from ..evaluation.threshold import limit_of, measured_to, missed
from ..evaluation.wording import sentence
from ..finding import CLEAR, Advice, Evidence, Finding, Severity, Status
from ..measurable import Measurable, Shown
from ..quantities.quantity import show
from .in_place import READ, answers_with, at_conditions
from .measured import Compared, measurable_in
from .modelled import stated_place

DOMAIN = "measurements"
UNREADABLE, BEYOND = "measurement-unreadable", "measured-beyond-limit"
BUILT_IN = {
    UNREADABLE: "A measurement of a figure, a channel or in a unit that is not known, or of a"
    " figure that is not read off a board, or of a day that is none or still to come. It counts"
    " for nothing.",
    BEYOND: "A measured figure with which a check misses its limit, though the model meets it or"
    " cannot tell. The reading replaces what the model computes, at its conditions, in"
    " every check that hangs on it; what rises over the ambient is carried to the hottest one."
    " Nobody can permit it where it is critical.",
}
BENCH = derivation("limit of the check, the measured figure in place of the computed one")

Answered = tuple[str, str]


@dataclass(frozen=True, slots=True)
class OnReadings:
    """The findings on measurements.

    against: by check and subject, what a reading says where it is graver than the model.
    """

    findings: tuple[Finding, ...]
    against: Mapping[Answered, Finding]


def on_measurements(
    found: Iterable[Compared], answers: Sequence[Finding], run: Assessment
) -> OnReadings:
    """The findings on measurements; what the check itself finds as grave is not told twice."""
    ranks: dict[Answered, int] = {(x.check, x.subject): x.rank for x in answers}
    told: list[Finding] = []
    against: dict[Answered, Finding] = {}
    for item in found:
        if item.answer == "unreadable":
            told.append(_unreadable(item))
        elif item.pins is not None and not item.doubt and not _is_judged(item, run):
            for name, finding in _worst_of_each(item, run):
                key = (name, finding.subject)
                if finding.rank < ranks.get(key, CLEAR):
                    ranks[key] = finding.rank
                    against[key] = replace(finding, check=name)
                    told.append(finding)
    return OnReadings(tuple(told), against)


def _is_judged(item: Compared, run: Assessment) -> bool:
    """Whether a reading stands in the spec, so that every check has judged it."""
    return bool(item.figure and stated_place(run.graph, item.figure) in run.spec.stood_in)


def _unreadable(item: Compared) -> Finding:
    return Finding(
        check=UNREADABLE,
        domain=DOMAIN,
        title="Measurement cannot be used",
        subject=item.figure.subject if item.figure else PRODUCT,
        status=Status.FINDING,
        message=f"Measured {item.of.figure}: {item.why}",
        severity=Severity.MINOR,
        place=item.of.at,
        evidence=Evidence(basis=BENCH, sources=(BENCH,)),
    )


def _worst_of_each(item: Compared, run: Assessment) -> Iterator[tuple[str, Finding]]:
    """Each check that misses its limit with what was measured, at the worse end of the reading."""
    worst: dict[Answered, tuple[str, Finding]] = {}
    for name, finding in _beyond(item, run):
        key = (name, finding.subject)
        if key not in worst or _is_worse(finding, worst[key][1]):
            worst[key] = name, finding
    yield from worst.values()


def _is_worse(new: Finding, old: Finding) -> bool:
    """Whether a finding is graver; of equal ones what a reading shows by itself is told."""
    if new.rank != old.rank or new.evidence.limits is not old.evidence.limits:
        return new.rank < old.rank
    sign = -1.0 if new.evidence.at_least else 1.0
    return sign * (new.evidence.figure or 0.0) > sign * (old.evidence.figure or 0.0)


def _beyond(item: Compared, run: Assessment) -> Iterator[tuple[str, Finding]]:
    """All that a reading says against a design, at both of its ends."""
    assert item.figure is not None
    known = measurable_in(run.catalogue.packages)[item.figure.name]
    if known.shows:
        yield from _by_itself(item, known, known.shows, run)
    own = run.catalogue.entry(item.figure.name)
    for read in item.ends_beyond():
        if own is not None:
            severity = missed(own.check, read)
            if severity is not None:
                limit = show(limit_of(own.check, severity)[0], own.check.unit)
                told = (severity, read, f"limit {limit}")
                yield own.name, _finding(item, own.check, item.figure.subject, *told)
            continue
        for entry, found in answers_with(run, item, known, read):
            if known.shows and known.shows.instead and known.shows.check == entry.name:
                continue
            if found.severity is not None and found.evidence.figure is not None:
                told = (found.severity, found.evidence.figure, found.message)
                yield entry.name, _finding(item, entry.check, found.subject, *told)


def _by_itself(
    item: Compared, known: Measurable, shown: Shown, run: Assessment
) -> Iterator[tuple[str, Finding]]:
    """What a reading answers by itself: graver than minor only with all its uncertainty."""
    assert item.figure is not None
    assert item.read is not None
    base = at_conditions(run, item, known)
    fits = base is not None and base.graph.matches(shown.when, item.figure.channel) is True
    given = base.graph.arguments(shown.inputs, item.figure.channel) if base and fits else None
    if given is None or isinstance(given, Gap):
        return
    name, check = shown.check or item.figure.name, _check_of(shown, run)
    low, middle, high = (
        Computed(name, shown.figure, {**given, READ: Fixed(read)})
        for read in (item.read.lo, item.read.nominal, item.read.hi)
    )
    try:
        sign = -1.0 if isinstance(shown.limits, AtLeast) else 1.0
        better, worse = sorted((low, high), key=lambda x: sign * float(x.value()))
        severity, node = missed(check, float(better.value())), middle
        if severity is None and missed(check, float(worse.value())) is not None:
            severity, node = Severity.MINOR, worse
    except FigureError:
        return
    if severity is not None:
        told = (severity, float(node.value()), sentence(check, node, {}))
        subject = item.figure.subject if check.each == "channel" else PRODUCT
        yield name, _finding(item, check, subject, *told)


def _check_of(shown: Shown, run: Assessment) -> Check:
    """What a reading answers by itself, as a check."""
    entry, own = run.catalogue.entry(shown.check), (shown.figure, shown.inputs, shown.sentence)
    figure, inputs, sentence = own
    if entry is not None:
        return replace(
            entry.check, figure=figure, inputs=inputs, sentence=sentence, limits=shown.limits
        )
    return Check(
        title=shown.title,
        figure=figure,
        unit=shown.unit,
        each="channel",
        stake="rating",
        formula="",
        sentence=sentence,
        inputs=inputs,
        limits=shown.limits,
        sources=tuple(shown.limits.basis.values()),
        cases=(),
        fails="",
        passes="",
    )


def _finding(
    item: Compared, check: Check, subject: str, severity: Severity, figure: float, told: str
) -> Finding:
    limited = missed(check, figure) or severity
    limit, basis = limit_of(check, limited)
    evidence = Evidence(
        unit=check.unit,
        at_least=isinstance(check.limits, AtLeast),
        limits=check.limits,
        sources=check.sources,
        figure=figure,
        nominal=figure,
    )
    return Finding(
        check=BEYOND,
        domain=DOMAIN,
        title=f"Measured: {check.title}",
        subject=subject,
        status=Status.FINDING,
        message=f"{check.title}: {_as_read(item)}; {told}",
        severity=severity,
        stake=check.stake,
        place=item.of.at,
        evidence=measured_to(evidence, limit, basis),
        advice=Advice(cautions=check.cautions),
        permissible=severity is not Severity.CRITICAL,
    )


def _as_read(item: Compared) -> str:
    """A reading with its board and its conditions."""
    assert item.read is not None
    assert item.figure is not None
    board = f" on board {item.of.board}" if item.of.board else ""
    at = ", ".join(f"{name.replace('_', ' ')} {x.text}" for name, x in item.of.conditions.items())
    read = show(item.read.nominal, item.figure.unit)
    return f"{item.figure.name} {read} measured{board}{f' ({at})' if at else ''}"
