"""The letter to a supplier: plain text to be mailed, and Markdown."""

import csv
import io
import re
from collections.abc import Iterator, Sequence
from textwrap import wrap
from typing import TypeVar

from ..asking.letter import Letter, Wanted
from ..declare import PRODUCT, without_channel
from ..finding import Severity
from ..judging.review import Review
from ..quantities.quantity import printed
from .cause_words import CauseWords, cause_words
from .groups import groups, together
from .phrases import cell_of_table, clean, escaped
from .promise_words import begun_small, promise_rows
from .questions_text import condition, heading, subject
from .requirements_text import warnings
from .verdict import DISCLAIMER, WEAKENED, house_told, weakened_lines

T = TypeVar("T")
MOST_OF_A_PART = 2
GRAVE = (Severity.CRITICAL, Severity.MAJOR)
WIDTH = 78
MOST = {"explain": 6, "correct": 12, "provide": 12, "measure": 1}
WITH_EACH = "with each reading its conditions, the board and the instrument"
NOTHING = "Nothing is open and nothing fails: there is nothing to ask."
HEADS = {
    "explain": "Please explain",
    "correct": "Please correct or confirm",
    "provide": "Please provide",
    "measure": "Please measure on a first board",
}
TABLE = ("field", "part", "what", "must be", "for example", "your value")
COLUMNS = ("what", "of which part", "must be", "needed for", "your value")


def letter_text(review: Review, letter: Letter, whole: bool = False, width: int = WIDTH) -> str:
    """The letter as plain text, on one page unless it is wanted whole."""
    title = f"Subject: {clean(subject(review))}: what we need to know"
    lines = [*(line for text in (*_notes(review), title) for line in wrap(text, width)), ""]
    head = len(lines)
    for number, (name, points) in enumerate(_points(review, letter), 1):
        lines.append(f"{number}. {HEADS[name]}")
        for point in _shown(name, points, whole):
            lines += wrap(point, width, initial_indent="   - ", subsequent_indent="     ")
        for more in _more(name, points, whole):
            lines += wrap(more, width, initial_indent="   ", subsequent_indent="   ")
        lines.append("")
    if len(lines) == head:
        lines += [NOTHING, ""]
    return "\n".join([*lines, *wrap(DISCLAIMER, width)]) + "\n"


def letter_markdown(review: Review, letter: Letter, whole: bool = False) -> str:
    """The letter as Markdown, what is to be supplied as a table."""
    parts = [*map(escaped, _notes(review)), f"# {escaped(subject(review))}: what we need to know"]
    head = len(parts)
    for number, (name, points) in enumerate(_points(review, letter), 1):
        parts.append(f"## {number}. {HEADS[name]}")
        if name == "provide":
            wanted = _shown(name, letter.provide, whole)
            rows = [COLUMNS, tuple("---" for _ in COLUMNS), *map(_row, wanted)]
            parts.append("\n".join(f"| {' | '.join(map(escaped, row))} |" for row in rows))
        else:
            shown = _shown(name, points, whole)
            parts.append("\n".join(f"- {escaped(point)}" for point in shown))
        parts += _more(name, points, whole)
    if len(parts) == head:
        parts.append(NOTHING)
    return "\n\n".join([*parts, f"*{DISCLAIMER}*"]) + "\n"


def answers_table(letter: Letter) -> str:
    """What is missing as CSV, a row a value, with a blank column for the answers."""
    stream = io.StringIO()
    rows = csv.writer(stream, lineterminator="\n")
    rows.writerow(TABLE)
    for item in letter.provide:
        paths = " ".join(item.question.paths)
        about = (heading(item.group), condition(item.question), bounds(item))
        example = item.question.field.example
        rows.writerow([cell_of_table(cell) for cell in (paths, *about, example, "")])
    return stream.getvalue()


def _notes(review: Review) -> list[str]:
    """What the sender should know and the supplier need not."""
    notes = [f"{WEAKENED} {text}" for text in weakened_lines(review)]
    return [
        f"To the sender: {clean(text)}" for text in (*notes, *house_told(review.criteria.house))
    ]


def _points(review: Review, letter: Letter) -> Iterator[tuple[str, list[str]]]:
    """The lists that are not empty, each point in one line."""
    explain = [*_explained(letter)]
    correct = [text for cause in cause_words(review, letter.correct) for text in _faults(cause)]
    provide = [_in_line(item) for item in letter.provide]
    measure = [f"{_capital(letter.measure)}; {WITH_EACH}."] if letter.measure else []
    lists = {"explain": explain, "correct": correct, "provide": provide, "measure": measure}
    for name, points in lists.items():
        if points:
            yield name, [clean(point) for point in points]


def _capital(text: str) -> str:
    return f"{text[0].upper()}{text[1:]}"


def _explained(letter: Letter) -> Iterator[str]:
    """The promises to explain; those that fail by the same are told together."""
    found: dict[str, list[str]] = {}
    for row in promise_rows(letter.explain):
        found.setdefault(row.allowed, []).append(row.promised)
    for allowed, promised in found.items():
        yield f"{'; '.join(promised)}: {_inside(allowed)}."


def _inside(text: str) -> str:
    """What a promise comes to, behind its colon: a number, or a sentence that begins small."""
    if text[:1].isdigit():
        return f"we find {text}"
    return begun_small(text)


def _faults(cause: CauseWords) -> Iterator[str]:
    """What is wrong: the headline where one value or change explains it all, else each finding."""
    if not cause.is_of_part:
        yield f"{cause.headline}."
        return
    grave = groups(x for x in cause.findings if x.severity in GRAVE)
    for finding, subjects in grave[:MOST_OF_A_PART]:
        text = without_channel(finding.message, finding.subject)
        named = "" if finding.subject == PRODUCT else f" ({together(subjects)})"
        yield f"{text}{named}."


def _shown(name: str, points: Sequence[T], whole: bool) -> Sequence[T]:
    return points if whole else points[: MOST[name]]


def _more(name: str, points: Sequence[str], whole: bool) -> Iterator[str]:
    left = len(points) - len(_shown(name, points, whole))
    if left:
        yield f"and {left} more; we ask for them when these are answered."


def _row(item: Wanted) -> tuple[str, ...]:
    return what(item), heading(item.group), bounds(item), item.needed_for, ""


def _in_line(item: Wanted) -> str:
    parts = [f"{heading(item.group)}: {what(item)}"]
    if item.bounds:
        parts.append(f"it must be {bounds(item)}")
    return "; ".join(parts) + f" (for: {item.needed_for})"


def what(item: Wanted) -> str:
    """The value in words, how it is to be given, and the name of its field."""
    unit = item.question.field.unit
    name = item.question.local.rpartition(".")[2]
    told = name if unit in ("1", "word") else f"{name}, in {printed(unit)}"
    return f"{re.sub(r'; default:.*?(?=;|$)', '', condition(item.question))} [{told}]"


def bounds(item: Wanted) -> str:
    """What the value must be, or nothing; and where that cannot do."""
    told = dict.fromkeys(text for bound in item.bounds for text in warnings(bound))
    return "; ".join((" and ".join(str(bound.border) for bound in item.bounds), *told)).strip("; ")
