"""Voltage of the overcharged bootstrap capacitor against the gate rating.

In each dead time with current out of the leg the switch node lies below ground, by the drop of
the lower switch in reverse. The bootstrap capacitor then charges to more than the gate supply:
by that drop, less the diode's. With silicon the two cancel within half a volt. A gallium-nitride
switch drops 2 V and more in reverse, and its gate is rated 6 or 7 V: 5 V of gate supply become
6.5 V at the upper gate, which dies without any fault. Drivers made for such switches hold the
floating supply with a clamp; a zener diode does it too.

The figure is what the capacitor settles at when dead times are long and the refill path has
little resistance. Gate charge drawn in each period keeps it lower, so it is a bound from above:
major, never critical. A floating supply of its own needs nothing more. First fixes: a
clamp, a shorter dead time, a diode beside the lower switch, a supply of its own.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever, Source, derivation
from ..formulas.maths import smaller

SNVAA94 = Source(
    "SNVAA94, Texas Instruments, 2023",
    "section on bootstrap overcharge: LM5113-Q1, LMG1205, LMG1210",
)


def figure(v_drv: float, v_f: float, v_sd: float, v_clamp: float, v_gss: float) -> float:
    """Highest steady floating supply over the gate rating."""
    return smaller(v_drv - v_f + v_sd, v_clamp) / v_gss


STAGE = """
channels:
  main:
    output_stage: {devices: discrete, device: {v_gss: 6 V, v_sd: 2.1 V}}
    gate_drive: {v_drv: 5 V, bootstrap: {c: 100 nF, v_f: 0.4 VMORE}}
"""

CHECK = Check(
    title="Bootstrap overcharge vs. gate rating",
    figure=figure,
    unit="%",
    each="channel",
    stake="rating",
    formula="smaller of v_drv - v_f + v_sd and v_clamp, over v_gss",
    sentence="Dead time charges the bootstrap supply to {v_gss:*figure} ({v_drv} plus"
    " {v_sd} less {v_f}); gate rating {v_gss} ({figure}).",
    inputs={
        "v_drv": Input("gate_drive.v_drv"),
        "v_f": Input("gate_drive.bootstrap.v_f"),
        "v_sd": Input("output_stage.device.v_sd"),
        "v_clamp": Input("gate_drive.bootstrap.v_clamp"),
        "v_gss": Input("output_stage.device.v_gss"),
    },
    applies={"output_stage.devices": "discrete", "gate_drive.bootstrap": "fitted"},
    limits=AtMost(
        major="100 %",
        minor="95 %",
        basis={
            "major": derivation("absolute maximum rating of the gate, against a bound"),
            "minor": COMMON_PRACTICE,
        },
    ),
    levers=(
        Lever("gate_drive.bootstrap.v_clamp", ("5.2 V", "10 V", "12 V", "15 V")),
        Lever("gate_drive.v_drv", "0.5 V"),
    ),
    sources=(SNVAA94, derivation("loop of gate supply, diode, capacitor and lower switch")),
    cases=(
        Case(
            {"v_drv": "5 V", "v_f": "0 V", "v_sd": "2.1 V", "v_clamp": "1 kV", "v_gss": "7 V"},
            gives="101.43 %",
            origin="computed: sum after SNVAA94, which tells of 6 to 7 V; typically 2.1 V in"
            " reverse: TPS7H6101-SEP, SNOSDG7A; 5 V and 7 V assumed",
        ),
        Case(
            {"v_drv": "5 V", "v_f": "0.4 V", "v_sd": "2.5 V", "v_clamp": "5.2 V", "v_gss": "6 V"},
            gives="86.667 %",
            origin="from memory: LM5113 clamps at 5.2 V (SNVAA94: about 5 V); by hand over 6 V",
        ),
    ),
    topic=("gate_drive.bootstrap",),
    asked_from="production",
    fails=STAGE.replace("MORE", ""),
    passes=STAGE.replace("MORE", ", v_clamp: 5.2 V"),
)
