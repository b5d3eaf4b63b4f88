"""Time that the driver needs to move the gate charge, against the period.

A driver with too little current takes long to charge a large gate: edges become slow and
hot, delays grow past the dead time, and the carrier has to come down.  A student project
wanted 26 nC in 83 ns, 313 mA at 300 kHz, had a driver of 130 mA, and went to 150 kHz.

The figure is the total gate charge over the weaker of the two driver currents, as a share
of the period.  Gate resistors make it longer still; they are counted in the switching
times and in dead-time-margin.  First fixes: a stronger driver, a smaller device, fewer
devices in parallel, a lower carrier.  Limits are practice: 1 to 2 % in boards that work
well, 3 % in one that just works, 7 % in the one that did not.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever, Source
from ..formulas.maths import smaller


def figure(q_g: float, parallel: float, i_source: float, i_sink: float, carrier: float) -> float:
    """Time to move the gate charge over the period."""
    return parallel * q_g / smaller(i_source, i_sink) * carrier


MORATUWA = Source(
    "Group 14, Class D Audio Amplifier, University of Moratuwa, project report, 26 June 2026",
    "p. 11: 26 nC in 83 ns: 313 mA, at 300 kHz",
)

CHECK = Check(
    title="Gate charging time vs. period",
    figure=figure,
    unit="%",
    each="channel",
    stake="performance",
    formula="parallel q_g carrier / smaller of i_source and i_sink",
    sentence="Driver ({i_source} source, {i_sink} sink) takes {figure} of a period at {carrier} to"
    " move {q_g}.",
    inputs={
        "q_g": Input("output_stage.device.q_g"),
        "parallel": Input("output_stage.parallel"),
        "i_source": Input("gate_drive.i_source"),
        "i_sink": Input("gate_drive.i_sink"),
        "carrier": Input("modulator.carrier"),
    },
    applies={"output_stage.devices": "discrete"},
    limits=AtMost(
        major="5 %", minor="3 %", basis={"major": COMMON_PRACTICE, "minor": COMMON_PRACTICE}
    ),
    levers=(
        Lever("gate_drive.i_source", ("0.5 A", "1 A", "2 A", "4 A", "9 A")),
        Lever("modulator.carrier", "10 kHz"),
    ),
    sources=(MORATUWA,),
    cases=(
        Case(
            {
                "q_g": "26 nC",
                "parallel": 1.0,
                "i_source": "313 mA",
                "i_sink": "313 mA",
                "carrier": "300 kHz",
            },
            "2.492 %",
            "published: Group 14, University of Moratuwa, report 2026, p. 11: 83 ns, 5 % of half "
            "a period "
            "at 300 kHz",
        ),
        Case(
            {
                "q_g": "26 nC",
                "parallel": 1.0,
                "i_source": "130 mA",
                "i_sink": "270 mA",
                "carrier": "350 kHz",
            },
            "7 %",
            "computed: the driver of that report, 130 and 270 mA (table 2.2), at 350 kHz; by hand",
        ),
        Case(
            {
                "q_g": "20 nC",
                "parallel": 3.0,
                "i_source": "4 A",
                "i_sink": "500 mA",
                "carrier": "250 kHz",
            },
            gives="3 %",
            origin="derived: three gates of 20 nC at the weaker 500 mA, 120 ns of 4 us",
        ),
    ),
    topic=("gate_drive.i_source", "gate_drive.i_sink"),
    asked_from="prototype",
    fails="""
channels:
  main:
    output_stage: {devices: discrete, device: {q_g: 26 nC}}
    gate_drive: {i_source: 130 mA, i_sink: 270 mA}
    modulator: {carrier: 350 kHz}
""",
    passes="""
channels:
  main:
    output_stage: {devices: discrete, device: {q_g: 26 nC}}
    gate_drive: {i_source: 1 A, i_sink: 1.2 A}
    modulator: {carrier: 350 kHz}
""",
)
