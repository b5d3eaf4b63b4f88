"""The loudspeakers together against the load that the channel is rated for.

Equal loudspeakers in series add, in parallel they divide: three of 8 ohm in parallel are
2.67 ohm, two strings of two are one loudspeaker again.  A network below the lowest rated
load draws more current than the stage, the inductors and the trip were chosen for.

Ten percent are left for the rounding of rated impedances.  A network ABOVE the rated load
is no fault here: it draws less, and its power is judged with its own impedance; but state
it as ``load_range``, so that the treble response is judged for it too.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever, derivation
from ..formulas.load import network_impedance


def figure(load_low: float, z_rated: float, series: float, parallel: float) -> float:
    return load_low / network_impedance(z_rated, series, parallel)


CHECK = Check(
    title="Loudspeaker network impedance vs. lowest rated load",
    figure=figure,
    unit="1",
    each="channel",
    stake="rating",
    formula="load_low / (z_rated series / parallel)",
    sentence="Loudspeaker network {load_low:/figure} ({z_rated}, {series} in series,"
    " {parallel:string|strings}); lowest rated load {load_low}.",
    inputs={
        "load_low": Input("load_low"),
        "z_rated": Input("loudspeaker.z_rated"),
        "series": Input("loudspeaker.series"),
        "parallel": Input("loudspeaker.parallel"),
    },
    applies={"loudspeaker.piezo": "none", "line": "none"},
    limits=AtMost(major="1.1", basis={"major": COMMON_PRACTICE}),
    levers=(Lever("loudspeaker.parallel", ("1", "2", "3", "4")),),
    otherwise="loudspeakers of a higher rated impedance, or an amplifier rated for this load",
    sources=(derivation("Kirchhoff: series impedances add, parallel admittances add"),),
    cases=(
        Case(
            {"load_low": "4 ohm", "z_rated": "8 ohm", "series": 1, "parallel": 3},
            gives="1.5",
            origin="derived: three of 8 ohm in parallel on a 4 ohm rating, by conductances",
        ),
        Case(
            {"load_low": "8 ohm", "z_rated": "8 ohm", "series": 2, "parallel": 2},
            gives="1",
            origin="computed: two strings of two of 8 ohm, nodal solution",
        ),
    ),
    topic=("loudspeaker.z_rated",),
    fails="""
channels:
  main:
    rated_load: 4 ohm
    loudspeaker: {z_rated: 8 ohm, parallel: 3}
""",
    passes="""
channels:
  main:
    rated_load: 4 ohm
    loudspeaker: {z_rated: 8 ohm, parallel: 2}
""",
)
