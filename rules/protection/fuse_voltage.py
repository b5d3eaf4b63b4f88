"""Direct-voltage rating of the fuse.

A fuse marked 250 V is marked for alternating current, whose zero helps to put the arc out
a hundred times a second.  On direct current the arc burns on: the same part may be good for
32 V or 58 V, and above that it opens with a flame or not at all.

The figure is the highest direct voltage that the fuse has to break over its rating for
direct voltage.  With a split supply a shoot-through lies across both rails, so both count.
A rating is absolute: above 1 is critical.  Silence on ``v_dc`` is open, never a pass, and
the alternating rating is no answer.  First fix: a fuse with a printed direct-voltage
rating (automotive blade parts: 32 V or 58 V).
"""

from ...linter.check import AtMost, Case, Check, Input, Lever, Source, derivation
from ..hazards import FUSE

RATING = derivation("a voltage rating is an absolute limit")
MARKING = Source(
    "Littelfuse, Fuse Products and Mounting Accessories catalogue, 2017",
    "p. 9: the voltage rating is that up to which a fuse interrupts its short circuit",
)


def figure(v_across_fuse: float, v_dc: float) -> float:
    return v_across_fuse / v_dc


CHECK = Check(
    title="Voltage to break vs. DC rating of the fuse",
    figure=figure,
    unit="1",
    each="product",
    stake="safety",
    formula="v_across_fuse / v_dc",
    sentence="The fuse must break {v_across_fuse} DC; rated {v_dc} DC ({figure:%}).",
    inputs={
        "v_across_fuse": Input("v_across_fuse"),
        "v_dc": Input("protection.fuse.v_dc"),
    },
    limits=AtMost(critical="1", basis={"critical": RATING}),
    levers=(Lever("protection.fuse.v_dc", ("32 V", "58 V", "80 V", "125 V", "250 V")),),
    sources=(RATING, MARKING),
    cautions=(FUSE,),
    cases=(
        Case(
            {"v_across_fuse": "70 V", "v_dc": "58 V"},
            gives="1.206897",
            origin="computed: IRAUDAMP7D-100, two rails of 35 V; blade fuse of 58 V assumed",
        ),
        Case(
            {"v_across_fuse": "25.2 V", "v_dc": "32 V"},
            gives="0.7875",
            origin="derived: six lithium cells at 4.2 V on a 32 V blade fuse",
        ),
    ),
    topic=("protection.fuse",),
    fails="""
supply: {source: dc-source, rails: split, v_rail: 35 V}
protection: {fuse: {i_rated: 8 A, v_dc: 32 V}}
channels: {main: {rated_power: 50 W}}
""",
    passes="""
supply: {source: dc-source, rails: single, v_rail: 24 V ± 5 %}
protection: {fuse: {i_rated: 8 A, v_dc: 32 V}}
channels: {main: {rated_power: 50 W}}
""",
)
