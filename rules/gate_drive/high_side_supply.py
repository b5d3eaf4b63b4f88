"""What supplies the gate of the upper switch.

An n-channel switch at the upper rail needs a gate voltage above that rail: a bootstrap
capacitor that the lower switch refills, a supply of its own for each upper gate, or a charge
pump.  A p-channel switch does without, at the price of two to three times the silicon.  A
design that has none of them never turns its upper switch on, or half on, and burns it.

The figure counts what is there.  `bootstrap: none` alone is an open question: what
replaces it is said by `floating_supply`.  First fix: a bootstrap capacitor and its diode.
"""

from ...linter.check import AtLeast, Case, Check, Input, Lever, Source, derivation
from ..hazards import FIRST_POWER_UP

ABOVE_RAIL = derivation("an n-channel switch at the rail turns on by a voltage above the rail")


def figure(high_side_supply: str) -> float:
    """1 where something supplies the upper gate."""
    return 0.0 if high_side_supply == "none" else 1.0


_BASE = """
channels:
  main:
    output_stage: {devices: discrete}
    gate_drive: {bootstrap: none, floating_supply: WHAT}
"""

CHECK = Check(
    title="Supply of the upper gate",
    figure=figure,
    unit="1",
    each="channel",
    stake="rating",
    formula="0 where high_side_supply is none, else 1",
    sentence="{high_side_supply:?No supply for the upper gate|Supply of the upper gate: #}.",
    inputs={
        "high_side_supply": Input("high_side_supply"),
    },
    applies={"output_stage.devices": "discrete"},
    limits=AtLeast(critical="1", basis={"critical": ABOVE_RAIL}),
    levers=(Lever("gate_drive.floating_supply", ("isolated", "charge-pump")),),
    sources=(
        ABOVE_RAIL,
        Source("NBitWonder notebook, entry 022: upper switch stops conducting at high duty"),
    ),
    cautions=(FIRST_POWER_UP,),
    cases=(
        Case(
            {"high_side_supply": "bootstrap"},
            "1",
            "published: IRAUDAMP7D reference design, bootstrap capacitor for the upper switch",
        ),
        Case({"high_side_supply": "none"}, "0", "derived: no voltage above the rail"),
    ),
    topic=("gate_drive",),
    asked_from="prototype",
    permissible=False,
    fails=_BASE.replace("WHAT", "none"),
    passes=_BASE.replace("WHAT", "isolated"),
)
