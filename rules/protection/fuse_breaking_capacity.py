"""Breaking capacity of the fuse against the short-circuit current of the source.

A lithium pack has a few hundredths of an ohm, so a short behind the fuse draws hundreds of
amperes.  A small glass fuse breaks ten times its rating, or 35 A; above that it bursts and
the arc goes on.  Sand-filled and blade fuses break a thousand amperes and more.

The figure is the full voltage over the lowest resistance of cells and pack switches,
without any lead, as the fuse sits next to the pack; above the breaking capacity it is
critical.  It is judged for a battery, or where the source's resistance is stated.  An
electronic source that limits its current itself is counted with that limit: its resistance
is that of a regulator, and what its output capacitor adds is over in a fraction of a
millisecond, a joule or so that melts no fuse.  Silence on the capacity is open.  First fix:
a fuse with a breaking capacity printed for direct current.
"""

from ...linter.check import AtMost, Case, Check, Input, Lever, Source, derivation
from ..hazards import FUSE

RATING = derivation("a breaking capacity is an absolute limit")
GLASS = Source(
    "Littelfuse, Fuseology Selection Guide, 2014", "p. 12: at 250 V AC 35 A or more, up to 1 A"
)


def figure(i_to_break: float, i_breaking: float) -> float:
    return i_to_break / i_breaking


CHECK = Check(
    title="Short-circuit current vs. fuse breaking capacity",
    figure=figure,
    unit="1",
    each="product",
    stake="safety",
    formula="i_to_break / i_breaking",
    sentence="Short-circuit current {i_to_break}; fuse breaking capacity {i_breaking}"
    " ({figure:%}).",
    inputs={
        "i_to_break": Input("i_to_break"),
        "i_breaking": Input("protection.fuse.i_breaking"),
    },
    limits=AtMost(critical="1", basis={"critical": RATING}),
    levers=(Lever("protection.fuse.i_breaking", ("200 A", "500 A", "1000 A", "2000 A")),),
    sources=(RATING, GLASS, derivation("Ohm's law at the terminals of the source")),
    cautions=(FUSE,),
    cases=(
        Case(
            {"i_to_break": "420 A", "i_breaking": "1000 A"},
            gives="0.42",
            origin="computed: nodal solution of 25.2 V behind 60 mohm: 420 A",
        ),
        Case(
            {"i_to_break": "420 A", "i_breaking": "35 A"},
            gives="12",
            origin="published: Littelfuse Fuseology p. 12: 35 A, which is for AC; the same pack",
        ),
    ),
    topic=("protection.fuse.i_breaking",),
    asked_from="production",
    fails="""
supply: {source: battery, converter: none}
battery: {chemistry: li-ion, series: 6, parallel: 2, cell: {r_internal: 20 mohm .. 60 mohm}}
protection: {fuse: {i_rated: 10 A, i_breaking: 100 A}}
channels: {main: {rated_power: 50 W}}
""",
    passes="""
supply: {source: battery, converter: none}
battery: {chemistry: li-ion, series: 6, parallel: 2, cell: {r_internal: 20 mohm .. 60 mohm}}
protection: {fuse: {i_rated: 10 A, i_breaking: 1000 A}}
channels: {main: {rated_power: 50 W}}
""",
)
