"""The review as one line a finding, in the form that editors and build servers pick out.

``file:line:column: message``, as the GNU Coding Standards have it (*Formatting Error Messages*:
lines and columns from 1); the message begins with the severity.  What is open and holds has a
line as well.  The verdict comes last, behind the program's name and without a place.
"""

from collections.abc import Iterable, Iterator

from ..finding import Finding, Place, Status
from ..judging.review import Outcome, Review
from ..reading.refusal import Refusal
from .identity import PROGRAM
from .phrases import against, clean
from .verdict import DISCLAIMER, counted, house_change, lacking


def line_pieces(outcomes: Iterable[tuple[str, Outcome]], full: bool = False) -> Iterator[str]:
    """The lines of all files, in the order given.  full: with what is open and does not hold."""
    for name, outcome in outcomes:
        lines = _judged(outcome, full) if isinstance(outcome, Review) else _refused(name, outcome)
        yield from (f"{line}\n" for line in lines)
    yield f"{PROGRAM}: {DISCLAIMER}\n"


def _judged(review: Review, full: bool) -> Iterator[str]:
    start = Place(review.spec.file, 1, 1)
    opened = review.of_status(Status.OPEN) if full else review.verdict.holding
    for item in review.failing():
        yield _line(item.place or start, f"{item.severity}: {_text(item)}")
    for item in opened:
        if item.status is Status.OPEN:
            yield _line(item.place or start, f"open: {_text(item)}")
    for change in review.criteria.house.changes if review.criteria.house else ():
        what = "safety weakened by the house file" if change.safety else "house rule"
        yield f"{PROGRAM}: {clean(review.spec.file)}: {what}: {clean(house_change(change))}"
    word = "released" if review.verdict.released else "held"
    told = f"{word} at {review.verdict.milestone}: {counted(review)}"
    yield f"{PROGRAM}: {clean(review.spec.file)}: {told}"


def _refused(name: str, refusals: Iterable[Refusal]) -> Iterator[str]:
    for item in refusals:
        example = f", for example {item.example}" if item.example else ""
        text = f"not assessed: {item.problem}; expected {item.expected}{example}"
        yield _line(item.place, text)
    yield f"{PROGRAM}: {clean(name)}: not assessed"


def _line(place: Place, text: str) -> str:
    return f"{clean(place.file)}:{place.line}:{place.column}: {clean(text)}"


def _text(item: Finding) -> str:
    """The sentence, then the check and what it is about."""
    text = (lacking(item) or item.message) if item.status is Status.OPEN else item.message
    permitted = f"; {item.permitted}" if item.permitted else ""
    return f"{text or against(item.evidence)}{permitted} [{item.check}, {item.subject}]"
