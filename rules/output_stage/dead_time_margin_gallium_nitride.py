"""Dead time against the switching times of a leg of gallium nitride.

The physics are those of dead-time-margin: who turns off after the other has turned on shorts the
rail.  The margin is not: such a switch has no stored charge and a gate of a few nanocoulombs, so
its own times are a few nanoseconds, and drivers made for it are matched over temperature.  The
10 ns that a driver of silicon switches asks for would cost more in reverse conduction, with a
drop of 2 V and more, than it saves.  A driver for such legs offers dead times from 0.8 ns to
20 ns, and its own delays differ by 3.4 ns at most: that much is to be left, major below it.  Two
switches that conduct at once are as critical as of silicon.

A switch is taken for gallium nitride by its gate rating, below 8 V.  First fixes: a longer dead
time, a driver with matched delays.
"""

from dataclasses import replace

from ...linter.check import AtLeast, Check, Lever, Source
from .dead_time_margin import CHECK as SILICON
from .dead_time_margin import figure

LMG1210 = Source(
    "LMG1210 data sheet SNOSD12D, Texas Instruments, switching characteristics",
    "delay mismatch 3.4 ns at most over temperature, least dead time 0.8 ns typical; no page given",
)
GATE = "{v_gss: 6 V, q_g: 2.5 nC, q_gd: 0.6 nC, v_gs_th: {min: 1.1 V}, r_g_int: 0.4 ohm}"
_BASE = f"""
channels:
  main:
    output_stage:
      devices: discrete
      device: {{t_d_on: 3 ns, t_d_off: 4 ns, t_f: 3 ns, {GATE[1:]}
    gate_drive: {{dead_time: DEAD, v_drv: 5 V, r_g_on: 4.7 ohm, r_g_off: 1 ohm,
      i_source: 1.5 A, i_sink: 3 A, delay_mismatch: 1 ns}}
"""

CHECK: Check = replace(
    SILICON,
    title="Dead time of gallium nitride vs. switching times (shoot-through)",
    figure=figure,
    applies={"output_stage.devices": "discrete", "gate_kind": "gallium-nitride"},
    limits=AtLeast(
        critical="0 ns",
        major="3.4 ns",
        basis={"critical": SILICON.limits.basis["critical"], "major": LMG1210},
    ),
    levers=(Lever("gate_drive.dead_time", "1 ns"),),
    sources=(LMG1210, *SILICON.sources),
    fails=_BASE.replace("DEAD", "3 ns"),
    passes=_BASE.replace("DEAD", "12 ns"),
)
