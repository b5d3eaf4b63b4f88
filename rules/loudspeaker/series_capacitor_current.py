"""Ripple current of the capacitor in series with one loudspeaker.

All of the current of its loudspeaker flows through it, as that of the load does through an
output capacitor, and the limits are the same: the rating covers the sine of the rated power,
and when programme, an eighth of that power, already exceeds it, a factor of 2.83 in current,
the capacitor is overheated in ordinary use. It is often also what keeps direct voltage from the
coil after a fault, so that it takes the loudspeaker with it when it fails shorted: beyond twice
that current ordinary programme heats it four times as much as its maker allows, the electrolyte
boils and the vent opens. That is critical. Film capacitors of a crossover rarely have a ripple
rating and little loss; up to 47 uF the check asks for none.

The figure is the current into the rated impedance of ONE loudspeaker, as above the corner of the
capacitor; below it flows less. Loudspeakers on a line or with a piezo transducer are not meant.
What to do first: a film capacitor, which carries many times as much as a bipolar electrolytic
one of that size, or two in parallel.
"""

from ...linter.check import AtMost, Case, Check, Input, Lever, Source, derivation
from ..derived.load import SERIES
from ..formulas.capacitor import VENTS
from ..hazards import CAPACITOR


def figure(
    i_rated_peak: float, z_load: float, z_driver: float, series: float, i_rated: float
) -> float:
    """Current of one loudspeaker, rms of a sine at rated power, over the ripple rating."""
    v_rms = i_rated_peak / 2**0.5 * z_load
    return v_rms / (series * z_driver) / i_rated


SUBWOOFER = """
channels:
  main:
    rated_power: 400 W
    rated_load: 4 ohm
    loudspeaker: {z_rated: 4 ohm, c_series: {c: 2 mF, v_rated: 100 V, i_rated: RATING}}
"""

CHECK = Check(
    title="Series capacitor ripple current vs. rating",
    figure=figure,
    unit="1",
    each="channel",
    stake="safety",
    formula="i_rated_peak / sqrt(2) z_load / (series z_driver) / i_rated",
    sentence="Series capacitor carries {i_rated:*figure} rms at rated power; rated {i_rated}"
    " ({figure:%}).",
    inputs={
        "i_rated_peak": Input("i_rated_peak"),
        "z_load": Input("z_load"),
        "z_driver": Input("z_driver"),
        "series": SERIES,
        "i_rated": Input("loudspeaker.c_series.i_rated"),
    },
    applies={
        "loudspeaker.c_series": "fitted",
        "loudspeaker.piezo": "none",
        "line": "none",
        "c_series_heats": "yes",
    },
    limits=AtMost(
        critical="5.66",
        major="2.83",
        minor="1",
        basis={
            "critical": VENTS,
            "major": derivation("root of 8: programme of an eighth of the power exceeds it"),
            "minor": Source(
                "CS4525 data sheet DS726PP1",
                "p. 59: ripple current rating above the current that passes through it",
            ),
        },
    ),
    levers=(Lever("loudspeaker.c_series.i_rated", "0.5 A"),),
    sources=(derivation("series connection: one current"),),
    cases=(
        Case(
            {
                "i_rated_peak": "10 A",
                "z_load": "4 ohm",
                "z_driver": "8 ohm",
                "series": "1",
                "i_rated": "2.5 A",
            },
            gives="1.41421",
            origin="computed: nodal solution of 40 V peak on two branches of 8 ohm, 5 A peak each",
        ),
        Case(
            {
                "i_rated_peak": "15.8114 A",
                "z_load": "4 ohm",
                "z_driver": "2 ohm",
                "series": "2",
                "i_rated": "5 A",
            },
            gives="2.23607",
            origin="derived: 500 W into 4 ohm are 11.18 A, in a string of two the same current",
        ),
    ),
    cautions=(CAPACITOR,),
    topic=("loudspeaker.c_series",),
    fails=SUBWOOFER.replace("RATING", "4 A"),
    passes=SUBWOOFER.replace("RATING", "12 A"),
)
