"""The ladder of peak currents of a channel: crest of the music, trip, saturation, destruction."""

from ...linter.check import Input
from ...linter.picture import Amount, Row, Scale, Shown
from .parts import read_of, share, shown

LC = {"filter_kind": "lc"}

PICTURE = Scale(
    title="Do peak currents stay below trip, saturation and pulsed rating?",
    each="channel",
    axis="peak current",
    unit="A",
    rows=(
        Row("Over-current trip", (
            shown("crest of the load current", "i_peak"),
            shown("trips, hot", "i_trip_hot", "trip"),
            read_of("output_stage.over_current.i_trip"),
        ), ("trip-above-music",)),
        Row("Filter inductor", (
            Shown("crest", (Amount({"value": Input("i_inductor_crest")}, when=LC),)),
            shown("saturates, hot", "i_sat_hot", "limit"),
        ), ("inductor-saturation", "trip-against-saturation")),
        Row("Switches of a leg", (
            shown("crest with ripple", "i_leg_peak"),
            Shown("pulsed rating", (
                Amount({"value": Input("output_stage.device.i_dm"),
                        "part": Input("output_stage.parallel")}, share),), "limit"),
        ), ("pulsed-drain-current",)),
    ),
    note="Crests clipped into the lowest load.",
    value="crest",
)  # fmt: skip
