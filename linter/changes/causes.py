"""What the failing answers of a review come from, told in the order in which one would act.

Doubtful values come first, with all that hangs on them; then the fewest changes that end the
most; what is left is told by part.  Every failing answer stands in exactly one cause.
"""

from collections.abc import Iterator

from ..declare import local_path
from ..evaluation.engine import Assessment
from ..finding import Cause, Remedy
from ..judging.review import Review
from .cause_text import headline, note, parts
from .combine import combined
from .cover import Offer, chosen, concerns
from .faults import Fault, faults_of
from .parts import Story, gathered, seat
from .shared import shared
from .solve import NUMBERS
from .suspects import suspects
from .trial import Trials

MOST_ALTERNATIVES = 2


def causes_of(review: Review, run: Assessment | None = None) -> tuple[Cause, ...]:
    """The causes of what fails in a review with remedies; each failing answer in one of them.

    run: of the spec, where there is one; what is tried for remedies is not run again with it.
    """
    if review.causes is not None:
        return review.causes
    faults, trials = faults_of(review.failing()), Trials(review, run)
    stories = gathered(_stories(faults, trials), review)
    return tuple(_cause(story, trials) for story in sorted(stories, key=_urgency))


def _stories(faults: tuple[Fault, ...], trials: Trials) -> list[Story]:
    """Each fault in one story: of a suspect, of a change, or of its own."""
    review = trials.review
    told: list[Story] = []
    left = list(faults)
    for suspect in suspects(faults, trials):
        about = frozenset({local_path(suspect.path)})
        told.append(Story("suspect", list(suspect.explains), about, suspect=suspect))
        left = [x for x in left if x not in suspect.explains]
    for way, ended in shared(chosen(left, trials), trials):
        left = [x for x in left if x not in ended]
        about = frozenset(way.turns) or frozenset({seat(ended[0], trials.levers(ended[0]), review)})
        told.append(Story("change" if way.turns else "part", ended, about, [way]))
    for fault in left:
        about = frozenset({seat(fault, trials.levers(fault), review)})
        told.append(Story("part", [fault], about))
    return told


def _urgency(story: Story) -> tuple[bool, int, bool, int, int]:
    """A suspect that explains something grave first, then by gravity, what kills, and by number."""
    grave = [x for x in story.grave if not x.is_doubt]
    first = not (story.suspect and grave)
    cautions = [y for x in story.grave for item in x.findings for y in item.advice.cautions]
    kills = any(caution.signal == "DANGER" for caution in cautions)
    return first, story.rank, not kills, -len(story.grave), story.first.number


def _cause(story: Story, trials: Trials) -> Cause:
    review = trials.review
    findings = tuple(item for x in _in_order(story) for item in x.findings)
    offers = combined(_together(story), story.faults, trials)
    remedies = tuple(offer.remedy for offer in offers)
    met = {label for offer in offers for label in offer.meets}
    return Cause(
        story.kind,
        headline(story, review),
        findings,
        remedies,
        note(story, story.first.labels <= met),
        _otherwise(story, remedies, review),
        parts(story, review),
    )


def _in_order(story: Story) -> list[Fault]:
    """The doubtful value first, then the gravest; minor ones last."""
    doubt = story.suspect.doubt if story.suspect else None
    return sorted(story.faults, key=lambda x: (x is not doubt, x.first.rank, x.number))


def _together(story: Story) -> list[Offer]:
    """What to do, one after the other: for each change its best remedy, until all is met.

    Where channels are written apart, each has a remedy of its own.  A minor finding makes no
    change larger.  What nothing ends has what eases it.
    """
    labels = {label for fault in story.grave or story.faults for label in fault.labels}
    left, found = set(labels), [*_right(story)]
    for offer in found:
        left -= offer.meets
    for way in story.ways:
        pool = list(way.offers)
        while useful := [x for x in pool if x.meets & left]:
            best = min(useful, key=lambda x: (-len(x.meets & left), concerns(x.remedy)))
            found.append(best)
            pool = [x for x in pool if not _paths(x) & _paths(best)]
            left -= best.meets
        found += [x for x in pool if left.intersection(x.remedy.eased)][:1]
    return sorted(found, key=lambda x: -len(x.meets & labels))


def _paths(offer: Offer) -> set[str]:
    """The leaves that an offer changes."""
    return {path for path, _ in offer.remedy.changes}


def _right(story: Story) -> Iterator[Offer]:
    """The doubtful value put right."""
    for item in story.suspect.doubt.findings if story.suspect else ():
        for remedy in item.advice.remedies[:1]:
            yield Offer(remedy, {*remedy.cured, f"{item.check} ({item.subject})"})
            return


def _otherwise(story: Story, remedies: tuple[Remedy, ...], review: Review) -> tuple[Remedy, ...]:
    """Other changes that end the gravest fault; the same value turned otherwise is none."""
    taken = [_turned(x, review) for x in remedies]
    found = []
    for remedy in story.first.first.advice.remedies:
        if _turned(remedy, review) not in taken:
            taken.append(_turned(remedy, review))
            found.append(remedy)
    return tuple(found)[:MOST_ALTERNATIVES]


def _turned(remedy: Remedy, review: Review) -> frozenset[tuple[str, str]]:
    """The leaves that a remedy turns; of words the words as well."""
    fields = review.spec.schema.field_of
    return frozenset(
        (local_path(path), "" if fields(path).kind in NUMBERS else text)
        for path, text in remedy.changes
    )
