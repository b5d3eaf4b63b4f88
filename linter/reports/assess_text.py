"""The review in full for a person at a terminal: every finding, open item, margin, assumption."""

from collections.abc import Collection, Iterator, Sequence

from rich.console import Console
from rich.text import Text

from ..changes.causes import causes_of
from ..evaluation.threshold import closeness
from ..finding import Finding, Place, Severity, Status
from ..judging.review import Review
from ..reading.refusal import Refusal
from .assess_head import house_lines, rests_on_lines, verdict_line, verdict_lines, weakened_text
from .assumption_words import assumptions_of, unsure_of
from .cause_words import CauseWords, cause_words
from .cautions import SIGNALS, cautions_of
from .change_words import change_in_words
from .groups import groups, together
from .lines import hanging, print_lines, room
from .measured_text import measured_lines
from .phrases import (
    against,
    bar,
    cited,
    corner,
    further,
    margin_of,
    missing_in_words,
    place_in_words,
)
from .promise_text import promise_lines
from .standing import mark
from .verdict import DISCLAIMER

STYLES = {Severity.CRITICAL: "bold red", Severity.MAJOR: "yellow", Severity.MINOR: "cyan"}
LABEL = 12
NO_BLOCK = "does not block release"


def print_review(review: Review, console: Console, dated: bool = False) -> None:
    """Print a whole review."""
    width, house = room(console), review.criteria.house
    lines = [*weakened_text(review, width), *verdict_lines(review, width)]
    lines += [*promise_lines(review, width), *measured_lines(review, width)]
    if house is not None:
        lines += [Text(), *house_lines(house, width)]
    for part in (_causes, _open, _met, _assumed, _silent):
        lines += part(review, width)
    lines += [Text(), *rests_on_lines(review, width, dated)]
    lines += hanging("", DISCLAIMER, width, ("", "dim"))
    print_lines([*lines, *verdict_line(review, width)], console)


def print_checks(review: Review, names: Collection[str], console: Console) -> None:
    """Print the answers of some checks alone, whatever they are."""
    width = room(console)
    lines = verdict_line(review, width)
    answers = [item for item in review.findings if item.check in names]
    seen: set[str] = set()
    for item, subjects in groups(answers):
        lines += [Text(), *_finding(review, (item, subjects), seen, width)]
    print_lines([*lines, *hanging("", DISCLAIMER, width, ("", "dim"))], console)


def print_refusals(file: str, refusals: Sequence[Refusal], console: Console) -> None:
    """Print why a file could not be assessed."""
    width = room(console)
    lines = hanging("NOT ASSESSED  ", file, width, ("reverse", "bold"))
    for item in refusals:
        lines += [Text(), *hanging("▪ ", item.problem, width, ("red", "bold"))]
        lines += _row("location", _where(item.place, file), width)
        lines += _row("expected", item.expected, width)
        if item.example:
            lines += _row("for example", item.example, width, "green")
    print_lines(lines, console)


def _where(place: Place, file: str) -> str:
    """A place in words, with the file where that is not the one at hand."""
    other = f"{place.file}, " if place.file != file else ""
    path = f"  {place.path}" if place.path else ""
    return f"{other}{place_in_words(place)}{path}"


def _row(label: str, text: str, width: int, style: str = "") -> list[Text]:
    return hanging(f"  {label:<{LABEL}}", text, width, ("dim", style))


def _heading(text: str, style: str = "bold") -> list[Text]:
    return [Text(), Text(f" {text}", style)]


def _causes(review: Review, width: int) -> list[Text]:
    """Every finding under the cause that explains it, in the order in which one would act."""
    told = cause_words(review, causes_of(review))
    lines = _heading(f"FINDINGS  {len(review.failing())}") if told else []
    seen: set[str] = set()
    for cause in told:
        lines += [Text(), *_cause(cause, width)]
        for item, subjects in groups(cause.findings):
            lines += _finding(review, (item, subjects), seen, width)
    return lines


def _cause(cause: CauseWords, width: int) -> list[Text]:
    """The head of a cause; one that is a single finding needs none but its number."""
    style = STYLES[cause.severity]
    lead = f"{cause.mark}  {cause.severity}  ".lstrip()
    if cause.is_plain:
        return hanging(
            lead, "required before release" if cause.holds else NO_BLOCK, width, (style, "dim")
        )
    lines = hanging(lead, cause.headline, width, (style, "bold"))
    for label, change in cause.changes:
        lines += _row(label, change, width)
    return [*lines, *(_row("change", cause.note, width) if cause.note else [])]


def _finding(
    review: Review, told: tuple[Finding, tuple[str, ...]], seen: set[str], width: int
) -> list[Text]:
    """One answer for one subject or several alike."""
    item, subjects = told
    style = STYLES[item.severity] if item.severity else "bold"
    head = f"{item.title} · {together(subjects)}"
    lines = hanging("▪ ", head, width, (style, "bold"))
    for label, text in finding_rows(review, item):
        lines += _row(label, text, width, style if label == "figure" else "")
    return [*lines, *_cautions(item, seen, width)]


def _cautions(item: Finding, seen: set[str], width: int) -> list[Text]:
    """What an answer warns of, each text once in a report."""
    lines: list[Text] = []
    for caution in cautions_of(item):
        if caution.text not in seen:
            seen.add(caution.text)
            signal = SIGNALS[caution.signal]
            lead = f"  {caution.signal:<{LABEL}}"
            lines += hanging(lead, caution.text, width, (signal, signal))
    return lines


def finding_rows(review: Review, item: Finding) -> Iterator[tuple[str, str]]:
    """What is said of an answer, label by label."""
    found = item.evidence
    if item.severity is None:
        yield "answer", str(item.status)
    if against(found):
        yield "figure", against(found)
    yield "", item.message
    if item.permitted:
        yield "deviation", item.permitted
    if item.advice.missing:
        yield "missing", missing_in_words(item.advice.missing)
    if found.corner:
        yield "worst at", corner(found)
    for remedy in item.advice.remedies:
        yield "change", change_in_words(review, (item,), remedy)
    if item.advice.remedy_note:
        yield "change", item.advice.remedy_note
    yield from _grounds(review, item)
    yield "check", f"{item.check}  ({item.domain.replace('_', ' ')})"


def _grounds(review: Review, item: Finding) -> Iterator[tuple[str, str]]:
    """What an answer leans on, where the spec states it, and what its limit comes from."""
    found = item.evidence
    unsure = unsure_of(item)
    if unsure:
        yield "leans on", "; ".join(unsure)
    yield "location", _places(item)
    if found.basis:
        yield "limit from", cited(found.basis)
    if further(found):
        yield "see", further(found)
    if mark(review, item):
        yield "known", f"{mark(review, item)}, not seen in the source"


def _places(item: Finding) -> str:
    if item.place is None:
        return "not stated in the file"
    others = sorted({place.line for place in item.related} - {item.place.line})
    also = f"; see also line {', '.join(map(str, others[:4]))}" if others else ""
    return f"{place_in_words(item.place)}{also}"


def _open(review: Review, width: int) -> list[Text]:
    """What is open, first what holds."""
    items = review.of_status(Status.OPEN)
    lines = _heading(f"OPEN  {len(items)}") if items else []
    holding = {id(item) for item in review.verdict.holding}
    seen = {x.text for item in review.failing() for x in cautions_of(item)}
    for item, subjects in groups(sorted(items, key=lambda x: id(x) not in holding)):
        holds = "required before release" if id(item) in holding else NO_BLOCK
        lines += hanging("▪ ", f"{item.title} · {together(subjects)}", width, ("blue", "bold"))
        if item.evidence.figure is not None or not item.advice.missing:
            lines += _row("", item.message, width)
        if item.advice.missing:
            lines += _row("missing", missing_in_words(item.advice.missing), width)
        if item.permitted:
            lines += _row("deviation", item.permitted, width, "green")
        lines += [*_row("check", f"{item.check}  ({holds})", width), *_cautions(item, seen, width)]
    return lines


def _met(review: Review, width: int) -> list[Text]:
    """What meets its limit, the least margin first."""
    met = sorted(review.of_status(Status.MEETS), key=_tightness)
    lines = _heading(f"MEETS  {len(met)}, the least margin first", "bold green") if met else []
    for item, subjects in groups(met):
        told = f"{item.title} · {together(subjects)}"
        told = ": ".join(x for x in (told, against(item.evidence)) if x)
        told = "; ".join(x for x in (told, mark(review, item)) if x)
        lines += hanging(f"{_room(item):<9} ", told, width, ("green", ""))
    return lines


def _room(item: Finding) -> str:
    """A bar for a share of the limit, the distance where a share means nothing."""
    found = item.evidence
    if is_yes_or_no(item) or found.distance is None:
        return bar(1.0)
    return bar(found.margin) if found.margin is not None else margin_of(found)


def _tightness(item: Finding) -> float:
    """The margin to sort by; questions of yes and no have none and come last."""
    near = None if is_yes_or_no(item) else closeness(item.evidence)
    return float("inf") if near is None else near


def is_yes_or_no(item: Finding) -> bool:
    """Whether an answer is no more than yes or no, and has no margin."""
    return item.evidence.unit == "1" and item.evidence.figure == item.evidence.limit


def _assumed(review: Review, width: int) -> list[Text]:
    """Every assumption once, with the findings and open items that lean on it."""
    leaning = assumptions_of(review)
    lines = _heading(f"ASSUMPTIONS  {len(leaning)}") if leaning else []
    for text, titles in leaning.items():
        lines += hanging("▪ ", text, width)
        lines += hanging("    ", ", ".join(titles), width, ("", "dim"))
    return lines


def _silent(review: Review, width: int) -> list[Text]:
    """What does not concern the design."""
    silent = groups(review.of_status(Status.NOT_APPLICABLE))
    lines = _heading(f"NOT APPLICABLE  {len(silent)}", "dim") if silent else []
    names = ", ".join(dict.fromkeys(item.title for item, _ in silent))
    return [*lines, *(hanging("", names, width, ("", "dim")) if silent else [])]
