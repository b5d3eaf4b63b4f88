"""What decides and has not been measured on a board: open at production, where no paper can tell.

A question concerns a design where the model has a figure that answers it.  It is answered by a
reading that agrees with the model, within the error of its formula, or whose difference is
explained by what the spec leaves out or only assumes, or that lies on the safe side of a figure
of which less is better, or that stands in for what the spec does not state.  A reading that
differs otherwise leaves it open, whatever another one says: the board is not the one that was
judged.  Channels that state the same are one: a board with one of them measured has answered.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from functools import cache
from importlib import import_module
from importlib.util import find_spec
from math import log

from ..check import Milestone
from ..declare import PRODUCT
from ..evaluation.catalogue import Catalogue
from ..evaluation.graph import Graph
from ..evaluation.node import FigureError, Node
from ..evaluation.twins import Twins
from ..finding import Finding, Status
from ..measurable import Measurable, Question
from ..reading.loading import Spec
from .beyond_limit import BUILT_IN, DOMAIN
from .measured import Compared, measurable_in, told_of
from .modelled import Figure, stated_place

FROM: Milestone = "production"
TO_MEASURE = "To measure"
NEAR_ENOUGH = log(2)
"""How far what is only assumed may be off to explain a reading: a factor of two."""


def to_measure(items: Iterable[Finding]) -> str:
    """The quantities that open items want read off a board, each once, in words."""
    told = (x.title.removeprefix(f"{TO_MEASURE}: ") for x in items if is_to_measure(x))
    return ", ".join(dict.fromkeys(told))


def is_to_measure(item: Finding) -> bool:
    """Whether an answer is open for want of a reading."""
    return item.status is Status.OPEN and item.domain == DOMAIN


@cache
def questions_in(packages: tuple[str, ...]) -> Mapping[str, Question]:
    """The questions that rules packages want answered by a board, by name."""
    modules = [f"{package}.measurable" for package in packages]
    known = (import_module(module).QUESTIONS for module in modules if find_spec(module))
    return {name: question for items in known for name, question in items.items()}


def check_of(question: str) -> str:
    """The name by which the open item of a question is told and accepted."""
    return f"{question}-not-measured"


def on_readings(packages: tuple[str, ...]) -> Mapping[str, str]:
    """What can be found on measurements, by name: those of ``beyond_limit``, and each question."""
    own = {
        check_of(name): f"No reading of {item.about} off a board. Open at production, where the"
        f' design has it. It is read in step "{item.step}" of the bring-up.'
        for name, item in questions_in(packages).items()
    }
    return BUILT_IN | own


def not_measured(
    found: Sequence[Compared], graph: Graph, catalogue: Catalogue, milestone: Milestone
) -> Iterator[Finding]:
    """An open item for each question that no reading answers."""
    if milestone != FROM:
        return
    groups = _groups(graph.spec)
    known = measurable_in(catalogue.packages)
    read = {x.figure for x in found if x.figure and _answers(x, graph, known[x.figure.name])}
    read -= {x.figure for x in found if x.figure and _differs(x, graph, known[x.figure.name])}
    for name, question in questions_in(catalogue.packages).items():
        items = [x for x in known.values() if x.decides == name]
        asked: dict[str, tuple[str, ...]] = {}
        for group in groups:
            figures = _figures(items, group[0], graph, catalogue)
            of_channel = any(subject != PRODUCT for _, subject in figures)
            members = (*group, PRODUCT)
            answered = any(x.name == y and x.subject in members for x in read for y, _ in figures)
            if figures and not answered:
                subject = group[0] if of_channel else PRODUCT
                asked[subject] = tuple(figure for figure, _ in figures)
        for subject, names in asked.items():
            yield _finding(name, question, subject, names, found)


def _groups(spec: Spec) -> tuple[tuple[str, ...], ...]:
    """The channels, those that state the same together, whatever was measured of one of them."""
    twins = Twins(spec.as_stated())
    return tuple(dict.fromkeys(twins.groups.get(name, (name,)) for name in spec.channels))


def _answers(item: Compared, graph: Graph, known: Measurable) -> bool:
    """Whether a reading is believed, and the design that was judged is the board that was read."""
    if _stands_in(item, graph):
        return True
    return item.is_compared and not item.doubt and not _differs(item, graph, known)


def _stands_in(item: Compared, graph: Graph) -> bool:
    figure = item.figure
    return bool(figure and not item.doubt and stated_place(graph, figure) in graph.spec.stood_in)


def _differs(item: Compared, graph: Graph, known: Measurable) -> bool:
    """Whether a reading is believed, and nothing explains that the model gives another figure."""
    if item.answer != "differs" or item.doubt or _stands_in(item, graph):
        return False
    assert item.read is not None
    assert item.band is not None
    is_safe = known.doubted_below > 0.0 and _amount(item, known) <= 0.0
    away = max(item.band[0] - item.read.hi, item.read.lo - item.band[1])
    over = item.of.conditions.get(known.rises_over)
    is_near = away <= known.error * abs((item.nominal or 0.0) - (over.nominal if over else 0.0))
    soft = (x for x in item.explanations if x.kind != "stated")
    return not (is_safe or is_near) and not any(x.distance <= NEAR_ENOUGH for x in soft)


def _amount(item: Compared, known: Measurable) -> float:
    """How much more was read than the least that the model gives, of what should be little."""
    assert item.read is not None
    assert item.band is not None
    return known.amount(item.read.nominal) - min(map(known.amount, item.band))


def _figures(
    items: Sequence[Measurable], channel: str, graph: Graph, catalogue: Catalogue
) -> list[tuple[str, str]]:
    """The figures of a question that the model has, with their subjects; last resorts if alone."""
    found: list[tuple[str, str]] = []
    for item in sorted(items, key=lambda x: x.last_resort):
        subject = channel if told_of(item.figure, catalogue)[0] == "channel" else PRODUCT
        if not (item.last_resort and found) and _has(graph, item.figure, subject):
            found.append((item.figure, subject))
    return found


def _has(graph: Graph, name: str, subject: str) -> bool:
    try:
        return isinstance(graph.resolve(name, None if subject == PRODUCT else subject), Node)
    except FigureError:
        return True  # it is in the design, whatever its words


def _finding(
    name: str, question: Question, subject: str, figures: tuple[str, ...], found: Sequence[Compared]
) -> Finding:
    about = f"{question.about[0].upper()}{question.about[1:]}"
    here = [x for x in found if x.of.figure in figures and _is_of(x.figure, subject)]
    tried = sorted(here, key=lambda x: x.answer == "agrees")
    why = f" (the reading of {tried[0].of.figure} {_spoilt(tried[0])})" if tried else ""
    return Finding(
        check=check_of(name),
        domain=DOMAIN,
        title=f"{TO_MEASURE}: {question.about}",
        subject=subject,
        status=Status.OPEN,
        message=f"{about} has not been measured on a board{why}; read {_or(figures)}"
        f' in step "{question.step}" of the bring-up',
        stake=question.stake,
    )


def _or(names: tuple[str, ...]) -> str:
    *ahead, last = names
    return f"{', '.join(ahead)} or {last}" if ahead else last


def _spoilt(item: Compared) -> str:
    if item.why:
        return f"is not compared: {item.why}"
    return f"is doubted: {item.doubt}" if item.doubt else "differs from the model, unexplained"


def _is_of(figure: Figure | None, subject: str) -> bool:
    return figure is None or figure.subject in (subject, PRODUCT)
