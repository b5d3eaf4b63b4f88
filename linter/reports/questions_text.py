"""Questions in words: parts, conditions, and a blank form for the answers."""

import re
from collections.abc import Sequence

from ..asking.questions import QuestionGroup, SupplierQuestion, blank_form
from ..asking.requirements import Requirements
from ..judging.review import Review
from .form_text import GIVEN, form_text
from .phrases import clean
from .verdict import DISCLAIMER

HOW = (
    "Write each answer after its name, with its unit; what stays blank stays open. A name"
    " right after a # belongs to a part that may not be in the product: take the # away"
    " where it is, or write none after the part's name.",
    "Say where a value comes from where it matters: {value: 375 ns, from: measured}, or"
    " datasheet, supplier, estimate. A data-sheet line is {min: 8 ns, typ: 12 ns, max: 25 ns}.",
)


def blank_text(review: Review, groups: Sequence[QuestionGroup]) -> str:
    """The questions as a spec file to be filled in."""
    title = f"Questions: {clean(subject(review))}"
    return form_text(blank_form(review, groups), title, (*HOW, DISCLAIMER))


def heading(group: QuestionGroup | Requirements) -> str:
    """A part in words: what, of which channels, with its type number."""
    text = group.part[0].upper() + group.part[1:]
    if group.channels:
        plural = "s" if len(group.channels) > 1 else ""
        text += f" of channel{plural} {' and '.join(group.channels)}"
    return f"{text}, {group.type_number}" if group.type_number else text


def subject(review: Review) -> str:
    """The product and its revision."""
    spec = review.spec
    revision = f", revision {spec.revision}" if spec.revision else ""
    return f"{spec.title or spec.file}{revision}"


def condition(question: SupplierQuestion) -> str:
    """What is asked, how it is to be given, and what has to be said with it."""
    field = question.field
    if field.kind == "section":
        return "its data, or that there is none" if field.can_be_none else "its data"
    parts = [re.sub(r"; default:.*", "", field.meaning)]
    if field.words:
        parts.append("one of " + ", ".join(field.words))
    if given := GIVEN.get(field.given):
        parts.append(given)
    if question.so_far:
        parts.append(question.so_far)
    if question.with_it:
        parts.append("state with it " + ", ".join(question.with_it))
    return "; ".join(parts)
