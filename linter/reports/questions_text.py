"""The list of questions for a supplier: for a terminal, as Markdown, and as a blank form."""

import re
from collections.abc import Sequence

from rich.console import Console
from rich.padding import Padding
from rich.table import Table
from rich.text import Text

from ..asking.questions import QuestionGroup, SupplierQuestion, blank_form
from ..asking.requirements import Requirements
from ..finding import Status
from ..judging.review import Review
from .assess_head import print_weakened
from .form_text import GIVEN, form_text
from .phrases import clean, escaped
from .verdict import WEAKENED, weakened_lines

SHOWN = 3
HEADINGS = ("quantity", "meaning and condition", "for example", "asked for", "unlocks", "answer")
NOTHING = "Nothing is open: there is nothing to ask."
HOW = (
    "Write each answer behind its name, with its unit; what stays blank stays open. A name"
    " right behind a # belongs to a part that may not be in the product: take the # away"
    " where it is, or write none behind the part's name.",
    "Say where a value comes from where it matters: {value: 375 ns, from: measured}, or"
    " datasheet, supplier, estimate. A data-sheet line is {min: 8 ns, typ: 12 ns, max: 25 ns}.",
)


def print_questions(review: Review, groups: Sequence[QuestionGroup], console: Console) -> None:
    """Print the questions by part, the most useful first."""
    print_weakened(review, console)
    console.print(Padding(Text(clean(subject(review)), style="bold"), (0, 1)))
    console.print(Padding(Text(summary(review, groups)), (0, 1)))
    for group in groups:
        head = Text.assemble(
            (clean(heading(group)), "bold underline"), f"  {_count(group.unlocks, 'open answer')}"
        )
        console.print(Padding(head, (1, 1, 0, 1)))
        for question in group.questions:
            _print_question(question, console)


def markdown(review: Review, groups: Sequence[QuestionGroup]) -> str:
    """The questions as a Markdown text with a column for the answers."""
    parts = [f"# Questions: {escaped(subject(review))}"]
    parts += [f"**{WEAKENED}** {escaped(change)}" for change in weakened_lines(review)]
    parts.append(escaped(summary(review, groups)))
    for group in groups:
        rows = [HEADINGS, tuple("---" for _ in HEADINGS)]
        rows += [tuple(escaped(cell) for cell in _cells(item)) for item in group.questions]
        parts.append(f"## {escaped(heading(group))}")
        parts.append("\n".join(f"| {' | '.join(row)} |" for row in rows))
    return "\n\n".join(parts) + "\n"


def blank_text(review: Review, groups: Sequence[QuestionGroup]) -> str:
    """The questions as a spec file to be filled in."""
    title = f"Questions: {clean(subject(review))}"
    return form_text(blank_form(review, groups), title, HOW)


def heading(group: QuestionGroup | Requirements) -> str:
    """A part in words: what, of which channels, with its type number."""
    text = group.part[0].upper() + group.part[1:]
    if group.channels:
        plural = "s" if len(group.channels) > 1 else ""
        text += f" of channel{plural} {' and '.join(group.channels)}"
    return f"{text}, {group.type_number}" if group.type_number else text


def summary(review: Review, groups: Sequence[QuestionGroup]) -> str:
    """How much is asked, and what it is good for."""
    asked = sum(len(group.questions) for group in groups)
    if not asked:
        return NOTHING
    opened = review.counts()["open"]
    stage = f"at the {review.verdict.milestone} milestone"
    taken = sum(1 for item in review.of_status(Status.OPEN) if item.permitted)
    accepted = f"; {taken} of them accepted as open by a deviation" if taken else ""
    return f"{_count(asked, 'question')} behind {_count(opened, 'open answer')} {stage}{accepted}"


def _count(number: int, noun: str) -> str:
    return f"{number} {noun}{'' if number == 1 else 's'}"


def subject(review: Review) -> str:
    """The product and its revision."""
    spec = review.spec
    revision = f", revision {spec.revision}" if spec.revision else ""
    return f"{spec.title or spec.file}{revision}"


def condition(question: SupplierQuestion) -> str:
    """What is asked, how it is to be given, and what has to be said with it."""
    field = question.field
    if field.kind == "section":
        other = ", or that there is none" if field.can_be_none else ""
        return f"{field.meaning.rstrip('.')}: its data{other}"
    parts = [re.sub(r"; silent:.*", "", field.meaning)]
    if field.words:
        parts.append("one of " + ", ".join(field.words))
    if given := GIVEN.get(field.given):
        parts.append(given)
    if question.with_it:
        parts.append("state with it " + ", ".join(question.with_it))
    return "; ".join(parts)


def _name(question: SupplierQuestion) -> str:
    unit = question.field.unit
    return question.local + ("" if unit in ("1", "word") else f" [{unit}]")


def _why(question: SupplierQuestion) -> str:
    more = len(question.needed_for) - SHOWN
    text = "; ".join(question.needed_for[:SHOWN])
    return f"{text}; and {_count(more, 'more check')}" if more > 0 else text


def _unlocks(question: SupplierQuestion) -> str:
    text = _count(question.unlocks, "open answer")
    if question.alone == question.unlocks:
        return f"{text}, by itself"
    return (
        f"{text}, {question.alone} of them by itself" if question.alone else f"{text}, with others"
    )


def _cells(question: SupplierQuestion) -> tuple[str, ...]:
    return (
        _name(question),
        condition(question),
        question.field.example,
        _why(question),
        _unlocks(question),
        "",
    )


def _print_question(question: SupplierQuestion, console: Console) -> None:
    table = Table.grid(padding=(0, 1))
    table.add_column(width=11, style="dim", no_wrap=True)
    table.add_column(ratio=1, overflow="fold")
    rows = [("asked", Text(condition(question)))]
    if question.field.example and not question.field.words:
        rows.append(("for example", Text(question.field.example, style="green")))
    rows += [("needed for", Text(clean(_why(question)))), ("unlocks", Text(_unlocks(question)))]
    for label, content in rows:
        table.add_row(label, content)
    console.print(Padding(Text.assemble("▪ ", (_name(question), "bold")), (0, 1)))
    console.print(Padding(table, (0, 1, 0, 3)))
