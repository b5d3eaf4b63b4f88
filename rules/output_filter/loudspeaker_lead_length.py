"""Length of the loudspeaker lead without a full filter.

A lead that carries edges of a few nanoseconds is an antenna. Edges of 10 ns hold energy
up to 32 MHz and beyond, where a quarter of a wavelength is two metres and a twentieth
half a metre; but makers who measured allow less: about 100 mm with no filter, 11 inches to
125 cm with ferrite beads, more only with a full filter. The part's own limit counts where it is
stated. A three-level bridge with its capacitor only across the load is such a stage too: at
idle both legs carry the whole carrier alike, and nothing leads it to ground; its inductors act
like beads. Twice the length doubles the radiated field, 6 dB: half of the 125 cm is allowed
without a remark, all of it is the most that any maker has shown. Whoever states a bead or no
filter is asked for the length. Cure: shorter and twisted leads, capacitors from both terminals
to ground, or a filter.
"""

from ...linter.check import AtMost, Case, Check, Input, Lever, Source, derivation


def figure(length: float, lead_allowed: float) -> float:
    """Length over the length allowed."""
    return length / lead_allowed


CHECK = Check(
    title="Loudspeaker lead length vs. limit without a filter",
    figure=figure,
    unit="1",
    each="channel",
    stake="performance",
    formula="length / lead_allowed",
    sentence="Loudspeaker lead {length}; limit without an L-C filter {lead_allowed} ({figure:%}).",
    inputs={
        "length": Input("lead.length"),
        "lead_allowed": Input("lead_allowed"),
    },
    applies={"lead_filter": ("bead", "filterless")},
    limits=AtMost(
        major="2",
        minor="1",
        basis={
            "major": derivation("a short antenna radiates in proportion to its length: 6 dB"),
            "minor": Source(
                "TPA2011D1 data sheet SLOS626A; TPA3001D1 data sheet SLOS398E",
                "p. 16: about 100 mm without a filter; p. 18: 11 inches with beads",
            ),
        },
    ),
    levers=(Lever("lead.length", "10 mm"),),
    sources=(
        Source("TPA2011D1 data sheet SLOS626A", "p. 16: about 100 mm"),
        Source("TPA3001D1 data sheet SLOS398E", "p. 18: 11 inches with beads"),
        Source(
            "TPA3111D1 data sheet SLOS618E",
            "p. 16: up to 125 cm, twisted, behind beads, passes FCC class B",
        ),
        Source(
            "AN-1737 / SNAA050A, managing EMI in class-D",
            "radiation near a quarter wave; no page given",
        ),
    ),
    cases=(
        Case(
            {"length": "279 mm", "lead_allowed": "279 mm"},
            gives="1",
            origin="published: TPA3001D1 data sheet p. 18, 11 inches with a ferrite bead",
        ),
        Case(
            {"length": "0.3 m", "lead_allowed": "0.1 m"},
            gives="3",
            origin="published: TPA2011D1 data sheet p. 16, 100 mm without filter; 0.3 m assumed",
        ),
    ),
    topic=("lead.length", "filter.bead", "filter.type"),
    fails="""
channels:
  main:
    lead: {length: 0.5 m}
    filter: {type: filterless}
""",
    passes="""
channels:
  main:
    lead: {length: 0.2 m}
    filter: {type: bead}
""",
)
