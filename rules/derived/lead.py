"""Loudspeaker lead that a stage without a full filter may drive."""

from ...linter.check import Assumption, Constant, Derived, Input, Source, Way
from .ways import as_stated

SHORT = Source("TPA2011D1 data sheet SLOS626A", "p. 16: without a filter about 100 mm")
BEADED = Source(
    "TPA3111D1 data sheet SLOS618E",
    "p. 16: twisted leads of up to 125 cm behind beads pass FCC class B; half of it is taken",
)

DERIVED = (
    Derived(
        "lead_allowed",
        "m",
        "channel",
        "longest loudspeaker lead without a full filter, one way",
        ways=(
            Way(
                as_stated,
                {"value": Input("output_stage.device.lead_max")},
                "value",
            ),
            Way(
                as_stated,
                {"value": Constant("0.10 m", "no filter", SHORT)},
                "value",
                when={"lead_filter": "filterless"},
                assumes=Assumption(None, "neutral", SHORT),
            ),
            Way(
                as_stated,
                {"value": Constant("0.63 m", "ferrite bead", BEADED)},
                "value",
                when={"lead_filter": "bead"},
                assumes=Assumption(None, "neutral", BEADED),
            ),
        ),
        sources=(SHORT, BEADED),
    ),
)
