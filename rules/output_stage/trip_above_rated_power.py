"""Over-current trip against the peak current of the rated power.

A stage whose over-current protection acts below the peak current of its rated power cannot give
that power, whatever rails and modulator allow: the data sheet promises a sine that the protection
cuts off. trip-above-music asks for more, that the crest of clipped music passes into the lowest
load; a trip between the two is heard on loud music and still lets the rated power through.

The figure is the lowest trip, hot where the switch's own resistance senses the current, over the
peak of the rated sine in the rated load. Ripple comes on top of that and is left out: less than
the peak of the load is too little in any case. It does not apply without a rated power or a
stated trip, which trip-above-music asks for. First fixes: a higher trip, if
trip-below-destruction allows it; a lower rated power.
"""

from ...linter.check import AtLeast, Case, Check, Input, Lever, derivation
from ..derived.current import I_TRIP
from ..derived.stage import sine_peak_current


def figure(i_trip: float, i_trip_hot: float, rated_power: float, z_load: float) -> float:
    """Lowest trip over the peak of the rated sine; the printed trip is for the report."""
    return i_trip_hot / sine_peak_current(rated_power, z_load)


STAGE = """
channels:
  main:
    rated_power: 50 W
    rated_load: 4 ohm
    output_stage: {over_current: {i_trip: TRIP, sensing: shunt}}
"""

CHECK = Check(
    title="Over-current trip vs. peak current at rated power",
    figure=figure,
    unit="%",
    each="channel",
    stake="performance",
    formula="i_trip_hot / (2 rated_power / z_load)^0.5, i_trip_hot from i_trip as printed",
    sentence="Over-current trip {i_trip_hot} hot ({i_trip} rated); {rated_power} into {z_load} need"
    " {i_trip_hot:/figure} peak ({figure:%}).",
    inputs={
        "i_trip": I_TRIP,
        "i_trip_hot": Input("i_trip_hot"),
        "rated_power": Input("rated_power"),
        "z_load": Input("z_load"),
    },
    applies={"trip_stated": "yes"},
    limits=AtLeast(
        major="100 %",
        basis={"major": derivation("the protection acts within the rated sine")},
    ),
    levers=(
        Lever("output_stage.over_current.i_trip", "0.5 A"),
        Lever("rated_power", "1 W"),
    ),
    sources=(derivation("peak current of a sine by Ohm's law"),),
    cases=(
        Case(
            {"i_trip": "10 A", "i_trip_hot": "10 A", "rated_power": "300 W", "z_load": "4 ohm"},
            "81.65 %",
            "published: M. Wulf, docu.pdf 2019: 300 W into 4 ohm, trip of 10 A; 12.247 A by hand",
        ),
        Case(
            {"i_trip": "23 A", "i_trip_hot": "17.6 A", "rated_power": "120 W", "z_load": "4 ohm"},
            "227.2 %",
            "computed: 120 W into 4 ohm as on the IRAUDAMP7D board, its sine sampled, 7.746 A;"
            " trip of 23 A, hot resistance 1.307 times that at 25 degC",
        ),
    ),
    topic=("output_stage.over_current",),
    asked_from="production",
    fails=STAGE.replace("TRIP", "4 A"),
    passes=STAGE.replace("TRIP", "6 A"),
)
