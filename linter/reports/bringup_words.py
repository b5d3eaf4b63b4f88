"""The words of a bring-up sheet that its reports share: expected, stop, what is not stated."""

from collections.abc import Iterable

from ..declare import PRODUCT, local_path
from ..finding import Assumed, Missing, Severity
from ..judging.bench import Band
from ..judging.bringup import Figure, SheetStep
from ..judging.review import Review
from ..quantities.quantity import show
from .groups import together
from .phrases import asked

HEADS = ("read", "expect", "stop", "found")
BOARD = "Board no. ____________   Date ____________   By ____________"
SIGNED = "Date ________  Initials ____"
BLANK = "________"
FEW = 3
NOTES = (
    "Bands are what the tolerances of the spec give; add the error of your instrument. A value"
    " outside its band is a question, a value at the stop ends the step: switch off, find the"
    " cause.",
    "Follow the order: each step relies on those before it. Discharge before touching, dummy load"
    " before loudspeaker, two persons where mains, packs or more than 60 V are about.",
)
MOST_NAMED = 5


def title_of(review: Review) -> str:
    """What the sheet is about."""
    spec = review.spec
    revision = f", revision {spec.revision}" if spec.revision else ""
    return f"Bring-up sheet: {spec.title or spec.file}{revision}"


def standing(review: Review) -> str:
    """Whether the review found what must be cleared before any power."""
    critical = [x.title for x in review.failing() if x.severity is Severity.CRITICAL]
    if critical:
        names = list(dict.fromkeys(critical))
        more = f" and {len(names) - MOST_NAMED} more" if len(names) > MOST_NAMED else ""
        told = "; ".join(names[:MOST_NAMED])
        return f"DO NOT POWER UP. Critical findings of the review come first: {told}{more}."
    if review.verdict.released:
        return f"Review: released at {review.verdict.milestone}."
    return f"Review: held at {review.verdict.milestone}, nothing critical. See `assess`."


def expected(figure: Figure) -> str:
    """The band in words; what to state where there is none."""
    band = figure.band
    if band is None:
        return f"not stated: {_asked(figure.missing)}"
    if figure.kind == "at most":
        return f"at most {show(band.hi, figure.unit)}"
    if figure.kind == "at least":
        return f"at least {show(band.lo, figure.unit)}"
    return between(band, figure.unit)


def between(band: Band, unit: str) -> str:
    """Nominal value and its ends.

    >>> between(Band(0.0121, 0.0114, 0.0144), "A"), between(Band(2.0, 2.0, 2.0), "V")
    ('11.4 .. 14.4 mA (12.1)', 'about 2 V')
    """
    low, middle, high = (show(x, unit) for x in (band.lo, band.nominal, band.hi))
    if low == high:
        return f"about {middle}"
    first, _, name = low.rpartition(" ")
    if not all(text.endswith(f" {name}") for text in (middle, high)):
        return f"{low} .. {high} ({middle})"
    return f"{first} .. {high} ({middle.removesuffix(f' {name}')})"


def stop(figure: Figure) -> str:
    """Where to stop."""
    if figure.limit is not None:
        return f"{figure.stop} {show(figure.limit, figure.unit)}"
    return f"not stated: {_asked(figure.missing)}" if figure.band and figure.missing else ""


def blanks(figure: Figure) -> str:
    """Room for what was found, for each subject."""
    if figure.subjects == (PRODUCT,):
        return BLANK
    return " ".join(f"{subject} {BLANK}" for subject in figure.subjects)


def whose(step: SheetStep, figure: Figure) -> str:
    """What is read; of which channel where they differ."""
    same = sum(1 for other in step.figures if other.title == figure.title)
    return f"{figure.title} ({together(figure.subjects)})" if same > 1 else figure.title


def leaning(step: SheetStep) -> str:
    """What the numbers of a step assume, each once."""
    found: dict[str, Assumed] = {}
    for figure in step.figures:
        for item in figure.band.assumed if figure.band else ():
            if item.leaning != "absent" and item.text not in ("inf", "-inf"):
                found.setdefault(local_path(item.path), item)
    told = [f"{path} {item.text}" for path, item in list(found.items())[:FEW]]
    more = f" and {len(found) - FEW} more" if len(found) > FEW else ""
    return f"Assumed: {', '.join(told)}{more}." if told else ""


def lacking(step: SheetStep) -> str:
    """What the instructions of a step lack."""
    return f"Not stated: {_asked(step.missing)}." if step.missing else ""


def _asked(missing: Iterable[Missing]) -> str:
    names = list(dict.fromkeys(asked(item) for item in missing))
    more = f" and {len(names) - FEW} more" if len(names) > FEW else ""
    return ", ".join(names[:FEW]) + more
