"""Steady direct voltage at the loudspeaker.

An amplifier that works puts a few millivolts of direct voltage on its load.  The heat in
the coil is nothing, but every switching of the output is heard as a thump, the cone sits
off centre, and a split supply that cannot sink is pumped.  Above 30 mV the pop is audible,
above 200 mV a rail may be pumped (diyclassd.com); the trade calls 50 mV good.

A loudspeaker behind a capacitor does not see it.  The full rail on the load after a fault
is another matter and another check.  What to do first: look for the direct voltage at the
input pins and for unequal source resistances there.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever, Source

PUMPING = Source("diyclassd.com, pumping", "offset above 30 mV pops, above 200 mV may pump")


def figure(dc_offset: float) -> float:
    return dc_offset


CHECK = Check(
    title="DC offset at the loudspeaker",
    figure=figure,
    unit="V",
    each="channel",
    stake="performance",
    formula="dc_offset",
    sentence="DC offset {figure} at the loudspeaker without a signal.",
    inputs={"dc_offset": Input("dc_offset")},
    applies={"loudspeaker.piezo": "none", "loudspeaker.c_series": "none"},
    limits=AtMost(
        major="200 mV", minor="50 mV", basis={"major": PUMPING, "minor": COMMON_PRACTICE}
    ),
    levers=(Lever("dc_offset", "5 mV"),),
    sources=(PUMPING,),
    cases=(
        Case(
            {"dc_offset": "20 mV"},
            gives="20 mV",
            origin="published: IRAUDAMP7D rev 2.9, offset below 20 mV: meets",
        ),
        Case(
            {"dc_offset": "0.45 V"},
            gives="450 mV",
            origin="published: R. MacLachlan, laboratory notebook 2019, 0.2 .. 0.45 V: pumped",
        ),
    ),
    topic=("loudspeaker",),
    fails="""
channels:
  main:
    dc_offset: 0.2 V .. 2 V
    loudspeaker: {z_rated: 8 ohm}
""",
    passes="""
channels:
  main:
    dc_offset: 20 mV
    loudspeaker: {z_rated: 8 ohm}
""",
)
