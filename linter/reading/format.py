"""The first key of each kind of file, which names its format and version."""

VERSION = "1"
SPEC_KEY = "amplifier_spec"
DEVIATIONS_KEY = "amplifier_deviations"
MEASURED_KEY = "amplifier_measured"
HOUSE_KEY = "amplifier_house"
PARTS_KEY = "amplifier_parts"
SPEC_LINE = f"{SPEC_KEY}: {VERSION}"
