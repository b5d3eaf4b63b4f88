"""The first key of each kind of file, which names its format and version."""

VERSION = "1"
SPEC_KEY = "amplifier_spec"
DEVIATIONS_KEY = "amplifier_deviations"
MEASURED_KEY = "amplifier_measured"
HOUSE_KEY = "amplifier_house"
PARTS_KEY = "amplifier_parts"
SPEC_LINE = f"{SPEC_KEY}: {VERSION}"

KINDS = {
    SPEC_KEY: ("a spec", "ampreview assess FILE"),
    DEVIATIONS_KEY: ("a list of deviations", "ampreview assess --deviations FILE SPEC"),
    MEASURED_KEY: ("a list of measurements", "ampreview assess --measured FILE SPEC"),
    HOUSE_KEY: (
        "a house file",
        "ampreview assess --house FILE SPEC, or in a folder above the spec",
    ),
    PARTS_KEY: (
        "a parts file",
        "ampreview assess --parts FILE SPEC, or in a folder above the spec",
    ),
}
"""What each kind is called, and how it is read."""
