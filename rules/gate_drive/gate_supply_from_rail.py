"""Rail against the gate rating where no regulator makes the gate supply.

`gate_drive.regulator: none` says that the driver is fed by the rail itself.  That is right for
rails of 5 V to 15 V, and the simplest gate supply there is; on any higher rail the first
switching breaks through the gate oxide, which withstands some 20 V and fails as a short.  A supply
of its own is not none: it is `regulator: {type: separate}`.

The figure is the highest rail over the gate rating.  Above 1 the gate is destroyed, from 0.8 on
ringing reaches it.  What to do first: a regulator, or a winding of the supply for the gates.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever, derivation
from ..hazards import STAGE_LOST

RATING = derivation("absolute maximum rating of the gate")


def figure(v_rail: float, v_gss: float) -> float:
    return v_rail / v_gss


DIRECT = """
supply: {source: dc-source, rails: single, v_rail: 48 V}
channels:
  main:
    output_stage: {topology: full-bridge, devices: discrete, device: {v_gss: 20 V}}
    gate_drive: {regulator: none}
"""

CHECK = Check(
    title="Rail as gate supply vs. gate rating",
    figure=figure,
    unit="1",
    each="channel",
    stake="rating",
    formula="v_rail / v_gss",
    sentence="Gates run from the {v_rail} rail without a regulator; gate rating {v_gss}"
    " ({figure:%}).",
    inputs={
        "v_rail": Input("v_rail_high"),
        "v_gss": Input("output_stage.device.v_gss"),
    },
    applies={"output_stage.devices": "discrete", "gate_drive.regulator": "none"},
    limits=AtMost(critical="1", minor="0.8", basis={"critical": RATING, "minor": COMMON_PRACTICE}),
    levers=(Lever("gate_drive.regulator.type", ("linear", "switching", "separate")),),
    sources=(RATING,),
    cautions=(STAGE_LOST,),
    cases=(
        Case(
            {"v_rail": "48 V", "v_gss": "20 V"},
            gives="2.4",
            origin="derived: 48 V over 20 V, by hand",
        ),
        Case(
            {"v_rail": "12 V", "v_gss": "20 V"},
            gives="0.6",
            origin="common practice: 12 V on gates rated 20 V, by hand",
        ),
    ),
    topic=("gate_drive.regulator",),
    fails=DIRECT,
    passes=DIRECT.replace("48 V", "12 V"),
)
