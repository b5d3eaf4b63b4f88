"""The short table: where saying less may make a verdict milder, and why each is right.

What does not stand here is never accepted.  The milestone and the deviations of a file are
not among what is left out: they say how to judge, not what is judged.
"""

from fnmatch import fnmatchcase
from typing import NamedTuple

from .changes import Change, Kind

FIELD: Kind = "field left out"
SECTION, WHOLE, ANY = "section left out", "[sn]*", "*"


class Accepted(NamedTuple):
    """Patterns; of checks and paths several, with spaces between; becomes: the answer after."""

    check: str
    change: str
    path: str
    becomes: str
    why: str


NO_PROMISE = "a promise is judged against the design: where nothing is promised, none is broken"
NO_SUCH_PART = (
    "the rating of a part that is not there is not at stake; what the part is for is asked by other"
    " checks: reverse-polarity, surge-against-stage, inrush-current, stored-voltage-service,"
    " dc-fault-power, filter-capacitor-present"
)
NO_RULE = (
    "a rule that is not claimed need not be kept: hearing-exposure-with-notice judges the level,"
    " and is major from 10 dB above the usual rule on"
)
OTHER = "piezo-voltage dc-fault-line"
VOICE_COIL = (
    "a loudspeaker that is no piezo transducer and hangs on no line has a voice coil, and is judged"
    " as one by rating, level and direct voltage"
)
RATINGS = (
    "snubber-* *-to-ground filter-capacitor-* bleeder-power inrush-energy surge-current"
    " reverse-polarity-* series-capacitor-voltage"
)
OF_PARTS = "output_stage.snubber filter* protection* loudspeaker*"
ONE = "a count that is not mentioned is one: so the trade reads a drawing"
LISTED = (
    "an open item of a check that cannot be critical is listed at the prototype and holds at"
    " production; the reader sees it"
)
OWN_STATEMENT = "the finding is on the statement itself, or on two that contradict each other"
OVER_THE_RANGE = (
    "over its whole usual range the value cannot fail: the stated one lay outside of it, which"
    " is a finding of its own"
)
NO_CONVERTER = (
    "a converter that is not mentioned is not there: the rail then is the source itself, and"
    " the two are compared"
)
NO_FUSE = "without a fuse something else must end a fault: unprotected-source-power asks, and holds"
NO_CONTACT = "a soldered lead has no contacts: lead, trace and fuse are judged by themselves"
NO_COIL = (
    "no loudspeaker belongs to the product: its own limits are nobody's; direct voltage, clipped"
    " power and level are judged with whatever gets connected"
)
TIGHTER = (
    "of two statements of one voltage the tighter counted; that they contradict each other is"
    " a finding of its own"
)
TWO_RATINGS = (
    "a source is rated by power or by current: the tighter one counted, and the other one is"
    " still stated"
)
OF_THE_LOAD = (
    "loudspeakers that contradict the rated load are a finding of their own; without their"
    " impedance the rated load tells it"
)
AT_100 = (
    "the core then is taken at 100 degC; an inductor that gets hotter is found by"
    " inductor-copper, which asks for the same rating"
)
AS_STATED = (
    "the lowest load that the spec states counts, not a dip below it: a published part with a"
    " trip of its own would fail else"
)
ASKED = "fuse-protects-connector trip-above-rated-power"
ONCE = (
    "a connector that is not described is asked for once, by connector-current, which holds; a"
    " trip that is not stated by trip-above-music"
)
TRAVEL = (
    "the travel of a cone is judged where its maker states one; power and level are judged"
    " without it"
)
NO_CHARGER = (
    "a product without a charger charges nothing: charger-stated asks how the pack is charged,"
    " and holds"
)
NO_CURVE = (
    "without the curve of the package a short burst cannot be judged; the same power without"
    " end, which is hotter, is"
)
NOT_IN_USE = "a use of the product that nobody mentions is not promised: so a reviewer reads it"
BY_USE = "discharge-in-cold carrier-in-radio-bands open-load-peaking*"
USES = "environment.ambient environment.am_receiver open_load"
INSIDE = "the dead time inside an integrated part is its maker's: the part's own distortion counts"

TWO_LEVELS = (
    "silent levels are taken as two, the worse case of every check but this one: three levels keep"
    " still at low level and distort more; not a hazard"
)

NO_EXCEPTION = (
    "the word lifts a limit; without it the limits of the chemistry hold, and cell-charge-voltage"
    " or charge-in-cold finds what goes beyond them"
)

LEAD_OF = "output_stage.topology output_stage.device.lead_max modulator.levels"
OF_THE_KIND = (
    "the length of a lead is judged by the kind of stage and filter, or by the part's own limit;"
    " what is not given is asked by checks that hold; emission is no hazard"
)
BY_LOSS_FACTOR = (
    "without a printed current a capacitor is judged by the loss factor of its dielectric, as"
    " capacitors of that size are printed; not a hazard"
)

NO_FAN = (
    "a fan that is not mentioned is not there: junction-at-rated-sine and"
    " touch-temperature-heatsink then judge the heatsink in still air themselves"
)

COUPLING = (
    "what is not given of the coupling is asked for, or found by its usual range, by"
    " input-coupling-corner alone: the low end of the band is lost there, and told there"
)

TABLE = (
    Accepted(ANY, SECTION, "channels", "no subject", "no channel: there is no amplifier to judge"),
    Accepted(ANY, SECTION, "channels.*", "*", "the channel as a whole: a smaller amplifier"),
    Accepted("value-outside-usual-range stated-value-contradicts", ANY, ANY, "*", OWN_STATEMENT),
    Accepted("stopped-fan-*", ANY, "thermal.heatsink*", "not applicable", NO_FAN),
    Accepted("loudspeaker-network", FIELD, "*", "*", OWN_STATEMENT),
    Accepted("driver-edge-current port-tuning", FIELD, "*t_edge *.port_length", "*", OWN_STATEMENT),
    Accepted("thermal-test-condition", FIELD, "signal.crest_factor", "meets", OWN_STATEMENT),
    Accepted(ANY, ANY, "claims*", "*", NO_PROMISE),
    Accepted(ANY, FIELD, "band load_range rated_* environment.ip_code", "*", NO_PROMISE),
    Accepted("bass-response*", FIELD, "signal.c_in signal.r_in", "meets", COUPLING),
    Accepted(BY_USE, FIELD, USES, "*", NOT_IN_USE),
    Accepted("hearing-exposure", FIELD, "safety.exposure_rule", "not applicable", NO_RULE),
    Accepted(OTHER, SECTION, "loudspeaker.piezo line", "not applicable", VOICE_COIL),
    Accepted(RATINGS, WHOLE, OF_PARTS, "not applicable", NO_SUCH_PART),
    Accepted("*excursion*", ANY, "loudspeaker*", "not applicable", TRAVEL),
    Accepted(ASKED, ANY, "wiring.connector *over_current*", "not applicable", ONCE),
    Accepted(ANY, "none", "wiring.connector", "not applicable", NO_CONTACT),
    Accepted("charge-*", ANY, "battery.charger*", "*", NO_CHARGER),
    Accepted("cell-type-named", ANY, "battery.cell*", "not applicable", NO_EXCEPTION),
    Accepted("burst-temperature", SECTION, "output_stage.device.foster", "*", NO_CURVE),
    Accepted("fuse-*", ANY, "protection.fuse", "*", NO_FUSE),
    Accepted("carrier-heats-* pumping-against-*", "none", "loudspeaker", "[nm]*", NO_COIL),
    Accepted(ANY, FIELD, "supply.v_source", "*", TIGHTER),
    Accepted("source-*", FIELD, "supply.p_max", "meets", TWO_RATINGS),
    Accepted("loudspeaker-clipped-power", FIELD, "loudspeaker.z_rated", "minor", OF_THE_LOAD),
    Accepted("filter-capacitor-heating*", FIELD, "filter.c_*.i_rated", "meets", BY_LOSS_FACTOR),
    Accepted("inductor-saturation", FIELD, "filter.inductor.i_rms", "meets", AT_100),
    Accepted("trip-above-music", FIELD, "loudspeaker.z_min", "meets", AS_STATED),
    Accepted(ANY, FIELD, "supply.converter", "*", NO_CONVERTER),
    Accepted("dead-time-*", FIELD, "gate_drive.dead_time", "not applicable", INSIDE),
    Accepted(ANY, FIELD, "*parallel", "*", ONE),
    Accepted(ANY, ANY, ANY, "met?whatever*", OVER_THE_RANGE),
    Accepted("dead-time-distortion", FIELD, "modulator.levels", "*", TWO_LEVELS),
    Accepted("loudspeaker-lead-length", FIELD, LEAD_OF, "*", OF_THE_KIND),
    Accepted(ANY, ANY, ANY, "listed", LISTED),
)


def reason_for(check: str, change: Change, becomes: str) -> str:
    """Why a change may take an answer away, else nothing.

    Of several fields at once, one for which it may is enough.
    """
    if change.kind == "fields left out":
        alone = (Change(FIELD, path, {}) for path in change.path.split())
        return next(filter(None, (reason_for(check, one, becomes) for one in alone)), "")
    for row in TABLE:
        whole = fnmatchcase(change.kind, row.change) and fnmatchcase(becomes, row.becomes)
        if whole and _any_of(row.check, check) and _any_of(row.path, change.path):
            return row.why
    return ""


def _any_of(patterns: str, text: str) -> bool:
    return any(fnmatchcase(text, pattern) for pattern in patterns.split())
