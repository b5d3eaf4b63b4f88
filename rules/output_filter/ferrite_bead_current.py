"""Current through the ferrite bead.

A ferrite bead against radio interference is rated for the current that heats it, but its
impedance is gone long before: at half of the rated current little of the printed
impedance is left, and at the crest of the music the stage radiates as if no bead were
there. The bead should therefore be rated for twice the load's peak; above the rated
current itself it overheats. A bead does nothing against the carrier, which lies a decade
below its range. A filter that is stated as a bead is asked for the rating; silence on the
filter as a whole is asked about elsewhere. Cure: a larger bead, two in series, or an
inductor-capacitor filter.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever, Source, derivation


def figure(i_peak: float, i_rated: float) -> float:
    """Largest load current over the rated current."""
    return i_peak / i_rated


CHECK = Check(
    title="Load peak current vs. ferrite bead rating",
    figure=figure,
    unit="1",
    each="channel",
    stake="rating",
    formula="i_peak / i_rated",
    sentence="Load peak {i_peak}; bead rated {i_rated} ({figure:%}).",
    inputs={
        "i_peak": Input("i_peak"),
        "i_rated": Input("filter.bead.i_rated"),
    },
    applies={"filter_kind": "bead"},
    limits=AtMost(
        major="1",
        minor="0.5",
        basis={"major": derivation("the rated current of the part"), "minor": COMMON_PRACTICE},
    ),
    levers=(Lever("filter.bead.i_rated", ("1 A", "2 A", "3 A", "4 A", "6 A", "10 A")),),
    sources=(
        Source("TPA2011D1 data sheet SLOS626A", "p. 16: effect lost below the rated current"),
        Source("TPA3001D1 data sheet SLOS398E", "p. 18: beads act from about 1 MHz"),
    ),
    cases=(
        Case(
            {"i_peak": "1.5 A", "i_rated": "3 A"},
            gives="0.5",
            origin="common practice: twice the peak, no source",
        ),
        Case(
            {"i_peak": "1.625 A", "i_rated": "1 A"},
            gives="1.625",
            origin="computed: 5.2 V into 3.2 ohm by hand over 1 A",
        ),
    ),
    topic=("filter.bead", "filter.type"),
    fails="""
supply: {source: dc-source, rails: single, v_rail: 12 V}
channels:
  main:
    rated_load: 4 ohm
    output_stage: {topology: full-bridge, devices: integrated}
    modulator: {m_max: 95 %}
    filter: {type: bead, bead: {i_rated: 2 A}}
""",
    passes="""
supply: {source: dc-source, rails: single, v_rail: 5 V}
channels:
  main:
    rated_load: 8 ohm
    output_stage: {topology: full-bridge, devices: integrated}
    modulator: {m_max: 95 %}
    filter: {type: bead, bead: {i_rated: 3 A}}
""",
)
