"""Recommended supply of a part against its absolute maximum.

A data sheet prints two ends: up to the recommended one the part works as promised, up to the
absolute maximum it survives. The second lies above the first, by a tenth or more. Where the
stated ones are the other way round one of them belongs to another part or another row, and
whatever is met is met by mistake.

Above 1 is major: the rail is judged against a limit that cannot be right. First fix: read
the data sheet again.
"""

from ...linter.check import AtMost, Case, Check, Input, Lever, derivation

ORDER = derivation("a part that is destroyed cannot work: recommended lies below absolute")


def figure(v_recommended: float, v_abs: float) -> float:
    return v_recommended / v_abs


PART = """
supply: {source: dc-source, rails: single, v_rail: 24 V}
channels:
  main:
    output_stage:
      topology: full-bridge
      devices: integrated
      device: {v_supply: 8 V .. 32 V, v_supply_abs: 26 V}
"""

CHECK = Check(
    title="Recommended supply vs. absolute maximum of the part",
    figure=figure,
    unit="1",
    each="channel",
    stake="rating",
    formula="v_recommended / v_abs",
    sentence="Recommended supply up to {v_recommended}; absolute maximum {v_abs} ({figure:%}).",
    inputs={
        "v_recommended": Input(
            "output_stage.device.v_supply:high", meaning="highest recommended supply of the part"
        ),
        "v_abs": Input("output_stage.device.v_supply_abs"),
    },
    applies={"output_stage.devices": "integrated"},
    limits=AtMost(major="1", basis={"major": ORDER}),
    levers=(Lever("output_stage.device.v_supply_abs", "1 V"),),
    sources=(ORDER,),
    cases=(
        Case(
            {"v_recommended": "32 V", "v_abs": "37 V"},
            gives="0.864865",
            origin="published: TPA3221 data sheet SLASEE9B, 32 V recommended, 37 V maximum",
        ),
        Case(
            {"v_recommended": "32 V", "v_abs": "26 V"},
            gives="1.230769",
            origin="derived: two rows of different parts",
        ),
    ),
    topic=("output_stage.device.v_supply_abs",),
    fails=PART,
    passes=PART.replace("v_supply_abs: 26 V", "v_supply_abs: 37 V"),
)
