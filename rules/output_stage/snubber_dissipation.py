"""Heat in the snubber resistor against its rating.

The snubber's capacitor is charged and discharged through its resistor in every period,
music or not.  For instant edges the resistor burns C V^2 f, whatever its value; an edge as
slow as R C spares about a quarter of that.  With 1 nF on a node of 100 V at 400 kHz this is
4 W, far more than the small resistor that is often drawn there.

The figure takes the edge into account where it is known and an instant edge where it is
not.  It leaves out the ringing that the snubber absorbs beside it.  First fixes: a smaller
capacitor (judged by snubber-capacitor), several resistors in parallel, a shorter power loop
so that no snubber is needed.  Half the rating is what a film or thick-film resistor is worth in the
warm air beside the switches.
"""

from ...linter.check import (
    COMMON_PRACTICE,
    Assumption,
    AtMost,
    Case,
    Check,
    Input,
    Lever,
    derivation,
)
from ..formulas.maths import settled
from ..hazards import RESISTOR


def figure(
    c: float, r: float, v_swing: float, carrier: float, t_edge: float, p_rated: float
) -> float:
    """Heat in the snubber resistor over its rating."""
    share = r * c / (t_edge / 0.8)
    per_edge = c * v_swing**2 * share * (1 - share * settled(1 / share))
    return 2 * per_edge * carrier / p_rated


RAMP = derivation("ramp of the node across a series R-C, energy in R over both edges")

CHECK = Check(
    title="Snubber resistor power vs. rating",
    figure=figure,
    unit="%",
    each="channel",
    stake="safety",
    formula="2 carrier c v_swing^2 k (1 - k (1 - exp(-1 / k))) / p_rated, k = 0.8 r c / t_edge",
    sentence="Snubber resistor dissipates {p_rated:*figure} ({c}, {v_swing}, {carrier}); rated"
    " {p_rated} ({figure:%}).",
    inputs={
        "c": Input("output_stage.snubber.c"),
        "r": Input("output_stage.snubber.r"),
        "v_swing": Input("v_swing"),
        "carrier": Input("modulator.carrier"),
        "t_edge": Input(
            "t_edge",
            default=Assumption("0.1 ns", "adverse", derivation("an instant edge heats most")),
        ),
        "p_rated": Input("output_stage.snubber.p_rated"),
    },
    applies={"output_stage.snubber": "fitted"},
    limits=AtMost(
        critical="100 %",
        minor="50 %",
        basis={"critical": derivation("rating of the resistor"), "minor": COMMON_PRACTICE},
    ),
    levers=(
        Lever("output_stage.snubber.p_rated", ("0.5 W", "1 W", "2 W", "3 W", "5 W", "10 W")),
        Lever("output_stage.snubber.c", "E6"),
    ),
    sources=(RAMP,),
    cautions=(RESISTOR,),
    cases=(
        Case(
            {
                "c": "1 nF",
                "r": "10 ohm",
                "v_swing": "100 V",
                "carrier": "400 kHz",
                "t_edge": "8 ns",
                "p_rated": "1 W",
            },
            "294.3 %",
            "computed: circuit simulation with edges of 10 ns from end to end, 2.943 W",
        ),
        Case(
            {
                "c": "1 nF",
                "r": "10 ohm",
                "v_swing": "100 V",
                "carrier": "400 kHz",
                "t_edge": "0.8 ns",
                "p_rated": "5 W",
            },
            "77.4 %",
            "computed: circuit simulation with edges of 1 ns from end to end, 3.870 W",
        ),
    ),
    fails="""
supply: {source: dc-source, rails: split, v_rail: 50 V}
channels:
  main:
    output_stage:
      topology: half-bridge
      devices: discrete
      t_edge: 10 ns
      snubber: {c: 1 nF, r: 10 ohm, p_rated: 1 W}
    modulator: {carrier: 400 kHz}
""",
    passes="""
supply: {source: dc-source, rails: split, v_rail: 35 V}
channels:
  main:
    output_stage:
      topology: half-bridge
      devices: discrete
      t_edge: 20 ns
      snubber: {c: 150 pF, r: 10 ohm, p_rated: 1 W}
    modulator: {carrier: 400 kHz}
""",
)
