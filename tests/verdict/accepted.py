"""The short table: where saying less may make a verdict milder, and why each is right.

What does not stand here is never accepted.  The milestone and the deviations of a file are
not among what is left out: they say how to judge, not what is judged.
"""

from fnmatch import fnmatchcase
from typing import NamedTuple

from .changes import Change

FIELD, SECTION, WHOLE, ANY = "field left out", "section left out", "[sn]*", "*"


class Accepted(NamedTuple):
    """check, change and path as patterns; becomes: the answer afterwards; why it is right."""

    check: str
    change: str
    path: str
    becomes: str
    why: str


NO_PROMISE = "a promise is judged against the design: where nothing is promised, none is broken"
NO_SUCH_PART = (
    "the part is optional and left out as a whole: another design, in which it cannot fail;"
    " what needs the part is asked by other checks"
)
ONE = "a count that is not mentioned is one: so the trade reads a drawing"
LISTED = (
    "an open item of a check that cannot be critical is listed at the prototype and holds at"
    " production; the reader sees it"
)
OWN_STATEMENT = "the finding is on the statement itself, or on two that contradict each other"

TABLE = (
    Accepted(ANY, SECTION, "channels", "no subject", "no channel: there is no amplifier to judge"),
    Accepted(ANY, SECTION, "channels.*", "*", "the channel as a whole: a smaller amplifier"),
    Accepted("value-outside-usual-range", ANY, ANY, "*", OWN_STATEMENT),
    Accepted("stated-value-contradicts", ANY, ANY, "*", OWN_STATEMENT),
    Accepted("rated-figures-agree", FIELD, "rated_*", "*", OWN_STATEMENT),
    Accepted("loudspeaker-network", FIELD, "rated_load", "*", OWN_STATEMENT),
    Accepted("loudspeaker-network", FIELD, "loudspeaker.z_rated", "*", OWN_STATEMENT),
    Accepted(ANY, ANY, "claims*", "*", NO_PROMISE),
    Accepted("blocking-capacitor-corner", FIELD, "band", "*", NO_PROMISE),
    Accepted("snubber-*", WHOLE, "output_stage.snubber", "not applicable", NO_SUCH_PART),
    Accepted("*-to-ground", WHOLE, "filter.c_ground", "not applicable", NO_SUCH_PART),
    Accepted(ANY, FIELD, "*parallel", "*", ONE),
    Accepted(ANY, ANY, ANY, "listed", LISTED),
)


def reason_for(check: str, change: Change, becomes: str) -> str:
    """Why a change may take an answer away, else nothing."""
    for row in TABLE:
        asked = zip((check, change.kind, change.path, becomes), row, strict=False)
        if all(fnmatchcase(text, pattern) for text, pattern in asked):
            return row.why
    return ""
