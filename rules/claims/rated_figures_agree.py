"""Rated power, voltage and load: three figures that are only two.

Power is the squared rms voltage over the load.  Where a spec states all three they check one
another, and a disagreement mostly shows which kind of volt or watt slipped in: 46.8 V peak
to peak across 8 ohm are 16.5 V rms and 34 W, not 40; a factor of two is peak for rms, a
factor of four a bridge counted as one side.

The figure is the relative difference of the stated power and the computed one.  More than
10 % is major, as one of the three is wrong; more than 3 % is minor, beyond what rounding to
two digits leaves.  First fix: measure volts rms across the load, and derive the power.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever, derivation

OHM = derivation("sine: power is the squared rms voltage over resistance")


def figure(rated_power: float, rated_voltage: float, z_load: float) -> float:
    return ((rated_power * z_load / rated_voltage**2 - 1) ** 2) ** 0.5


CLAIM = """
channels:
  main:
    rated_power: 40 W
    rated_voltage: 16.55 V
    rated_load: 8 ohm
"""

CHECK = Check(
    title="Rated power vs. rated voltage and load",
    figure=figure,
    unit="%",
    each="channel",
    stake="performance",
    formula="|rated_power z_load / rated_voltage^2 - 1|",
    sentence="Rated {rated_power} into {z_load} and rated {rated_voltage} rms differ by {figure}.",
    inputs={
        "rated_power": Input("rated_power"),
        "rated_voltage": Input("rated_voltage"),
        "z_load": Input("z_load"),
    },
    limits=AtMost(
        major="10 %", minor="3 %", basis={"major": COMMON_PRACTICE, "minor": COMMON_PRACTICE}
    ),
    levers=(Lever("rated_power", "1 W"), Lever("rated_voltage", "0.1 V")),
    sources=(OHM,),
    cases=(
        Case(
            {"rated_power": "40 W", "rated_voltage": "16.5463 V", "z_load": "8 ohm"},
            gives="16.88 %",
            origin="published: NBitWonder notebook, entry 031: 46.8 V peak to peak, 40 W, 8 ohm;"
            " difference by hand",
        ),
        Case(
            {"rated_power": "100 W", "rated_voltage": "28.28 V", "z_load": "8 ohm"},
            gives="0.0302 %",
            origin="computed: by hand, 100 W into 8 ohm are 28.28 V rms",
            tolerance=1e-2,
        ),
    ),
    topic=("rated_voltage",),
    peaks_inside=(),
    fails=CLAIM,
    passes=CLAIM.replace("40 W", "34 W"),
)
