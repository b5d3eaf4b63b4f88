"""Findings on measurements: those that cannot be used, and figures beyond the limit of a check."""

from collections.abc import Iterable, Iterator, Sequence

from ..check import AtLeast, Input, derivation
from ..declare import PRODUCT
from ..evaluation.catalogue import Catalogue, Entry
from ..evaluation.gap import Gap
from ..evaluation.graph import Graph
from ..evaluation.node import Computed, FigureError, Fixed, Node
from ..evaluation.threshold import limit_of, measured_to, missed
from ..evaluation.wording import sentence
from ..finding import CLEAR, Advice, Evidence, Finding, Severity, Status
from ..quantities.quantity import Value, show
from .measured import Compared
from .modelled import Figure

DOMAIN = "measurements"
UNREADABLE, BEYOND = "measurement-unreadable", "measured-beyond-limit"
BUILT_IN = {
    UNREADABLE: "A measurement of a figure, a channel or in a unit that is not known, or of a"
    " figure that is not read off a board, or of a day still to come. It counts for nothing.",
    BEYOND: "A measured figure with which a check misses its limit, though the model meets it or"
    " cannot tell. The other values of the check are nominal. Nobody can permit it where it"
    " is critical.",
}
BENCH = derivation("limit of the check, the measured figure in place of the computed one")


def on_measurements(
    found: Iterable[Compared], answers: Sequence[Finding], graph: Graph, catalogue: Catalogue
) -> tuple[Finding, ...]:
    """The findings on measurements; what the check itself finds as grave is not told twice."""
    ranks: dict[tuple[str, str], int] = {}
    for answer in answers:
        ranks[answer.check, answer.subject] = answer.rank
    told: list[Finding] = []
    for item in found:
        if item.answer == "unreadable":
            told.append(_unreadable(item))
        elif item.is_compared:
            for entry, finding in _beyond(item, graph, catalogue):
                key = (entry.name, finding.subject)
                if finding.rank < ranks.get(key, CLEAR):
                    ranks[key] = finding.rank
                    told.append(finding)
    return tuple(told)


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


def _beyond(item: Compared, graph: Graph, catalogue: Catalogue) -> Iterator[tuple[Entry, Finding]]:
    """Each check that misses its limit with what was measured."""
    assert item.figure is not None
    assert item.read is not None
    for entry in catalogue.entries:
        name, reads = item.figure.name, item.figure.name == entry.name
        takes = any(isinstance(x, Input) and x.path == name for x in entry.check.inputs.values())
        if not (reads or takes):
            continue
        channels = [item.figure.channel]
        if channels == [None] and entry.check.each == "channel":
            channels = [*graph.spec.channels]
        for channel in channels:
            finding = _judged(entry, item.figure, item.read, graph, channel)
            if finding is not None:
                yield entry, _finding(item, entry, finding, channel)


def _judged(
    entry: Entry, figure: Figure, read: Value, graph: Graph, channel: str | None
) -> tuple[Severity, float, str] | None:
    """How gravely a check fails at the worse end of a reading, its figure and what it says."""
    check = entry.check
    if graph.matches(check.applies, channel) is not True:
        return None
    own = figure.name == entry.name
    worst: tuple[Severity, float, str] | None = None
    for end in (read.lo, read.hi):
        node = None if own else _with_reading(entry, figure, end, graph, channel)
        if node is None and not own:
            return None
        try:
            value = end if node is None else float(node.value())
        except FigureError:
            continue
        severity = missed(check, value)
        further = worst is not None and (value < worst[1]) is isinstance(check.limits, AtLeast)
        if severity is not None and (worst is None or further):
            worst = severity, value, "" if node is None else sentence(check, node, {})
    return worst


def _with_reading(
    entry: Entry, figure: Figure, end: float, graph: Graph, channel: str | None
) -> Computed | None:
    """The figure of a check with the reading in place of what the model computes."""
    found = graph.arguments(entry.check.inputs, channel)
    if isinstance(found, Gap):
        return None
    paths = {name: getattr(x, "path", "") for name, x in entry.check.inputs.items()}
    nodes: dict[str, Node] = {
        name: Fixed(end) if paths[name] == figure.name else node for name, node in found.items()
    }
    return Computed(entry.name, entry.check.figure, nodes)


def _finding(
    item: Compared, entry: Entry, judged: tuple[Severity, float, str], channel: str | None
) -> Finding:
    severity, figure, told = judged
    check = entry.check
    limit, basis = limit_of(check, severity)
    evidence = Evidence(
        unit=check.unit,
        at_least=isinstance(check.limits, AtLeast),
        limits=check.limits,
        sources=check.sources,
        figure=figure,
        nominal=figure,
    )
    told = told or f"limit {show(limit, check.unit)}"
    board = f" on board {item.of.board}" if item.of.board else ""
    read = show(item.read.nominal, item.figure.unit) if item.read and item.figure else ""
    return Finding(
        check=BEYOND,
        domain=DOMAIN,
        title=f"Measured: {check.title}",
        subject=channel or PRODUCT,
        status=Status.FINDING,
        message=f"{check.title}: {read} measured{board}; {told}",
        severity=severity,
        stake=check.stake,
        place=item.of.at,
        evidence=measured_to(evidence, limit, basis),
        advice=Advice(cautions=check.cautions),
        permissible=severity is not Severity.CRITICAL,
    )
