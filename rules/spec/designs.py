"""The designs that a field may concern, each in words and by the words of the spec."""

from ...linter.declare import Designs

BATTERY = Designs("battery-powered designs", ({"supply.source": ("battery",)},))
LEAD_ACID = Designs(
    "lead-acid batteries",
    (
        {
            "supply.source": ("battery",),
            "battery.chemistry": ("lead-acid-agm", "lead-acid-flooded"),
        },
    ),
)
CONVERTER = Designs(
    "designs with a converter ahead of the rail",
    (
        {
            "supply.source": ("battery", "dc-source"),
            "supply.converter": ("step-up", "step-down", "step-up-down"),
        },
    ),
)
NOT_THE_PACK = Designs(
    "rails that are not the battery itself",
    (
        {"supply.source": ("dc-source", "mains-converter")},
        {"supply.converter": ("step-up", "step-down", "step-up-down")},
    ),
)
SEVERAL_CLOCKS = Designs(
    "several channels or a converter",
    (
        {"channels": ("several",)},
        {"supply.converter": ("step-up", "step-down", "step-up-down")},
        {"supply.source": ("mains-converter",)},
    ),
)
MAINS_OR_HIGH = Designs(
    "mains converters, direct sources above 60 V",
    ({"supply.source": ("mains-converter", "dc-source")},),
)
VEHICLE = Designs("vehicles", ({"environment.place": ("vehicle",)},))
DISCRETE = Designs("discrete devices", ({"output_stage.devices": ("discrete",)},))
INTEGRATED = Designs("integrated stages", ({"output_stage.devices": ("integrated",)},))
FULL_BRIDGE = Designs("full bridges", ({"output_stage.topology": ("full-bridge",)},))
SPLIT_HALF = Designs(
    "half bridges on a split supply",
    ({"output_stage.topology": ("half-bridge",), "supply.rails": ("split",)},),
)
SINGLE_HALF = Designs(
    "half bridges on a single supply",
    ({"output_stage.topology": ("half-bridge",), "supply.rails": ("single",)},),
)
LC = Designs("LC filters", ({"filter.type": ("lc",)},))
BEAD = Designs("bead filters", ({"filter.type": ("bead",)},))
UNFILTERED = Designs(
    "bead filters and filterless stages", ({"filter.type": ("bead", "filterless")},)
)
SAMPLED = Designs(
    "natural and uniform sampling",
    ({"modulator.type": ("natural-sampling", "uniform-sampling")},),
)
UNIFORM = Designs("uniform sampling", ({"modulator.type": ("uniform-sampling",)},))
FEEDBACK = Designs(
    "designs with feedback", ({"modulator.feedback": ("before-filter", "after-filter")},)
)
VENTED = Designs("vented enclosures", ({"loudspeaker.enclosure.type": ("vented",)},))
MEASURED_TRAVEL = Designs(
    "horns, and drivers behind a capacitor",
    (
        {"loudspeaker.enclosure.type": ("horn",)},
        {"loudspeaker.c_series": ("fitted",)},
        {"filter.c_block": ("fitted",)},
    ),
)
PASSIVE_RADIATOR = Designs(
    "passive radiators", ({"loudspeaker.enclosure.type": ("passive-radiator",)},)
)
NO_LOUDSPEAKER = Designs("amplifiers without a loudspeaker", ({"loudspeaker": ("none",)},))
NO_HEATSINK = Designs("packages without a heatsink", ({"thermal.heatsink": ("none",)},))
