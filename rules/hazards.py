"""Every hazard that a check can warn of, once: signal word and sentence.

The signal words are those of ANSI Z535.6: DANGER where death or serious injury will follow if
the hazard is not avoided, WARNING where it can, CAUTION for minor or moderate injury, NOTICE for
damage to property alone.  The same hazard has the same word and sentence in every check; what to
do about it in the case at hand may follow, by ``also``.  Which hazard has which word is common
practice, no source.
"""

from dataclasses import replace

from ..linter.check import Caution

MAINS = Caution(
    "DANGER",
    "Mains voltage kills. Use a certified supply, follow the local electrical code, and leave the"
    " work on mains parts to licensed persons.",
)
INSULATION = Caution(
    "WARNING",
    "Functional insulation keeps the amplifier working and protects nobody. Safety insulation, of"
    " mains above all, is outside this review and a matter of licensed practice.",
)
SHOCK = Caution(
    "WARNING",
    "Rails above 60 V and audio above 30 V rms can shock and injure. Work on them only switched"
    " off, discharged and measured, as local codes and licensed practice ask.",
)
STORED_VOLTAGE = Caution(
    "WARNING",
    "Capacitors stay charged after the plug is pulled and in a dead amplifier. Discharge them"
    " through a resistor and measure before you touch.",
)
ARC = Caution(
    "CAUTION",
    "A tool, ring or plug on charged capacitors or a pack arcs and throws hot metal at any"
    " voltage. Take off rings, wear eye protection.",
)
CELLS = Caution(
    "WARNING",
    "Cells beyond their limits can vent and burn, also days later. Keep to the cell maker's data,"
    " fit a protection circuit and a fuse, and test on a surface that does not burn.",
)
CHARGING = Caution(
    "WARNING",
    "Cells that are charged too high, too fast, too cold, too hot or after a deep discharge can"
    " vent and burn. Charge them by their own data sheet, and never unattended in tests.",
)
GAS = Caution(
    "WARNING",
    "Lead-acid and nickel cells give off hydrogen on charge, which explodes. Charge in open air,"
    " away from flames and sparks, and follow the local code.",
)
CONDUCTOR = Caution(
    "WARNING",
    "An overloaded lead, trace or connector can set its surroundings on fire. Fuse it at the"
    " source, for its copper; wiring of buildings and vehicles is licensed work.",
)
FUSE = Caution(
    "WARNING",
    "A fuse beyond its breaking rating bursts, or goes on burning. Never fit a bigger one where"
    " one opens: find the cause.",
)
COIL = Caution(
    "WARNING",
    "A voice coil on direct voltage or beyond its rating glows and can set the loudspeaker on"
    " fire. Power up first on a resistor, and run no test unattended.",
)
LINE_TRANSFORMER = Caution(
    "WARNING",
    "A transformer on direct voltage saturates, overheats and can set what is around it on fire."
    " Power up first on a resistor, and run no test unattended.",
)
CAPACITOR = Caution(
    "WARNING",
    "A capacitor that is beyond its voltage, reversed or overheated can burst and throw hot"
    " electrolyte. Keep the face away and do not power the board before it is put right.",
)
RESISTOR = Caution(
    "WARNING",
    "A resistor above its rating burns skin and can set its surroundings on fire. Let it cool and"
    " measure what it discharges before touching it.",
)
HOT_SURFACE = Caution(
    "WARNING",
    "Hot surfaces burn skin, after switching off too. Let them cool; a qualified person judges"
    " conformity with the standard that applies where the product is sold.",
)
RUNAWAY = Caution(
    "WARNING",
    "Heat that nothing ends can set a stage on fire. Run it up slowly, watched, on a supply with a"
    " current limit.",
)
SHORTED_STAGE = Caution(
    "WARNING",
    "A stage or converter that has failed short can burn. Fuse it at the source.",
)
FIRST_POWER_UP = Caution(
    "WARNING",
    "Power parts that fail can burst and throw hot fragments. Power up first on a current-limited"
    " supply at a low rail, with the board covered and eye protection on.",
)
HEARING = Caution(
    "WARNING",
    "Long listening above 85 dB(A) can damage hearing for good. Keep the distance, limit the"
    " level, wear hearing protection in tests, and follow the local rules on noise.",
)
TRANSPORT = Caution(
    "WARNING",
    "Untested or damaged lithium packs can burn in transit. Ship them only as the carrier and the"
    " dangerous-goods rules allow.",
)
LOUDSPEAKER_LOST = Caution(
    "NOTICE",
    "A test at high power can destroy the loudspeaker. Test into a dummy load or at a low level"
    " first.",
)
STAGE_LOST = Caution(
    "NOTICE",
    "A part beyond its rating can fail short and put the supply on the output. Test with the limit"
    " of the supply current set low, without a loudspeaker.",
)

HAZARDS: tuple[Caution, ...] = tuple(x for x in globals().values() if isinstance(x, Caution))


def also(hazard: Caution, text: str) -> Caution:
    """A hazard with what to do about it in the case at hand."""
    return replace(hazard, text=f"{hazard.text} {text}")
