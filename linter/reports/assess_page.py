"""The review on one page: verdict, promises, causes, what is open and holds, how to see more.

A page has ``LINES`` lines at most, whatever the spec says.  What does not fit is counted; the
long form of the report has it all.
"""

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import chain

from rich.console import Console
from rich.text import Text

from ..asking.questions import so_far
from ..changes.causes import causes_of
from ..check import Caution
from ..declare import field_path, local_path
from ..finding import Finding, Severity, Status
from ..judging.review import Review
from ..judging.unmeasured import is_to_measure, to_measure
from .assess_head import rests_on_lines, verdict_line, verdict_lines, weakened_text
from .cause_words import CauseWords, cause_words
from .cautions import SIGNALS, cautions_of, distinct
from .lines import fitting, hanging, print_lines, room
from .measured_text import measured_lines
from .promise_text import promise_lines
from .standing import in_short, looked_up_in_short, waits_for_a_text
from .verdict import DISCLAIMER, house_told

LINES = 60
RATINGS = "ratings"
REQUIRED, PERMITTED, NOT_BLOCKING = "Required before release", "Permitted", "Does not block release"
MOST_PROMISES = 14
MOST_OPEN = 8
MOST_MEASURED = 12
MOST_CAUTIONS = 2
MOST_ACCEPTED = 3
HEADLINE, CHANGE = 3, 2
BRIEF = (((3, 2),) * 4, ((2, 2), (2, 2), (2, 2), (2, 1)))
"""Lines that a headline may take and a change should, and those of the first causes and of all
further ones where room is short."""
SEVERITIES = {Severity.CRITICAL: "bold red", Severity.MAJOR: "yellow", Severity.MINOR: "cyan"}


@dataclass(frozen=True, slots=True)
class Sizes:
    """The width of a page and the lines that are left for its parts."""

    width: int
    lines: int


def print_page(review: Review, console: Console, dated: bool = False) -> None:
    """Print a review as one page; the verdict again at its end where the screen is shorter."""
    lines = page_lines(review, room(console), dated)
    if len(lines) > console.height:
        lines += verdict_line(review, room(console))
    print_lines(lines, console)


def page_lines(review: Review, width: int, dated: bool = False) -> list[Text]:
    """The lines of the page, without the verdict that may follow."""
    head = [*weakened_text(review, width, 3), *verdict_lines(review, width, brief=True)]
    for told in house_told(review.criteria.house):
        head += hanging("", told, width, ("", "dim"), 3)
    foot = _foot(review, width, dated)
    left = LINES - len(head) - len(foot) - 1
    causes = [x for x in cause_words(review, causes_of(review)) if x.severity != Severity.MINOR]
    opened = [*_open(review, causes, width), *_accepted(review, width)]
    measured = measured_lines(review, width, MOST_MEASURED)
    left -= len(measured)
    most = MOST_PROMISES if causes else left - len(opened)
    promises = promise_lines(review, width, most)
    left -= len(promises) + len(opened)
    blocks = _causes(causes, Sizes(width, left))
    return [*head, *promises, *measured, *blocks, *opened, *foot]


def _causes(causes: Sequence[CauseWords], sizes: Sizes) -> list[Text]:
    """Causes that hold, then the others; ever briefer, and then as many as there is room for."""
    lines = _listed(causes, [_cause(cause, sizes.width) for cause in causes])
    if len(lines) <= sizes.lines:
        return lines
    cautions = _cautions(causes, sizes.width)
    room = sizes.lines - len(cautions)
    for brief in BRIEF:
        blocks = [_brief(x, sizes.width, brief[min(place, 3)]) for place, x in enumerate(causes)]
        lines = _listed(causes, blocks)
        if len(lines) <= room:
            return [*lines, *cautions]
    shown = len(causes)
    while shown and len(lines := _listed(causes[:shown], blocks)) > room - 1:
        shown -= 1
    rest = f" and {_number(len(causes) - shown, 'more cause')}: --full"
    return [*lines, Text(rest, "dim"), *cautions]


def _listed(causes: Sequence[CauseWords], blocks: Sequence[list[Text]]) -> list[Text]:
    """Blocks of causes under what they mean for the verdict."""
    lines: list[Text] = []
    for title in (REQUIRED, PERMITTED, NOT_BLOCKING):
        found = [block for x, block in zip(causes, blocks, strict=False) if _standing(x) == title]
        if found:
            lines += [Text(), Text(f" {title}", "bold"), *chain.from_iterable(found)]
    return lines


def _standing(cause: CauseWords) -> str:
    """What a cause means for the verdict."""
    if cause.holds:
        return REQUIRED
    return PERMITTED if any(x.permitted for x in cause.findings) else NOT_BLOCKING


def _permissions(findings: Sequence[Finding], blank: str, width: int) -> list[Text]:
    """Who permitted what is found, up to where, until when and why; of which of several."""
    several = len({x.check for x in findings}) > 1
    found = [x for x in findings if x.permitted]
    told = dict.fromkeys((f"{x.title}: " if several else "") + x.permitted for x in found)
    return [*chain.from_iterable(hanging(blank, x, width, ("", "green"), CHANGE) for x in told)]


def _accepted(review: Review, width: int) -> list[Text]:
    """Who accepted what is open, until when and why, the first ones."""
    items = [x for x in review.of_status(Status.OPEN) if x.permitted]
    told = list(dict.fromkeys(f"{x.title}: {x.permitted}" for x in items))
    if not told:
        return []
    lines = [Text(), *hanging("", "Accepted as open", width, ("", "bold"))]
    for text in told[:MOST_ACCEPTED]:
        lines += hanging(" ", text, width, ("", "green"), CHANGE)
    more = len(told) - MOST_ACCEPTED
    return [*lines, Text(f" and {more} more: --full", "dim")] if more > 0 else lines


def _cause(cause: CauseWords, width: int) -> list[Text]:
    """One cause with its changes and its gravest caution."""
    lines, blank = _headline(cause, width, HEADLINE)
    lines += _permissions(cause.findings, blank, width)
    for label, forms in cause.shorter:
        lines += fitting(f"{blank}{label:<8}", forms, width, CHANGE)
    if cause.note:
        lines += hanging(f"{blank}change  ", cause.note, width, ("dim", ""))
    return [*lines, *_caution(cause.caution, blank, width)]


def _brief(cause: CauseWords, width: int, most: tuple[int, int]) -> list[Text]:
    """One cause with all that is to be changed in one text.  most: lines of head and change."""
    lines, blank = _headline(cause, width, most[0])
    lines += _permissions(cause.findings, blank, width)
    others = next((forms for _, forms in cause.shorter), ())
    forms = cause.together or ((cause.note,) if cause.note else others)
    return [*lines, *fitting(f"{blank}change  ", forms, width, most[1])] if forms else lines


def _headline(cause: CauseWords, width: int, most: int) -> tuple[list[Text], str]:
    """The headline of a cause, and the blanks for what stands below it."""
    lead = f"{cause.mark:>2} {cause.severity:<9}"
    checks = {x.check for x in cause.findings}
    count = f" ({len(cause.findings)} findings)" if len(checks) > 1 else ""
    style = (SEVERITIES[cause.severity], "")
    return hanging(lead, cause.headline + count, width, style, most), " " * len(lead)


def _cautions(causes: Iterable[CauseWords], width: int) -> list[Text]:
    """The first cautions of what holds, the gravest first; the others are counted."""
    found = cautions_of_causes(causes)
    return [Text(), *_gravest(found, MOST_CAUTIONS, width)] if found else []


def cautions_of_causes(causes: Iterable[CauseWords]) -> list[Caution]:
    """The cautions of what holds, each once, the gravest first."""
    return distinct(x.caution for x in causes if x.holds and x.caution)


def _gravest(found: Iterable[Caution], most: int, width: int) -> list[Text]:
    """The gravest cautions; what is left is counted."""
    cautions = distinct(found)
    lines: list[Text] = []
    for caution in cautions[:most]:
        lines += _caution(caution, "", width)
    left = len(cautions) - most
    return (
        [*lines, Text(f" and {_number(left, 'more caution')}: --full", "dim")]
        if left > 0
        else lines
    )


def _caution(caution: Caution | None, blank: str, width: int) -> list[Text]:
    if caution is None:
        return []
    signal = SIGNALS[caution.signal]
    return hanging(f"{blank}{caution.signal}  ", caution.text, width, (signal, signal))


def _open(review: Review, causes: Sequence[CauseWords], width: int) -> list[Text]:
    """What is open and holds, by section of the spec, the most wanted first.

    Of a spec that is released, what is open is what to state next.
    """
    items = [x for x in review.verdict.holding if x.status is Status.OPEN]
    head = f"Open, required before release: {_number(len(items), 'answer')}"
    more = "ampreview questions"
    if review.verdict.released:
        items = [x for x in review.of_status(Status.OPEN) if not x.permitted]
        head = f"Open, to be stated next: {_number(len(items), 'answer')}"
        more = "ampreview questions --requirements"
    if not items:
        return []
    lines = [Text(), *hanging("", head, width, ("", "bold"))]
    texts = [x for x in items if waits_for_a_text(review, x)]
    if texts:
        lines += hanging("look up  ", looked_up_in_short(review), width)
    if to_measure(items):
        lines += hanging("measure  ", f"{to_measure(items)}: ampreview bringup FILE", width)
    sections = wanted(review, (x for x in items if x not in texts and not is_to_measure(x)))
    told = [x.caution for x in causes if x.holds and x.caution]
    warns = [y for x in items for y in cautions_of(x)[:1]]
    foot = [] if told else _gravest(warns, 1, width)
    for number, (section, names) in enumerate(sections):
        block = hanging(f"{section}  ", ", ".join(names), width, ("", ""), 2)
        left = sum(len(rest) for _, rest in sections[number:])
        if len(lines) + len(block) > MOST_OPEN - 1:
            text = f" and {_number(left, 'more value')}: {more}"
            return [*lines, Text(text, "dim"), *foot]
        lines += block
    return [*lines, *foot]


def wanted(review: Review, items: Iterable[Finding]) -> list[tuple[str, list[str]]]:
    """The missing values by section, those that most answers wait for first.

    At concept those that a concept is asked for go ahead of all others.
    """
    at_concept = review.verdict.milestone == "concept"
    first = review.spec.schema.at_concept if at_concept else frozenset()
    counts: Counter[str] = Counter()
    ahead: dict[str, list[str]] = {}
    values: dict[str, dict[str, str]] = {}
    for item in items:
        for gap in item.advice.missing:
            above, _, name = local_path(gap.path).rpartition(".")
            section = above or RATINGS
            unit = "" if gap.unit in ("1", "word") else f" [{gap.unit}]"
            told = gap.border or so_far(review.spec, gap.path)
            border = f" ({told})" if told else ""
            found = values.setdefault(section, {})
            found[name] = border or found.get(name, unit)
            counts[section] += 1
            if field_path(gap.path) in first:
                ahead.setdefault(section, []).append(name)
        if not item.advice.missing:
            section, name = (
                ("measure", to_measure([item]))
                if is_to_measure(item)
                else ("unsettled", item.title)
            )
            values.setdefault(section, {})[name] = ""
    order = sorted(values, key=lambda section: (section not in ahead, -counts[section]))
    named = ((x, dict.fromkeys((*ahead.get(x, ()), *values[x]))) for x in order)
    return [(x, [name + values[x][name] for name in names]) for x, names in named]


def _foot(review: Review, width: int, dated: bool) -> list[Text]:
    more = "more: --full for every finding, --check NAME for one"
    more += "; amend --cause N writes a change" if review.advised and review.failing() else ""
    more += "; questions for the supplier"
    lines = [Text(), *hanging("", more, width, ("", "dim"))]
    lines += hanging("", in_short(review), width, ("", "dim")) if in_short(review) else []
    lines += rests_on_lines(review, width, dated)
    return [*lines, *hanging("", DISCLAIMER, width, ("", "dim"))]


def _number(count: int, noun: str) -> str:
    return f"{count} {noun}{'' if count == 1 else 's'}"
