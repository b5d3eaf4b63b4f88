"""Loudspeaker lead that a stage without a full filter may drive."""

from ...linter.check import Assumption, Constant, Derived, Input, Source, Way
from .ways import as_stated

SHORT = Source("TPA2011D1 data sheet SLOS626A", "p. 16: without a filter about 100 mm")
BEADED = Source(
    "TPA3001D1 data sheet SLOS398E, p. 18, and TPA3111D1 data sheet SLOS618E, p. 16",
    "11 inches, and twisted 125 cm, behind ferrite beads: their geometric mean",
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
                when={"filter_kind": "filterless"},
                assumes=Assumption(None, "neutral", SHORT),
            ),
            Way(
                as_stated,
                {"value": Constant("0.59 m", "ferrite bead", BEADED)},
                "value",
                when={"filter_kind": "bead"},
                assumes=Assumption(None, "neutral", BEADED),
            ),
        ),
        sources=(SHORT, BEADED),
    ),
)
