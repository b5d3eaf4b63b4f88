"""Local capacitor of a leg against the charge it must supply.

Between two edges the local film or ceramic capacitor alone carries the square-wave part of
the current; the bulk capacitor is too far away.  At half duty its voltage swings by
I / (4 f C).  If that is a large part of the rail, the ripple gets into the output, into the
protection and into the emission.

The current is the largest load current; bulk capacitors close by take part of it, so the
figure is cautious and the one limit is minor.  A vendor's own recommendation of 1 uF next
to the pins of a 30 V, 600 kHz part comes to 9 % at 88 W into 4 ohm.  Class 2 ceramics lose
half or more of their capacitance at the working voltage: state what is left.  First fixes:
more capacitance in parallel, in small packages close to the switches.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever, derivation


def figure(i_peak: float, carrier: float, c_local: float, v_swing: float) -> float:
    """Swing of the local capacitor in a period over the rail."""
    return i_peak / (4 * carrier * c_local) / v_swing


CHECK = Check(
    title="Local capacitor voltage swing vs. rail",
    figure=figure,
    unit="%",
    each="channel",
    stake="performance",
    formula="i_peak / (4 carrier c_local) / v_swing",
    sentence="Local capacitor {c_local} swings by {figure} of the rail ({i_peak} at {carrier}).",
    inputs={
        "i_peak": Input("i_peak"),
        "carrier": Input("modulator.carrier"),
        "c_local": Input("output_stage.c_local"),
        "v_swing": Input("v_swing"),
    },
    limits=AtMost(minor="20 %", basis={"minor": COMMON_PRACTICE}),
    levers=(Lever("output_stage.c_local", "E6"),),
    sources=(derivation("current I for half a period charges and discharges C by I / (4 f C)"),),
    cases=(
        Case(
            {"i_peak": "6.633 A", "carrier": "600 kHz", "c_local": "1 uF", "v_swing": "30 V"},
            "9.212 %",
            "published: TPA3221 data sheet SLASEE9B, p. 6: 1 uF close to the pins, 600 kHz; "
            "p. 9: 88 W at 1 % into 4 ohm from 30 V, a crest of 6.633 A by hand",
        ),
        Case(
            {"i_peak": "10 A", "carrier": "400 kHz", "c_local": "0.47 uF", "v_swing": "50 V"},
            "26.6 %",
            "derived: 13.3 V of 50 V",
        ),
    ),
    topic=("output_stage.c_local",),
    asked_from="prototype",
    fails="""
supply: {source: dc-source, rails: single, v_rail: 30 V}
channels:
  main:
    rated_load: 4 ohm
    output_stage: {topology: full-bridge, devices: integrated, c_local: 0.22 uF}
    modulator: {carrier: 600 kHz}
    loudspeaker: {z_rated: 4 ohm, z_min: 3.4 ohm}
""",
    passes="""
supply: {source: dc-source, rails: single, v_rail: 30 V}
channels:
  main:
    rated_load: 4 ohm
    output_stage: {topology: full-bridge, devices: integrated, c_local: 1 uF}
    modulator: {carrier: 600 kHz}
    loudspeaker: {z_rated: 4 ohm, z_min: 3.4 ohm}
""",
)
