"""Clamping voltage of a suppressor on the rail against what the stage survives.

A suppressor blocks the supply voltage for good and clamps only a third to a half above it.
Where the stage survives less than that, the suppressor stops nothing that matters: the stage
breaks first, and the part on the board lulls everybody. A board of 48 V, its stage taken for
65 V, found no suppressor of silicon that would fit, clamping between 70 and 77 V, and got a
controlled disconnect instead.

The figure is the printed clamping voltage over the absolute maximum of an integrated part, or
the rating of the switches. Above 1 is major: a guard that cannot guard, while no surge need come.
In vehicles the surge itself is judged, and critical, by surge-against-stage. First fix: a
disconnect that acts on over-voltage, a supply with a tighter upper limit, or a stage that
withstands more.
"""

from ...linter.check import AtMost, Case, Check, Input, Lever, Source, derivation

BOARD_48V = Source(
    "nevenfo, tpA3255-hifi-amplifier, docs/protection-48v.md", "table of suppressors"
)


def figure(v_clamp: float, v_withstand: float) -> float:
    """Clamping voltage over the rating."""
    return v_clamp / v_withstand


BOARD = """
environment: {place: indoor}
supply: {source: dc-source, rails: single, converter: none, v_rail: 48 V}
channels:
  main:
    output_stage: {topology: full-bridge, devices: integrated, device: {v_supply_abs: 65 V}}
protection: {surge: {v_rwm: 48 V, v_clamp: 77.4 V, i_pp: 19.4 A}}
"""

CHECK = Check(
    title="Suppressor clamping voltage vs. power stage rating",
    figure=figure,
    unit="1",
    each="channel",
    stake="rating",
    formula="v_clamp / v_withstand",
    sentence="Suppressor clamps at {v_clamp}; power stage rated {v_withstand} ({figure:%}).",
    inputs={
        "v_clamp": Input("protection.surge.v_clamp"),
        "v_withstand": Input("v_withstand"),
    },
    applies={
        "protection.surge": "fitted",
        "supply.converter": "none",
        "environment.place": ("indoor", "outdoor"),
    },
    limits=AtMost(
        major="1", basis={"major": derivation("the stage breaks before the suppressor clamps")}
    ),
    levers=(Lever("protection.surge.v_clamp", "1 V"),),
    sources=(BOARD_48V,),
    cases=(
        Case(
            {"v_clamp": "77.4 V", "v_withstand": "65 V"},
            gives="1.19077",
            origin="published: nevenfo, docs/protection-48v.md, SMCJ48A against 65 V; by hand",
        ),
        Case(
            {"v_clamp": "42.1 V", "v_withstand": "69 V"},
            gives="0.610145",
            origin="computed: a 26 V type, 42.1 V over 69 V, by hand",
        ),
    ),
    topic=("protection.surge.v_clamp",),
    fails=BOARD,
    passes=BOARD.replace("65 V", "100 V"),
)
