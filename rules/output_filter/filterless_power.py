"""Power of a stage without a full filter.

Stages without inductors are made for small portable sets: a few watts, a loudspeaker a
hand's breadth away, a rail of a few volts. With more power the edges carry more charge,
the rails more current, and radio interference grows with both, while the price of a
filter becomes small beside the rest. Makers' application notes expect a filter above
about 10 W. More is possible with spread-spectrum parts and short leads, so the finding is
minor: it asks whether the emission test has been thought of. Cure: a filter, or a lower
power.
"""

from ...linter.check import AtMost, Case, Check, Input, Lever, Source


def figure(rated_power: float) -> float:
    """Rated power of the channel."""
    return rated_power


CHECK = Check(
    title="Rated power of a stage without an L-C filter",
    figure=figure,
    unit="W",
    each="channel",
    stake="performance",
    formula="rated_power",
    sentence="Rated power {rated_power} without an L-C filter.",
    inputs={"rated_power": Input("rated_power")},
    applies={"filter_kind": ("bead", "filterless")},
    limits=AtMost(
        minor="10 W",
        basis={"minor": Source("TI SLAA701A, LC filter design", "abstract: generally above 10 W")},
    ),
    levers=(Lever("rated_power", "1 W"),),
    sources=(Source("TI SLAA701A, LC filter design", "abstract"),),
    cases=(
        Case(
            {"rated_power": "3 W"},
            gives="3 W",
            origin="published: XMOS, iPod Dock note 1.0, table 3: 3 W; no filter shown",
        ),
        Case(
            {"rated_power": "10 W"},
            gives="10 W",
            origin="published: SLAA701A abstract, filter expected above 10 W",
        ),
    ),
    topic=("filter.type",),
    fails="""
channels:
  main:
    rated_power: 20 W
    filter: {type: bead}
""",
    passes="""
channels:
  main:
    rated_power: 3 W
    filter: {type: filterless}
""",
)
