"""What the paperwork of a product promises, and the checks that tell whether it is kept.

A promise is written here once, with the fields that state it and the checks that judge it.  One
with ``allows`` gives the number that may be promised, at which its figure would just be even:
``claim / figure`` of a share, ``claim + figure`` of a distance in decibels.  Tests hold each
against the check's own figure.  A check that can only spoil a promise does not prove it.
"""

from ..linter.check import Promise, PromiseCheck
from .derived.promised import above, beyond, filled, filled_in_square, shared, shared_in_square

JUDGED_BY = ("rated_power", "z_load", "v_rail_high")
"""What every review starts from, by fields and quantities: without it nothing is judged."""


def spoiled_by(checks: str) -> tuple[PromiseCheck, ...]:
    """Checks in one text that can spoil a promise and give no number for it."""
    return tuple(map(PromiseCheck, checks.split()))


POWER = Promise(
    "power per channel",
    "rated_power",
    (
        ("rated_power", "{}"),
        ("rated_load", "into {}"),
        ("rated_thd", "at {}"),
        ("rated_duration", "for {}"),
        ("claims.rated_supply", "from {}"),
    ),
    (
        PromiseCheck("power-above-rail", shared, "from the full rail"),
        PromiseCheck("source-below-rated-power"),
        PromiseCheck("output-power", shared, proves=True),
        PromiseCheck("minimum-pulse-vs-modulation", shared_in_square),
        PromiseCheck("rail-trough", shared_in_square, "at the trough of the rail"),
        PromiseCheck("trip-above-rated-power", filled_in_square, "at the over-current trip"),
        *spoiled_by(
            "source-capability limiter-below-rated-crest limiter-below-rated-power fuse-current"
            " over-voltage-trip-window under-voltage-trip-window pumping-against-trip source-crest"
            " pack-collapse pack-cutoff-under-load pack-voltage-under-load burst-temperature"
            " protection-trip-above-music step-down-above-source supply-below-part-limit"
            " input-sensitivity input-stage-headroom"
        ),
    ),
)
EFFICIENCY = Promise(
    "efficiency",
    "claims.efficiency",
    (("claims.efficiency", "{}"),),
    (
        PromiseCheck("efficiency-beyond-resistance", beyond, "with cold resistances alone"),
        PromiseCheck("efficiency-plausibility", beyond, "with the known losses", proves=True),
        PromiseCheck("efficiency-of-class-d"),
    ),
)
RUN_TIME = Promise(
    "run time",
    "claims.run_time",
    (("claims.run_time", "{}"),),
    (
        PromiseCheck("run-time-best-case", filled, "without any loss"),
        PromiseCheck("run-time", filled, proves=True),
        PromiseCheck("capacity-at-high-rate", filled, "at the working current"),
        PromiseCheck("run-time-in-cold", filled, "in the cold"),
        PromiseCheck("charger-fills-cells"),
    ),
)
LEVEL = Promise(
    "sound level",
    "claims.sound_level",
    (("claims.sound_level", "{}"), ("claims.sound_distance", "at {}")),
    (
        PromiseCheck("target-sound-level", above, proves=True),
        PromiseCheck("level-beyond-drivers", above, "at the rating of the loudspeakers"),
        PromiseCheck("thermal-compression", above, "with hot voice coils"),
        PromiseCheck("low-frequency-output", above, "at the low end of the band"),
        PromiseCheck("sound-level-without-loudspeaker"),
    ),
)
DISTORTION = Promise(
    "distortion and noise",
    "claims.thd",
    (("claims.thd", "{}"),),
    (
        PromiseCheck("dead-time-distortion", filled, "by dead time", proves=True),
        PromiseCheck("sampling-type-distortion", filled, "by sampling alone"),
        PromiseCheck("supply-rejection", filled, "by the supply's ripple alone"),
        *spoiled_by("carrier-slope-limit loop-crossover-vs-carrier loop-phase-margin"),
    ),
)
NOISE = Promise(
    "noise",
    "claims.noise",
    (("claims.noise", "{}"),),
    (
        PromiseCheck("edge-jitter-noise", filled, "by jitter of the edges alone"),
        PromiseCheck("timer-resolution", filled, "by the clock's steps alone"),
    ),
    unproven="needs a measurement",
)
RESPONSE = Promise(
    "frequency range",
    "claims.response",
    (("band", "{}"), ("claims.response", "within {}")),
    (
        PromiseCheck("treble-response", filled, "deviation at the terminals", proves=True),
        PromiseCheck("treble-response-loudspeaker", filled, "with the voice coil"),
        PromiseCheck("treble-response-unclaimed", proves=True),
        PromiseCheck("bass-response", filled, "of bass taken by capacitors"),
        PromiseCheck("box-response", above, "behind box and high-pass, no equaliser counted"),
        PromiseCheck("high-pass-response", above, "behind the high-pass, with 3 dB of box lift"),
        *spoiled_by(
            "bass-response-unclaimed blocking-capacitor-corner input-coupling-corner"
            " dc-detector-bass high-pass-in-band low-frequency-output"
            " treble-response-loudspeaker-unclaimed"
        ),
    ),
    unproven="needs a measurement",
)
LOADS = Promise(
    "range of loads",
    "load_range",
    (("load_range", "{}"),),
    (
        PromiseCheck("treble-response", proves=True),
        PromiseCheck("treble-response-unclaimed", proves=True),
        *spoiled_by(
            "filter-damping filter-damping-two-sections loudspeaker-minimum-impedance"
            " trip-above-music trip-above-rated-power"
        ),
    ),
)
OPEN_LOAD = Promise(
    "use without a load",
    "open_load",
    (("open_load", "{}"),),
    (
        PromiseCheck("open-load-peaking", proves=True),
        PromiseCheck("open-load-peaking-two-sections", proves=True),
    ),
)
AMBIENT = Promise(
    "ambient",
    "environment.ambient",
    (("environment.ambient", "{}"),),
    (
        PromiseCheck(
            "junction-temperature-margin", says="to the limit of the junction", proves=True
        ),
        *spoiled_by(
            "thermal-runaway burst-temperature enclosure-air gate-supply-regulator"
            " over-temperature-trip-in-use discharge-in-cold discharge-in-heat"
        ),
    ),
)
ALTITUDE = Promise(
    "altitude",
    "environment.altitude",
    (("environment.altitude", "{}"),),
    (PromiseCheck("clearance-and-creepage", proves=True),),
    unproven="needs the spacing of the conductors",
)
HEAT = Promise(
    "heat",
    "claims.heat",
    (("claims.heat", "{}"),),
    (PromiseCheck("stated-heat", shared, "by the losses", proves=True),),
)
LIFE = Promise(
    "life",
    "claims.life",
    (("claims.life", "{}"),),
    (
        PromiseCheck("capacitor-life", filled, "by the bulk capacitors", proves=True),
        *spoiled_by(
            "bulk-capacitor-voltage pumping-against-capacitor bulk-ripple-current enclosure-air"
            " blocking-capacitor-stress blocking-capacitor-current"
        ),
    ),
)
SHELF_TIME = Promise(
    "shelf time",
    "claims.shelf_time",
    (("claims.shelf_time", "{}"),),
    (PromiseCheck("shelf-time", filled, proves=True),),
)
OVER_CURRENT = Promise(
    "over-current protection",
    "output_stage.over_current",
    (("output_stage.over_current", "{}"),),
    (
        PromiseCheck("trip-below-destruction", says="of the pulsed rating", proves=True),
        *spoiled_by(
            "short-circuit-energy short-circuit-heating trip-against-saturation"
            " trip-above-music trip-above-rated-power short-circuit-current-rise"
            " part-least-inductance"
        ),
    ),
    unproven="needs the part's data sheet or a test",
)
DC_PROTECTION = Promise(
    "loudspeaker protection",
    "protection.dc_detector",
    (("protection.dc_detector", "{}"),),
    (
        PromiseCheck("dc-detector-delay", says="after direct voltage comes up", proves=True),
        *spoiled_by(
            "dc-detector-threshold dc-detector-bass dc-detector-offset dc-relay-breaking"
            " independent-disconnect dc-fault-one-safeguard dc-fault-line"
        ),
    ),
)
OVER_TEMPERATURE = Promise(
    "thermal protection",
    "protection.over_temperature",
    (("protection.over_temperature", "{}"),),
    (
        PromiseCheck("over-temperature-trip", says="to the limit of the junction", proves=True),
        *spoiled_by("over-temperature-sensor over-temperature-trip-in-use"),
    ),
    unproven="needs the part's data sheet or a test",
)
POLARITY = Promise(
    "reverse polarity",
    "protection.reverse_polarity",
    (("protection.reverse_polarity", "{}"),),
    (
        PromiseCheck("reverse-polarity", proves=True),
        *spoiled_by("reverse-polarity-drain reverse-polarity-gate"),
    ),
)
STANDARDS = Promise(
    "standards",
    "claims.standards",
    (("claims.markets", "{}"), ("claims.standards", "citing {}")),
    (
        PromiseCheck("withdrawn-standards", refutes=False),
        PromiseCheck("safety-standard-cited", proves=True, refutes=False),
        PromiseCheck("emission-standard-cited", refutes=False),
        PromiseCheck("radio-standard-cited", refutes=False),
        PromiseCheck("lithium-transport-cited", refutes=False),
        PromiseCheck("mains-barrier"),
        PromiseCheck("shock-class-rails", refutes=False),
        PromiseCheck("shock-class-outputs", refutes=False),
        PromiseCheck("shock-class-outputs-two", refutes=False),
        PromiseCheck("stored-voltage-accessible", refutes=False),
        PromiseCheck("touch-temperature-heatsink", refutes=False),
        PromiseCheck("touch-temperature-enclosure", refutes=False),
        PromiseCheck("fire-power-class", refutes=False),
    ),
)
EMISSION = Promise(
    "emission class",
    "claims.emission_class",
    (("claims.emission_class", "{}"),),
    (
        PromiseCheck("emission-at-30-mhz", says="of the limit at 30 MHz"),
        PromiseCheck("emission-class"),
        PromiseCheck("loudspeaker-lead-length"),
    ),
    unproven="needs a measurement",
)
AIR_TRAVEL = Promise(
    "air travel",
    "claims.air_travel",
    (("claims.air_travel", "{}"),),
    (PromiseCheck("transport-watt-hours", says="in one pack", proves=True),),
)
ENCLOSURE = Promise(
    "enclosure",
    "environment.ip_code",
    (("environment.ip_code", "{}"),),
    (PromiseCheck("ip-code-format", refutes=False), PromiseCheck("ingress-and-vents")),
    unproven="needs a test of the enclosure",
)
PROMISES = (
    POWER,
    EFFICIENCY,
    RUN_TIME,
    LEVEL,
    DISTORTION,
    NOISE,
    RESPONSE,
    LOADS,
    OPEN_LOAD,
    AMBIENT,
    ALTITUDE,
    HEAT,
    LIFE,
    SHELF_TIME,
    OVER_CURRENT,
    DC_PROTECTION,
    OVER_TEMPERATURE,
    POLARITY,
    STANDARDS,
    EMISSION,
    AIR_TRAVEL,
    ENCLOSURE,
)
