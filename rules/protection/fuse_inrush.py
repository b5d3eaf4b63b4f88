"""Charging pulse at switch-on against the melting I2t of the fuse.

Each switch-on heats the element of the fuse as a shot: the energy in its resistance is the
integral of the squared current, c v^2 / 2 r, and nearly all of it stays in the element for
the first milliseconds.  A pulse far below melting still ages the element.  A fuse that
should survive 100 000 pulses may see 22 % of its melting I2t in each, 29 % for 10 000,
38 % for 1000 and 48 % for 100.

Above 29 % is major: ten thousand switch-ons are three a day for ten years.  Above 22 % is
minor.  The pulses must lie ten seconds apart; a thermistor that is still warm limits
nothing.  It is judged where source or pack feed the rail directly; a converter ahead of it
starts softly.  First fix: more resistance in the charging loop, a constant-current start,
or a time-lag fuse with more I2t.
"""

from ...linter.check import AtMost, Case, Check, Input, Lever, derivation
from ..formulas.fuse import PULSE_SHARE, PULSES


def figure(i2t_charging: float, i2t: float) -> float:
    return i2t_charging / i2t


PACK = """
supply: {source: battery, converter: none, bulk: {c: 4400 uF}}
battery: {chemistry: li-ion, series: 6, parallel: 2, cell: {r_internal: 28 mohm .. 84 mohm}}
protection:
  inrush: {r: 0.1 ohm}
  fuse: {i_rated: 10 A, i2t: 40 A2s}
channels: {main: {rated_power: 50 W}}
"""

CHECK = Check(
    title="Inrush vs. melting of the fuse",
    figure=figure,
    unit="%",
    each="product",
    stake="rating",
    formula="i2t_charging / i2t",
    sentence="Each switch-on sends {i2t_charging} through the fuse; it melts at {i2t}"
    " ({figure:%}).",
    inputs={
        "i2t_charging": Input("i2t_charging"),
        "i2t": Input("protection.fuse.i2t"),
    },
    applies={"rail_feed": ("pack", "source")},
    limits=AtMost(
        major=f"{100 * PULSE_SHARE[10_000]:g} %",
        minor=f"{100 * PULSE_SHARE[100_000]:g} %",
        basis={"major": PULSES, "minor": PULSES},
    ),
    levers=(Lever("protection.inrush.r", "E12"), Lever("protection.fuse.i2t", "5 A2s")),
    sources=(PULSES, derivation("integral of a squared exponential: peak squared tau / 2")),
    cases=(
        Case(
            {"i2t_charging": "13.97 A2s", "i2t": "63.50 A2s"},
            gives="22 %",
            origin="computed: 4.4 mF to 25.2 V through 0.10 ohm by quadrature; 100 000 pulses",
        ),
        Case(
            {"i2t_charging": "0.15 A2s", "i2t": "1 A2s"},
            gives="15 %",
            origin="published: Littelfuse chart 1: half sine ip^2 t / 2; 10 A, 3 ms, 1 A2s assumed",
        ),
    ),
    topic=("protection.fuse.i2t",),
    asked_from="production",
    fails=PACK,
    passes=PACK.replace("r: 0.1 ohm", "r: 2.5 ohm"),
)
