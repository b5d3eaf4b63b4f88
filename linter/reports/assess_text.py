"""The report for a person at a terminal: verdict, findings, open items, margins."""

from collections.abc import Iterable, Sequence

from rich.console import Console, Group, RenderableType
from rich.padding import Padding
from rich.table import Table
from rich.text import Text

from ..declare import local_path
from ..evaluation.threshold import closeness
from ..finding import Finding, Place, Remedy, Severity, Status
from ..judging.review import Review
from ..reading.refusal import Refusal
from .assess_head import print_demands, print_house, print_rests_on, print_weakened
from .groups import groups, together
from .phrases import (
    against,
    assumptions,
    bar,
    cited,
    clean,
    corner,
    effects,
    further,
    margin_of,
    missing_in_words,
    moves,
    place_in_words,
)
from .verdict import DISCLAIMER, reason

STYLES = {Severity.CRITICAL: "bold red", Severity.MAJOR: "yellow", Severity.MINOR: "cyan"}
SIGNAL_STYLES = {"WARNING": "bold red", "CAUTION": "bold yellow", "NOTICE": "bold blue"}
LABEL_WIDTH = 11
TIGHTEST = 12
ROOMY = 100


def print_review(
    review: Review, console: Console, everything: bool = False, dated: bool = False
) -> None:
    """Print a whole review.

    everything: list each met and inapplicable check too; dated: give the day.
    """
    print_weakened(review, console)
    console.print(_verdict(review))
    print_demands(review, console)
    print_house(review.criteria.house, console)
    seen: set[str] = set()
    for severity in Severity:
        found = [item for item in review.failing() if item.severity is severity]
        if found:
            console.print(_heading(f"{severity.value.upper()}  {len(found)}", STYLES[severity]))
        for item, subjects in groups(found):
            console.print(_finding(item, subjects, STYLES[severity], seen))
    _print_open(review, console)
    _print_met(review, console, everything)
    if everything:
        _print_silent(review, console)
    print_rests_on(review, console, dated)
    console.print(Padding(Text(DISCLAIMER, style="dim"), (0, 1, 0, 1)))


def print_refusals(file: str, refusals: Sequence[Refusal], console: Console) -> None:
    """Print why a file could not be assessed."""
    console.print(Text.assemble((" NOT ASSESSED ", "reverse"), "  ", (clean(file), "bold")))
    for item in refusals:
        rows: list[tuple[str, RenderableType]] = [("expected", Text(clean(item.expected)))]
        if item.example:
            rows.append(("for example", Text(clean(item.example), style="green")))
        head = Text(clean(item.problem), style="bold")
        rows.insert(0, ("location", Text(_where(item.place, file))))
        console.print(_block(head, rows, "red"))


def _where(place: Place, file: str) -> str:
    """A place in words, with the file where that is not the one at hand."""
    other = f"{clean(place.file)}, " if place.file != file else ""
    path = f"  {clean(place.path)}" if place.path else ""
    return f"{other}{place_in_words(place)}{path}"


def _verdict(review: Review) -> RenderableType:
    verdict = review.verdict
    word = " RELEASED " if verdict.released else " HELD "
    style = "bold reverse green" if verdict.released else "bold reverse red"
    head = Text.assemble((word, style), f"  at the {verdict.milestone} milestone")
    spec = review.spec
    about = " · ".join(
        clean(part)
        for part in (spec.title, f"revision {spec.revision}" if spec.revision else "", spec.file)
        if part
    )
    counts = ", ".join(f"{number} {name}" for name, number in review.counts().items())
    why = Text(reason(review), style="dim")
    return Padding(Group(head, Text(about, style="bold"), Text(counts), why), (0, 1))


def _heading(text: str, style: str) -> RenderableType:
    return Padding(Text(text, style=style), (1, 1, 0, 1))


def _block(head: Text, rows: Iterable[tuple[str, RenderableType]], style: str) -> RenderableType:
    """A head line and labelled rows with a coloured edge on the left."""
    body = Table.grid(padding=(0, 1))
    body.add_column(width=LABEL_WIDTH, style="dim", no_wrap=True)
    body.add_column(ratio=1, overflow="fold")
    for label, content in rows:
        body.add_row(label, content)
    edged = Table(box=None, show_header=False, show_edge=False, padding=(0, 0), expand=True)
    edged.add_column(width=2, style=style, no_wrap=True)
    edged.add_column(ratio=1)
    edged.add_row("▪", head)
    edged.add_row("", body)
    return Padding(edged, (0, 1, 0, 1))


def _finding(
    item: Finding, subjects: tuple[str, ...], style: str, seen: set[str]
) -> RenderableType:
    head = Text.assemble((clean(item.title), "bold"), f" · {clean(together(subjects))}")
    about = [f"{item.check} ({subject})" for subject in subjects]
    rows: list[tuple[str, RenderableType]] = []
    if against(item.evidence):
        rows.append(("figure", Text(against(item.evidence), style=style)))
    rows.append(("", Text(clean(item.message))))
    if item.permitted:
        rows.append(("deviation", Text(clean(item.permitted), style="green")))
    if item.evidence.corner:
        rows.append(("worst at", Text(clean(corner(item.evidence)))))
    rows += [("change", _remedy(remedy, about)) for remedy in item.advice.remedies]
    if item.advice.remedy_note:
        rows.append(("change", Text(clean(item.advice.remedy_note))))
    rows.append(("location", Text(_places(item))))
    if item.evidence.basis:
        rows.append(("limit from", Text(cited(item.evidence.basis))))
    if further(item.evidence):
        rows.append(("see", Text(further(item.evidence))))
    if assumptions(item.evidence):
        rows.append(("assumed", Text(clean("; ".join(assumptions(item.evidence))))))
    rows.append(("check", Text(f"{item.check}  ({item.domain.replace('_', ' ')})", style="dim")))
    for caution in item.advice.cautions:
        if caution.text not in seen:
            seen.add(caution.text)
            rows.append((caution.signal, Text(caution.text, SIGNAL_STYLES[caution.signal])))
    return _block(head, rows, style)


def _places(item: Finding) -> str:
    if item.place is None:
        return "not stated in the file"
    others = sorted({place.line for place in item.related} - {item.place.line})
    also = f"; see also line {', '.join(map(str, others[:4]))}" if others else ""
    return f"{place_in_words(item.place)}{also}"


def _remedy(remedy: Remedy, about: Sequence[str]) -> Text:
    old = {local_path(path): was for (path, _), was in zip(remedy.changes, remedy.was, strict=True)}
    text = Text()
    for number, (path, value) in enumerate(moves(remedy.changes)):
        text.append(" and " if number else "")
        text.append(f"{path} to ")
        text.append(clean(value), style="bold green")
        if old[path]:
            text.append(f" (now {clean(old[path])})")
    if effects(remedy, about):
        text.append(f"; {effects(remedy, about)}")
    return text


def _print_open(review: Review, console: Console) -> None:
    items = review.of_status(Status.OPEN)
    if not items:
        return
    console.print(_heading(f"OPEN  {len(items)}", "bold"))
    for item, subjects in groups(items):
        head = Text.assemble((clean(item.title), "bold"), f" · {clean(together(subjects))}")
        rows: list[tuple[str, RenderableType]] = []
        if item.evidence.figure is not None or not item.advice.missing:
            rows.append(("", Text(clean(item.message))))
        if item.advice.missing:
            rows.append(("missing", Text(missing_in_words(item.advice.missing))))
        if item.permitted:
            rows.append(("deviation", Text(clean(item.permitted), style="green")))
        rows.append(("check", Text(item.check, style="dim")))
        console.print(_block(head, rows, "blue"))


def _print_met(review: Review, console: Console, everything: bool) -> None:
    met = list(review.of_status(Status.MEETS))
    if not met:
        return
    met.sort(key=_tightness)
    alike = groups(met)
    shown = alike if everything else alike[:TIGHTEST]
    note = "" if len(shown) == len(alike) else f", the {len(shown)} with the least margin"
    console.print(_heading(f"MEETS  {len(met)}{note}", "green"))
    table = Table.grid(padding=(0, 1), expand=True)
    table.add_column(style="green", no_wrap=True)
    table.add_column(ratio=3, overflow="fold")
    if console.width >= ROOMY:
        table.add_column(ratio=2, overflow="fold")
    for item, subjects in shown:
        cells = (f"{item.check} · {clean(together(subjects))}", against(item.evidence))
        text = cells if console.width >= ROOMY else (": ".join(cell for cell in cells if cell),)
        table.add_row(_room(item), *text)
    console.print(Padding(table, (0, 1, 0, 1)))


def _room(item: Finding) -> str:
    """A bar for a share of the limit, the distance where a share means nothing."""
    found = item.evidence
    if _is_yes_or_no(item) or found.distance is None:
        return bar(1.0)
    return bar(found.margin) if found.margin is not None else margin_of(found)


def _tightness(item: Finding) -> float:
    """The margin to sort by; questions of yes and no have none and come last."""
    near = None if _is_yes_or_no(item) else closeness(item.evidence)
    return float("inf") if near is None else near


def _is_yes_or_no(item: Finding) -> bool:
    return item.evidence.unit == "1" and item.evidence.figure == item.evidence.limit


def _print_silent(review: Review, console: Console) -> None:
    silent = review.of_status(Status.NOT_APPLICABLE)
    if silent:
        console.print(_heading(f"NOT APPLICABLE  {len(silent)}", "dim"))
        names = ", ".join(f"{item.check} ({clean(item.subject)})" for item in silent)
        console.print(Padding(Text(names, style="dim"), (0, 1, 0, 1)))
