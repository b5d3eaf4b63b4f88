"""The words of a bring-up sheet that its reports share: expected, stop, what is not stated."""

from collections import Counter
from collections.abc import Iterable

from ..check import Caution
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
NOTE = (
    "Bands are what the tolerances of the spec give; add the error of your instrument. A value"
    " outside its band is a question, a value at the stop ends the step: switch off, find the"
    " cause."
)
UNSURE = ("neutral", "adverse")
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
        return _asked(figure.missing)
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
    if figure.limit is not None and not figure.harms:
        side = "at most" if figure.stop == "above" else "at least"
        return f"wanted: {side} {show(figure.limit, figure.unit)}"
    if figure.limit is not None:
        return f"{figure.stop} {show(figure.limit, figure.unit)}"
    return _asked(figure.missing) if figure.band and figure.missing else ""


def blanks(figure: Figure) -> str:
    """Room for what was found, for each subject."""
    if figure.subjects == (PRODUCT,):
        return BLANK
    return " ".join(f"{subject}:{BLANK}" for subject in figure.subjects)


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
    out = [path for path, item in found.items() if item.leaning == "floor"]
    told = [f"{path} {item.text}" for path, item in found.items() if path not in out]
    return " ".join(
        f"{lead}: {_few(names)}."
        for lead, names in (("Assumed", told), ("Left out, so it can only be worse", out))
        if names
    )


def beyond(step: SheetStep) -> str:
    """The figures that the model itself expects beyond their stop, or short of what is wanted.

    What may only be owed to an assumption is not told.
    """
    found = [figure for figure in step.figures if _is_beyond(figure)]
    harm = "; ".join(dict.fromkeys(x.title for x in found if x.harms))
    short = "; ".join(dict.fromkeys(x.title for x in found if not x.harms))
    return " ".join(
        f"{lead}: {told}."
        for lead, told in (
            ("DO NOT MAKE THIS STEP, expected beyond its stop", harm),
            ("Not expected as wanted", short),
        )
        if told
    )


def throughout(steps: tuple[SheetStep, ...]) -> tuple[Caution, ...]:
    """The cautions of most steps: told once, ahead of them all."""
    counted = Counter(caution for step in steps for caution in step.cautions)
    return tuple(x for x, number in counted.items() if number > len(steps) / 2)


def _is_beyond(figure: Figure) -> bool:
    if figure.band is None or figure.limit is None:
        return False
    if any(x.placeholder or x.leaning in UNSURE for x in figure.band.assumed):
        return False
    excess = figure.band.nominal - figure.limit
    slack = 1e-9 * abs(figure.limit)
    return excess > slack if figure.stop == "above" else excess < -slack


def lacking(step: SheetStep) -> str:
    """What the instructions of a step lack."""
    text = _asked(step.missing)
    return f"{text[0].upper()}{text[1:]}." if step.missing else ""


def _asked(missing: Iterable[Missing]) -> str:
    names = list(dict.fromkeys(asked(item) for item in missing))
    return f"not stated: {_few(names)}" if names else "cannot be computed"


def _few(names: list[str]) -> str:
    more = f" and {len(names) - FEW} more" if len(names) > FEW else ""
    return ", ".join(names[:FEW]) + more
