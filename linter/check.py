"""What a rule file fills in: the data of one check and of one derived quantity.

Frozen dataclasses.  Numbers stand as text with a unit, which the engine turns into SI floats once.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Any, Literal

Leaning = Literal["favourable", "adverse", "neutral", "floor", "absent"]
Seen = Literal["published", "quoted", "looked up"]
SourceKind = Seen | Literal["derived", "common practice", "from memory"]
Stake = Literal["safety", "rating", "performance"]
Scope = Literal["channel", "product"]
Milestone = Literal["concept", "prototype", "production"]
SignalWord = Literal["DANGER", "WARNING", "CAUTION", "NOTICE"]
Words = str | tuple[str, ...]
MILESTONES: tuple[Milestone, ...] = ("concept", "prototype", "production")


@dataclass(frozen=True, slots=True)
class Source:
    """Where a formula, a number or a limit comes from, and how well it is known.

    ``published``: read in the named text; ``quoted``: read in another text that quotes
    it; ``derived``: follows from circuit theory, the title says how in one line;
    ``looked up``: by the house, whose file records by whom and when.
    where: page, table, figure, section; ``no page given`` where none is known.
    """

    title: str
    where: str = ""
    kind: SourceKind = "published"


COMMON_PRACTICE = Source("common practice, no source", kind="common practice")


def from_memory(title: str, where: str = "") -> Source:
    """A text that was not at hand when the number was written down."""
    return Source(title, where, kind="from memory")


def quoted(title: str, where: str = "") -> Source:
    """A text that was read only as another one quotes it: name both."""
    return Source(title, where, kind="quoted")


def derivation(how: str, where: str = "") -> Source:
    """A result derived from circuit theory; ``how`` tells the derivation in one line."""
    return Source(how, where, kind="derived")


@dataclass(frozen=True, slots=True)
class Assumption:
    """What stands in for a value that the spec does not state.

    value: text with a unit, a word, or a bare float where the quantity is a count or
        where infinity is meant; None when a ``Way`` computes it.
    leaning: ``favourable`` flatters the design (a failure found with it stands, a pass
        leans on it); ``adverse`` is the worst case (a pass stands, a failure leans on
        it); ``neutral`` may err either way; ``floor`` is a bound from the better side,
        such as a term of a sum left out (it can fail a check, never pass one); ``absent``:
        silence means that the thing is not in the product.
    placeholder: a rough stand-in that must never make a critical finding.
    within: the true value as a share of what stands in, ``0.7 .. 2``: met over all, met.
    """

    value: str | float | None
    leaning: Leaning
    basis: Source
    placeholder: bool = False
    within: str = ""


@dataclass(frozen=True, slots=True)
class Input:
    """One argument of a figure: a leaf of the spec, a derived quantity or a section.

    path: ``feed.v`` (product), ``stage.coil.l`` (of the channel at hand), ``swing`` (no
        dot: a derived quantity or a rating of the channel), ``all power`` (tuple over the
        channels), ``stage.clamp`` (a section: the word ``fitted`` or ``none``),
        ``stage.rungs[].r`` (tuple), ``band:low`` (one end of a range).
    unit: unit that the value is shown in; ``1`` for numbers, ``word`` for words.
        Empty: that of the field or the derived quantity, which the catalogue fills in.
    meaning: given only where this figure needs to say more than the field does: which
        of several, under which condition, what the value stands in for.  Empty: that of
        the field or the derived quantity, up to its first semicolon.
    default: used where the path leads to nothing; beats the default of the field.
    """

    path: str
    unit: str = ""
    meaning: str = ""
    default: Assumption | None = None


@dataclass(frozen=True, slots=True)
class Constant:
    """A physical constant or an empirical coefficient that a figure takes as argument."""

    value: str
    meaning: str
    basis: Source


Arguments = Mapping[str, Input | Constant]


@dataclass(frozen=True, slots=True)
class Limits:
    """Thresholds of the figure, one number each, and the source of each number."""

    critical: str | None = None
    major: str | None = None
    minor: str | None = None
    basis: Mapping[str, Source] = field(default_factory=dict)


class AtLeast(Limits):
    """The figure must not fall below the thresholds (critical is the lowest)."""

    __slots__ = ()


class AtMost(Limits):
    """The figure must not rise above the thresholds (critical is the highest)."""

    __slots__ = ()


@dataclass(frozen=True, slots=True)
class Lever:
    """A value of the spec that a designer can change to cure the finding.

    path: leaf of the spec, as in ``Input`` (never a derived quantity).
    stock: what can be bought: a series of IEC 60063 (``E6``, ``E12``, ``E24``,
        ``E96``), a step as text (``5 ns``), or the ladder of values as a tuple.
    when: word-valued paths and the words for which the change can be carried out; where
        the spec is silent about them it is offered.
    within: the largest factor by which it can be moved while the design stays the same.
    """

    path: str
    stock: str | tuple[str, ...]
    when: Mapping[str, Words] = field(default_factory=dict)
    within: float = float("inf")


@dataclass(frozen=True, slots=True)
class Case:
    """A worked case of the figure: inputs with units, result, and whose numbers they are.

    origin: ``published: ...`` / ``computed: ... (second method)`` / ``derived: ...``.
    tolerance: allowed relative deviation of the result.
    """

    inputs: Mapping[str, str | float | tuple[str | float, ...]]
    gives: str
    origin: str
    tolerance: float = 1e-3


@dataclass(frozen=True, slots=True)
class Caution:
    """A hazard note in the words of ANSI Z535.6."""

    signal: SignalWord
    text: str


@dataclass(frozen=True, slots=True)
class Check:
    """One named question to a design.  The file that holds it gives name and domain.

    figure: pure function of SI floats, words and tuples that returns one float.
    formula: the figure in a reader's notation; every input's name occurs in it.
    sentence: what the report says, with ``{name}`` for inputs at the worst corner.
    applies: word-valued paths and the words for which the check concerns the design.
    topic: sections or fields whose mention makes the check speak up; empty: paths of the inputs.
    asked_from: milestone from which silence on the topic is an open item; None: never,
        because not every design has such a thing.
    otherwise: which kind of design would do where no lever does, as half a sentence.
    peaks_inside: leaves or ranges inside which the worst case may lie.
    permissible: whether a deviation may permit a critical finding; False where the figure
        says that the design cannot be, such as two switches that conduct at once.
    forbidden: the major limit is a bound of physics; missing it even with every tolerance
        in the design's favour holds at every milestone.
    fails, passes: spec fragments (YAML, without the format line) that the engine must
        find and must clear.
    """

    title: str
    figure: Callable[..., Any]
    unit: str
    each: Scope
    stake: Stake
    formula: str
    sentence: str
    inputs: Arguments
    limits: AtLeast | AtMost
    sources: tuple[Source, ...]
    cases: tuple[Case, ...]
    fails: str
    passes: str
    applies: Mapping[str, Words] = field(default_factory=dict)
    levers: tuple[Lever, ...] = ()
    otherwise: str = ""
    cautions: tuple[Caution, ...] = ()
    topic: tuple[str, ...] = ()
    asked_from: Milestone | None = None
    peaks_inside: tuple[str, ...] = ()
    permissible: bool = True
    forbidden: bool = False


@dataclass(frozen=True, slots=True)
class Way:
    """One way to find a derived quantity; the first way that can be walked is taken.

    when: word-valued paths and the words for which this way is right.
    assumes: set where walking this way is an assumption and not a computation.
    """

    figure: Callable[..., Any]
    inputs: Arguments
    formula: str
    when: Mapping[str, Words] = field(default_factory=dict)
    assumes: Assumption | None = None


@dataclass(frozen=True, slots=True)
class Derived:
    """A quantity of the operating point that follows from the leaves of the spec.

    unit: unit shown; ``word`` for words, ``set`` for a bundle that others read off, with its
        ``parts`` to be shown, each with its unit.
    stated_at: where the spec may state it, to be compared with what follows.  agree: relative
        difference still called equal; assumed_within: as a factor, where what follows is
        assumed; least_share: of the least that follows, no less is believed.
    bounds_from_above, bounds_from_below: leaves that no design can state above, or below, what
        follows here.  Of a range the upper end counts, of a path with ``:low`` the lower one.
    bounds_by: whether physics sets the bound, and nobody can permit what lies beyond it, or
        practice.  bounds_stake: what a statement beyond it puts at stake.
    bounds_always: what lies beyond it is a promise that holds at every milestone.
    bounds_neutral: the bound is a share, with room for what is assumed to neither side.
    """

    name: str
    unit: str
    each: Scope
    meaning: str
    ways: tuple[Way, ...]
    stated_at: str | None = None
    agree: float = 0.1
    assumed_within: float = 3.0
    least_share: float = 0.0
    bounds_from_above: tuple[str, ...] = ()
    bounds_from_below: tuple[str, ...] = ()
    bounds_by: Literal["physics", "practice"] = "physics"
    bounds_stake: Stake = "rating"
    bounds_always: bool = False
    bounds_neutral: bool = False
    sources: tuple[Source, ...] = ()
    parts: Mapping[str, str] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class PromiseCheck:
    """A check that tells something of a promise.

    allows: what the design allows to promise, from what is promised and the check's figure,
        all in SI; None where there is no such number.
    says: what that number counts or leaves out, as it is told behind the number.
    proves: whether the check can support the promise; the others can only refute it.
    refutes: False where a failure only leaves the promise unproven, as a missing paper does.
    """

    check: str
    allows: Callable[[float, float], float] | None = None
    says: str = ""
    proves: bool = False
    refutes: bool = True


@dataclass(frozen=True, slots=True)
class Promise:
    """A promise of the paperwork, in the fields of the spec, and the checks that judge it.

    path: the field of which the checks allow another value, or a section that is fitted.
    told: the fields that say what is promised, in order, each with its wording: ``at {}``.
    checks: those that count least first, so that the best case is told before the rest.
    unproven: what it takes to prove it, where no check does.
    """

    name: str
    path: str
    told: tuple[tuple[str, str], ...]
    checks: tuple[PromiseCheck, ...]
    unproven: str = "no check judges it in this design"
