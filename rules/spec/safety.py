"""Who comes near the product, and what he or she may touch and hear."""

from typing import ClassVar

from ...linter.check import quoted
from ...linter.declare import Nature, Section, Value, absent, adverse, flag, quantity, usually, word

RULES = ("niosh", "osha", "eu-2003-10", "who-itu-adult", "who-itu-child")


class Safety(Section):
    """Users, access, terminals, enclosure, hearing."""

    nature: ClassVar[Nature] = "use"

    users: str | None = word(
        ("ordinary", "instructed", "skilled"),
        "who may touch it, in the words of IEC 62368-1",
        default=adverse("ordinary"),
    )
    rail_access: str | None = word(
        ("enclosed", "shrouded", "bare"),
        "how the rails are protected from touch",
        nature="topology",
    )
    output_terminals: str | None = word(
        ("internal", "untouchable", "insulated", "bare"),
        "how the loudspeaker terminals are protected from touch",
        nature="topology",
    )
    fire_enclosure: str | None = flag("the enclosure is made to contain a fire", nature="part")
    hearing_notice: str | None = flag(
        "the manual or the product carries a notice about hearing", nature="part"
    )
    dc_fault_test: str | None = flag(
        "each kind of loudspeaker was run on the direct voltage of a shorted switch, and nothing"
        " burned (single-fault test)",
        default=absent("no"),
        nature="outcome",
    )
    discharge_wait: Value | None = quantity(
        "s",
        "time after switch-off at which inner parts may be touched",
        "0.5 .. 300 s",
        default=usually("2 s", quoted("IEC 62368-1 as quoted in test reports", "5.5.2.2")),
        example="2 s",
        nature="setting",
    )
    nearest_listener: Value | None = quantity(
        "m",
        "distance of the nearest listener's ear from a loudspeaker",
        "0.1 .. 90 m",
        default=usually("1 m"),
        example="1 m",
    )
    exposure_time: Value | None = quantity(
        "h", "time near the loudspeaker a day", "0.1 .. 24 h", example="3 h"
    )
    exposure_rule: str | None = word(
        RULES, "rule for the level at the ear", default=usually("niosh")
    )
