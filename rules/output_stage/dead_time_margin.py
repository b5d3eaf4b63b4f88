"""Dead time against the switching times of the leg.

After the command to turn off, a switch keeps conducting for its turn-off delay and its fall
time; the other one starts after the dead time and its turn-on delay. If the first is longer,
both conduct together in every period: a short across the rail, limited only by the inductance
of the loop. It heats the devices at idle and destroys them sooner or later.

Two lower bounds of what the turn-off takes beyond the turn-on are known from data sheets, and
the longer one is taken: the printed delays and fall time at their adverse ends, and the time
in which the gate loop of this circuit discharges one gate to its threshold, less that in which
it charges the other one up to it. The printed times are not stretched in proportion to the
gate resistor: they hold the test's driver and load as well, and stretched that way they
condemn boards that work (300 ns for a device of 80 nC behind 3.3 ohm). The output voltage is
distorted by another time: see dead-time-distortion. The threshold counts hot, lower
than printed, so that the discharge takes longer. Where one of the two bounds cannot be formed,
where the threshold is not stated (the plateau is taken, at best) or the drivers' difference
is not, the sum leaves something out: that can fail the check, never pass it. Parts with
integrated switches keep their own dead time and are not judged; gallium nitride, told by its
gate rating, has a check and a margin of its own.
First fixes: a longer dead time; a diode across the turn-off resistor; a driver with matched
delays. At least 10 ns, measured between the gates at 10 and 90 %, is what a driver's maker
asks for.
"""

from ...linter.check import (
    AtLeast,
    Case,
    Check,
    Input,
    Lever,
    Source,
    derivation,
)
from ..derived.ways import left_out
from ..hazards import FIRST_POWER_UP

IRS20124S = Source(
    "IRS20124S data sheet PD60240, International Rectifier",
    "p. 20: negative effective dead time may damage the switches; at least 10 ns recommended",
)


def figure(dead_time: float, t_outlasts: float, delay_mismatch: float) -> float:
    """Time in which neither switch conducts."""
    return dead_time - t_outlasts - delay_mismatch


_BASE = """
channels:
  main:
    output_stage:
      devices: discrete
      device: {t_d_on: 7.8 ns, t_d_off: 16 ns, t_f: 6.3 ns, q_g: 18 nC, q_gd: 6.7 nC,
        v_gs_th: {min: 1.8 V}, r_g_int: 3.2 ohm}
    gate_drive: {dead_time: DEAD, v_drv: 12 V, r_g_on: 10 ohm, r_g_off: 4.7 ohm,
      i_source: 2 A, i_sink: 2 A, delay_mismatch: 5 ns}
"""

CHECK = Check(
    title="Dead time vs. switching times (shoot-through)",
    figure=figure,
    unit="ns",
    each="channel",
    stake="rating",
    formula="dead_time - t_outlasts - delay_mismatch",
    sentence="Dead time {dead_time}, {figure:+to spare|too short} (turn-off outlasts turn-on by"
    " {t_outlasts}, driver mismatch {delay_mismatch}).",
    inputs={
        "dead_time": Input("gate_drive.dead_time"),
        "t_outlasts": Input("t_off_outlasts"),
        "delay_mismatch": Input(
            "gate_drive.delay_mismatch",
            unit="ns",
            default=left_out("0 s", "difference of the driver's delays"),
        ),
    },
    applies={"output_stage.devices": "discrete", "gate_kind": "silicon"},
    limits=AtLeast(
        critical="0 ns",
        major="10 ns",
        basis={"critical": IRS20124S, "major": IRS20124S},
    ),
    levers=(Lever("gate_drive.dead_time", "5 ns"),),
    sources=(
        IRS20124S,
        derivation("sequence of commands, delays and edges of one leg"),
    ),
    cautions=(FIRST_POWER_UP,),
    cases=(
        Case(
            {"dead_time": "45 ns", "t_outlasts": "20 ns", "delay_mismatch": "0 ns"},
            "25 ns",
            "derived: IRS20124S data sheet, preset of 45 ns, p. 1, less the fall time as on p. 20;"
            " 20 ns assumed",
        ),
        Case(
            {"dead_time": "9 ns", "t_outlasts": "14.5 ns", "delay_mismatch": "0 ns"},
            "-5.5 ns",
            "published: M. Wulf, docu.pdf 2019, 9 ns; by hand 16 + 6.3 - 7.8 ns of the IRFB4020 "
            "data sheet PD-97195; no mismatch assumed",
        ),
        Case(
            {"dead_time": "375 ns", "t_outlasts": "71 ns", "delay_mismatch": "0 ns"},
            "304 ns",
            "published: J. Estefania Vilumbrales, thesis 2017, 375 ns measured; by hand "
            "75 + 21 - 25 ns of the IXTH36N50P data sheet DS99228E; no mismatch assumed",
        ),
    ),
    topic=("gate_drive",),
    asked_from="prototype",
    permissible=False,
    fails=_BASE.replace("DEAD", "9 ns"),
    passes=_BASE.replace("DEAD", "60 ns"),
)
