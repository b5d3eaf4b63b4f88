"""Over-current trip against the saturation current of the inductor.

When the current passes the point where the inductor saturates, its inductance collapses and
the current runs up several times as fast.  A protection whose threshold lies far above that
point has much less time than its author thinks.

It is a hint and not more, hence minor: much-copied reference boards set the trip above the
printed saturation current on purpose, because a trip near the music cuts out on bass, and
what counts is that the top stays below the device's rating (trip-below-destruction) and,
for integrated stages, that enough inductance is left (part-least-inductance).  It concerns
stages with an inductor; without one, or with a bead, there is nothing to saturate.  The trip is
taken cold, where it is highest, the saturation hot, where it is lowest.  First fixes: an
inductor with more saturation current, of powder rather than ferrite; a lower trip.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever, Source, derivation


def figure(i_trip: float, i_sat: float) -> float:
    """Trip over the saturation current when hot."""
    return i_trip / i_sat


CHECK = Check(
    title="Over-current trip vs. inductor saturation",
    figure=figure,
    unit="%",
    each="channel",
    stake="performance",
    formula="i_trip / i_sat",
    sentence="Over-current trip {i_trip}; inductor saturates at {i_sat} hot ({figure:%}).",
    inputs={
        "i_trip": Input("output_stage.over_current.i_trip"),
        "i_sat": Input("i_sat_hot"),
    },
    applies={"filter_kind": "lc"},
    limits=AtMost(minor="150 %", basis={"minor": COMMON_PRACTICE}),
    levers=(
        Lever("filter.inductor.i_sat", "1 A"),
        Lever("output_stage.over_current.i_trip", "0.5 A"),
    ),
    sources=(
        derivation("slope V / L grows as L falls"),
        Source(
            "International Rectifier, IRAUDAMP7D reference design, rev. 2.9",
            "p. 24: IRAUDAMP7D-100 trips at 23 A; p. 33: inductor of 13 A, the same in all "
            "models by table 5",
        ),
    ),
    cases=(
        Case(
            {"i_trip": "10 A", "i_sat": "11 A"},
            "90.91 %",
            "computed: TPA3221 trip of 10 A over the 11 A of a Sagami 7W14A of 10 uH",
        ),
        Case(
            {"i_trip": "23 A", "i_sat": "13 A"},
            "176.9 %",
            "computed: IRAUDAMP7D-100, trip of 23 A; 13 A of its inductor taken for saturation",
        ),
    ),
    topic=("output_stage.over_current",),
    asked_from="production",
    fails="""
channels:
  main:
    output_stage: {devices: discrete, over_current: {i_trip: 25 A}}
    filter: {type: lc, inductor: {l: 22 uH, i_sat: 8 A, core: powder, i_sat_hot_factor: 1.0}}
""",
    passes="""
channels:
  main:
    output_stage: {devices: discrete, over_current: {i_trip: 10 A}}
    filter: {type: lc, inductor: {l: 22 uH, i_sat: 13 A, core: powder, i_sat_hot_factor: 1.0}}
""",
)
