"""Builds by the thousand: which share of them meets each check, and all checks.

Spreads are drawn once for all checks, so that coupled parts share one draw: tolerances
uniform between their ends, data-sheet lines triangular with the peak at the typical
value.  Conditions of use (ranges) are not drawn: every build meets all of them, so each
check takes them at its own worst corner.  The draw is reproducible by its seed.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from ..check import AtLeast, Milestone
from ..evaluation.catalogue import Catalogue
from ..evaluation.engine import Assessment
from ..evaluation.node import Computed, Node
from ..finding import Finding, Severity
from ..quantities.quantity import Value, to_si
from ..reading.loading import Spec
from .spread import Spread, Spreads

if TYPE_CHECKING:
    import numpy

Array = Any
CHUNK = 20_000
NEEDS_NUMPY = (
    "Monte Carlo draws its builds with numpy, which is not installed;"
    " install it with: pip install 'ampreview[montecarlo]'"
)


class NumpyMissingError(Exception):
    """Numpy, an optional extra, is not installed."""


@dataclass(frozen=True, slots=True)
class Share:
    """How many builds miss a limit of one check."""

    finding: Finding
    missing: int


@dataclass(frozen=True, slots=True)
class Yield:
    """The outcome of all builds: how many meet every check, and who spoils the rest.

    spreads: of the checks that were asked for and whose figure is not the same in all builds.
    """

    builds: int
    seed: int
    severity: Severity
    good: int
    shares: tuple[Share, ...]
    spreads: tuple[Spread, ...] = ()


def build_many(
    spec: Spec,
    catalogue: Catalogue,
    milestone: Milestone,
    severity: Severity,
    builds: int = 100_000,
    seed: int = 1,
    wanted: Sequence[tuple[str, str]] = (),
) -> Yield:
    """Judge many builds; one fails where a limit of ``severity`` or graver is missed.

    wanted: check and subject of the figures whose spread is kept.
    """
    try:
        import numpy
    except ImportError as error:
        raise NumpyMissingError(NEEDS_NUMPY) from error
    judged = _judged(Assessment(spec, catalogue, milestone), severity)
    missing = [0] * len(judged)
    spreads = Spreads(wanted)
    good = 0
    dice = numpy.random.default_rng(seed)
    for start in range(0, builds, CHUNK):
        size = min(CHUNK, builds - start)
        fine = numpy.ones(size, dtype=bool)
        drawn: dict[str, Array] = {}
        memo: dict[Any, Array] = {}
        for number, (finding, node, limit) in enumerate(judged):
            _draw(node, drawn, dice, size)
            figure = numpy.broadcast_to(_figure(finding, node, drawn, memo), (size,))
            missed = _missed(finding, figure, limit)
            spreads.count(finding, limit, figure, lost := int(missed.sum()))
            missing[number] += lost
            fine &= ~missed
        good += int(fine.sum())
    shares = [Share(item[0], lost) for item, lost in zip(judged, missing, strict=True) if lost]
    shares.sort(key=lambda share: (-share.missing, share.finding.check, share.finding.subject))
    return Yield(builds, seed, severity, good, tuple(shares), spreads.found)


def _judged(run: Assessment, severity: Severity) -> list[tuple[Finding, Computed, float]]:
    """Every check that gives a figure, with the mildest limit that counts."""
    found = []
    for entry in run.catalogue.entries:
        limits = entry.check.limits
        steps = [s for s in Severity if s.rank <= severity.rank and getattr(limits, s.value)]
        for subject in run.subjects(entry.check) if steps else ():
            finding = run.judge(entry, subject)
            node = run.prepare(entry, subject, run.graph)
            if finding.evidence.figure is not None and isinstance(node, Computed):
                limit = to_si(getattr(limits, steps[-1].value), entry.check.unit)
                found.append((finding, node, limit))
    return found


def _draw(node: Node, drawn: dict[str, Array], dice: "numpy.random.Generator", size: int) -> None:
    for path, value in node.leaves.items():
        if path not in drawn and value.form != "range":
            drawn[path] = _sample(value, dice, size)


def _sample(value: Value, dice: "numpy.random.Generator", size: int) -> Array:
    if value.form == "line":
        return dice.triangular(value.lo, value.nominal, value.hi, size)
    return dice.uniform(value.lo, value.hi, size)


def _figure(
    finding: Finding, node: Computed, drawn: Mapping[str, Array], memo: dict[Any, Array]
) -> Array:
    """The figure of a check in each build, under the worst conditions of use."""
    conditions = {
        item.path: item.value
        for item in finding.evidence.corner
        if node.leaves[item.path].form == "range"
    }
    return _value(node, drawn, conditions, memo)


def _missed(finding: Finding, figure: Array, limit: float) -> Array:
    """Which builds miss a limit."""
    slack = 1e-9 * abs(limit)
    rising = isinstance(finding.evidence.limits, AtLeast)
    return figure < limit - slack if rising else figure > limit + slack


def _value(
    node: Node, drawn: Mapping[str, Array], conditions: Mapping[str, Any], memo: dict[Any, Array]
) -> Array:
    """A node's value for all builds; shared wherever the conditions are the same."""
    own = tuple((path, conditions[path]) for path in node.leaves if path in conditions)
    key = (id(node), own)
    if key not in memo:
        if isinstance(node, Computed):
            below = node.taken
            memo[key] = node.call([_value(x, drawn, conditions, memo) for x in below])
        else:
            memo[key] = node.value({**drawn, **dict(own)})
    return memo[key]
