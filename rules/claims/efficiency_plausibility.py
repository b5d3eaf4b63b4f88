"""Claimed efficiency against what the losses allow.

The model adds losses that must be there: conduction in hot switches, switching, gate
charge, idle, copper.  It knows no more, so it comes out low against the bench, by up to a
half, and what it leaves over is an upper bound of the efficiency.  So is what the cold
resistances of the best channel leave, where the other losses cannot be told.  A claim above it
is a claim for another load, for one channel, for the stage without its filter or supply of
the gates, or for a simulation.

The figure is the claim less the bound, in percent of input power.  Any excess is minor: a
graph is read to a point or two.  More than 3 points is major, at every milestone where no
tolerance clears it.  A loss that the spec does not
state only raises the bound; then a claim may fail, but never pass.  First fix: measure at
rated power, all channels, whole product, and state load and power beside the figure.
"""

from ...linter.check import (
    COMMON_PRACTICE,
    Assumption,
    AtMost,
    Case,
    Check,
    Input,
    Lever,
    Source,
    derivation,
)
from ..formulas.maths import smaller

MEASURED = Source(
    "TPA3221 data sheet SLASEE9B; J. Estefania Vilumbrales, thesis, Universidad de Cantabria, 2017",
    "fig. 6: 85.5 % at 176 W into 4 ohm; annexes p. 40: 84.3 % at 75.8 "
    "W into 10.8 ohm; both measured",
)
BOUND = derivation("output over output and the losses that must be there")


def figure(
    efficiency: float, rated_power: tuple[float, ...], p_in_rated: float, possible: float = 1.0
) -> float:
    return efficiency - smaller(sum(rated_power[1:], rated_power[0]) / p_in_rated, possible)


NOTHING_KNOWN = Assumption("100 %", "absent", derivation("what is not known takes nothing"))
STAGE = """
channels:
  main:
    rated_power: 88 W
    rated_load: 4 ohm
    output_stage: {topology: full-bridge, devices: integrated, efficiency: 85 %}
supply: {source: dc-source, rails: single, v_rail: 30 V}
claims: {efficiency: 92 %}
"""

CHECK = Check(
    title="Claimed efficiency vs. known losses",
    figure=figure,
    unit="%",
    each="product",
    stake="performance",
    formula="efficiency - sum of rated_power / p_in_rated (not above possible)",
    sentence="Claimed efficiency {efficiency}, {figure:+above|below} what the known losses allow"
    " ({rated_power} out, {p_in_rated} in; {possible} with cold resistances alone).",
    inputs={
        "efficiency": Input("claims.efficiency"),
        "rated_power": Input("all rated_power"),
        "p_in_rated": Input("p_in_rated"),
        "possible": Input("efficiency_possible_whole", default=NOTHING_KNOWN),
    },
    limits=AtMost(major="3 %", minor="0 %", basis={"major": COMMON_PRACTICE, "minor": BOUND}),
    levers=(Lever("claims.efficiency", "1 %"),),
    sources=(BOUND, MEASURED),
    cases=(
        Case(
            {
                "efficiency": "90 %",
                "rated_power": ("88 W", "88 W"),
                "p_in_rated": "205.97 W",
                "possible": "97 %",
            },
            gives="4.550 %",
            origin="published: TPA3221 fig. 9: 176 W out, 29.97 W lost; a claim of 90 % assumed",
        ),
        Case(
            {
                "efficiency": "85 %",
                "rated_power": ("75.84 W",),
                "p_in_rated": "90 W",
                "possible": "97 %",
            },
            gives="0.7333 %",
            origin="published: J. Estefania Vilumbrales, thesis 2017, annexes p. 40: 75.84 of 90 "
            "W; the 85 % that p. 13 reckons at 1 kW, 8 ohm, taken for a claim; 97 % assumed",
        ),
    ),
    topic=("claims.efficiency",),
    forbidden=True,
    fails=STAGE,
    passes=STAGE.replace("claims: {efficiency: 92 %}", "claims: {efficiency: 84 %}"),
)
