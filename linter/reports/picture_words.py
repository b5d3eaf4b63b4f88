"""What a picture says in words: its numbers as a table, and what the checks say of it."""

from collections.abc import Collection, Iterator

from ..finding import CLEAR, Severity, Status
from ..judging.drawn import Drawn
from ..judging.review import Review
from ..picture import Scale
from ..quantities.quantity import show

SAMPLES = 7
WORDS = {Status.MEETS: "met", Status.OPEN: "open"}
ORDER = (*map(str, Severity), "open", "met")

Table = tuple[tuple[str, ...], tuple[tuple[str, ...], ...]]


def number_rows(drawn: Drawn) -> Table:
    """Heads and rows of the numbers behind a picture; of two revisions one below the other."""
    heads, rows = _rows(drawn)
    if drawn.before is None:
        return heads, rows
    _, old = _rows(drawn.before)
    told = (*(("before", *row) for row in old), *(("now", *row) for row in rows))
    return ("revision", *heads), told


def _rows(drawn: Drawn) -> Table:
    picture = drawn.picture
    if isinstance(picture, Scale):
        rows = (
            (row.label, point.label, *(show(x, picture.unit) for x in
             (point.low, point.nominal, point.high)))
            for row in drawn.rows for point in row.points
        )  # fmt: skip
        return ("part", "number", "least", "nominal", "most"), tuple(rows)
    unit_x, unit_y = picture.x.unit, picture.y.unit
    rows_: list[tuple[str, ...]] = []
    for line in () if picture.lanes else drawn.lines:
        for index in _samples(len(line.x)):
            low, high = (line.low or line.y)[index], (line.high or line.y)[index]
            ends = (show(x, unit_y) for x in (low, line.y[index], high))
            rows_.append((line.label, show(line.x[index], unit_x), *ends))
    for mark in drawn.marks:
        unit = unit_x if mark.axis == "x" else unit_y
        rows_.append((mark.label, show(mark.value, unit), "", "", ""))
    for spot in drawn.spots:
        ends = (show(x, unit_y) for x in (spot.low, spot.y, spot.high))
        rows_.append((spot.label, show(spot.x, unit_x), *ends))
    for span in drawn.spans:
        width = show(span.high - span.low, unit_x)
        rows_.append((span.label, width, show(span.low, unit_x), "", show(span.high, unit_x)))
    return ("line or mark", "at", "least", "nominal", "most"), tuple(rows_)


def _samples(count: int) -> list[int]:
    """A few places, evenly spread from the first to the last."""
    return sorted({round(step * (count - 1) / (SAMPLES - 1)) for step in range(SAMPLES)})


def row_words(review: Review, drawn: Drawn) -> list[str]:
    """The gravest answer of the checks that judge each row of a scale."""
    if not isinstance(drawn.picture, Scale):
        return []
    checks = {row.label: row.checks for row in drawn.picture.rows}
    return [_gravest(review, checks[row.label], drawn.subjects) for row in drawn.rows]


def answers(review: Review, drawn: Drawn) -> tuple[tuple[str, str], ...]:
    """What the checks say that judge a picture: each word with those that it stands for.

    What is met is counted where something is not.
    """
    found: dict[str, list[str]] = {}
    for title, word in _judged(review, drawn):
        if word:
            found.setdefault(word, []).append(title)
    words = sorted(found, key=ORDER.index)
    told = [(word, ", ".join(dict.fromkeys(found[word]))) for word in words]
    if len(words) > 1 and words[-1] == ORDER[-1]:
        told[-1] = (ORDER[-1], f"{len(found[ORDER[-1]])} more")
    return tuple(told)


def _judged(review: Review, drawn: Drawn) -> Iterator[tuple[str, str]]:
    """Rows of a scale, or the checks of curves, each with the answer."""
    if isinstance(drawn.picture, Scale):
        yield from zip((row.label for row in drawn.rows), row_words(review, drawn), strict=True)
        return
    for name in drawn.picture.checks:
        title = next((x.title for x in review.findings if x.check == name), "")
        yield title, _gravest(review, (name,), drawn.subjects)


def _gravest(review: Review, checks: Collection[str], subjects: Collection[str]) -> str:
    """The gravest answer of some checks for some subjects or the product; nothing for none."""
    found = [
        x
        for x in review.findings
        if x.check in checks and (x.subject in subjects or x.subject not in review.spec.channels)
    ]
    graves = [x for x in found if x.rank < CLEAR]
    if graves:
        return str(min(graves, key=lambda x: x.rank).severity)
    kinds = {x.status for x in found}
    return next((WORDS[x] for x in (Status.OPEN, Status.MEETS) if x in kinds), "")
