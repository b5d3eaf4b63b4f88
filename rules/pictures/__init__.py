"""Pictures of a design, one file each: a question, and the numbers that answer it."""

ORDER = (
    "voltages",
    "filter_response",
    "temperatures",
    "switching",
    "losses",
    "efficiency",
    "battery_in_bass",
    "rail_in_bass",
    "supply_currents",
    "peak_currents",
    "cone_excursion",
    "sound_level",
)
"""The modules in the order in which the pictures are shown."""
