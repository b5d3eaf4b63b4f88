"""Run time that the pack's energy allows at best, against the claim.

All the energy of new, warm cells, down to the last watt-second, over the least that the
claim can be about: the programme power of all channels without any loss, what the product
draws at idle where that is stated, and the other loads. Nothing is left to be improved by
design: a longer run time takes more cells, less power or a quieter programme.

The crest factor of the programme counts as stated; 12 dB, one eighth of the sine, where it is
not. A claim beyond this bound holds at every milestone. What to do first: ask at which power
the run time was measured, and state that as rated power or crest factor. The run time with
its losses is another check.
"""

from ...linter.check import Assumption, AtLeast, Case, Check, Input, Lever, derivation
from ..formulas.pack import SERIES_PARALLEL
from ..formulas.supply import EIGHTH_POWER, programme_share

LOSSLESS = derivation("conservation of energy, every unknown loss left out")
NO_LOSS = Assumption("0 W", "absent", LOSSLESS)


def figure(
    e_pack: float,
    rated_power: tuple[float, ...],
    p_idle: tuple[float, ...],
    p_auxiliary: float,
    crest_factor: float,
    run_time: float,
) -> float:
    output = programme_share(crest_factor) * sum(rated_power[1:], rated_power[0])
    return e_pack / (output + sum(p_idle[1:], p_idle[0]) + p_auxiliary) / run_time


PACK = """
supply: {source: battery, rails: single}
battery: {chemistry: li-ion, series: 6, parallel: 1, cell: {capacity: 3.5 Ah}}
channels:
  main: {rated_power: 80 W, output_stage: {topology: full-bridge, p_idle: 1.5 W}}
claims: {run_time: 12 h}
"""

CHECK = Check(
    title="Run time without losses vs. claim",
    figure=figure,
    unit="1",
    each="product",
    stake="performance",
    formula="e_pack / (10^((3.01 - crest_factor)/10) sum of rated_power + sum of p_idle +"
    " p_auxiliary) / run_time",
    sentence="Run time without any loss {run_time:*figure}; claimed {run_time} ({e_pack}, channels"
    " of {rated_power}, crest factor {crest_factor}).",
    inputs={
        "e_pack": Input("e_pack"),
        "rated_power": Input("all rated_power"),
        "p_idle": Input("all output_stage.p_idle", default=NO_LOSS),
        "p_auxiliary": Input("supply.p_auxiliary"),
        "crest_factor": Input("signal.crest_factor"),
        "run_time": Input("claims.run_time"),
    },
    applies={"supply.source": "battery"},
    limits=AtLeast(major="1", basis={"major": LOSSLESS}),
    levers=(Lever("battery.parallel", "1", within=3), Lever("claims.run_time", "0.5 h")),
    sources=(SERIES_PARALLEL, EIGHTH_POWER),
    cases=(
        Case(
            {
                "e_pack": "120.96 Wh",
                "rated_power": ("40 W", "40 W"),
                "p_idle": ("1 W", "1.5 W"),
                "p_auxiliary": "0.5 W",
                "crest_factor": "12.0412 dB",
                "run_time": "10 h",
            },
            gives="0.930462",
            origin="computed: charge counted in steps of a minute: 10 W of audio and 3 W, 9.305 h",
        ),
        Case(
            {
                "e_pack": "151.2 Wh",
                "rated_power": ("1120 W", "1120 W"),
                "p_idle": ("0 W", "0 W"),
                "p_auxiliary": "0 W",
                "crest_factor": "12.0412 dB",
                "run_time": "1 h",
            },
            gives="0.54",
            origin="derived: 280 W of audio alone empty 151.2 Wh in 0.54 h",
        ),
    ),
    topic=("claims.run_time",),
    forbidden=True,
    fails=PACK,
    passes=PACK.replace("run_time: 12 h", "run_time: 6 h"),
)
